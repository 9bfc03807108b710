/**
 * One strain curve for a body, however it was described, ready to be asked ten thousand times.
 *
 * @module
 */

import type { Notice } from "../errors.ts";
import { readEven } from "../numeric/interpolate.ts";
import { larger } from "../numeric/larger.ts";
import type { BodyClass } from "./classes.ts";
import { CRISTOBALITE_STRAIN, QUARTZ_STRAIN } from "./phases.ts";

/** A centre with a standard deviation, kept at or above `floor`. */
export interface Spread {
  value: number;
  sd: number;
  floor?: number;
}

/** Uncertain inputs of a body as standard normal deviates, one array element a draw [-]. */
export interface BodyDeviates {
  /** Moves the stated mean, or the whole of a curve. */
  bodyMean: Float64Array;
  bodyQuartz: Float64Array;
  bodyCristobalite: Float64Array;
  bodyRise: Float64Array;
}

/**
 * Length lost in cooling from each temperature to 20 °C, as a share of the length at 20 °C [-], positive.
 * Works on whole arrays: it stands in the hot loop of every fit.
 */
export type Contraction = (c: Float64Array, deviates: BodyDeviates, out: Float64Array) => void;

/** A body as the fit sees it. */
export interface BodyModel {
  /** The class it was taken as; null when none was told. */
  classId: string | null;
  class: BodyClass;
  /** How it was described. */
  basis: "stated" | "class" | "curve" | "phases";
  contraction: Contraction;
  /** The mean a person would recognise: the stated one, else over 20–500 °C [1e-6/K]. */
  expansion: Spread & { rangeC: readonly [number, number] };
  /** For a body of phases: means from 20 °C to a temperature by the outer rules of mixing [1e-6/K]. */
  bounds?: (c: number) => { turner: number; linear: number };
  youngsGPa: Spread;
  poisson: number;
  /** Growth by moisture in the long run, {@link LONG_TERM_YEARS} [% of length]. */
  moisturePercent: Spread;
  ruptureMPa: Spread;
  warnings: Notice[];
  sources: string[];
}

/** Half of a range that holds nine in ten, as a standard deviation. */
export function fromSpan(span: readonly [number, number], floor?: number): Spread {
  return { value: (span[0] + span[1]) / 2, sd: (span[1] - span[0]) / 2 / Z90, floor };
}

/** Two-sided 90 % point of the normal distribution [-]. */
export const Z90 = 1.6448536269514722;

/** Value of a spread at a standard normal deviate. */
export function at(spread: Spread, deviate: number): number {
  const value = spread.value + spread.sd * deviate;
  return spread.floor !== undefined && value < spread.floor ? spread.floor : value;
}

/**
 * How the glassy and mullite part of a body grows: its expansion at T is A·(1 + k(T − 260)), so that over
 * 20–500 °C (middle 260 °C) its mean is A. k lies between mullite (0.0004/K, from its curve in data/bodies/phases.json)
 * and glass (0.0011/K, data/models: rise with temperature).
 */
export const MATRIX_RISE: Spread = { value: 0.0006, sd: 0.00025 };
const MATRIX_MIDDLE_C = 260;

/** What the rise of the matrix adds to c − 20, for each unit of it [K²]: its length is (c − 20) + k·this. */
function matrixRise(c: number): number {
  return (c - 20) * ((c + 20) / 2 - MATRIX_MIDDLE_C);
}

/** Least share of the stated strain left to the matrix: more quartz than that contradicts the mean. */
export const LEAST_MATRIX_SHARE = 0.25;

/**
 * Strain of a body known by one mean: matrix + quartz + cristobalite, the matrix scaled until the mean is met.
 *
 *     ε(T) = A·m(T) + q·f·Q(T) + c·C(T),   A from  ε(b) − ε(a) = α(b − a)
 *
 * @param mean - stated mean [1e-6/K] with its range [°C]
 * @param quartz - effective volume fraction [-]; `factor` f on its strain [-]
 * @param cristobalite - volume fraction [-]
 * @returns contraction from c to 20 °C [-]
 * @remarks m(T) = (T − 20)(1 + k((T + 20)/2 − 260)). Where quartz and cristobalite would take more than three quarters of
 * the stated strain, both shrink in proportion. A range that ends below 573 °C says nothing of the quartz step: its doubt enters through `quartz`.
 */
export function scaledMixture(
  mean: Spread & { rangeC: readonly [number, number] },
  quartz: Spread & { factor: number },
  cristobalite: Spread,
): Contraction {
  const [from, to] = mean.rangeC;
  const mixture: Mixture = {
    mean,
    quartz,
    cristobalite,
    quartzSpan: quartz.factor * (readEven(QUARTZ_STRAIN, to) - readEven(QUARTZ_STRAIN, from)),
    cristobaliteSpan: readEven(CRISTOBALITE_STRAIN, to) - readEven(CRISTOBALITE_STRAIN, from),
    span: to - from,
    spanRise: matrixRise(to) - matrixRise(from),
  };
  return (c, deviates, out) => contract(mixture, c, deviates, out);
}

/** What {@link scaledMixture} knows before any draw; spans are strains over the range of the mean [-]. */
interface Mixture {
  mean: Spread;
  quartz: Spread & { factor: number };
  cristobalite: Spread;
  quartzSpan: number;
  cristobaliteSpan: number;
  /** Length of the range [K], and what the rise of the matrix adds to it [K²]. */
  span: number;
  spanRise: number;
}

/** The loop fetches nothing but its arrays: reaching out for every figure made it three times slower. */
function contract(m: Mixture, c: Float64Array, deviates: BodyDeviates, out: Float64Array): void {
  const { bodyMean, bodyQuartz, bodyCristobalite, bodyRise } = deviates;
  const { quartzSpan, cristobaliteSpan, span, spanRise } = m;
  const { value: meanValue, sd: meanSd } = m.mean;
  const { value: quartzValue, sd: quartzSd, factor } = m.quartz;
  const { value: cristobaliteValue, sd: cristobaliteSd } = m.cristobalite;
  const { value: riseValue, sd: riseSd } = MATRIX_RISE;
  // Both tables stand on one grid, so that a temperature is looked up once.
  const { start, perStep, values: quartzStrain } = QUARTZ_STRAIN;
  const { values: cristobaliteStrain } = CRISTOBALITE_STRAIN;
  const lastStep = quartzStrain.length - 2;
  for (let i = 0; i < c.length; i++) {
    const rise = riseValue + riseSd * bodyRise[i]!;
    const strain = (meanValue + meanSd * bodyMean[i]!) * 1e-6 * span;
    let q = larger(quartzValue + quartzSd * bodyQuartz[i]!, 0);
    let k = larger(cristobaliteValue + cristobaliteSd * bodyCristobalite[i]!, 0);
    let grains = q * quartzSpan + k * cristobaliteSpan;
    const room = strain * (1 - LEAST_MATRIX_SHARE);
    if (grains > room && grains > 0) {
      const less = larger(room, 0) / grains;
      q *= less;
      k *= less;
      grains *= less;
    }
    const matrix = (strain - grains) / (span + rise * spanRise);
    const hot = c[i]!;
    const position = (hot - start) * perStep;
    let at = position | 0;
    if (at < 0) at = 0;
    else if (at > lastStep) at = lastStep;
    const part = position - at;
    const q0 = quartzStrain[at]!;
    const k0 = cristobaliteStrain[at]!;
    out[i] =
      matrix * (hot - 20 + rise * matrixRise(hot)) +
      q * factor * (q0 + (quartzStrain[at + 1]! - q0) * part) +
      k * (k0 + (cristobaliteStrain[at + 1]! - k0) * part);
  }
}

/**
 * One contraction, for drawing and for tests.
 * @param body - anything with a contraction
 * @param c - temperature [°C]
 * @param deviates - standard normal deviates that are not 0
 * @returns length lost from c to 20 °C [-]
 */
export function contractionAt(
  body: { contraction: Contraction },
  c: number,
  deviates: Partial<Record<keyof BodyDeviates, number>> = {},
): number {
  const one = (input: keyof BodyDeviates) => Float64Array.of(deviates[input] ?? 0);
  const out = new Float64Array(1);
  body.contraction(
    Float64Array.of(c),
    {
      bodyMean: one("bodyMean"),
      bodyQuartz: one("bodyQuartz"),
      bodyCristobalite: one("bodyCristobalite"),
      bodyRise: one("bodyRise"),
    },
    out,
  );
  return out[0]!;
}

/** What "long-term" means beside a published moisture expansion: decades; thirty years are taken [years] (no source). */
export const LONG_TERM_YEARS = 30;

/**
 * Share of the long-term moisture growth reached at an age.
 *
 *     ε(t)/ε(30 years) = (t/30)^(1/4)
 *
 * @param years - age since firing
 * @returns share [-]; ten years reach three quarters
 * Source: M.A. Wilson et al., Phys. Rev. Lett. 90 (2003) 125503: growth goes with the fourth root of age.
 * @example moistureAge(30) // 1
 */
export function moistureAge(years: number): number {
  return (years / LONG_TERM_YEARS) ** 0.25;
}
