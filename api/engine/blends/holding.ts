/** How many of a fit's twenty likely cases hold, from the chances of a mixture. @module */
import type { Outcome } from "../fit/types.ts";

/** Cases of a fit. */
const CASES = 20;

/**
 * Cases that hold, counted as a fit counts them, so that 17 of them always say “sound”. Either end of the twenty is
 * counted in whole cases, by the middle of each; so there are never fewer than the chance promises, and up to one more.
 * @returns 0 to 20 [-]
 * @example casesHolding({ crazesOnCooling: 0.1, crazesLater: 0.07, sound: 0.81, shivers: 0.02 }) // 17
 */
export function casesHolding({ crazesOnCooling, crazesLater, shivers }: Readonly<Record<Outcome, number>>): number {
  const lifting = Math.floor(shivers * CASES + 0.5);
  const crazing = Math.ceil((crazesOnCooling + crazesLater) * CASES - 0.5);
  return CASES - lifting - crazing;
}
