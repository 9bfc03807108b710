/** From the shrinkages of several bars to a mean, a spread and an interval. @module */
import { quantity, round } from "../quantity.ts";
import { findOutliers } from "./outliers.ts";
import { PIECE_SD } from "./practice.ts";
import { chiSquareQuantile, studentQuantile } from "./student-t.ts";
import type { ShrinkageFigure } from "./types.ts";

/** Coverage of every interval here [-]; each end leaves half of the rest out. */
const COVERAGE = 0.9;
const UPPER = (1 + COVERAGE) / 2;
/** Normal quantile of the same coverage, for an assumed spread. */
const Z = 1.6448536269514722;
/** Most bars asked for [-]. */
const MOST_BARS = 1000;

/** One bar's figure. */
export interface Reading {
  name: string;
  percent: number;
}

/** A mean and how well it is known [points]. */
interface Estimated {
  mean: number;
  sd: number;
  /** Quantile that stretches a standard error to half of the interval. */
  reach: number;
  count: number;
}

/**
 * Mean, spread and 90 % interval of one shrinkage.
 *
 *     mean ± t·s/√n,   next piece: mean ± t·s·√(1 + 1/n),   t at 95 % and n − 1 degrees of freedom
 *
 * The spread is never taken below what the ruler can tell. One bar says nothing of spread: 0.3 points is assumed.
 * @param readings - at least one, in per cent
 * @param basis - what they are shares of
 * @param readingSd - what the ruler leaves open, one bar [points]
 * @param within - how near the mean should be known [points]
 * @param what - for the sentence, e.g. `Total shrinkage`
 */
export function shrinkageFigure(
  readings: readonly Reading[],
  basis: ShrinkageFigure["basis"],
  readingSd: number,
  within: number,
  what: string,
): ShrinkageFigure {
  const all = estimate(readings, readingSd);
  const { mean, sd, reach, count } = all;
  const next = reach * sd * Math.sqrt(1 + 1 / count);
  const outliers = findOutliers(readings);
  const named = new Set(outliers.map(({ name }) => name));
  const rest = readings.filter(({ name }) => !named.has(name));
  const figure = intervalOf(all);
  const moreBars = barsWanted(all, within) - count;
  const more = moreBars > 0 ? ` ${bars(moreBars)} more would bring that to ±${within} points.` : "";
  return {
    basis,
    bars: count,
    mean: figure,
    spread: count > 1 ? spreadOf(sd, count) : null,
    nextPiece: quantity(mean, mean - next, mean + next, "%"),
    outliers,
    withoutOutliers: outliers.length > 0 ? intervalOf(estimate(rest, readingSd)) : null,
    moreBars,
    message:
      `${what} is ${round(mean, 1)} % of ${basis}; nine times in ten the clay's own figure lies between ` +
      `${round(figure.low, 1)} and ${round(figure.high, 1)} %, from ${bars(count)}.${more}`,
  };
}

const bars = (count: number): string => `${count} ${count === 1 ? "bar" : "bars"}`;

function estimate(readings: readonly Reading[], readingSd: number): Estimated {
  const count = readings.length;
  const mean = readings.reduce((sum, { percent }) => sum + percent, 0) / count;
  if (count === 1) return { mean, sd: Math.hypot(PIECE_SD, readingSd), reach: Z, count };
  const squares = readings.reduce((sum, { percent }) => sum + (percent - mean) ** 2, 0);
  const sd = Math.max(Math.sqrt(squares / (count - 1)), readingSd);
  return { mean, sd, reach: studentQuantile(UPPER, count - 1), count };
}

function intervalOf({ mean, sd, reach, count }: Estimated) {
  const half = (reach * sd) / Math.sqrt(count);
  return quantity(mean, mean - half, mean + half, "%");
}

/** s √((n−1)/χ²) at both ends. */
function spreadOf(sd: number, count: number) {
  const end = (probability: number) => sd * Math.sqrt((count - 1) / chiSquareQuantile(probability, count - 1));
  return quantity(sd, end(UPPER), end(1 - UPPER), "points", { decimals: 3 });
}

/** Fewest bars, these included, whose mean would be known within `within`, should the spread stay as it is. */
function barsWanted({ sd, count }: Estimated, within: number): number {
  // t never falls below the normal quantile, so no fewer can do.
  const fewest = Math.min(MOST_BARS, Math.floor(((Z * sd) / within) ** 2));
  for (let wanted = Math.max(count, 2, fewest); wanted < MOST_BARS; wanted++) {
    if ((studentQuantile(UPPER, wanted - 1) * sd) / Math.sqrt(wanted) <= within) return wanted;
  }
  return MOST_BARS;
}
