/** Larch Lane's question about running: two brushed coats of a soft rain-blue over Thaw, up a tall jar. @module */
import { THAW } from "./larch-lane.ts";

/** Cloudburst, a soft glaze for effects. Parts by weight. */
export const CLOUDBURST = {
  recipe: [
    { material: "frit-soda-borosilicate", parts: 30 },
    { material: "potash-feldspar", parts: 30 },
    { material: "whiting", parts: 18 },
    { material: "silica", parts: 16 },
    { material: "kaolin", parts: 6 },
  ],
};

/** Thaw dipped, Cloudburst brushed over it twice, on a wall glazed 120 mm tall; fired again as it is, then a decal. */
export const CLOUDBURST_OVER_THAW = {
  coats: [
    { glaze: CLOUDBURST, application: "brush" as const, coats: 2 },
    { glaze: { recipe: THAW.recipe, thicknessMm: 0.25 } },
  ],
  firing: { cone: "6", heatingCPerHour: 60, holdMinutes: 15, coolingCPerHour: 150 },
  wall: { slopeDeg: 90, glazedMm: 120, clearanceMm: 6 },
  laterHeat: [{ kind: "decal" as const, peakC: 780, holdMinutes: 10 }],
};
