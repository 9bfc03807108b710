/** What would make it fit, told: the sentence first, then each way with its before and after. @module */
import type { RemediesReport, Remedy } from "@ringtrue/sdk";
import { fill } from "../../fill.ts";
import { type Child, h } from "../../shared/dom.ts";
import { ring } from "../../shared/rings.ts";
import { sayQuantity } from "../../shared/say-quantity.ts";
import { localise, type Units } from "../../shared/units.ts";
import words from "../../words.json" with { type: "json" };
import { movesTable } from "./moves-table.ts";
import { changesAll } from "./use-remedy.ts";

const { remedies: say, panel, verdict } = words;

/** @example inTwenty(0.85) // "17 in 20" */
export function inTwenty(chance: number): string {
  const count = Math.round(chance * 20);
  if (count === 0 && chance > 0) return panel.underOne;
  return fill(verdict.inTwenty, { count });
}

/** The answer in one or two sentences. */
export function sayRemedies(report: RemediesReport, glaze: string, units: Units): string {
  const { before, target, remedies, blocked } = report;
  const now = before.probabilities.sound;
  if (now >= target) return report.headline;
  const reaching = remedies.filter(({ reaches }) => reaches).length;
  const gaps = { glaze, now: inTwenty(now), target: inTwenty(target), count: reaching };
  if (reaching > 0) return fill(reaching === 1 ? say.one : say.many, gaps);
  const best = Math.max(now, ...remedies.map(({ after }) => after.probabilities.sound));
  const limits = blocked.map(({ text }) => localise(text, units)).join(" ");
  return `${fill(say.none, { ...gaps, best: inTwenty(best) })} ${limits ? fill(say.blockedBy, { limits }) : ""}`.trim();
}

/** @param use - told which remedy to put on the bench */
export function tellRemedies(report: RemediesReport, units: Units, use: (remedy: Remedy) => void): Child[] {
  const reaching = report.remedies.filter(({ reaches }) => reaches);
  const others = report.remedies.filter(({ reaches }) => !reaches);
  const common = saidOfAll(report.remedies.filter(({ recipe }) => recipe));
  const list = (remedies: Remedy[]) =>
    h("ol", { class: "ways" }, ...remedies.map((remedy) => way(remedy, report.target, common, units, use)));
  return [
    report.remedies.length > 0 ? standing(say.before, report.before, units) : null,
    report.remedies.some(({ recipe }) => recipe) ? h("p", { class: "mut" }, say.parts) : null,
    common.length > 0 ? h("p", { class: "mut" }, fill(say.everyRecipe, { costs: common.join(" ") })) : null,
    reaching.length > 0 ? list(reaching) : null,
    others.length > 0
      ? h(
          "details",
          { open: reaching.length === 0 },
          h("summary", {}, fill(say.others, { target: inTwenty(report.target) })),
          list(others),
        )
      : null,
    ...report.warnings.map(({ message }) => h("p", { class: "mut" }, localise(message, units))),
  ];
}

/** Costs that every one of several recipes has: said once, above them. */
function saidOfAll(recipes: readonly Remedy[]): string[] {
  if (recipes.length < 2) return [];
  return recipes[0]!.costs.filter((cost) => recipes.every(({ costs }) => costs.includes(cost)));
}

/** Verdict, chance and stress, now or then. */
function standing(when: string, { verdict: kind, probabilities, stress }: Remedy["before"], units: Units): HTMLElement {
  const { value, low, high } = sayQuantity(stress, units);
  const chance = inTwenty(probabilities.sound);
  const text = fill(say.standing, { verdict: verdict.words[kind], chance, stress: value, low, high });
  return h("p", { class: "mut" }, h("b", {}, when), ` ${text}`);
}

function way(
  remedy: Remedy,
  target: number,
  common: readonly string[],
  units: Units,
  use: (remedy: Remedy) => void,
): HTMLElement {
  const { title, text, after, blocks, reaches, recipe } = remedy;
  const costs = remedy.costs.filter((cost) => !common.includes(cost));
  const close = inTwenty(after.probabilities.sound) === inTwenty(target);
  const head = localise(title.charAt(0).toUpperCase() + title.slice(1), units);
  const word = changesAll(remedy) ? say.useAll[remedy.kind as "body" | "cooling"] : say.use;
  const button = h(
    "button",
    { class: "btn", type: "button", onclick: () => use(remedy), "aria-label": `${word}: ${title}` },
    word,
  );
  const stops = blocks.map((block) => localise(block.text, units)).join(" ");
  return h(
    "li",
    {},
    h("h3", { class: "with-ring" }, ring(after.verdict, 24), head),
    recipe ? movesTable(recipe, title) : h("p", {}, localise(text, units)),
    standing(say.after, after, units),
    reaches
      ? null
      : h("p", {}, fill(close ? say.justShort : say.short, { target: inTwenty(target), limits: stops }).trim()),
    costs.length > 0
      ? h(
          "div",
          { class: "costs" },
          h("p", {}, h("b", {}, say.costs)),
          h("ul", { class: "mind" }, ...costs.map((cost) => h("li", {}, localise(cost, units)))),
        )
      : null,
    h("p", { class: "acts2" }, button),
  );
}
