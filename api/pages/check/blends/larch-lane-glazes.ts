/** Glazes of the invented studio Larch Lane that may stand at a corner: parts by weight, all made up. @module */
import type { RecipeLine } from "@ringtrue/sdk";

const MATERIALS = ["potash-feldspar", "silica", "whiting", "kaolin", "talc", "frit-soda-borosilicate"] as const;

/** Parts of the materials above, in that order; what else goes in is named. */
const PARTS: Readonly<Record<string, readonly [parts: readonly number[], others?: Readonly<Record<string, number>>]>> =
  {
    Hoarfrost: [[30, 34, 16, 18, 2, 0]],
    Drizzle: [[52, 14, 18, 10, 0, 6]],
    "Sea Fret": [[38, 26, 12, 14, 10, 0]],
    Hail: [[64, 4, 16, 8, 0, 8]],
    Rime: [[20, 40, 14, 20, 6, 0]],
    Sleet: [[0, 20, 0, 20, 0, 0], { "frit-calcium-borosilicate": 60 }],
    Squall: [[0, 30, 10, 10, 0, 0], { spodumene: 50 }],
    Fog: [[36, 20, 8, 18, 0, 0], { dolomite: 18 }],
    Dew: [[34, 30, 14, 12, 0, 0], { "zinc-oxide": 4, "frit-calcium-borosilicate": 6 }],
  };

/** Their recipes, by name. */
export const LARCH_LANE: ReadonlyMap<string, RecipeLine[]> = new Map(
  Object.entries(PARTS).map(([name, [parts, others = {}]]) => {
    const lines = [...parts.map((amount, i) => [MATERIALS[i]!, amount] as const), ...Object.entries(others)];
    return [name, lines.filter(([, amount]) => amount > 0).map(([material, amount]) => ({ material, parts: amount }))];
  }),
);
