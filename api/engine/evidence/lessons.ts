/** What each tile taught, whatever order they came in. @module */
import { DRAWS } from "../fit/draws.ts";

import { predict } from "./predict.ts";
import { type Belief, beliefOn, between, type Density, quantileIn, type Run, readingLikelihood } from "./prior.ts";
import type { Evidence, ReadyTile } from "./read-request.ts";
import { expansionQuantity } from "./read-request.ts";
import type { Lesson } from "./types.ts";
import { addLogLikelihood, chanceOf, type Joint, normalCdf, posterior } from "./weigh.ts";
import { chanceWords, expansionWords } from "./words.ts";

/** A chance below which a tile is at odds with the rest [-] (common practice, no source). */
export const AT_ODDS = 0.05;

/** One piece of evidence, with what is believed from it alone and from everything but it. */
interface Piece {
  name: string;
  pointer: string;
  alone: Belief;
  rest: Belief;
  /** Chance of what was seen, going by the rest [-]. */
  chance: number;
}

/** Everything learned. */
export interface Learned {
  joint: Joint;
  lessons: Lesson[];
}

/**
 * Weighs all evidence together, each piece alone, and all without each.
 *
 * Runs narrow the grid, so that a sharp one is resolved. What is believed without a run may be far wider than that, so
 * each belief has the grid of the runs that it goes by.
 * @param evidence - the request made ready
 */
export function learnAll(evidence: Evidence): Learned {
  const { density, before, prior, known } = evidence;
  // One fixed order, so that the last digit does not hang on the order of the request.
  const tiles = [...evidence.tiles].sort((a, b) => (a.key < b.key ? -1 : 1));
  const runs = [...evidence.runs].sort((a, b) => a.value - b.value || a.sd - b.sd);
  const narrow = tiles.map((tile) => weighedOn(tile, prior));
  const wide = runs.length > 0 ? tiles.map((tile) => weighedOn(tile, before)) : narrow;
  const ofTiles = (weighed: readonly Weighed[]) => weighed.map(({ perDraw }) => perDraw);
  const ofRuns = runs.map((run) => likelihoodOf(run, prior.alphas));
  const joint = posterior(prior, ofRuns, ofTiles(narrow));
  // What the tiles by themselves leave of the prior; runs are weighed on that.
  const byTiles = tiles.length > 0 && runs.length > 0 ? between(posterior(before, [], ofTiles(wide)).belief) : density;
  const pieces = [
    ...runs.map((run): Piece => {
      const rest = beliefFrom(
        byTiles,
        runs.filter((other) => other !== run),
      );
      return { ...run, alone: beliefFrom(density, [run]), rest, chance: chanceOfRun(run, rest) };
    }),
    ...tiles.map(({ name, pointer, answered }, t): Piece => {
      const rest = posterior(prior, ofRuns, ofTiles(narrow.filter((_, other) => other !== t)));
      const { predicted } = narrow[t]!;
      const chance = Math.min(...answered.map((answer, q) => chanceOf(answer, predicted[q]!, rest)));
      const alone = posterior(before, [], [wide[t]!.perDraw]).belief;
      return { name, pointer, alone, rest: rest.belief, chance };
    }),
  ];
  const others = pieces.length > 1;
  const lessons = pieces.map((piece) => lesson(piece, joint.belief, others, known));
  const place = new Map([...evidence.runs, ...evidence.tiles].map(({ pointer }, i) => [pointer, i]));
  lessons.sort((a, b) => place.get(a.pointer)! - place.get(b.pointer)!);
  return { joint, lessons };
}

/** What a tile would show on a grid, and how likely what it showed is there. */
interface Weighed {
  predicted: Float32Array[];
  perDraw: Float64Array;
}

function weighedOn(tile: ReadyTile, { alphas }: Belief): Weighed {
  const predicted = predict(
    tile,
    tile.answered.map(({ question }) => question),
    alphas,
  );
  const perDraw = new Float64Array(alphas.length * DRAWS);
  tile.answered.forEach((answer, q) => {
    addLogLikelihood(answer, predicted[q]!, perDraw);
  });
  return { predicted, perDraw };
}

function likelihoodOf({ value, sd }: Run, alphas: Float64Array): Float64Array {
  return alphas.map((a) => Math.log(readingLikelihood(a - value, sd) + 1e-300));
}

/** Belief from a density and runs, on a grid of its own. */
function beliefFrom(density: Density, runs: readonly Run[]): Belief {
  const prior = beliefOn(density, runs);
  return posterior(
    prior,
    runs.map((run) => likelihoodOf(run, prior.alphas)),
    [],
  ).belief;
}

/** Chance of a run as far from the middle, going by a belief. */
function chanceOfRun({ value, sd }: Run, { alphas, weights }: Belief): number {
  let below = 0;
  alphas.forEach((a, g) => {
    below += weights[g]! * normalCdf((value - a) / sd);
  });
  return 2 * Math.min(below, 1 - below);
}

/** A belief as a quantity: middle, 5 % and 95 %. */
export function asQuantity(belief: Belief) {
  return expansionQuantity(quantileIn(belief, 0.05), quantileIn(belief, 0.5), quantileIn(belief, 0.95));
}

function lesson({ name, pointer, alone, rest, chance }: Piece, all: Belief, others: boolean, known: boolean): Lesson {
  const expected = Math.min(Math.max(chance, 0), 1);
  const conflicts = expected < AT_ODDS && (known || others);
  const before = asQuantity(rest);
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
