/** Draws the hill and the rings that are its twenty slices. @module */
import type { FitReport, Outcome } from "../../fit/types.ts";
import { OUTCOME_RING, RING_TINT, RINGS } from "../marks/rings.ts";
import { PREFIX, px, type Sheet } from "../marks/sheet.ts";
import type { Tint } from "../marks/theme.ts";
import type { Columns } from "./bins.ts";
import { type Hill, hillOf } from "./hill.ts";
import type { Lines, StressScale } from "./scale.ts";

/** The cases as laid out: binned, with the hill's height [px] to cover them. */
export interface Crowd extends Columns {
  hill: Hill;
  /** Height of the hill at its top [px]. */
  rise: number;
}

/** @param columns - the cases, binned */
export function crowdOf(report: FitReport, columns: Columns): Crowd {
  const tallest = Math.max(1, ...columns.columns.map(({ outcomes }) => outcomes.length));
  return { ...columns, hill: hillOf(report), rise: (tallest + 0.6) * columns.pitch };
}

/** Highest thing between two places, above the ground of the rings [px]. */
export function crowdHeight(
  { columns, pitch, hill, rise }: Crowd,
  scale: StressScale,
  from: number,
  to: number,
): number {
  let high = 0;
  for (const { x, size, outcomes } of columns) {
    if (x + size / 2 > from && x - size / 2 < to) high = Math.max(high, outcomes.length * pitch);
  }
  for (let i = 0; i <= 8; i++) high = Math.max(high, hill.height(scale.at(from + ((to - from) * i) / 8)) * rise);
  return high < 1 ? 0 : high;
}

/** @param ground - foot of the hill [px] */
export function drawCrowd(sheet: Sheet, crowd: Crowd, scale: StressScale, lines: Lines, ground: number): void {
  drawHill(sheet, crowd, scale, lines, ground);
  const used = new Set(crowd.columns.flatMap(({ outcomes }) => outcomes));
  for (const outcome of used) sheet.define(outcome, () => `<path id="%ID%" d="${RINGS[OUTCOME_RING[outcome]]}"/>`);
  const marks = new Map<Outcome, string[]>();
  for (const { x, size, outcomes } of crowd.columns) {
    outcomes.sort((a, b) => ORDER.indexOf(a) - ORDER.indexOf(b));
    outcomes.forEach((outcome, i) => {
      // Lifted ends stand out of the square that other rings fill.
      const side = Math.min(size, crowd.pitch) * (outcome === "shivers" ? 0.82 : 0.98);
      const y = ground - 1 - crowd.pitch * (i + 0.5);
      const place = `translate(${px(x - side / 2)} ${px(y - side / 2)}) scale(${Math.round(side * 100) / 1e4})`;
      const list = marks.get(outcome) ?? [];
      list.push(`<use href="#${PREFIX}-${outcome}" transform="${place}"/>`);
      marks.set(outcome, list);
    });
  }
  for (const [outcome, uses] of marks) {
    const colour = sheet.theme[RING_TINT[OUTCOME_RING[outcome]]];
    sheet.raw(`<g fill="none" stroke="${colour}" stroke-width="15">${uses.join("")}</g>`);
  }
}

const ORDER: readonly Outcome[] = ["sound", "crazesLater", "crazesOnCooling", "shivers"];

function drawHill(sheet: Sheet, { hill, rise }: Crowd, scale: StressScale, lines: Lines, ground: number): void {
  const from = Math.max(hill.from, scale.at(scale.left));
  const to = Math.min(hill.to, scale.at(scale.right));
  if (to <= from) return;
  const up = (mpa: number) => `${px(scale.x(mpa))} ${px(ground - hill.height(mpa) * rise)}`;
  const step = (hill.to - hill.from) / 48;
  const ridge = (a: number, b: number) => {
    let d = `M${up(a)}`;
    for (let mpa = a + step; mpa < b; mpa += step) d += `L${up(mpa)}`;
    return `${d}L${up(b)}`;
  };
  const slopes: [number, number, Tint, number][] = [
    [from, lines.flakes, "push", 0.3],
    [lines.flakes, lines.lift, "push", 0.18],
    [lines.lift, lines.later, "hold", 0.2],
    [lines.later, lines.once, "pull", 0.2],
    [lines.once, to, "pull", 0.32],
  ];
  for (const [a, b, fill, opacity] of slopes) {
    const [start, end] = [Math.max(a, from), Math.min(b, to)];
    if (end <= start) continue;
    const foot = `V${px(ground)}H${px(scale.x(start))}Z`;
    sheet.path(ridge(start, end) + foot, { fill, opacity });
  }
  sheet.path(ridge(from, to), { stroke: "ink", width: 1.5, opacity: 0.4 });
}
