/** The fixed scale of stress, and what lies where on it. @module */
import type { FitReport } from "../../fit/types.ts";

/** Ends of the scale [MPa]. Never moved between glazes, so that places can be learnt. */
export const LOW_MPA = -200;
export const HIGH_MPA = 80;

/** The scale as drawn: left is squeezed, right is pulled. */
export interface StressScale {
  left: number;
  right: number;
  /** Place of a stress [px]; not clamped. */
  x: (mpa: number) => number;
  /** Stress at a place [MPa]. */
  at: (px: number) => number;
}

/** @param left - first pixel of the scale; `right` its last [px] */
export function stressScale(left: number, right: number): StressScale {
  const perMpa = (right - left) / (HIGH_MPA - LOW_MPA);
  return { left, right, x: (mpa) => left + (mpa - LOW_MPA) * perMpa, at: (x) => LOW_MPA + (x - left) / perMpa };
}

/** Central thresholds, in an order that can be drawn [MPa]. */
export interface Lines {
  flakes: number;
  lift: number;
  later: number;
  once: number;
}

/**
 * Thresholds in drawing order. Cracking speaks over lifting where moisture has pushed it below: flakes ≤ lift ≤ later ≤ once.
 */
export function linesOf({ thresholds }: FitReport): Lines {
  const once = thresholds.cracksOnCooling.value;
  const later = Math.min(thresholds.mayCrackInTime.value, once);
  const lift = Math.min(thresholds.edgesMayLift.value, later);
  return { once, later, lift, flakes: Math.min(thresholds.flakesComeOff.value, lift) };
}

/**
 * The aim: stress that clears both risks even at the near end of each threshold's 9-in-10 interval.
 * @returns [from, to] in whole MPa, or undefined where the risks meet and no stress is clear of both
 */
export function aimOf({ thresholds }: FitReport): [number, number] | undefined {
  const from = Math.ceil(thresholds.edgesMayLift.high);
  const to = Math.floor(Math.min(thresholds.mayCrackInTime.low, thresholds.cracksOnCooling.low));
  return to - from >= 5 ? [from, to] : undefined;
}
