/** A thousand possible pots: every uncertain input drawn, every outcome judged. @module */
import { at, type BodyModel, moistureAge } from "../body/index.ts";
import type { Estimate } from "../quantity.ts";
import { ON_WARE, POISSON, SET_POINT, TOUGHNESS } from "./constants.ts";
import { channellingFactor, criticalStress, stiffnessContrast } from "./cracking.ts";
import { edgeEnergy } from "./delamination.ts";
import { DRAWS, type Draws, INPUTS, type Input } from "./draws.ts";
import { logSettingViscosity, offsetAt } from "./set-point.ts";
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
  coolingCPerHour: number;
  serviceYears: number;
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
  /** Rank in {@link RANKED}. */
  outcome: Uint8Array;
  counts: Record<Outcome, number>;
  /** First-order share of the variance of the stress by input [-]. */
  shares: Record<Input, number>;
}

/** Inputs that move the stress (the others move only what it is compared with). */
const STRESS_INPUTS = INPUTS.filter((input) => !["toughness", "moisture", "interface"].includes(input));

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
  const { setPointC, glaze, clay, mismatch, stress, outcome, glazeMean, bodyMean } = WORKSPACE;
  setPoints(s, z, setPointC);
  glazeContractions(s, z, setPointC, glaze);
  s.body.contraction(setPointC, z, clay);
  for (let i = 0; i < DRAWS; i++) mismatch[i] = clay[i]! - glaze[i]!;
  stresses(s, z, mismatch, stress);
  outcomes(s, z, stress, draws.interfaceToughness, outcome);
  means(glaze, setPointC, glazeMean);
  means(clay, setPointC, bodyMean);

  const tally = [0, 0, 0, 0];
  for (let i = 0; i < DRAWS; i++) tally[outcome[i]!]!++;
  return {
    stress,
    mismatch,
    setPointC,
    glazeMean,
    bodyMean,
    outcome,
    counts: Object.fromEntries(RANKED.map((name, rank) => [name, tally[rank]!])) as Record<Outcome, number>,
    shares: sharesOf(stress, z),
  };
}

const array = () => new Float64Array(DRAWS);
const WORKSPACE = {
  setPointC: array(),
  glaze: array(),
  clay: array(),
  mismatch: array(),
  stress: array(),
  glazeMean: array(),
  bodyMean: array(),
  outcome: new Uint8Array(DRAWS),
};

/** Deviates of every input, each in the shape of its own distribution. */
type Deviates = Record<Input, Float64Array>;

function setPoints(s: Situation, { transition, setPoint }: Deviates, out: Float64Array): void {
  const { value, scale } = s.transitionC;
  const logSetting = logSettingViscosity(s.coolingCPerHour);
  for (let i = 0; i < DRAWS; i++) {
    const tg = value + scale * transition[i]!;
    const c = tg + offsetAt(tg, logSetting) + SET_POINT.shiftSdK * setPoint[i]!;
    out[i] = Math.min(Math.max(c, 200), 1000);
  }
}

function thicknessAt(s: Situation, deviate: number): number {
  return s.thicknessM * Math.max(1 + s.thicknessSd * deviate, 0.2);
}

function youngsAt({ value, scale }: Estimate, deviate: number): number {
  return Math.max(value + scale * deviate, 20) * 1e9;
}

function glazeContractions(s: Situation, z: Deviates, setPointC: Float64Array, out: Float64Array): void {
  const { glazeExpansion, recipe, onWare, glazeRise, thickness } = z;
  const { value, scale } = s.expansion;
  const { perKelvin, sd, anchorC } = s.rise;
  for (let i = 0; i < DRAWS; i++) {
    const drop = onWareDrop(thicknessAt(s, thickness[i]!), onWare[i]!);
    const alpha = value + scale * glazeExpansion[i]! + s.recipeSd * recipe[i]! - drop;
    out[i] = glassContraction(alpha * 1e-6, setPointC[i]!, perKelvin + sd * glazeRise[i]!, anchorC);
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

function stresses(s: Situation, z: Deviates, mismatch: Float64Array, out: Float64Array): void {
  const { thickness, glazeStiffness, bodyStiffness } = z;
  const faces = s.glazed === "both-faces" ? 2 : 1;
  const layers: Layers = {
    glazePa: 0,
    glazePoisson: POISSON,
    glazeM: 0,
    bodyPa: 0,
    bodyPoisson: s.body.poisson,
    wallM: s.wallM,
  };
  for (let i = 0; i < DRAWS; i++) {
    layers.glazePa = youngsAt(s.youngsGPa, glazeStiffness[i]!);
    layers.glazeM = thicknessAt(s, thickness[i]!);
    layers.bodyPa = at(s.body.youngsGPa, bodyStiffness[i]!) * 1e9;
    out[i] =
      s.glazed === "one-face-free"
        ? bilayerStress(layers, mismatch[i]!).glazeMean
        : straightWallStress(layers, mismatch[i]!, faces);
  }
}

function outcomes(
  s: Situation,
  z: Deviates,
  stress: Float64Array,
  interfaceToughness: Float64Array,
  out: Uint8Array,
): void {
  const { thickness, glazeStiffness, bodyStiffness, toughness, moisture } = z;
  const { body } = s;
  const kIc = TOUGHNESS[s.toughness];
  const growthPerPercent = moistureAge(s.serviceYears) / 100;
  for (let i = 0; i < DRAWS; i++) {
    const glazePa = youngsAt(s.youngsGPa, glazeStiffness[i]!);
    const glazeM = thicknessAt(s, thickness[i]!);
    const bodyPa = at(body.youngsGPa, bodyStiffness[i]!) * 1e9;
    const factor = channellingFactor(stiffnessContrast(glazePa, POISSON, bodyPa, body.poisson));
    const growth = at(body.moisturePercent, moisture[i]!) * growthPerPercent;
    const later = stress[i]! + (glazePa / (1 - POISSON)) * growth;
    let rank = SOUND;
    if (stress[i]! >= criticalStress(at(kIc, toughness[i]!) * 1e6, factor, glazeM)) rank = CRAZES_ON_COOLING;
    else if (later >= criticalStress(at(TOUGHNESS.floor, toughness[i]!) * 1e6, factor, glazeM)) rank = CRAZES_LATER;
    else if (stress[i]! < 0 && edgeEnergy(stress[i]!, glazeM, glazePa, POISSON) >= interfaceToughness[i]!)
      rank = SHIVERS;
    out[i] = rank;
  }
}

/** Mean expansions from contractions [1e-6/K]. */
function means(contraction: Float64Array, setPointC: Float64Array, out: Float64Array): void {
  for (let i = 0; i < DRAWS; i++) out[i] = (contraction[i]! / (setPointC[i]! - 20)) * 1e6;
}

const SHIVERS = 0;
const SOUND = 1;
const CRAZES_LATER = 2;
const CRAZES_ON_COOLING = 3;

/** Squared correlation of the stress with each input: the first-order share, exact where the stress is linear in it. */
function sharesOf(stress: Float64Array, deviates: Deviates): Record<Input, number> {
  const { mean, sumOfSquares } = momentsOf(stress);
  const shares = Object.fromEntries(INPUTS.map((input) => [input, 0])) as Record<Input, number>;
  if (sumOfSquares <= 0) return shares;
  for (const input of STRESS_INPUTS) {
    const z = deviates[input];
    let cross = 0;
    for (let i = 0; i < z.length; i++) cross += z[i]! * (stress[i]! - mean);
    const squares = cachedMoments(z).sumOfSquares;
    shares[input] = squares > 0 ? (cross * cross) / (squares * sumOfSquares) : 0;
  }
  return shares;
}

interface Moments {
  mean: number;
  /** Σ(x − mean)². */
  sumOfSquares: number;
}

function momentsOf(values: Float64Array): Moments {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  const mean = sum / values.length;
  let sumOfSquares = 0;
  for (let i = 0; i < values.length; i++) sumOfSquares += (values[i]! - mean) ** 2;
  return { mean, sumOfSquares };
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
