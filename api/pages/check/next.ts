/** What to fire or measure next, and what either outcome would say. @module */
import type { FitReport, Reason } from "../../engine/fit/types.ts";
import { fill } from "../fill.ts";
import { signed } from "../say.ts";
import { h } from "../shared/dom.ts";
import { ring } from "../shared/rings.ts";
import { localise, type Units } from "../shared/units.ts";
import words from "../words.json" with { type: "json" };

const { next } = words;

/**
 * The most telling step large, the others after it; and what the twenty cases say of each outcome of a tile.
 * @param tries - buttons that make a trial
 */
export function nextPart(report: FitReport, units: Units, tries: HTMLElement | null): HTMLElement {
  const [first, ...others] = report.next;
  if (!first) return h("section", {});
  const { head, rest } = part(localise(first.text, units));
  return h(
    "section",
    { "aria-labelledby": "next-title" },
    h(
      "div",
      { class: "next" },
      h(
        "div",
        {},
        h("p", { class: "kick" }, next.kick),
        h("h2", { id: "next-title" }, head),
        h("p", {}, rest),
        ...others.map((step: Reason) => h("p", { class: "mut" }, `${next.then}: ${lower(localise(step.text, units))}`)),
        tries,
      ),
      h("div", { class: "fork" }, ...outcomes(report)),
    ),
  );
}

/** First sentence and the rest. */
function part(text: string): { head: string; rest: string } {
  const end = text.search(/[.:] /);
  return end < 0 ? { head: text, rest: "" } : { head: `${text.slice(0, end)}.`, rest: text.slice(end + 2) };
}

const lower = (text: string) => text.charAt(0).toLowerCase() + text.slice(1);

/** Middle and ends of the cases that share an outcome: arithmetic on what the service sent, nothing more. */
function outcomes(report: FitReport): HTMLElement[] {
  const groups = [
    { title: next.ifCrazes, state: "crazes", match: ["crazesOnCooling", "crazesLater"] },
    { title: next.ifHolds, state: "sound", match: ["sound"] },
    { title: next.ifLifts, state: "shivers", match: ["shivers"] },
  ] as const;
  return groups.flatMap(({ title, state, match }) => {
    const stresses = report.stress.cases
      .filter(({ outcome }) => (match as readonly string[]).includes(outcome))
      .map(({ stressMPa }) => stressMPa)
      .sort((a, b) => a - b);
    if (stresses.length === 0 || stresses.length === report.stress.cases.length) return [];
    const half = (stresses.length - 1) / 2;
    const middle = (stresses[Math.floor(half)]! + stresses[Math.ceil(half)]!) / 2;
    const text = fill(stresses.length === 1 ? next.outcomeOne : next.outcome, {
      count: stresses.length,
      stress: `${signed(middle)}\u00a0MPa`,
      low: signed(stresses[0]!),
      high: signed(stresses.at(-1)!),
    });
    return [h("div", {}, h("h3", { class: "with-ring" }, ring(state, 24), title), h("p", {}, text))];
  });
}
