/** Figures that say how close predictions came. @module */
import type { AccuracyFigures } from "../../api/engine/glass/types.ts";

/**
 * Summary of errors, predicted minus measured.
 * @param errors - one a row, in the property's unit
 * @returns count, median and 90th percentile of the absolute error, mean error, root mean square
 * @example accuracyOf([1, -1, 2, -2]) // { n: 4, medianAbsoluteError: 1.5, bias: 0, p90: 2, rmse: 1.581 }
 */
export function accuracyOf(errors: readonly number[]): AccuracyFigures {
  const n = errors.length;
  const absolute = errors.map(Math.abs);
  return {
    n,
    medianAbsoluteError: keep(quantile(absolute, 0.5)),
    bias: keep(errors.reduce((sum, e) => sum + e, 0) / n),
    p90: keep(quantile(absolute, 0.9)),
    rmse: keep(Math.sqrt(errors.reduce((sum, e) => sum + e * e, 0) / n)),
  };
}

/** Quantile with linear interpolation between order statistics. */
export function quantile(values: readonly number[], probability: number): number {
  const sorted = Float64Array.from(values).sort();
  const at = probability * (sorted.length - 1);
  const i = Math.floor(at);
  const low = sorted[i] ?? Number.NaN;
  return low + ((sorted[i + 1] ?? low) - low) * (at - i);
}

function keep(value: number): number {
  return Math.round(value * 1000) / 1000 + 0;
}
