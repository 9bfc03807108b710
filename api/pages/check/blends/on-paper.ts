/** A blend on paper: its picture, what to weigh, and a label for the back of every tile. @module */
import { sharesInWords } from "../../../engine/blends/headline.ts";
import { blendPicture } from "../../../engine/pictures/blends/blend-picture.ts";
import { fill } from "../../fill.ts";
import { drawing, h } from "../../shared/dom.ts";
import { ring } from "../../shared/rings.ts";
import { sayQuantity } from "../../shared/say-quantity.ts";
import type { Units } from "../../shared/units.ts";
import words from "../../words.json" with { type: "json" };
import type { Tile } from "./ask-blend.ts";
import type { BlendTold } from "./blend-told.ts";
import { chanceOf } from "./tile-told.ts";
import { MOST_ROWS, weighTold } from "./weigh-told.ts";

const { blends: say, verdict } = words;
const MARK = "print-blend";

/** Prints it by itself: the page around it stays off the paper. */
export function printBlend({ blend, shape, asked, notices, units }: BlendTold): void {
  const { points, headline, corners } = blend;
  const labels = points.slice(0, MOST_ROWS).map((tile) => labelOf(tile, corners, units));
  const sheet = h(
    "div",
    { class: "blend-paper" },
    h("h2", {}, headline),
    drawing(blendPicture(blend, shape, { theme: "print", width: 720, id: "blend-on-paper" })),
    h("h3", {}, say.weigh),
    ...weighTold(points, asked).filter((child): child is HTMLElement => child instanceof Node),
    h("ul", { class: "mind" }, ...notices.map((words_) => h("li", {}, words_))),
    h("div", { class: "labels" }, ...labels),
  );
  document.body.append(sheet);
  document.body.classList.add(MARK);
  const clear = () => {
    document.body.classList.remove(MARK);
    sheet.remove();
  };
  addEventListener("afterprint", clear, { once: true });
  window.print();
}

function labelOf(tile: Tile, names: readonly string[], units: Units): HTMLElement {
  const mix = sharesInWords(names, tile.shares);
  const write = [h("p", {}, fill(say.write, { unit: units.temperature })), h("p", {}, say.seen)];
  if (!("verdict" in tile)) return h("div", {}, h("b", {}, tile.label), h("p", {}, mix), ...write);
  const { value, low, high } = sayQuantity(tile.stress, units);
  const expected = fill(say.expected, { verdict: verdict.words[tile.verdict], chance: chanceOf(tile) });
  return h(
    "div",
    {},
    h("b", {}, ring(tile.verdict, 22), tile.label),
    h("p", {}, mix),
    h("p", {}, expected),
    h("p", {}, fill(say.stress, { stress: value, low, high })),
    ...write,
  );
}
