/** Blends of glazes. @module */

// As a table.
export { csvHeading, csvRow } from "./as-csv.ts";
// In a sentence.
export { headline, sharesInWords } from "./headline.ts";
// The question, whole or point by point.
export { type Blend, judgeBlend, openBlend } from "./judge-blend.ts";
// Its order.
export { latticeOf, letters, simplexLabel, simplexOrder, simplexSize } from "./lattice.ts";
export { MOST_AT_ONCE, MOST_POINTS, stepsOf } from "./read-request.ts";
// Shapes.
export type * from "./types.ts";
