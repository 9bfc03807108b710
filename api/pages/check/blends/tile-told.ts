/** One tile of a blend in words, and how it comes to the bench. @module */

import { sharesInWords } from "../../../engine/blends/headline.ts";
import { casesHolding } from "../../../engine/blends/holding.ts";
import { chances } from "../../../engine/fit/words.ts";
import { fill } from "../../fill.ts";
import { type Child, h } from "../../shared/dom.ts";
import { ring } from "../../shared/rings.ts";
import { sayQuantity } from "../../shared/say-quantity.ts";
import { localise, sayTemperature, tidy, type Units } from "../../shared/units.ts";
import words from "../../words.json" with { type: "json" };
import { type Draft, letterOf } from "../draft.ts";
import { fromWork } from "../work.ts";
import type { Tile } from "./ask-blend.ts";
import { nameOf } from "./weigh.ts";

const { blends: say, verdict } = words;

/** How likely a judged tile is to hold, in words. */
export const chanceOf = (tile: Extract<Tile, { verdict: string }>): string => chances(casesHolding(tile.probabilities));

/** @param use - puts the tile on the bench */
export function tellTile(tile: Tile, names: readonly string[], units: Units, use: () => void): Child[] {
  const { label } = tile;
  const mix = sharesInWords(names, tile.shares);
  if (!("verdict" in tile)) {
    return [
      h("h3", { class: "with-ring" }, ring("unknown", 24), fill(say.tile, { label, verdict: say.unjudged })),
      h("p", {}, `${mix}. ${tile.problem}`),
    ];
  }
  const { stress, expansion, recipe, additions, warnings } = tile;
  const [pull, shrink] = [sayQuantity(stress, units), sayQuantity(expansion, units)];
  const [from = 20, to = 300] = expansion.rangeC ?? [];
  const line = (lines: typeof recipe) => lines.map((one) => `${nameOf(one)} ${tidy(one.parts, 1)}`).join(", ");
  const over = additions.length > 0 ? fill(say.over, { additions: line(additions) }) : "";
  const gaps = {
    chance: chanceOf(tile),
    stress: pull.value,
    low: pull.low,
    high: pull.high,
    expansion: shrink.value,
    least: shrink.low,
    most: shrink.high,
    from: sayTemperature(from, units),
    to: sayTemperature(to, units),
  };
  return [
    h(
      "h3",
      { class: "with-ring" },
      ring(tile.verdict, 24),
      fill(say.tile, { label, verdict: verdict.words[tile.verdict].toLowerCase() }),
    ),
    h("p", {}, `${mix}. ${fill(say.holds, gaps)}`),
    h("p", { class: "mut" }, fill(say.parts, { recipe: line(recipe), over })),
    ...warnings.map(({ message }) => h("p", { class: "mut" }, localise(message, units))),
    h("p", { class: "acts2" }, h("button", { class: "btn", type: "button", id: "blend-use", onclick: use }, say.use)),
  ];
}

/**
 * Puts a tile's recipe on the bench as a trial.
 * @returns what was done, in a sentence
 */
export function useTile(
  draft: Draft,
  tile: Extract<Tile, { verdict: string }>,
  names: readonly string[],
  thicknessMm: number | undefined,
): string {
  const { label, recipe, additions } = tile;
  const name = fill(say.name, { label, mix: sharesInWords(names, tile.shares) });
  const glaze = { recipe, additions, ...(thicknessMm === undefined ? {} : { thicknessMm }) };
  const work = { format: "ringtrue-work", version: 1, trials: [{ letter: "A", name, glaze }] };
  draft.trials.push(fromWork(work, draft.units).trials[0]!);
  return fill(say.used, { label, letter: letterOf(draft.trials.length - 1) });
}
