/** Density by Appen's partial molar volumes. @module */
import data from "../../../../data/factor-sets/appen-1949-volume.json" with { type: "json" };
import { molarMass } from "../../chemistry/oxides.ts";
import { MODEL_OXIDES, vectorOf } from "../oxides.ts";
import { QUANTITIES, QUANTITY_COUNT, quantitiesOf } from "../terms.ts";
import type { MoleFractions } from "../types.ts";

const VOLUME: Readonly<Record<string, { value: number }>> = data.constant;
const { threeFold, fourFold } = data.boron;
const BORON_IN_FOUR = QUANTITIES.indexOf("BoronInFour");

/**
 * Density of a silicate glass at room temperature.
 *
 *     ρ = Σ xᵢ Mᵢ / Σ xᵢ Vᵢ
 *
 * @param moleFractions - oxide → mole fraction [-]; the sum need not be 1
 * @returns density [g/cm3] (null when no oxide is known) and the oxides that the set has no volume for, left out
 * @remarks Within about 2 % (1.5–2 % low on float and container glass).
 * Source: appen-1949, from memory: data/factor-sets/appen-1949-volume.json.
 * @example appenDensity({ SiO2: 0.75, Na2O: 0.25 }).value // 2.43
 */
export function appenDensity(moleFractions: MoleFractions): { value: number | null; missing: string[] } {
  const q = new Float64Array(QUANTITY_COUNT);
  const x = new Float64Array(MODEL_OXIDES.length);
  vectorOf(moleFractions, x);
  quantitiesOf(x, q);
  const boron = q[MODEL_OXIDES.indexOf("B2O3")]!;
  const four = boron > 0 ? q[BORON_IN_FOUR]! / boron : 0;
  const missing: string[] = [];
  let mass = 0;
  let volume = 0;
  for (const oxide in moleFractions) {
    const share = moleFractions[oxide]!;
    if (share <= 0) continue;
    const each = oxide === "B2O3" ? threeFold + (fourFold - threeFold) * four : VOLUME[oxide]?.value;
    if (each === undefined) missing.push(oxide);
    else {
      mass += share * molarMass(oxide);
      volume += share * each;
    }
  }
  return { value: volume > 0 ? mass / volume : null, missing };
}
