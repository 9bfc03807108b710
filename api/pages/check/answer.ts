/** The answer as a whole: its parts in order, the status line, the title, the strip on a phone. @module */
import type { FitReport } from "../../engine/fit/types.ts";
import { fill } from "../fill.ts";
import { byId, h } from "../shared/dom.ts";
import { glazeLine, ring } from "../shared/rings.ts";
import { sayQuantity } from "../shared/say-quantity.ts";
import words from "../words.json" with { type: "json" };
import type { Answer } from "./ask.ts";
import { currentGlaze, type Draft, MOST_TRIALS } from "./draft.ts";
import { inFieldWords } from "./faults.ts";
import { nextPart } from "./next.ts";
import { numbersPart } from "./numbers.ts";
import { sayClay, sayVerdict, telling } from "./say-verdict.ts";
import { nothingYet } from "./states.ts";
import { type TrialsTold, trialsPart } from "./trials.ts";
import { verdictPart } from "./verdict.ts";
import { mindOnPaper, reasonsPart, whyPart } from "./why.ts";

const { check, verdict: said } = words;
/** Parts of silica in the trial offered by a button. */
const STEP_OF_SILICA = 6;

/** What the answer's buttons do. */
export interface AnswerTold extends TrialsTold {
  silica(parts: number): void;
  share(): void;
  sample(): void;
}

type Bodies = readonly { id: string; name: string }[];

/** Draws the answer of the trial being worked on, or says what is missing; before any answer it leaves things be. */
export function drawAnswer(draft: Draft, answers: readonly Answer[], bodies: Bodies, told: AnswerTold): void {
  const answer = answers[draft.current];
  if (answer?.report) draw(answer.report, answer, draft, answers, bodies, told);
  else if (answer) drawNothing(answer, told);
}

function drawNothing(answer: Answer, told: AnswerTold): void {
  const faults = [...answer.question.faults, ...answer.faults];
  const first = faults[0] && inFieldWords(faults[0]);
  byId("glazeline").setAttribute("d", glazeLine("unknown"));
  const more = first ? [h("p", { class: "because" }, first)] : [];
  byId("answer").replaceChildren(nothingYet(answer.question, faults.length, told.sample), ...more);
  byId("live").replaceChildren(ring("unknown", 26), words.trials.waiting);
  byId("status").textContent = first ?? words.trials.waiting;
}

function draw(
  report: FitReport,
  answer: Answer,
  draft: Draft,
  answers: readonly Answer[],
  bodies: Bodies,
  told: AnswerTold,
): void {
  const glaze = currentGlaze(draft).name.trim() || check.unnamed;
  const clay = sayClay(report, bodies);
  const trials = answers.map((one) => one.report);
  const act = (id: string, word: string, onclick: () => void) =>
    h("button", { class: "btn bare", type: "button", id, onclick }, word);
  const acts = h(
    "div",
    { class: "acts" },
    act("share", said.share, told.share),
    act("print", said.print, () => window.print()),
  );
  const focus = document.activeElement?.id;
  byId("answer").replaceChildren(
    ...verdictPart({ report, draft, glaze, clay, trials }, answer.question.leftOut, acts),
    nextPart(report, draft.units, tries(report, draft, told)),
    ...whyPart(report, draft.units),
    trialsPart(draft, trials, told),
    mindOnPaper(report, draft.units),
    reasonsPart(report, draft.units),
    numbersPart(report, draft.units),
  );
  // A button that was drawn anew keeps the focus that it had.
  if (focus && document.activeElement === document.body) document.getElementById(focus)?.focus();
  const sentence = sayVerdict(report, glaze, clay).replaceAll("*", "");
  byId("status").textContent = fill(said.status, { sentence, stress: sayQuantity(report.stress, draft.units).value });
  document.title = `${said.words[report.verdict]}: ${glaze} · Ringtrue`;
  const short = `${said.words[report.verdict]}, ${fill(said.inTwenty, { count: telling(report) })}`;
  byId("live").replaceChildren(ring(report.verdict, 26), short, h("u", {}, said.seeWhy));
}

/** A button for the change that most often helps, where there is room for another trial. */
function tries(report: FitReport, draft: Draft, told: AnswerTold): HTMLElement | null {
  if (draft.trials.length >= MOST_TRIALS || currentGlaze(draft).kind !== "recipe") return null;
  const pulled = report.mismatch.value < 0;
  const parts = pulled ? STEP_OF_SILICA : -STEP_OF_SILICA;
  const word = pulled ? words.next.tryMore : words.next.tryLess;
  return h(
    "p",
    { class: "acts2" },
    h("button", { class: "btn", type: "button", onclick: () => told.silica(parts) }, word),
  );
}
