/** From a thousand judged draws to twenty cases and one word. @module */

import { round } from "../quantity.ts";
import { RANKED } from "./draw-outcome.ts";
import { DRAWS } from "./draws.ts";
import type { Simulation } from "./simulate.ts";
import type { Outcome, StressCase, Verdict } from "./types.ts";

/** How many cases stand for all. */
export const CASES = 20;

/** Verdict with the counts it rests on. */
export interface Judgement {
  verdict: Verdict;
  /** Of twenty. */
  of20: Record<Outcome, number>;
}

/** Stress at which each outcome begins, in the middle of the doubt [Pa]. */
export interface CentralThresholds {
  cracksOnCooling: number;
  mayCrackInTime: number;
  flakesComeOff: number;
}

/**
 * Twenty equally likely cases: draws put in order of outcome, then of stress, and every twentieth taken from its middle.
 * So the number of cases of an outcome is its probability in twentieths, rounded, and the twenty always add up.
 * A case is placed on its own side of the central thresholds, since each draw had thresholds of its own.
 * @param order - draws by stress, ascending
 * @returns cases from the most squeezed to the most stretched, stress to 0.1 MPa
 */
export function twentyCases(
  { stress, outcome, counts }: Simulation,
  order: Uint16Array,
  thresholds: CentralThresholds,
): StressCase[] {
  // Draws dealt to their outcomes in order of stress: place within the outcome after the outcomes before it.
  const next = [0, 0, 0, 0];
  for (let rank = 1; rank < RANKED.length; rank++) next[rank] = next[rank - 1]! + counts[RANKED[rank - 1]!];
  for (let i = 0; i < DRAWS; i++) dealt[next[outcome[order[i]!]!]!++] = order[i]!;
  // On clay that swells very much nothing between flaking and cracking in time is left.
  const flakes = Math.min(thresholds.flakesComeOff, thresholds.mayCrackInTime);
  const limits: Record<Outcome, readonly [number, number]> = {
    shivers: [Number.NEGATIVE_INFINITY, flakes],
    sound: [flakes, thresholds.mayCrackInTime],
    crazesLater: [thresholds.mayCrackInTime, thresholds.cracksOnCooling],
    crazesOnCooling: [thresholds.cracksOnCooling, Number.POSITIVE_INFINITY],
  };
  return MIDDLES.map((middle) => {
    const draw = dealt[middle]!;
    const name = RANKED[outcome[draw]!]!;
    const [low, high] = limits[name];
    return { stressMPa: round(Math.min(Math.max(stress[draw]!, low), high) / 1e6, 1), outcome: name };
  });
}

const dealt = new Uint16Array(DRAWS);
/** Rank of the middle draw of each twentieth. */
const MIDDLES = Array.from({ length: CASES }, (_, i) => Math.floor(((i + 0.5) / CASES) * DRAWS));

/**
 * One word: 15 of 20 crack or lift, it will; 4 to 14, it may; 17 or more hold, it is sound. Both sides at risk, the larger speaks.
 * @param cases - the twenty cases
 */
export function judge(cases: readonly StressCase[]): Judgement {
  const of20 = { crazesOnCooling: 0, crazesLater: 0, sound: 0, shivers: 0 };
  for (const { outcome } of cases) of20[outcome]++;
  const crazes = of20.crazesOnCooling + of20.crazesLater;
  const { shivers, sound } = of20;
  if (crazes >= 15) return { verdict: "crazes", of20 };
  if (shivers >= 15) return { verdict: "shivers", of20 };
  if (sound >= 17) return { verdict: "sound", of20 };
  return { verdict: crazes >= shivers ? "may-craze" : "may-shiver", of20 };
}
