/** Fits one property from rows to model file. @module */
import type { IntervalFigures, ModelFile } from "../../api/engine/glass/model-file.ts";
import { MODEL_OXIDES } from "../../api/engine/glass/oxides.ts";
import { quantileOf } from "../../api/engine/quantity.ts";
import { accuracyOf, quantile } from "./accuracy.ts";
import { coverage, fitScale, type Scale, scaleOfRow, shapeOf, spreadDesign } from "./calibrate.ts";
import { crossValidate, type FitTable, type HeldOut } from "./cross-validate.ts";
import { designOf, pickRows, quantityRows } from "./design.ts";
import { DOMAINS, inDomain } from "./domains.ts";
import { FOLDS, foldsOf } from "./folds.ts";
import { leverageFactor } from "./leverage.ts";
import type { GlassRow } from "./read-glasses.ts";
import { type Spec, TERMS } from "./specs.ts";
import { trustedFit } from "./trusted-fit.ts";

/** Rows, model and errors of one property. */
export interface FittedProperty {
  spec: Spec;
  rows: GlassRow[];
  heldOut: HeldOut;
  model: ModelFile;
}

/** Rows on which a property was measured and is believable. */
export function rowsFor(spec: Spec, glasses: readonly GlassRow[]): GlassRow[] {
  return glasses.filter((glass) => {
    const value = glass.measured[spec.column];
    return value !== undefined && value >= spec.plausible[0] && value <= spec.plausible[1];
  });
}

/** The table that both the fit and its checks work on. */
export function tableOf(spec: Spec, rows: readonly GlassRow[]): FitTable {
  const compositions = rows.map((row) => row.x);
  return {
    design: designOf(quantityRows(compositions), TERMS),
    target: Float64Array.from(rows, (row) => row.measured[spec.column]!),
    publications: rows.map((row) => row.publication),
    folds: foldsOf(rows, spec.column),
    compositions,
  };
}

/** Fits, validates and calibrates. */
export function fitProperty(spec: Spec, glasses: readonly GlassRow[]): FittedProperty {
  const rows = rowsFor(spec, glasses);
  const table = tableOf(spec, rows);
  const heldOut = crossValidate(table, spec);
  const whole = trustedFit(table.design, table.target, table.publications, spec);
  const { scale, shape, intervals } = calibrate(spec, table, heldOut);
  const model: ModelFile = {
    title: spec.title,
    property: spec.property,
    unit: spec.unit,
    rangeC: spec.rangeC,
    licence: "Fitted to glasses from SciGlass, Copyright (c) 2019 EPAM Systems, Open Database License 1.0.",
    method:
      "Huber regression on mole fractions, charge-balance terms and products of oxides, careful publications trusted more.",
    intercept: figure(whole.coefficients[0]!),
    terms: Object.fromEntries(TERMS.map((term, i) => [term, figure(whole.coefficients[i + 1]!)])),
    spread: {
      base: figure(scale.base, 5),
      slopes: Object.fromEntries(Object.entries(scale.slopes).map(([oxide, slope]) => [oxide, figure(slope, 4)])),
      leverageSlope: figure(scale.leverageSlope, 4),
      leverageFactor: [...leverageFactor(table.compositions)].map((v) => figure(v, 5)),
      limits: [figure(scale.limits[0], 5), figure(scale.limits[1], 5)],
    },
    shape: shape.map((z) => figure(z, 4)),
    training: {
      rows: rows.length,
      publications: new Set(table.publications).size,
      rangesMolePercent: trainingRanges(rows),
      settings: { folds: FOLDS, threshold: spec.threshold, ridge: spec.ridge, ordinaryScatter: spec.ordinaryScatter },
    },
    heldOut: Object.fromEntries(
      DOMAINS.map((domain) => [domain, accuracyOf([...heldOut.errors].filter((_, i) => inDomain(domain, rows[i]!.x)))]),
    ),
    glazeFolds: Array.from({ length: FOLDS }, (_, fold) => accuracyOf(glazeErrors(table, heldOut.errors, fold))),
    intervals,
    sources: ["sciglass-2019"],
  };
  return { spec, rows, heldOut, model };
}

/** Errors of the glazes in one fold. */
export function glazeErrors(table: FitTable, errors: ArrayLike<number>, fold: number): number[] {
  return table.folds.flatMap((f, i) => (f === fold && inDomain("glaze", table.compositions[i]!) ? errors[i]! : []));
}

/** Scale and shape from all held-out errors; coverage with both taken from the other folds only. */
function calibrate(spec: Spec, table: FitTable, { errors, leverages }: HeldOut) {
  const design = spreadDesign(table.compositions, leverages);
  const glaze = table.compositions.map((x) => inDomain("glaze", x));
  const from = (use: (i: number) => boolean): { scale: Scale; shape: number[] } => {
    const places = table.folds.flatMap((_, i) => (use(i) ? [i] : []));
    const seen = places.map((i) => errors[i]!);
    const scale = fitScale(pickRows(design, places), seen, spec.threshold / 10);
    const shape = shapeOf(places.filter((i) => glaze[i]).map((i) => -errors[i]! / scaleOfRow(design, i, scale)));
    return { scale, shape };
  };
  const perFold = Array.from({ length: FOLDS }, (_, fold) => from((i) => table.folds[i] !== fold));
  const intervals: IntervalFigures[] = DOMAINS.flatMap((domain) =>
    coverage(
      domain,
      table.compositions.flatMap((x, i) => {
        if (!inDomain(domain, x)) return [];
        const { scale, shape } = perFold[table.folds[i]!]!;
        const estimate = { value: 0, scale: scaleOfRow(design, i, scale), shape };
        return { miss: -errors[i]!, low: quantileOf(estimate, 0.05), high: quantileOf(estimate, 0.95) };
      }),
    ),
  );
  return { ...from(() => true), intervals };
}

/** Central 99.8 % of the rows, so that one odd sample does not stretch a limit [mol %]. */
function trainingRanges(rows: readonly GlassRow[]): Record<string, [number, number]> {
  return Object.fromEntries(
    MODEL_OXIDES.map((oxide, i) => {
      const shares = rows.map((row) => 100 * row.x[i]!);
      return [oxide, [figure(quantile(shares, 0.001), 4), figure(quantile(shares, 0.999), 4)]];
    }),
  );
}

function figure(value: number, digits = 7): number {
  return Number(value.toPrecision(digits)) + 0;
}
