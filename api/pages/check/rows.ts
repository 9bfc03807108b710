/** Rows of a recipe and of an analysis. @module */
import { fill } from "../fill.ts";
import { h } from "../shared/dom.ts";
import { readNumber } from "../shared/read-number.ts";
import { tidy } from "../shared/units.ts";
import words from "../words.json" with { type: "json" };
import type { BenchTold } from "./bench.ts";
import type { GlazeDraft, Row } from "./draft.ts";
import { materialField, sayId } from "./find-material.ts";

const { check } = words;

const cross = () => {
  const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  svg.setAttribute("viewBox", "0 0 14 14");
  svg.setAttribute("aria-hidden", "true");
  const path = document.createElementNS("http://www.w3.org/2000/svg", "path");
  path.setAttribute("d", "M1 1l12 12M13 1L1 13");
  path.setAttribute("stroke", "currentColor");
  path.setAttribute("stroke-width", "1.8");
  svg.append(path);
  return svg;
};

function amountField(id: string, label: string, value: string, oninput: (value: string) => void): HTMLElement {
  const input = h("input", {
    id,
    value,
    inputmode: "decimal",
    autocomplete: "off",
    "aria-label": label,
    "data-field": id,
    oninput: (event: Event) => oninput((event.target as HTMLInputElement).value),
  });
  return h("div", { class: "amount" }, input);
}

const nameOf = (row: Row, i: number) => (row.material ? sayId(row.material) : fill(check.rowName, { row: i + 1 }));

export function recipeRows(glaze: GlazeDraft, told: BenchTold): Node[] {
  const total = h("b", {}, sum(glaze.rows.map((row) => row.parts)));
  const rows = glaze.rows.map((row, i) => {
    const weight = amountField(
      `row-${i}-parts`,
      fill(check.weightOf, { material: nameOf(row, i) }),
      row.parts,
      (value) => {
        row.parts = value;
        total.textContent = sum(glaze.rows.map((one) => one.parts));
        told.typed();
      },
    );
    const given = row.given && "analysis" in row.given ? check.ownAnalysis : check.ownFormula;
    const material = row.given
      ? h("div", { class: "fixed", title: fill(check.fromFile, { what: given }) }, row.material)
      : materialField(`row-${i}-material`, fill(check.materialOf, { row: i + 1 }), row.material, (value) => {
          row.material = value;
          weight.querySelector("input")!.setAttribute("aria-label", fill(check.weightOf, { material: nameOf(row, i) }));
          remove.setAttribute("aria-label", fill(check.remove, { material: nameOf(row, i) }));
          told.typed();
        });
    const drop = () =>
      told.changed(
        () => {
          glaze.rows.splice(i, 1);
          if (glaze.rows.length === 0) glaze.rows.push({ material: "", parts: "" });
        },
        i > 0 ? `row-${i - 1}-parts` : "row-0-material",
      );
    const remove = h("button", { class: "x", type: "button", onclick: drop }, cross());
    remove.setAttribute("aria-label", fill(check.remove, { material: nameOf(row, i) }));
    return h("div", { class: "row" }, material, weight, remove);
  });
  const more = () =>
    told.changed(() => glaze.rows.push({ material: "", parts: "" }), `row-${glaze.rows.length}-material`);
  return [
    h("div", { class: "row head", "aria-hidden": "true" }, h("span", {}, check.material), h("span", {}, check.weight)),
    h("div", { role: "group", "aria-label": check.kinds.recipe }, ...rows),
    h("div", { class: "row foot" }, h("span", {}, check.total), total),
    h("button", { class: "btn", type: "button", id: "add-row", onclick: more }, check.addRow),
    h("button", { class: "btn bare", type: "button", id: "paste", onclick: told.paste }, check.paste),
  ];
}

export function analysisRows(glaze: GlazeDraft, told: BenchTold): Node[] {
  const total = h("b", {}, sum(glaze.oxides.map((row) => row.amount)));
  const rows = glaze.oxides.map((row, i) => {
    const name = row.oxide || fill(check.rowName, { row: i + 1 });
    const oxide = h("input", {
      id: `oxide-${i}-name`,
      value: row.oxide,
      autocomplete: "off",
      spellcheck: "false",
      "aria-label": fill(check.oxideOf, { row: i + 1 }),
      "data-field": `oxide-${i}-name`,
      oninput: (event: Event) => {
        row.oxide = (event.target as HTMLInputElement).value;
        told.typed();
      },
    });
    const amount = amountField(`oxide-${i}-amount`, fill(check.amountOf, { oxide: name }), row.amount, (value) => {
      row.amount = value;
      total.textContent = sum(glaze.oxides.map((one) => one.amount));
      told.typed();
    });
    const drop = () => told.changed(() => glaze.oxides.splice(i, 1), "add-oxide");
    const remove = h("button", { class: "x", type: "button", onclick: drop }, cross());
    remove.setAttribute("aria-label", fill(check.remove, { material: name }));
    return h("div", { class: "row" }, oxide, amount, remove);
  });
  const more = () =>
    told.changed(() => glaze.oxides.push({ oxide: "", amount: "" }), `oxide-${glaze.oxides.length}-name`);
  return [
    h("div", { class: "row head", "aria-hidden": "true" }, h("span", {}, check.oxide), h("span", {}, check.amount)),
    h("div", { role: "group", "aria-label": check.kinds.analysis }, ...rows),
    h("div", { class: "row foot" }, h("span", {}, check.total), total),
    h("button", { class: "btn", type: "button", id: "add-oxide", onclick: more }, check.addOxide),
  ];
}

function sum(texts: string[]): string {
  return tidy(
    texts.reduce((total, text) => total + (readNumber(text).value ?? 0), 0),
    2,
  );
}
