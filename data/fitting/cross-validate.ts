/** Errors on publications left out of the fit. @module */
import { leverageOf } from "../../api/engine/glass/spread.ts";
import type { Design } from "../../api/engine/numeric/least-squares.ts";
import { pickRows, predictRow } from "./design.ts";
import { FOLDS } from "./folds.ts";
import { leverageFactor } from "./leverage.ts";
import { type TrustOptions, trustedFit } from "./trusted-fit.ts";

/** What a fit needs to know about its rows. */
export interface FitTable {
  design: Design;
  target: Float64Array;
  publications: readonly number[];
  folds: readonly number[];
  compositions: readonly Float64Array[];
}

/** One value a row, from the fit that had not seen it. */
export interface HeldOut {
  /** Predicted minus measured, in the property's unit. */
  errors: Float64Array;
  /** Leverage of the row among the rows fitted [-]. */
  leverages: Float64Array;
}

/** Rows of a table outside one fold. */
export function rowsWithout(table: FitTable, fold: number): number[] {
  return table.folds.flatMap((f, i) => (f === fold ? [] : [i]));
}

/** Fits all folds but one. */
export function fitWithout(table: FitTable, fold: number, options: TrustOptions) {
  const train = rowsWithout(table, fold);
  return trustedFit(
    pickRows(table.design, train),
    Float64Array.from(train, (i) => table.target[i]!),
    train.map((i) => table.publications[i]!),
    options,
  );
}

/** Leaves out each fold in turn. */
export function crossValidate(table: FitTable, options: TrustOptions): HeldOut {
  const errors = new Float64Array(table.target.length);
  const leverages = new Float64Array(table.target.length);
  for (let fold = 0; fold < FOLDS; fold++) {
    const { coefficients } = fitWithout(table, fold, options);
    const factor = leverageFactor(rowsWithout(table, fold).map((i) => table.compositions[i]!));
    table.folds.forEach((f, i) => {
      if (f !== fold) return;
      errors[i] = predictRow(table.design, i, coefficients) - table.target[i]!;
      leverages[i] = leverageOf(factor, table.compositions[i]!);
    });
  }
  return { errors, leverages };
}
