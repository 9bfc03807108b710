/** What a picture of a blend reads, and which of its mixtures find room. @module */
import type { Outcome, Verdict } from "../../fit/types.ts";
import type { Quantity } from "../../quantity.ts";

/** One mixture: judged, or with the reason why not. */
export interface Mixture {
  /** What is scratched into the back of the tile. */
  label: string;
  /** Share of each corner by dry weight [-]. */
  shares: readonly number[];
  verdict?: Verdict;
  probabilities?: Readonly<Record<Outcome, number>>;
  stress?: Quantity;
}

/** A whole blend, as judged. */
export interface BlendToDraw {
  headline: string;
  /** Names of the corners. */
  corners: readonly string[];
  points: readonly Mixture[];
}

/** Every mixture of all corners, or a square with a glaze at each corner. */
export type BlendShape = "simplex" | "grid";

/** A mixture with a judgement. */
export type Judged = Mixture & Required<Pick<Mixture, "verdict" | "probabilities" | "stress">>;

export const isJudged = (mixture: Mixture): mixture is Judged => mixture.verdict !== undefined;

/** Whether a blend can be drawn: two corners or more, a square's four, with at least two mixtures. */
export function canDrawBlend({ corners, points }: BlendToDraw, shape: BlendShape): boolean {
  return (shape === "grid" ? corners.length === 4 : corners.length >= 2) && points.length >= 2;
}

/**
 * Where a mixture lies: across and down, each from 0 to 1.
 *
 * Line: across, by the second corner's share. Triangle: first corner on top, second left below, third right below.
 * Square: first and second on top, third and fourth below.
 */
export function whereIs(shares: readonly number[], shape: BlendShape): [across: number, down: number] {
  const [a = 0, b = 0, c = 0, d = 0] = shares;
  if (shape === "grid") return [b + d, c + d];
  return shares.length === 2 ? [b, 0] : [a / 2 + c, 1 - a];
}

/** Even steps through a blend that are few enough to draw, each on a mixture that is there. */
export function thinned(points: readonly Mixture[], shape: BlendShape, most: number): readonly Mixture[] {
  const keys = new Map(points.map((mixture) => [keyOf(counts(mixture.shares, shape)), mixture]));
  const [across, down] = sidesOf(points, shape);
  if (across <= most && down <= most) return points;
  const pick = (steps: number) => {
    const n = Math.min(steps, most);
    return Array.from({ length: n + 1 }, (_, i) => Math.round((i * steps) / n) / steps);
  };
  const [columns, rows] = [pick(across), pick(down)];
  const wanted = rows.flatMap((v, j) =>
    shape === "grid" ? columns.map((u) => keyOf([u, v])) : rows.slice(0, j + 1).map((_, i) => keyOf([rows[i]!, 1 - v])),
  );
  return wanted.flatMap((key) => keys.get(key) ?? []);
}

/** Steps along a blend's sides [-]. */
export function sidesOf(points: readonly Mixture[], shape: BlendShape): [across: number, down: number] {
  const [columns, rows] = axesOf(points, shape);
  return [Math.max(columns.length - 1, 1), Math.max(rows.length - 1, 1)];
}

/**
 * The small triangles between neighbouring mixtures, all going round the same way; none where a mixture is missing.
 * @returns places in `points`
 */
export function facetsOf(points: readonly Mixture[], shape: BlendShape): [number, number, number][] {
  const [columns, rows] = axesOf(points, shape);
  const place = new Map(points.map(({ shares }, k) => [keyOf(counts(shares, shape)), k]));
  const at = (i: number, j: number) => place.get(`${columns[i]} ${rows[j]}`) ?? -1;
  const facets: [number, number, number][] = [];
  for (let j = 0; j + 1 < rows.length; j++) {
    for (let i = 0; i + 1 < columns.length; i++) {
      const [here, across, under, over] = [at(i, j), at(i + 1, j), at(i, j + 1), at(i + 1, j + 1)];
      // A triangle's rows run from the first corner down and are one longer each: the other way across.
      if (shape === "grid") facets.push([here, across, under], [across, over, under]);
      else facets.push([here, over, under], [here, across, over]);
    }
  }
  return facets.filter((facet) => facet.every((k) => k >= 0));
}

/** The two numbers that tell a mixture from its neighbours: the place in a square; the last and the first share. */
function counts(shares: readonly number[], shape: BlendShape): [number, number] {
  return shape === "grid" ? whereIs(shares, shape) : [shares.at(-1) ?? 0, shares[0] ?? 0];
}

const whole = (value: number) => Math.round(value * 1e4);
const keyOf = (numbers: readonly number[]) => numbers.map(whole).join(" ");

/** Every value of those two numbers, as in the keys: from left to right and from the top down. */
function axesOf(points: readonly Mixture[], shape: BlendShape): [columns: number[], rows: number[]] {
  const values = (k: 0 | 1) => [...new Set(points.map(({ shares }) => whole(counts(shares, shape)[k])))];
  const columns = values(0).sort((a, b) => a - b);
  const rows = values(1).sort((a, b) => (shape === "grid" ? a - b : b - a));
  return [columns, rows];
}
