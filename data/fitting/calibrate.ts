/** Turns errors on unseen publications into a scale, a shape and a coverage table. @module */
import type { IntervalFigures, SpreadFile } from "../../api/engine/glass/model-file.ts";
import { MODEL_OXIDES } from "../../api/engine/glass/oxides.ts";
import { type Design, huberFit } from "../../api/engine/numeric/least-squares.ts";
import { quantile } from "./accuracy.ts";
import { predictRow } from "./design.ts";

/** The scale's figures, without the factor that makes leverages. */
export type Scale = Omit<SpreadFile, "leverageFactor">;

/** Entries in the table of standardised residuals. */
const SHAPE = 64;

/** One row each: 1, oxides but silica, ln leverage. */
export function spreadDesign(compositions: readonly Float64Array[], leverages: Float64Array): Design {
  const columns = MODEL_OXIDES.length + 1;
  const values = new Float64Array(compositions.length * columns);
  compositions.forEach((x, i) => {
    values.set(x, i * columns);
    values[i * columns] = 1;
    values[(i + 1) * columns - 1] = Math.log(leverages[i]!);
  });
  return { rows: compositions.length, columns, values };
}

/**
 * Fits ln |error| to the oxides and the leverage.
 * @param floor - errors below this count as this: print's rounding says nothing about the model
 */
export function fitScale(design: Design, errors: ArrayLike<number>, floor: number): Scale {
  const logs = Float64Array.from(errors, (e) => Math.log(Math.max(Math.abs(e), floor)));
  const { coefficients } = huberFit(design, logs, { threshold: 1.5, ridge: 1e-3 });
  const fitted = Array.from({ length: design.rows }, (_, i) => predictRow(design, i, coefficients));
  return {
    base: coefficients[0]!,
    slopes: Object.fromEntries(MODEL_OXIDES.slice(1).map((oxide, i) => [oxide, coefficients[i + 1]!])),
    leverageSlope: coefficients[design.columns - 1]!,
    limits: [quantile(fitted, 0.01), quantile(fitted, 0.99)],
  };
}

/** Scale of one row of a spread design. */
export function scaleOfRow(design: Design, row: number, scale: Scale): number {
  const at = row * design.columns;
  let log = scale.base + scale.leverageSlope * design.values[at + design.columns - 1]!;
  for (let j = 1; j < MODEL_OXIDES.length; j++) log += scale.slopes[MODEL_OXIDES[j]!]! * design.values[at + j]!;
  return Math.exp(Math.min(Math.max(log, scale.limits[0]), scale.limits[1]));
}

/** Quantiles of measured minus predicted, in units of the scale, at probabilities (i + 0.5)/64. */
export function shapeOf(standardised: readonly number[]): number[] {
  return Array.from({ length: SHAPE }, (_, i) => quantile(standardised, (i + 0.5) / SHAPE));
}

/** One unseen row with the interval that was stated for it. */
export interface Stated {
  /** Measured minus predicted. */
  miss: number;
  low: number;
  high: number;
}

/** How often stated intervals held, overall and in each quarter of stated width. */
export function coverage(domain: string, stated: readonly Stated[]): IntervalFigures[] {
  const sorted = [...stated].sort((a, b) => a.high - a.low - (b.high - b.low));
  const quarters = ["narrowest", "second", "third", "widest"].map((quarter, i) => ({
    quarter,
    rows: sorted.slice(Math.floor((i * sorted.length) / 4), Math.floor(((i + 1) * sorted.length) / 4)),
  }));
  return [{ quarter: "all", rows: sorted }, ...quarters].map(({ quarter, rows }) => ({
    domain,
    quarter,
    n: rows.length,
    held: Number((rows.filter((r) => r.miss >= r.low && r.miss <= r.high).length / rows.length).toFixed(3)),
    medianHalfWidth: medianHalfWidth(rows),
  }));
}

function medianHalfWidth(rows: readonly Stated[]): number {
  const halves = rows.map((row) => (row.high - row.low) / 2);
  return Number(quantile(halves, 0.5).toPrecision(3));
}
