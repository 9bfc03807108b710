/** A body known by its dilatometer curve. @module */
import { ImpossibleValueError, type Issue, type Notice } from "../errors.ts";
import { readEven, readPoints, tabulate } from "../numeric/interpolate.ts";
import { type Contraction, contractionAt, fromSpan, scaledMixture, Z90 } from "./body-model.ts";
import { ANY_BODY } from "./classes.ts";
import type { CurvePoint } from "./types.ts";

/** Half-width of a 90 % interval of a curve whose doubt is not told: a share of its reading [-] (common practice, no source). */
const UNSTATED_SHARE = 0.03;
const QUARTZ_STEP_END_C = 575;
/** A curve that reaches this has enough above the quartz step for its last slope to be that of the rest [°C] (a choice, no source). */
const WELL_BEYOND_STEP_C = 650;
/** The slope that goes on beyond a curve is that of its last stretch, above the quartz step (choices, no source). */
const SLOPE_OVER_K = 100;
const SLOPE_ABOVE_C = 600;
const WIDE_GAP_C = 150;
const LARGEST_PERCENT = 3;

/**
 * Refuses curves that cannot be: fewer than two points, temperatures that do not rise, lengths beyond any body.
 * @param curve - points as given, ascending temperature
 * @param pointer - JSON Pointer of the curve in the input
 */
export function checkCurve(curve: readonly CurvePoint[], pointer: string): void {
  const issues: Issue[] = [];
  if (curve.length < 2) {
    issues.push({ pointer, message: "A curve needs at least two points: a cold one and a hot one." });
  }
  curve.forEach(({ c, strainPercent }, i) => {
    const before = curve[i - 1];
    if (!Number.isFinite(c) || c < -50 || c > 1700) {
      issues.push({ pointer: `${pointer}/${i}/c`, message: "A temperature of a curve lies between −50 and 1700 °C." });
    } else if (before && c === before.c) {
      issues.push({
        pointer: `${pointer}/${i}/c`,
        message: `${c} °C stands twice. Keep one point for each temperature.`,
      });
    } else if (before && c < before.c) {
      issues.push({
        pointer: `${pointer}/${i}/c`,
        message: `The curve falls back from ${before.c} to ${c} °C. Give the points from cold to hot, heating only.`,
      });
    }
    if (!Number.isFinite(strainPercent) || Math.abs(strainPercent) > LARGEST_PERCENT) {
      issues.push({
        pointer: `${pointer}/${i}/strainPercent`,
        message: `No fired body grows by ${strainPercent} %. Length change is in per cent of the length: 0.30, not 300 or 3000.`,
      });
    }
  });
  const first = curve[0];
  const last = curve.at(-1);
  if (issues.length === 0 && first && last && (first.c > 150 || last.c < 200)) {
    issues.push({
      pointer,
      message: `The curve runs from ${first.c} to ${last.c} °C. It has to begin below 150 °C and reach at least 200 °C.`,
    });
  }
  if (issues.length > 0) throw new ImpossibleValueError(issues);
}

/** What a curve gives: its contraction, its 20–500 °C mean, and what to warn of. */
export interface CurveReading {
  contraction: Contraction;
  meanTo500: number;
  sdShare: number;
  warnings: Notice[];
}

/**
 * Turns a checked dilatometer curve into a strain from 20 °C, by straight lines from point to point sampled every 2.5 °C
 * (a corner that falls between two samples is cut off). Where the first point lies above 20 °C its line goes on down.
 *
 * Above its last point the slope of its last 100 K goes on, though of none below 600 °C: two neighbouring points of a
 * dense run have no slope but their noise. Not so of a curve that ends below 650 °C: its last slope may hold a part of the
 * quartz step, which ends at 575 °C. It goes on as a body of any quartz would of which just the mean from 20 °C to
 * that end is known ({@link scaledMixture}, no cristobalite).
 *
 *     ε(T) = read(T)(1 + s z) up to the end;   above an early end scaledMixture(mean to the end (1 + s z), q, f of any body)
 *
 * s is the doubt as a share of the strain at the last point: ±3 % where none is stated.
 *
 * @param curve - ascending points; length change [% of length]
 * @param plusMinusPercent - half-width of a 90 % interval at the hot end [% of length]
 * @param pointer - JSON Pointer of the curve in the input
 */
export function readCurve(
  curve: readonly CurvePoint[],
  plusMinusPercent: number | undefined,
  pointer: string,
): CurveReading {
  const warnings: Notice[] = [];
  const points = curve.map(({ c, strainPercent }) => [c, strainPercent / 100] as const);
  const zero = readPoints(points, 20);
  const [endC, endStrain] = points.at(-1)!;
  const sdShare =
    plusMinusPercent === undefined
      ? UNSTATED_SHARE / Z90
      : plusMinusPercent / 100 / Z90 / Math.max(Math.abs(endStrain - zero), 1e-6);
  const early = endC < WELL_BEYOND_STEP_C ? goingOn(((endStrain - zero) / (endC - 20)) * 1e6, endC, sdShare) : null;
  const slopeFromC = Math.max(endC - SLOPE_OVER_K, SLOPE_ABOVE_C);
  const slope = (endStrain - readPoints(points, slopeFromC)) / (endC - slopeFromC);
  const table = tabulate(20, 1000, 2.5, (c) => {
    if (c <= endC) return readPoints(points, c) - zero;
    return early ? contractionAt({ contraction: early }, c) : endStrain + slope * (c - endC) - zero;
  });
  const gap = points.findIndex(([c], i) => i > 0 && c - points[i - 1]![0] > WIDE_GAP_C);
  if (gap > 0) {
    warnings.push({
      code: "wide-gap-in-curve",
      message: `Between ${points[gap - 1]![0]} and ${points[gap]![0]} °C the curve has no point; I drew a straight line. A step in between would not show.`,
      pointer: `${pointer}/${gap}`,
    });
  }
  if (endC < QUARTZ_STEP_END_C) {
    warnings.push({
      code: "curve-ends-below-quartz-step",
      message: `The curve ends at ${endC} °C, below the turn of quartz at 573 °C. I added a step of unknown size.`,
      pointer,
    });
  }
  const contraction: Contraction = (c, deviates, out) => {
    early?.(c, deviates, out);
    for (let i = 0; i < c.length; i++) {
      if (!early || c[i]! <= endC) out[i] = readEven(table, c[i]!) * (1 + sdShare * deviates.bodyMean[i]!);
    }
  };
  return { contraction, meanTo500: (readEven(table, 500) / 480) * 1e6, sdShare, warnings };
}

/** A curve beyond an early end: any quartz, its matrix as the mean from 20 °C to that end allows [1e-6/K]. */
function goingOn(mean: number, endC: number, sdShare: number): Contraction {
  const quartz = { ...fromSpan(ANY_BODY.quartzFraction, 0), factor: ANY_BODY.quartzFactor };
  return scaledMixture({ value: mean, sd: mean * sdShare, rangeC: [20, endC] }, quartz, { value: 0, sd: 0 });
}
