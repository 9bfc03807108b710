/**
 * Glass properties from oxides.
 *
 * @module
 */

// Why: the prediction taken apart by oxide.
export { expansionContributions } from "./contributions.ts";
// Density and stiffness by published sets, beside the measured-glass figures.
export { appenDensity } from "./density/appen-1949.ts";
export { type GlassDensity, glassDensity } from "./density/glass-density.ts";
// What to say where nothing can be.
export { KNOWN_GLAZES } from "./known-glazes.ts";
// What the doubt about an expansion is made of.
export { type DoubtTerm, expansionDoubt, WITHOUT_PAPERS } from "./doubt.ts";
// Expansion by every model, side by side, and what each model is worth.
export { estimateExpansion, MEASURED_MODEL } from "./estimate.ts";
// Published sets one by one.
export { askSet, PUBLISHED_SETS } from "./expansion/index.ts";
// Where crystals could grow.
export { type LiquidusIndication, liquidusIndication } from "./liquidus.ts";
// Measured glasses like this one, and what each published set is worth near it.
export { type LocalAccuracy, type NearGlass, type Neighbourhood, nearestGlasses } from "./near/nearest-glasses.ts";
// What one more part of each material would do.
export { expansionPerPart, type PartEffect } from "./per-part.ts";
// What one glass is like, with intervals.
export { glassProperties } from "./properties.ts";
// How well each fitted property does.
export { type PropertyModel, propertyModels } from "./property-models.ts";
// From a 20–300 °C mean to other temperatures.
export { meanOver, RISE_WITH_TEMPERATURE } from "./rise-with-temperature.ts";
export { expansionModels } from "./summaries.ts";
export { makishimaMackenzie } from "./youngs/makishima-mackenzie-1973.ts";
// How it beads or wets when molten.
export { unroundedTension } from "./surface-sums.ts";
export { type SurfaceTension, surfaceTension } from "./surface-tension.ts";
// Viscosity as one curve a glass.
export { myegaTemperature } from "./myega.ts";
export { VISCOSITY, type ViscosityCurve, viscosityCurve } from "./viscosity.ts";
// Shapes.
export type * from "./types.ts";
