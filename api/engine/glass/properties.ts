/** Expansion, glass transition and stiffness of a glass, with what is not known about them. @module */
import { EXPANSION, TRANSITION, YOUNGS } from "./models.ts";
import { MODEL_OXIDES, vectorOf } from "./oxides.ts";
import { rangeWarnings, widening } from "./range-warnings.ts";
import { QUANTITY_COUNT, quantitiesOf } from "./terms.ts";
import type { GlassProperties, MoleFractions } from "./types.ts";

/** Reused between calls: the engine is synchronous, and a bulk fit asks this thousands of times a second. */
const x = new Float64Array(MODEL_OXIDES.length);
const q = new Float64Array(QUANTITY_COUNT);

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
  const warnings = rangeWarnings(EXPANSION, x, unknown, moleFractions);
  const widen = widening(unknown);
  return {
    expansion: { value: EXPANSION.predict(q), scale: EXPANSION.scale(q) * widen, shape: EXPANSION.shape },
    transitionC: { value: TRANSITION.predict(q), scale: TRANSITION.scale(q) * widen, shape: TRANSITION.shape },
    youngsGPa: { value: YOUNGS.predict(q), scale: YOUNGS.scale(q) * widen, shape: YOUNGS.shape },
    warnings,
    sources: ["sciglass-2019"],
  };
}
