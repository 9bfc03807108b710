/** The words of the cooling picture, each where no line runs. @module */

import { nearly } from "../../degrees.ts";
import type { FitReport } from "../../fit/types.ts";
import { px, type Sheet } from "../marks/sheet.ts";
import { textWidth } from "../marks/text-width.ts";
import type { Tint } from "../marks/theme.ts";
import type { Clearing } from "./clearing.ts";
import { drawCurves } from "./curves.ts";
import type { Frame } from "./frame.ts";
import { type Lengths, lengthAt, type Step } from "./lengths.ts";
import { drawLens, type Gap, placeLens } from "./lens.ts";

/** The shaded range of the set point, and the words beside its ring. */
export function drawSetPoint(sheet: Sheet, frame: Frame, { setPoint }: FitReport, clearing: Clearing): void {
  const { x, y, top, bottom, left, right } = frame;
  const [from, to] = [Math.max(x(setPoint.high), left), Math.min(x(setPoint.low), right)];
  if (to > from) sheet.rect(from, top, to - from, bottom - top, { fill: "ink", opacity: 0.07 });
  const { size } = sheet;
  const words = `9 in 10 between ${nearly(setPoint.low, sheet.temperature)} and ${nearly(setPoint.high, sheet.temperature)}`;
  const at = Math.min(Math.max(x(setPoint.value) + 13, left + 4), right - textWidth(words, size));
  sheet.text(at, top + size, `${sheet.nearly(setPoint.value)}: the skin sets`, { size, bold: true });
  sheet.text(at, top + size * 2 + 3, words, { size, tint: "ink2" });
  clearing.take({ left: at, right: at + textWidth(words, size), top, bottom: top + size * 2 + 6 });
  sheet.path(`M${px(x(setPoint.value))} ${px(top + 2)}V${px(y(0) - 6)}`, { stroke: "ink" });
}

/** The ring where the lines meet, and leaders from the steps of the clay down to their words. */
export function drawSteps(
  sheet: Sheet,
  frame: Frame,
  lengths: Lengths,
  steps: readonly Step[],
  clearing: Clearing,
): void {
  const { x, y, bottom } = frame;
  const { size } = sheet;
  sheet.circle(x(lengths.setC), y(0), 5.5, { stroke: "ink", width: 2, fill: "sheet" });
  for (const { name, c, percent } of steps) {
    const first = sheet.narrow ? `${name} turns` : `${sheet.exactly(c)}: ${name} turns,`;
    const shift = `${percent.toFixed(2)}\u00a0%`;
    const soft = sheet.narrow ? "glaze still soft" : "while the glaze is soft";
    const second =
      c > lengths.setC ? soft : sheet.narrow ? `${shift} at ${sheet.exactly(c)}` : `the clay steps in ${shift}`;
    const width = Math.max(textWidth(first, size, true), textWidth(second, size));
    const at = x(c);
    const start = Math.max(frame.left + 4, at - width);
    const under = clearing.edge([...lengths.glaze, ...lengths.body], start, Math.max(start + width, at)).bottom;
    const top = under + 26;
    const box = { left: start, right: start + width, top, bottom: top + size * 2 + 8 };
    if (box.bottom > bottom - 4 || !clearing.take(box)) continue;
    sheet.path(`M${px(at)} ${px(y(lengthAt(lengths.body, c)) + 4)}V${px(top - 3)}`, { stroke: "ink" });
    sheet.text(start, top + size, first, { size, bold: true });
    sheet.text(start, top + size * 2 + 3, second, { size, tint: "ink2" });
  }
}

/** The gap at 20 °C: through the lens, or by a plain bracket where it is wide enough to see. */
export function drawGap(sheet: Sheet, frame: Frame, lengths: Lengths, report: FitReport, clearing: Clearing): void {
  const { x, y, right, top, bottom } = frame;
  const { size } = sheet;
  const gap: Gap = { x: x(20), clay: y(lengths.body[0]!.percent), glaze: y(lengths.glaze[0]!.percent) };
  const tint: Tint = report.verdict === "sound" ? "hold" : report.mismatch.value < 0 ? "pull" : "push";
  const words = `gap at ${sheet.exactly(20)}: ${Math.abs(report.mismatch.value).toFixed(3)}\u00a0%`;
  const curves = [...lengths.glaze, ...lengths.body];
  const free = (at: number) =>
    Math.min(...curves.filter(({ c }) => Math.abs(x(c) - at) < 24).map(({ percent, above }) => y(percent + above)));
  const head = top + size * 2 + 14;
  const end = right + 8;
  const lens = placeLens(gap, head + size * 2 + 12, end, sheet.narrow ? 56 : 84, free);
  if (lens) {
    sheet.text(end, head + size, words, { size, bold: true, tint, anchor: "end", halo: true });
    const times = `drawn ${lens.power} times as large`;
    sheet.text(end, head + size * 2 + 3, times, { size, tint: "ink2", anchor: "end" });
    drawLens(sheet, lens, gap, tint, (power, dx, dy, from) =>
      drawCurves(sheet, frame, lengths, { power, dx, dy, from }),
    );
    return;
  }
  const at = gap.x + (sheet.narrow ? 7 : 10);
  const ends = `M${px(at - 5)} ${px(gap.clay)}h10M${px(at)} ${px(gap.clay)}V${px(gap.glaze)}M${px(at - 5)} ${px(gap.glaze)}h10`;
  sheet.path(ends, { stroke: tint, width: 2 });
  nameLines(sheet, frame, lengths, clearing);
  const width = textWidth(words, size, true);
  // As near the bracket as there is room.
  const middle = (gap.clay + gap.glaze) / 2;
  const rows = Array.from({ length: Math.floor((bottom - 8 - head) / 6) }, (_, i) => head + size + i * 6);
  rows.sort((a, b) => Math.abs(a - middle) - Math.abs(b - middle));
  const box = (row: number) => ({ left: right - 4 - width, right: right - 4, top: row - size, bottom: row + 4 });
  const base = rows.find((row) => clearing.take(box(row)));
  if (base) sheet.text(right - 4, base, words, { size, bold: true, tint, anchor: "end", halo: true });
}

/** Names both lines where no lens does: one above the upper, one below the lower. */
function nameLines(
  sheet: Sheet,
  { x, left, right, bottom }: Frame,
  { glaze, body }: Lengths,
  clearing: Clearing,
): void {
  const { size } = sheet;
  const glazeUp = glaze[0]!.percent > body[0]!.percent;
  const name = (words: string, place: (from: number, to: number) => number) => {
    const width = textWidth(words, size, true);
    for (let c = 110; c < 520; c += 30) {
      const from = Math.min(Math.max(x(c) - width / 2, left), right - width);
      const base = place(from, from + width);
      if (base > bottom - 4 || !clearing.take({ left: from, right: from + width, top: base - size, bottom: base + 4 }))
        continue;
      sheet.text(from, base, words, { size, bold: true, halo: true });
      return;
    }
  };
  const [over, under] = glazeUp ? [glaze, body] : [body, glaze];
  name(glazeUp ? "glaze" : "clay", (from, to) => clearing.edge(over, from, to).top - 9);
  name(glazeUp ? "clay" : "glaze", (from, to) => clearing.edge(under, from, to).bottom + size + 5);
}
