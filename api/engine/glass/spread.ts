/**
 * How far off a prediction may be, as a function of the glass.
 *
 *     ln scale = base + Σ slopeⱼ xⱼ + leverageSlope · ln h(x),   h = |F·(1, x₂ … x₂₄)|²
 *
 * kept within the file's limits. The 1 stands in silica's place, which follows from the rest. h is the leverage of the glass among the training rows in the space of the oxides: small where data are dense,
 * large where they are thin. The slopes say which oxides papers disagree about. Both were fitted to the errors on
 * publications left out. Outside the training range the scale grows further: by a factor exp({@link WIDENING} · the sum of
 * what each oxide lies beyond its end of the range).
 *
 * @module
 */
import type { SpreadFile } from "./model-file.ts";
import { MODEL_OXIDES } from "./oxides.ts";

const N = MODEL_OXIDES.length;

/** Growth of ln scale per mole fraction outside the training range: doubled at 9 mol % beyond. A choice, no source. */
export const WIDENING = 8;

/**
 * Leverage of a glass among the training rows.
 * @param factor - inverse Cholesky factor of the rows' moments, lower triangle row by row
 * @param x - mole fractions in the order of MODEL_OXIDES (longer vectors are read to that length) [-]
 * @returns h, positive [-]
 */
export function leverageOf(factor: Float64Array, x: Float64Array): number {
  let sum = 0;
  let at = 0;
  for (let i = 0; i < N; i++) {
    // The constant stands in silica's place: the mole fractions sum to 1, so silica would say nothing new.
    let dot = factor[at++]!;
    for (let j = 1; j <= i; j++) dot += factor[at++]! * x[j]!;
    sum += dot * dot;
  }
  return sum;
}

/**
 * Makes the scale function of a fitted property.
 * @param spread - fitted figures from the model file
 * @param low - training range, lower ends, mole fractions
 * @param high - training range, upper ends
 * @returns function of the glass → scale of the residuals in the model's unit
 */
export function scaleFunction(spread: SpreadFile, low: Float64Array, high: Float64Array): (x: Float64Array) => number {
  const { base, leverageSlope, limits } = spread;
  const slopes = Float64Array.from(MODEL_OXIDES, (oxide) => spread.slopes[oxide] ?? 0);
  const factor = Float64Array.from(spread.leverageFactor);
  return (x) => {
    let log = base + leverageSlope * Math.log(leverageOf(factor, x));
    let beyond = 0;
    for (let i = 0; i < N; i++) {
      log += slopes[i]! * x[i]!;
      beyond += Math.max(x[i]! - high[i]!, low[i]! - x[i]!, 0);
    }
    return Math.exp(Math.min(Math.max(log, limits[0]), limits[1]) + WIDENING * beyond);
  };
}
