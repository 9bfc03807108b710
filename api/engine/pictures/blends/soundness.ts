/** How likely mixtures are to stay sound, as fields with contours over a triangle or square. @module */
import type { Pen, Sheet } from "../marks/sheet.ts";
import { type Contour, contourAt } from "./contours.ts";
import { type Flowing, flow } from "./flow.ts";
import { type BlendShape, facetsOf, isJudged, type Mixture } from "./mixtures.ts";

/** One level, how its line looks and how full its field is; the surer, the fuller. */
interface Level {
  /** Chance along it, in twenty: every mixture inside has as many cases that hold, or more. */
  of20: number;
  line: Pen;
  fill: number;
}

/** The surest first: it is the last to be left out. */
const LEVELS: readonly Level[] = [
  { of20: 17, line: { stroke: "hold", width: 2.5 }, fill: 0.75 },
  { of20: 10, line: { stroke: "hold", width: 1.75, dash: "8 4" }, fill: 0.5 },
  { of20: 5, line: { stroke: "hold", width: 1.5, dash: "2 3.5" }, fill: 0.35 },
];
/** Path data that contours may take [bytes]: those of real glazes, which mix smoothly, take a quarter of it. */
const MOST_BYTES = 4000;

/** Fields that find room, the surest first. */
export interface Fields {
  each: { level: Level; contour: Contour }[];
  /** What is left out, in words. */
  left: string | undefined;
}

/** @param at - where a mixture stands in the drawing [px] */
export function fieldsOf(
  points: readonly Mixture[],
  shape: BlendShape,
  at: (shares: readonly number[]) => [number, number],
): Fields {
  const heights = points.map((mixture) => {
    const [x, y] = at(mixture.shares);
    return { x, y, height: isJudged(mixture) ? mixture.probabilities.sound : Number.NaN };
  });
  const facets = facetsOf(points, shape).filter((facet) => facet.every((k) => !Number.isNaN(heights[k]!.height)));
  const all = LEVELS.map((level) => ({ level, contour: contourAt(heights, facets, level.of20 / 20) }));
  const there = all.filter(({ contour }) => contour.field !== "");
  const bytes = there.map(({ contour: { field, line } }) => field.length + line.length);
  const each = there.filter((_, k) => bytes.slice(0, k + 1).reduce((a, b) => a + b, 0) <= MOST_BYTES);
  const left = "Chances jump too much from tile to tile for every contour.";
  return { each, left: each.length < there.length ? left : undefined };
}

export function drawFields(sheet: Sheet, { each }: Fields): void {
  for (const { level, contour } of [...each].reverse())
    sheet.path(contour.field, { fill: "glaze", opacity: level.fill });
  for (const { level, contour } of each) sheet.path(contour.line, level.line);
}

/** What the contours mean, each beside a stroke of it. @param top - where it begins [px] @returns where it ends [px] */
export function drawKey(sheet: Sheet, { each }: Fields, top: number): number {
  const lines = each.filter(({ contour }) => contour.line !== "");
  const items: Flowing[] = lines.map(({ level }, k) => ({
    mark: 30,
    words: k === 0 ? `${level.of20} of 20 stay sound along this line` : `${level.of20} of 20`,
    draw: (x, y) => sheet.path(`M${x + 2} ${y}h24`, level.line),
  }));
  return flow(sheet, items, top);
}
