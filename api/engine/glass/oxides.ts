/** The oxides that the measured-glass models know, in their fixed order. @module */

/** Order of the composition vector inside the models: the 24 oxides of the measured glasses. */
export const MODEL_OXIDES = [
  "SiO2",
  "Al2O3",
  "B2O3",
  "Li2O",
  "Na2O",
  "K2O",
  "MgO",
  "CaO",
  "SrO",
  "BaO",
  "ZnO",
  "PbO",
  "TiO2",
  "ZrO2",
  "P2O5",
  "Fe2O3",
  "FeO",
  "MnO",
  "SnO2",
  "CoO",
  "CuO",
  "NiO",
  "Cr2O3",
  "Bi2O3",
] as const;

const POSITION: ReadonlyMap<string, number> = new Map(MODEL_OXIDES.map((oxide, i) => [oxide, i]));

/**
 * Writes a composition into a vector in the order of {@link MODEL_OXIDES}.
 * Oxides without a place there are left out and the rest is scaled up to 1.
 * @param moleFractions - oxide → mole fraction [-]
 * @param into - vector of the length of MODEL_OXIDES, overwritten
 * @returns mole fraction left out [-]
 * @example vectorOf({ SiO2: 0.75, Na2O: 0.2, V2O5: 0.05 }, new Float64Array(24)) // 0.05
 */
export function vectorOf(moleFractions: Readonly<Record<string, number>>, into: Float64Array): number {
  into.fill(0);
  let known = 0;
  let unknown = 0;
  for (const oxide in moleFractions) {
    const x = moleFractions[oxide]!;
    const at = POSITION.get(oxide);
    if (at === undefined) unknown += x;
    else {
      into[at] = x;
      known += x;
    }
  }
  if (known > 0 && known !== 1) for (let i = 0; i < into.length; i++) into[i] = into[i]! / known;
  return unknown / (known + unknown || 1);
}
