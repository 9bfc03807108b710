/** The quasi-random deviates of everything uncertain about a run. @module */
import { LATTICE_POINTS, latticePoints } from "../numeric/lattice.ts";
import { normalQuantile } from "../numeric/normal.ts";
import { quantileOf } from "../quantity.ts";

/** Uncertain inputs, the weightiest first. */
const INPUTS = ["viscosity", "thickness", "solids", "kiln", "mixing", "roll", "recipe", "density", "jump"] as const;
type Input = (typeof INPUTS)[number];

export const DRAWS = LATTICE_POINTS;

/** Deviates of a seed: even (0–1) and normal, one array an input. */
export interface RunDraws {
  even: Record<Input, Float64Array>;
  normal: Record<Input, Float64Array>;
  /** Deviates of the viscosity model's own table of residuals. */
  viscosity: Float64Array;
}

/**
 * All deviates for a seed.
 * @param seed - any whole number [-]
 * @param shape - table of residuals of the viscosity
 */
export function runDraws(seed: number, shape: readonly number[]): RunDraws {
  const points = latticePoints(INPUTS.length, seed);
  const even = {} as Record<Input, Float64Array>;
  const normal = {} as Record<Input, Float64Array>;
  INPUTS.forEach((input, i) => {
    even[input] = points[i]!;
    normal[input] = points[i]!.map(normalQuantile);
  });
  return { even, normal, viscosity: even.viscosity.map((u) => quantileOf({ value: 0, scale: 1, shape }, u)) };
}

/** A value between the ends of a range. @param u - 0 to 1 */
export function between({ low, high }: { low: number; high: number }, u: number): number {
  return low + (high - low) * u;
}
