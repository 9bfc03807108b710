/** Rounding of tables at the edge; inside, figures are never rounded. @module */
import { round } from "../engine/quantity.ts";

/**
 * Rounds every figure of a table alike.
 * @example roundEach({ SiO2: 62.1234 }, 2) // { SiO2: 62.12 }
 */
export function roundEach(table: Readonly<Record<string, number>>, decimals: number): Record<string, number> {
  return Object.fromEntries(Object.entries(table).map(([key, value]) => [key, round(value, decimals)]));
}
