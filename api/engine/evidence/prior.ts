/** What is believed of the expansion before any tile. @module */
import { Z90 } from "../body/index.ts";
import { bookShare } from "../fit/read-stated-glaze.ts";
import type { Estimate } from "../quantity.ts";

/**
 * A bought glaze of unknown composition [1e-6/K, 20–300 °C]: normal, cut off where no glaze has been. Glazes for
 * earthenware to porcelain run from about 4 to 10 (common practice, no source).
 */
export const UNKNOWN_GLAZE = { value: 7, sd: 1.6, low: 2, high: 13 } as const;

/** Points of the grid [-]: finer than any tile can tell. */
export const GRID_POINTS = 121;

/** How often a reading is simply mistaken: the wrong tile, the wrong line of the notebook [-] (common practice, no source). */
export const MISTAKEN = 0.02;
/** A mistaken measurement is off by about so many times its doubt [-] (common practice, no source). */
export const MISTAKEN_FACTOR = 10;

/** Expansions on an even grid with a weight each; the weights sum to 1. */
export interface Belief {
  alphas: Float64Array;
  weights: Float64Array;
}

/** A dilatometer run brought to 20–300 °C [1e-6/K]. */
export interface Run {
  value: number;
  sd: number;
}

/** Density of the prior at an expansion, up to a factor. */
export type Density = (alpha: number) => number;

/**
 * Density of a model's estimate: its 64 residual quantiles, each spread as wide as its neighbours stand apart, and
 * widened by the recipe's own doubt.
 * @param estimate - from the glass model, or stated
 * @param recipeSd - standard deviation from the materials [1e-6/K]
 */
export function densityOf({ value, scale, shape }: Estimate, recipeSd: number): Density {
  const kernels = shape.map((z, k) => {
    const gap = ((shape[k + 1] ?? z) - (shape[k - 1] ?? z)) * scale * (k > 0 && k < shape.length - 1 ? 0.5 : 1);
    return { centre: value + scale * z, sd: Math.hypot(recipeSd, gap, 0.02) };
  });
  return (alpha) => {
    let sum = 0;
    for (const { centre, sd } of kernels) sum += Math.exp(-0.5 * ((alpha - centre) / sd) ** 2) / sd;
    return sum;
  };
}

/** Density for a glaze of which nothing is known. */
export function unknownDensity(alpha: number): number {
  const { value, sd, low, high } = UNKNOWN_GLAZE;
  return alpha < low || alpha > high ? 0 : Math.exp(-0.5 * ((alpha - value) / sd) ** 2);
}

/** Likelihood of a reading about a truth: normal, with a wide share for mistakes. */
export function readingLikelihood(difference: number, sd: number): number {
  const z = difference / sd;
  const wide = z / MISTAKEN_FACTOR;
  return (1 - MISTAKEN) * Math.exp(-0.5 * z * z) + (MISTAKEN / MISTAKEN_FACTOR) * Math.exp(-0.5 * wide * wide);
}

/** A mean over another range, brought to 20–300 °C as a fit does it. */
export function asRun(value: number, rangeC: readonly [number, number], plusMinus: number): Run {
  const toBooks = bookShare(rangeC);
  return { value: value * toBooks, sd: Math.max((plusMinus / Z90) * toBooks, 0.02) };
}

/** Share of belief let go at each end of the grid [-]. */
const CUT = 2e-4;

/**
 * The grid: wide enough for the prior and for everything that the runs leave possible.
 * @param density - prior
 * @param runs - dilatometer runs; they narrow the grid, so that a sharp one is still resolved
 * @returns prior on the grid, runs not counted
 */
export function beliefOn(density: Density, runs: readonly Run[]): Belief {
  const scan = weigh(density, 0.05, 20, 4000);
  const joint = weigh(
    (a) => runs.reduce((p, r) => p * readingLikelihood(a - r.value, r.sd), density(a)),
    0.05,
    20,
    4000,
  );
  const sharp = runs.length > 0 && Number.isFinite(joint.weights[0]) ? joint : scan;
  return weigh(density, quantileIn(sharp, CUT), quantileIn(sharp, 1 - CUT), GRID_POINTS);
}

function weigh(density: Density, low: number, high: number, points: number): Belief {
  const alphas = Float64Array.from({ length: points }, (_, g) => low + ((high - low) * g) / (points - 1));
  return { alphas, weights: normalised(alphas.map(density)) };
}

/** Density of a belief between the points of its grid; nothing beyond its ends. */
export function between({ alphas, weights }: Belief): Density {
  const step = alphas[1]! - alphas[0]!;
  return (alpha) => {
    const at = (alpha - alphas[0]!) / step;
    const g = Math.floor(at);
    if (g < 0 || g >= weights.length - 1) return 0;
    return (weights[g]! + (weights[g + 1]! - weights[g]!) * (at - g)) / step;
  };
}

/** Weights scaled to sum to 1. */
export function normalised(weights: Float64Array): Float64Array {
  let sum = 0;
  for (const w of weights) sum += w;
  return weights.map((w) => w / sum);
}

/**
 * Quantile of a belief; each grid point's weight is spread evenly over its cell.
 * @example quantileIn({ alphas: Float64Array.of(1, 2, 3), weights: Float64Array.of(0, 1, 0) }, 0.5) // 2
 */
export function quantileIn({ alphas, weights }: Belief, probability: number): number {
  const step = alphas[1]! - alphas[0]!;
  let below = 0;
  for (let g = 0; g < alphas.length; g++) {
    const w = weights[g]!;
    if (below + w >= probability && w > 0) return alphas[g]! + step * ((probability - below) / w - 0.5);
    below += w;
  }
  return alphas.at(-1)!;
}
