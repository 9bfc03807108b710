/** Where in composition a model is scored. @module */
import { MODEL_OXIDES } from "../../api/engine/glass/oxides.ts";

/** Domains in which accuracy is stated, widest first. */
export const DOMAINS = ["glaze", "stoneware-like"] as const;
export type Domain = (typeof DOMAINS)[number];

const I = Object.fromEntries(MODEL_OXIDES.map((oxide, i) => [oxide, i])) as Record<
  (typeof MODEL_OXIDES)[number],
  number
>;

/**
 * Whether a glass lies in a domain (limits in mol %).
 * Glaze: SiO2 45–80, Al2O3 2–20, B2O3 < 25, Li2O < 12, TiO2 < 6, ZrO2 < 8, P2O5 < 4, fluxes ≥ 8 together.
 * Stoneware-like: a glaze with R2O 1–16, MgO + CaO + SrO + BaO + ZnO ≥ 2, Al2O3 ≥ 4, SiO2 ≥ 50.
 * @param x - mole fractions in the order of MODEL_OXIDES
 */
export function inDomain(domain: Domain, x: Float64Array): boolean {
  const p = (oxide: keyof typeof I) => 100 * x[I[oxide]]!;
  const alkali = p("Li2O") + p("Na2O") + p("K2O");
  const earths = p("MgO") + p("CaO") + p("SrO") + p("BaO") + p("ZnO");
  const glaze =
    between(p("SiO2"), 45, 80) &&
    between(p("Al2O3"), 2, 20) &&
    p("B2O3") < 25 &&
    p("Li2O") < 12 &&
    p("TiO2") < 6 &&
    p("ZrO2") < 8 &&
    p("P2O5") < 4 &&
    alkali + earths + p("PbO") >= 8;
  if (domain === "glaze" || !glaze) return glaze;
  return between(alkali, 1, 16) && earths >= 2 && p("Al2O3") >= 4 && p("SiO2") >= 50;
}

function between(value: number, low: number, high: number): boolean {
  return value >= low && value <= high;
}
