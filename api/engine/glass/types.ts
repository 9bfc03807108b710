/** What the glass models take and give. @module */
import type { Notice } from "../errors.ts";
import type { Estimate, Quantity } from "../quantity.ts";

/** Mole fractions of a fired glass keyed by oxide formula, summing to 1. */
export type MoleFractions = Readonly<Record<string, number>>;

/** Weight per cent of a fired glass keyed by oxide formula, summing to 100. */
export type WeightPercent = Readonly<Record<string, number>>;

/** The three properties that decide how a glaze pulls on its body. */
export interface GlassProperties {
  /** Mean linear expansion, 20–300 °C [1e-6/K]. */
  expansion: Estimate;
  /** Glass transition as usually reported (dilatometer or calorimeter, about 10^12 Pa·s) [°C]. */
  transitionC: Estimate;
  /** Young's modulus at room temperature [GPa]. */
  youngsGPa: Estimate;
  /** Oxides outside what the model was trained on, named with their limits; oxides the model lacks. */
  warnings: Notice[];
  sources: string[];
}

/** What one oxide adds to the expansion where silica would stand in its place. */
export interface OxideContribution {
  oxide: string;
  /** Share of the difference to the reference glass [1e-6/K]. */
  contribution: number;
  /** Change when one more mole per cent comes in and the rest is scaled down [1e-6/K per mol %]. */
  perMolePercent: number;
  /** Change when one more weight per cent comes in and the rest is scaled down [1e-6/K per wt %]. */
  perWeightPercent: number;
}

/** The expansion taken apart: `reference` and the contributions add up to the prediction exactly. */
export interface ExpansionContributions {
  referenceOxide: "SiO2";
  /** What the model's formula gives for the reference oxide alone; a yardstick, not a measured value [1e-6/K]. */
  reference: number;
  oxides: OxideContribution[];
}

/** One model's answer about one glass. */
export interface ModelEstimate {
  /** Identifier, e.g. `appen-1949`. */
  model: string;
  name: string;
  kind: "measured-glass" | "published-set";
  /** Null where the set lacks too much of the glass to say anything. */
  expansion: Quantity | null;
  basis: "weight" | "mole";
  /** Range of the mean [°C]; null where the publication does not say. */
  rangeC: [number, number] | null;
  /** Oxides of the glass that the model has no figure for. */
  missingOxides: string[];
  /** Oxides outside the range that the model was made for. */
  outside: string[];
  sources: string[];
  note: string;
}

/** Every model beside each other. */
export interface ExpansionEstimates {
  best: ModelEstimate;
  all: ModelEstimate[];
  warnings: Notice[];
}

/** How close a model came to measured glasses. */
export interface AccuracyFigures {
  /** Rows compared. */
  n: number;
  medianAbsoluteError: number;
  /** Mean of predicted minus measured; above 0 reads high. */
  bias: number;
  /** 90th percentile of the absolute error. */
  p90: number;
  rmse: number;
}

/** What a model is, what it covers and how well it does. */
export interface ModelSummary {
  id: string;
  name: string;
  kind: "measured-glass" | "published-set";
  basis: "weight" | "mole";
  rangeC: [number, number] | null;
  unit: string;
  /** Oxides the model has figures for. */
  oxides: string[];
  /** Limits of composition by oxide, in per cent of `basis`; absent where the publication does not say. */
  validity: Record<string, [number, number]>;
  /** Domain name (`glaze`, `stoneware-like`) → figures in `unit`. */
  accuracy: Record<string, AccuracyFigures>;
  /** How the figures were scored. */
  accuracyNote: string;
  sources: string[];
  provenance: string;
}
