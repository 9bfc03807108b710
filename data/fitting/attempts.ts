/** Other ways of fitting the expansion, scored on the same folds, so that the choice can be seen. @module */

import type { AccuracyFigures } from "../../api/engine/glass/types.ts";
import { huberFit } from "../../api/engine/numeric/least-squares.ts";
import { accuracyOf } from "./accuracy.ts";
import { type FitTable, rowsWithout } from "./cross-validate.ts";
import { designOf, pickRows, predictRow, quantityRows } from "./design.ts";
import { DOMAINS, type Domain, inDomain } from "./domains.ts";
import { FOLDS } from "./folds.ts";
import { neighbourCorrection } from "./neighbours.ts";
import { BREAK_TERMS, PLAIN_TERMS, type Spec, TERMS } from "./specs.ts";
import { type TrustOptions, trustedFit } from "./trusted-fit.ts";

/** One way of fitting. */
interface Attempt {
  name: string;
  terms: readonly string[];
  /** Publications weighted by their scatter. */
  trust: boolean;
  /** Weight of a row by where it lies [-]. */
  weight?: (x: Float64Array) => number;
  /** A shift of its own for each publication, shrunk by this many imagined rows. */
  publicationShift?: number;
  /** Mean residual of the nearest measured glasses added to the prediction. */
  neighbours?: boolean;
  verdict: string;
}

/** The shipped terms less the products with charge balance. */
const PRODUCT_TERMS = TERMS.filter((term) => !term.startsWith("AluminaWithAlkali*"));

const inGlaze = (x: Float64Array) => inDomain("glaze", x);
const inStoneware = (x: Float64Array) => inDomain("stoneware-like", x);

const ATTEMPTS: readonly Attempt[] = [
  { name: "charge-balance terms and a few products", terms: PLAIN_TERMS, trust: false, verdict: "the floor" },
  { name: "products of all common oxides", terms: PRODUCT_TERMS, trust: false, verdict: "kept" },
  { name: "… and careful publications trusted more", terms: PRODUCT_TERMS, trust: true, verdict: "kept" },
  {
    name: "… and alumina paired with alkali times oxides",
    terms: TERMS,
    trust: true,
    verdict: "kept: the model that ships",
  },
  {
    name: "… and the other charge-balance terms times oxides",
    terms: [...TERMS, ...BREAK_TERMS],
    trust: true,
    verdict: "discarded: no better, many more terms",
  },
  {
    name: "… fitted on glaze-like rows only",
    terms: TERMS,
    trust: true,
    weight: (x) => (inGlaze(x) ? 1 : 0),
    verdict: "discarded: no better, and blind outside",
  },
  {
    name: "… stoneware-like rows weighted 5, glazes 3, the rest 1",
    terms: TERMS,
    trust: true,
    weight: (x) => (inStoneware(x) ? 5 : inGlaze(x) ? 3 : 1),
    verdict: "discarded: lower mean square, higher median",
  },
  {
    name: "… each publication with a shift of its own (mixed effects)",
    terms: TERMS,
    trust: true,
    publicationShift: 5,
    verdict: "discarded: within the noise",
  },
  {
    name: "… with the residuals of the nearest glasses added",
    terms: TERMS,
    trust: true,
    neighbours: true,
    verdict: "discarded: a little better, but the parts no longer add up by oxide and every answer needs all rows",
  },
];

/** An attempt with its figures. */
export interface AttemptScore {
  name: string;
  terms: number;
  verdict: string;
  figures: Record<Domain, AccuracyFigures>;
}

/** Scores every attempt on publications left out. */
export function scoreAttempts(spec: Spec, table: FitTable): AttemptScore[] {
  return ATTEMPTS.map((attempt) => {
    const design = designOf(quantityRows(table.compositions), attempt.terms);
    const errors = heldOutErrors(attempt, spec, { ...table, design });
    const figures = Object.fromEntries(
      DOMAINS.map((domain) => [
        domain,
        accuracyOf([...errors].filter((_, i) => inDomain(domain, table.compositions[i]!))),
      ]),
    ) as Record<Domain, AccuracyFigures>;
    return { name: attempt.name, terms: attempt.terms.length, verdict: attempt.verdict, figures };
  });
}

function heldOutErrors(attempt: Attempt, spec: Spec, table: FitTable): Float64Array {
  const errors = new Float64Array(table.target.length);
  for (let fold = 0; fold < FOLDS; fold++) {
    const { weight } = attempt;
    const train = rowsWithout(table, fold).filter((i) => !weight || weight(table.compositions[i]!) > 0);
    const test = table.folds.flatMap((f, i) => (f === fold ? i : []));
    const coefficients = coefficientsOf(attempt, spec, table, train);
    for (const i of test) errors[i] = predictRow(table.design, i, coefficients) - table.target[i]!;
    if (!attempt.neighbours) continue;
    const residuals = train.map((i) => table.target[i]! - predictRow(table.design, i, coefficients));
    const known = train.map((i) => table.compositions[i]!);
    const near = neighbourCorrection(known, residuals);
    for (const i of test) if (inGlaze(table.compositions[i]!)) errors[i] = errors[i]! + near(table.compositions[i]!);
  }
  return errors;
}

function coefficientsOf(attempt: Attempt, spec: Spec, table: FitTable, train: readonly number[]): Float64Array {
  const design = pickRows(table.design, train);
  const target = Float64Array.from(train, (i) => table.target[i]!);
  const publications = train.map((i) => table.publications[i]!);
  const own = attempt.weight ? Float64Array.from(train, (i) => attempt.weight!(table.compositions[i]!)) : undefined;
  if (!attempt.trust) return huberFit(design, target, { ...spec, rounds: 15, weights: own }).coefficients;
  if (!attempt.publicationShift) return trustedFit(design, target, publications, spec, own).coefficients;
  return shiftedFit(design, target, publications, spec, attempt.publicationShift);
}

/** Alternates between the common model and a shrunken shift for each publication. */
function shiftedFit(
  design: Parameters<typeof trustedFit>[0],
  target: Float64Array,
  publications: readonly number[],
  options: TrustOptions,
  shrink: number,
): Float64Array {
  let shifts = new Map<number, number>();
  let coefficients = new Float64Array(design.columns);
  for (let round = 0; round < 3; round++) {
    const shifted = target.map((y, i) => y - (shifts.get(publications[i]!) ?? 0));
    coefficients = Float64Array.from(trustedFit(design, shifted, publications, options).coefficients);
    const sums = new Map<number, { sum: number; n: number }>();
    for (let i = 0; i < design.rows; i++) {
      const entry = sums.get(publications[i]!) ?? { sum: 0, n: 0 };
      const residual = target[i]! - predictRow(design, i, coefficients);
      entry.sum += Math.max(-2 * options.threshold, Math.min(2 * options.threshold, residual));
      entry.n++;
      sums.set(publications[i]!, entry);
    }
    shifts = new Map([...sums].map(([publication, { sum, n }]) => [publication, sum / (n + shrink)]));
  }
  return coefficients;
}
