/** The sentence, the ring, the three numbers behind it and the twenty cases. @module */
import type { FitReport, Outcome } from "../../engine/fit/types.ts";
import { verdictPicture } from "../../engine/pictures/verdict/verdict-picture.ts";
import { fill } from "../fill.ts";
import { type Child, h, stressed } from "../shared/dom.ts";
import { picture } from "../shared/picture.ts";
import { glazeLine, outcomeRing, ring } from "../shared/rings.ts";
import { sayQuantity } from "../shared/say-quantity.ts";
import { sayLength, sayTemperature } from "../shared/units.ts";
import words from "../words.json" with { type: "json" };
import { type Draft, letterOf } from "./draft.ts";
import { sourced } from "./popover.ts";
import { countCases, sayVerdict } from "./say-verdict.ts";

/** What the answer is shown with. */
export interface Shown {
  report: FitReport;
  draft: Draft;
  /** Names as the sentence uses them. */
  glaze: string;
  clay: string;
  /** Reports of all trials; null where there is none yet. */
  trials: readonly (FitReport | null)[];
}

const { verdict, source } = words;
const thePull = picture();

/** The first screen of an answer. */
export function verdictPart(shown: Shown, leftOut: string[], acts: Child): HTMLElement[] {
  const { report, draft, trials } = shown;
  document.getElementById("glazeline")!.setAttribute("d", glazeLine(report.verdict));
  const counts = Object.entries(countCases(report)).filter(([, count]) => count > 0) as [Outcome, number][];
  const cases = counts.map(([outcome, count]) => {
    const [before, after] = verdict.cases[outcome].split("{count}");
    return h("li", {}, outcomeRing(outcome), h("span", {}, before, h("b", {}, count), after));
  });
  const left = leftOut.length > 0 ? fill(words.field.leftOut, { rows: leftOut.join("; ") }) : "";
  const pins = trials.flatMap((trial, i) =>
    trial ? [{ letter: letterOf(i), stressMPa: trial.stress.value, current: i === draft.current }] : [],
  );
  thePull.show((choice) =>
    verdictPicture(report, {
      ...choice,
      temperature: draft.units.temperature,
      id: "pull",
      trials: pins.length > 1 ? pins : [],
    }),
  );
  const thickness = sayLength(report.glaze.thickness.value, draft.units);
  return [
    h(
      "div",
      { class: "verdict" },
      ring(report.verdict),
      h(
        "div",
        {},
        h("h1", {}, stressed(sayVerdict(report, shown.glaze, shown.clay))),
        because(shown),
        left ? h("p", { class: "because", id: "left-out" }, left) : null,
        h("ul", { class: "sure", "aria-label": verdict.ofTwenty }, h("li", {}, verdict.ofTwenty), ...cases),
      ),
    ),
    h(
      "section",
      { class: "first", "aria-label": verdict.where },
      h(
        "figure",
        {},
        thePull.element,
        h("div", { class: "caprow" }, h("figcaption", {}, fill(verdict.caption, { thickness })), acts),
      ),
    ),
  ];
}

function because({ report, draft, glaze }: Shown): HTMLElement {
  const { units } = draft;
  const { mismatch, stress, thresholds, setPoint } = report;
  const keysOf = (code: string) => report.reasons.find((reason) => reason.code === code)?.sources ?? [];
  const cold = sayTemperature(20, units);
  const say = (quantity: typeof mismatch) => sayQuantity(quantity, units).value;
  const skin = report.glaze.thickness;
  const typed = draft.trials[draft.current]?.thickness.trim() !== "";
  const numbers = {
    set: sourced(
      "s-set",
      sayTemperature(setPoint.value, units),
      source.set,
      setPoint,
      units,
      source.fromChemistry,
      keysOf("mismatch"),
    ),
    gap: sourced(
      "s-gap",
      say(mismatch).replace(/^−/, ""),
      source.gap,
      mismatch,
      units,
      source.fromBoth,
      keysOf("mismatch"),
    ),
    stress: sourced(
      "s-str",
      say(stress),
      fill(source.stress, { cold }),
      stress,
      units,
      source.fromWorked,
      keysOf("mismatch"),
    ),
    thickness: sourced(
      "s-thk",
      sayLength(skin.value, units),
      source.thickness,
      skin,
      units,
      typed ? source.fromYou : source.fromAssumed,
    ),
    crack: sourced(
      "s-crk",
      say(thresholds.cracksOnCooling),
      source.crack,
      thresholds.cracksOnCooling,
      units,
      source.fromTough,
      keysOf("cracking-threshold"),
    ),
    later: sourced(
      "s-ltr",
      say(thresholds.mayCrackInTime),
      source.later,
      thresholds.mayCrackInTime,
      units,
      source.fromTough,
      keysOf("cracking-threshold"),
    ),
  };
  const template = `${mismatch.value < 0 ? verdict.shrinksMore : verdict.shrinksLess} ${verdict.canCrack}`;
  const years = draft.ware.years.trim() || "10";
  const parts = fill(template, { glaze, years }).split(/\{(\w+)\}/);
  const sentence = parts.map((part, i) => (i % 2 ? numbers[part as keyof typeof numbers].button : part));
  const notes = Object.values(numbers).map((number) => number.note);
  return h("div", {}, h("p", { class: "because" }, sentence), notes);
}
