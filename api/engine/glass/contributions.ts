/** The predicted expansion taken apart by oxide. @module */
import { molarMass, OXIDE_INDEX, OXIDE_MASS } from "../chemistry/oxides.ts";
import { EXPANSION } from "./models.ts";
import { MODEL_OXIDES, vectorOf } from "./oxides.ts";
import { QUANTITY_COUNT, quantitiesOf } from "./terms.ts";
import type { ExpansionContributions, MoleFractions } from "./types.ts";

/** Molar mass by place in MODEL_OXIDES [g/mol]. */
const MASS = MODEL_OXIDES.map((oxide) => OXIDE_MASS[OXIDE_INDEX.get(oxide)!]!);

/**
 * Splits the predicted expansion into what each oxide adds where silica would stand in its place.
 *
 *     prediction = f(silica) + Σ cⱼ,   cⱼ = xⱼ · (∂f/∂xⱼ − ∂f/∂x_SiO2) at the glass halfway between silica and this one
 *
 * The rule is the path integral from pure silica straight to the glass. Along that line every term of the model is
 * a parabola at most, so the slope halfway is the mean slope, and the parts add up exactly. Silica itself gets 0.
 * `reference` is what the formula gives for silica alone: a yardstick far outside the data, not the expansion of
 * fused silica.
 * The local derivatives answer another question: one more per cent of this oxide, the rest scaled down.
 *
 *     per mole %:   (∂f/∂xⱼ − Σ xₖ ∂f/∂xₖ) / 100
 *     per weight %: the same, × (M / Mⱼ), with M = Σ xₖ Mₖ the mean molar mass
 *
 * Oxides that the model lacks are left out of x, which is scaled up to 1. One per cent of the whole glass is more than one
 * of what is left, so both are divided by the share that is left, by moles and by weight.
 *
 * @param moleFractions - fired glass, oxide → mole fraction, summing to 1 [-]
 * @returns reference [1e-6/K] and, by oxide present, contribution [1e-6/K] and derivatives [1e-6/K per %]
 */
export function expansionContributions(moleFractions: MoleFractions): ExpansionContributions {
  const { x, perMolePercent, perWeightPercent } = derivatives(moleFractions);
  const halfway = slopesAt(x.map((share, i) => (i === 0 ? (1 + share) / 2 : share / 2)));
  const oxides: ExpansionContributions["oxides"][number][] = [];
  for (let i = 0; i < x.length; i++) {
    if (x[i] === 0) continue;
    oxides.push({
      oxide: MODEL_OXIDES[i]!,
      contribution: x[i]! * (halfway[i]! - halfway[0]!),
      perMolePercent: perMolePercent[i]!,
      perWeightPercent: perWeightPercent[i]!,
    });
  }
  return { referenceOxide: "SiO2", reference: SILICA, oxides };
}

/**
 * Local derivatives by weight of all oxides that the model knows, those not in the glass yet among them.
 * @param moleFractions - fired glass, oxide → mole fraction, summing to 1 [-]
 * @returns oxide → change when one more weight per cent comes in and the rest is scaled down [1e-6/K per wt %]
 */
export function slopesByWeight(moleFractions: MoleFractions): ReadonlyMap<string, number> {
  const { perWeightPercent } = derivatives(moleFractions);
  return new Map(MODEL_OXIDES.map((oxide, i) => [oxide, perWeightPercent[i]!]));
}

/** Derivatives by the whole glass, in the model's order, with the glass in that order. */
function derivatives(moleFractions: MoleFractions): Record<"x" | "perMolePercent" | "perWeightPercent", Float64Array> {
  const x = new Float64Array(MODEL_OXIDES.length);
  const left = 1 - vectorOf(moleFractions, x);
  const slopes = slopesAt(x);
  let meanSlope = 0;
  for (let i = 0; i < x.length; i++) meanSlope += x[i]! * slopes[i]!;
  const perMolePercent = slopes.map((slope) => (slope - meanSlope) / 100 / left);
  // By weight the share left is left·M over the mean molar mass of the whole, so that M falls out.
  const meanMass = meanMassOf(moleFractions);
  return { x, perMolePercent, perWeightPercent: perMolePercent.map((slope, i) => (slope * meanMass) / MASS[i]!) };
}

/** Mean molar mass of a glass [g/mol], what the model lacks included. */
function meanMassOf(moleFractions: MoleFractions): number {
  let moles = 0;
  let mass = 0;
  for (const oxide in moleFractions) {
    moles += moleFractions[oxide]!;
    mass += moleFractions[oxide]! * molarMass(oxide);
  }
  return mass / moles;
}

function slopesAt(x: Float64Array): Float64Array {
  quantitiesOf(x, quantities);
  return EXPANSION.gradient(quantities);
}

const quantities = new Float64Array(QUANTITY_COUNT);
/** What the formula gives for silica alone [1e-6/K]. */
const SILICA = EXPANSION.predict(Float64Array.from({ length: QUANTITY_COUNT }, (_, i) => (i === 0 ? 1 : 0)));
