/** Figures of common practice that stand in where a request states none. @module */
import data from "../../../data/batches/practice.json" with { type: "json" };

const { figures } = data;

/** A figure with the range that holds nine cases in ten. */
export interface Figure {
  value: number;
  low: number;
  high: number;
}

/** Materials that go into the water, in part or whole. */
export const DISSOLVE: ReadonlySet<string> = new Set(data.dissolve);
/** Specific gravity of a glaze for dipping [-]. */
export const USUAL_GRAVITY: Figure = figures.specificGravity;
/** Density of raw glaze solids [g/cm3]. */
export const USUAL_SOLIDS: Figure = figures.solidsDensityGPerCm3;
/** What is left open when every density is known [g/cm3]. */
export const KNOWN_DENSITY_PLUS_MINUS = figures.knownDensityPlusMinus.value;
/** Density of fired glaze [g/cm3]. */
export const FIRED_DENSITY: Figure = figures.firedDensityGPerCm3;
/** Half-width of a specific gravity as read [-]. */
export const READING_PLUS_MINUS = figures.readingPlusMinus.value;
/** Share of the water to begin with [-]. */
export const START_SHARE = figures.startShare.value;
