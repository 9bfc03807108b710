/** Figures as a potter reads them: true minus, unit, interval. @module */
import type { Quantity } from "../engine/quantity.ts";

/** A number with a true minus and no needless digits. */
export const plain = (value: number, decimals = 2): string => String(Number(value.toFixed(decimals))).replace("-", "−");

/** The same, its sign always told. */
export const signed = (value: number, decimals = 0): string =>
  (Number(value.toFixed(decimals)) > 0 ? "+" : "") + plain(value, decimals);

/**
 * A stress with its interval, to 1 MPa.
 * @example sayStress({ value: -35.2, low: -62, high: -8, coverage: 0.9, unit: "MPa" })
 * // "−35 MPa, likely −62 to −8 (9 in 10)"
 */
export function sayStress({ value, low, high, coverage, unit }: Quantity): string {
  return `${signed(value)} ${unit}, likely ${signed(low)} to ${signed(high)} (${sayCoverage(coverage)})`;
}

/**
 * An expansion with its interval and range.
 * @example sayExpansion({ value: 6.2, low: 5.9, high: 6.5, coverage: 0.9, unit: "1e-6/K", rangeC: [20, 500] })
 * // "6.2 ×10⁻⁶/K from 20 to 500 °C, likely 5.9 to 6.5 (9 in 10)"
 */
export function sayExpansion({ value, low, high, coverage, unit, rangeC }: Quantity): string {
  const range = rangeC ? ` from ${rangeC[0]} to ${rangeC[1]} °C` : "";
  const shown = unit.replace("1e-6", "×10⁻⁶");
  return `${plain(value)} ${shown}${range}, likely ${plain(low)} to ${plain(high)} (${sayCoverage(coverage)})`;
}

const sayCoverage = (coverage: number): string => `${Math.round(coverage * 10)} in 10`;
