/** A thousand possible pots: every uncertain input drawn, every outcome judged. @module */
import { type BodyModel, moistureAge } from "../body/index.ts";
import type { Estimate } from "../quantity.ts";
import { ON_WARE, POISSON, SET_POINT, TENSILE_SHARE, TOUGHNESS } from "./constants.ts";
import { channellingFactor, delayedShare, stiffnessContrast, YEAR_S } from "./cracking.ts";
import { edgeEnergy } from "./delamination.ts";
import { DRAWS, type Draws, INPUTS, type Input } from "./draws.ts";
import { type Cooling, offsetAt, setPointAlong } from "./set-point.ts";
import { bilayerStress, type Layers, straightWallStress } from "./stress.ts";
import type { Outcome } from "./types.ts";

/** Everything the fit knows of one question, in SI but for °C and 1e-6/K where named. */
export interface Situation {
  /** Mean expansion 20–300 °C of the glass in bulk [1e-6/K]. */
  expansion: Estimate;
  /** Standard deviation of that from the spread of the materials [1e-6/K]. */
  recipeSd: number;
  transitionC: Estimate;
  youngsGPa: Estimate;
  /** Rise of the instantaneous expansion [1/K] about the anchor [°C]. */
  rise: { perKelvin: number; sd: number; anchorC: number };
  toughness: keyof typeof TOUGHNESS;
  thicknessM: number;
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
}

/** Outcomes by rank, from the most squeezed to the most stretched. */
export const RANKED: readonly Outcome[] = ["shivers", "sound", "crazesLater", "crazesOnCooling"];

/** One array element a draw; stresses [Pa], strains [-], temperatures [°C]. */
export interface Simulation {
  stress: Float64Array;
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
  const z: Deviates = {
    ...draws.normal,
    onWare: draws.even.onWare,
    glazeExpansion: draws.shaped("glazeExpansion", s.expansion.shape),
    transition: draws.shaped("transition", s.transitionC.shape),
    glazeStiffness: draws.shaped("glazeStiffness", s.youngsGPa.shape),
  };
  const w = WORKSPACE;
  layers(s, z, w);
  setPoints(s, z, w.setPointC);
  glazeContractions(s, z, w);
  s.body.contraction(w.setPointC, z, w.clay);
  stresses(s, w);
  const lifted = outcomes(s, z, draws.interfaceToughness, w);
  const { failed, ...arrays } = w;
  const { stress, outcome } = w;

  const tally = [0, 0, 0, 0];
  for (let i = 0; i < DRAWS; i++) tally[outcome[i]!]!++;
  return {
    ...arrays,
    lifted,
    counts: Object.fromEntries(RANKED.map((name, rank) => [name, tally[rank]!])) as Record<Outcome, number>,
    shares: sharesOf(stress, z, STRESS_INPUTS),
    verdictShares: sharesOf(failed, z, INPUTS),
  };
}

const array = () => new Float64Array(DRAWS);
const WORKSPACE = {
  glazeM: array(),
  glazePa: array(),
  bodyPa: array(),
  setPointC: array(),
  alpha: array(),
  glaze: array(),
  clay: array(),
  root: array(),
  failed: array(),
  mismatch: array(),
  stress: array(),
  glazeMean: array(),
  bodyMean: array(),
  outcome: new Uint8Array(DRAWS),
};
type Workspace = typeof WORKSPACE;

/** Deviates of every input, each in the shape of its own distribution. */
type Deviates = Record<Input, Float64Array>;

/** Thickness of the glaze [m], stiffness of glaze and body [Pa]; none may vanish, however far a deviate reaches. */
function layers(s: Situation, z: Deviates, { glazeM, glazePa, bodyPa }: Workspace): void {
  const { thickness, glazeStiffness, bodyStiffness } = z;
  const { value, scale } = s.youngsGPa;
  const body = s.body.youngsGPa;
  const least = body.floor ?? 1;
  for (let i = 0; i < DRAWS; i++) {
    glazeM[i] = s.thicknessM * Math.max(1 + s.thicknessSd * thickness[i]!, 0.2);
    glazePa[i] = Math.max(value + scale * glazeStiffness[i]!, 20) * 1e9;
    bodyPa[i] = Math.max(body.value + body.sd * bodyStiffness[i]!, least) * 1e9;
  }
}

function setPoints(s: Situation, { transition, setPoint }: Deviates, setPointC: Float64Array): void {
  const { value, scale } = s.transitionC;
  const { cooling } = s;
  const steady = cooling.length === 1 ? cooling[0]!.logRamp : undefined;
  for (let i = 0; i < DRAWS; i++) {
    const tg = value + scale * transition[i]!;
    const setting = steady !== undefined ? tg + offsetAt(tg, steady) : setPointAlong(tg, cooling);
    const c = setting + SET_POINT.shiftSdK * setPoint[i]!;
    setPointC[i] = c < 200 ? 200 : c > 1000 ? 1000 : c;
  }
}

function glazeContractions(s: Situation, z: Deviates, { glazeM, setPointC, alpha, glaze }: Workspace): void {
  const { glazeExpansion, recipe, onWare, glazeRise } = z;
  const { value, scale } = s.expansion;
  const { perKelvin, sd, anchorC } = s.rise;
  for (let i = 0; i < DRAWS; i++) {
    const bulk = value + scale * glazeExpansion[i]! + s.recipeSd * recipe[i]!;
    alpha[i] = bulk - onWareDrop(glazeM[i]!, onWare[i]!);
    glaze[i] = glassContraction(alpha[i]! * 1e-6, setPointC[i]!, perKelvin + sd * glazeRise[i]!, anchorC);
  }
}

/**
 * How much less a glaze expands on ware than the same glass in bulk: between nothing and the most on record for a thin
 * skin, falling with thickness because the depth that takes up clay stays the same.
 * @param glazeM - thickness [m]
 * @param evenly - deviate between 0 and 1 [-]
 * @returns drop of the mean expansion [1e-6/K], never negative
 * Source: Inada 1978 (part 4); Merritt & Peters 1926.
 * @example onWareDrop(0.0003, 0.5) // 0.3125
 */
export function onWareDrop(glazeM: number, evenly: number): number {
  return ON_WARE.mostDrop * evenly * Math.min(1, (ON_WARE.fullUpToMm * 1e-3) / glazeM);
}

function stresses(s: Situation, w: Workspace): void {
  const { glaze, clay, setPointC, mismatch, stress, glazeMean, bodyMean, glazeM, glazePa, bodyPa } = w;
  const faces = s.glazed === "both-faces" ? 2 : 1;
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
    const cooled = 1e6 / (setPointC[i]! - 20);
    glazeMean[i] = glaze[i]! * cooled;
    bodyMean[i] = clay[i]! * cooled;
    mismatch[i] = clay[i]! - glaze[i]!;
    pair.glazePa = glazePa[i]!;
    pair.glazeM = glazeM[i]!;
    pair.bodyPa = bodyPa[i]!;
    stress[i] = freeToBend
      ? bilayerStress(pair, mismatch[i]!).glazeMean
      : straightWallStress(pair, mismatch[i]!, faces);
  }
}

/**
 * Judges each draw. Cracks: σ ≥ K/√(Zh), with no root taken twice; later, K falls to what a crack needs to run within the
 * service time. Lifting: over the face where G₀ ≥ Γ, at the sharpest edge where the radial pull −σt/R exceeds what the
 * clay bears. The wall splits where the glaze pulls it harder than that.
 */
function outcomes(s: Situation, z: Deviates, interfaceToughness: Float64Array, w: Workspace): Simulation["lifted"] {
  const { toughness, moisture, rupture } = z;
  const { stress, glazeM, glazePa, bodyPa, outcome, root, failed } = w;
  const strength = s.body.ruptureMPa;
  const inTime = delayedShare(s.serviceYears * YEAR_S);
  const faces = s.glazed === "both-faces" ? 2 : 1;
  const lifted = { edges: 0, flakes: 0, splits: 0 };
  const { poisson } = s.body;
  const kIc = TOUGHNESS[s.toughness];
  const k0 = TOUGHNESS.floor;
  const swelling = s.body.moisturePercent;
  const perPercent = moistureAge(s.serviceYears) / 100 / (1 - POISSON);
  for (let i = 0; i < DRAWS; i++) {
    const now = stress[i]!;
    const factor = channellingFactor(stiffnessContrast(glazePa[i]!, POISSON, bodyPa[i]!, poisson));
    const r = Math.sqrt(factor * glazeM[i]!) * 1e-6;
    root[i] = r;
    const k = kIc.value + kIc.sd * toughness[i]!;
    const grown = Math.max(swelling.value + swelling.sd * moisture[i]!, 0) * perPercent * glazePa[i]!;
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
    if (now * r >= k) rank = CRAZES_ON_COOLING;
    else if ((now + grown) * r >= Math.max(k0.value + k0.sd * toughness[i]!, inTime * k)) rank = CRAZES_LATER;
    outcome[i] = rank;
    failed[i] = rank === SOUND ? 0 : 1;
  }
  return lifted;
}

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
