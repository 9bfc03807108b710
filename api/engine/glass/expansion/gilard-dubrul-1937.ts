/** Gilard and Dubrul's factors of 1937. @module */
import data from "../../../../data/factor-sets/gilard-dubrul-1937.json" with { type: "json" };
import type { PublishedSet } from "./published-set.ts";

const factors: Readonly<Record<string, { value: number; perPercent: number }>> = data.factors;

/**
 * Mean expansion of a glass by Gilard and Dubrul's factors; their temperature range is not known.
 *
 *     α = Σ pᵢ (aᵢ + bᵢ pᵢ),   pᵢ in weight per cent, linear
 *
 * The mistake to avoid: it reads about 1e-6/K low, as a low-temperature mean does.
 * Source: gilard-dubrul-1937, figures and how they were obtained in data/factor-sets/gilard-dubrul-1937.json.
 * @example GILARD_DUBRUL.expansion({ SiO2: 80, Na2O: 20 }) // 9.188
 */
export const GILARD_DUBRUL: PublishedSet = {
  id: "gilard-dubrul-1937",
  name: "Gilard and Dubrul 1937",
  basis: "weight",
  rangeC: null,
  oxides: Object.keys(factors),
  provenance: data.status,
  note: "Each factor bends with its oxide's share; low by about 1e-6/K beside 20–300 °C figures.",
  source: data.source,
  expansion(percent) {
    let sum = 0;
    for (const oxide in percent) {
      const share = percent[oxide]!;
      const factor = factors[oxide];
      if (factor) sum += share * (factor.value + factor.perPercent * share);
    }
    return sum / 10;
  },
};
