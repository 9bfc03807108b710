/** Surface tension of a molten glaze by three published sets. @module */
import appen from "../../../data/factor-sets/appen-1949-surface.json" with { type: "json" };
import dietzel from "../../../data/factor-sets/dietzel-1942.json" with { type: "json" };
import kucuk from "../../../data/factor-sets/kucuk-1999.json" with { type: "json" };
import { type Quantity, quantity } from "../quantity.ts";
import type { MoleFractions, WeightPercent } from "./types.ts";

/** One set's answer. */
export interface SurfaceTension {
  model: string;
  name: string;
  /** Temperature that the figure is for [°C]. */
  temperatureC: number;
  /** Null where the set lacks more than a tenth of the glass. */
  value: Quantity | null;
  /** Oxides present that the set has no figure for; the rest is scaled up. */
  missingOxides: string[];
  sources: string[];
}

/** Half-width of a 90 % interval as a share of the value (common practice, no source). */
const DOUBT = 0.1;
/** Kucuk's coefficients, with the oxides that were found to do nothing. */
const KUCUK: Readonly<Record<string, number>> = {
  ...Object.fromEntries(kucuk.zero.map((oxide) => [oxide, 0])),
  ...kucuk.coefficients,
};
/** With more of the glass than this unknown a sum means nothing [-]. */
const MOST_MISSING = 0.1;

/**
 * Surface tension of a melt by Kucuk (1400 °C), Dietzel (900 °C, falling 4 mN/m for 100 K) and Appen (1300 °C).
 * High values pull a glaze into beads and make it crawl; low ones let it wet and level.
 *
 * @param moleFractions - fired glass, oxide → mole fraction, summing to 1 [-]
 * @param weightPercent - the same glass in weight per cent
 * @param temperatureC - temperature for Dietzel's sum; 900 if left out [°C]
 * @returns one answer a set [mN/m], Kucuk's first: it rests on the most measurements
 * @remarks Sums of melts in air; a tenth to either side.
 * Sources: kucuk-1999 (read second-hand), dietzel-1942 and appen-1949 (from memory).
 * @example surfaceTension({ SiO2: 0.7, Na2O: 0.15, CaO: 0.15 }, { SiO2: 70.4, Na2O: 15.6, CaO: 14 })[0].value.value // 321
 */
export function surfaceTension(
  moleFractions: MoleFractions,
  weightPercent: WeightPercent,
  temperatureC = dietzel.temperatureC,
): SurfaceTension[] {
  return [
    answer(
      "kucuk-1999",
      "Kucuk, Clare and Jones 1999",
      kucuk.temperatureC,
      kucuk.source,
      moleFractions,
      1,
      KUCUK,
    )(fromKucuk),
    answer(
      "dietzel-1942",
      "Dietzel 1942",
      temperatureC,
      dietzel.source,
      weightPercent,
      100,
      dietzel.factors,
    )((sum) => 100 * sum + dietzel.perKelvin * (temperatureC - dietzel.temperatureC)),
    answer("appen-1949", "Appen 1949", appen.temperatureC, appen.source, moleFractions, 1, appen.factors)((sum) => sum),
  ];
}

/**
 * The first of those answers that there is, not rounded: for searches, which follow its slope.
 *
 * @param moleFractions - fired glass, oxide → mole fraction, summing to 1 [-]
 * @param weightPercent - the same glass in weight per cent
 * @returns surface tension [mN/m]; null where no set covers the glass
 * @example unroundedTension({ SiO2: 0.7, Na2O: 0.15, CaO: 0.15 }, { SiO2: 70.4, Na2O: 15.6, CaO: 14 }) // 321.3
 */
export function unroundedTension(moleFractions: MoleFractions, weightPercent: WeightPercent): number | null {
  const given: readonly [Readonly<Record<string, number>>, number, Readonly<Record<string, number>>, Finish][] = [
    [moleFractions, 1, KUCUK, fromKucuk],
    [weightPercent, 100, dietzel.factors, (sum) => 100 * sum],
    [moleFractions, 1, appen.factors, (sum) => sum],
  ];
  for (const [shares, total, factors, finish] of given) {
    const { sum, known } = gathered(shares, total, factors);
    if (known >= 1 - MOST_MISSING) return finish(sum / known);
  }
  return null;
}

type Finish = (sum: number) => number;
const fromKucuk: Finish = (sum) => kucuk.intercept + 100 * sum;

/** Σ factor × share over the oxides that a set knows, and the rest. */
function gathered(
  shares: Readonly<Record<string, number>>,
  total: number,
  factors: Readonly<Record<string, number>>,
): { sum: number; known: number; missingOxides: string[] } {
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

/** Shares scaled to 1 over the known oxides; then the set finishes the sum. */
function answer(
  model: string,
  name: string,
  temperatureC: number,
  source: string,
  shares: Readonly<Record<string, number>>,
  total: number,
  factors: Readonly<Record<string, number>>,
) {
  const { sum, known, missingOxides } = gathered(shares, total, factors);
  return (finish: Finish): SurfaceTension => {
    const value = known >= 1 - MOST_MISSING ? finish(sum / known) : null;
    const shown =
      value === null ? null : quantity(value, value * (1 - DOUBT), value * (1 + DOUBT), "mN/m", { decimals: 0 });
    return { model, name, temperatureC, value: shown, missingOxides, sources: [source] };
  };
}
