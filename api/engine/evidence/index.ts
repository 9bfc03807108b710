/** Learning from tiles. @module */

// The question.
export { learnFromTiles } from "./learn-from-tiles.ts";
// Its parts, for tests.
export { tileDraws } from "./levels.ts";
export { information } from "./next-tile.ts";
export { asked, predict, type Question } from "./predict.ts";
export { asRun, beliefOn, densityOf, quantileIn, unknownDensity } from "./prior.ts";
export { addLogLikelihood, normalCdf, posterior } from "./weigh.ts";
// Shapes.
export type * from "./types.ts";
