/** Viscosity against time, with its band. @module */
import { FLOWS } from "../../running/path.ts";
import type { RunningReport } from "../../running/types.ts";
import { px, type Sheet } from "../marks/sheet.ts";
import { textWidth, wrap } from "../marks/text-width.ts";
import { niceStep } from "../marks/ticks.ts";
import type { Panel } from "./walls.ts";

/** Draws the chart; returns where the words below end [px]. */
export function drawMelt(sheet: Sheet, { firing }: RunningReport, panel: Panel): number {
  const { size } = sheet;
  sheet.text(panel.left, panel.top + size, "viscosity, log10 of Pa·s: low is runny", { size, tint: "ink2" });
  const { path } = firing;
  const top = panel.top + size + 8;
  const bottom = top + panel.tall;
  const left = panel.left + 30;
  const right = panel.left + panel.width - 6;
  if (path.length < 2) {
    const words = "The firing never softens this glaze.";
    sheet.text(left, top + panel.tall / 2, words, { size });
    return bottom + size + 8;
  }
  const [start, end] = [path[0]!.minutes / 60, Math.max(path.at(-1)!.minutes / 60, path[0]!.minutes / 60 + 0.01)];
  const least = Math.floor(Math.min(...path.map(({ low }) => low), FLOWS) / 2) * 2;
  const x = (minutes: number) => left + ((minutes / 60 - start) / (end - start)) * (right - left);
  const [floor, ceiling] = [least - 1, 12.5];
  const y = (log: number) => bottom - ((Math.min(log, ceiling) - floor) / (ceiling - floor)) * panel.tall;

  sheet.rect(left, y(FLOWS), right - left, bottom - y(FLOWS), { fill: "glaze", opacity: 0.5 });
  for (let log = least; log <= 12; log += 2) {
    sheet.path(`M${px(left)} ${px(y(log))}H${px(right)}`, { stroke: "rule" });
    sheet.text(left - 8, y(log) + size * 0.34, String(log), { size, tint: "ink2", anchor: "end" });
  }
  const upper = path.map((point) => `${px(x(point.minutes))} ${px(y(point.high))}`);
  const lower = path.map((point) => `${px(x(point.minutes))} ${px(y(point.low))}`).reverse();
  sheet.path(`M${[...upper, ...lower].join("L")}Z`, { fill: "hold", opacity: 0.3 });
  const line = path.map((point) => `${px(x(point.minutes))} ${px(y(point.logViscosity))}`);
  sheet.path(`M${line.join("L")}`, { stroke: "ink", width: 2.25 });

  const base = hours(sheet, { left, right, bottom, start, end });
  const peak = path.reduce((a, b) => (b.logViscosity < a.logViscosity ? b : a));
  const words = sheet.exactly(peak.c);
  const half = textWidth(words, size, true) / 2;
  const at = Math.min(Math.max(x(peak.minutes), left + half + 2), right - half - 2);
  sheet.circle(x(peak.minutes), y(peak.logViscosity), 5, { stroke: "ink", width: 2, fill: "sheet" });
  sheet.text(at, Math.min(y(peak.logViscosity) + size + 9, bottom - 5), words, {
    size,
    bold: true,
    anchor: "middle",
    halo: true,
  });
  return caption(sheet, firing, panel, base + size + 8);
}

function hours(
  sheet: Sheet,
  { left, right, bottom, start, end }: { left: number; right: number; bottom: number; start: number; end: number },
): number {
  const { size } = sheet;
  const step = niceStep(end - start, sheet.narrow ? 5 : 8);
  const decimals = Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
  const base = bottom + size + 8;
  const last = "hours";
  const stop = right - textWidth(last, size) - 10;
  let clear = left - 20;
  for (let i = Math.ceil(start / step - 1e-9); i * step <= end; i++) {
    const at = left + ((i * step - start) / (end - start)) * (right - left);
    sheet.path(`M${px(at)} ${bottom}v6`, { stroke: "edge" });
    const words = (i * step).toFixed(decimals);
    const half = textWidth(words, size) / 2;
    if (at - half < clear || at + half > stop) continue;
    sheet.text(at, base, words, { size, tint: "ink2", anchor: "middle" });
    clear = at + half + 8;
  }
  sheet.text(right, base, last, { size, tint: "ink2", anchor: "end" });
  return base;
}

function caption(sheet: Sheet, { meltMinutes }: RunningReport["firing"], panel: Panel, from: number): number {
  const { size } = sheet;
  const { value, low, high } = meltMinutes;
  const words = `Tinted: runny enough to flow, ${value} minutes, 9 in 10 between ${low} and ${high}. Band: 9 in 10.`;
  const lines = wrap(words, panel.width - 8, size);
  lines.forEach((line, i) => {
    sheet.text(panel.left, from + i * (size + 4), line, { size, tint: "ink2" });
  });
  return from + (lines.length - 1) * (size + 4) + 6;
}
