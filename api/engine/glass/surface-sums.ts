/** The three published sums for the surface tension of a melt, without intervals. @module */
import appen from "../../../data/factor-sets/appen-1949-surface.json" with { type: "json" };
import dietzel from "../../../data/factor-sets/dietzel-1942.json" with { type: "json" };
import kucuk from "../../../data/factor-sets/kucuk-1999.json" with { type: "json" };
import type { MoleFractions, WeightPercent } from "./types.ts";

/** A published set. */
interface SurfaceSet {
  model: string;
  name: string;
  source: string;
  /** Temperature that its table is for [°C]. */
  temperatureC: number;
  /** Change with temperature that the set gives [mN/m per K]; null where it stands for its own temperature alone. */
  perKelvin: number | null;
  basis: "mole" | "weight";
  factors: Readonly<Record<string, number>>;
  /** Makes a surface tension [mN/m] of Σ factor × share, shares summing to 1. */
  finish(sum: number): number;
}

/** Kucuk's first: it rests on the most measurements. */
const SETS: readonly SurfaceSet[] = [
  {
    ...{ model: "kucuk-1999", name: "Kucuk, Clare and Jones 1999", source: kucuk.source, basis: "mole" },
    temperatureC: kucuk.temperatureC,
    perKelvin: null,
    // With the oxides that were found to do nothing.
    factors: { ...Object.fromEntries(kucuk.zero.map((oxide) => [oxide, 0])), ...kucuk.coefficients },
    finish: (sum) => kucuk.intercept + 100 * sum,
  },
  {
    ...{ model: "dietzel-1942", name: "Dietzel 1942", source: dietzel.source, basis: "weight" },
    temperatureC: dietzel.temperatureC,
    perKelvin: dietzel.perKelvin,
    factors: dietzel.factors,
    finish: (sum) => 100 * sum,
  },
  {
    ...{ model: "appen-1949", name: "Appen 1949", source: appen.source, basis: "mole" },
    temperatureC: appen.temperatureC,
    perKelvin: null,
    factors: appen.factors,
    finish: (sum) => sum,
  },
];

/** With more of the glass than this unknown a sum means nothing [-]. */
const MOST_MISSING = 0.1;
/**
 * A sum below this is no surface tension of a melt [mN/m]: the melts that have least, of vanadium and boron oxide, have
 * about 80, of lead oxide 130 (from memory: Kingery, Introduction to Ceramics). The sets are straight lines, which much
 * vanadium, boron, lead or potash carries below it, and below 0.
 */
const LEAST_MN_PER_M = 80;

/** One set's sum. */
export interface SurfaceSum {
  model: string;
  name: string;
  /** Temperature that the figure is for [°C]. */
  temperatureC: number;
  /** Surface tension [mN/m]; null where the set lacks more than a tenth of the glass, or its sum is below 80. */
  value: number | null;
  /** Oxides present that the set has no figure for; the rest is scaled up. */
  missingOxides: string[];
  sources: string[];
}

/**
 * Every set's sum.
 * @param moleFractions - fired glass, oxide → mole fraction, summing to 1 [-]
 * @param weightPercent - the same glass in weight per cent
 * @param temperatureC - temperature for the sets that say how they change with it; their own if left out [°C]
 */
export function surfaceSums(
  moleFractions: MoleFractions,
  weightPercent: WeightPercent,
  temperatureC?: number,
): SurfaceSum[] {
  return SETS.map((set) => {
    const { model, name, source, perKelvin } = set;
    const terms = gathered(set, moleFractions, weightPercent);
    const at = perKelvin === null ? set.temperatureC : (temperatureC ?? set.temperatureC);
    const value = tensionOf(set, terms, (perKelvin ?? 0) * (at - set.temperatureC));
    return { model, name, temperatureC: at, value, missingOxides: terms.missingOxides, sources: [source] };
  });
}

/** A set's surface tension [mN/m]; null where it lacks too much of the glass or gives no melt's. */
function tensionOf(set: SurfaceSet, { sum, known }: { sum: number; known: number }, change = 0): number | null {
  const value = known >= 1 - MOST_MISSING ? set.finish(sum / known) + change : 0;
  return value >= LEAST_MN_PER_M ? value : null;
}

/**
 * The first of the sums that there is, at its set's own temperature: for searches, which follow its slope.
 *
 * @param moleFractions - fired glass, oxide → mole fraction, summing to 1 [-]
 * @param weightPercent - the same glass in weight per cent
 * @returns surface tension [mN/m]; null where every set lacks more than a tenth of the glass or sums to less than 80
 * @example unroundedTension({ SiO2: 0.7, Na2O: 0.15, CaO: 0.15 }, { SiO2: 70.4, Na2O: 15.6, CaO: 14 }) // 321.3
 */
export function unroundedTension(moleFractions: MoleFractions, weightPercent: WeightPercent): number | null {
  for (const set of SETS) {
    const tension = tensionOf(set, gathered(set, moleFractions, weightPercent));
    if (tension !== null) return tension;
  }
  return null;
}

/** Σ factor × share over the oxides that a set knows, and the rest. */
function gathered({ basis, factors }: SurfaceSet, moleFractions: MoleFractions, weightPercent: WeightPercent) {
  const shares: Readonly<Record<string, number>> = basis === "mole" ? moleFractions : weightPercent;
  const total = basis === "mole" ? 1 : 100;
  const missingOxides: string[] = [];
  let known = 0;
  let sum = 0;
  for (const oxide in shares) {
    const share = shares[oxide]! / total;
    if (share <= 0) continue;
    const factor = factors[oxide];
    if (factor === undefined) missingOxides.push(oxide);
    else {
      known += share;
      sum += factor * share;
    }
  }
  return { sum, known, missingOxides };
}
