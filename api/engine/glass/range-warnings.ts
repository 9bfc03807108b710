/** Says in words when a glass leaves what the models were fitted to. @module */
import type { Notice } from "../errors.ts";
import { MODEL_OXIDES } from "./oxides.ts";
import type { MoleFractions } from "./types.ts";

/** An oxide that no model knows starts to matter above this [mole fraction]. */
const NEGLIGIBLE = 0.001;

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
 * One warning for each oxide outside the range, and one for the oxides that no measured glass has.
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
