/** The wall with its glaze, before and after. @module */

import { MM } from "../../lengths/index.ts";
import type { RunningReport } from "../../running/types.ts";
import { clayFill } from "../marks/fills.ts";
import { px, type Sheet } from "../marks/sheet.ts";
import { wrap } from "../marks/text-width.ts";
import { niceStep } from "../marks/ticks.ts";
import { type Edge, edgeOf, thickening } from "./edge.ts";

/** Where a panel goes [px]. */
export interface Panel {
  left: number;
  top: number;
  width: number;
  tall: number;
}

/** Draws both walls on one scale; returns where the words below end [px]. */
export function drawWalls(sheet: Sheet, report: RunningReport, panel: Panel): number {
  const edge = edgeOf(report);
  const { size } = sheet;
  const top = panel.top + size + 8;
  const mmPx = panel.tall / (edge.upMm + edge.downMm);
  const times = thickening(edge, mmPx);
  const zero = top + edge.upMm * mmPx;
  const bottom = top + panel.tall;
  const half = panel.width / 2;
  const clay = sheet.narrow ? 40 : 56;
  const bar = 44;
  const columns = [
    { words: "before", left: panel.left + bar, after: false },
    { words: "after", left: panel.left + bar / 2 + half, after: true },
  ];
  for (const { words, left, after } of columns) {
    sheet.text(left, panel.top + size, words, { size, bold: true });
    sheet.rect(left, top, clay, panel.tall, { fill: clayFill(sheet) });
    const face = left + clay;
    sheet.path(coat(edge, after, face, top, zero, bottom, mmPx, times), { fill: "glaze", stroke: "ink", width: 1.5 });
    sheet.path(`M${px(face)} ${top}V${px(bottom)}`, { stroke: "ink" });
    if (after) drawInterval(sheet, edge, face + Math.max(edge.rollMm * mmPx * times + 16, 30), zero, bottom, mmPx);
  }
  // Where the edge was put, across both.
  const right = panel.left + panel.width - 8;
  sheet.path(`M${px(panel.left + bar)} ${px(zero)}H${px(right)}`, { stroke: "edge", dash: "3 4" });
  if (edge.shelf) {
    sheet.path(`M${px(panel.left + bar - 8)} ${px(bottom)}H${px(right)}`, { stroke: "ink", width: 4 });
  }
  drawScale(sheet, panel.left, top, panel.tall, mmPx);
  return caption(sheet, report, edge, times, panel, bottom + size + 10);
}

/** Outline of the coat: level, and after the firing with a roll at its lower edge, or a puddle on the shelf. */
function coat(
  edge: Edge,
  after: boolean,
  face: number,
  top: number,
  zero: number,
  bottom: number,
  mmPx: number,
  times: number,
): string {
  const out = (mm: number) => face + mm * mmPx * times;
  if (!after) return `M${px(face)} ${top}H${px(out(edge.coatMm))}V${px(zero)}H${px(face)}Z`;
  const over = edge.runMm > edge.downMm;
  const end = Math.min(zero + edge.runMm * mmPx, bottom);
  const film = out(edge.filmMm);
  const crest = out(edge.rollMm);
  // The roll takes the last stretch above the edge; how long is a matter of looks.
  const long = Math.min(Math.max((crest - face) * 3, 10), end - top);
  const start = end - long;
  const foot = over
    ? `L${px(crest + 14)} ${px(bottom)}`
    : `C${px(crest)} ${px(end - long * 0.12)} ${px(crest)} ${px(end)} ${px(face)} ${px(end)}`;
  const body = `C${px(film)} ${px(start + long * 0.35)} ${px(crest)} ${px(end - long * 0.5)} ${px(crest)} ${px(end - long * 0.25)}`;
  return `M${px(face)} ${top}H${px(film)}V${px(start)}${body}${foot}H${px(face)}Z`;
}

/** The interval of the run as a bar, an arrowhead where it passes the shelf. */
function drawInterval(sheet: Sheet, edge: Edge, x: number, zero: number, bottom: number, mmPx: number): void {
  const y = (mm: number) => Math.min(zero + mm * mmPx, bottom - 6);
  const [low, high] = [y(edge.lowMm), y(edge.highMm)];
  sheet.path(`M${px(x)} ${px(low)}V${px(high)}`, { stroke: "ink", width: 3 });
  sheet.path(`M${px(x - 5)} ${px(low)}h10`, { stroke: "ink", width: 1.5 });
  const beyond = edge.highMm > edge.downMm;
  sheet.path(beyond ? `M${px(x - 5)} ${px(high - 5)}l5 5l5 -5` : `M${px(x - 5)} ${px(high)}h10`, {
    stroke: "ink",
    width: 1.5,
  });
  if (edge.runMm <= edge.downMm) sheet.circle(x, y(edge.runMm), 5, { stroke: "ink", width: 2, fill: "sheet" });
}

/** A bar of round length beside the walls. */
function drawScale(sheet: Sheet, left: number, top: number, tall: number, mmPx: number): void {
  const unitPx = mmPx * MM[sheet.length];
  const step = niceStep(tall / unitPx, 3);
  const long = step * unitPx;
  const x = left + 8;
  sheet.path(`M${px(x - 4)} ${px(top)}h8M${px(x)} ${px(top)}V${px(top + long)}M${px(x - 4)} ${px(top + long)}h8`, {
    stroke: "ink2",
    width: 1.5,
  });
  sheet.text(
    left,
    top + long + sheet.size + 4,
    `${Number(step.toFixed(sheet.length === "in" ? 3 : 2))}\u00a0${sheet.length}`,
    {
      size: sheet.size,
      tint: "ink2",
    },
  );
}

function caption(sheet: Sheet, report: RunningReport, edge: Edge, times: number, panel: Panel, from: number): number {
  const { size } = sheet;
  const shown = (mm: number) => (mm < 10 ? mm.toFixed(1) : String(Math.round(mm)));
  const scale =
    times === 1
      ? "Drawn to scale."
      : times > 1
        ? `Glaze drawn ${times} times too thick.`
        : `Glaze drawn at ${Math.round(times * 100)} % of its thickness.`;
  const shelf = edge.shelf
    ? "The thick line is the shelf."
    : `The shelf is ${shown(report.wall.clearanceMm)}\u00a0mm below.`;
  const run =
    edge.highMm < 0.1
      ? "Its edge runs less than 0.1\u00a0mm."
      : `Its edge runs ${shown(edge.runMm)}\u00a0mm, 9 in 10 between ${shown(edge.lowMm)} and ${shown(edge.highMm)}\u00a0mm.`;
  const words = sheet.lengths(`${run} ${shelf} ${scale}`);
  const lines = wrap(words, panel.width - 8, size);
  lines.forEach((line, i) => {
    sheet.text(panel.left, from + i * (size + 4), line, { size, tint: "ink2" });
  });
  return from + (lines.length - 1) * (size + 4) + 6;
}
