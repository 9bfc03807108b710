/** Chemistry: from recipe or analysis to oxides, every way. @module */

// The front door
export { analyseGlaze, analyseMaterial } from "./analyse-glaze.ts";
// Materials
export { yieldOfAnalysis } from "./analysis.ts";
// Seger formula, both ways
export { batchFromSeger, type Ingredient, type SegerBatch } from "./batch.ts";
export { fire } from "./firing.ts";
// Formulas and masses
export { type Atoms, MAX_FORMULA_DEPTH, MAX_FORMULA_LENGTH, parseFormula } from "./formula.ts";
export { materialAnalysis } from "./material-yields.ts";
export { molarMass, OXIDE_INDEX, OXIDE_MASS, OXIDES, VOLATILES } from "./oxides.ts";
export { fromSeger, IS_FLUX, segerFormula } from "./seger.ts";
export type { ChemistryLine, GlazeChemistry, OxideRecord, SegerFormula } from "./types.ts";
export { yieldOfFormula } from "./yield.ts";
