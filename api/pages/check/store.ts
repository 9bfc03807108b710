/** Work kept in this browser, and what to go back to. @module */
import type { FitReport } from "../../engine/fit/types.ts";
import type { Draft } from "./draft.ts";

const KEY = "ringtrue-check";
/** How many changes can be taken back. */
const DEPTH = 50;

/** The last answer, for when there is no connection. */
export interface LastAnswer {
  /** When it came [ms since 1970]. */
  at: number;
  /** The question it answers, as text. */
  question: string;
  report: FitReport;
}

interface Kept {
  draft: Draft;
  at: number;
  last: LastAnswer | null;
}

/** What was kept, or null at a first visit or where nothing can be kept. */
export function readKept(): Kept | null {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? "null") as Kept | null;
    return kept && Array.isArray(kept.draft?.trials) && kept.draft.trials.length > 0 ? kept : null;
  } catch {
    return null;
  }
}

/** Keeps it; says whether that worked. */
export function keep(draft: Draft, last: LastAnswer | null): boolean {
  try {
    localStorage.setItem(KEY, JSON.stringify({ draft, at: Date.now(), last } satisfies Kept));
    return true;
  } catch {
    return false;
  }
}

/** Takes back changes, the latest first. */
export class Undo {
  readonly #past: string[] = [];

  get depth(): number {
    return this.#past.length;
  }

  /** Remembers how the bench stands before a change. */
  remember(draft: Draft): void {
    const now = JSON.stringify(draft);
    if (this.#past.at(-1) === now) return;
    this.#past.push(now);
    if (this.#past.length > DEPTH) this.#past.shift();
  }

  /** The bench as it stood, or null when there is nothing to go back to. */
  back(now: Draft): Draft | null {
    const current = JSON.stringify(now);
    while (this.#past.length > 0) {
      const before = this.#past.pop()!;
      if (before !== current) return JSON.parse(before) as Draft;
    }
    return null;
  }
}
