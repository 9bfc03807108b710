/** Says in words when a glass leaves what the models were fitted to. @module */
import type { Notice } from "../errors.ts";
import { MODEL_OXIDES } from "./oxides.ts";
import type { MoleFractions } from "./types.ts";

/** An oxide that no model knows starts to matter above this [mole fraction]. */
const NEGLIGIBLE = 0.001;

/** Below this share of silica, boron and phosphate together nothing sets to a glass (from memory) [mole fraction]. */
const LEAST_FORMER = 0.25;
const FORMERS = (["SiO2", "B2O3", "P2O5"] as const).map((oxide) => MODEL_OXIDES.indexOf(oxide));

/** Lower and upper ends of the training rows by oxide, mole fractions in the order of MODEL_OXIDES. */
export interface TrainingRange {
  low: Float64Array;
  high: Float64Array;
}

/** Reads the range of a model file. */
export function trainingRange(molePercent: Readonly<Record<string, [number, number]>>): TrainingRange {
  const ends = MODEL_OXIDES.map((oxide): [number, number] => molePercent[oxide] ?? [0, 0]);
  return { low: Float64Array.from(ends, (r) => r[0] / 100), high: Float64Array.from(ends, (r) => r[1] / 100) };
}

/**
 * One warning for each oxide outside the range, one for the oxides that no measured glass has, and one where there is
 * too little glass former to call it a glass.
 * @param x - mole fractions in the order of MODEL_OXIDES [-]
 * @param unknown - mole fraction of oxides that are not among them [-]
 * @param moleFractions - the glass as given, for the names of those
 */
export function rangeWarnings(
  { low, high }: TrainingRange,
  x: Float64Array,
  unknown: number,
  moleFractions: MoleFractions,
): Notice[] {
  const warnings: Notice[] = [];
  if (unknown > NEGLIGIBLE) warnings.push(unknownOxides(moleFractions, unknown));
  let formers = 0;
  for (const i of FORMERS) formers += x[i]!;
  if (formers < LEAST_FORMER) warnings.push(noFormer(formers));
  for (let i = 0; i < MODEL_OXIDES.length; i++) {
    const share = x[i]!;
    if (share <= high[i]! + 1e-9 && share >= low[i]! - 1e-9) continue;
    const limit = share > high[i]! ? `no more than ${percent(high[i]!)}` : `no less than ${percent(low[i]!)}`;
    warnings.push({
      code: "outside-training-range",
      message: `${MODEL_OXIDES[i]} is ${percent(share)} mol % of this glass; the measured glasses behind the figures have ${limit} mol %. The interval is widened, and a test tile will say more than the sum.`,
    });
  }
  return warnings;
}

/** Factor on the scale for oxides that were left out: a tenth of the glass unknown doubles it. A choice, no source. */
export function widening(unknown: number): number {
  return 1 + 10 * unknown;
}

function noFormer(share: number): Notice {
  return {
    code: "no-glass-former",
    message: `Silica, boron and phosphate together are ${percent(share)} mol % here: too little for anything to set to a glass. The figures are what the sums give and mean next to nothing; look for a slip in the recipe or the analysis.`,
  };
}

function unknownOxides(moleFractions: MoleFractions, share: number): Notice {
  const known: readonly string[] = MODEL_OXIDES;
  const names = Object.keys(moleFractions).filter((oxide) => moleFractions[oxide]! > 0 && !known.includes(oxide));
  return {
    code: "oxide-not-in-model",
    message: `The measured glasses say nothing about ${names.join(", ")} (${percent(share)} mol % of this glass). It is left out of the sum, and the interval is widened.`,
  };
}

function percent(share: number): string {
  return String(Math.round(share * 1000) / 10);
}
