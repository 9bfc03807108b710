/** Expansion, glass transition and stiffness of a glass, with what is not known about them. @module */
import type { Notice } from "../errors.ts";
import type { MeasuredModel } from "./measured-model.ts";
import { EXPANSION, TRANSITION, YOUNGS } from "./models.ts";
import { MODEL_OXIDES, vectorOf } from "./oxides.ts";
import { QUANTITY_COUNT, quantitiesOf } from "./terms.ts";
import type { GlassProperties, MoleFractions } from "./types.ts";

/** Reused between calls: the engine is synchronous, and a bulk fit asks this thousands of times a second. */
const x = new Float64Array(MODEL_OXIDES.length);
const q = new Float64Array(QUANTITY_COUNT);

/** An oxide that no model knows starts to matter above this [mole fraction]. */
const NEGLIGIBLE = 0.001;

/**
 * The three glass properties that decide fit, each with the spread found on publications unseen in fitting.
 *
 * @param moleFractions - fired glass, oxide → mole fraction, summing to 1 [-]
 * @returns expansion (mean 20–300 °C, linear) [1e-6/K], glass transition [°C], Young's modulus [GPa], each as
 *   value + scale × z with z from the model's table of standardised residuals; and warnings
 * @remarks Valid inside the training range (see `expansionModels()`); outside it answers all the same, with a
 *   wider spread and a warning that names the oxide. An oxide unknown to the models is left out, the rest scaled
 *   up, and the spread widened by its share.
 * Source: SciGlass data (sciglass-2019), fitted by data/fitting/fit-models.ts.
 */
export function glassProperties(moleFractions: MoleFractions): GlassProperties {
  const unknown = vectorOf(moleFractions, x);
  quantitiesOf(x, q);
  const warnings: Notice[] = [];
  if (unknown > NEGLIGIBLE) warnings.push(unknownOxides(moleFractions, unknown));
  warnOutside(EXPANSION, warnings);
  const widen = 1 + 10 * unknown;
  return {
    expansion: { value: EXPANSION.predict(q), scale: EXPANSION.scale(q) * widen, shape: EXPANSION.shape },
    transitionC: { value: TRANSITION.predict(q), scale: TRANSITION.scale(q) * widen, shape: TRANSITION.shape },
    youngsGPa: { value: YOUNGS.predict(q), scale: YOUNGS.scale(q) * widen, shape: YOUNGS.shape },
    warnings,
    sources: ["sciglass-2019"],
  };
}

function warnOutside(model: MeasuredModel, warnings: Notice[]): void {
  for (let i = 0; i < MODEL_OXIDES.length; i++) {
    const share = x[i]!;
    const low = model.low[i]!;
    const high = model.high[i]!;
    if (share <= high + 1e-9 && share >= low - 1e-9) continue;
    const oxide = MODEL_OXIDES[i]!;
    const limit = share > high ? `no more than ${percent(high)}` : `no less than ${percent(low)}`;
    warnings.push({
      code: "outside-training-range",
      message: `${oxide} is ${percent(share)} mol % of this glass; the measured glasses behind the figures have ${limit} mol %. The interval is widened, and a test tile will say more than the sum.`,
    });
  }
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
