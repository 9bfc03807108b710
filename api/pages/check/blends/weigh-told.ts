/** What to weigh, told: heaps to mix first, then a row a tile in an order that saves weighing. @module */
import { fill } from "../../fill.ts";
import { type Child, h } from "../../shared/dom.ts";
import words from "../../words.json" with { type: "json" };
import type { Tile } from "./ask-blend.ts";
import type { BlendQuestion, BlendRequest } from "./blend-question.ts";
import { chanceOf } from "./tile-told.ts";
import { gramsIn, type Heap, heapsOf } from "./weigh.ts";

const { blends: say, verdict } = words;

/** Rows that a page holds with ease; a table of all of them is a file. */
export const MOST_ROWS = 400;

/** Grams as a scale of 0.1 g shows them. */
const shown = (grams: number) => `${grams < 1000 ? grams.toFixed(1) : Math.round(grams)}\u00a0g`;

export function weighTold(tiles: readonly Tile[], asked: BlendQuestion): Child[] {
  const { request, grams } = asked;
  const heap = ({ title, grams: total, materials }: Heap) =>
    h(
      "li",
      {},
      h("b", {}, `${title}, ${shown(total)}`),
      `: ${materials.map((one) => `${one.name} ${shown(one.grams)}`).join(", ")}`,
    );
  const rows = tiles.slice(0, MOST_ROWS).map((tile, k) => row(tile, tiles[k - 1], request.corners, grams));
  return [
    h("p", {}, say.mixFirst),
    h("ul", { class: "mind" }, ...heapsOf(tiles, asked).map(heap)),
    h("p", {}, say.thenWeigh),
    h(
      "table",
      { class: "wraps weigh" },
      h("thead", {}, h("tr", {}, ...say.columns.map((word) => h("th", { scope: "col" }, word)))),
      h("tbody", {}, ...rows),
    ),
    tiles.length > MOST_ROWS ? h("p", {}, fill(say.moreRows, { shown: MOST_ROWS, all: tiles.length })) : null,
  ];
}

function row(tile: Tile, before: Tile | undefined, corners: BlendRequest["corners"], grams: number): HTMLElement {
  const weights = gramsIn(tile, corners, grams);
  const parts = weights.flatMap((weight, c): Child[] => {
    if (weight === 0) return [];
    const text = `${shown(weight)} ${corners[c]!.name}`;
    return [before && before.shares[c] !== tile.shares[c] ? h("b", {}, text) : text];
  });
  const list = parts.flatMap((part, k) => (k > 0 ? [", ", part] : [part]));
  const told =
    "verdict" in tile
      ? fill(say.expected, { verdict: verdict.words[tile.verdict], chance: chanceOf(tile) })
      : say.unjudged;
  return h("tr", {}, h("th", { scope: "row" }, tile.label), h("td", {}, list), h("td", {}, told));
}
