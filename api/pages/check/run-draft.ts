/** What is typed about the wall and the soak, and how it is kept. @module */
import { readNumber } from "../shared/read-number.ts";
import { fromMm, METRIC, tidy, toMm, type Units } from "../shared/units.ts";

const KEY = "ringtrue-running";

/** Every field of the panel as typed. */
export interface RunDraft {
  /** Unit that the lengths stand in. */
  length: Units["length"];
  slope: string;
  glazed: string;
  clearance: string;
  soak: string;
  /** Fired a second time. */
  again: boolean;
  /** Thickness of a coat of the same glaze put on before that; empty for none. */
  coat: string;
  /** Whether the panel stands open. */
  open: boolean;
}

/** An upright wall glazed 100 mm tall over 3 mm of bare clay, no soak: what the service takes where nothing is said. */
const FIRST: RunDraft = {
  length: METRIC.length,
  slope: "90",
  glazed: "100",
  clearance: "3",
  soak: "0",
  again: false,
  coat: "",
  open: false,
};

/** What was kept on this device, or an upright wall. */
export function keptRun(): RunDraft {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? "null");
    return { ...FIRST, ...(typeof kept === "object" ? kept : {}) };
  } catch {
    return { ...FIRST };
  }
}

/** Keeps it where the browser lets us. */
export function keepRun(draft: RunDraft): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(draft));
  } catch {
    // The bench says already that nothing is kept here.
  }
}

/** Writes every length in the other unit; what is no number stays as typed. Says whether anything changed. */
export function turnRun(draft: RunDraft, length: Units["length"]): boolean {
  if (draft.length === length) return false;
  for (const field of ["glazed", "clearance", "coat"] as const) {
    const { value } = readNumber(draft[field]);
    if (value !== null) draft[field] = tidy(fromMm(toMm(value, draft.length), length), length === "in" ? 4 : 2);
  }
  draft.length = length;
  return true;
}
