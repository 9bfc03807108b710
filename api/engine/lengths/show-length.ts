/** Lengths on their way out: quantities in the unit asked for, and figures rounded as a maker sets them. @module */
import { type Quantity, quantity, round } from "../quantity.ts";
import { MM } from "./read-length.ts";
import type { LengthUnit, RoundedLength } from "./types.ts";

/** Decimals shown: finer than callipers read, so that nothing is lost [-]. */
const DECIMALS: Readonly<Record<LengthUnit, number>> = { mm: 2, cm: 3, in: 3 };

/** A number in `unit`, rounded as quantities are. */
export const inUnit = (mm: number, unit: LengthUnit): number => round(mm / MM[unit], DECIMALS[unit]);

/**
 * A length with its interval, in the unit asked for.
 * @param mm - value, low and high [mm]
 */
export function lengthQuantity(mm: { value: number; low: number; high: number }, unit: LengthUnit): Quantity {
  const scale = MM[unit];
  return quantity(mm.value / scale, mm.low / scale, mm.high / scale, unit, { decimals: DECIMALS[unit] });
}

/**
 * A length as it is set on callipers: to 1 mm (0.5 mm below 20 mm), 0.1 cm (0.05 cm below 2 cm), 1/16 in (1/32 in below
 * 1 in). What must fit something else goes to 0.1 mm, 0.01 cm or 1/64 in. Common practice, no source.
 * @param mm - exact length [mm]
 * @param unit - unit to say it in
 * @param fits - whether it must fit another piece
 * @returns the rounded length and its text, never rounded to nothing
 * @example roundLength(102.27, "mm").text // "102 mm"
 */
export function roundLength(mm: number, unit: LengthUnit, fits = false): RoundedLength {
  const step = fits ? FIT_STEP[unit] : stepOf(mm, unit);
  const value = round(Math.max(1, Math.round(mm / MM[unit] / step)) * step, 6);
  return { value, unit, text: textOf(value, unit) };
}

const FIT_STEP: Readonly<Record<LengthUnit, number>> = { mm: 0.1, cm: 0.01, in: 1 / 64 };

function stepOf(mm: number, unit: LengthUnit): number {
  if (unit === "in") return mm < MM.in ? 1 / 32 : 1 / 16;
  if (unit === "cm") return mm < 20 ? 0.05 : 0.1;
  return mm < 20 ? 0.5 : 1;
}

/** A length in words; inches as a whole and a fraction. */
function textOf(value: number, unit: LengthUnit): string {
  if (unit !== "in") return `${round(value, 2)} ${unit}`;
  const whole = Math.floor(value + 1e-9);
  let [top, bottom] = [Math.round((value - whole) * 64), 64];
  if (top === 0) return `${whole} in`;
  while (top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  return whole > 0 ? `${whole} ${top}/${bottom} in` : `${top}/${bottom} in`;
}

/** A millimetre figure for a sentence, in the unit asked for: `102.3 mm`, `4.03 in`. */
export function sayLength(mm: number, unit: LengthUnit): string {
  const decimals = unit === "mm" ? (mm < 20 ? 2 : 1) : 2;
  return `${round(mm / MM[unit], decimals)} ${unit}`;
}
