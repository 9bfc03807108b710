/** Says of each demand on a model whether it was met, and puts a missed one beside a published set. @module */
import type { AccuracyFigures } from "../../api/engine/glass/types.ts";
import type { Samples } from "./samples.ts";
import type { SetScores } from "./score-sets.ts";
import type { Target } from "./targets.ts";

/**
 * One line for the demand; under a missed one, what a published set reads on the same rows and in the table that the
 * demand comes from, and what the model reads on samples of the publications on which the set reads as in that table.
 * The miss stays a miss: the lines under it say how the model stands beside that set.
 * @param target - the demand
 * @param figures - the model's, on publications left out of the fit
 * @param sets - the published sets' figures on the same rows
 * @param samples - random samples of the publications
 */
export function targetLines(
  target: Target,
  figures: AccuracyFigures,
  sets: SetScores,
  samples: Samples = {},
): string[] {
  const { domain, figure, label, atMost, beside } = target;
  const reached = figures[figure];
  const line = `- ${domain}: ${label} ${reached}, wanted at most ${atMost}: ${reached <= atMost ? "met" : "missed"}.`;
  if (reached <= atMost || !beside) return [line];
  const own = sets[beside.set]![domain]!;
  const ratio = (part: number, whole: number) => (part / whole).toFixed(2);
  return [
    line,
    `  Like for like: ${beside.name} reads ${own[figure]} on these rows (${own.n} of ${figures.n}), where the table that the`,
    `  demand comes from has ${beside.read} for it: the two were not scored alike. The model's ${label} is ${ratio(reached, own[figure])}`,
    `  of that set's here; the demand is ${ratio(atMost, beside.read)} of it there.`,
    ...sampleLines(samples[domain]),
  ];
}

function sampleLines(samples: Samples[Target["domain"]]): string[] {
  if (!samples) return [];
  const { share, draws, set, model, near } = samples;
  const [low, middle, high] = near.model;
  return [
    `  It hangs on which publications are scored: over ${draws} random samples of ${100 * share} % of them that set reads`,
    `  ${set[0]} to ${set[2]} and the model ${model[0]} to ${model[2]} (nine samples in ten). On the ${near.draws} samples where the set`,
    `  reads ${near.read} ± ${near.within}, the model reads ${low} to ${high}, in the middle ${middle}, and meets the demand on`,
    `  ${Math.round(100 * near.met)} of 100.`,
  ];
}
