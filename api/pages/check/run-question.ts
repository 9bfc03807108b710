/** From bench and panel to a question about running. @module */
import type { FitRequest } from "@ringtrue/sdk";
import type { RunningRequest } from "../../engine/running/types.ts";
import { fill } from "../fill.ts";
import { readNumber } from "../shared/read-number.ts";
import { toMm } from "../shared/units.ts";
import words from "../words.json" with { type: "json" };
import type { FieldFault, Question } from "./request.ts";
import type { RunDraft } from "./run-draft.ts";

const { running, field: said } = words;

/** Pointer of the service → field of the panel. */
export const RUN_PLACES: ReadonlyMap<string, string> = new Map([
  ["/wall", "run-glazed"],
  ["/wall/slopeDeg", "run-slope"],
  ["/wall/clearanceMm", "run-clearance"],
  ["/firing/holdMinutes", "run-soak"],
  ["/refiring/coats", "run-coat"],
]);

/** A question about running, or why there is none yet. */
export interface RunQuestion {
  request: RunningRequest | null;
  /** What is missing on the bench, in words. */
  missing: string | null;
  faults: FieldFault[];
}

/**
 * @param bench - the fit's question, whose glaze and firing are taken over
 * @param typed - the panel
 */
export function runQuestion({ glaze, firing }: Question["parts"], typed: RunDraft): RunQuestion {
  const faults: FieldFault[] = [];
  const number = (name: "slope" | "glazed" | "clearance" | "soak" | "coat", length = false) => {
    const { value, empty, fix } = readNumber(typed[name]);
    if (value !== null) return length ? Number(toMm(value, typed.length).toPrecision(10)) : value;
    if (!empty) {
      const meant = fix === undefined ? "" : ` ${fill(said.meant, { fix })}`;
      const message = fill(said.notNumber, { where: running[name], text: typed[name] }) + meant;
      faults.push({ field: `run-${name}`, message, fix });
    }
    return undefined;
  };
  const wall = {
    slopeDeg: number("slope"),
    glazedMm: number("glazed", true),
    clearanceMm: number("clearance", true),
  };
  const holdMinutes = number("soak");
  const coat = typed.again ? number("coat", true) : undefined;
  const missing = missingOn(glaze, firing.peakC);
  if (missing || !glaze || "expansion" in glaze || faults.length > 0) return { request: null, missing, faults };
  const again = { glaze: { ...glaze, thicknessMm: coat } };
  const request = {
    glaze,
    firing: { ...firing, holdMinutes },
    wall,
    ...(coat === undefined ? {} : { refiring: { coats: [again] } }),
  } as RunningRequest;
  return { request, missing, faults };
}

function missingOn(glaze: FitRequest["glaze"] | null, peakC: number | undefined): string | null {
  if (!glaze) return running.noGlaze;
  if ("expansion" in glaze) return running.onlyExpansion;
  return peakC === undefined ? running.noPeak : null;
}
