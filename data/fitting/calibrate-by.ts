/** Scale, shape and coverage of a set of held-out errors. @module */
import type { IntervalFigures } from "../../api/engine/glass/model-file.ts";
import { quantileOf } from "../../api/engine/quantity.ts";
import { coverage, fitScale, type Scale, scaleOfRow, shapeOf, spreadDesign } from "./calibrate.ts";
import { pickRows } from "./design.ts";
import { DOMAINS, inDomain } from "./domains.ts";
import { FOLDS } from "./folds.ts";

/** What the held-out errors say about the doubt. */
export interface Calibration {
  scale: Scale;
  shape: number[];
  /** Coverage, with scale and shape taken from the other folds only. */
  intervals: IntervalFigures[];
}

/**
 * Fits scale and shape to all held-out errors, and checks the way of doing so fold by fold.
 * The shape is taken from glazes, which is what it will be used on.
 * @param compositions - one a row
 * @param folds - fold of each row
 * @param errors - predicted minus measured, held out
 * @param leverages - held out
 * @param floor - errors below this count as this
 */
export function calibrateBy(
  compositions: readonly Float64Array[],
  folds: readonly number[],
  errors: Float64Array,
  leverages: Float64Array,
  floor: number,
): Calibration {
  const design = spreadDesign(compositions, leverages);
  const glaze = compositions.map((x) => inDomain("glaze", x));
  const from = (use: (i: number) => boolean): { scale: Scale; shape: number[] } => {
    const places = folds.flatMap((_, i) => (use(i) ? [i] : []));
    const seen = places.map((i) => errors[i]!);
    const scale = fitScale(pickRows(design, places), seen, floor);
    const shape = shapeOf(places.filter((i) => glaze[i]).map((i) => -errors[i]! / scaleOfRow(design, i, scale)));
    return { scale, shape };
  };
  const perFold = Array.from({ length: FOLDS }, (_, fold) => from((i) => folds[i] !== fold));
  const intervals = DOMAINS.flatMap((domain) =>
    coverage(
      domain,
      compositions.flatMap((x, i) => {
        if (!inDomain(domain, x)) return [];
        const { scale, shape } = perFold[folds[i]!]!;
        const estimate = { value: 0, scale: scaleOfRow(design, i, scale), shape };
        return { miss: -errors[i]!, low: quantileOf(estimate, 0.05), high: quantileOf(estimate, 0.95) };
      }),
    ),
  );
  return { ...from(() => true), intervals };
}
