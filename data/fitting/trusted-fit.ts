/** Robust regression that trusts careful publications more. @module */
import { type Design, huberFit } from "../../api/engine/numeric/least-squares.ts";
import { predictRow } from "./design.ts";

/** How to fit one property. */
export interface TrustOptions {
  /** Residual beyond which a row counts linearly, in the property's unit. */
  threshold: number;
  ridge: number;
  /** Smallest size that a column counts as: see HuberOptions [-]. */
  smallest: number;
  /** Scatter of an ordinary publication, in the property's unit. */
  ordinaryScatter: number;
}

/** Rows that an unknown publication is taken to bring along with ordinary scatter [-]. */
const PRIOR_ROWS = 3;
/** One wild row must not condemn a publication: residuals count up to this many times the ordinary scatter. */
const CAP = 6;
/** Rounds of fitting and weighing publications. */
const ROUNDS = 3;

/** Coefficients and the final weight of each row. */
export interface TrustedFit {
  coefficients: Float64Array;
  weights: Float64Array;
}

/**
 * Huber regression, repeated with each row weighted by s₀/sₚ: the scatter of an ordinary publication over the root
 * mean square residual of the row's own publication, shrunk towards s₀ by three imagined rows.
 * @param design - one row a glass
 * @param target - measured values
 * @param publications - publication of each row
 * @param own - weight of each row besides trust; 1 if left out [-]
 */
export function trustedFit(
  design: Design,
  target: Float64Array,
  publications: readonly number[],
  options: TrustOptions,
  own: Float64Array = new Float64Array(design.rows).fill(1),
): TrustedFit {
  const { ordinaryScatter } = options;
  let weights = own;
  let coefficients: Float64Array | undefined;
  for (let round = 0; round < ROUNDS; round++) {
    const rounds = round === 0 ? 10 : 6;
    coefficients = huberFit(design, target, { ...options, weights, rounds, start: coefficients }).coefficients;
    const squares = new Map<number, { sum: number; n: number }>();
    for (let i = 0; i < design.rows; i++) {
      const residual = Math.abs(target[i]! - predictRow(design, i, coefficients));
      const entry = squares.get(publications[i]!) ?? { sum: 0, n: 0 };
      entry.sum += Math.min(residual, CAP * ordinaryScatter) ** 2;
      entry.n++;
      squares.set(publications[i]!, entry);
    }
    weights = Float64Array.from(publications, (publication, i) => {
      const { sum, n } = squares.get(publication)!;
      return (own[i]! * ordinaryScatter) / Math.sqrt((sum + PRIOR_ROWS * ordinaryScatter ** 2) / (n + PRIOR_ROWS));
    });
  }
  return { coefficients: coefficients!, weights };
}
