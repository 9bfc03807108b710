/**
 * Glass properties from oxides.
 *
 * @module
 */

// Why: the prediction taken apart by oxide.
export { expansionContributions } from "./contributions.ts";
// What one glass is like, with intervals.
export { glassProperties } from "./properties.ts";
// From a 20–300 °C mean to other temperatures.
export { meanOver, RISE_WITH_TEMPERATURE } from "./rise-with-temperature.ts";
// Shapes.
export type * from "./types.ts";
