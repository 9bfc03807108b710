/** A thousand possible pots: every uncertain input drawn, every outcome judged. @module */
import { type BodyModel, moistureAge } from "../body/index.ts";
import type { Estimate } from "../quantity.ts";
import { ON_WARE, POISSON, TENSILE_SHARE, TOUGHNESS } from "./constants.ts";
import { channellingFactor, delayedShare, stiffnessContrast, YEAR_S } from "./cracking.ts";
import { edgeEnergy } from "./delamination.ts";
import { DRAWS, type Draws, INPUTS, type Input } from "./draws.ts";
import { type Cooling, coolingOf, type GlassCooling, setPointAlong } from "./set-point.ts";
import { bilayerStress, type Layers, stackStress, straightWallStress } from "./stress.ts";
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
  toughness: keyof typeof TOUGHNESS;
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

/** Outcomes by rank, from the most squeezed to the most stretched. */
export const RANKED: readonly Outcome[] = ["shivers", "sound", "crazesLater", "crazesOnCooling"];

/** One array element a draw; stresses [Pa], strains [-], temperatures [°C]. Of several coats, the skin as a whole. */
export interface Simulation {
  stress: Float64Array;
  /** Stress in each coat [Pa], the outer one first. */
  coatStress: readonly Float64Array[];
  mismatch: Float64Array;
  setPointC: Float64Array;
  /** Mean expansion from 20 °C to the set point, as it counts on the ware [1e-6/K]. */
  glazeMean: Float64Array;
  bodyMean: Float64Array;
  /** Young's modulus of the glaze [Pa]; its mean expansion 20–300 °C as it counts on the ware [1e-6/K]. */
  glazePa: Float64Array;
  alpha: Float64Array;
  /** √(Zh) in units that turn Pa into MPa·√m. */
  root: Float64Array;
  /** Rank in {@link RANKED}. */
  outcome: Uint8Array;
  /** Draws in which the edge lifts, the face flakes, the wall splits. */
  lifted: { edges: number; flakes: number; splits: number };
  counts: Record<Outcome, number>;
  /** First-order share of the variance of the stress by input [-]. */
  shares: Record<Input, number>;
  /** The same of whether the glaze fails at all. */
  verdictShares: Record<Input, number>;
}

/** Inputs that move the stress (the others move only what it is compared with). */
const STRESS_INPUTS = INPUTS.filter(
  (input) => !["toughness", "moisture", "interface", "rupture", "quench"].includes(input),
);

/**
 * Contraction of a glass from a temperature to 20 °C.
 *
 *     ε = α (T − 20) (1 + s ((T + 20)/2 − anchor))
 *
 * @param alpha - mean expansion 20–300 °C [1/K]
 * @param c - temperature, below the set point [°C]
 * @param rise - s [1/K], and the anchor [°C] at which the instantaneous value equals the mean
 * @returns strain [-]
 * @remarks The classic mistake is α(20–300) × (T − 20): it leaves out the rise and some 40 MPa of stress.
 * @example glassContraction(6.5e-6, 650, 0.0011, 160) // 0.004884, against 0.004095 without the rise
 */
export function glassContraction(alpha: number, c: number, perKelvin: number, anchorC: number): number {
  return alpha * (c - 20) * (1 + perKelvin * ((c + 20) / 2 - anchorC));
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
  const stack: readonly Coat[] = [s, ...s.under];
  fillBody(s, normal, WORKSPACE.bodyPa);
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
    fillCoat(coat, s, z, w);
    setPoints(coat, coolingOf(s.cooling, coat.fragility), z, w);
    glazeContractions(coat, s, z, w);
    s.body.contraction(w.setPointC, normal, w.clay);
    for (let i = 0; i < DRAWS; i++) w.mismatch[i] = w.clay[i]! - w.glaze[i]!;
    return { w, z };
  });
  const outer = coats[0]!;
  const arrays = coats.map(({ w }) => w);
  if (arrays.length === 1) stresses(s, outer.w);
  else stackStresses(s, arrays);
  const skin = arrays.length === 1 ? outer.w : skinArrays(arrays);
  const { root, failed, outcome } = WORKSPACE;
  const lifted = outcomes(s, outer.z, interfaceToughness, skin, arrays);
  const { glazeMean, bodyMean } = means(outer.w);

  const tally = [0, 0, 0, 0];
  for (let i = 0; i < DRAWS; i++) tally[outcome[i]!]!++;
  return {
    stress: skin.stress,
    coatStress: arrays.map(({ stress }) => stress),
    mismatch: skin.mismatch,
    setPointC: outer.w.setPointC,
    glazePa: skin.glazePa,
    alpha: skin.alpha,
    glazeMean,
    bodyMean,
    root,
    outcome,
    lifted,
    counts: Object.fromEntries(RANKED.map((name, rank) => [name, tally[rank]!])) as Record<Outcome, number>,
    shares: sharesOf(skin.stress, outer.z, STRESS_INPUTS),
    verdictShares: sharesOf(failed, outer.z, INPUTS),
  };
}

const array = () => new Float64Array(DRAWS);
const NOTHING = array();

/** What is worked out for one coat, or for the skin as a whole; an element a draw. */
interface CoatArrays {
  glazeM: Float64Array;
  glazePa: Float64Array;
  setPointC: Float64Array;
  alpha: Float64Array;
  glaze: Float64Array;
  clay: Float64Array;
  mismatch: Float64Array;
  stress: Float64Array;
}

const freshArrays = (): CoatArrays => ({
  glazeM: array(),
  glazePa: array(),
  setPointC: array(),
  alpha: array(),
  glaze: array(),
  clay: array(),
  mismatch: array(),
  stress: array(),
});
const WORKSPACE = {
  bodyPa: array(),
  root: array(),
  failed: array(),
  glazeMean: array(),
  bodyMean: array(),
  outcome: new Uint8Array(DRAWS),
  skin: freshArrays(),
  coats: [freshArrays()],
};

function coatArrays(j: number): CoatArrays {
  WORKSPACE.coats[j] ??= freshArrays();
  return WORKSPACE.coats[j]!;
}

/** Deviates of every input, each in the shape of its own distribution. */
type Deviates = Record<Input, Float64Array>;

/** Stiffness of the body [Pa]; it may not vanish, however far a deviate reaches. */
function fillBody(s: Situation, { bodyStiffness }: Deviates, bodyPa: Float64Array): void {
  const { value, sd, floor = 1 } = s.body.youngsGPa;
  for (let i = 0; i < DRAWS; i++) bodyPa[i] = Math.max(value + sd * bodyStiffness[i]!, floor) * 1e9;
}

/** Thickness [m] and stiffness [Pa] of a coat. */
function fillCoat(coat: Coat, s: Situation, z: Deviates, { glazeM, glazePa }: CoatArrays): void {
  const { thickness, glazeStiffness } = z;
  const { value, scale } = coat.youngsGPa;
  for (let i = 0; i < DRAWS; i++) {
    glazeM[i] = coat.thicknessM * Math.max(1 + s.thicknessSd * thickness[i]!, 0.2);
    glazePa[i] = Math.max(value + scale * glazeStiffness[i]!, 20) * 1e9;
  }
}

function setPoints(coat: Coat, cooling: readonly GlassCooling[], z: Deviates, w: CoatArrays): void {
  const { transition, setPoint, onWare } = z;
  const { glazeM, setPointC } = w;
  const { value, scale } = coat.t12C;
  const steady = cooling.length === 1 ? cooling[0]!.ramp : undefined;
  for (let i = 0; i < DRAWS; i++) {
    const t12 = value + scale * transition[i]! + ON_WARE.mostRiseK * takenUp(glazeM[i]!, onWare[i]!);
    const setting = steady !== undefined ? (t12 + ZERO_C) * steady - ZERO_C : setPointAlong(t12, cooling);
    const c = setting + coat.setPointSdK * setPoint[i]!;
    setPointC[i] = Math.min(Math.max(c, 200), 1000);
  }
}

function glazeContractions(coat: Coat, s: Situation, z: Deviates, w: CoatArrays): void {
  const { glazeExpansion, recipe, onWare, glazeRise } = z;
  const { glazeM, setPointC, alpha, glaze } = w;
  const { value, scale } = coat.expansion;
  const { perKelvin, sd, anchorC } = s.rise;
  for (let i = 0; i < DRAWS; i++) {
    const bulk = value + scale * glazeExpansion[i]! + coat.recipeSd * recipe[i]!;
    alpha[i] = bulk - onWareDrop(glazeM[i]!, onWare[i]!);
    glaze[i] = glassContraction(alpha[i]! * 1e-6, setPointC[i]!, perKelvin + sd * glazeRise[i]!, anchorC);
  }
}

/**
 * How much less a glaze expands on ware than the same glass in bulk: between nothing and the most on record for a thin
 * skin, falling with thickness because the depth that takes up clay stays the same. What is taken up also stiffens it,
 * so that it sets higher.
 * @param glazeM - thickness [m]
 * @param evenly - deviate between 0 and 1 [-]
 * @returns drop of the mean expansion [1e-6/K], never negative
 * Source: Inada 1978 (part 4); Merritt & Peters 1926.
 * @example onWareDrop(0.0003, 0.5) // 0.3125
 */
export function onWareDrop(glazeM: number, evenly: number): number {
  return ON_WARE.mostDrop * takenUp(glazeM, evenly);
}

/** How far a glaze has taken up clay, against the most on record for a thin skin [-]. */
function takenUp(glazeM: number, evenly: number): number {
  return evenly * Math.min(1, (ON_WARE.fullUpToMm * 1e-3) / glazeM);
}

function stresses(s: Situation, { mismatch, stress, glazeM, glazePa }: CoatArrays): void {
  const { bodyPa } = WORKSPACE;
  const faces = facesOf(s);
  const freeToBend = s.glazed === "one-face-free";
  const pair: Layers = {
    glazePa: 0,
    glazePoisson: POISSON,
    glazeM: 0,
    bodyPa: 0,
    bodyPoisson: s.body.poisson,
    wallM: s.wallM,
  };
  for (let i = 0; i < DRAWS; i++) {
    pair.glazePa = glazePa[i]!;
    pair.glazeM = glazeM[i]!;
    pair.bodyPa = bodyPa[i]!;
    stress[i] = freeToBend
      ? bilayerStress(pair, mismatch[i]!).glazeMean
      : straightWallStress(pair, mismatch[i]!, faces);
  }
}

/** Several coats: each pulls the common wall, see {@link stackStress}. */
function stackStresses(s: Situation, coats: readonly CoatArrays[]): void {
  const { bodyPa } = WORKSPACE;
  const layers = coats.map(() => ({ pa: 0, poisson: POISSON, thicknessM: 0, mismatch: 0 }));
  const wall = { pa: 0, poisson: s.body.poisson, thicknessM: s.wallM };
  for (let i = 0; i < DRAWS; i++) {
    wall.pa = bodyPa[i]!;
    for (let j = 0; j < coats.length; j++) {
      const layer = layers[j]!;
      layer.pa = coats[j]!.glazePa[i]!;
      layer.thicknessM = coats[j]!.glazeM[i]!;
      layer.mismatch = coats[j]!.mismatch[i]!;
    }
    const stress = stackStress(layers, wall, s.glazed);
    for (let j = 0; j < coats.length; j++) coats[j]!.stress[i] = stress[j]!;
  }
}

/** The skin as a whole: thickness added, everything else averaged by thickness. */
function skinArrays(coats: readonly CoatArrays[]): CoatArrays {
  const { skin } = WORKSPACE;
  for (let i = 0; i < DRAWS; i++) {
    let thickness = 0;
    for (const coat of coats) thickness += coat.glazeM[i]!;
    const mean = (key: "stress" | "mismatch" | "glazePa" | "alpha"): number => {
      let sum = 0;
      for (const coat of coats) sum += coat[key][i]! * coat.glazeM[i]!;
      return sum / thickness;
    };
    skin.glazeM[i] = thickness;
    skin.stress[i] = mean("stress");
    skin.mismatch[i] = mean("mismatch");
    skin.glazePa[i] = mean("glazePa");
    skin.alpha[i] = mean("alpha");
  }
  return skin;
}

/**
 * Judges each draw. Cracks: σ ≥ K/√(Zh), with no root taken twice; later, K falls to what a crack needs to run within the
 * service time. Lifting: over the face where G₀ ≥ Γ, at the sharpest edge where the radial pull −σt/R exceeds what the
 * clay bears. The wall splits where the glaze pulls it harder than that. Of several coats any one may crack by itself.
 */
function outcomes(
  s: Situation,
  z: Deviates,
  interfaceToughness: Float64Array,
  skin: CoatArrays,
  coats: readonly CoatArrays[],
): Simulation["lifted"] {
  const { toughness, moisture, rupture } = z;
  const { stress, glazeM, glazePa } = skin;
  const { bodyPa, outcome, root, failed } = WORKSPACE;
  const { poisson } = s.body;
  const kIc = TOUGHNESS[s.toughness];
  const k0 = TOUGHNESS.floor;
  const swelling = s.body.moisturePercent;
  const perPercent = moistureAge(s.serviceYears) / 100 / (1 - POISSON);
  const strength = s.body.ruptureMPa;
  const inTime = delayedShare(s.serviceYears * YEAR_S);
  const faces = facesOf(s);
  const lifted = { edges: 0, flakes: 0, splits: 0 };
  for (let i = 0; i < DRAWS; i++) {
    const now = stress[i]!;
    const factor = channellingFactor(stiffnessContrast(glazePa[i]!, POISSON, bodyPa[i]!, poisson));
    const r = Math.sqrt(factor * glazeM[i]!) * 1e-6;
    root[i] = r;
    const k = kIc.value + kIc.sd * toughness[i]!;
    const growth = Math.max(swelling.value + swelling.sd * moisture[i]!, 0) * perPercent;
    let intensity = now * r;
    let later = (now + growth * glazePa[i]!) * r;
    for (let j = 0; coats.length > 1 && j < coats.length; j++) {
      const coat = coats[j]!;
      const own = Math.sqrt(factor * coat.glazeM[i]!) * 1e-6;
      intensity = Math.max(intensity, coat.stress[i]! * own);
      later = Math.max(later, (coat.stress[i]! + growth * coat.glazePa[i]!) * own);
    }
    let rank = SOUND;
    if (now < 0) {
      const bears = Math.max(strength.value + strength.sd * rupture[i]!, 1) * 1e6 * TENSILE_SHARE;
      const flakes = edgeEnergy(now, glazeM[i]!, glazePa[i]!, POISSON) >= interfaceToughness[i]!;
      const edges = (-now * glazeM[i]!) / s.edgeM >= bears;
      if ((-now * faces * glazeM[i]!) / s.wallM >= bears) lifted.splits++;
      if (flakes) lifted.flakes++;
      if (edges) lifted.edges++;
      if (flakes || edges) rank = SHIVERS;
    }
    if (intensity >= k) rank = CRAZES_ON_COOLING;
    else if (later >= Math.max(k0.value + k0.sd * toughness[i]!, inTime * k)) rank = CRAZES_LATER;
    outcome[i] = rank;
    failed[i] = rank === SOUND ? 0 : 1;
  }
  return lifted;
}

/** Mean expansions from 20 °C to the set point [1e-6/K]. */
function means({ glaze, clay, setPointC }: CoatArrays): { glazeMean: Float64Array; bodyMean: Float64Array } {
  const { glazeMean, bodyMean } = WORKSPACE;
  for (let i = 0; i < DRAWS; i++) {
    const cooled = 1e6 / (setPointC[i]! - 20);
    glazeMean[i] = glaze[i]! * cooled;
    bodyMean[i] = clay[i]! * cooled;
  }
  return { glazeMean, bodyMean };
}

const ZERO_C = 273.15;
const SHIVERS = 0;
const SOUND = 1;
const CRAZES_LATER = 2;
const CRAZES_ON_COOLING = 3;

/** Shares are read off every fourth draw: a quarter of the lattice is a lattice too, and three digits are shown. */
const SHARE_STRIDE = 4;
const NO_SHARES = Object.fromEntries(INPUTS.map((input) => [input, 0])) as Record<Input, number>;

/** Squared correlation of a result with each input: the first-order share, exact where the result is linear in it. */
function sharesOf(values: Float64Array, deviates: Deviates, inputs: readonly Input[]): Record<Input, number> {
  const shares = { ...NO_SHARES };
  const { sum, squares } = momentsOf(values);
  if (squares <= 0) return shares;
  const n = values.length / SHARE_STRIDE;
  for (const input of inputs) {
    const z = deviates[input];
    const known = cachedMoments(z);
    let cross = (-known.sum * sum) / n;
    for (let i = 0; i < z.length; i += SHARE_STRIDE) cross += z[i]! * values[i]!;
    if (known.squares > 0) shares[input] = (cross * cross) / (known.squares * squares);
  }
  return shares;
}

interface Moments {
  sum: number;
  /** Σ(x − mean)². */
  squares: number;
}

function momentsOf(values: Float64Array): Moments {
  let sum = 0;
  for (let i = 0; i < values.length; i += SHARE_STRIDE) sum += values[i]!;
  const mean = (sum * SHARE_STRIDE) / values.length;
  let squares = 0;
  for (let i = 0; i < values.length; i += SHARE_STRIDE) squares += (values[i]! - mean) ** 2;
  return { sum, squares };
}

/** Deviates are shared between fits, so their moments are worked out once. */
const moments = new WeakMap<Float64Array, Moments>();

function cachedMoments(deviates: Float64Array): Moments {
  let known = moments.get(deviates);
  if (!known) {
    known = momentsOf(deviates);
    moments.set(deviates, known);
  }
  return known;
}
