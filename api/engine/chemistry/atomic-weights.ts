/** Standard atomic weights, the ground every mass here stands on. @module */
import table from "../../../data/atomic-weights.json" with { type: "json" };

/**
 * Abridged standard atomic weights [g/mol] by element symbol.
 * Source: ciaaw-2021 (T. Prohaska et al., Pure Appl. Chem. 94 (2022) 573–600, doi:10.1515/pac-2019-0603).
 * @example ATOMIC_WEIGHTS.get("Si") // 28.085
 */
export const ATOMIC_WEIGHTS: ReadonlyMap<string, number> = new Map(
  Object.entries(table.values).map(([symbol, row]) => [symbol, row.value]),
);
