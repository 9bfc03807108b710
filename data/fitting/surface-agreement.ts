/** How far the sets for surface tension differ: the only gauge of them that there is. @module */
import { surfaceSums } from "../../api/engine/glass/surface-sums.ts";
import dietzel from "../factor-sets/dietzel-1942.json" with { type: "json" };
import { quantile } from "./accuracy.ts";
import { inDomain } from "./domains.ts";
import { FOLDS, foldsOf } from "./folds.ts";
import type { GlassRow } from "./read-glasses.ts";
import { percentOf } from "./score-sets.ts";

/** Temperature at which the sets are compared, the middle one of their own [°C]. */
const TEMPERATURE_C = 1300;
const COVERAGE = 0.9;

/** How the other sets lie about one. */
export interface SetAgreement {
  /** Comparisons: glazes times the other sets that answer for them. */
  n: number;
  /** Middle of other/own − 1: above 0 the others read higher [-]. */
  bias: number;
  /** Half-width that holds nine in ten of the others, as a share of the value [-]. */
  halfWidthShare: number;
  /** The same checked: share inside the half-width of the other folds, lowest and highest fold [-]. */
  heldByFold: [number, number];
}

/** What the file opens with. */
export const SURFACE_FILE = {
  title: "How far the published sets for surface tension differ on glazes",
  unit: "share of the value",
  licence: "Compared on glasses from SciGlass, Copyright (c) 2019 EPAM Systems, Open Database License 1.0.",
  method: "90th percentile of how far the other two sets lie from each, on glaze compositions at 1300 °C.",
  sources: ["kucuk-1999", "dietzel-1942", "appen-1949", "sciglass-2019"],
} as const;

/** Set → agreement. */
export type Agreement = Record<string, SetAgreement>;

/**
 * Compares the sets on every glaze composition of the data (to 0.1 mol %), whatever was measured on it, all brought to
 * one temperature with Dietzel's slope. Fold by fold, publications apart, it is checked that a width found on the others
 * holds.
 * @param glasses - measured glasses
 */
export function surfaceAgreement(glasses: readonly GlassRow[]): Agreement {
  const rows = distinct(glasses.filter(({ x }) => inDomain("glaze", x)));
  const folds = foldsOf(rows, []);
  const differences: Record<string, { fold: number; share: number }[]> = {};
  rows.forEach((row, i) => {
    const mole = percentOf(row.x, "mole");
    const fractions = Object.fromEntries(Object.entries(mole).map(([oxide, percent]) => [oxide, percent / 100]));
    const sums = surfaceSums(fractions, percentOf(row.x, "weight"), TEMPERATURE_C).flatMap(
      ({ model, temperatureC, value }) =>
        value === null ? [] : { model, value: value + dietzel.perKelvin * (TEMPERATURE_C - temperatureC) },
    );
    for (const own of sums) {
      for (const other of sums) {
        if (other === own) continue;
        differences[own.model] ??= [];
        differences[own.model]!.push({ fold: folds[i]!, share: other.value / own.value - 1 });
      }
    }
  });
  return Object.fromEntries(Object.entries(differences).map(([model, list]) => [model, agreementOf(list)]));
}

function agreementOf(list: readonly { fold: number; share: number }[]): SetAgreement {
  const width = (from: typeof list) =>
    quantile(
      from.map(({ share }) => Math.abs(share)),
      COVERAGE,
    );
  const held = Array.from({ length: FOLDS }, (_, fold) => {
    const own = list.filter((one) => one.fold === fold);
    const half = width(list.filter((one) => one.fold !== fold));
    return own.filter(({ share }) => Math.abs(share) <= half).length / own.length;
  });
  const keep = (value: number) => Math.round(1000 * value) / 1000;
  return {
    n: list.length,
    bias: keep(
      quantile(
        list.map(({ share }) => share),
        0.5,
      ),
    ),
    halfWidthShare: keep(width(list)),
    heldByFold: [keep(Math.min(...held)), keep(Math.max(...held))],
  };
}

function distinct(rows: readonly GlassRow[]): GlassRow[] {
  const seen = new Set<string>();
  return rows.filter(({ x }) => {
    const key = x.map((v) => Math.round(v * 1000)).join();
    return !seen.has(key) && seen.add(key);
  });
}
