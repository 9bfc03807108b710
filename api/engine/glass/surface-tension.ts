/** Surface tension of a molten glaze by three published sets, with intervals. @module */
import agreement from "../../../data/models/surface-tension.json" with { type: "json" };
import { type Quantity, quantity } from "../quantity.ts";
import { type SurfaceSum, surfaceSums } from "./surface-sums.ts";
import type { MoleFractions, WeightPercent } from "./types.ts";

/** One set's answer. */
export interface SurfaceTension extends Omit<SurfaceSum, "value"> {
  /** Null where the set lacks more than a tenth of the glass, or its sum is below the 80 mN/m that no melt is. */
  value: Quantity | null;
  /** What the interval rests on. */
  note: string;
}

/** Half-width of a 90 % interval as a share of the value, by set: how far the other sets lie from it on glazes. */
const DOUBT: Readonly<Record<string, { halfWidthShare: number }>> = agreement.sets;
const NOTE =
  "The interval is how far the three sets differ on glazes: nine in ten of the others' figures lie inside. No measured surface tension with a full analysis was at hand to check it by.";

/**
 * Surface tension of a melt by Kucuk (1400 °C), Dietzel (900 °C, falling 4 mN/m for 100 K) and Appen (1300 °C).
 * High values pull a glaze into beads and make it crawl; low ones let it wet and level.
 *
 * @param moleFractions - fired glass, oxide → mole fraction, summing to 1 [-]
 * @param weightPercent - the same glass in weight per cent
 * @param temperatureC - temperature for Dietzel's sum; 900 if left out [°C]
 * @returns one answer a set [mN/m], Kucuk's first: it rests on the most measurements; null where a set lacks more than
 * a tenth of the glass, or where its straight line leads below 80 mN/m, the least of molten oxides (from memory)
 * @remarks Sums of melts in air. No measured values with analyses were at hand, so the intervals are how far the sets
 * lie apart (data/fitting/surface-agreement.ts): what all three get wrong alike is not in them.
 * Sources: kucuk-1999 (read second-hand), dietzel-1942 and appen-1949 (from memory).
 * @example surfaceTension({ SiO2: 0.7, Na2O: 0.15, CaO: 0.15 }, { SiO2: 70.4, Na2O: 15.6, CaO: 14 })[0].value.value // 321
 */
export function surfaceTension(
  moleFractions: MoleFractions,
  weightPercent: WeightPercent,
  temperatureC?: number,
): SurfaceTension[] {
  return surfaceSums(moleFractions, weightPercent, temperatureC).map(({ value, sources, ...set }) => ({
    ...set,
    value: value === null ? null : between(value, DOUBT[set.model]!.halfWidthShare),
    note: NOTE,
    sources,
  }));
}

function between(value: number, share: number): Quantity {
  return quantity(value, value * (1 - share), value * (1 + share), "mN/m", { decimals: 0 });
}
