/** Both curves, ready to be drawn: length counted from 20 °C. @module */
import { contractionAt, Z90 } from "../body/index.ts";
import { quantileOf, round } from "../quantity.ts";
import { glassContraction, onWareDrop } from "./draw-coat.ts";
import type { Situation } from "./simulate.ts";
import type { BandPoint } from "./types.ts";

/** Distance between drawn points [K]. */
const STEP_C = 20;

/**
 * Strain of glaze (to its set point, then nothing) and body (to 100 °C beyond) with 90 % bands.
 * Each band adds the doubt of each input in quadrature, one at a time.
 */
export function drawCurves(s: Situation, setPointC: number): { glaze: BandPoint[]; body: BandPoint[] } {
  // As it counts on the ware, so that the gap drawn is the mismatch told.
  const drop = s.onWare && s.under.length === 0 ? onWareDrop(s.thicknessM, 0.5) : 0;
  const bulk = quantileOf(s.expansion, 0.5);
  const alpha = bulk - drop;
  const alphaHalf = (p: number) => Math.hypot(quantileOf(s.expansion, p) - bulk, s.recipeSd * Z90, drop * 0.9);
  const glaze = temperatures(setPointC).map((c) => {
    const strain = (a: number, rise: number) => glassContraction(a * 1e-6, c, rise, s.rise.anchorC);
    const middle = strain(alpha, s.rise.perKelvin);
    const risen = Math.abs(strain(alpha, s.rise.perKelvin + s.rise.sd * Z90) - middle);
    const below = Math.hypot(strain(alphaHalf(0.05), s.rise.perKelvin), risen);
    const above = Math.hypot(strain(alphaHalf(0.95), s.rise.perKelvin), risen);
    return point(c, middle, below, above);
  });
  const body = temperatures(setPointC + 100).map((c) => {
    const middle = contractionAt(s.body, c);
    let variance = 0;
    for (const input of ["bodyMean", "bodyQuartz", "bodyCristobalite", "bodyRise"] as const) {
      variance += (contractionAt(s.body, c, { [input]: Z90 }) - middle) ** 2;
    }
    return point(c, middle, Math.sqrt(variance), Math.sqrt(variance));
  });
  return { glaze, body };
}

function temperatures(end: number): number[] {
  const inner = Array.from({ length: Math.ceil((end - 20) / STEP_C) }, (_, i) => 20 + i * STEP_C);
  return [...inner, Math.round(end)];
}

function point(c: number, strain: number, below: number, above: number): BandPoint {
  return {
    c,
    strainPercent: round(strain * 100, 4),
    lowPercent: round((strain - below) * 100, 4),
    highPercent: round((strain + above) * 100, 4),
  };
}
