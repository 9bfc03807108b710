/** Both curves with length counted from the set point, where the two are tied together. @module */
import type { BandPoint, FitReport } from "../../fit/types.ts";

/** A point of a curve: length change since the glaze set [%], with its 90 % band. */
export interface Length {
  c: number;
  percent: number;
  /** Half of the band below and above [%]. */
  below: number;
  above: number;
}

export interface Lengths {
  setC: number;
  /** Hottest temperature drawn [°C]. */
  hotC: number;
  glaze: Length[];
  /** From 20 °C to the hottest. */
  body: Length[];
}

/**
 * Counts both curves from the set point. The doubt is nothing there and grows as the ware cools: from the doubt counted
 * from 20 °C, that of the whole way less that of the part not yet cooled (exact where one factor scales the curve).
 */
export function lengthsOf({ curves, setPoint, mismatch }: FitReport): Lengths | undefined {
  const glazeEnd = curves?.glaze.at(-1);
  const bodyEnd = curves?.body.at(-1);
  if (!curves || !glazeEnd || !bodyEnd || curves.glaze.length < 2 || curves.body.length < 2) return undefined;
  const setC = Math.min(setPoint.value, glazeEnd.c);
  const body = counted(curves.body, at(curves.body, setC));
  const bulk = counted(curves.glaze, glazeEnd);
  // The curve is that of the glass in bulk; on ware it shrinks as the mismatch says.
  const share = bulk[0]!.percent === 0 ? 1 : (body[0]!.percent + mismatch.value) / bulk[0]!.percent;
  const scale = Number.isFinite(share) && share > 0 ? share : 1;
  const glaze = bulk.map(({ c, percent, below, above }) => ({
    c,
    percent: percent * scale,
    below: below * scale,
    above: above * scale,
  }));
  return { setC, hotC: bodyEnd.c, glaze, body };
}

/** Length of a curve at any temperature [%]. */
export function lengthAt(curve: readonly Length[], c: number): number {
  const [a, b] = stretchAt(curve, c);
  return a.percent + ((b.percent - a.percent) * (c - a.c)) / (b.c - a.c);
}

function counted(curve: readonly BandPoint[], from: BandPoint): Length[] {
  return curve.map((p) => ({
    c: p.c,
    percent: p.strainPercent - from.strainPercent,
    below: Math.abs(from.highPercent - from.strainPercent - (p.highPercent - p.strainPercent)),
    above: Math.abs(from.strainPercent - from.lowPercent - (p.strainPercent - p.lowPercent)),
  }));
}

/** The two points that a temperature lies between; the first or the last two where it lies beyond. */
function stretchAt<Point extends { c: number }>(curve: readonly Point[], c: number): [Point, Point] {
  const found = curve.findIndex((point) => point.c >= c);
  const i = found < 0 ? curve.length - 1 : Math.max(found, 1);
  return [curve[i - 1]!, curve[i]!];
}

/** A curve at any temperature, between its points; beyond them as at its ends. */
export function at(curve: readonly BandPoint[], c: number): BandPoint {
  const [a, b] = stretchAt(curve, c);
  const share = Math.min(Math.max((c - a.c) / (b.c - a.c), 0), 1);
  const mix = (x: number, y: number) => x + (y - x) * share;
  return {
    c,
    strainPercent: mix(a.strainPercent, b.strainPercent),
    lowPercent: mix(a.lowPercent, b.lowPercent),
    highPercent: mix(a.highPercent, b.highPercent),
  };
}

/** A sudden step in the clay's length. */
export interface Step {
  name: "quartz" | "cristobalite";
  /** Where it happens [°C]. */
  c: number;
  percent: number;
}

/** Smallest step worth a word [%]. */
const SHOWN = 0.01;

/** How much of the body's shrinkage near an inversion is more than its slope on either side accounts for. */
export function stepsOf({ curves }: FitReport): Step[] {
  const body = curves?.body ?? [];
  const end = body.at(-1)?.c ?? 0;
  const strain = (c: number) => at(body, c).strainPercent;
  const excess = (from: number, to: number, before: number, after: number) => {
    if (body.length < 2 || end < after) return 0;
    const slopes = [(strain(from) - strain(before)) / (from - before), (strain(after) - strain(to)) / (after - to)];
    // Above its inversion quartz hardly grows, below it ever faster: the hot side alone is the plain slope there.
    const slope = from > 500 ? slopes[1]! : (slopes[0]! + slopes[1]!) / 2;
    return strain(to) - strain(from) - slope * (to - from);
  };
  const steps: Step[] = [
    { name: "quartz", c: 573, percent: excess(540, 600, 500, 640) },
    { name: "cristobalite", c: 230, percent: excess(200, 280, 160, 320) },
  ];
  return steps.filter(({ percent }) => percent >= SHOWN);
}
