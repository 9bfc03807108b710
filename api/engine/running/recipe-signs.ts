/** Signs in a recipe of trouble to come: clay that shrinks, powders that fluff, lines that give off gas. @module */
import { findMaterial } from "../recipe/materials.ts";
import type { ReadCoat } from "./coats.ts";

/** What the raw recipe brings, as shares of the dry batch [%]; null for a glaze known by oxides alone. */
export interface RecipeSigns {
  /** Clay, counted by what it is dug as; not what was calcined, which has shrunk already. */
  clayPercent: number | null;
  /** Light magnesia carbonate and raw zinc oxide, which shrink far as they dry and sinter. */
  fluffyPercent: number | null;
  /** Lost in the kiln: water, carbon dioxide [% of the dry batch]. */
  lossPercent: number | null;
  /** Lost by lines that lose more than a quarter of their weight, mostly carbonates [% of the dry batch]. */
  carbonatePercent: number | null;
}

const CALCINED = "calcined-kaolin";
const FLUFFY = new Set(["magnesium-carbonate", "zinc-oxide"]);
/** A line that loses more than this is taken for a carbonate or a hydrate [%]. */
const GASSY = 25;

/**
 * Reads the signs of one coat.
 * @example recipeSigns(coat).clayPercent // 12
 */
export function recipeSigns({ chemistry }: Pick<ReadCoat, "chemistry">): RecipeSigns {
  const { lines } = chemistry;
  if (lines.length === 0) return { clayPercent: null, fluffyPercent: null, lossPercent: null, carbonatePercent: null };
  let [clay, fluffy, carbonate] = [0, 0, 0];
  for (const { material, share, lossOnIgnitionPercent } of lines) {
    if (material !== null && material !== CALCINED && findMaterial(material).kind === "clays") clay += share;
    if (material !== null && FLUFFY.has(material)) fluffy += share;
    if (lossOnIgnitionPercent > GASSY) carbonate += (share * lossOnIgnitionPercent) / 100;
  }
  return {
    clayPercent: 100 * clay,
    fluffyPercent: 100 * fluffy,
    lossPercent: chemistry.asWeighed.lossOnIgnitionPercent,
    carbonatePercent: 100 * carbonate,
  };
}
