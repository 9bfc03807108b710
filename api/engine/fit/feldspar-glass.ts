/** Glasses like molten feldspar, which the models of the set point take for softer than they are. @module */
import type { MoleFractions } from "../glass/index.ts";

const ALKALIS = ["Li2O", "Na2O", "K2O"] as const;
const EARTHS = ["MgO", "CaO", "SrO", "BaO", "ZnO", "PbO", "MnO", "FeO"] as const;

/**
 * How much hotter such a glass sets, and the standard deviation of that [K]: of 158 measured ones (alumina at least 0.95
 * to a flux, earths below 2, boron below 0.5 mol %; data/glasses) the middle one lies 70 K above what the models say, and
 * eight in ten lie 9 to 140 K above it (tests/literature/feldspar-glass.test.ts).
 */
export const FELDSPAR_GLASS = { hotterK: 70, sdK: 50 } as const;

const rise = (x: number, from: number, to: number) => Math.min(Math.max((x - from) / (to - from), 0), 1);

/**
 * How far the alumina of a glass takes up all of its alkali, with hardly any lime or other earths, and no boron: then no
 * oxygen is left dangling, and the glass is far stiffer than one of a little more alkali.
 *
 *     rise(Al2O3/(R2O + RO), 0.9, 1) · rise(RO, 0.05, 0.02) · rise(B2O3, 0.05, 0) · rise(R2O, 0, 0.07)
 *
 * @param moleFractions - fired glass, oxide → mole fraction [-]; rise goes from 0 to 1 on a straight line
 * @returns share between 0 and 1 [-]
 * @example feldsparShare({ SiO2: 0.75, Al2O3: 0.125, Na2O: 0.125 }) // 1, molten albite
 */
export function feldsparShare(moleFractions: MoleFractions): number {
  const sum = (oxides: readonly string[]) => oxides.reduce((total, oxide) => total + (moleFractions[oxide] ?? 0), 0);
  const alkali = sum(ALKALIS);
  const earths = sum(EARTHS);
  if (alkali === 0) return 0;
  const { Al2O3 = 0, B2O3 = 0 } = moleFractions;
  return (
    rise(Al2O3 / (alkali + earths), 0.9, 1) * rise(earths, 0.05, 0.02) * rise(B2O3, 0.05, 0) * rise(alkali, 0, 0.07)
  );
}
