/** A weighted sum of terms: the form of every fitted figure. @module */
import { parseTerm } from "./terms.ts";

/** A sum as the model files hold it. */
export interface TermSumFile {
  intercept: number;
  /** Term name → coefficient, per mole fraction or per product of two. */
  terms: Record<string, number>;
}

/** A sum made ready for the hot loop: term i is weight × q[first] or weight × q[first] × q[second]. */
export interface TermSum {
  count: number;
  first: Int32Array;
  /** −1 for a term of one quantity. */
  second: Int32Array;
  weight: Float64Array;
  /** The sum for a glass's quantities. */
  of(q: Float64Array): number;
}

/**
 * Prepares a sum.
 * @throws Error when the file names a term that terms.ts does not know
 */
export function termSum(file: TermSumFile): TermSum {
  const terms = Object.entries(file.terms).map(([name, coefficient]) => ({ ...parseTerm(name), coefficient }));
  const count = terms.length;
  const first = Int32Array.from(terms, (t) => t.first);
  const second = Int32Array.from(terms, (t) => t.second);
  const weight = Float64Array.from(terms, (t) => t.coefficient);
  return {
    count,
    first,
    second,
    weight,
    of(q) {
      let sum = file.intercept;
      for (let i = 0; i < count; i++) {
        const b = second[i]!;
        sum += weight[i]! * q[first[i]!]! * (b < 0 ? 1 : q[b]!);
      }
      return sum;
    },
  };
}
