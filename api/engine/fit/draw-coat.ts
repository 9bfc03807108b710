/** One coat drawn a thousand times: how thick, how stiff, where it sets, how far it shrinks. @module */
import { larger, smaller } from "../numeric/larger.ts";
import { ON_WARE } from "./constants.ts";
import { DRAWS } from "./draws.ts";
import { type GlassCooling, setPointAlong } from "./set-point.ts";
import type { Coat, CoatArrays, Deviates, Situation } from "./simulate.ts";

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

/** How far a glaze has taken up clay, against the most on record for a thin skin [-]: u·min(1, 0.125 mm/t). */
function takenUp(glazeM: number, evenly: number): number {
  return glazeM > FULL_UP_TO_M ? (evenly * FULL_UP_TO_M) / glazeM : evenly;
}

const FULL_UP_TO_M = ON_WARE.fullUpToMm * 1e-3;
const ZERO_C = 273.15;
/** No glaze sets outside these, however far a deviate reaches [°C]. */
const COLDEST_C = 200;
const HOTTEST_C = 1000;
/** Nor is any thinner than this share of what it should be [-], or softer [GPa]. */
const LEAST_SHARE = 0.2;
const SOFTEST_GPA = 20;

/**
 * Fills what belongs to the coat alone: thickness, stiffness, set point, expansion, contraction.
 * Thickness stays above a fifth of what it should be, stiffness above 20 GPa, the set point within 200–1000 °C.
 * Everything in one pass, so that no array is read twice: it stands in the hot loop of every fit.
 * @param coat - the coat, of the situation `s`
 * @param cooling - the schedule, read for its glass
 * @param z - deviates, each in the shape of its own distribution
 * @param w - filled, an element a draw
 */
export function drawCoat(coat: Coat, s: Situation, cooling: readonly GlassCooling[], z: Deviates, w: CoatArrays): void {
  const { thickness, glazeStiffness, transition, setPoint, onWare, glazeExpansion, recipe, glazeRise } = z;
  const { glazeM, glazePa, setPointC, alpha, glaze } = w;
  // The loop fetches nothing but its arrays: reaching out for every figure slowed it down.
  const { thicknessM, recipeSd, setPointSdK } = coat;
  const { value: youngs, scale: youngsScale } = coat.youngsGPa;
  const { value: t12Value, scale: t12Scale } = coat.t12C;
  const { value: expansion, scale: expansionScale } = coat.expansion;
  const { thicknessSd } = s;
  const { perKelvin, sd, anchorC } = s.rise;
  const { mostDrop, mostRiseK } = ON_WARE;
  const [only] = cooling;
  const steady = cooling.length === 1 && only!.hold === Number.POSITIVE_INFINITY ? only!.ramp : undefined;
  for (let i = 0; i < DRAWS; i++) {
    const thick = thicknessM * larger(1 + thicknessSd * thickness[i]!, LEAST_SHARE);
    glazeM[i] = thick;
    glazePa[i] = larger(youngs + youngsScale * glazeStiffness[i]!, SOFTEST_GPA) * 1e9;
    const uptake = takenUp(thick, onWare[i]!);
    const t12 = t12Value + t12Scale * transition[i]! + mostRiseK * uptake;
    const setting = steady !== undefined ? (t12 + ZERO_C) * steady - ZERO_C : setPointAlong(t12, cooling);
    const c = smaller(larger(setting + setPointSdK * setPoint[i]!, COLDEST_C), HOTTEST_C);
    setPointC[i] = c;
    const bulk = expansion + expansionScale * glazeExpansion[i]! + recipeSd * recipe[i]!;
    const mean = bulk - mostDrop * uptake;
    alpha[i] = mean;
    glaze[i] = glassContraction(mean * 1e-6, c, perKelvin + sd * glazeRise[i]!, anchorC);
  }
}
