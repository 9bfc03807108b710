/** Bayes' rule over expansions and draws together. @module */
import { DRAWS } from "../fit/draws.ts";
import type { Answered } from "./predict.ts";
import { type Belief, MISTAKEN, quantileIn, readingLikelihood } from "./prior.ts";

/** Belief in every pair of an expansion and a draw of everything else; sums to 1. */
export interface Joint {
  alphas: Float64Array;
  /** Expansion by expansion, {@link DRAWS} weights each. */
  weights: Float64Array;
  /** Belief in the expansion alone. */
  belief: Belief;
}

/**
 * Adds the logarithm of the likelihood of one answer.
 * @param predicted - from `predict`
 * @param sum - one figure an expansion and draw, added to; a mistaken reading is always possible
 */
export function addLogLikelihood({ answer, sd }: Answered, predicted: Float32Array, sum: Float64Array): Float64Array {
  if (sd === null) {
    const agrees = Math.log(1 - MISTAKEN);
    const differs = Math.log(MISTAKEN);
    for (let k = 0; k < sum.length; k++) sum[k]! += predicted[k] === answer ? agrees : differs;
    return sum;
  }
  const width = Math.max(sd, 1e-3);
  for (let k = 0; k < sum.length; k++) {
    sum[k]! += Math.log(readingLikelihood(answer - predicted[k]!, width) + 1e-300);
  }
  return sum;
}

/**
 * Posterior from a prior and any number of likelihoods; the order they come in does not matter beyond rounding.
 * @param prior - belief on the grid
 * @param perAlpha - logarithms of likelihoods that depend on the expansion alone
 * @param perDraw - logarithms of likelihoods by expansion and draw
 */
export function posterior(prior: Belief, perAlpha: readonly Float64Array[], perDraw: readonly Float64Array[]): Joint {
  const { alphas } = prior;
  const weights = new Float64Array(alphas.length * DRAWS);
  for (let g = 0; g < alphas.length; g++) {
    let log = Math.log(prior.weights[g]! + 1e-300);
    for (const one of perAlpha) log += one[g]!;
    weights.fill(log, g * DRAWS, (g + 1) * DRAWS);
  }
  for (const one of perDraw) for (let k = 0; k < weights.length; k++) weights[k]! += one[k]!;
  let highest = Number.NEGATIVE_INFINITY;
  for (const log of weights) if (log > highest) highest = log;
  let sum = 0;
  for (let k = 0; k < weights.length; k++) {
    const log = weights[k]! - highest;
    // Below this nothing is left of it in a sum of a hundred thousand.
    weights[k] = log < -40 ? 0 : Math.exp(log);
    sum += weights[k]!;
  }
  const marginal = new Float64Array(alphas.length);
  for (let g = 0; g < alphas.length; g++) {
    let row = 0;
    for (let k = g * DRAWS; k < (g + 1) * DRAWS; k++) {
      weights[k]! /= sum;
      row += weights[k]!;
    }
    marginal[g] = row;
  }
  return { alphas, weights, belief: { alphas, weights: marginal } };
}

/** Belief in each draw, whatever the expansion. */
export function drawWeights({ alphas, weights }: Joint): Float64Array {
  const out = new Float64Array(DRAWS);
  for (let g = 0; g < alphas.length; g++) for (let i = 0; i < DRAWS; i++) out[i]! += weights[g * DRAWS + i]!;
  return out;
}

/** How many equally weighted draws the belief is worth [-]. */
export function effectiveDraws(weights: Float64Array): number {
  let squares = 0;
  for (const w of weights) squares += w * w;
  return 1 / squares;
}

/**
 * Chance of an answer going by a belief: of that yes or no, or of a reading at least as far from the middle.
 * @param predicted - what each expansion and draw would show
 */
export function chanceOf({ answer, sd }: Answered, predicted: Float32Array, { weights }: Joint): number {
  let sum = 0;
  for (let k = 0; k < weights.length; k++) {
    const w = weights[k]!;
    if (w === 0) continue;
    if (sd === null) sum += predicted[k] === answer ? w : 0;
    else sum += w * normalCdf((answer - predicted[k]!) / Math.max(sd, 1e-3));
  }
  return sd === null ? sum : 2 * Math.min(sum, 1 - sum);
}

/**
 * Share of a normal distribution below z.
 * @remarks Within 1.5e-7. Source: M. Abramowitz, I. Stegun, Handbook of Mathematical Functions, 7.1.26 (from memory;
 * checked against printed values in tests/engine/evidence.test.ts).
 * @example normalCdf(1.6448536) // 0.95
 */
export function normalCdf(z: number): number {
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * x);
  const poly = t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const tail = (poly * Math.exp(-x * x)) / 2;
  return z > 0 ? 1 - tail : tail;
}

/** One of a few equally likely expansions that stand for a belief, with the draws that go with it. */
export interface Cell {
  alpha: number;
  /** Weight of each draw at this expansion; sums to 1. */
  weights: Float64Array;
}

/** Splits a belief into equally likely cells, each at its middle. */
export function cellsOf(joint: Joint, count: number): Cell[] {
  const { alphas, weights, belief } = joint;
  const step = alphas[1]! - alphas[0]!;
  return Array.from({ length: count }, (_, k) => {
    const alpha = quantileIn(belief, (k + 0.5) / count);
    let g = Math.min(Math.max(Math.round((alpha - alphas[0]!) / step), 0), alphas.length - 1);
    while (g > 0 && belief.weights[g] === 0) g--;
    const row = weights.subarray(g * DRAWS, (g + 1) * DRAWS);
    const total = belief.weights[g]!;
    return { alpha, weights: row.map((w) => w / total) };
  });
}
