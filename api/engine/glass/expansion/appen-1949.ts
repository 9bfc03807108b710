/** Appen's partial values of 1949. @module */
import data from "../../../../data/factor-sets/appen-1949.json" with { type: "json" };
import { type Percent, type PublishedSet, sumOf } from "./published-set.ts";

const { SiO2, B2O3, TiO2, PbO, K2O } = data.variable;

/**
 * Mean expansion of a silicate glass by Appen's partial values, 20–400 °C.
 *
 *     α = Σ αᵢ xᵢ / 100,   xᵢ in mole per cent, αᵢ linear
 *
 * Five of the partial values depend on the glass: silica on its own share, boron on how much flux is left to turn
 * it four-fold, titania on silica, lead on alkali, potash on soda.
 * The mistake to avoid: feeding it weight per cent.
 * Source: appen-1949, figures and how they were obtained in data/factor-sets/appen-1949.json.
 * @example APPEN.expansion({ SiO2: 80, Na2O: 20 }) // 9.9
 */
export const APPEN: PublishedSet = {
  id: "appen-1949",
  name: "Appen 1949",
  basis: "mole",
  rangeC: [20, 400],
  oxides: [...Object.keys(data.variable), ...Object.keys(data.constant)],
  provenance: data.status,
  note: "The closest of the published sets on glaze-like glasses; by mole, with boron's two kinds told apart.",
  source: data.source,
  expansion(percent) {
    const p = (oxide: string) => percent[oxide] ?? 0;
    const sum =
      sumOf(data.constant, percent) +
      p("SiO2") * silica(p("SiO2")) +
      p("B2O3") * boron(percent) +
      p("TiO2") * titania(p("SiO2")) +
      p("PbO") * lead(p("Li2O") + p("Na2O") + p("K2O")) +
      p("K2O") * potash(p("Na2O"));
    return sum / 1000;
  },
};

function silica(molePercent: number): number {
  const value = SiO2.high + SiO2.perMolePercent * Math.max(molePercent - SiO2.fromMolePercent, 0);
  return Math.max(value, SiO2.low);
}

/** Flux left over by alumina, per mole of boron, weighted by how readily it turns boron four-fold. */
function boron(percent: Percent): number {
  const p = (oxide: string) => percent[oxide] ?? 0;
  if (p("B2O3") <= 0) return 0;
  const strong = p("Na2O") + p("K2O") + p("BaO");
  const middling = p("CaO") + p("SrO") + p("CdO") + p("PbO");
  const weak = p("Li2O") + p("MgO") + p("ZnO");
  const psi = Math.max((strong + 0.7 * middling + 0.3 * weak - p("Al2O3")) / p("B2O3"), 0);
  return psi > B2O3.limit ? B2O3.least : B2O3.perUnit * psi;
}

function titania(silicaPercent: number): number {
  const from = Math.min(Math.max(silicaPercent, TiO2.fromSilica), TiO2.toSilica) - TiO2.fromSilica;
  return TiO2.value + TiO2.perMolePercent * from;
}

function lead(alkaliPercent: number): number {
  return Math.min(PbO.value + PbO.perMolePercent * Math.max(alkaliPercent - PbO.fromAlkali, 0), PbO.most);
}

function potash(sodaPercent: number): number {
  return K2O.withoutSoda + (K2O.withSoda - K2O.withoutSoda) * Math.min(Math.max(sodaPercent, 0), 1);
}
