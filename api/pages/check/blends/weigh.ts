/** What to weigh: every corner once, then from those each tile. @module */
import type { RecipeLine } from "@ringtrue/sdk";
import type { Tile } from "./ask-blend.ts";
import type { BlendQuestion, BlendRequest } from "./blend-question.ts";

/** One corner, mixed dry before the tiles are weighed. */
export interface Heap {
  /** By its whole name. */
  title: string;
  /** For all tiles together [g]. */
  grams: number;
  materials: { name: string; grams: number }[];
}

/** A recipe line as a potter says it. */
export const nameOf = (line: RecipeLine): string =>
  "material" in line && line.material
    ? line.material.replaceAll("-", " ")
    : ((line as { name?: string; formula?: string }).name ?? (line as { formula?: string }).formula ?? "?");

/** Weight of a corner's whole batch for each gram of its base recipe: what is added over it is weighed too. */
export function overBase({ recipe, additions = [] }: BlendRequest["corners"][number]["glaze"]): number {
  const sum = (lines: readonly RecipeLine[]) => lines.reduce((total, { parts }) => total + parts, 0);
  return 1 + sum(additions) / sum(recipe);
}

/** Grams of each corner in a tile. @param grams - of base recipe in every tile */
export const gramsIn = ({ shares }: Tile, corners: BlendRequest["corners"], grams: number): number[] =>
  shares.map((share, c) => share * grams * overBase(corners[c]!.glaze));

export function heapsOf(tiles: readonly Tile[], { request: { corners }, titles, grams }: BlendQuestion): Heap[] {
  const each = tiles.map((tile) => gramsIn(tile, corners, grams));
  return corners.map(({ glaze }, c) => {
    const total = each.reduce((sum, weights) => sum + weights[c]!, 0);
    const lines = [...glaze.recipe, ...(glaze.additions ?? [])];
    const parts = lines.reduce((sum, line) => sum + line.parts, 0);
    const materials = lines.map((line) => ({ name: nameOf(line), grams: (total * line.parts) / parts }));
    return { title: titles[c]!, grams: total, materials };
  });
}
