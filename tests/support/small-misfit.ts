/** A question to the remedies that several tests ask. @module */
import type { RemediesRequest } from "../../api/engine/advice/types.ts";

/** A feldspar glaze that crazes, small enough to search by hand. */
export const SMALL: RemediesRequest = {
  glaze: {
    recipe: [
      { material: "potash-feldspar", parts: 50 },
      { material: "whiting", parts: 20 },
      { material: "silica", parts: 30 },
    ],
    thicknessMm: 0.3,
  },
  body: {
    class: "red-stoneware",
    expansion: { value: 6.6, rangeC: [20, 500], plusMinus: 0.2 },
    moistureExpansionPercent: 0.005,
  },
  firing: { peakC: 1240 },
};
