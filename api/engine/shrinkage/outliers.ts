/** Bars that stand apart from the others. @module */
import { round } from "../quantity.ts";
import type { Reading } from "./figure.ts";
import { studentQuantile } from "./student-t.ts";
import type { Outlier } from "./types.ts";

/** Chance of naming a bar where all are sound [-]. */
const ALARM = 0.05;

/**
 * Bars named by the two-sided Grubbs test at 5 %, one after another, at most a quarter of them.
 *
 *     G = |x − mean|/s  >  (n−1)/√n · √(t²/(n−2+t²)),   t at 1 − 0.05/2n and n − 2 degrees of freedom
 *
 * @param readings - in per cent; fewer than four name none
 * @returns the outliers, farthest first; they stay in the mean, and whoever reads decides
 * Source: grubbs-1969, from memory.
 */
export function findOutliers(readings: readonly Reading[]): Outlier[] {
  const outliers: Outlier[] = [];
  const rest = [...readings];
  while (rest.length >= 4 && outliers.length < Math.floor(readings.length / 4)) {
    const n = rest.length;
    const mean = rest.reduce((sum, { percent }) => sum + percent, 0) / n;
    const sd = Math.sqrt(rest.reduce((sum, { percent }) => sum + (percent - mean) ** 2, 0) / (n - 1));
    let far = 0;
    for (let i = 1; i < n; i++) if (Math.abs(rest[i]!.percent - mean) > Math.abs(rest[far]!.percent - mean)) far = i;
    const [{ name, percent }] = rest.splice(far, 1) as [Reading];
    // A millionth of a point is the rounding of a division, not a bar that stands apart.
    if (sd < 1e-6 || Math.abs(percent - mean) / sd <= grubbsLimit(n)) break;
    const others = rest.reduce((sum, one) => sum + one.percent, 0) / rest.length;
    const message = `${name} gives ${round(percent, 1)} %, the others ${round(others, 1)} % on average. Measure it again, and look for a crack or a bend.`;
    outliers.push({ name, percent: round(percent, 2), message });
  }
  return outliers;
}

/**
 * Largest G that n sound readings reach in 19 of 20 sets.
 * @example grubbsLimit(10) // 2.290
 */
export function grubbsLimit(n: number): number {
  const t = studentQuantile(1 - ALARM / (2 * n), n - 2);
  return ((n - 1) / Math.sqrt(n)) * Math.sqrt((t * t) / (n - 2 + t * t));
}
