/** What stands above the answer when there is none, or when it is not of now. @module */
import { fill } from "../fill.ts";
import { type Child, h } from "../shared/dom.ts";
import { ring } from "../shared/rings.ts";
import words from "../words.json" with { type: "json" };
import type { State } from "./ask.ts";
import type { Question } from "./request.ts";

const { states } = words;

/** @example clock(new Date(2026, 0, 1, 10, 42)) // "10:42" */
export const clock = (at: number | Date): string =>
  new Date(at).toLocaleTimeString(words.language, { hour: "2-digit", minute: "2-digit", hour12: false });

/** A line above an answer that is not of now, or null. */
export function stateLine(state: State, since: number, answered: number | null, again: () => void): HTMLElement | null {
  const retry = h("button", { class: "btn", type: "button", onclick: again }, states.again);
  const line = (text: string, ...more: Child[]) => h("p", { class: "because state" }, text, " ", ...more);
  if (state === "working" && answered !== null) return line(states.working);
  if (state === "offline") {
    const text =
      answered === null ? states.offlineBare : fill(states.offline, { time: clock(since), answered: clock(answered) });
    return line(text, retry);
  }
  if (state === "fault") return h("div", {}, h("p", { class: "say" }, states.faultTitle), line(states.fault, retry));
  return null;
}

/** In place of an answer: what is missing, and one way on. */
export function nothingYet(question: Question, faults: number, sample: () => void): HTMLElement {
  const { missing } = question;
  const empty = missing === "glaze" && !question.parts.body;
  const [title, text] = empty
    ? [states.emptyTitle, states.emptyText]
    : missing === "glaze"
      ? [states.noGlazeTitle, states.noGlazeText]
      : missing === "clay"
        ? [states.noClayTitle, states.noClayText]
        : [states.fieldTitle, ""];
  const start = h("button", { class: "btn main", type: "button", onclick: sample }, words.check.sample);
  return h(
    "div",
    { class: "verdict" },
    ring("unknown"),
    h(
      "div",
      {},
      h("h1", {}, faults > 0 && !missing ? states.fieldTitle : title),
      text ? h("p", { class: "because" }, text) : null,
      empty ? h("p", { class: "acts2" }, start) : null,
    ),
  );
}
