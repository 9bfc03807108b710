/** What becomes of every draw: holds, cracks at once or in time, lifts. @module */

import { moistureAge } from "../body/index.ts";
import { larger } from "../numeric/larger.ts";
import { POISSON, TENSILE_SHARE, TOUGHNESS } from "./constants.ts";
import { channellingFactor, contrastOf, delayedShare, drivingStress, YEAR_S } from "./cracking.ts";
import { edgeEnergy } from "./delamination.ts";
import { DRAWS } from "./draws.ts";
import { type Bent, type CoatArrays, type Deviates, facesOf, type Situation } from "./simulate.ts";
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
 * In a piece that bends stress slopes: σ is what drives a crack ({@link drivingStress}), and the wall splits as
 * {@link bentSplits} says. What the growth of the clay adds is taken as even there too.
 * @param s - the situation
 * @param z - deviates
 * @param interfaceToughness - Γ of each draw [J/m²]
 * @param bodyPa - stiffness of the clay [Pa]
 * @param skin - the only coat, or all together
 * @param coats - each coat
 * @param bent - what slopes, if the piece bends
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
  bent: Bent | null,
  { root, outcome, failed }: Judged,
): { edges: number; flakes: number; splits: number } {
  const { toughness, moisture, rupture } = z;
  const { stress, glazeM, glazePa } = skin;
  const { wallM, edgeM } = s;
  // Plane-strain moduli E/(1 − ν²).
  const glazePlane = 1 / (1 - POISSON ** 2);
  const bodyPlane = 1 / (1 - s.body.poisson ** 2);
  // The loop fetches nothing but its arrays: reaching out for every figure slowed it down.
  const { value: tough, sd: toughSd } = s.toughness;
  const { value: floor, sd: floorSd } = TOUGHNESS.floor;
  const { value: swelling, sd: swellingSd } = s.body.moisturePercent;
  const { value: strength, sd: strengthSd } = s.body.ruptureMPa;
  const perPercent = moistureAge(s.serviceYears) / 100 / (1 - POISSON);
  const inTime = delayedShare(s.serviceYears * YEAR_S);
  const faces = facesOf(s);
  const apart = coats.length > 1 || bent !== null;
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
    const k = tough + toughSd * toughness[i]!;
    const growth = larger(swelling + swellingSd * moisture[i]!, 0) * perPercent;
    let intensity = now * r;
    let later = (now + growth * stiff) * r;
    if (apart) {
      intensity = worstOf(skin, coats, bent !== null, i, factor, r, 0);
      later = worstOf(skin, coats, bent !== null, i, factor, r, growth);
    }
    let rank = SOUND;
    if (now < 0) {
      const bears = larger(strength + strengthSd * rupture[i]!, 1) * 1e6 * TENSILE_SHARE;
      const flakes = edgeEnergy(now, thick, stiff, POISSON) >= interfaceToughness[i]!;
      const pull = -now * thick;
      const edges = pull >= bears * edgeM;
      if (pull * faces >= bears * wallM) wallsSplit++;
      if (flakes) facesFlake++;
      if (edges) edgesLift++;
      if (flakes || edges) rank = SHIVERS;
    }
    if (intensity >= k) rank = CRAZES_ON_COOLING;
    else if (later >= larger(floor + floorSd * toughness[i]!, inTime * k)) rank = CRAZES_LATER;
    outcome[i] = rank;
    failed[i] = rank === SOUND ? 0 : 1;
  }
  if (bent !== null) wallsSplit = bentSplits(s, rupture, bent.underGlaze, skin);
  return { edges: edgesLift, flakes: facesFlake, splits: wallsSplit };
}

/**
 * How many walls split that bend under their glaze. Pulled on one side alone, clay bears its whole modulus of rupture,
 * which is measured in bending; pulled evenly, only a share of it. Either will do: a thick glaze on a thin wall pulls the
 * wall almost evenly (that both are asked, and not their sum, is a choice, no source).
 *
 *     σ_b under the glaze ≥ R,   or  −σt/H ≥ 0.6 R
 *
 * @param rupture - deviates of the modulus of rupture
 * @param underGlaze - stress in the clay directly under the glaze [Pa]
 */
function bentSplits(s: Situation, rupture: Float64Array, underGlaze: Float64Array, skin: CoatArrays): number {
  const { value, sd } = s.body.ruptureMPa;
  let splits = 0;
  for (let i = 0; i < DRAWS; i++) {
    const bears = larger(value + sd * rupture[i]!, 1) * 1e6;
    const mean = (-skin.stress[i]! * skin.glazeM[i]!) / s.wallM;
    if (underGlaze[i]! >= bears || mean >= bears * TENSILE_SHARE) splits++;
  }
  return splits;
}

/**
 * Stress intensity of the skin as a whole, or of the coat that comes nearer to cracking, after some growth of the clay
 * [MPa·√m].
 * @param root - √(Zh) of the skin
 */
function worstOf(
  skin: CoatArrays,
  coats: readonly CoatArrays[],
  bends: boolean,
  i: number,
  factor: number,
  root: number,
  growth: number,
): number {
  const driving = ({ stress, across, glazePa }: CoatArrays) =>
    drivingStress(stress[i]! + growth * glazePa[i]!, bends ? across[i]! : 0);
  let most = driving(skin) * root;
  for (const coat of coats) most = larger(driving(coat) * Math.sqrt(factor * coat.glazeM[i]!) * 1e-6, most);
  return most;
}
