/** A thousand possible pots: every uncertain input drawn, every outcome judged. @module */

import type { BodyModel, Spread } from "../body/index.ts";
import { larger } from "../numeric/larger.ts";
import type { Estimate } from "../quantity.ts";
import { drawCoat } from "./draw-coat.ts";
import { drawOutcomes, RANKED } from "./draw-outcome.ts";
import { drawStackStress, drawStress, meltIntoSkin } from "./draw-stress.ts";
import { DRAWS, type Draws, type Input } from "./draws.ts";
import { type Cooling, coolingOf } from "./set-point.ts";
import type { Outcome } from "./types.ts";

/** One coat of glaze. */
export interface Coat {
  /** Mean expansion 20–300 °C of the glass in bulk [1e-6/K]. */
  expansion: Estimate;
  /** Standard deviation of that from the spread of the materials [1e-6/K]. */
  recipeSd: number;
  /** Glass transition as reported by dilatometer or calorimeter [°C]: shown. */
  transitionC: Estimate;
  /** Temperature of 10^12 Pa·s [°C]: what the set point goes by. */
  t12C: Estimate;
  /** Fragility of the viscosity curve [-]. */
  fragility: number;
  /** Standard deviation of the set point about what that viscosity says [K]. */
  setPointSdK: number;
  youngsGPa: Estimate;
  /** Fracture toughness [MPa·√m]; of several coats, in the outer one, that of the least tough. */
  toughness: Spread;
  thicknessM: number;
}

/** Everything the fit knows of one question, in SI but for °C and 1e-6/K where named. The outer coat stands at the top. */
export interface Situation extends Coat {
  /** Coats below the outer one, the last on the clay; none for a single glaze. */
  under: readonly Coat[];
  /** Rise of the instantaneous expansion [1/K] about the anchor [°C]. */
  rise: { perKelvin: number; sd: number; anchorC: number };
  /** Standard deviation of the thickness, as a share [-]. */
  thicknessSd: number;
  body: BodyModel;
  wallM: number;
  glazed: "both-faces" | "one-face" | "one-face-free";
  /** Cooling from hot to cold. */
  cooling: readonly Cooling[];
  serviceYears: number;
  /** Radius of the sharpest glazed edge [m]. */
  edgeM: number;
  /** Whether the coat on the clay takes up clay. */
  onWare: boolean;
}

/** How many faces of the wall carry glaze [-]. */
export function facesOf({ glazed }: Situation): 1 | 2 {
  return glazed === "both-faces" ? 2 : 1;
}

/** Thickness of all coats together [m]. */
export function skinOf(s: Situation): number {
  return s.under.reduce((sum, { thicknessM }) => sum + thicknessM, s.thicknessM);
}

/** A piece that bends, an element a draw [Pa]. */
export interface Bent {
  /** Stress at the one face of the glaze less that at the other, without its sign; of several coats, without their steps. */
  across: Float64Array;
  /** Stress in the clay directly under the glaze, where a squeezed glaze pulls it hardest. */
  underGlaze: Float64Array;
}

/** One array element a draw; stresses [Pa], strains [-], temperatures [°C]. Of several coats, the skin as a whole. */
export interface Simulation {
  stress: Float64Array;
  /** Stress in each coat [Pa], the outer one first. */
  coatStress: readonly Float64Array[];
  mismatch: Float64Array;
  setPointC: Float64Array;
  /** Contraction from the set point to 20 °C of the (outer) glaze, as it counts on the ware, and of the clay. */
  glaze: Float64Array;
  clay: Float64Array;
  /** Young's modulus of the glaze [Pa]; its mean expansion 20–300 °C as it counts on the ware [1e-6/K]. */
  glazePa: Float64Array;
  alpha: Float64Array;
  /** What slopes in a piece that bends; null in a wall that stays straight. */
  bent: Bent | null;
  /** √(Zh) in units that turn Pa into MPa·√m. */
  root: Float64Array;
  /** Rank in {@link RANKED}. */
  outcome: Uint8Array;
  /** Draws in which the edge lifts, the face flakes, the wall splits. */
  lifted: { edges: number; flakes: number; splits: number };
  counts: Record<Outcome, number>;
  /** 1 where the glaze fails at all, 0 where it holds. */
  failed: Float64Array;
  /** What was drawn; of several coats, the outer one's, but for what the coat on the clay takes up. */
  deviates: Deviates;
}

/**
 * Draws every input and judges each draw, one step of the physics after the other over all draws.
 * @param s - the situation
 * @param draws - deviates of a seed
 * @returns arrays of {@link DRAWS} elements, with counts and shares; the arrays are used again by the next call, so read
 * them before it (fits run one after the other, and fresh arrays cost a third of the time)
 */
export function simulate(s: Situation, draws: Draws): Simulation {
  const { normal, even, shaped, interfaceToughness } = draws;
  const { bodyPa, underGlaze, skin: together, judged } = WORKSPACE;
  const stack: readonly Coat[] = [s, ...s.under];
  fillBody(s, normal.bodyStiffness, bodyPa);
  const coats = stack.map((coat, j) => {
    const w = coatArrays(j);
    const z: Deviates = {
      ...normal,
      // Only the coat on the clay takes up clay. All coats share their deviates: like glazes err alike.
      onWare: s.onWare && j === stack.length - 1 ? even.onWare : NOTHING,
      glazeExpansion: shaped("glazeExpansion", coat.expansion.shape),
      transition: shaped("transition", coat.t12C.shape),
      glazeStiffness: shaped("glazeStiffness", coat.youngsGPa.shape),
    };
    drawCoat(coat, s, coolingOf(s.cooling, coat.fragility), z, w);
    s.body.contraction(w.setPointC, normal, w.clay);
    for (let i = 0; i < DRAWS; i++) w.mismatch[i] = w.clay[i]! - w.glaze[i]!;
    return { w, z };
  });
  const outer = coats[0]!;
  const arrays = coats.map(({ w }) => w);
  const skin = arrays.length === 1 ? outer.w : together;
  const bent = s.glazed === "one-face-free" ? { across: skin.across, underGlaze } : null;
  if (arrays.length === 1) drawStress(s, bodyPa, outer.w, bent);
  else {
    drawStackStress(s, bodyPa, arrays, bent);
    meltIntoSkin(arrays, together);
  }
  const lifted = drawOutcomes(s, outer.z, interfaceToughness, bodyPa, skin, arrays, bent, judged);
  return {
    stress: skin.stress,
    coatStress: arrays.map(({ stress }) => stress),
    mismatch: skin.mismatch,
    setPointC: outer.w.setPointC,
    glazePa: skin.glazePa,
    alpha: skin.alpha,
    bent,
    glaze: outer.w.glaze,
    clay: outer.w.clay,
    root: judged.root,
    outcome: judged.outcome,
    lifted,
    counts: countsOf(judged.outcome),
    failed: judged.failed,
    deviates: arrays.length === 1 ? outer.z : { ...outer.z, onWare: coats.at(-1)!.z.onWare },
  };
}

const array = () => new Float64Array(DRAWS);
const NOTHING = array();

/** What is worked out for one coat, or for the skin as a whole; an element a draw. */
export interface CoatArrays {
  glazeM: Float64Array;
  glazePa: Float64Array;
  setPointC: Float64Array;
  alpha: Float64Array;
  glaze: Float64Array;
  clay: Float64Array;
  mismatch: Float64Array;
  stress: Float64Array;
  /** As in {@link Bent}; filled only where the piece bends. */
  across: Float64Array;
}

/** Deviates of every input, each in the shape of its own distribution. */
export type Deviates = Record<Input, Float64Array>;

const freshArrays = (): CoatArrays => ({
  glazeM: array(),
  glazePa: array(),
  setPointC: array(),
  alpha: array(),
  glaze: array(),
  clay: array(),
  mismatch: array(),
  stress: array(),
  across: array(),
});
const WORKSPACE = {
  bodyPa: array(),
  underGlaze: array(),
  judged: { root: array(), outcome: new Uint8Array(DRAWS), failed: array() },
  skin: freshArrays(),
  coats: [freshArrays()],
};

function coatArrays(j: number): CoatArrays {
  WORKSPACE.coats[j] ??= freshArrays();
  return WORKSPACE.coats[j]!;
}

/** Stiffness of the body [Pa]; it may not vanish, however far a deviate reaches. */
function fillBody(s: Situation, bodyStiffness: Float64Array, bodyPa: Float64Array): void {
  const { value, sd, floor = 1 } = s.body.youngsGPa;
  for (let i = 0; i < DRAWS; i++) bodyPa[i] = larger(value + sd * bodyStiffness[i]!, floor) * 1e9;
}

function countsOf(outcome: Uint8Array): Record<Outcome, number> {
  const tally = [0, 0, 0, 0];
  for (let i = 0; i < DRAWS; i++) tally[outcome[i]!]!++;
  return Object.fromEntries(RANKED.map((name, rank) => [name, tally[rank]!])) as Record<Outcome, number>;
}

/** Chances of each outcome [-], summing to 1. */
export function probabilitiesOf({ counts }: Simulation): Record<Outcome, number> {
  return {
    crazesOnCooling: counts.crazesOnCooling / DRAWS,
    crazesLater: counts.crazesLater / DRAWS,
    sound: counts.sound / DRAWS,
    shivers: counts.shivers / DRAWS,
  };
}
