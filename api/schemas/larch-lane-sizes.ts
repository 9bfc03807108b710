/**
 * Larch Lane at the wheel: bars of its slate-grey stoneware, a lidded jar, a ruler and a bucket of Thaw.
 *
 * @module
 */
import { THAW } from "./larch-lane.ts";

/** Five bars of Larch Lane's stoneware, marked 100 mm apart. */
export const SLATE_BARS = {
  bars: [
    { name: "bar 1", plastic: "100 mm", dry: "94.0 mm", fired: "88.0 mm" },
    { name: "bar 2", plastic: "100 mm", dry: "93.5 mm", fired: "87.5 mm" },
    { name: "bar 3", plastic: "100 mm", dry: "94.0 mm", fired: "88.0 mm" },
    { name: "bar 4", plastic: "100 mm", dry: "94.0 mm", fired: "88.5 mm" },
    { name: "bar 5", plastic: "100 mm", dry: "93.5 mm", fired: "88.0 mm" },
  ],
  peakC: 1240,
};

/** A jar of 100 mm with a lid, six of them. */
export const JAR = {
  shrinkage: { percent: 12, plusMinus: 0.5, dryingPercent: 6 },
  fired: { height: "100 mm", diameter: "110 mm", rim: "93 mm", foot: "72 mm", wall: "5 mm", gallery: "84 mm" },
  set: { pieces: 6, tolerance: "1 mm" },
  lid: { seat: "84 mm", stage: "fired" as const, clearance: "0.8 mm" },
  profile: {
    form: "points" as const,
    points: [
      { across: "72 mm", up: "0 mm" },
      { across: "110 mm", up: "55 mm" },
      { across: "93 mm", up: "100 mm" },
    ],
    dimensions: "outside" as const,
    wall: "5 mm",
    floor: "6 mm",
    belowRim: "10 mm",
  },
};

/** A ruler that reads fired millimetres to 150 mm. */
export const SHRINK_RULER = {
  shrinkage: { percent: 12, plusMinus: 0.5 },
  draw: { ruler: { length: "150 mm" } },
  page: "A4" as const,
};

/** Two kilograms of Thaw, mixed to 1.45. */
export const THAW_BUCKET = {
  name: "Thaw",
  glaze: { recipe: THAW.recipe },
  amount: { dry: "2 kg" },
  specificGravity: 1.45,
};
