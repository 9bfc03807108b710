/** A remedy put on the bench: a new recipe or coat as a trial, a clay or a cooling for all of them. @module */
import type { Remedy } from "@ringtrue/sdk";
import { fill } from "../../fill.ts";
import { fromKelvins, sayTemperature, tidy } from "../../shared/units.ts";
import words from "../../words.json" with { type: "json" };
import { currentGlaze, type Draft, letterOf, MOST_TRIALS } from "../draft.ts";
import { fromWork } from "../work.ts";

const { remedies: say } = words;

/** Whether the remedy changes what all trials share. */
export const changesAll = ({ kind }: Remedy): boolean => kind === "body" || kind === "cooling";

/** Whether there is room for it. */
export const fits = (draft: Draft, remedy: Remedy): boolean => changesAll(remedy) || draft.trials.length < MOST_TRIALS;

/**
 * Puts a remedy on the bench; the trial worked on stays as it is.
 * @returns what was done, in a sentence
 */
export function useRemedy(draft: Draft, remedy: Remedy): string {
  const { glaze, body, firing } = remedy.fit;
  const old = currentGlaze(draft);
  const name = fill(say.names[remedy.kind], { name: old.name || words.check.unnamed });
  const work = { format: "ringtrue-work", version: 1, trials: [{ letter: "A", name, glaze }], body, firing };
  const made = fromWork(work, draft.units);
  if (remedy.kind === "body") {
    draft.body = made.body;
    return say.bodyUsed;
  }
  if (remedy.cooling) {
    // The bench holds one rate, and means by it the rate where the glaze sets.
    const { cPerHour, fromC, toC } = remedy.cooling;
    const { units } = draft;
    draft.firing.cooling = tidy(fromKelvins(cPerHour, units.temperature), 1);
    const rate = `${draft.firing.cooling}\u00a0°${units.temperature}`;
    return fill(say.coolingUsed, { rate, from: sayTemperature(fromC, units), to: sayTemperature(toC, units) });
  }
  // Only the coat changes: rows stay as they were typed.
  if (remedy.kind === "thickness") {
    const copy = JSON.parse(JSON.stringify(old)) as typeof old;
    draft.trials.push({ ...copy, name, thickness: made.trials[0]!.thickness });
  } else draft.trials.push(made.trials[0]!);
  return fill(say.used, { letter: letterOf(draft.trials.length - 1) });
}
