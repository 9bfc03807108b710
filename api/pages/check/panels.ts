/** What panels under the answer share: what they are lent, and how a question of theirs may end. @module */
import { AbortedError, ApiError, type FitRequest, ServerError } from "@ringtrue/sdk";
import words from "../words.json" with { type: "json" };
import type { Draft } from "./draft.ts";

/** What a panel of the page is lent. */
export interface PanelTold {
  draft(): Draft;
  /** The question on the bench; null while something is missing. */
  fit(): FitRequest | null;
  /** The classes of clay; empty until they have come. */
  bodies(): readonly { id: string; name: string }[];
  /** Makes a change that can be taken back. */
  change(change: () => void): void;
}

/** A panel that stands on the page for good. */
export interface Panel {
  element: HTMLElement;
  /** The answer above has changed: what was found for another question says so. */
  follow(): void;
}

/** What became of a question. */
export type Outcome<Report> =
  | { report: Report }
  | { faults: { pointer: string; message: string; fix?: string }[] }
  | { trouble: string }
  | { overtaken: true };

/** Asks, and turns every way of failing into words for the panel. */
export async function settle<Report>(asked: PromiseLike<Report>): Promise<Outcome<Report>> {
  try {
    return { report: await asked };
  } catch (error) {
    if (error instanceof AbortedError) return { overtaken: true };
    if (error instanceof ApiError && error.issues.length > 0) {
      return {
        faults: error.issues.map(({ pointer, message, suggestion }) => ({ pointer, message, fix: suggestion })),
      };
    }
    if (error instanceof ServerError) return { trouble: words.panel.fault };
    return { trouble: error instanceof ApiError ? error.message : words.panel.offline };
  }
}
