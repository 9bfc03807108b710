/** Figures of data/firing/running.json, read once. @module */
import data from "../../../data/firing/running.json" with { type: "json" };

/** The ends of a range. */
export interface Span {
  low: number;
  high: number;
}
const { figures } = data;

/** Half-width of the thickness, as a share [-]. */
export const THICKNESS_SHARE = figures.thicknessShare.value;
/** Half-width of a stated peak [K]. */
export const PEAK_PLUS_MINUS = figures.peakPlusMinusK.value;
/** Half-width of a cone's end point beyond the prints' own disagreement [K]. */
export const CONE_PLUS_MINUS = figures.conePlusMinusK.value;
/** Heating over the last 100 °C, and cooling from the peak [K/h]. */
export const HEATING = figures.heatingCPerHour.value;
export const COOLING = figures.coolingCPerHour.value;
/** Glazed height and clearance [mm]. */
export const GLAZED_MM = figures.glazedHeightMm.value;
export const CLEARANCE_MM = figures.clearanceMm.value;
/** Chance of reaching the shelf above which a catch plate is advised; chance left by the advised band [-]. */
export const CATCH_PLATE_ABOVE = figures.catchPlateAbove.value;
export const BAND_CHANCE = figures.bareBandChance.value;
/** Density of the melt over that of the cold glass [-]. */
export const MELT_DENSITY = figures.meltDensityShare;
/** Share of solids in a first melt, and in one melted before [-]. */
export const SOLIDS_FIRST: Span = figures.solidsFirst;
export const SOLIDS_AGAIN: Span = figures.solidsAgain;
/** Jump length of diffusion [nm]. */
export const JUMP_NM: Span = figures.jumpNm;
/** Height of a full roll in film thicknesses [-]; how it grows, and how it holds the edge back. */
export const ROLL_HEIGHT: Span = figures.rollHeight;
export const ROLL_GROWTH = figures.rollGrowth;
export const ROLL_LAG = figures.rollLag;

/** Ways of putting a coat on. */
export type Application = keyof typeof data.coatMm;
/** Fired thickness of one coat [mm]. */
export const COAT_MM: Readonly<Record<Application, Span>> = data.coatMm;

/**
 * How much stiffer a melt with solids in it flows: log10 of (1 − 1.35 φ)^−2.5.
 * @param share - solids φ by volume, below 0.7 [-]
 * Source: roscoe-1952, from memory.
 * @example stiffening(0.1) // 0.157
 */
export function stiffening(share: number): number {
  return -2.5 * Math.log10(1 - figures.solidsFactor.value * share);
}
