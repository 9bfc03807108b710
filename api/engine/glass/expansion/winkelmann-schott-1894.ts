/** Winkelmann and Schott's factors of 1894. @module */
import data from "../../../../data/factor-sets/winkelmann-schott-1894.json" with { type: "json" };
import { type PublishedSet, sumOf } from "./published-set.ts";

/**
 * Mean expansion of a glass by Winkelmann and Schott's factors, 0–100 °C.
 *
 *     3 α = Σ aᵢ pᵢ,   pᵢ in weight per cent, aᵢ cubic
 *
 * The mistake to avoid: the printed factors are cubic; a third of their sum is linear.
 * Source: winkelmann-schott-1894, figures and how they were obtained in data/factor-sets/winkelmann-schott-1894.json.
 * @example WINKELMANN_SCHOTT.expansion({ SiO2: 81, B2O3: 13, Na2O: 4, Al2O3: 2 }) // 3.87
 */
export const WINKELMANN_SCHOTT: PublishedSet = {
  id: "winkelmann-schott-1894",
  name: "Winkelmann and Schott 1894",
  basis: "weight",
  rangeC: [0, 100],
  oxides: Object.keys(data.factors),
  provenance: data.status,
  note: "A cubic set over 0–100 °C, divided by three. Lithia and magnesia stand far too low in it, alumina too high.",
  source: data.source,
  expansion: (percent) => sumOf(data.factors, percent) / 3 / 10,
};
