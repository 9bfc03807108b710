/** Both lengths at every temperature on the way down, read off the curves of the service. @module */
import type { BandPoint, FitReport } from "../../engine/fit/types.ts";

/** How things stand at one temperature. */
export interface Moment {
  c: number;
  /** Still above the set point. */
  runny: boolean;
  /** Shrunk since it set [%]; 0 while runny. */
  glaze: number;
  clay: number;
  /** Stress in the glaze [MPa], tension positive; as the gap grows, so does the stress, up to the service's own figure. */
  stress: number;
}

/** Strain at a temperature, between two points of a curve [%]. */
export function strainAt(curve: readonly BandPoint[], c: number): number {
  const after = curve.findIndex((point) => point.c >= c);
  if (after <= 0) return curve[after === 0 ? 0 : curve.length - 1]!.strainPercent;
  const [a, b] = [curve[after - 1]!, curve[after]!];
  return a.strainPercent + ((b.strainPercent - a.strainPercent) * (c - a.c)) / (b.c - a.c);
}

/** Smallest gap from which stress per gap can be taken [%]. */
const LEAST_GAP = 0.004;
/** Share of the plane-strain stiffness used where the gap is too small to divide by (Poisson's ratio about 0.22). */
const BIAXIAL = 1 / (1 - 0.22);

/**
 * The curve of the glaze is that of the glass by itself. On the ware a thin skin takes up clay and shrinks less, and the
 * gap and the stress of the answer count that; so the glaze's curve gives the shape here, and the answer's gap the end.
 * @param report - with curves
 */
export function coolingOf(report: FitReport): (c: number) => Moment {
  const { glaze, body } = report.curves!;
  const set = report.setPoint.value;
  const since = (curve: readonly BandPoint[], c: number) => strainAt(curve, set) - strainAt(curve, c);
  const end = -report.mismatch.value;
  const onWare = (since(body, 20) + end) / since(glaze, 20);
  // A thin elastic skin: stress goes with the gap. Both are the service's own, so the end agrees with it.
  const perGap = Math.abs(end) > LEAST_GAP ? report.stress.value / end : report.glaze.youngs.value * 10 * BIAXIAL;
  return (c) => {
    if (c > set) return { c, runny: true, glaze: 0, clay: 0, stress: 0 };
    const shrunk = { glaze: since(glaze, c) * onWare, clay: since(body, c) };
    return { c, runny: false, ...shrunk, stress: (shrunk.glaze - shrunk.clay) * perGap };
  };
}

/** What the skin does at a moment. Before it is cold only what happens at once counts. */
export type Doing =
  | "runny"
  | "set"
  | "level"
  | "pulledWarm"
  | "squeezed"
  | "quartz"
  | "holds"
  | "mayCraze"
  | "crazes"
  | "lifts"
  | "flakes";

export function doingOf({ thresholds, setPoint }: FitReport, { c, runny, stress }: Moment): Doing {
  if (runny) return "runny";
  if (stress >= thresholds.cracksOnCooling.value) return "crazes";
  if (stress <= thresholds.flakesComeOff.value) return "flakes";
  if (stress <= thresholds.edgesMayLift.value) return "lifts";
  if (c <= 25) return stress >= thresholds.mayCrackInTime.value ? "mayCraze" : "holds";
  if (Math.abs(stress) < 3) return setPoint.value - c < 40 ? "set" : "level";
  if (stress > 0) return "pulledWarm";
  return c < 573 && c > 480 && setPoint.value > 573 ? "quartz" : "squeezed";
}
