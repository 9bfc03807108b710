/** How much of the doubt of a result each input brings. @module */
import { DRAWS, INPUTS, type Input } from "./draws.ts";
import type { Simulation } from "./simulate.ts";

/** Shares are read off every fourth draw: a quarter of the lattice is a lattice too, and three digits are shown. */
const STRIDE = 4;
const READ = DRAWS / STRIDE;

/** Inputs that move the stress (the others move only what it is compared with). */
const STRESS_INPUTS: ReadonlySet<Input> = new Set(
  INPUTS.filter((input) => !["toughness", "moisture", "interface", "rupture", "quench"].includes(input)),
);

/** First-order share of a variance by input [-]. */
export type Shares = Record<Input, number>;

/** Where the doubt comes from. */
export interface DoubtShares {
  /** Of the variance of the stress. */
  shares: Shares;
  /** Of whether the glaze fails at all. */
  verdictShares: Shares;
}

const stressRead = new Float64Array(READ);
const failedRead = new Float64Array(READ);

/**
 * Squared correlation of stress and failure with each input: the first-order share, exact where the result is linear.
 * @param simulation - its stresses, its failures, what was drawn
 * @returns shares of the variance of the stress, and of whether the glaze fails at all; 0 where nothing varies
 */
export function sharesOf({
  stress,
  failed,
  deviates,
}: Pick<Simulation, "stress" | "failed" | "deviates">): DoubtShares {
  const shares = { ...NO_SHARES };
  const verdictShares = { ...NO_SHARES };
  thin(stress, stressRead);
  thin(failed, failedRead);
  const ofStress = momentsOf(stressRead);
  const ofFailed = momentsOf(failedRead);
  for (const input of INPUTS) {
    const { read, sum, squares } = known(deviates[input]);
    if (squares <= 0) continue;
    // Two sums at a time for each result, since every addition waits for the one before.
    let stress0 = (-sum * ofStress.sum) / READ;
    let stress1 = 0;
    let failed0 = (-sum * ofFailed.sum) / READ;
    let failed1 = 0;
    for (let i = 0; i < READ; i += 2) {
      const z0 = read[i]!;
      const z1 = read[i + 1]!;
      stress0 += z0 * stressRead[i]!;
      stress1 += z1 * stressRead[i + 1]!;
      failed0 += z0 * failedRead[i]!;
      failed1 += z1 * failedRead[i + 1]!;
    }
    if (STRESS_INPUTS.has(input)) shares[input] = correlation(stress0 + stress1, squares, ofStress);
    verdictShares[input] = correlation(failed0 + failed1, squares, ofFailed);
  }
  return { shares, verdictShares };
}

const NO_SHARES = Object.fromEntries(INPUTS.map((input) => [input, 0])) as Shares;

/** Squared correlation from a cross sum about the means; 0 where the result does not vary. */
function correlation(cross: number, squares: number, of: Moments): number {
  return of.squares > 0 ? (cross * cross) / (squares * of.squares) : 0;
}

function thin(values: Float64Array, out: Float64Array): void {
  for (let i = 0; i < READ; i++) out[i] = values[i * STRIDE]!;
}

interface Moments {
  sum: number;
  /** Σ(x − mean)². */
  squares: number;
}

function momentsOf(values: Float64Array): Moments {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  const mean = sum / values.length;
  let squares = 0;
  for (let i = 0; i < values.length; i++) squares += (values[i]! - mean) ** 2;
  return { sum, squares };
}

/** Deviates are shared between fits, so they are thinned and their moments worked out once. */
const cache = new WeakMap<Float64Array, Moments & { read: Float64Array }>();

function known(deviates: Float64Array): Moments & { read: Float64Array } {
  let entry = cache.get(deviates);
  if (!entry) {
    const read = new Float64Array(READ);
    thin(deviates, read);
    entry = { read, ...momentsOf(read) };
    cache.set(deviates, entry);
  }
  return entry;
}
