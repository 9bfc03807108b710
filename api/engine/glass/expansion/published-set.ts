/** What a published expansion set is, and how one is asked. @module */
import validity from "../../../../data/factor-sets/validity.json" with { type: "json" };

/** Shares of a glass in per cent of the set's basis, keyed by oxide. */
export type Percent = Readonly<Record<string, number>>;

/** A set of additive factors as published. */
export interface PublishedSet {
  /** Author and year, e.g. `appen-1949`. */
  id: string;
  name: string;
  /** What the percentages are of. */
  basis: "weight" | "mole";
  /** Range of the mean [°C]; null where not known. */
  rangeC: [number, number] | null;
  /** Oxides that the set has a figure for. */
  oxides: readonly string[];
  /** How the figures were obtained. */
  provenance: string;
  /** What to know before leaning on it. */
  note: string;
  source: string;
  /**
   * The set's own sum, percentages taken as given (no rescaling), oxides it lacks left out.
   * @returns mean linear expansion over `rangeC` [1e-6/K]
   */
  expansion(percent: Percent): number;
}

/** A set's answer about a whole glass. */
export interface SetAnswer {
  /** Mean linear expansion [1e-6/K]; null when the set lacks more than {@link MOST_MISSING_PERCENT} of the glass. */
  value: number | null;
  /** Oxides present that the set has no figure for, with their share [% of basis]. */
  missing: { oxide: string; percent: number }[];
  /** Oxides outside the set's limits, with those limits [% of basis]. */
  outside: { oxide: string; percent: number; limits: [number, number] }[];
}

/** With more of the glass than this unknown to a set, its sum means nothing [% of basis]. */
export const MOST_MISSING_PERCENT = 10;

/** Composition limits of each set, one table for all [% of basis]. */
export const VALIDITY = validity.limits as unknown as Readonly<
  Record<string, Readonly<Record<string, [number, number]>>>
>;

/**
 * Asks a set about a glass. Oxides that it lacks are left out, the rest scaled up to 100, and both said.
 * @param set - one of the published sets
 * @param percent - the glass in per cent of the set's basis, summing to 100
 */
export function askSet(set: PublishedSet, percent: Percent): SetAnswer {
  const missing: SetAnswer["missing"] = [];
  let lacking = 0;
  let total = 0;
  for (const oxide in percent) {
    const share = percent[oxide]!;
    total += share;
    if (share <= 0 || set.oxides.includes(oxide)) continue;
    missing.push({ oxide, percent: share });
    lacking += share;
  }
  const outside: SetAnswer["outside"] = [];
  const limits = VALIDITY[set.id] ?? {};
  for (const oxide in limits) {
    const share = percent[oxide] ?? 0;
    const [low, high] = limits[oxide]!;
    if (share < low - 1e-9 || share > high + 1e-9) outside.push({ oxide, percent: share, limits: [low, high] });
  }
  const known = total - lacking;
  if (known <= 0 || (100 * lacking) / total > MOST_MISSING_PERCENT) return { value: null, missing, outside };
  const scaled: Record<string, number> = {};
  for (const oxide of set.oxides) if (percent[oxide]) scaled[oxide] = (100 * percent[oxide]) / known;
  return { value: set.expansion(scaled), missing, outside };
}

/**
 * Sum of factors times percentages.
 * @param factors - oxide → factor [1e-7/K per %]
 * @param percent - oxide → share [%]
 * @returns the sum [1e-7/K]
 */
export function sumOf(factors: Readonly<Record<string, { value: number }>>, percent: Percent): number {
  let sum = 0;
  for (const oxide in percent) sum += (factors[oxide]?.value ?? 0) * percent[oxide]!;
  return sum;
}
