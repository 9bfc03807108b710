/** What the chemistry of a glaze says. @module */
import type { Notice } from "../errors.ts";

/** Oxide → number; only oxides present, in the order of `OXIDES`. */
export type OxideRecord = Record<string, number>;

/** Seger formula: moles with all fluxes together brought to one. */
export interface SegerFormula {
  /** Moles of each oxide per mole of fluxes [-]. */
  moles: OxideRecord;
  /** Moles of fluxes, 1 but for rounding [-]. */
  fluxSum: number;
  /** Moles of SiO2 per mole of Al2O3 [-], `null` without alumina. */
  silicaToAlumina: number | null;
  /** Share of the alkalis (Li, Na, K, Rb, Cs) in the fluxes [-]. */
  alkaliShare: number | null;
}

/** One weighed line, read. */
export interface ChemistryLine {
  label: string;
  /** Id of the built-in material, `null` for a line with its own analysis or formula. */
  material: string | null;
  parts: number;
  /** Share of the whole dry batch, additions included [-]. */
  share: number;
  addition: boolean;
  /** Net loss in the kiln [wt % of the dried material]; negative where it takes up oxygen. */
  lossOnIgnitionPercent: number;
  /** What the kiln leaves of 100 g dried material [g], by oxide. */
  weightPercent: Readonly<OxideRecord>;
}

/** Chemistry of a glaze, every number unrounded. */
export interface GlazeChemistry {
  /** Fired glass, sums to 1 [-]. */
  moleFractions: Readonly<OxideRecord>;
  fired: { weightPercent: OxideRecord; molePercent: OxideRecord };
  /** Of 100 g of dry batch: what the kiln leaves, by oxide, and what it drives off [wt %]. */
  asWeighed: { weightPercent: OxideRecord; lossOnIgnitionPercent: number };
  /** Moles in 100 g of fired glass [mol]. */
  moles: OxideRecord;
  /** `null`, with a warning, when there is no flux. */
  seger: SegerFormula | null;
  /** Standard deviation of the fired weight per cent from the spread of the materials [wt %]. */
  weightPercentSd: OxideRecord;
  /** Empty for a glaze given by its oxides. */
  lines: ChemistryLine[];
  /** Per 100 g of dry batch; `error` is weighed less glass less lost [g]. */
  massBalance: { weighedG: number; glassG: number; lostG: number; error: number };
  warnings: Notice[];
  cautions: Notice[];
  /** Keys of `data/sources.json`. */
  sources: string[];
}
