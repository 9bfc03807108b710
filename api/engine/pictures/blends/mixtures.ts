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

/** Whether a blend can be drawn: a line of two, a triangle of three or a square of four, with at least two mixtures. */
export function canDrawBlend({ corners, points }: BlendToDraw, shape: BlendShape): boolean {
  const sides = shape === "grid" ? corners.length === 4 : corners.length === 2 || corners.length === 3;
  return sides && points.length >= 2;
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
  const many = (k: 0 | 1) => new Set(points.map(({ shares }) => keyOf([counts(shares, shape)[k]]))).size - 1;
  return [Math.max(many(0), 1), Math.max(many(1), 1)];
}

/** The two numbers that tell a mixture from its neighbours: the place in a square; the last and the first share. */
function counts(shares: readonly number[], shape: BlendShape): [number, number] {
  return shape === "grid" ? whereIs(shares, shape) : [shares.at(-1) ?? 0, shares[0] ?? 0];
}

const keyOf = (numbers: readonly number[]) => numbers.map((value) => Math.round(value * 1e4)).join(" ");
