/** Shrinkage: from measured bars, and ready to throw by. @module */

// From bars
export { chiSquareQuantile, studentQuantile } from "./student-t.ts";
export { dryingShrinkage, firingShrinkage, thrownLength, totalShrinkage, volumeShrinkage } from "./definitions.ts";
export { grubbsLimit } from "./outliers.ts";
export { measureShrinkage } from "./measure-shrinkage.ts";
// Ready to throw by
export { knownShrinkage } from "./known.ts";
export { type Figure, LEATHER_SHARE, PLASTIC_DENSITY, THROWING_LOSS, TRIMMING } from "./practice.ts";
export type {
  Bar,
  Direction,
  KnownShrinkage,
  Share,
  ShrinkageFigure,
  ShrinkageInput,
  ShrinkageReport,
  ShrinkageRequest,
} from "./types.ts";
