/** A body known by its dilatometer curve. @module */
import { ImpossibleValueError, type Issue, type Notice } from "../errors.ts";
import { readEven, readPoints, tabulate } from "../numeric/interpolate.ts";
import { type Contraction, Z90 } from "./body-model.ts";
import { ANY_BODY } from "./classes.ts";
import { QUARTZ_STRAIN } from "./phases.ts";
import type { CurvePoint } from "./types.ts";

/** Half-width of a 90 % interval of a curve whose doubt is not told: a share of its reading [-] (common practice, no source). */
const UNSTATED_SHARE = 0.03;
const QUARTZ_STEP_END_C = 575;
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
 * Above its last point the last slope goes on; of a curve that ends between 560 and 650 °C half of its mean slope from
 * 20 °C, since the last slope holds the quartz step. If it ends below that step, at 575 °C, an unknown one is added with
 * the doubt of any body:
 *
 *     ε(T) = read(T)(1 + s z) + q f [Q(T) − Q(end)],   q, f of any body, Q the strain of quartz
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
  const [beforeC, beforeStrain] = points.at(-2)!;
  // A slope taken across the quartz step must not be carried on above it.
  const slope =
    endC > 560 && endC < 650 ? (endStrain - zero) / (endC - 20) / 2 : (endStrain - beforeStrain) / (endC - beforeC);
  const table = tabulate(
    20,
    1000,
    2.5,
    (c) => (c <= endC ? readPoints(points, c) : endStrain + slope * (c - endC)) - zero,
  );
  const unseenStep = endC < QUARTZ_STEP_END_C ? { from: endC, ...quartzUnknown } : null;
  const gap = points.findIndex(([c], i) => i > 0 && c - points[i - 1]![0] > WIDE_GAP_C);
  if (gap > 0) {
    warnings.push({
      code: "wide-gap-in-curve",
      message: `Between ${points[gap - 1]![0]} and ${points[gap]![0]} °C the curve has no point; I drew a straight line. A step in between would not show.`,
      pointer: `${pointer}/${gap}`,
    });
  }
  if (unseenStep) {
    warnings.push({
      code: "curve-ends-below-quartz-step",
      message: `The curve ends at ${endC} °C, below the turn of quartz at 573 °C. I added a step of unknown size.`,
      pointer,
    });
  }
  const sdShare =
    plusMinusPercent === undefined
      ? UNSTATED_SHARE / Z90
      : plusMinusPercent / 100 / Z90 / Math.max(Math.abs(endStrain - zero), 1e-6);
  const contraction: Contraction = (c, { bodyMean, bodyQuartz }, out) => {
    for (let i = 0; i < c.length; i++) {
      const seen = readEven(table, c[i]!) * (1 + sdShare * bodyMean[i]!);
      out[i] = seen;
      if (!unseenStep || c[i]! <= unseenStep.from) continue;
      const q = Math.max(unseenStep.value + unseenStep.sd * bodyQuartz[i]!, 0);
      const step = readEven(QUARTZ_STRAIN, c[i]!) - readEven(QUARTZ_STRAIN, unseenStep.from);
      out[i] = seen + q * ANY_BODY.quartzFactor * step;
    }
  };
  return { contraction, meanTo500: (readEven(table, 500) / 480) * 1e6, sdShare, warnings };
}

const quartzUnknown = {
  value: (ANY_BODY.quartzFraction[0] + ANY_BODY.quartzFraction[1]) / 2,
  sd: (ANY_BODY.quartzFraction[1] - ANY_BODY.quartzFraction[0]) / 2 / Z90,
};
