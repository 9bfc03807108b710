/** The panel about running: asks while it stands open, late and once, and never believes a stale answer. @module */
import { AbortedError, ApiError } from "@ringtrue/sdk";
import type { RunningReport, RunningRequest } from "../../engine/running/types.ts";
import { byId, h } from "../shared/dom.ts";
import { service } from "../shared/service.ts";
import { localise, type Units } from "../shared/units.ts";
import words from "../words.json" with { type: "json" };
import { REST_MS, SHOWN_AFTER_MS } from "./ask.ts";
import { showFaults } from "./faults.ts";
import { type FieldFault, fieldAt, type Question } from "./request.ts";
import { runAnswer } from "./run-answer.ts";
import { keepRun, keptRun, turnRun } from "./run-draft.ts";
import { runForm } from "./run-form.ts";
import { RUN_PLACES, runQuestion } from "./run-question.ts";

const { running } = words;

/** What stands on the bench when an answer has come. */
export type OnBench = (question: Question | undefined, units: Units) => void;

/** Sets the panel up; what it gives back is to be called whenever the bench has been answered. */
export function startRunPanel(): OnBench {
  const draft = keptRun();
  const panel = byId<HTMLDetailsElement>("run");
  const form = byId("run-form");
  let parts: Question["parts"] | null = null;
  let units: Units = { temperature: "C", length: draft.length };
  let asked: AbortController | null = null;
  let rest: ReturnType<typeof setTimeout> | undefined;
  let faults: FieldFault[] = [];
  let report: RunningReport | null = null;
  let soak = 0;

  function showNotes(): void {
    const remarks = (report?.warnings ?? []).map(({ pointer, message }) => ({
      field: pointer ? fieldAt(RUN_PLACES, pointer) : "other",
      message,
    }));
    showFaults(form, faults, remarks, (field, fix) => {
      const input = byId<HTMLInputElement>(field);
      input.value = fix;
      input.dispatchEvent(new Event("input"));
      input.focus();
    });
  }

  function say(text: string): void {
    byId("run-answer").replaceChildren(h("p", { class: "because" }, text));
    byId("run-status").textContent = text;
  }

  function draw(): void {
    if (!report) return;
    byId("run-answer").replaceChildren(...runAnswer(report, { again: draft.again, soak }, units));
    byId("run-status").textContent = localise(report.headline, units);
  }

  const waiting = (on: boolean) => byId("run-answer").classList.toggle("waiting", on);

  async function ask(): Promise<void> {
    clearTimeout(rest);
    asked?.abort();
    if (!panel.open || !parts) return;
    const controller = new AbortController();
    asked = controller;
    const question = runQuestion(parts, draft);
    faults = question.faults;
    if (question.missing) report = null;
    // What was answered last stands, paler, until a field is mended.
    waiting(question.request === null);
    showNotes();
    if (question.missing) return say(question.missing);
    if (!question.request) return;
    const slow = setTimeout(() => asked === controller && waiting(true), SHOWN_AFTER_MS);
    try {
      const answer = await estimate(question.request, controller.signal);
      if (asked !== controller) return;
      report = answer;
      soak = question.request.firing.holdMinutes ?? 0;
      waiting(false);
      draw();
    } catch (error) {
      if (asked !== controller || error instanceof AbortedError) return;
      waiting(true);
      refused(error);
    } finally {
      clearTimeout(slow);
    }
    showNotes();
  }

  /** A refusal stands at its field; one that has none here is said where the answer would be. */
  function refused(error: unknown): void {
    const issues = error instanceof ApiError ? error.issues : [];
    faults = issues.map(({ pointer, message }) => inPotters(fieldAt(RUN_PLACES, pointer), message));
    const elsewhere = faults.find(({ field }) => field === "other");
    if (elsewhere) {
      report = null;
      say(elsewhere.message);
    } else if (faults.length === 0) byId("run-status").textContent = running.noAnswer;
    if (faults.length === 0 && !report) say(running.noAnswer);
  }

  function typed(): void {
    keepRun(draft);
    asked?.abort();
    clearTimeout(rest);
    rest = setTimeout(ask, REST_MS);
  }

  function ticked(): void {
    build();
    typed();
  }
  const build = () => form.replaceChildren(runForm(draft, { typed, ticked }));

  byId("run-part").hidden = false;
  panel.open = draft.open;
  build();
  form.addEventListener("submit", (event) => event.preventDefault());
  form.addEventListener("focusout", () => setTimeout(showNotes));
  panel.addEventListener("toggle", () => {
    draft.open = panel.open;
    keepRun(draft);
    ask();
  });
  return (question, now) => {
    parts = question?.parts ?? null;
    units = { ...now };
    if (turnRun(draft, now.length)) {
      keepRun(draft);
      build();
    }
    ask();
  };
}

/** The service names a field as callers do; here it goes by its label and the unit that the service reads. */
function inPotters(field: string, message: string): FieldFault {
  const name = field.slice("run-".length) as keyof typeof running.fields;
  const label = running.fields[name];
  return { field, message: label ? message.replace(/^`\w+`/, label) : message };
}

/** The client's answer is the engine's, carried as JSON. */
async function estimate(request: RunningRequest, signal: AbortSignal): Promise<RunningReport> {
  type Asked = Parameters<typeof service.running.estimate>[0];
  return (await service.running.estimate(request as Asked, { signal })) as RunningReport;
}
