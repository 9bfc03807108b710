/** The quasi-random deviates of every uncertain input of a fit. @module */
import { LATTICE_POINTS, latticePoints } from "../numeric/lattice.ts";
import { normalQuantile } from "../numeric/normal.ts";
import { quantileOf } from "../quantity.ts";
import { INTERFACE } from "./constants.ts";

/** Uncertain inputs, the weightiest first: a lattice is evenest in its first dimensions. */
export const INPUTS = [
  "glazeExpansion",
  "bodyMean",
  "glazeRise",
  "setPoint",
  "onWare",
  "bodyQuartz",
  "transition",
  "recipe",
  "bodyRise",
  "thickness",
  "toughness",
  "moisture",
  "interface",
  "glazeStiffness",
  "bodyStiffness",
  "bodyCristobalite",
  "rupture",
  "quench",
] as const;

export type Input = (typeof INPUTS)[number];
export const DRAWS = LATTICE_POINTS;

/** Even deviates (0–1) and normal deviates, one array an input. */
export interface Draws {
  even: Record<Input, Float64Array>;
  normal: Record<Input, Float64Array>;
  /** Deviates of a model's own table of residuals. */
  shaped: (input: Input, shape: readonly number[]) => Float64Array;
  /** Toughness of the interface, log-normal [J/m²]. */
  interfaceToughness: Float64Array;
}

const cache = new Map<number, Draws>();
const CACHED_SEEDS = 4;

/**
 * All deviates for a seed; made once and kept for the last few seeds.
 * @example drawsFor(1).normal.thickness.length // 1024
 */
export function drawsFor(seed: number): Draws {
  const known = cache.get(seed);
  if (known) return known;
  const draws = drawsOf(latticePoints(INPUTS.length, seed));
  if (cache.size >= CACHED_SEEDS) cache.delete(cache.keys().next().value!);
  cache.set(seed, draws);
  return draws;
}

/**
 * Deviates from points of the unit cube, one array an input.
 * @param points - {@link DRAWS} values strictly between 0 and 1 for each of {@link INPUTS}
 */
export function drawsOf(points: readonly Float64Array[]): Draws {
  const even = {} as Record<Input, Float64Array>;
  const normal = {} as Record<Input, Float64Array>;
  INPUTS.forEach((input, i) => {
    even[input] = points[i]!;
    normal[input] = points[i]!.map(normalQuantile);
  });
  const tables = new WeakMap<readonly number[], Partial<Record<Input, Float64Array>>>();
  const shaped = (input: Input, shape: readonly number[]): Float64Array => {
    let byInput = tables.get(shape);
    if (!byInput) {
      byInput = {};
      tables.set(shape, byInput);
    }
    byInput[input] ??= even[input].map((u) => quantileOf({ value: 0, scale: 1, shape }, u));
    return byInput[input]!;
  };
  const interfaceToughness = normal.interface.map((z) => INTERFACE.median * Math.exp(INTERFACE.logSd * z));
  return { even, normal, shaped, interfaceToughness };
}

/** Shape of a normal estimate, its quantiles at (i + ½)/64, for properties that are stated and not modelled. */
export const NORMAL_SHAPE: readonly number[] = Object.freeze(
  Array.from({ length: 64 }, (_, i) => normalQuantile((i + 0.5) / 64)),
);
