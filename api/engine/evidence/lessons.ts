/** What each tile taught, whatever order they came in. @module */
import { DRAWS } from "../fit/draws.ts";

import { type Answered, predict } from "./predict.ts";
import { type Belief, quantileIn, readingLikelihood } from "./prior.ts";
import type { Evidence } from "./read-request.ts";
import { expansionQuantity } from "./read-request.ts";
import type { Lesson } from "./types.ts";
import { addLogLikelihood, chanceOf, type Joint, normalCdf, posterior } from "./weigh.ts";
import { chanceWords, expansionWords } from "./words.ts";

/** A chance below which a tile is at odds with the rest [-] (common practice, no source). */
export const AT_ODDS = 0.05;

/** One piece of evidence with its likelihood. */
interface Piece {
  name: string;
  pointer: string;
  perAlpha: Float64Array | null;
  perDraw: Float64Array | null;
  chance: (rest: Joint) => number;
}

/** Everything learned. */
export interface Learned {
  joint: Joint;
  lessons: Lesson[];
}

/**
 * Weighs all evidence together, each piece alone, and all without each.
 * @param evidence - the request made ready
 */
export function learnAll(evidence: Evidence): Learned {
  const { prior, tiles, runs, known } = evidence;
  // One fixed order, so that the last digit does not hang on the order of the request.
  const ordered = [...tiles].sort((a, b) => (a.key < b.key ? -1 : 1));
  const pieces: Piece[] = [
    ...[...runs]
      .sort((a, b) => a.value - b.value || a.sd - b.sd)
      .map((run): Piece => {
        const perAlpha = prior.alphas.map((a) => Math.log(readingLikelihood(a - run.value, run.sd) + 1e-300));
        const chance = ({ belief }: Joint) => {
          let below = 0;
          belief.alphas.forEach((a, g) => {
            below += belief.weights[g]! * normalCdf((run.value - a) / run.sd);
          });
          return 2 * Math.min(below, 1 - below);
        };
        return { name: run.name, pointer: run.pointer, perAlpha, perDraw: null, chance };
      }),
    ...ordered.map((tile): Piece => {
      const predicted = predict(
        tile,
        tile.answered.map(({ question }) => question),
        prior.alphas,
      );
      const perDraw = new Float64Array(prior.alphas.length * DRAWS);
      tile.answered.forEach((answer, q) => {
        addLogLikelihood(answer, predicted[q]!, perDraw);
      });
      const chance = (rest: Joint) =>
        Math.min(...tile.answered.map((answer: Answered, q) => chanceOf(answer, predicted[q]!, rest)));
      return { name: tile.name, pointer: tile.pointer, perAlpha: null, perDraw, chance };
    }),
  ];
  const joint = of(prior, pieces);
  const lessons = pieces.map((piece) => {
    const rest = of(
      prior,
      pieces.filter((other) => other !== piece),
    );
    const alone = of(prior, [piece]);
    const expected = Math.min(Math.max(piece.chance(rest), 0), 1);
    const conflicts = expected < AT_ODDS && (known || pieces.length > 1);
    return lesson(piece, alone.belief, rest.belief, joint.belief, expected, conflicts, pieces.length > 1);
  });
  const place = new Map([...runs, ...tiles].map(({ pointer }, i) => [pointer, i]));
  lessons.sort((a, b) => place.get(a.pointer)! - place.get(b.pointer)!);
  return { joint, lessons };
}

function of(prior: Belief, pieces: readonly Piece[]): Joint {
  return posterior(
    prior,
    pieces.flatMap(({ perAlpha }) => (perAlpha ? [perAlpha] : [])),
    pieces.flatMap(({ perDraw }) => (perDraw ? [perDraw] : [])),
  );
}

/** A belief as a quantity: middle, 5 % and 95 %. */
export function asQuantity(belief: Belief) {
  return expansionQuantity(quantileIn(belief, 0.05), quantileIn(belief, 0.5), quantileIn(belief, 0.95));
}

function lesson(
  { name, pointer }: Piece,
  alone: Belief,
  without: Belief,
  all: Belief,
  expected: number,
  conflicts: boolean,
  others: boolean,
): Lesson {
  const before = asQuantity(without);
  const after = asQuantity(all);
  const half = (q: typeof before) => (q.high - q.low) / 2;
  const shift = after.value - before.value;
  const from = others ? "without it the rest would give" : "before it I had";
  const moved =
    Math.abs(shift) < 0.05 && Math.abs(half(after) - half(before)) < 0.05
      ? `It taught little: ${from} ${expansionWords(before)} as well.`
      : `It moved the answer ${Math.abs(shift) < 0.05 ? "hardly" : shift > 0 ? "up" : "down"}, from ${expansionWords(before)} to ${expansionWords(after)}${half(after) < half(before) - 0.05 ? ", and narrowed it" : ""}.`;
  const odds = conflicts
    ? ` It is at odds with ${others ? "the rest" : "the recipe"}: going by that I would have expected it ${chanceWords(expected)}. Check its clay, its thickness and the notebook, or fire it again.`
    : "";
  return { name, pointer, alone: asQuantity(alone), without: before, expected, conflicts, text: moved + odds };
}
