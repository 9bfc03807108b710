/** Every viscosity measurement as a point: a temperature and a viscosity. @module */
import { foldsOf } from "../folds.ts";
import type { GlassRow } from "../read-glasses.ts";

/** Columns of temperatures at a viscosity, and of viscosities at a temperature. */
export const ISOKOMS = [3, 4, 5, 6, 7, 8, 9, 10, 11, 12] as const;
export const ISOTHERMS = [800, 900, 1000, 1100, 1200, 1300, 1400] as const;

/** Whether a column holds temperatures at a viscosity, and not viscosities at a temperature. */
export function isIsokom(column: string): boolean {
  return column.startsWith("t_log");
}

/** One measurement of one glass. */
export interface Point {
  /** Place of the glass among the rows. */
  row: number;
  /** Column of glasses.csv. */
  column: string;
  temperatureK: number;
  /** log10 of the viscosity [Pa·s]. */
  logViscosity: number;
}

/** Glasses with any viscosity, their points, and folds by publication with reprints together. */
export function viscosityPoints(glasses: readonly GlassRow[]) {
  const columns = [...ISOKOMS.map((v) => `t_log${v}`), ...ISOTHERMS.map((t) => `log_visc_${t}`)];
  const rows = glasses.filter((glass) => columns.some((column) => glass.measured[column] !== undefined));
  const points: Point[] = [];
  rows.forEach(({ measured }, row) => {
    const add = (column: string, temperatureK: number, logViscosity: number) => {
      // Beyond these no silicate melt is measured: misprints.
      if (temperatureK < 550 || temperatureK > 2100 || logViscosity < -1.5 || logViscosity > 14) return;
      points.push({ row, column, temperatureK, logViscosity });
    };
    for (const v of ISOKOMS) {
      const t = measured[`t_log${v}`];
      if (t !== undefined) add(`t_log${v}`, t + 273.15, v);
    }
    for (const t of ISOTHERMS) {
      const v = measured[`log_visc_${t}`];
      if (v !== undefined) add(`log_visc_${t}`, t + 273.15, v);
    }
  });
  return { rows, points, folds: foldsOf(rows, columns) };
}
