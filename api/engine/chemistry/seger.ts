/** Seger formula: a glaze in moles with its fluxes brought to one. @module */
import { Findings, pointerToken } from "./findings.ts";
import { MAX_OXIDES, OXIDE_INDEX, OXIDE_MASS, OXIDES, unknownOxide } from "./oxides.ts";
import type { OxideRecord, SegerFormula } from "./types.ts";

const ALKALIS = ["Li2O", "Na2O", "K2O", "Rb2O", "Cs2O"];
const EARTHS = ["MgO", "CaO", "SrO", "BaO", "ZnO", "PbO", "CdO", "BeO"];
const isAlkali = OXIDES.map((oxide) => ALKALIS.includes(oxide));

/** Whether each of `OXIDES` counts as a flux (R2O or RO). */
export const IS_FLUX: readonly boolean[] = OXIDES.map((oxide) => ALKALIS.includes(oxide) || EARTHS.includes(oxide));

/**
 * Seger formula of a fired glaze: every oxide divided by the sum of the fluxes, R2O + RO = 1.
 *
 * Fluxes are Li2O, Na2O, K2O, Rb2O, Cs2O and MgO, CaO, SrO, BaO, ZnO, PbO, CdO, BeO. The colouring oxides FeO, MnO,
 * CoO, CuO and NiO are left out of the sum, so that a colourant added to a glaze does not move its formula
 * (`common practice, no source`; some books count them).
 *
 * @param moles - moles of each of `OXIDES`, in that order, in any amount of glaze [mol]
 * @returns the formula, or `null` when there is no flux
 * @example segerFormula(molesOf({ K2O: 0.6, CaO: 1.4, Al2O3: 1, SiO2: 8 })) // K2O 0.3 CaO 0.7 Al2O3 0.5 SiO2 4
 */
export function segerFormula(moles: ArrayLike<number>): SegerFormula | null {
  let flux = 0;
  let alkali = 0;
  for (let i = 0; i < OXIDES.length; i++) {
    if (!IS_FLUX[i]) continue;
    flux += moles[i]!;
    if (isAlkali[i]) alkali += moles[i]!;
  }
  if (!(flux > 0)) return null;
  const unity: OxideRecord = {};
  let fluxSum = 0;
  for (let i = 0; i < OXIDES.length; i++) {
    if (!(moles[i]! > 0)) continue;
    unity[OXIDES[i]!] = moles[i]! / flux;
    if (IS_FLUX[i]) fluxSum += moles[i]! / flux;
  }
  const alumina = moles[1]!;
  return {
    moles: unity,
    fluxSum,
    silicaToAlumina: alumina > 0 ? moles[0]! / alumina : null,
    alkaliShare: alkali / flux,
  };
}

/**
 * Weight per cent of a Seger formula (or of any amounts in moles).
 * @param moles - oxide → moles, brought to one or not [mol]
 * @returns fired weight per cent [wt %], sums to 100
 * @throws ImpossibleValueError for negative or no amounts; UnknownNameError for oxides not known
 * @example fromSeger({ K2O: 0.3, CaO: 0.7, Al2O3: 0.5, SiO2: 4 }).SiO2 // 66.98
 */
export function fromSeger(moles: Readonly<Record<string, number>>): OxideRecord {
  const findings = new Findings();
  const grams = new Float64Array(OXIDES.length);
  let total = 0;
  for (const [name, amount] of findings.entries(moles, "", MAX_OXIDES)) {
    const at = `/${pointerToken(name)}`;
    const i = OXIDE_INDEX.get(name);
    if (i === undefined) findings.unknown.push(unknownOxide(name, at));
    if (!findings.amount(amount, at, name.slice(0, 40)) || i === undefined) continue;
    grams[i] = amount * OXIDE_MASS[i]!;
    total += grams[i]!;
  }
  findings.throwIfAny();
  if (!(total > 0)) {
    findings.impossible.push({ pointer: "", message: "These amounts add up to 0. Give at least one oxide." });
    findings.throwIfAny();
  }
  const percent: OxideRecord = {};
  for (let i = 0; i < OXIDES.length; i++) if (grams[i]! > 0) percent[OXIDES[i]!] = (100 * grams[i]!) / total;
  return percent;
}
