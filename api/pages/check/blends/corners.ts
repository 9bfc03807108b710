/** Glazes that may stand at a corner: the recipes on the bench, and those of Larch Lane. @module */
import type { RecipeLine } from "@ringtrue/sdk";
import { fill } from "../../fill.ts";
import words from "../../words.json" with { type: "json" };
import { type Draft, letterOf } from "../draft.ts";
import { buildQuestion } from "../request.ts";
import { LARCH_LANE } from "./larch-lane-glazes.ts";

const { blends: say, check } = words;

/** One glaze to choose. */
export interface CornerGlaze {
  id: string;
  /** What sentences about mixtures call it: one that a list of several can hold. */
  name: string;
  /** What stands in the list. */
  label: string;
  recipe: RecipeLine[];
  additions: RecipeLine[];
}

/** Letters of a name that a list of mixtures can hold. */
const LONGEST = 24;

/** Every recipe that can be read now. A glaze known by its analysis or expansion alone cannot be mixed by weight. */
export function cornerGlazes(draft: Draft): CornerGlaze[] {
  const onBench = draft.trials.flatMap((trial, i): CornerGlaze[] => {
    const glaze = trial.kind === "recipe" ? buildQuestion(draft, trial).parts.glaze : null;
    if (!glaze || !("recipe" in glaze) || !glaze.recipe) return [];
    const letter = letterOf(i);
    const own = trial.name.trim();
    const label = fill(say.onBench, { letter, name: own || check.unnamed });
    const name = own && own.length <= LONGEST && !own.includes(",") ? own : fill(check.trialTab, { letter });
    return [{ id: `trial-${letter}`, name, label, recipe: glaze.recipe, additions: glaze.additions ?? [] }];
  });
  const ofStudio = [...LARCH_LANE].map(([name, recipe]) => {
    const id = `larch-${name.toLowerCase().replace(" ", "-")}`;
    return { id, name, label: fill(say.ofStudio, { name }), recipe, additions: [] };
  });
  return [...onBench, ...ofStudio];
}
