/** Fits, validates and calibrates the viscosity of glasses. @module */
import type { ViscosityFile } from "../../../api/engine/glass/model-file.ts";
import { myegaAt, myegaTemperature } from "../../../api/engine/glass/myega.ts";
import { leverageOf } from "../../../api/engine/glass/spread.ts";
import { accuracyOf } from "../accuracy.ts";
import { calibrateBy } from "../calibrate-by.ts";
import { designOf, quantityRows } from "../design.ts";
import { inDomain } from "../domains.ts";
import { FOLDS } from "../folds.ts";
import { leverageFactor } from "../leverage.ts";
import { figure, spreadFile, trainingRanges } from "../model-figures.ts";
import type { GlassRow } from "../read-glasses.ts";
import { GROUP_TERMS, TERMS } from "../specs.ts";
import {
  type CurveFit,
  type CurveTables,
  curveOf,
  fitCurve,
  LN_FRAGILITY_RANGE,
  NOISE,
  noiseAt,
  T12_RANGE_K,
} from "./fit-curve.ts";
import { isIsokom, type Point, viscosityPoints } from "./points.ts";

/** Rounds of the whole fit, and of each fold's from there. */
const ROUNDS = { whole: 10, fold: 3 };

/** Points, model and errors of the viscosity. */
export interface FittedViscosity {
  rows: readonly GlassRow[];
  points: readonly Point[];
  /** Predicted minus measured of each point, held out: K for isokoms, log10 for isotherms. */
  errors: Float64Array;
  /** The same in units of the scatter of a point [-]. */
  standardised: Float64Array;
  model: ViscosityFile;
}

/** Viscosity fitted to all isokoms and isotherms together, with errors from publications left out. */
export function fitViscosity(glasses: readonly GlassRow[]): FittedViscosity {
  const { rows, points, folds } = viscosityPoints(glasses);
  const compositions = rows.map((row) => row.x);
  const quantities = quantityRows(compositions);
  const tables: CurveTables = {
    t12: designOf(quantities, TERMS),
    fragility: designOf(quantities, GROUP_TERMS),
    points,
    publications: rows.map((row) => row.publication),
  };
  const places = points.map((_, i) => i);
  const whole = fitCurve(tables, places, ROUNDS.whole);
  const errors = new Float64Array(points.length);
  const standardised = new Float64Array(points.length);
  const leverages = new Float64Array(points.length);
  for (let fold = 0; fold < FOLDS; fold++) {
    const train = places.filter((i) => folds[points[i]!.row] !== fold);
    const fit = fitCurve(tables, train, ROUNDS.fold, whole);
    const factor = leverageFactor(compositions.filter((_, row) => folds[row] !== fold));
    for (const i of places) {
      const { row, column, temperatureK, logViscosity } = points[i]!;
      if (folds[row] !== fold) continue;
      const glass = curveOf(fit, tables, row);
      const curve = myegaAt(glass, temperatureK);
      const miss = curve.logViscosity - logViscosity;
      errors[i] = isIsokom(column) ? myegaTemperature(glass, logViscosity).value - temperatureK : miss;
      standardised[i] = miss / noiseAt(curve.slope);
      leverages[i] = leverageOf(factor, compositions[row]!);
    }
  }
  const pointCompositions = points.map((point) => compositions[point.row]!);
  const pointFolds = points.map((point) => folds[point.row]!);
  const { scale, shape, intervals } = calibrateBy(pointCompositions, pointFolds, standardised, leverages, 0.1);
  const model: ViscosityFile = {
    title: "Viscosity of silicate glasses and melts",
    property: "log10 of the viscosity against temperature, one curve a glass",
    unit: "log10(Pa·s)",
    form: "log10 η = A + (12 − A) u exp[(m/(12 − A) − 1)(u − 1)], u = T12/T in K",
    licence: "Fitted to glasses from SciGlass, Copyright (c) 2019 EPAM Systems, Open Database License 1.0.",
    method: "Gauss–Newton on all isokoms and isotherms together, Huber weights, careful publications trusted more.",
    limit: figure(whole.limit),
    t12K: { ...sumFile(whole.t12, TERMS), range: T12_RANGE_K },
    lnFragility: { ...sumFile(whole.fragility, GROUP_TERMS), range: LN_FRAGILITY_RANGE },
    noise: NOISE,
    spread: spreadFile(scale, leverageFactor(compositions)),
    shape: shape.map((z) => figure(z, 4)),
    training: {
      points: points.length,
      rows: rows.length,
      publications: new Set(rows.map((row) => row.publication)).size,
      rangesMolePercent: trainingRanges(rows),
    },
    heldOut: scoreColumns(
      points.map((point) => point.column),
      pointCompositions,
      errors,
    ),
    intervals,
    sources: ["sciglass-2019", "myega-2009"],
  };
  return { rows, points, errors, standardised, model };
}

/** Errors among glazes, column by column: temperatures in K for isokoms, log10 for isotherms. */
function scoreColumns(columns: readonly string[], compositions: readonly Float64Array[], errors: Float64Array) {
  const glaze = compositions.map((x) => inDomain("glaze", x));
  return Object.fromEntries(
    [...new Set(columns)].map((column) => [
      column,
      accuracyOf([...errors].filter((_, i) => columns[i] === column && glaze[i])),
    ]),
  );
}

function sumFile(coefficients: CurveFit["t12"], terms: readonly string[]) {
  return {
    intercept: figure(coefficients[0]!),
    terms: Object.fromEntries(terms.map((term, i) => [term, figure(coefficients[i + 1]!)])),
  };
}
