/** Finds the measured glasses closest to a composition. @module */
import { MODEL_OXIDES } from "../oxides.ts";
import type { RowTable } from "./row-table.ts";

const N = MODEL_OXIDES.length;

/**
 * Weight of each oxide in the distance: what moves expansion most counts most, silica, which follows from the rest,
 * least; the others count 1. A choice, no source.
 */
const WEIGHT = MODEL_OXIDES.map((oxide) => {
  if (oxide === "SiO2") return 0.4;
  if (oxide === "Li2O" || oxide === "Na2O" || oxide === "K2O") return 1.5;
  return 1;
});
/** Order of comparison: the oxides that differ most between glasses first, so that far rows are dropped early. */
const ORDER = Int32Array.from(
  ["SiO2", "Na2O", "CaO", "B2O3", "Al2O3", "K2O", "PbO", "MgO", "BaO", "ZnO", "Li2O", "SrO", "TiO2", "ZrO2"]
    .map((oxide) => (MODEL_OXIDES as readonly string[]).indexOf(oxide))
    .concat(MODEL_OXIDES.flatMap((_, i) => (i >= 14 ? i : []))),
);
const SQUARED = Float64Array.from(ORDER, (i) => WEIGHT[i]! ** 2);

/** A row and how far it lies. */
export interface Hit {
  row: number;
  /** Weighted distance [mol %]. */
  distance: number;
}

/**
 * The closest rows, nearest first; ties by place in the table.
 * @param table - measured glasses
 * @param x - mole fractions in the order of MODEL_OXIDES
 * @param count - how many
 * @param measured - rows where this is NaN are passed over; all rows if left out
 */
export function nearestRows(table: RowTable, x: Float64Array, count: number, measured?: Float32Array): Hit[] {
  const at = x.map((share) => 100 * share);
  const { molePercent } = table;
  const hits: Hit[] = [];
  let worst = Number.POSITIVE_INFINITY;
  for (let row = 0; row < table.count; row++) {
    if (measured && Number.isNaN(measured[row]!)) continue;
    const base = row * N;
    let d2 = 0;
    for (let k = 0; k < N && d2 < worst; k++) {
      const i = ORDER[k]!;
      const d = molePercent[base + i]! - at[i]!;
      d2 += SQUARED[k]! * d * d;
    }
    if (d2 >= worst) continue;
    // Insertion into a short sorted list.
    let place = hits.length;
    while (place > 0 && hits[place - 1]!.distance > d2) place--;
    hits.splice(place, 0, { row, distance: d2 });
    if (hits.length > count) hits.pop();
    if (hits.length === count) worst = hits[count - 1]!.distance;
  }
  return hits.map(({ row, distance }) => ({ row, distance: Math.sqrt(distance) }));
}
