/** Changes that make a trial or take one away. @module */
import { fill } from "../fill.ts";
import { readNumber } from "../shared/read-number.ts";
import { tidy } from "../shared/units.ts";
import words from "../words.json" with { type: "json" };
import { currentGlaze, type Draft, emptyGlaze, type GlazeDraft, MOST_TRIALS } from "./draft.ts";
import type { PastedRecipe } from "./read-csv.ts";

const { trials, check } = words;

const copy = (glaze: GlazeDraft): GlazeDraft => JSON.parse(JSON.stringify(glaze)) as GlazeDraft;
const nameOf = (glaze: GlazeDraft) => glaze.name || check.unnamed;

function add(draft: Draft, glaze: GlazeDraft): void {
  if (draft.trials.length >= MOST_TRIALS) return;
  draft.trials.push(glaze);
}

/** The current glaze once more, to be changed by hand. */
export function copyTrial(draft: Draft): void {
  const glaze = copy(currentGlaze(draft));
  glaze.name = fill(trials.copyName, { name: nameOf(glaze) });
  add(draft, glaze);
  draft.current = draft.trials.length - 1;
}

/** A trial with more or less silica; the one worked on stays the same. */
export function changeSilica(draft: Draft, parts: number): void {
  const glaze = copy(currentGlaze(draft));
  const row = glaze.rows.find(({ material }) => material === "silica");
  if (row) row.parts = tidy(Math.max((readNumber(row.parts).value ?? 0) + parts, 0));
  else if (parts > 0) glaze.rows.push({ material: "silica", parts: tidy(parts) });
  const name = parts > 0 ? trials.moreName : trials.lessName;
  glaze.name = fill(name, { name: nameOf(glaze), parts: Math.abs(parts) });
  add(draft, glaze);
}

export function dropTrial(draft: Draft, place: number): void {
  if (draft.trials.length < 2) return;
  draft.trials.splice(place, 1);
  if (draft.current > place || draft.current >= draft.trials.length) draft.current = Math.max(draft.current - 1, 0);
}

/** The first pasted recipe in place of the current glaze; others become trials, as far as there is room. */
export function usePasted(draft: Draft, recipes: readonly PastedRecipe[]): void {
  const glaze = currentGlaze(draft);
  const [first, ...others] = recipes;
  if (!first) return;
  glaze.kind = "recipe";
  glaze.rows = first.rows;
  if (first.name) glaze.name = first.name;
  for (const { name, rows } of others) add(draft, { ...emptyGlaze(), thickness: glaze.thickness, name, rows });
}
