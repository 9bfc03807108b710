/** How tough a glaze is by what it is made of. @module */
import type { Spread } from "../body/index.ts";
import { TOUGHNESS } from "./constants.ts";

/** Lead from which a glaze is half way to the toughness of lead glazes, boron to that of borosilicate ones [-]. */
const LEAD_FROM = 0.05;
const BORON_FROM = 0.1;
/** How far below such a limit one kind begins to pass into the other, and how far above it has become it [-]. */
const HALF_RAMP = 0.02;

/**
 * Fracture toughness of a glaze. Boron above 10 mol % raises it, lead above 5 mol % lowers it whatever else is there
 * (data/fit/mechanics.json). Value and deviation pass from one kind to the next in a straight line from 2 mol % below the
 * limit to 2 mol % above, so that no trace of an oxide moves an answer by a step (a choice, no source); outside that each
 * kind is itself.
 *
 *     K = lead·K_lead + (1 − lead)·(boron·K_borosilicate + (1 − boron)·K_alkali-lime),
 *     lead = (PbO − 3 mol %)/4,   boron = (B2O3 − 8 mol %)/4,   each from 0 to 1
 *
 * @param moleFractions - of the glaze [-]
 * @returns toughness with its standard deviation [MPa·√m]
 * @example toughnessOf({ SiO2: 0.9, B2O3: 0.1 }).value // 0.7875, half way from 0.75 to 0.825
 */
export function toughnessOf({ PbO = 0, B2O3 = 0 }: Readonly<Record<string, number>>): Spread {
  const boron = between(TOUGHNESS["alkali-lime"], TOUGHNESS.borosilicate, past(B2O3, BORON_FROM));
  return between(boron, TOUGHNESS.lead, past(PbO, LEAD_FROM));
}

function past(share: number, limit: number): number {
  return (share - limit + HALF_RAMP) / (2 * HALF_RAMP);
}

function between(from: Spread, to: Spread, share: number): Spread {
  if (share <= 0) return from;
  if (share >= 1) return to;
  return { ...to, value: from.value + (to.value - from.value) * share, sd: from.sd + (to.sd - from.sd) * share };
}

/** The less tough of two glazes. */
export function weaker(a: Spread, b: Spread): Spread {
  return b.value < a.value ? b : a;
}
