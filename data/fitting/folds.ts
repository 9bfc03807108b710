/** Deals publications into folds, reprints with their originals. @module */
import type { GlassRow } from "./read-glasses.ts";

/** Number of folds. */
export const FOLDS = 10;

/**
 * Fold of each row. A publication's rows stay together, since a whole series may sit high or low. So do publications
 * that print the same value for the same glass: the data hold many reprints, and a model that has seen the reprint
 * has seen the row.
 * @param rows - measured glasses
 * @param columns - properties whose equal values mark a reprint
 * @returns fold of each row, 0 to FOLDS − 1
 */
export function foldsOf(rows: readonly GlassRow[], columns: readonly string[]): number[] {
  const parent = new Map<number, number>();
  const root = (publication: number): number => {
    let at = publication;
    while ((parent.get(at) ?? at) !== at) at = parent.get(at)!;
    return at;
  };
  const seen = new Map<string, number>();
  for (const row of rows) {
    const composition = row.x.map((v) => Math.round(v * 1000)).join();
    for (const column of columns) {
      const value = row.measured[column];
      if (value === undefined) continue;
      const key = `${composition} ${column} ${value.toPrecision(3)}`;
      const earlier = seen.get(key);
      if (earlier === undefined) seen.set(key, row.publication);
      else if (root(earlier) !== root(row.publication)) parent.set(root(row.publication), root(earlier));
    }
  }
  // Multiplicative hashing parts neighbouring numbers.
  return rows.map((row) => (Math.imul(root(row.publication), 0x9e3779b1) >>> 16) % FOLDS);
}
