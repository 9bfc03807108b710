/** Evaluates a property fitted to measured glasses: prediction, spread, gradient. @module */
import type { ModelFile } from "./model-file.ts";
import { MODEL_OXIDES } from "./oxides.ts";
import { addGradient, parseTerm, QUANTITIES, QUANTITY_COUNT } from "./terms.ts";

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

/** How fast the doubt grows outside the training range: the logarithm of the scale per mole fraction beyond it. */
const WIDENING_PER_MOLE_FRACTION = 8;

/**
 * Prepares a fitted property.
 * @param file - contents of a file in data/models
 * @throws Error when the file names a term that terms.ts does not know
 */
export function measuredModel(file: ModelFile): MeasuredModel {
  const terms = Object.entries(file.terms).map(([name, coefficient]) => ({ ...parseTerm(name), coefficient }));
  const count = terms.length;
  const first = Int32Array.from(terms, (t) => t.first);
  const second = Int32Array.from(terms, (t) => t.second);
  const weight = Float64Array.from(terms, (t) => t.coefficient);
  const { base, slopes, limits } = file.spread;
  const spread = Float64Array.from(QUANTITIES, (name) => slopes[name] ?? 0);
  const ranges = MODEL_OXIDES.map((oxide): [number, number] => file.training.rangesMolePercent[oxide] ?? [0, 0]);
  const low = Float64Array.from(ranges, (r) => r[0] / 100);
  const high = Float64Array.from(ranges, (r) => r[1] / 100);
  return {
    file,
    shape: Object.freeze([...file.shape]),
    low,
    high,
    predict(q) {
      let sum = file.intercept;
      for (let i = 0; i < count; i++) {
        const b = second[i]!;
        sum += weight[i]! * q[first[i]!]! * (b < 0 ? 1 : q[b]!);
      }
      return sum;
    },
    scale(q) {
      let log = base;
      for (let i = 0; i < QUANTITY_COUNT; i++) log += spread[i]! * q[i]!;
      log = Math.min(Math.max(log, limits[0]), limits[1]);
      let beyond = 0;
      for (let i = 0; i < low.length; i++) beyond += Math.max(q[i]! - high[i]!, low[i]! - q[i]!, 0);
      return Math.exp(log + WIDENING_PER_MOLE_FRACTION * beyond);
    },
    gradient(q) {
      const gradient = new Float64Array(MODEL_OXIDES.length);
      for (let i = 0; i < count; i++) {
        const a = first[i]!;
        const b = second[i]!;
        if (b < 0) addGradient(a, weight[i]!, q, gradient);
        else {
          addGradient(a, weight[i]! * q[b]!, q, gradient);
          addGradient(b, weight[i]! * q[a]!, q, gradient);
        }
      }
      return gradient;
    },
  };
}
