/** The ruler and the batch sheet. @module */

import type { DrawRulerResponses, PlanBatchResponses } from "@ringtrue/sdk";
import { sayId } from "../check/find-material.ts";
import { fill } from "../fill.ts";
import { plain } from "../say.ts";
import { drawing, h } from "../shared/dom.ts";
import words from "../words.json" with { type: "json" };
import { inCell } from "./in-cell.ts";

type Ruler = Exclude<DrawRulerResponses[200], string>;
type Batch = Exclude<PlanBatchResponses[200], string>;

const { making } = words;

/** The ruler, cut out of its sheet. @param unit - of its divisions */
export function rulerPart(report: Ruler, unit: "mm" | "in", pdf: () => void): HTMLElement[] {
  const sheet = drawing(report.sheets[0]!.svg);
  // The ruler stands 12 mm from the sheet's left edge and 34 mm from its top.
  const whole = report.lengths.at(-1)?.drawn.value ?? 170;
  sheet.setAttribute("viewBox", `11 33 ${whole + 2} 32`);
  sheet.removeAttribute("width");
  sheet.removeAttribute("height");
  const get = h("button", { class: "btn", type: "button", id: "ruler-pdf", onclick: pdf }, making.printTrue);
  return [
    h(
      "section",
      { class: "noprint", "aria-labelledby": "ruler-title" },
      h(
        "div",
        { class: "caprow" },
        h(
          "div",
          {},
          h("h2", { id: "ruler-title" }, making.ruler),
          h("p", { class: "lede" }, fill(making.rulerText, { unit: making.rulerUnits[unit] })),
        ),
        h("div", { class: "acts" }, get),
      ),
      h("figure", {}, h("div", { class: "fig rule" }, sheet), h("figcaption", {}, making.rulerCheck)),
    ),
  ];
}

/** Weights with ticks, water, cautions. */
export function batchPart(report: Batch, pdf: () => void): HTMLElement[] {
  const get = h("button", { class: "btn", type: "button", id: "batch-pdf", onclick: pdf }, making.sheet);
  const print = h("button", { class: "btn bare", type: "button", onclick: () => window.print() }, making.print);
  const head = [making.weighed, making.material, making.inHundred, making.weigh, making.running];
  const rows = report.lines.map((line, i) => {
    const name = sayId(line.label);
    const tick = h("input", {
      type: "checkbox",
      id: `weighed-${i}`,
      "aria-label": fill(making.tick, { material: name }),
    });
    return h(
      "tr",
      {},
      h("td", {}, tick),
      h("th", { scope: "row" }, h("label", { for: `weighed-${i}` }, name)),
      h("td", {}, line.inHundred.toFixed(1)),
      h("td", { class: "q" }, ...inCell(making.grams, h("b", {}, plain(line.weighG, 1)))),
      h("td", { class: "mut" }, ...inCell(making.runningShort, plain(line.runningG, 1))),
    );
  });
  return [
    h(
      "section",
      { class: "batch", "aria-labelledby": "batch-title" },
      h(
        "div",
        { class: "caprow" },
        h(
          "div",
          {},
          h(
            "h2",
            { id: "batch-title" },
            fill(making.batch, { name: report.name ?? "", dry: `${plain(report.dry.totalG, 0)}\u00a0g` }),
          ),
          h("p", { class: "lede" }, making.batchFrom),
        ),
        h("div", { class: "acts" }, get, print),
      ),
      h(
        "table",
        { class: "nums bt" },
        h("thead", {}, h("tr", {}, ...head.map((word) => h("th", { scope: "col" }, word)))),
        h("tbody", {}, ...rows),
      ),
      h("ol", { class: "mind" }, ...report.steps.map((step) => h("li", {}, step))),
      ...report.cautions.map(({ message }) => h("p", { class: "lede" }, h("b", {}, message))),
      h(
        "p",
        { class: "sig", "aria-hidden": "true" },
        making.signed,
        h("i"),
        making.date,
        h("i"),
        making.thickness,
        h("i"),
      ),
    ),
  ];
}
