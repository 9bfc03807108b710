/** One way that leaves the recipe alone, and the first of several that reaches. @module */
import { checkFit } from "../fit/index.ts";
import type { FitReport, FitRequest } from "../fit/types.ts";
import type { Remedy } from "./types.ts";

/** One way, with how it turns out. */
export type Way = Pick<Remedy, "kind" | "title" | "fit" | "costs" | "text"> & {
  report: FitReport;
  /** Why it goes no farther, told where it does not reach. */
  stops: string;
  cooling?: Remedy["cooling"];
};

/** One thing tried. */
export interface Tried<T> {
  value: T;
  request: FitRequest;
  report: FitReport;
}

/** The first that reaches the target, else the one that keeps most sound. */
export function firstThatReaches<T>(tried: readonly [T, FitRequest][], target: number): Tried<T>[] {
  let best: Tried<T> | undefined;
  for (const [value, request] of tried) {
    const report = checkFit(request);
    if (!best || report.probabilities.sound > best.report.probabilities.sound) best = { value, request, report };
    if (report.probabilities.sound >= target) return [{ value, request, report }];
  }
  return best ? [best] : [];
}
