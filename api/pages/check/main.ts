/** The Check page at work: bench on the left, answer on the right, one question under way. @module */
import type { FitReport } from "../../engine/fit/types.ts";
import { fill } from "../fill.ts";
import { byId, h } from "../shared/dom.ts";
import { service, startWorker } from "../shared/service.ts";
import { startTheme } from "../shared/theme.ts";
import { keepUnits, keptUnits, localise } from "../shared/units.ts";
import words from "../words.json" with { type: "json" };
import { drawAnswer } from "./answer.ts";
import { type Answer, Asker, type State } from "./ask.ts";
import { bench } from "./bench.ts";
import { blendsPanel } from "./blends/panel.ts";
import { changeSilica, copyTrial, dropTrial, usePasted } from "./changes.ts";
import { fileButtons, pasteDialog, saveWork, shareDialog } from "./dialogs.ts";
import { currentGlaze, type Draft, emptyDraft } from "./draft.ts";
import { evidencePanel } from "./evidence/panel.ts";
import { showFaults } from "./faults.ts";
import { loadMaterials } from "./find-material.ts";
import type { PanelTold } from "./panels.ts";
import { remediesPanel } from "./remedies/panel.ts";
import { buildQuestion, fieldAt } from "./request.ts";
import { startRunPanel } from "./run-panel.ts";
import { SAMPLE } from "./sample-work.ts";
import { clock, stateLine } from "./states.ts";
import { keep, type LastAnswer, readKept, Undo } from "./store.ts";
import { everything, summary } from "./summary.ts";
import { fromFragment, fromWork, toWork, UnreadableWork } from "./work.ts";

const { check } = words;
let bodies: { id: string; name: string }[] = [];
let draft: Draft = fromWork(SAMPLE, keptUnits());
let answers: Answer[] = [];
let last: LastAnswer | null = null;
let state: State = "idle";
let since = 0;
let message = "";
const undo = new Undo();
const showRunning = startRunPanel();
const lent: PanelTold = {
  draft: () => draft,
  fit: () => buildQuestion(draft, currentGlaze(draft)).request,
  bodies: () => bodies,
  change: (change) => changed(change),
};
const panels = [remediesPanel(lent), evidencePanel(lent), blendsPanel(lent)];

const asker = new Asker({
  state(next) {
    if (next === "offline" && state !== "offline") since = Date.now();
    if (next === "idle" && state === "offline") message = words.states.back;
    state = next;
    showState();
  },
  answers(next) {
    answers = next;
    const answer = answers[draft.current];
    if (answer?.report) {
      last = { at: Date.now(), question: JSON.stringify(answer.question.request), report: answer.report };
    }
    showAnswer();
    showNotes();
    keepAll();
    showRunning(answer?.question, draft.units);
  },
});

/** Builds the form anew and puts the focus where it was, or where it is wanted. */
function showBench(focus?: string): void {
  const wanted = focus ?? document.activeElement?.id;
  const form = byId("form");
  form.replaceChildren(bench(draft, { typed, changed, paste: () => pasteDialog(pasted), bodies }));
  if (wanted && form.contains(document.getElementById(wanted))) document.getElementById(wanted)!.focus();
  showSummary();
  showNotes();
}

function showSummary(): void {
  byId("summary").textContent = summary(draft, bodies);
  byId("on-paper").textContent = everything(draft, bodies);
}

function showNotes(): void {
  const answer = answers[draft.current];
  const faults = answer ? [...answer.question.faults, ...answer.faults] : [];
  const remarks = (answer?.report?.warnings ?? []).flatMap(({ pointer, message: text }) =>
    pointer && answer
      ? [{ field: fieldAt(answer.question.places, pointer), message: localise(text, draft.units) }]
      : [],
  );
  showFaults(byId("form"), faults, remarks, (field, fix) => {
    const input = byId<HTMLInputElement>(field);
    undo.remember(draft);
    input.value = fix;
    input.dispatchEvent(new Event("input"));
    input.focus();
  });
}

function showState(): void {
  const line = stateLine(state, since, last?.at ?? null, () => asker.now(draft));
  const told = message ? [h("p", { class: "because state" }, message)] : [];
  byId("state").replaceChildren(...(line ? [line] : []), ...told);
  byId("out").classList.toggle("waiting", state === "working" || state === "offline");
  if (state === "offline" || state === "fault") byId("status").textContent = line?.textContent ?? "";
}

function showAnswer(): void {
  showState();
  drawAnswer(draft, answers, bodies, {
    open: (place) => changed(() => (draft.current = place)),
    drop: (place) => changed(() => dropTrial(draft, place)),
    another: () => changed(() => copyTrial(draft), "name"),
    silica: (parts) => changed(() => changeSilica(draft, parts)),
    share: () => shareDialog(toWork(draft)),
    sample,
  });
  for (const panel of panels) panel.follow();
}

function keepAll(): void {
  const kept = keep(draft, last);
  byId("kept").textContent = kept ? fill(check.keptAt, { time: clock(Date.now()) }) : check.notKept;
  byId<HTMLButtonElement>("undo").disabled = undo.depth === 0;
}

function typed(): void {
  message = "";
  keepAll();
  showSummary();
  asker.soon(draft);
}

/** A change of what is there: remembered, built anew, asked at once. */
function changed(change: () => void, focus?: string): void {
  undo.remember(draft);
  message = "";
  change();
  keepUnits(draft.units);
  answers = answers.slice(0, draft.trials.length);
  refresh(focus);
}

function refresh(focus?: string): void {
  showBench(focus);
  keepAll();
  asker.now(draft);
}

const pasted = (recipes: Parameters<typeof usePasted>[1]) => changed(() => usePasted(draft, recipes), "row-0-material");
const sample = () => changed(() => replace(fromWork(SAMPLE, draft.units)));

function replace(next: Draft): void {
  draft = next;
  answers = [];
}

function takeBack(): void {
  const before = undo.back(draft);
  if (!before) return;
  message = "";
  replace(before);
  refresh();
}

/** The answer of the last visit, until the one of now is there. */
function showLast(report: FitReport): void {
  const parts = { glaze: null, body: null, firing: {}, ware: {} };
  const question = { parts, request: null, missing: null, faults: [], leftOut: [], places: new Map<string, string>() };
  answers = draft.trials.map((_, i) => ({ question, report: i === draft.current ? report : null, faults: [] }));
  showAnswer();
  answers = [];
}

function openWork(given: () => unknown, told: string, broken: string): void {
  try {
    const next = fromWork(given(), draft.units);
    changed(() => replace(next));
    message = told;
  } catch (error) {
    message = error instanceof UnreadableWork ? error.message : broken;
  }
  showState();
  byId("status").textContent = message;
}

function openLink(): void {
  if (!location.hash.startsWith("#w=")) return;
  const { hash } = location;
  history.replaceState(null, "", location.pathname);
  openWork(() => fromFragment(hash), words.share.opened, words.share.unreadable);
}

function start(): void {
  startTheme();
  startWorker();
  const kept = readKept();
  if (kept) {
    replace(kept.draft);
    last = kept.last;
  }
  byId("bench").hidden = false;
  byId("panels").append(...panels.map(({ element }) => element));
  for (const panel of panels) panel.follow();
  if (matchMedia("(max-width: 1099px)").matches) byId<HTMLDetailsElement>("bench").open = false;
  byId("files").append(
    ...fileButtons({
      save: () => saveWork(toWork(draft)),
      open: (name, text) => openWork(() => JSON.parse(text), fill(words.file.opened, { name }), words.file.broken),
      empty: () => changed(() => replace(emptyDraft(draft.units)), "name"),
      sample,
    }),
  );
  byId("undo").addEventListener("click", takeBack);
  byId("form").addEventListener("submit", (event) => event.preventDefault());
  // One step back for each visit to a field, remembered before its first keystroke.
  byId("form").addEventListener("focusin", () => undo.remember(draft));
  byId("form").addEventListener("focusout", () => setTimeout(showNotes));
  document.addEventListener("keydown", (event) => {
    const field = (event.target as Element).closest?.("input:not([type=radio]), textarea");
    if ((event.ctrlKey || event.metaKey) && event.key === "z" && !field) takeBack();
  });
  addEventListener("hashchange", openLink);
  addEventListener("online", () => asker.now(draft));
  showBench();
  openLink();
  if (last) showLast(last.report);
  asker.now(draft);

  loadMaterials().then(
    () => document.activeElement?.closest("#form") || showBench(),
    () => {},
  );
  service.bodies.list({ limit: 200 }).then(
    ({ data }) => {
      bodies = data.map(({ id, name }) => ({ id, name }));
      showBench();
      showAnswer();
    },
    () => {},
  );
}

start();
