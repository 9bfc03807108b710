/** Yields of the built-in materials, worked out once when the engine is loaded. @module */
import { findMaterial, listMaterials } from "../recipe/materials.ts";
import type { Material } from "../recipe/types.ts";
import { yieldOfAnalysis } from "./analysis.ts";
import { type Yield, yieldOfFormula } from "./yield.ts";

const YIELDS: ReadonlyMap<string, Yield> = new Map(listMaterials().map((material) => [material.id, work(material)]));

function work({ analysis, formula, plusMinusWeightPercent }: Material): Yield {
  if (analysis) return yieldOfAnalysis(analysis, "", plusMinusWeightPercent).yielded;
  return yieldOfFormula(formula!, "", plusMinusWeightPercent);
}

/**
 * Yield of a built-in material.
 * @param material - as found by `findMaterial`
 * @returns the yield per gram
 */
export function yieldOfMaterial(material: Material): Yield {
  return YIELDS.get(material.id)!;
}

/**
 * What the kiln leaves of a built-in material, and what it drives off, whether kept by formula or by analysis.
 * @param idOrAlias - e.g. `whiting`
 * @returns g of each oxide from 100 g as dried, the half-width of a 90 % interval on it, and the net loss [wt %]
 * @throws UnknownNameError with the nearest name
 * @example materialAnalysis("calcite").lossOnIgnitionPercent // 43.971
 */
export function materialAnalysis(idOrAlias: string): {
  weightPercent: Readonly<Record<string, number>>;
  plusMinusWeightPercent: Readonly<Record<string, number>>;
  lossOnIgnitionPercent: number;
} {
  const { weightPercent, plusMinus, lost } = yieldOfMaterial(findMaterial(idOrAlias));
  const names = Object.keys(weightPercent);
  return {
    weightPercent,
    plusMinusWeightPercent: Object.fromEntries(names.map((name, i) => [name, 100 * plusMinus[i]!])),
    lossOnIgnitionPercent: 100 * lost,
  };
}
