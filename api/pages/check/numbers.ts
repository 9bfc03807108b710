/** Every number of the answer: value, interval, range, origin. @module */
import type { FitReport } from "../../engine/fit/types.ts";
import type { Quantity } from "../../engine/quantity.ts";
import { fill } from "../fill.ts";
import { h } from "../shared/dom.ts";
import { sayQuantity } from "../shared/say-quantity.ts";
import { sayTemperature, type Units } from "../shared/units.ts";
import words from "../words.json" with { type: "json" };

const { numbers } = words;
let open = false;

export function numbersPart(report: FitReport, units: Units): HTMLElement {
  const { glaze, body, thresholds } = report;
  const { sources, rows } = numbers;
  const table: [string, Quantity, string][] = [
    [rows.stress, report.stress, sources.worked],
    [rows.mismatch, report.mismatch, sources.curves],
    [rows.setPoint, report.setPoint, sources.chemistry],
    [rows.glazeBook, glaze.expansion, glaze.model === "stated" ? sources.stated : sources.chemistry],
    [rows.glazeSet, glaze.expansionToSetPoint, sources.chemistry],
    [rows.glazeYoungs, glaze.youngs, sources.chemistry],
    [rows.thickness, glaze.thickness, sources.you],
    [rows.bodyStated, body.expansion, sources.you],
    [rows.bodySet, body.expansionToSetPoint, sources.class],
    [rows.bodyYoungs, body.youngs, sources.class],
    [rows.moisture, body.moistureExpansion, sources.years],
    [rows.bodyStress, body.stress, sources.worked],
    [rows.cracksOnCooling, thresholds.cracksOnCooling, sources.criteria],
    [rows.mayCrackInTime, thresholds.mayCrackInTime, sources.criteria],
    [rows.edgesMayLift, thresholds.edgesMayLift, sources.criteria],
    [rows.flakesComeOff, thresholds.flakesComeOff, sources.criteria],
  ];
  const head = [numbers.what, numbers.value, numbers.likely, numbers.over, numbers.from];
  const details = h(
    "details",
    { class: "more" },
    h("summary", {}, numbers.title),
    h(
      "table",
      { class: "nums wraps" },
      h("thead", {}, h("tr", {}, ...head.map((word) => h("th", { scope: "col" }, word)))),
      h("tbody", {}, ...table.map(([name, quantity, from]) => row(name, quantity, from, units))),
    ),
    h(
      "p",
      { class: "lede" },
      fill(numbers.engine, {
        version: report.engine.version,
        data: report.engine.dataVersion,
        seed: report.engine.seed,
      }),
    ),
  );
  details.open = open;
  details.addEventListener("toggle", () => {
    open = details.open;
  });
  return h("section", { class: "noprint" }, details);
}

function row(name: string, quantity: Quantity, from: string, units: Units): HTMLElement {
  const said = sayQuantity(quantity, units);
  const { rangeC } = quantity;
  const over = rangeC ? `${sayTemperature(rangeC[0], units)} to ${sayTemperature(rangeC[1], units)}` : "";
  return h(
    "tr",
    {},
    h("th", { scope: "row" }, name),
    h("td", { class: "q" }, h("b", {}, said.value)),
    h("td", {}, fill(numbers.to, { low: said.low, high: said.high })),
    h("td", {}, over),
    h("td", { class: "mut" }, from),
  );
}
