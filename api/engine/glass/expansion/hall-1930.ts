/** Hall's factors of 1930. @module */
import data from "../../../../data/factor-sets/hall-1930.json" with { type: "json" };
import { type PublishedSet, sumOf } from "./published-set.ts";

/**
 * Mean expansion of a glaze by Hall's factors; their temperature range is not known.
 *
 *     α = Σ aᵢ pᵢ,   pᵢ in weight per cent, aᵢ linear
 *
 * The figures rest on memory of low to medium confidence: for comparison only.
 * Source: hall-1930, figures and how they were obtained in data/factor-sets/hall-1930.json.
 * @example HALL.expansion({ SiO2: 80, Na2O: 20 }) // 10.8
 */
export const HALL: PublishedSet = {
  id: "hall-1930",
  name: "Hall 1930",
  basis: "weight",
  rangeC: null,
  oxides: Object.keys(data.factors),
  provenance: data.status,
  note: "The figures rest on memory and no print has confirmed them: for comparison only.",
  source: data.source,
  expansion: (percent) => sumOf(data.factors, percent) / 10,
};
