/** What the tiles said, as a trial known by its expansion. @module */
import type { EvidenceReport } from "@ringtrue/sdk";
import { fill } from "../../fill.ts";
import words from "../../words.json" with { type: "json" };
import { currentGlaze, type Draft, type GlazeDraft, letterOf } from "../draft.ts";
import { fromWork } from "../work.ts";

const { evidence: say, check } = words;

/** How a glaze known by its expansion is told from others, whatever it is called. */
const markOf = ({ expansion, plusMinus }: GlazeDraft) => `${expansion} ± ${plusMinus}`;

/**
 * @param used - marks of glazes that came from tiles; the new one's is added
 * @returns what was done, in a sentence
 */
export function useTiles(draft: Draft, { glaze }: EvidenceReport, used: string[]): string {
  const old = currentGlaze(draft);
  const name = fill(say.name, { name: old.name || check.unnamed });
  const work = { format: "ringtrue-work", version: 1, trials: [{ letter: "A", name, glaze }] };
  const made = fromWork(work, draft.units).trials[0]!;
  draft.trials.push({ ...made, thickness: old.thickness || made.thickness });
  used.push(markOf(made));
  return fill(say.used, { letter: letterOf(draft.trials.length - 1) });
}

/** Whether the glaze being worked on came from tiles: as what is known beforehand, it would count them twice. */
export function cameFromTiles(draft: Draft, used: readonly string[]): boolean {
  const glaze = currentGlaze(draft);
  return glaze.kind === "expansion" && used.includes(markOf(glaze));
}
