/** Temperatures in the reader's unit. @module */

export type Temperature = "C" | "F";

/** @example fromCelsius(100, "F") // 212 */
export const fromCelsius = (c: number, unit: Temperature) => (unit === "F" ? (c * 9) / 5 + 32 : c);
/** @example toCelsius(212, "F") // 100 */
export const toCelsius = (degrees: number, unit: Temperature) => (unit === "F" ? ((degrees - 32) * 5) / 9 : degrees);

/** A known temperature, to one degree. @example exactly(573, "F") // 1063 */
export const exactly = (c: number, unit: Temperature): number => Math.round(fromCelsius(c, unit));

/**
 * A worked-out temperature, to 5 °C. It is turned after rounding, so that it agrees with sentences turned from °C.
 * @example nearly(683, "F") // 1265
 */
export const nearly = (c: number, unit: Temperature): number => exactly(Math.round(c / 5) * 5, unit);
