/** Evidence in a potter's words. @module */
import { chances } from "../fit/words.ts";
import type { Quantity } from "../quantity.ts";

/** @example expansionWords(quantity(7.1, 6.4, 7.8, "1e-6/K")) // "7.1 (6.4 to 7.8) ×10⁻⁶/K" */
export function expansionWords({ value, low, high }: Quantity): string {
  return `${value.toFixed(1)} (${low.toFixed(1)} to ${high.toFixed(1)})\u00a0×10⁻⁶/K`;
}

/** @example chanceWords(0.26) // "about 5 in 20" */
export function chanceWords(chance: number): string {
  return chances(Math.round(chance * 20));
}
