/**
 * A number that is never bare: it carries its interval, coverage, unit and, where it matters, the
 * temperature range over which it is a mean.
 *
 * @module
 */

/** A value with the interval that should hold the truth in `coverage` of cases. */
export interface Quantity {
  value: number;
  low: number;
  high: number;
  /** Share of cases in which the truth should lie between `low` and `high` [-]. */
  coverage: number;
  /** Unit as printed beside the number, e.g. `1e-6/K`. */
  unit: string;
  /** Temperature range of a mean value, [from, to] in °C. */
  rangeC?: [number, number];
}

/** Unit strings used across the product. One spelling each. */
export const UNITS = {
  expansion: "1e-6/K",
  stress: "MPa",
  modulus: "GPa",
  temperature: "°C",
  difference: "K",
  strain: "%",
  length: "mm",
  density: "g/cm3",
  logViscosity: "log10(Pa·s)",
} as const;

/**
 * Rounds to a fixed number of decimals, so that answers are the same to the last digit everywhere.
 * @param value - any finite number
 * @param decimals - digits kept after the point [-]
 * @returns the rounded number, never −0
 * @example round(6.4249, 2) // 6.42
 */
export function round(value: number, decimals: number): number {
  const scale = 10 ** decimals;
  return Math.round(value * scale) / scale + 0;
}

/**
 * Builds a {@link Quantity} with every figure rounded alike.
 * @param value - central value in `unit`
 * @param low - lower end of the interval in `unit`
 * @param high - upper end of the interval in `unit`
 * @param unit - one of {@link UNITS}
 * @param options - `decimals` kept (default 2), `coverage` (default 0.9), `rangeC` of a mean [°C]
 * @example quantity(6.42, 5.8, 7.04, UNITS.expansion, { rangeC: [20, 300] })
 */
export function quantity(
  value: number,
  low: number,
  high: number,
  unit: string,
  options: { decimals?: number; coverage?: number; rangeC?: readonly [number, number] } = {},
): Quantity {
  const { decimals = 2, coverage = 0.9, rangeC } = options;
  const rounded: Quantity = {
    value: round(value, decimals),
    low: round(low, decimals),
    high: round(high, decimals),
    coverage,
    unit,
  };
  if (rangeC) rounded.rangeC = [rangeC[0], rangeC[1]];
  return rounded;
}

/**
 * What a property model knows about one property of one glass: a centre, and a spread that keeps its shape.
 * A draw is `value + scale * z`, where z follows the model's own table of standardised residuals, so heavy
 * tails found on unseen publications stay heavy in the fit.
 */
export interface Estimate {
  /** Central prediction, in the property's unit. */
  value: number;
  /** Scale of the residual distribution, in the property's unit. */
  scale: number;
  /** Standardised residual quantiles at probabilities (i + 0.5) / length, ascending [-]. */
  shape: readonly number[];
}

/**
 * Quantile of an {@link Estimate}, by linear interpolation in its table of standardised residuals. Below the table's
 * first probability and above its last the end values hold: no residual was seen beyond them.
 * @param estimate - centre, scale and shape
 * @param probability - between 0 and 1 [-]
 * @returns the value below which the truth lies with that probability, in the property's unit
 * @example quantileOf({ value: 6, scale: 0.5, shape: [-1, 0, 1] }, 0.5) // 6
 */
export function quantileOf(estimate: Estimate, probability: number): number {
  const { value, scale, shape } = estimate;
  const n = shape.length;
  const at = Math.min(Math.max(probability * n - 0.5, 0), n - 1);
  const i = Math.min(Math.floor(at), n - 2);
  const low = shape[Math.max(i, 0)] ?? 0;
  const high = shape[i + 1] ?? low;
  return value + scale * (low + (high - low) * (at - i));
}

/**
 * What an impossible expansion was probably meant to be: the same digits in 1e-7/K, 1e-8/K or plain 1/K.
 * @param value - as read, in 1e-6/K
 * @returns the value in 1e-6/K to two decimals, or undefined where no such reading gives a usual one
 * @example expansionMeant(610) // 6.1
 */
export function expansionMeant(value: number): number | undefined {
  const meant = [value / 10, value / 100, value * 1e6].find((v) => v >= 1 && v <= 15);
  return meant === undefined ? undefined : round(meant, 2);
}
