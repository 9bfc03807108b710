/** What the doubt about an expansion is made of. @module */
import { quantileOf } from "../quantity.ts";
import { EXPANSION } from "./models.ts";
import { glassProperties } from "./properties.ts";
import type { MoleFractions } from "./types.ts";

/** One named part of a doubt. */
export interface DoubtTerm {
  term: "between-papers" | "model";
  /** Half-width of a 90 % interval that this part alone would give [1e-6/K]. */
  halfWidth: number;
  text: string;
  source: string;
}

/**
 * Disagreement between papers over the error of the model, both as 90th percentiles over all glazes: taken to be the
 * same share of the doubt for every glass. Two papers differ by √2 times what either is off.
 */
const PAPERS_SHARE = Math.min(EXPANSION.file.betweenPapers.all.p90 / Math.SQRT2 / EXPANSION.file.heldOut.glaze!.p90, 1);

/** What is left of a doubt, as a share, where all papers agreed [-]. */
export const WITHOUT_PAPERS = Math.sqrt(1 - PAPERS_SHARE ** 2);

/**
 * Parts of the doubt about the 20–300 °C expansion of the bulk glass. Their squares add up to the square of the whole.
 * Glaze on ware against bulk glass, and crystals, are not in it: they belong to the fit.
 * @param moleFractions - fired glass, oxide → mole fraction, summing to 1 [-]
 * @returns disagreement between publications about one glass, and what the model adds to it
 * @example expansionDoubt(glaze).map((part) => part.term) // ["between-papers", "model"]
 */
export function expansionDoubt(moleFractions: MoleFractions): DoubtTerm[] {
  const { expansion } = glassProperties(moleFractions);
  const whole = (quantileOf(expansion, 0.95) - quantileOf(expansion, 0.05)) / 2;
  const papers = whole * PAPERS_SHARE;
  const model = Math.sqrt(whole ** 2 - papers ** 2);
  return [
    {
      term: "between-papers",
      halfWidth: papers,
      text: `Laboratories measuring one and the same glass differ: about ±${papers.toFixed(2)}e-6/K of the doubt is theirs.`,
      source: "sciglass-2019",
    },
    {
      term: "model",
      halfWidth: model,
      text: `Going from the oxides to the expansion by a sum adds ±${model.toFixed(2)}e-6/K for a glass like this one.`,
      source: "sciglass-2019",
    },
  ];
}
