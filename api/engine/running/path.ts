/** Viscosity along a firing, for eyes and pictures. @module */
import type { ViscosityCurve } from "../glass/index.ts";
import { type Quantity, quantileOf, quantity, round, UNITS } from "../quantity.ts";
import type { Leg, Timeline } from "./timeline.ts";
import type { MeltPoint } from "./types.ts";

/** Stiffer than this a glaze is a solid [log10 Pa·s]. */
const SOLID = 12;
/** Runnier than this it flows in a firing's time [log10 Pa·s]. */
export const FLOWS = 4;
const MOST_POINTS = 150;

/**
 * Points along the firing where the glaze is softer than 10^12 Pa·s.
 * @returns minutes since the kiln was lit, °C, log10 of the viscosity [Pa·s] with its 90 % band
 */
export function meltPath(curve: ViscosityCurve, { legs }: Timeline): MeltPoint[] {
  const softC = curve.temperatureC(SOLID).value;
  const range = legs.reduce((sum, leg) => sum + Math.abs(leg.toC - leg.fromC), 0);
  const stepK = Math.max(10, range / (MOST_POINTS - legs.length));
  const points: MeltPoint[] = [];
  let start = 0;
  for (const leg of legs) {
    const parts = Math.max(1, Math.ceil(Math.abs(leg.toC - leg.fromC) / stepK));
    for (let i = points.length === 0 ? 0 : 1; i <= parts; i++) {
      const c = leg.fromC + ((leg.toC - leg.fromC) * i) / parts;
      if (c < softC) continue;
      points.push(point(curve, c, (start + (leg.seconds * i) / parts) / 60));
    }
    start += leg.seconds;
  }
  return points;
}

function point(curve: ViscosityCurve, c: number, minutes: number): MeltPoint {
  const estimate = curve.logViscosity(c);
  return {
    minutes: round(minutes, 1),
    c: round(c, 1),
    logViscosity: round(quantileOf(estimate, 0.5), 2),
    low: round(quantileOf(estimate, 0.05), 2),
    high: round(quantileOf(estimate, 0.95), 2),
  };
}

/**
 * Minutes that a glaze is runny enough to flow, below 10^4 Pa·s.
 * @returns minutes with the 90 % interval of the viscosity
 */
export function meltMinutes(curve: ViscosityCurve, { legs }: Timeline): Quantity {
  const flowsC = curve.temperatureC(FLOWS);
  const at = (probability: number) => minutesAbove(legs, quantileOf(flowsC, probability));
  return quantity(at(0.5), at(0.95), at(0.05), "min", { decimals: 0 });
}

/** Minutes spent above a temperature [°C]. */
export function minutesAbove(legs: readonly Leg[], c: number): number {
  let seconds = 0;
  for (const leg of legs) {
    const [low, high] = [Math.min(leg.fromC, leg.toC), Math.max(leg.fromC, leg.toC)];
    if (high <= c) continue;
    seconds += leg.seconds * (low >= c ? 1 : (high - c) / (high - low));
  }
  return seconds / 60;
}

/** log10 of the viscosity at a temperature with its 90 % interval. */
export function viscosityAt(curve: ViscosityCurve, c: number, plusMinusK: number): Quantity {
  const estimate = curve.logViscosity(c);
  const [middle, low, high] = [0.5, 0.05, 0.95].map((p) => quantileOf(estimate, p)) as [number, number, number];
  // A kiln that is off moves the reading along the curve.
  const perKelvin = (curve.logViscosity(c - 5).value - curve.logViscosity(c + 5).value) / 10;
  const kiln = perKelvin * plusMinusK;
  return quantity(
    middle,
    middle - Math.hypot(middle - low, kiln),
    middle + Math.hypot(high - middle, kiln),
    UNITS.logViscosity,
  );
}
