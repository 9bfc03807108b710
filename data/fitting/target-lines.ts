/** Says of each demand on a model whether it was met, and puts a missed one beside a published set. @module */
import type { AccuracyFigures } from "../../api/engine/glass/types.ts";
import type { SetScores } from "./score-sets.ts";
import type { Target } from "./targets.ts";

/**
 * One line for the demand; under a missed one, what a published set reads on the same rows and in the table that the
 * demand comes from. The miss stays a miss: the lines under it say how the model stands beside that set.
 * @param target - the demand
 * @param figures - the model's, on publications left out of the fit
 * @param sets - the published sets' figures on the same rows
 */
export function targetLines(target: Target, figures: AccuracyFigures, sets: SetScores): string[] {
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
  ];
}
