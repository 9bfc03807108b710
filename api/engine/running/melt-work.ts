/** What a firing does to a melt: time over viscosity, gathered. @module */

import type { ViscosityCurve } from "../glass/index.ts";
import { type EvenTable, readEven } from "../numeric/interpolate.ts";
import type { Leg } from "./timeline.ts";

/** Melt work ∫ dt/η [1/Pa] as log10 against the deviate of the viscosity, on an even grid. */
export interface MeltWork extends EvenTable {
  /** Change of log10 work when the whole kiln is a degree hotter [1/K]. */
  perKelvin: number;
}

const NODES = 25;
/** Widest step of the integration [K]; Simpson's rule then holds to 1e-6. */
const STEP_K = 5;
/** Stretches this many decades stiffer than the runniest add nothing [-]. */
const DECADES = 8;

/**
 * Melt work of a firing, for every deviate of the viscosity.
 *
 *     W = ∫ dt / η(T(t)),   log10 η = value + scale · z
 *
 * The deviate is one for the whole curve: a glaze that is runnier than reckoned is so at every temperature.
 * @param curve - viscosity of the melt
 * @param legs - the firing
 * @param hotterK - the whole kiln hotter by this [K]
 * @returns log10 of W [1/Pa] on a grid of z
 */
export function meltWork(curve: ViscosityCurve, legs: readonly Leg[], hotterK = 0): MeltWork {
  const shape = curve.logViscosity(1000).shape;
  const start = shape[0]!;
  const step = (shape.at(-1)! - start) / (NODES - 1);
  const at = integrate(curve, legs, hotterK, NODES, (i) => start + i * step);
  const middle = integrate(curve, legs, hotterK, 1, () => 0)[0]!;
  const hotter = integrate(curve, legs, hotterK + 5, 1, () => 0)[0]!;
  return { start, perStep: 1 / step, values: at, perKelvin: (hotter - middle) / 5 };
}

/** log10 of the work at a deviate. @example workAt(work, 0) */
export function workAt(work: MeltWork, z: number): number {
  return readEven(work, z);
}

/**
 * Work of a stack: fluidities of its layers, each by its share of the flow.
 * @param shares - weights, summing to 1
 */
export function joinWork(works: readonly MeltWork[], shares: readonly number[]): MeltWork {
  const { start, perStep } = works[0]!;
  const join = (of: (work: MeltWork) => number) =>
    Math.log10(works.reduce((sum, work, i) => sum + shares[i]! * 10 ** of(work), 0));
  const values = Float64Array.from({ length: NODES }, (_, k) => join((work) => work.values[k]!));
  const middle = join((work) => workAt(work, 0));
  return { start, perStep, values, perKelvin: join((work) => workAt(work, 0) + work.perKelvin) - middle };
}

function integrate(
  curve: ViscosityCurve,
  legs: readonly Leg[],
  hotterK: number,
  count: number,
  z: (i: number) => number,
): Float64Array {
  const sums = new Float64Array(count);
  const deviates = Array.from({ length: count }, (_, i) => z(i));
  const peak = Math.max(...legs.map(({ fromC, toC }) => Math.max(fromC, toC))) + hotterK;
  const runniest = curve.logViscosity(peak).value;
  const coolest = curve.temperatureC(runniest + DECADES).value;
  const add = (c: number, seconds: number) => {
    const { value, scale } = curve.logViscosity(c);
    for (let i = 0; i < count; i++) sums[i]! += seconds * 10 ** -(value - runniest + scale * deviates[i]!);
  };
  for (const { fromC, toC, seconds } of legs) {
    const [low, high] = [Math.min(fromC, toC) + hotterK, Math.max(fromC, toC) + hotterK];
    if (high === low) add(high, seconds);
    else if (high > coolest) {
      const from = Math.max(low, coolest);
      const pairs = Math.ceil((high - from) / STEP_K / 2);
      const each = (high - from) / (2 * pairs);
      const secondsEach = (seconds * each) / (high - low);
      for (let k = 0; k <= 2 * pairs; k++) {
        const weight = k === 0 || k === 2 * pairs ? 1 : k % 2 === 1 ? 4 : 2;
        add(from + k * each, (weight / 3) * secondsEach);
      }
    }
  }
  return sums.map((sum) => Math.log10(sum) - runniest);
}
