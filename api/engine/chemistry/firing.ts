/** What the kiln leaves of a compound: atoms in, glaze oxides and gases out. @module */
import { ATOMIC_WEIGHTS } from "./atomic-weights.ts";
import { type Atoms, parseFormula } from "./formula.ts";
import { OXIDES, VOLATILES } from "./oxides.ts";

/** Glaze oxides and gases from one mole of a compound. */
export interface Fired {
  /** Moles of each glaze oxide by its position in `OXIDES`, only those present. */
  oxides: ReadonlyMap<number, number>;
  /** Mass of gases given off [g], by compound: H2O, CO2, SO3, N2O5, F, Cl; O when oxygen is given off. */
  gases: Readonly<Record<string, number>>;
  /** Oxygen taken up from the air [g], e.g. by FeO, metals and carbides. */
  oxygenTakenUpG: number;
}

interface Home {
  compound: string;
  oxideIndex: number;
  /** Moles of the compound from one mole of the element. */
  perAtom: number;
  /** Oxygen atoms bound by one atom of the element. */
  oxygenPerAtom: number;
}

/** Where each element goes when fired in air. Iron goes to Fe2O3: FeO is a choice of the kiln, not of the recipe. */
const HOMES: ReadonlyMap<string, Home> = new Map(
  [...OXIDES.filter((oxide) => oxide !== "FeO"), ...VOLATILES].map((compound) => {
    const atoms = parseFormula(compound);
    const element = Object.keys(atoms).find((symbol) => symbol !== "O")!;
    const n = atoms[element]!;
    const oxideIndex = (OXIDES as readonly string[]).indexOf(compound);
    return [element, { compound, oxideIndex, perAtom: 1 / n, oxygenPerAtom: (atoms.O ?? 0) / n }];
  }),
);

/**
 * Fires a compound in air.
 *
 * Each element goes to its glaze oxide: Si to SiO2, iron to Fe2O3 whatever its oxide was, manganese to MnO (MnO2 and
 * Mn3O4 give oxygen off), cobalt to CoO, copper to CuO, lead to PbO, praseodymium to Pr2O3, antimony to Sb2O3.
 * Hydrogen leaves as H2O, carbon as CO2, sulfur as SO3, nitrogen as N2O5, fluorine and chlorine as such, their place
 * being taken by oxygen. The oxygen left over is given off, the oxygen short is taken from the air.
 *
 * Real kilns keep some sulfate and fluorine in the melt and carry a little boron, zinc, lead and alkali away; that is
 * not counted. In reduction iron stays FeO: give the fired composition itself where that matters.
 *
 * @param atoms - atoms per formula unit [-]
 * @returns moles of oxides and grams of gases per mole of formula units, or the elements that have no home here
 * Source: stoichiometry; which oxide counts is `common practice, no source`.
 * @example fire(parseFormula("CaCO3")) // CaO 1 mol, CO2 44.009 g
 */
export function fire(atoms: Atoms): Fired | { homeless: string[] } {
  const oxides = new Map<number, number>();
  const gases: Record<string, number> = {};
  const homeless: string[] = [];
  let spareOxygen = atoms.O ?? 0;
  for (const element in atoms) {
    if (element === "O") continue;
    const home = HOMES.get(element);
    if (!home) {
      homeless.push(element);
      continue;
    }
    const count = atoms[element]!;
    spareOxygen -= count * home.oxygenPerAtom;
    if (home.oxideIndex >= 0) oxides.set(home.oxideIndex, count * home.perAtom);
    else gases[home.compound] = count * (ATOMIC_WEIGHTS.get(element)! + home.oxygenPerAtom * OXYGEN);
  }
  if (homeless.length > 0) return { homeless };
  // Sums of thirds and hundredths leave dust of 1e-16 behind, which is neither loss nor gain.
  if (Math.abs(spareOxygen) < 1e-9) spareOxygen = 0;
  if (spareOxygen > 0) gases.O = spareOxygen * OXYGEN;
  return { oxides, gases, oxygenTakenUpG: spareOxygen < 0 ? -spareOxygen * OXYGEN : 0 };
}

const OXYGEN = ATOMIC_WEIGHTS.get("O")!;
