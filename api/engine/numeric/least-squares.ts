/** Robust linear regression. @module */
import { NormalEquations } from "./normal-equations.ts";

/** A table of numbers, row by row in one flat array. */
export interface Design {
  rows: number;
  columns: number;
  values: Float64Array;
}

/** How to fit. */
export interface HuberOptions {
  /** Residual beyond which a row counts linearly instead of squared, in the unit of the target. */
  threshold: number;
  /** Penalty on each coefficient in units of its column's size; the first column is free [-]. */
  ridge: number;
  /**
   * Smallest size that a column counts as [-]; 0 if left out. A term that few rows show is small in the mean, and
   * without this floor its coefficient could take any value at no cost.
   */
  smallest?: number;
  /** Weight of each row; 1 if left out [-]. */
  weights?: Float64Array;
  /** Coefficients to start from. */
  start?: Float64Array;
  /** Largest number of reweighting rounds; 30 if left out [-]. */
  rounds?: number;
}

/** The outcome of a fit. */
export interface HuberFit {
  coefficients: Float64Array;
  /** Final weight of each row: its own times the one that tames outliers [-]. */
  weights: Float64Array;
  iterations: number;
  converged: boolean;
}

/**
 * Huber regression by iteratively reweighted least squares: small residuals count squared, large ones linearly,
 * so that a devitrified sample among the glasses does not drag the rest.
 *
 *     minimise  Σ wᵢ ρ(yᵢ − xᵢ·b) + ridge · Σw · Σ (cⱼ bⱼ)²,   cⱼ = size of column j: its root mean square, at least `smallest`
 *
 * @param design - one row a measurement; the first column is the constant
 * @param target - measured values
 * @param options - see {@link HuberOptions}
 * @returns coefficients, final weights, rounds used and whether they settled to 1e-6 of the threshold
 * Source: P.J. Huber, Ann. Math. Statist. 35 (1964) 73–101 (from memory).
 */
export function huberFit(design: Design, target: Float64Array, options: HuberOptions): HuberFit {
  const { rows, columns, values } = design;
  const { threshold, ridge, smallest = 0, rounds = 30 } = options;
  const own = options.weights ?? new Float64Array(rows).fill(1);
  const scale = columnScales(design, smallest);
  const weights = Float64Array.from(own);
  let coefficients: Float64Array | undefined = options.start;
  if (coefficients) reweigh(design, target, coefficients, own, threshold, weights);
  for (let round = 1; round <= rounds; round++) {
    const next = weightedSolve(design, target, weights, scale, ridge);
    let change = coefficients ? 0 : Number.POSITIVE_INFINITY;
    if (coefficients) {
      for (let j = 0; j < columns; j++) {
        change = Math.max(change, Math.abs(next[j]! - coefficients[j]!) * scale[j]!);
      }
    }
    coefficients = next;
    reweigh(design, target, coefficients, own, threshold, weights);
    if (change < 1e-6 * threshold) return { coefficients, weights, iterations: round, converged: true };
  }
  return { coefficients: coefficients ?? new Float64Array(columns), weights, iterations: rounds, converged: false };

  function reweigh(d: Design, y: Float64Array, b: Float64Array, w0: Float64Array, k: number, into: Float64Array) {
    for (let i = 0; i < d.rows; i++) {
      let predicted = 0;
      for (let j = 0, at = i * d.columns; j < d.columns; j++, at++) predicted += values[at]! * b[j]!;
      const residual = Math.abs(y[i]! - predicted);
      into[i] = residual <= k ? w0[i]! : (w0[i]! * k) / residual;
    }
  }
}

/** Root mean square of each column, at least `smallest`; 1 for a column of zeros without a floor. */
export function columnScales({ rows, columns, values }: Design, smallest: number): Float64Array {
  const squares = new Float64Array(columns);
  for (let i = 0; i < rows; i++) {
    for (let j = 0, at = i * columns; j < columns; j++, at++) squares[j] = squares[j]! + values[at]! ** 2;
  }
  return squares.map((sum) => Math.max(Math.sqrt(sum / rows), smallest) || 1);
}

/** Weighted ridge regression through the normal equations, columns brought to one size first. */
function weightedSolve(d: Design, y: Float64Array, w: Float64Array, scale: Float64Array, ridge: number): Float64Array {
  const equations = new NormalEquations(d.columns);
  for (let i = 0; i < d.rows; i++) equations.add(d.values, i * d.columns, scale, w[i]!, y[i]!);
  const penalty = new Float64Array(d.columns).fill(ridge * equations.total);
  penalty[0] = 1e-12 * equations.total;
  return equations.solve(penalty).map((b, j) => b / scale[j]!);
}
