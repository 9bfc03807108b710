/** Sizes: from the pot that is wanted to the pot to throw. @module */

// Geometry
export { crossing, type Point } from "./crossing.ts";
export { linesThrough, moved, type Stretch, sphereThrough, volumeBetween } from "./outline.ts";
// Stages
export { after, before, firedFrom, sizeFor, wayOf } from "./stages.ts";
export { PARTS, type Part, type Size, type SizesReport, type SizesRequest, type Stage } from "./types.ts";
// The front door
export { workOutSizes } from "./work-out-sizes.ts";
