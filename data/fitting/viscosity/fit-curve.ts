/** Fits one viscosity curve a glass, its parameters sums of terms, to all points at once. @module */
import { myegaAt } from "../../../api/engine/glass/myega.ts";
import { columnScales, type Design } from "../../../api/engine/numeric/least-squares.ts";
import { NormalEquations } from "../../../api/engine/numeric/normal-equations.ts";
import type { Point } from "./points.ts";

/** How viscosity points are weighed. */
export const NOISE = {
  /** Scatter of a measured log10 viscosity [-]. */
  logSd: 0.08,
  /** Scatter of a measured temperature [K]: counts most where the curve is steep. */
  temperatureSdK: 8,
} as const;

/** Coefficients of the curve. */
export interface CurveFit {
  /** Of T12 [K]. */
  t12: Float64Array;
  /** Of ln fragility. */
  fragility: Float64Array;
  limit: number;
}

/** Tables of terms, one row a glass. */
export interface CurveTables {
  t12: Design;
  fragility: Design;
  points: readonly Point[];
  /** Publication of each glass. */
  publications: readonly number[];
}

/** T12 and fragility never leave what silicate glasses have shown (from memory). */
export const T12_RANGE_K: [number, number] = [400, 1400];
export const LN_FRAGILITY_RANGE: [number, number] = [2.5, 4.8];

const RIDGE = 1e-4;
const SMALLEST = 0.004;
const THRESHOLD = 1.5;
/** Units in which the penalty measures coefficients: 50 K for T12, a fifth for ln fragility. */
const UNIT = { t12: 50, fragility: 0.2 };

/** Curve of one glass. */
export function curveOf(fit: CurveFit, tables: CurveTables, row: number) {
  const t12K = clamp(dot(tables.t12, row, fit.t12), T12_RANGE_K);
  const fragility = Math.exp(clamp(dot(tables.fragility, row, fit.fragility), LN_FRAGILITY_RANGE));
  return { limit: fit.limit, t12K, fragility };
}

/** Scatter to expect of a point where the curve has this slope [log10 Pa·s]. */
export function noiseAt(slope: number): number {
  return Math.hypot(NOISE.logSd, NOISE.temperatureSdK * slope);
}

/**
 * Gauss–Newton with Huber weights and publications weighed by their scatter.
 * @param use - places of the points to fit
 * @param rounds - number of rounds
 * @param start - fit to start from
 */
export function fitCurve(tables: CurveTables, use: readonly number[], rounds: number, start?: CurveFit): CurveFit {
  const { points, publications } = tables;
  const nT = tables.t12.columns;
  const nF = tables.fragility.columns;
  const n = nT + nF + 1;
  const scales = { t12: columnScales(tables.t12, SMALLEST), fragility: columnScales(tables.fragility, SMALLEST) };
  let fit: CurveFit = start ?? { t12: first(nT, 900), fragility: first(nF, Math.log(36)), limit: -2.5 };
  const row = new Float64Array(n);
  const ones = new Float64Array(n).fill(1);
  for (let round = 0; round < rounds; round++) {
    const standardised = use.map((at) => {
      const point = points[at]!;
      const curve = myegaAt(curveOf(fit, tables, point.row), point.temperatureK);
      return (point.logViscosity - curve.logViscosity) / noiseAt(curve.slope);
    });
    const trust =
      round < 2 && !start
        ? () => 1
        : trustOf(
            use.map((at) => publications[points[at]!.row]!),
            standardised,
          );
    const equations = new NormalEquations(n);
    use.forEach((at, k) => {
      const point = points[at]!;
      const glass = curveOf(fit, tables, point.row);
      const curve = myegaAt(glass, point.temperatureK);
      const noise = noiseAt(curve.slope);
      fill(row, 0, tables.t12, point.row, scales.t12, (UNIT.t12 * curve.byT12) / noise);
      const byLog = (UNIT.fragility * curve.byFragility * glass.fragility) / noise;
      fill(row, nT, tables.fragility, point.row, scales.fragility, byLog);
      row[n - 1] = curve.byLimit / noise;
      const miss = standardised[k]!;
      equations.add(row, 0, ones, trust(k) * Math.min(1, THRESHOLD / Math.max(Math.abs(miss), 1e-9)), miss);
    });
    fit = step(fit, equations, scales);
  }
  return fit;
}

/** One step; the penalty pulls the coefficients, not the step, towards 0, constants excepted. */
function step(
  fit: CurveFit,
  equations: NormalEquations,
  scales: { t12: Float64Array; fragility: Float64Array },
): CurveFit {
  const nT = fit.t12.length;
  const n = nT + fit.fragility.length + 1;
  const penalty = new Float64Array(n).fill(RIDGE * equations.total);
  penalty[0] = 1e-12 * equations.total;
  penalty[nT] = 1e-12 * equations.total;
  penalty[n - 1] = 1e-6 * equations.total;
  const centre = new Float64Array(n);
  for (let j = 1; j < nT; j++) centre[j] = (-fit.t12[j]! * scales.t12[j]!) / UNIT.t12;
  for (let j = 1; j < n - 1 - nT; j++) centre[nT + j] = (-fit.fragility[j]! * scales.fragility[j]!) / UNIT.fragility;
  const change = equations.solve(penalty, centre);
  return {
    t12: fit.t12.map((b, j) => b + (change[j]! * UNIT.t12) / scales.t12[j]!),
    fragility: fit.fragility.map((b, j) => b + (change[nT + j]! * UNIT.fragility) / scales.fragility[j]!),
    limit: clamp(fit.limit + change[n - 1]!, [-4, -1.5]),
  };
}

/** Weight of a point by its publication: ordinary scatter over the publication's, shrunk by three imagined points. */
function trustOf(publications: readonly number[], standardised: readonly number[]): (k: number) => number {
  const sums = new Map<number, { sum: number; n: number }>();
  publications.forEach((publication, k) => {
    const entry = sums.get(publication) ?? { sum: 0, n: 0 };
    entry.sum += Math.min(Math.abs(standardised[k]!), 6) ** 2;
    entry.n++;
    sums.set(publication, entry);
  });
  return (k) => {
    const { sum, n } = sums.get(publications[k]!)!;
    return Math.sqrt((n + 3) / (sum + 3));
  };
}

function fill(row: Float64Array, from: number, table: Design, at: number, scale: Float64Array, factor: number): void {
  for (let j = 0, k = at * table.columns; j < table.columns; j++, k++) {
    row[from + j] = (factor * table.values[k]!) / scale[j]!;
  }
}

function dot(table: Design, row: number, coefficients: Float64Array): number {
  let sum = 0;
  for (let j = 0, at = row * table.columns; j < table.columns; j++, at++) sum += table.values[at]! * coefficients[j]!;
  return sum;
}

function first(n: number, value: number): Float64Array {
  const start = new Float64Array(n);
  start[0] = value;
  return start;
}

function clamp(value: number, [low, high]: readonly [number, number]): number {
  return Math.min(Math.max(value, low), high);
}
