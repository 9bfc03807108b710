/** Numbers as a potter reads them. @module */
import type { Quantity } from "../quantity.ts";

/** Millimetres: two figures, never finer than a tenth where it runs. @example mm(1.324) // "1.3 mm" */
export function mm(value: number): string {
  if (value < 0.05) return "less than 0.1\u00a0mm";
  return `${value < 10 ? value.toFixed(1) : String(Math.round(value))}\u00a0mm`;
}

/** A coat's thickness. @example coatMm(0.3) // "0.30 mm" */
export function coatMm(value: number): string {
  return `${value.toFixed(2)}\u00a0mm`;
}

/** An interval of millimetres. @example span({ low: 0.41, high: 2.2 }) // "0.4 to 2.2 mm" */
export function span({ low, high }: Pick<Quantity, "low" | "high">): string {
  const digits = high < 10 ? 1 : 0;
  return `${low.toFixed(digits)} to ${high.toFixed(digits)}\u00a0mm`;
}

/** A chance in twenty. @example inTwenty(0.34) // "about 7 in 20" */
export function inTwenty(chance: number): string {
  const cases = Math.round(chance * 20);
  if (cases === 0) return "less than 1 in 20";
  return cases === 20 ? "more than 19 in 20" : `about ${cases} in 20`;
}

/** A length that was given, as it was given. @example stated(3) // "3 mm" */
export function stated(value: number): string {
  return `${Number(value.toFixed(2))}\u00a0mm`;
}

/** What a viscosity at the peak is like to a potter; limits are common practice, no source. @example flowWords(3) */
export function flowWords(logViscosity: number): string {
  if (logViscosity < 2) return "is as thin as syrup";
  if (logViscosity < 2.7) return "is very runny";
  if (logViscosity < 3.3) return "is runny";
  if (logViscosity < 4.2) return "stands up well";
  if (logViscosity < 5.5) return "is stiff and hardly flows";
  return "does not melt out";
}
