/** Evaluates a property fitted to measured glasses: prediction, spread, gradient. @module */
import type { ModelFile } from "./model-file.ts";
import { MODEL_OXIDES } from "./oxides.ts";
import { trainingRange } from "./range-warnings.ts";
import { scaleFunction } from "./spread.ts";
import { termSum } from "./term-sum.ts";
import { addGradient, QUANTITY_COUNT } from "./terms.ts";

/** A model file made ready for the hot loop. */
export interface MeasuredModel {
  file: ModelFile;
  /** Prediction from the quantities of a glass, in the model's unit. */
  predict(q: Float64Array): number;
  /** Scale of the residuals, in the model's unit; grows outside the training range. */
  scale(q: Float64Array): number;
  /** Derivatives by each oxide's mole fraction, others held (not renormalised) [unit per mole fraction]. */
  gradient(q: Float64Array): Float64Array;
  /** Standardised residual quantiles. */
  shape: readonly number[];
  /** Training range by oxide, mole fractions in the order of MODEL_OXIDES. */
  low: Float64Array;
  high: Float64Array;
}

/**
 * Prepares a fitted property.
 * @param file - contents of a file in data/models
 * @throws Error when the file names a term that terms.ts does not know
 */
export function measuredModel(file: ModelFile): MeasuredModel {
  const { count, first, second, weight, of: predict } = termSum(file);
  const { low, high } = trainingRange(file.training.rangesMolePercent);
  return {
    file,
    shape: Object.freeze([...file.shape]),
    low,
    high,
    predict,
    scale: scaleFunction(file.spread, low, high),
    gradient(q) {
      // First by quantity, then each quantity by its oxides: a third of the work of going term by term.
      const byQuantity = new Float64Array(QUANTITY_COUNT);
      for (let i = 0; i < count; i++) {
        const a = first[i]!;
        const b = second[i]!;
        if (b < 0) byQuantity[a] = byQuantity[a]! + weight[i]!;
        else {
          byQuantity[a] = byQuantity[a]! + weight[i]! * q[b]!;
          byQuantity[b] = byQuantity[b]! + weight[i]! * q[a]!;
        }
      }
      const gradient = new Float64Array(MODEL_OXIDES.length);
      for (let k = 0; k < QUANTITY_COUNT; k++) if (byQuantity[k] !== 0) addGradient(k, byQuantity[k]!, q, gradient);
      return gradient;
    },
  };
}
