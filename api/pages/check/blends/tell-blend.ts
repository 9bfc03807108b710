/** A blend told: the picture, one tile of it in words, what to weigh, and the ways to take it along. @module */
import { blendPicture } from "../../../engine/pictures/blends/blend-picture.ts";
import { fill } from "../../fill.ts";
import { add, h } from "../../shared/dom.ts";
import { picture } from "../../shared/picture.ts";
import words from "../../words.json" with { type: "json" };
import { choiceField } from "../fields.ts";
import type { Tile } from "./ask-blend.ts";
import type { BlendQuestion } from "./blend-question.ts";
import type { BlendTold } from "./blend-told.ts";
import { tappedTile } from "./tapped-tile.ts";
import { tellTile } from "./tile-told.ts";
import { MOST_ROWS, weighTold } from "./weigh-told.ts";

const { blends: say, verdict } = words;

type Judged = Extract<Tile, { verdict: string }>;

export interface BlendAnswerTold {
  /** A tile is to come to the bench. */
  use(tile: Judged): void;
  save(): void;
  print(): void;
}

export function blendAnswer(told: BlendAnswerTold) {
  const map = picture(720);
  const chooser = h("div", { class: "asks" });
  const tileBox = h("div", { id: "blend-tile", "aria-live": "polite" });
  const list = h("div", {});
  const caption = h("figcaption", {});
  const mind = h("ul", { class: "mind" });
  const act = (id: string, word: string, onclick: () => void) =>
    h("button", { class: "btn", type: "button", id, onclick }, word);
  const element = h(
    "div",
    {},
    h("figure", { class: "tapped" }, map.element, caption),
    chooser,
    tileBox,
    h("details", {}, h("summary", {}, say.weigh), list),
    h("h3", { class: "gap" }, say.mind),
    mind,
    h("p", { class: "acts2" }, act("blend-save", say.save, told.save), act("blend-print", say.print, told.print)),
  );
  let drawn: BlendTold | null = null;

  function choose(label: string): void {
    const { blend, shape, units } = drawn!;
    const tile = blend.points.find((one) => one.label === label);
    if (!tile) return;
    map.show((choice) => blendPicture(blend, shape, { ...choice, id: "blend-picture", chosen: label }));
    const select = chooser.querySelector("select");
    if (select && select.value !== label) select.value = label;
    tileBox.replaceChildren();
    add(
      tileBox,
      tellTile(tile, blend.corners, units, () => "verdict" in tile && told.use(tile)),
    );
  }

  function weigh(asked: BlendQuestion): void {
    drawn!.asked = asked;
    list.replaceChildren();
    add(list, weighTold(drawn!.blend.points, asked));
  }

  map.element.addEventListener("click", (event) => {
    const svg = map.element.querySelector("svg");
    const label = svg && drawn ? tappedTile(svg, event, drawn) : undefined;
    if (label !== undefined) choose(label);
  });

  return {
    element,
    drawn: () => drawn,
    /** Says anew what to weigh. */
    weigh,
    show(next: BlendTold) {
      drawn = next;
      const { blend, shape, asked, notices } = next;
      caption.textContent = shape === "simplex" && blend.corners.length > 3 ? say.captionMany : say.caption;
      const judged = blend.points.filter((tile): tile is Judged => "verdict" in tile);
      const byChance = [...judged].sort((a, b) => b.probabilities.sound - a.probabilities.sound);
      const best = byChance[0] ?? blend.points[0]!;
      const few = blend.points.length <= MOST_ROWS;
      const offered = few ? blend.points : byChance.slice(0, MOST_ROWS);
      const options = offered.map((tile) => {
        const told_ = "verdict" in tile ? verdict.words[tile.verdict] : say.unjudged;
        return [tile.label, `${tile.label} · ${told_}`] as const;
      });
      const label = few ? say.choose : fill(say.chooseSome, { count: MOST_ROWS });
      chooser.replaceChildren(choiceField("blend-choose", label, best.label, options, choose));
      choose(best.label);
      weigh(asked);
      mind.replaceChildren(...notices.map((words_) => h("li", {}, words_)));
    },
  };
}
