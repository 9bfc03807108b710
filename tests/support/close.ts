/** One way to compare numbers in tests: the tolerance always stands at the call. @module */
import { expect } from "vitest";

/** How far a value may lie from what is expected. Give `rel`, `abs` or both (the wider one holds). */
export interface Tolerance {
  /** Share of the expected value [-]. */
  rel?: number;
  /** In the unit of the value. */
  abs?: number;
  /** Why the tolerance is wider than the digits of the print. */
  why?: string;
  /** What is compared, for the failure message. */
  label?: string;
}

/**
 * Expects a number to lie within a tolerance of another.
 * @param actual - what was computed
 * @param expected - what was published or derived elsewhere
 * @param tolerance - `rel`, `abs`; none means exactly equal
 * @example close(molarMass("SiO2"), 60.083, { abs: 0.0005 })
 */
export function close(actual: number | null | undefined, expected: number, tolerance: Tolerance = {}): void {
  const { rel = 0, abs = 0, why, label } = tolerance;
  const allowed = Math.max(abs, Math.abs(expected) * rel);
  const what = label ? `${label}: ` : "";
  const note = why ? ` (${why})` : "";
  const off = typeof actual === "number" ? Math.abs(actual - expected) : Number.NaN;
  // A hair for numbers that cannot be written in binary, far below any tolerance used here.
  const ok = off <= allowed + 1e-12 * Math.abs(expected);
  expect(ok, `${what}${actual} is not within ${allowed} of ${expected}${note}`).toBe(true);
}
