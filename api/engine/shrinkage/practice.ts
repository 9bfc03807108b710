/** Figures of common practice that stand in where a request states none. @module */
import data from "../../../data/shrinkage/practice.json" with { type: "json" };

/** A figure with the range that holds nine cases in ten. */
export interface Figure {
  value: number;
  low: number;
  high: number;
}

const { figures } = data;

/** Half-width taken for a shrinkage stated without one [points]. */
export const STATED_PLUS_MINUS = figures.statedPlusMinusPercent.value;
/** Standard deviation from piece to piece [points]. */
export const PIECE_SD = figures.pieceSdPercent.value;
/** Finest division of the ruler [mm]. */
export const READ_TO_MM = figures.readToMm.value;
/** Fewest specimens of ASTM C326 [-]. */
export const BARS_OF_THE_STANDARD = figures.barsOfTheStandard.value;
/** Share of total shrinkage that drying takes [-]. */
export const DRYING_SHARE: Figure = figures.dryingShareOfTotal;
/** Share of drying shrinkage over at leather hard [-]. */
export const LEATHER_SHARE: Figure = figures.leatherHardShareOfDrying;
/** Clay as wedged [g/cm3]. */
export const PLASTIC_DENSITY: Figure = figures.plasticDensityGPerCm3;
/** Turned away, of the clay thrown [%]. */
export const TRIMMING: Figure = figures.trimmingPercent;
/** Left on the wheel, of the clay wedged [%]. */
export const THROWING_LOSS: Figure = figures.throwingLossPercent;
/** Drying shrinkage of plastic length by class [%], low and high. */
export const DRYING_BY_CLASS = data.dryingPercentByClass as unknown as Readonly<
  Record<string, readonly [number, number] | undefined>
>;
