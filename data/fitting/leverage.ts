/** The part of a spread that knows where data are dense. @module */
import { MODEL_OXIDES } from "../../api/engine/glass/oxides.ts";
import { cholesky, invertLower } from "../../api/engine/numeric/linear-algebra.ts";

const N = MODEL_OXIDES.length;
/** Keeps oxides that hardly occur from making the moments singular, as a share of each diagonal. */
const RIDGE = 1e-6;

/**
 * Inverse Cholesky factor of the moments Σ f·fᵀ, f = (1, x without silica), for leverageOf in glass/spread.ts.
 * @param compositions - training rows, mole fractions in the order of MODEL_OXIDES
 * @returns lower triangle row by row
 */
export function leverageFactor(compositions: readonly Float64Array[]): Float64Array {
  const moments = new Float64Array(N * N);
  const f = new Float64Array(N);
  for (const x of compositions) {
    f.set(x);
    f[0] = 1;
    for (let i = 0; i < N; i++) {
      if (f[i] === 0) continue;
      for (let j = 0; j <= i; j++) moments[i * N + j] = moments[i * N + j]! + f[i]! * f[j]!;
    }
  }
  for (let i = 0; i < N; i++) moments[i * N + i] = moments[i * N + i]! * (1 + RIDGE) + RIDGE;
  const inverse = invertLower(cholesky(moments, N), N);
  const packed: number[] = [];
  for (let i = 0; i < N; i++) for (let j = 0; j <= i; j++) packed.push(inverse[i * N + j]!);
  return Float64Array.from(packed);
}
