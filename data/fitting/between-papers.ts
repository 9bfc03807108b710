/** How far publications disagree about one and the same glass. @module */
import type { PapersFigures } from "../../api/engine/glass/model-file.ts";
import { quantile } from "./accuracy.ts";
import type { GlassRow } from "./read-glasses.ts";

/**
 * Compares values of one composition (to 0.1 mol %) printed by different publications.
 * @param rows - measured glasses
 * @param column - property
 * @returns differences of all pairs, and of those whose values are not equal: some equal pairs are reprints, some agree
 */
export function betweenPapers(rows: readonly GlassRow[], column: string): PapersFigures {
  const groups = new Map<string, Map<number, number[]>>();
  for (const row of rows) {
    const key = row.x.map((v) => Math.round(v * 1000)).join();
    const group = groups.get(key) ?? new Map<number, number[]>();
    group.set(row.publication, [...(group.get(row.publication) ?? []), row.measured[column]!]);
    groups.set(key, group);
  }
  const all: number[] = [];
  const unequal: number[] = [];
  for (const group of groups.values()) {
    // One value a publication, so that a long series does not speak for itself.
    const values = [...group.values()].map((list) => quantile(list, 0.5));
    for (let i = 0; i < values.length; i++) {
      for (let j = 0; j < i; j++) {
        const difference = Math.abs(values[i]! - values[j]!);
        all.push(difference);
        if (difference >= 0.005 * Math.abs(values[i]!)) unequal.push(difference);
      }
    }
  }
  return { all: figuresOf(all), unequal: figuresOf(unequal) };
}

function figuresOf(differences: readonly number[]) {
  const keep = (value: number) => Number(value.toPrecision(3));
  return {
    pairs: differences.length,
    median: keep(quantile(differences, 0.5)),
    rms: keep(Math.sqrt(differences.reduce((sum, d) => sum + d * d, 0) / differences.length)),
    p90: keep(quantile(differences, 0.9)),
  };
}
