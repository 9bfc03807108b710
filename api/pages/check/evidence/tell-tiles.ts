/** What the tiles say, told: the sentence stands in the status line; here is the rest. @module */
import type { EvidenceReport } from "@ringtrue/sdk";
import { fill } from "../../fill.ts";
import { h } from "../../shared/dom.ts";
import { ring } from "../../shared/rings.ts";
import { localise, type Units } from "../../shared/units.ts";
import words from "../../words.json" with { type: "json" };

const { evidence: say } = words;

/** @param use - puts the expansion on the bench as a trial */
export function tellTiles(report: EvidenceReport, units: Units, use: () => void): HTMLElement[] {
  const { lessons, suits, next, warnings } = report;
  const odd = lessons.filter(({ conflicts }) => conflicts);
  const first = next[0];
  return [
    ...suits.map(({ verdict, text }) => h("p", { class: "with-ring gap" }, ring(verdict, 24), localise(text, units))),
    ...odd.map(({ name, text }) =>
      h("p", { class: "gap" }, fill(say.odds, { tile: name, text: localise(text, units) })),
    ),
    h("p", { class: "acts2" }, h("button", { class: "btn", type: "button", id: "tiles-use", onclick: use }, say.use)),
    ...(first ? [h("h3", { class: "gap" }, say.next), h("p", {}, localise(first.text, units))] : []),
    h(
      "details",
      {},
      h("summary", {}, say.taught),
      h(
        "ul",
        { class: "mind" },
        ...lessons.map(({ name, text }) => h("li", {}, fill(say.one, { tile: name, text: localise(text, units) }))),
      ),
    ),
    ...warnings.map(({ message }) => h("p", { class: "mut" }, localise(message, units))),
  ];
}
