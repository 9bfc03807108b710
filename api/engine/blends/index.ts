/** Blends of glazes. @module */

// As a table.
export { csvHeading, csvRow } from "./as-csv.ts";
// As a picture.
export { blendPicture, canDraw } from "./blend-picture.ts";
// The question, whole or point by point.
export { type Blend, judgeBlend, openBlend } from "./judge-blend.ts";
// Its order.
export { gridWalk, letters, simplexSize, simplexWalk } from "./lattice.ts";
export { MOST_POINTS } from "./read-request.ts";
// Shapes.
export type * from "./types.ts";
