/**
 * Crawling, beading and pinholing: what to look at first.
 *
 * Nobody has a formula for these, so there is no number: each line says how likely it is to matter here, what put it on
 * the list, how to check and what to change. Limits are common practice, no source, unless a line names one.
 *
 * @module
 */
import { crawlingLines } from "./crawling.ts";
import { pinholingLines } from "./pinholing.ts";
import type { RecipeSigns } from "./recipe-signs.ts";
import type { Fault, Likelihood } from "./types.ts";

/** What the list is made from. */
export interface Situation {
  signs: readonly RecipeSigns[];
  /** Of all coats together [mm]. */
  thicknessMm: number;
  coats: number;
  /** At the peak [log10 Pa·s]. */
  logViscosity: number;
  /** Minutes runnier than 10^4 Pa·s [min]. */
  meltMinutes: number;
  /** Minutes of soak within 60 °C of the peak [min]. */
  soakMinutes: number;
  /** [mN/m], and whether it was summed from the oxides. */
  tension: number;
  tensionKnown: boolean;
  tensionSource: string;
  /** Whether a coat goes over a glaze that is fired already. */
  overFired: boolean;
  bisque: boolean;
}

const RANK: Readonly<Record<Likelihood, number>> = { likely: 0, possible: 1, unlikely: 2 };

/**
 * The checklist, likeliest first.
 * @param situation - figures of this glaze, firing and ware
 */
export function checklist(situation: Situation): Fault[] {
  const lines = [...crawlingLines(situation), ...pinholingLines(situation)];
  return lines.sort((a, b) => RANK[a.likelihood] - RANK[b.likelihood]);
}

/** The word for a figure against two limits; both limits count upwards. @example word(30, 20, 40) // "possible" */
export function word(figure: number, possible: number, likely: number): Likelihood {
  if (figure >= likely) return "likely";
  return figure >= possible ? "possible" : "unlikely";
}

/** The largest of what the coats bring; null where no recipe is known. */
export function most(signs: readonly RecipeSigns[], of: (signs: RecipeSigns) => number | null): number | null {
  const known = signs.flatMap((each) => of(each) ?? []);
  return known.length > 0 ? Math.max(...known) : null;
}

export const PRACTICE = "common-practice";
