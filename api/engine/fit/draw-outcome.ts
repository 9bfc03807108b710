/** What becomes of every draw: holds, cracks at once or in time, lifts. @module */

import { moistureAge } from "../body/index.ts";
import { larger } from "../numeric/larger.ts";
import { POISSON, TENSILE_SHARE, TOUGHNESS } from "./constants.ts";
import { channellingFactor, contrastOf, delayedShare, YEAR_S } from "./cracking.ts";
import { edgeEnergy } from "./delamination.ts";
import { DRAWS } from "./draws.ts";
import { type CoatArrays, type Deviates, facesOf, type Situation } from "./simulate.ts";
import type { Outcome } from "./types.ts";

/** Outcomes by rank, from the most squeezed to the most stretched. */
export const RANKED: readonly Outcome[] = ["shivers", "sound", "crazesLater", "crazesOnCooling"];
const SHIVERS = 0;
const SOUND = 1;
const CRAZES_LATER = 2;
const CRAZES_ON_COOLING = 3;

/** What is filled, an element a draw. */
export interface Judged {
  /** √(Zh) in units that turn Pa into MPa·√m. */
  root: Float64Array;
  /** Rank in {@link RANKED}. */
  outcome: Uint8Array;
  /** 1 where the glaze fails at all, 0 where it holds. */
  failed: Float64Array;
}

/**
 * Judges each draw. Cracks: σ ≥ K/√(Zh), with no root taken twice; later, K falls to what a crack needs to run within the
 * service time. Lifting: over the face where G₀ ≥ Γ, at the sharpest edge where the radial pull −σt/R exceeds what the
 * clay bears. The wall splits where the glaze pulls it harder than that. Of several coats any one may crack by itself.
 * @param s - the situation
 * @param z - deviates
 * @param interfaceToughness - Γ of each draw [J/m²]
 * @param bodyPa - stiffness of the clay [Pa]
 * @param skin - the only coat, or all together
 * @param coats - each coat
 * @param judged - filled
 * @returns draws in which the edge lifts, the face flakes, the wall splits
 */
export function drawOutcomes(
  s: Situation,
  z: Deviates,
  interfaceToughness: Float64Array,
  bodyPa: Float64Array,
  skin: CoatArrays,
  coats: readonly CoatArrays[],
  { root, outcome, failed }: Judged,
): { edges: number; flakes: number; splits: number } {
  const { toughness, moisture, rupture } = z;
  const { stress, glazeM, glazePa } = skin;
  const { wallM, edgeM } = s;
  // Plane-strain moduli E/(1 − ν²).
  const glazePlane = 1 / (1 - POISSON ** 2);
  const bodyPlane = 1 / (1 - s.body.poisson ** 2);
  const kIc = TOUGHNESS[s.toughness];
  const k0 = TOUGHNESS.floor;
  const swelling = s.body.moisturePercent;
  const perPercent = moistureAge(s.serviceYears) / 100 / (1 - POISSON);
  const strength = s.body.ruptureMPa;
  const inTime = delayedShare(s.serviceYears * YEAR_S);
  const faces = facesOf(s);
  const several = coats.length > 1;
  const worst = { now: 0, later: 0 };
  let edgesLift = 0;
  let facesFlake = 0;
  let wallsSplit = 0;
  for (let i = 0; i < DRAWS; i++) {
    const now = stress[i]!;
    const thick = glazeM[i]!;
    const stiff = glazePa[i]!;
    const factor = channellingFactor(contrastOf(stiff * glazePlane, bodyPa[i]! * bodyPlane));
    const r = Math.sqrt(factor * thick) * 1e-6;
    root[i] = r;
    const k = kIc.value + kIc.sd * toughness[i]!;
    const growth = larger(swelling.value + swelling.sd * moisture[i]!, 0) * perPercent;
    worst.now = now * r;
    worst.later = (now + growth * stiff) * r;
    if (several) worstCoat(coats, i, factor, growth, worst);
    let rank = SOUND;
    if (now < 0) {
      const bears = larger(strength.value + strength.sd * rupture[i]!, 1) * 1e6 * TENSILE_SHARE;
      const flakes = edgeEnergy(now, thick, stiff, POISSON) >= interfaceToughness[i]!;
      const pull = -now * thick;
      const edges = pull >= bears * edgeM;
      if (pull * faces >= bears * wallM) wallsSplit++;
      if (flakes) facesFlake++;
      if (edges) edgesLift++;
      if (flakes || edges) rank = SHIVERS;
    }
    if (worst.now >= k) rank = CRAZES_ON_COOLING;
    else if (worst.later >= larger(k0.value + k0.sd * toughness[i]!, inTime * k)) rank = CRAZES_LATER;
    outcome[i] = rank;
    failed[i] = rank === SOUND ? 0 : 1;
  }
  return { edges: edgesLift, flakes: facesFlake, splits: wallsSplit };
}

/** Raises `worst` to the coat that comes nearest to cracking, now and later [MPa·√m]. */
function worstCoat(
  coats: readonly CoatArrays[],
  i: number,
  factor: number,
  growth: number,
  worst: { now: number; later: number },
): void {
  for (const { stress, glazeM, glazePa } of coats) {
    const own = Math.sqrt(factor * glazeM[i]!) * 1e-6;
    const now = stress[i]! * own;
    const later = (stress[i]! + growth * glazePa[i]!) * own;
    worst.now = larger(now, worst.now);
    worst.later = larger(later, worst.later);
  }
}
