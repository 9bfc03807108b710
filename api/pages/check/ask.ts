/** Asking the service while someone types: late, once, and never believing a stale answer. @module */
import { AbortedError, ApiError, type FitRequest, ServerError } from "@ringtrue/sdk";
import type { FitReport } from "../../engine/fit/types.ts";
import { service } from "../shared/service.ts";
import type { Draft } from "./draft.ts";
import { buildQuestion, type FieldFault, fieldAt, type Question, rowName } from "./request.ts";

/** Rest after the last keystroke [ms]. */
export const REST_MS = 250;
/** Work longer than this is shown [ms]. */
export const SHOWN_AFTER_MS = 400;
/** Between looks whether the service is back [ms]. */
const LOOK_AGAIN_MS = 3000;
/** Most readings offered as buttons. */
const MOST_CHOICES = 6;
/** Answers remembered, so that going back and forth asks nothing twice. */
const REMEMBERED = 60;

/** What became of one trial's question. */
export interface Answer {
  question: Question;
  report: FitReport | null;
  /** The service's refusal, by field. */
  faults: FieldFault[];
}

export type State = "idle" | "working" | "offline" | "fault";

/** What the asker tells the page. */
export interface Told {
  state(state: State): void;
  answers(answers: Answer[]): void;
}

export class Asker {
  readonly #told: Told;
  readonly #known = new Map<string, FitReport>();
  #round = 0;
  #rest: ReturnType<typeof setTimeout> | undefined;
  #running: AbortController | null = null;
  #look: ReturnType<typeof setTimeout> | undefined;

  constructor(told: Told) {
    this.#told = told;
  }

  /** Asks when typing rests; a later call makes this one void. */
  soon(draft: Draft): void {
    clearTimeout(this.#rest);
    this.#round++;
    this.#running?.abort();
    this.#rest = setTimeout(() => this.now(draft), REST_MS);
  }

  /** Asks at once. */
  async now(draft: Draft): Promise<void> {
    clearTimeout(this.#rest);
    clearTimeout(this.#look);
    const round = ++this.#round;
    const current = () => round === this.#round;
    this.#running?.abort();
    const controller = new AbortController();
    this.#running = controller;
    const slow = setTimeout(() => current() && this.#told.state("working"), SHOWN_AFTER_MS);
    try {
      const answers = await Promise.all(
        draft.trials.map((_, place) => this.#trial(draft, place, controller.signal, new Set())),
      );
      if (!current()) return;
      this.#told.state("idle");
      this.#told.answers(answers);
    } catch (error) {
      if (!current() || error instanceof AbortedError) return;
      const fault = error instanceof ServerError && error.status === 500;
      this.#told.state(fault ? "fault" : "offline");
      if (!fault) this.#lookAgain(draft, round);
    } finally {
      clearTimeout(slow);
    }
  }

  async #trial(draft: Draft, place: number, signal: AbortSignal, skip: ReadonlySet<number>): Promise<Answer> {
    const glaze = draft.trials[place]!;
    const question = buildQuestion(draft, glaze, skip);
    if (!question.request) return { question, report: null, faults: [] };
    try {
      return { question, report: await this.#report(question.request, signal), faults: [] };
    } catch (error) {
      if (!(error instanceof ApiError) || error.issues.length === 0) throw error;
      const faults = error.issues.map(({ pointer, message, suggestion, allowed }) => {
        const field = fieldAt(question.places, pointer);
        const few = /-material$/.test(field) && (allowed ?? []).length <= MOST_CHOICES;
        const choices = few ? (allowed ?? []).map(String) : [];
        const where = this.#where(draft, place, field);
        return { field, message: where + message, fix: suggestion, choices } satisfies FieldFault;
      });
      const rows = faults.map(({ field }) => Number(/^row-(\d+)-/.exec(field)?.[1] ?? -1));
      const others = rows.some((row) => row < 0);
      if (others || skip.size > 0) return { question, report: null, faults };
      // Bad rows are left out and said so; the verdict does not vanish.
      const rest = await this.#trial(draft, place, signal, new Set(rows));
      return { ...rest, faults: [...faults, ...rest.faults] };
    }
  }

  #where(draft: Draft, place: number, field: string): string {
    const row = Number(/^row-(\d+)-/.exec(field)?.[1] ?? -1);
    const glaze = draft.trials[place]!;
    return row >= 0 && glaze.rows[row] ? `${rowName(glaze.rows[row], row)}: ` : "";
  }

  async #report(request: FitRequest, signal: AbortSignal): Promise<FitReport> {
    const body: FitRequest = { ...request, include: ["curves", "parts"] };
    const key = JSON.stringify(body);
    const known = this.#known.get(key);
    if (known) return known;
    const report = (await service.fit.check(body, { signal })) as FitReport;
    this.#known.set(key, report);
    if (this.#known.size > REMEMBERED) this.#known.delete(this.#known.keys().next().value!);
    return report;
  }

  #lookAgain(draft: Draft, round: number): void {
    const look = async () => {
      if (round !== this.#round) return;
      try {
        await service.health();
        await this.now(draft);
      } catch {
        this.#look = setTimeout(look, LOOK_AGAIN_MS);
      }
    };
    this.#look = setTimeout(look, LOOK_AGAIN_MS);
  }
}
