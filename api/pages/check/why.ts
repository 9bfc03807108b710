/** Why: the two cooling curves, what drives them, and the reasons in words. @module */
import type { FitReport } from "../../engine/fit/types.ts";
import { contributionsPicture } from "../../engine/pictures/contributions/contributions-picture.ts";
import { expansionPicture } from "../../engine/pictures/expansion/expansion-picture.ts";
import { fill } from "../fill.ts";
import { type Child, formula, h, withFormulas } from "../shared/dom.ts";
import { type PictureChoice, picture } from "../shared/picture.ts";
import { localise, sayTemperature, type Units } from "../shared/units.ts";
import words from "../words.json" with { type: "json" };

const { why } = words;
const cooling = picture(720, 350);
const drivers = picture(720, 350);

export function whyPart(report: FitReport, units: Units): HTMLElement[] {
  const inUnits = { temperature: units.temperature };
  cooling.show(
    report.curves ? (choice) => expansionPicture(report, { ...choice, ...inUnits, id: "cooling-curves" }) : null,
  );
  // The one printed sheet has no room for the materials.
  const onPaper = { ...report, parts: undefined };
  const drives = (choice: PictureChoice) =>
    contributionsPicture(choice.theme === "print" ? onPaper : report, { ...choice, id: "drives" });
  drivers.show(report.pulls.length > 0 ? drives : null);
  const set = sayTemperature(report.setPoint.value, units);
  const title = fill(report.mismatch.value < 0 ? why.title : why.titleLess, { set });
  return [
    h(
      "div",
      { class: "duo" },
      h(
        "section",
        { "aria-labelledby": "why-title" },
        h("h2", { id: "why-title" }, title),
        h("p", { class: "lede" }, why.tied),
        h("figure", {}, cooling.element),
      ),
      report.pulls.length > 0
        ? h(
            "section",
            { "aria-labelledby": "drives-title" },
            h("h2", { id: "drives-title" }, drivesTitle(report)),
            h("p", { class: "lede" }, why.drivesLede),
            h("figure", {}, drivers.element),
          )
        : null,
    ),
  ];
}

function drivesTitle(report: FitReport): Child[] {
  const strongest = [...report.pulls]
    .sort((a, b) => Math.abs(b.pullMPa) - Math.abs(a.pullMPa))
    .filter((pull) => pull.pullMPa !== 0);
  const [first, second] = strongest;
  if (!first) return [];
  const text = second ? why.drives : why.drivesOne;
  return text.split(/\{(\w+)\}/).map((part, i) => (i % 2 ? formula((part === "first" ? first : second!).oxide) : part));
}

/** What to mind, for paper, where the lists are left out. */
export function mindOnPaper(report: FitReport, units: Units): HTMLElement {
  const mind = [...report.warnings, ...report.cautions].map(({ message }) => localise(message, units));
  return h("p", { class: "paper" }, mind.join(" "));
}

/** Reasons beyond the three in the sentence, doubts, and what to mind; nothing of the answer is withheld. */
export function reasonsPart(report: FitReport, units: Units): HTMLElement {
  const told = report.reasons.filter(({ code }) => code !== "cases" && code !== "mismatch");
  const doubts = report.drivers.filter(({ share }) => share >= 0.05).slice(0, 4);
  const mind = [...report.warnings, ...report.cautions].map(({ message }) => message);
  const list = (items: string[]) =>
    h("ul", { class: "mind" }, ...items.map((item) => h("li", {}, withFormulas(localise(item, units)))));
  return h(
    "div",
    { class: "duo noprint" },
    h("section", {}, h("h2", {}, why.more), list(told.map(({ text }) => text))),
    h(
      "section",
      {},
      doubts.length > 0
        ? [
            h("h2", {}, why.doubt),
            list(doubts.map(({ share, label }) => fill(why.doubtText, { share: Math.round(share * 100), label }))),
          ]
        : null,
      mind.length > 0 ? [h("h2", { class: "gap" }, why.mind), list(mind)] : null,
    ),
  );
}
