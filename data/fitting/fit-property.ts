/** Fits one property from rows to model file. @module */
import type { ModelFile } from "../../api/engine/glass/model-file.ts";
import { accuracyOf } from "./accuracy.ts";
import { betweenPapers } from "./between-papers.ts";
import { calibrateBy } from "./calibrate-by.ts";
import { crossValidate, type FitTable, type HeldOut } from "./cross-validate.ts";
import { designOf, quantityRows } from "./design.ts";
import { DOMAINS, inDomain } from "./domains.ts";
import { FOLDS, foldsOf } from "./folds.ts";
import { leverageFactor } from "./leverage.ts";
import { figure, spreadFile, trainingRanges } from "./model-figures.ts";
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
    folds: foldsOf(rows, [spec.column]),
    compositions,
  };
}

/** Fits, validates and calibrates. */
export function fitProperty(spec: Spec, glasses: readonly GlassRow[]): FittedProperty {
  const rows = rowsFor(spec, glasses);
  const table = tableOf(spec, rows);
  const heldOut = crossValidate(table, spec);
  const whole = trustedFit(table.design, table.target, table.publications, spec);
  const { scale, shape, intervals } = calibrateBy(
    table.compositions,
    table.folds,
    heldOut.errors,
    heldOut.leverages,
    spec.threshold / 10,
  );
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
    spread: spreadFile(scale, leverageFactor(table.compositions)),
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
    betweenPapers: betweenPapers(rows, spec.column),
    sources: ["sciglass-2019"],
  };
  return { spec, rows, heldOut, model };
}

/** Errors of the glazes in one fold. */
export function glazeErrors(table: FitTable, errors: ArrayLike<number>, fold: number): number[] {
  return table.folds.flatMap((f, i) => (f === fold && inDomain("glaze", table.compositions[i]!) ? errors[i]! : []));
}
