/** Mean residual of the measured glasses around a composition. @module */
import { MODEL_OXIDES } from "../../api/engine/glass/oxides.ts";

/** Weight of each oxide in the distance: what moves expansion most counts most; the rest count 1. */
const WEIGHT: Readonly<Record<string, number>> = { SiO2: 0.4, Al2O3: 0.9, Li2O: 1.5, Na2O: 1.5, K2O: 1.5 };
/** Reach of the bell around a composition [mol %, weighted]. */
const REACH = 4;
/** Imagined rows without residual, so that few neighbours correct little [-]. */
const SHRINK = 2;
/** Residuals count up to this, so that one odd sample does not spread [1e-6/K]. */
const CLIP = 0.6;

/**
 * Makes a function that gives the bell-weighted mean residual around a glass.
 * @param compositions - training rows
 * @param residuals - measured minus predicted of each [1e-6/K]
 * @returns function of a composition → correction to add [1e-6/K]
 */
export function neighbourCorrection(compositions: readonly Float64Array[], residuals: readonly number[]) {
  const scale = MODEL_OXIDES.map((oxide) => (100 * (WEIGHT[oxide] ?? 1)) / REACH);
  const points = compositions.map((x) => x.map((v, i) => v * scale[i]!));
  return (x: Float64Array): number => {
    const at = x.map((v, i) => v * scale[i]!);
    let sum = 0;
    let total = SHRINK;
    points.forEach((point, k) => {
      let d2 = 0;
      for (let i = 0; i < at.length && d2 < 6; i++) d2 += (point[i]! - at[i]!) ** 2;
      if (d2 >= 6) return;
      const weight = Math.exp(-d2);
      sum += weight * Math.max(-CLIP, Math.min(CLIP, residuals[k]!));
      total += weight;
    });
    return sum / total;
  };
}
