/** Normal equations of a weighted least-squares problem, gathered row by row. @module */
import { cholesky, choleskySolve } from "./linear-algebra.ts";

/** A least-squares problem in the making: Σ w (y − f·b)², many of whose entries of f are zero. */
export class NormalEquations {
  /** Total weight added so far [-]. */
  total = 0;
  private readonly n: number;
  private readonly matrix: Float64Array;
  private readonly right: Float64Array;
  private readonly row: Float64Array;
  private readonly present: Int32Array;

  /** @param n - number of coefficients */
  constructor(n: number) {
    this.n = n;
    this.matrix = new Float64Array(n * n);
    this.right = new Float64Array(n);
    this.row = new Float64Array(n);
    this.present = new Int32Array(n);
  }

  /**
   * Adds one row.
   * @param values - array that holds the row
   * @param from - where the row starts in it
   * @param scale - each entry is divided by this
   * @param weight - weight of the row [-]
   * @param target - value the row should give
   */
  add(values: Float64Array, from: number, scale: Float64Array, weight: number, target: number): void {
    const { n, matrix, right, row, present } = this;
    if (weight === 0) return;
    this.total += weight;
    // Most oxides are absent from most glasses: work with the entries that are not zero.
    let count = 0;
    for (let j = 0; j < n; j++) {
      const value = values[from + j]!;
      if (value === 0) continue;
      row[count] = value / scale[j]!;
      present[count++] = j;
    }
    for (let a = 0; a < count; a++) {
      const j = present[a]!;
      const weighted = weight * row[a]!;
      right[j] = right[j]! + weighted * target;
      const base = j * n;
      for (let b = 0; b <= a; b++) {
        const at = base + present[b]!;
        matrix[at] = matrix[at]! + weighted * row[b]!;
      }
    }
  }

  /**
   * Solves with a penalty: minimise the sum + Σ penaltyⱼ (bⱼ − centreⱼ)².
   * @param penalty - by coefficient
   * @param centre - what the penalty pulls towards; 0 if left out
   * @returns coefficients of the scaled entries
   */
  solve(penalty: Float64Array, centre?: Float64Array): Float64Array {
    const { n } = this;
    const matrix = Float64Array.from(this.matrix);
    const right = Float64Array.from(this.right);
    for (let j = 0; j < n; j++) {
      matrix[j * n + j] = matrix[j * n + j]! + penalty[j]!;
      right[j] = right[j]! + penalty[j]! * (centre?.[j] ?? 0);
    }
    return choleskySolve(cholesky(matrix, n), right);
  }
}
