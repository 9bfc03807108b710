/** English and Turner's factors of 1927, as revised in 1929. @module */
import data from "../../../../data/factor-sets/english-turner-1927.json" with { type: "json" };
import { type PublishedSet, sumOf } from "./published-set.ts";

/**
 * Mean expansion of a soda-lime kind of glass by English and Turner's factors, 25–90 °C.
 *
 *     α = Σ aᵢ pᵢ,   pᵢ in weight per cent, aᵢ linear
 *
 * The mistake to avoid: it is a mean over 25–90 °C and reads some 1e-6/K below a 20–300 °C mean.
 * Source: english-turner-1927, figures and how they were obtained in data/factor-sets/english-turner-1927.json.
 * @example ENGLISH_TURNER.expansion({ SiO2: 81, B2O3: 13, Na2O: 4, Al2O3: 2 }) // 1.31
 */
export const ENGLISH_TURNER: PublishedSet = {
  id: "english-turner-1927",
  name: "English and Turner 1927",
  basis: "weight",
  rangeC: [25, 90],
  oxides: Object.keys(data.factors),
  provenance: data.status,
  note: "A mean over 25–90 °C only, so it reads low beside a 20–300 °C figure; it ranks glasses well.",
  source: data.source,
  expansion: (percent) => sumOf(data.factors, percent) / 10,
};
