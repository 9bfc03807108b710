/** Larch Lane's tiles of Hoarfrost, a glaze bought in a jar: the worked sample of evidence. @module */
import { RED_STONEWARE } from "./larch-lane.ts";

const BUFF = {
  class: "buff-stoneware",
  expansion: { value: 5.6, rangeC: [20, 500] as [number, number], plusMinus: 0.3 },
};

/** Three tiles and a ring; whether it would suit porcelain. */
export const HOARFROST = {
  thicknessMm: 0.3,
  tiles: [
    {
      name: "buff, one coat",
      body: BUFF,
      seen: [{ kind: "crazed" as const, byDays: 14, soundAtDays: 0 }],
    },
    {
      name: "red, one coat",
      body: RED_STONEWARE,
      seen: [{ kind: "not-crazed" as const, afterDays: 90 }, { kind: "not-shivered" as const }],
    },
    { name: "red, two coats", body: RED_STONEWARE, coats: 2, seen: [{ kind: "crazed" as const, byDays: 30 }] },
    {
      name: "red, ring",
      body: RED_STONEWARE,
      ware: { wallMm: 4 },
      seen: [{ kind: "ring" as const, radiusMm: 30, closesMm: 0.1, plusMinusMm: 0.1 }],
    },
  ],
  bodies: [{ name: "porcelain", body: { class: "studio-porcelain" } }],
};
