/** Which tile would tell most about the glaze. @module */

import { DRAWS } from "../fit/draws.ts";
import { millimetres } from "../fit/words.ts";
import { quantity, round, UNITS } from "../quantity.ts";
import { predict, type Question } from "./predict.ts";
import { type Belief, normalised } from "./prior.ts";
import { expansionQuantity, type ReadyPiece } from "./read-request.ts";
import type { NextTile } from "./types.ts";
import type { Cell } from "./weigh.ts";
import { chanceWords } from "./words.ts";

/** Half as thick, as thick, twice as thick. */
const THICKNESSES = [0.5, 1, 2];
/** Days on the shelf before the last look. */
const SHELF_DAYS = 30;
/** Quenches tried, above water of 20 °C [K]. */
const QUENCHES = [100, 130, 160, 190];
/** A quench costs an oven, goggles and a cracked tile: it has to tell this much more [bit] (common practice, no source). */
const QUENCH_WORTH = 0.15;
/** Clays considered at most [-]. */
const MOST_CLAYS = 6;
/** Tiles proposed [-]. */
const PROPOSED = 3;

const SEEN = ["it crazes at opening", "it crazes within a month", "it shivers", "it cracks in the quench", "it holds"];

/** Ranks tiles by expected information. */
export function nextTiles(pieces: readonly ReadyPiece[], cells: readonly Cell[], usualMm: number): NextTile[] {
  const proposals = pieces.slice(0, MOST_CLAYS).flatMap((piece) =>
    THICKNESSES.flatMap((times) => {
      const thicknessMm = round(usualMm * times, 3);
      if (thicknessMm < 0.05 || thicknessMm > 2) return [];
      return [bestOf(piece, thicknessMm, cells)];
    }),
  );
  return proposals.sort((a, b) => b.bits - a.bits).slice(0, PROPOSED);
}

/** Looking only, or with the quench that tells most where that is worth its while. */
function bestOf(piece: ReadyPiece, thicknessMm: number, cells: readonly Cell[]): NextTile {
  const questions: Question[] = [
    { ask: "crazed", days: 0 },
    { ask: "crazed", days: SHELF_DAYS },
    { ask: "shivered" },
    ...QUENCHES.map((differenceK): Question => ({ ask: "quench", differenceK })),
  ];
  const tile = { draws: piece.draws, situation: { ...piece.situation, thicknessM: thicknessMm / 1000 } };
  const answers = predict(
    tile,
    questions,
    Float64Array.from(cells, ({ alpha }) => alpha),
  );
  const plans = [null, ...QUENCHES].map((quenchK, plan) => {
    const quench = quenchK === null ? null : answers[2 + plan]!;
    const chances = cells.map(({ weights }, c) => {
      const of = new Float64Array(SEEN.length);
      for (let i = 0; i < DRAWS; i++) {
        const k = c * DRAWS + i;
        const seen = answers[0]![k] ? 0 : answers[1]![k] ? 1 : answers[2]![k] ? 2 : quench?.[k] ? 3 : 4;
        of[seen]! += weights[i]!;
      }
      return of;
    });
    return { quenchK, chances, bits: information(chances) };
  });
  const look = plans[0]!;
  const quench = plans.slice(1).sort((a, b) => b.bits - a.bits)[0]!;
  const { quenchK, chances, bits } = quench.bits - look.bits >= QUENCH_WORTH ? quench : look;
  return told(piece, thicknessMm, quenchK, bits, chances, cells);
}

/**
 * Expected information about the expansion: entropy of what may be seen, less its mean entropy at each expansion.
 *
 *     I = H(mean p) − mean H(p),   H(p) = −Σ p log₂ p
 *
 * @param chances - for each equally likely expansion, the chance of each thing seen
 * @returns information [bit], never below 0
 * @example information([Float64Array.of(1, 0), Float64Array.of(0, 1)]) // 1
 */
export function information(chances: readonly Float64Array[]): number {
  const mean = new Float64Array(chances[0]!.length);
  let within = 0;
  for (const one of chances) {
    one.forEach((p, k) => {
      mean[k]! += p / chances.length;
    });
    within += entropy(one) / chances.length;
  }
  return Math.max(entropy(mean) - within, 0);
}

function entropy(p: Float64Array): number {
  let sum = 0;
  for (const one of p) if (one > 0) sum -= one * Math.log2(one);
  return sum;
}

function told(
  piece: ReadyPiece,
  thicknessMm: number,
  quenchK: number | null,
  bits: number,
  chances: readonly Float64Array[],
  cells: readonly Cell[],
): NextTile {
  const half = (belief: Belief) => (cellQuantile(belief, 0.95) - cellQuantile(belief, 0.05)) / 2;
  const alphas = Float64Array.from(cells, ({ alpha }) => alpha);
  const now = half({ alphas, weights: alphas.map(() => 1 / cells.length) });
  let then = 0;
  const expects = SEEN.flatMap((seen, k) => {
    const column = Float64Array.from(chances, (one) => one[k]!);
    const chance = column.reduce((sum, p) => sum + p, 0) / cells.length;
    if (chance < 0.005) return [];
    const belief = { alphas, weights: normalised(column) };
    then += chance * half(belief);
    const [low, middle, high] = [0.05, 0.5, 0.95].map((p) => cellQuantile(belief, p)) as [number, number, number];
    return [{ seen, chance: round(chance, 3), expansion: expansionQuantity(low, middle, high) }];
  });
  const look = `Fire a tile of ${piece.name} with the glaze ${millimetres(thicknessMm)} thick and look at opening and after a month`;
  const plunge =
    quenchK === null ? "" : `, then plunge it from an oven at ${quenchK + 20}\u00a0°C into water of 20\u00a0°C`;
  const guess = expects.map(({ seen, chance }) => `${seen} ${chanceWords(chance)}`).join(", ");
  return {
    body: piece.name,
    thicknessMm,
    quenchK,
    bits: round(bits, 3),
    halfWidth: quantity(then, 0, now, UNITS.expansion, { rangeC: [20, 300] }),
    expects,
    text: `${look}${plunge}. I expect that ${guess}. On average the expansion would then be known to ±${then.toFixed(1)} instead of ±${now.toFixed(1)}\u00a0×10⁻⁶/K.`,
  };
}

/** Quantile among cells, between their middles. */
function cellQuantile({ alphas, weights }: Belief, probability: number): number {
  let below = 0;
  for (let c = 0; c < alphas.length; c++) {
    const w = weights[c]!;
    if (below + w >= probability && w > 0) {
      const left = c > 0 ? (alphas[c - 1]! + alphas[c]!) / 2 : alphas[c]!;
      const right = c < alphas.length - 1 ? (alphas[c]! + alphas[c + 1]!) / 2 : alphas[c]!;
      return left + ((right - left) * (probability - below)) / w;
    }
    below += w;
  }
  return alphas.at(-1)!;
}
