/** Mayer and Havas's factors of 1911. @module */
import data from "../../../../data/factor-sets/mayer-havas-1911.json" with { type: "json" };
import { type PublishedSet, sumOf } from "./published-set.ts";

/**
 * Mean expansion of an enamel or glaze by Mayer and Havas's factors, about 0–100 °C.
 *
 *     3 α = Σ aᵢ pᵢ,   pᵢ in weight per cent, aᵢ cubic
 *
 * The mistake to avoid: the printed factors are cubic; a third of their sum is linear.
 * Source: mayer-havas-1911, figures and how they were obtained in data/factor-sets/mayer-havas-1911.json.
 * @example MAYER_HAVAS.expansion({ SiO2: 80, Na2O: 20 }) // 8.8
 */
export const MAYER_HAVAS: PublishedSet = {
  id: "mayer-havas-1911",
  name: "Mayer and Havas 1911",
  basis: "weight",
  rangeC: [0, 100],
  oxides: Object.keys(data.factors),
  provenance: data.status,
  note: "A cubic set made for enamels, divided by three; its temperature range is uncertain.",
  source: data.source,
  expansion: (percent) => sumOf(data.factors, percent) / 3 / 10,
};
