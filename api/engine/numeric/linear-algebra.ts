/** Symmetric positive definite systems, small and dense, row by row in one flat array. @module */

/**
 * Cholesky factor of a symmetric positive definite matrix: A = L·Lᵀ.
 * @param a - n × n matrix, row-major; only the lower triangle is read
 * @param n - order [-]
 * @returns L, row-major, zeros above the diagonal
 * @throws RangeError when A is not positive definite to working precision
 * @example cholesky(Float64Array.of(4, 2, 2, 5), 2) // [2, 0, 1, 2]
 */
export function cholesky(a: Float64Array, n: number): Float64Array {
  const l = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = a[i * n + j]!;
      for (let k = 0; k < j; k++) sum -= l[i * n + k]! * l[j * n + k]!;
      if (i !== j) l[i * n + j] = sum / l[j * n + j]!;
      else if (sum > 0) l[i * n + i] = Math.sqrt(sum);
      else throw new RangeError(`matrix is not positive definite at row ${i}`);
    }
  }
  return l;
}

/**
 * Solves A·x = b from the Cholesky factor of A.
 * @param l - factor from {@link cholesky}
 * @param b - right-hand side of length n
 * @returns x
 * @example choleskySolve(cholesky(Float64Array.of(4, 2, 2, 5), 2), Float64Array.of(8, 8)) // [1.5, 1]
 */
export function choleskySolve(l: Float64Array, b: Float64Array): Float64Array {
  const n = b.length;
  const x = Float64Array.from(b);
  for (let i = 0; i < n; i++) {
    let sum = x[i]!;
    for (let k = 0; k < i; k++) sum -= l[i * n + k]! * x[k]!;
    x[i] = sum / l[i * n + i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = x[i]!;
    for (let k = i + 1; k < n; k++) sum -= l[k * n + i]! * x[k]!;
    x[i] = sum / l[i * n + i]!;
  }
  return x;
}

/**
 * Inverse of the Cholesky factor, so that |L⁻¹·f|² = fᵀ·A⁻¹·f: the leverage of a row f.
 * @param l - factor from {@link cholesky}
 * @param n - order [-]
 * @returns L⁻¹, row-major, zeros above the diagonal
 * @example invertLower(Float64Array.of(2, 0, 1, 2), 2) // [0.5, 0, -0.25, 0.5]
 */
export function invertLower(l: Float64Array, n: number): Float64Array {
  const inverse = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    inverse[j * n + j] = 1 / l[j * n + j]!;
    for (let i = j + 1; i < n; i++) {
      let sum = 0;
      for (let k = j; k < i; k++) sum -= l[i * n + k]! * inverse[k * n + j]!;
      inverse[i * n + j] = sum / l[i * n + i]!;
    }
  }
  return inverse;
}
