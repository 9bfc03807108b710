/** Parts of the report that every property has: families of glasses, and the largest misses. @module */
import { accuracyOf } from "./accuracy.ts";
import { inDomain } from "./domains.ts";
import { FAMILIES } from "./families.ts";
import type { AccuracyRow } from "./report-tables.ts";

/** Families with fewer glasses say nothing. */
const FEWEST = 30;
/** Publications named. */
const NAMED = 12;

/** Accuracy by family among glazes, one line a family that is large enough. */
export function familyRows(compositions: readonly Float64Array[], errors: ArrayLike<number>): AccuracyRow[] {
  const glazes = compositions.flatMap((x, i) => (inDomain("glaze", x) ? i : []));
  return FAMILIES.flatMap((family): AccuracyRow[] => {
    const own = glazes.filter((i) => family.holds(compositions[i]!));
    return own.length < FEWEST ? [] : [[family.name, "glaze", accuracyOf(own.map((i) => errors[i]!))]];
  });
}

/** One prediction that missed. */
export interface Miss {
  publication: number;
  /** What misses are sorted by. */
  size: number;
  /** What was measured, with its unit where the list mixes them. */
  measured: string;
  /** Predicted minus measured. */
  error: number;
  /** Unit of the error, if the list mixes them. */
  unit?: string;
}

/** Publications with the largest single misses, one line each, the worst first. */
export function worstLines(misses: readonly Miss[]): string[] {
  const seen = new Set<number>();
  return [...misses]
    .sort((a, b) => b.size - a.size)
    .filter(({ publication }) => !seen.has(publication) && seen.add(publication))
    .slice(0, NAMED)
    .map(({ publication, measured, error, unit }) => {
      const off = `${error > 0 ? "+" : "−"}${Math.abs(error).toPrecision(3)}${unit ? ` ${unit}` : ""}`;
      return `- publication ${publication}: measured ${measured}, error ${off}`;
    });
}
