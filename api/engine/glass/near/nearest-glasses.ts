/** Measured glasses like this one, and what each published set is worth near it. @module */

import { OXIDE_INDEX, OXIDE_MASS } from "../../chemistry/oxides.ts";
import { askSet, PUBLISHED_SETS } from "../expansion/index.ts";
import { MODEL_OXIDES, vectorOf } from "../oxides.ts";
import type { MoleFractions } from "../types.ts";
import { type RowTable, unpackRows } from "./row-table.ts";
import { type Hit, nearestRows } from "./search.ts";

/** One measured glass near the one asked about. */
export interface NearGlass {
  /** Numbers of the glass and its publication in the data set. */
  glass: number;
  publication: number;
  year: number;
  molePercent: Record<string, number>;
  /** Share of the glass that would have to be exchanged to make one from the other [mol %]. */
  apartMolePercent: number;
  /** Mean linear expansion below the transition, typically 20–300 °C [1e-6/K]. */
  expansion: number | null;
  transitionC: number | null;
  youngsGPa: number | null;
}

/** How a published set does on the measured glasses around this one. */
export interface LocalAccuracy {
  model: string;
  /** Mean of the set's sum minus measured; above 0 reads high [1e-6/K]. */
  bias: number;
  /** Standard deviation of that difference [1e-6/K]. */
  spread: number;
  /** Measured glasses it rests on. */
  n: number;
  /** The same in words. */
  text: string;
}

/** What lies near. */
export interface Neighbourhood {
  /** False where the table of measured glasses could not be loaded, as on some small runtimes. */
  available: boolean;
  glasses: NearGlass[];
  sets: LocalAccuracy[];
  note: string;
  sources: string[];
}

/** Measured glasses that a set's local accuracy is taken from, at most, and how far they may lie [mol %, weighted]. */
const AROUND = { most: 60, reach: 8, fewest: 8 };
const MASS = MODEL_OXIDES.map((oxide) => OXIDE_MASS[OXIDE_INDEX.get(oxide)!]!);

let loading: Promise<RowTable | null> | undefined;

/** Loads the table the first time it is asked for; null where that cannot be done. */
export function rowTable(): Promise<RowTable | null> {
  loading ??= import("../../../../data/glasses/rows.json", { with: { type: "json" } }).then(
    (file) => unpackRows(file.default.rows),
    () => null,
  );
  return loading;
}

/**
 * Finds the measured glasses closest to this one, and how far each published set is off around it.
 * @param moleFractions - fired glass, oxide → mole fraction, summing to 1 [-]
 * @param count - how many glasses to list, nearest first
 * @param load - gives the table of measured glasses, or null where there is none
 * @returns glasses with measured values and numbers; bias and spread of each set on up to sixty glasses nearby
 * @remarks The table is loaded on first use (about 1 MB); where that fails the answer says so.
 * Source: sciglass-2019.
 */
export async function nearestGlasses(
  moleFractions: MoleFractions,
  count = 5,
  load: () => Promise<RowTable | null> = rowTable,
): Promise<Neighbourhood> {
  const sources = ["sciglass-2019"];
  const table = await load();
  if (!table) {
    const note = "The table of measured glasses is not available here; the figures do without it.";
    return { available: false, glasses: [], sets: [], note, sources };
  }
  const x = new Float64Array(MODEL_OXIDES.length);
  vectorOf(moleFractions, x);
  const around = nearestRows(table, x, AROUND.most, table.expansion).filter((hit) => hit.distance <= AROUND.reach);
  const glasses = nearestRows(table, x, count).map((hit) => describe(table, hit.row, x));
  const note =
    around.length < AROUND.fewest
      ? "Hardly any measured glass is like this one: trust a test tile before any sum."
      : "Measured values as published; the range of a mean is mostly 20–300 °C but not recorded.";
  return { available: true, glasses, sets: localAccuracy(table, around), note, sources };
}

function describe(table: RowTable, row: number, x: Float64Array): NearGlass {
  const molePercent: Record<string, number> = {};
  let apart = 0;
  MODEL_OXIDES.forEach((oxide, i) => {
    const share = table.molePercent[row * MODEL_OXIDES.length + i]!;
    apart += Math.abs(share - 100 * x[i]!) / 2;
    if (share > 0) molePercent[oxide] = to(share, 2);
  });
  const value = (column: Float32Array, decimals: number) =>
    Number.isNaN(column[row]!) ? null : to(column[row]!, decimals);
  return {
    glass: table.glass[row]!,
    publication: table.publication[row]!,
    year: table.year[row]!,
    molePercent,
    apartMolePercent: to(apart, 1),
    expansion: value(table.expansion, 2),
    transitionC: value(table.transitionC, 0),
    youngsGPa: value(table.youngsGPa, 1),
  };
}

/** Bias and spread of every set on the rows around; sets that cannot answer for enough of them are left out. */
function localAccuracy(table: RowTable, around: readonly Hit[]): LocalAccuracy[] {
  const shares = around.map(({ row }) => percents(table, row));
  return PUBLISHED_SETS.flatMap((set) => {
    const differences = around.flatMap(({ row }, k) => {
      const { value } = askSet(set, shares[k]![set.basis]);
      return value === null ? [] : value - table.expansion[row]!;
    });
    const n = differences.length;
    if (n < AROUND.fewest) return [];
    // Medians, so that one devitrified sample among the sixty does not speak for all.
    const bias = median(differences);
    const spread = 1.4826 * median(differences.map((d) => Math.abs(d - bias)));
    const way = bias >= 0 ? "high" : "low";
    const text =
      Math.abs(bias) < 0.1
        ? `${set.name} reads true on measured glasses like yours, within ${spread.toFixed(1)}e-6/K.`
        : `${set.name} reads ${Math.abs(bias).toFixed(1)}e-6/K ${way} on measured glasses like yours, give or take ${spread.toFixed(1)}.`;
    return { model: set.id, bias: to(bias, 2), spread: to(spread, 2), n, text };
  });
}

function percents(table: RowTable, row: number): Record<"mole" | "weight", Record<string, number>> {
  const mole: Record<string, number> = {};
  const weight: Record<string, number> = {};
  let mass = 0;
  MODEL_OXIDES.forEach((oxide, i) => {
    const share = table.molePercent[row * MODEL_OXIDES.length + i]!;
    if (share <= 0) return;
    mole[oxide] = share;
    weight[oxide] = share * MASS[i]!;
    mass += weight[oxide];
  });
  for (const oxide in weight) weight[oxide] = (100 * weight[oxide]!) / mass;
  return { mole, weight };
}

function median(values: readonly number[]): number {
  const sorted = Float64Array.from(values).sort();
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

function to(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}
