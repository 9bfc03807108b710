/** The oxides a glaze is reckoned in: names, molar masses, what other spellings are read as. @module */
import { closest, type Issue } from "../errors.ts";
import { ATOMIC_WEIGHTS } from "./atomic-weights.ts";
import { type Atoms, parseFormula } from "./formula.ts";

/**
 * Oxides counted in a fired glaze, in the order in which every table lists them. The first 24 are those of the
 * measured glasses; the rest are kept in the chemistry, and models that lack them say so.
 */
export const OXIDES = [
  ...["SiO2", "Al2O3", "B2O3", "Li2O", "Na2O", "K2O", "MgO", "CaO", "SrO", "BaO", "ZnO", "PbO"],
  ...["TiO2", "ZrO2", "P2O5", "Fe2O3", "FeO", "MnO", "SnO2", "CoO", "CuO", "NiO", "Cr2O3", "Bi2O3"],
  ...["V2O5", "Sb2O3", "CdO", "CeO2", "Pr2O3", "Rb2O", "HfO2", "Cs2O", "BeO", "La2O3", "Nb2O5"],
] as const;

/** Most oxides read in one analysis [-]; no laboratory lists more. */
export const MAX_OXIDES = 64;

/** Position of an oxide in {@link OXIDES}. */
export const OXIDE_INDEX: ReadonlyMap<string, number> = new Map(OXIDES.map((oxide, i) => [oxide, i]));

/**
 * Molar mass of any formula, the sum of its atoms' standard atomic weights.
 * @param formula - oxide or mineral, as {@link parseFormula} reads it
 * @returns molar mass [g/mol], good to about 0.01 %; lead compounds to 0.5 %, for lead differs from ore to ore
 * @throws ImpossibleValueError or UnknownNameError when the formula cannot be read
 * Source: ciaaw-2021.
 * @example molarMass("SiO2") // 60.083
 */
export function molarMass(formula: string): number {
  return massOf(parseFormula(formula));
}

/** Mass of one mole of the given atoms [g/mol]. */
export function massOf(atoms: Atoms): number {
  let mass = 0;
  for (const symbol in atoms) mass += atoms[symbol]! * ATOMIC_WEIGHTS.get(symbol)!;
  return mass;
}

/** Molar mass of each of {@link OXIDES} [g/mol]. */
export const OXIDE_MASS: readonly number[] = OXIDES.map(molarMass);

/** What leaves in the kiln, as the compound an analysis lists it under. */
export const VOLATILES = ["H2O", "CO2", "SO3", "N2O5", "F", "Cl"] as const;

/**
 * Spellings of analyses that are read as something else: higher and lower oxides of an element whose glaze oxide
 * stands in {@link OXIDES}, total iron as metal, carbon, and the two waters of mineral analyses.
 */
const READ_AS: Readonly<Record<string, string>> = {
  ...{ Fe: "Fe", Fe3O4: "Fe3O4", MnO2: "MnO2", Mn2O3: "Mn2O3", Mn3O4: "Mn3O4", Co3O4: "Co3O4", Co2O3: "Co2O3" },
  ...{ Cu2O: "Cu2O", Ni2O3: "Ni2O3", Pb3O4: "Pb3O4", PbO2: "PbO2", Pr6O11: "Pr6O11", PrO2: "PrO2" },
  ...{ Sb2O5: "Sb2O5", CrO3: "CrO3", Ce2O3: "Ce2O3", C: "C", S: "S", "H2O+": "H2O", "H2O-": "H2O" },
};

const KNOWN: ReadonlyMap<string, Atoms> = new Map([
  ...[...OXIDES, ...VOLATILES].map((name): [string, Atoms] => [name, parseFormula(name)]),
  ...Object.entries(READ_AS).map(([name, formula]): [string, Atoms] => [name, parseFormula(formula)]),
]);

/**
 * Atoms of a name that an analysis may list, or undefined when it is none.
 * @param name - e.g. `SiO2`, `MnO2`, `H2O+`
 */
export function analysisAtoms(name: string): Atoms | undefined {
  return KNOWN.get(name);
}

/**
 * Oxides that analyses list and that are not counted: left out of a glaze where they are traces (traces.ts). Those that
 * are rather a slip of the pen for one counted (PdO, PtO2, EuO, AgO) and metals but the noble ones are not among them.
 */
const TRACES: ReadonlyMap<string, Atoms> = new Map(
  [
    ...[
      "Sc2O3",
      "Ga2O3",
      "GeO2",
      "As2O3",
      "As2O5",
      "As",
      "SeO2",
      "SeO3",
      "Se",
      "Y2O3",
      "MoO2",
      "MoO3",
      "RuO2",
      "Rh2O3",
    ],
    ...["Pd", "Ag2O", "Ag", "In2O3", "TeO2", "TeO3", "Nd2O3", "Sm2O3", "Eu2O3", "Gd2O3", "Tb2O3", "Tb4O7", "Dy2O3"],
    ...["Ho2O3", "Er2O3", "Tm2O3", "Yb2O3", "Lu2O3", "Ta2O5", "WO2", "WO3", "Pt", "Au", "Au2O3", "HgO", "Hg2O", "Tl2O"],
    ...["Tl2O3", "ThO2", "UO2", "UO3", "U3O8"],
  ].map((name) => [name, parseFormula(name)]),
);

/**
 * Atoms of an oxide that an analysis may list and that is not counted, or undefined when it is none.
 * @param name - e.g. `Nd2O3`
 */
export function traceAtoms(name: string): Atoms | undefined {
  return TRACES.get(name);
}

/** Elements whose oxide, or whose gas, is counted here. */
const COUNTED: ReadonlySet<string> = new Set([...KNOWN.values()].flatMap((atoms) => Object.keys(atoms)));

/** Names of tables that are no oxide, and what is to be written for them. */
const NO_OXIDE: readonly { name: RegExp; say: string; allowed?: string[] }[] = [
  {
    name: /^(KNaO|NaKO|R2O)$/i,
    say: "stands for K2O and Na2O together. Write each by itself.",
    allowed: ["K2O", "Na2O"],
  },
  {
    name: /^(LOI|L\.O\.I\.?)$/i,
    say: "is no oxide. Leave it out of a fired glass; a material's analysis has a field of its own for it, lossOnIgnitionPercent.",
  },
];

/** Whether this is the right formula of a compound of some element that is not counted, such as Nd2O3. */
function isForeign(name: string): boolean {
  try {
    return Object.keys(parseFormula(name)).some((element) => !COUNTED.has(element));
  } catch {
    return false;
  }
}

/**
 * The issue to report for an oxide that is not known, with the spelling that was probably meant.
 * A zero for the letter O and wrong capitals are seen through first. An oxide known and not counted is no slip of the pen:
 * nothing is suggested in its place, nor in that of another right formula of such an element that is near to none.
 * @param name - what was read
 * @param pointer - where it stands
 * @example unknownOxide("K20", "/oxides/amounts/K20").suggestion // "K2O"
 */
export function unknownOxide(name: string, pointer: string): Issue {
  const shown = name.length > 40 ? `${name.slice(0, 40)}…` : name;
  const wanted = name.replace(/0/g, "O").toLowerCase();
  const names = [...KNOWN.keys(), ...TRACES.keys()];
  const sameLetters = names.find((known) => known.toLowerCase() === wanted);
  const lumped = NO_OXIDE.find((one) => one.name.test(name));
  if (lumped) {
    const { say, allowed } = lumped;
    return { pointer, message: `“${shown}” ${say}`, ...(allowed ? { allowed } : {}) };
  }
  const foreign = isForeign(name);
  // Metals are too short for that: one letter is a third of W.
  const meant = sameLetters ?? (foreign && !name.includes("O") ? undefined : closest(name, names));
  const suggestion = TRACES.has(name) ? undefined : meant;
  if (!suggestion && foreign) {
    const message = `“${shown}” is not among the oxides counted here. Leave a trace of it out; of a glaze that holds more I know too little.`;
    return { pointer, message, allowed: [...OXIDES] };
  }
  const message = `“${shown}” is not an oxide known here.${suggestion ? ` Did you mean ${suggestion}?` : " Write it as a formula, such as SiO2 or K2O."}`;
  return suggestion ? { pointer, message, suggestion } : { pointer, message, allowed: [...OXIDES] };
}
