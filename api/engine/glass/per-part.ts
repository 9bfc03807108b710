/** What one more part of each material would do to the expansion. @module */
import type { GlazeChemistry } from "../chemistry/types.ts";
import { slopesByWeight } from "./contributions.ts";

/** One line of a recipe. */
export interface PartEffect {
  label: string;
  /** Id of a built-in material, null for a line of its own. */
  material: string | null;
  /** Change of the 20–300 °C expansion when one more part goes in, the other parts staying [1e-6/K per part]. */
  perPart: number;
}

/**
 * Local derivative of the expansion by the parts of each material.
 *
 *     per part = Σⱼ gⱼ · dⱼ / G,   gⱼ grams of oxide j that a part leaves, G grams of glass, dⱼ per weight fraction
 *
 * @param chemistry - analysed recipe; a glaze given by its oxides has no lines and gets none
 * @returns one entry a line, in the order of the recipe
 * @remarks First order: good for a few parts in a hundred; put the recipe through again for more.
 */
export function expansionPerPart(chemistry: GlazeChemistry): PartEffect[] {
  if (chemistry.lines.length === 0) return [];
  // Of every oxide: a line of which none has gone in yet may bring one that the glass does not hold.
  const slopes = slopesByWeight(chemistry.moleFractions);
  // Grams that one part weighs in 100 g of dry batch: the same for a line of which none has gone in yet.
  const partG = 100 / chemistry.lines.reduce((sum, line) => sum + line.parts, 0);
  return chemistry.lines.map((line) => {
    let effect = 0;
    for (const oxide in line.weightPercent) {
      effect += ((line.weightPercent[oxide]! * partG) / chemistry.massBalance.glassG) * (slopes.get(oxide) ?? 0);
    }
    return { label: line.label, material: line.material, perPart: effect };
  });
}
