/** The Making page at work. @module */
import { AbortedError, ApiError } from "@ringtrue/sdk";
import { inFieldWords, showFaults } from "../check/faults.ts";
import { type FieldFault, fieldAt } from "../check/request.ts";
import { fill } from "../fill.ts";
import { byId, h } from "../shared/dom.ts";
import { readNumber } from "../shared/read-number.ts";
import { service, startWorker } from "../shared/service.ts";
import { startTheme } from "../shared/theme.ts";
import words from "../words.json" with { type: "json" };
import { makingBench } from "./bench.ts";
import {
  batchQuestion,
  keepDraft,
  keptDraft,
  PLACES,
  readBars,
  rulerQuestion,
  sizesQuestion,
  unread,
} from "./draft.ts";
import { batchPart, rulerPart } from "./sheets-part.ts";
import { sizesPart } from "./sizes-part.ts";

type Ruler = ReturnType<typeof rulerQuestion>;
type Batch = NonNullable<ReturnType<typeof batchQuestion>>;

const { making } = words;
const REST_MS = 250;

const draft = keptDraft();
let faults: FieldFault[] = [];
let round = 0;
let rest: ReturnType<typeof setTimeout> | undefined;
let running: AbortController | null = null;

/** One of the three questions: shows its answer, or gives back what is amiss at fields. */
async function part<T>(asking: Promise<T>, show: (report: T) => void, mine: number): Promise<FieldFault[]> {
  try {
    const report = await asking;
    if (mine === round) show(report);
    return [];
  } catch (error) {
    if (!(error instanceof ApiError) || error.issues.length === 0) throw error;
    return error.issues.map(({ pointer, message, suggestion }) => ({
      field: fieldAt(PLACES, pointer),
      message,
      fix: suggestion,
    }));
  }
}

async function ask(): Promise<void> {
  const mine = ++round;
  running?.abort();
  running = new AbortController();
  const options = { signal: running.signal };
  const batch = batchQuestion(draft);
  const ruler = rulerQuestion(draft);
  const own = unread(draft);
  const amiss = (...fields: string[]) => own.some(({ field }) => fields.includes(field));
  const noShrinkage = amiss("percent", "plusMinus", "drying");
  const noSizes = noShrinkage || amiss("pieces");
  if (!batch) byId("batch").replaceChildren(h("p", { class: "lede" }, making.noBatch));
  try {
    const found = await Promise.all([
      noSizes
        ? []
        : part(
            service.sizes.thrown(sizesQuestion(draft), options),
            (report) => byId("answer").replaceChildren(...sizesPart(report, draft)),
            mine,
          ),
      noShrinkage
        ? []
        : part(
            service.rulers.draw(ruler, options),
            (report) => byId("ruler").replaceChildren(...rulerPart(report, draft.unit, () => rulerPdf(ruler))),
            mine,
          ),
      batch && !amiss("dry", "gravity")
        ? part(
            service.batches.plan(batch, options),
            (report) => byId("batch").replaceChildren(...batchPart(report, () => batchPdf(batch))),
            mine,
          )
        : [],
    ]);
    if (mine !== round) return;
    byId("out").classList.toggle("waiting", noSizes || found[0].length > 0);
    const seen = new Set<string>();
    faults = [...own, ...found.flat()].filter(({ field }) => !seen.has(field) && seen.add(field));
    byId("state").replaceChildren(
      ...faults.filter(({ field }) => field === "other").map(({ message }) => h("p", { class: "because" }, message)),
    );
    showNotes();
    const first = faults[0] && inFieldWords(faults[0]);
    byId("status").textContent = first ?? document.querySelector("#answer h1")?.textContent ?? "";
  } catch (error) {
    if (mine !== round || error instanceof AbortedError) return;
    byId("state").replaceChildren(h("p", { class: "because state", role: "alert" }, making.offline));
    setTimeout(() => mine === round && ask(), 3000);
  }
}

function showNotes(): void {
  showFaults(byId("form"), faults, [], (field, fix) => {
    const input = byId<HTMLInputElement>(field);
    input.value = fix;
    input.dispatchEvent(new Event("input"));
    input.focus();
  });
}

function typed(): void {
  keepDraft(draft);
  showSummary();
  clearTimeout(rest);
  rest = setTimeout(ask, REST_MS);
}

function showSummary(): void {
  const pieces = readNumber(draft.pieces).value ?? 1;
  byId("summary").textContent = fill(making.summary, {
    form: making.forms[draft.form],
    height: `${draft.height} ${draft.unit}`,
    shrinkage: draft.percent,
    pieces: pieces > 1 ? fill(making.piecesOf, { pieces }) : making.onePiece,
  });
}

/** Bars as lines of wet, dry and fired: worked out by the service and taken over. */
async function bars(text: string): Promise<void> {
  const measured = readBars(text);
  const told = byId("bars-told");
  if (!measured?.length) {
    told.textContent = making.barsNone;
    return;
  }
  try {
    const { total, drying, headline } = await service.shrinkage.measure({ unit: draft.unit, bars: measured });
    if (total) {
      draft.percent = total.mean.value.toFixed(1);
      draft.plusMinus = ((total.mean.high - total.mean.low) / 2).toFixed(1);
    }
    if (drying) draft.drying = drying.mean.value.toFixed(1);
    for (const field of ["percent", "plusMinus", "drying"] as const) byId<HTMLInputElement>(field).value = draft[field];
    told.textContent = fill(making.barsTold, { text: headline });
    typed();
  } catch (error) {
    told.textContent = error instanceof ApiError ? error.problem.detail : making.offline;
  }
}

function save(name: string, bytes: Uint8Array<ArrayBuffer>): void {
  const url = URL.createObjectURL(new Blob([bytes], { type: "application/pdf" }));
  h("a", { href: url, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
// On paper goes what is shown, whatever has been typed since.
const rulerPdf = async (question: Ruler) => save("ruler.pdf", await service.rulers.pdf(question));
const batchPdf = async (question: Batch) => save("batch.pdf", await service.batches.pdf(question));

function showBench(focus?: string): void {
  byId("form").replaceChildren(makingBench(draft, { typed, changed, bars }));
  if (focus) document.getElementById(focus)?.focus();
  showSummary();
}

function changed(change: () => void, focus: string): void {
  change();
  faults = [];
  keepDraft(draft);
  showBench(focus);
  ask();
}

function start(): void {
  startTheme();
  startWorker();
  if (matchMedia("(max-width: 1099px)").matches) byId<HTMLDetailsElement>("bench").open = false;
  byId("form").addEventListener("submit", (event) => event.preventDefault());
  byId("form").addEventListener("focusout", () => setTimeout(showNotes));
  showBench();
  ask();
}

start();
