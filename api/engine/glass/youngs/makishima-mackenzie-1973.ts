/** Young's modulus by Makishima and Mackenzie. @module */
import data from "../../../../data/factor-sets/makishima-mackenzie-1973.json" with { type: "json" };
import { molarMass } from "../../chemistry/oxides.ts";
import { appenDensity } from "../density/appen-1949.ts";
import type { MoleFractions } from "../types.ts";

const VALUES: Readonly<Record<string, { energy: number; volume: number }>> = data.values;

/**
 * Young's modulus of a glass from how tightly its ions are packed and how firmly they are bound.
 *
 *     E = 2 Vₜ Σ Gᵢ xᵢ,   Vₜ = (ρ / M) Σ Vᵢ xᵢ
 *
 * @param moleFractions - oxide → mole fraction [-]
 * @param densityGPerCm3 - density; Appen's if left out [g/cm3]
 * @returns Young's modulus [GPa] (null when nothing is known) and the oxides left out for want of figures, of the
 * density and the molar mass too; the rest counts as the whole
 * @remarks Within about 5 GPa for glazes without boron; fails for borates. Beside the measured-glass model, not in
 * place of it.
 * Source: makishima-mackenzie-1973, figures in data/factor-sets/makishima-mackenzie-1973.json.
 * @example makishimaMackenzie({ SiO2: 0.75, Na2O: 0.25 }).value // 62.9
 */
export function makishimaMackenzie(
  moleFractions: MoleFractions,
  densityGPerCm3?: number,
): { value: number | null; missing: string[] } {
  const missing: string[] = [];
  const known: Record<string, number> = {};
  let total = 0;
  for (const oxide in moleFractions) {
    const share = moleFractions[oxide]!;
    if (share <= 0) continue;
    if (!VALUES[oxide]) missing.push(oxide);
    else {
      known[oxide] = share;
      total += share;
    }
  }
  const density = densityGPerCm3 ?? appenDensity(known).value;
  if (!total || density === null) return { value: null, missing };
  let energy = 0;
  let packed = 0;
  let mass = 0;
  for (const oxide in known) {
    const x = known[oxide]! / total;
    energy += VALUES[oxide]!.energy * x;
    packed += VALUES[oxide]!.volume * x;
    mass += molarMass(oxide) * x;
  }
  return { value: 2 * (density / mass) * packed * energy, missing };
}
