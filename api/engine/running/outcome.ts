/** From a thousand walls to an answer at the foot. @module */
import { middle90, selectRanks } from "../numeric/quantiles.ts";
import { type Quantity, quantity, round, UNITS } from "../quantity.ts";
import { DRAWS } from "./draws.ts";
import { BAND_CHANCE, CATCH_PLATE_ABOVE, CLEARANCE_MM } from "./practice.ts";
import { type RunSample, THICKEST_M, type WallM } from "./simulate.ts";
import type { Run } from "./types.ts";
import { coatMm, inTwenty, mm, span, stated } from "./words.ts";

/** Millimetres of a sample in metres. */
export function inMm(values: Float64Array): Quantity {
  const { value, low, high } = middle90(values);
  return quantity(value * 1000, low * 1000, high * 1000, UNITS.length);
}

/**
 * What a sample of runs means at the foot.
 * @param sample - runs
 * @param wall - clearance [m]
 */
export function outcomeOf(sample: RunSample, { clearanceM }: WallM): Run {
  let over = 0;
  for (const advance of sample.advance) if (advance >= clearanceM) over++;
  const reachesShelf = over / DRAWS;
  const run = inMm(sample.advance);
  const flow = inMm(sample.free);
  const roll = inMm(sample.roll);
  const reaching = middle90(sample.reaching);
  const unreached = reaching.value >= THICKEST_M;
  const sorted = Float64Array.from(sample.advance);
  const rank = Math.ceil((1 - BAND_CHANCE) * DRAWS) - 1;
  selectRanks(sorted, [rank]);
  const bareBandMm = Math.max(CLEARANCE_MM, Math.ceil(sorted[rank]! * 1000 - 1e-9));
  const catchPlate = reachesShelf > CATCH_PLATE_ABOVE;
  const clearance = stated(clearanceM * 1000);
  const text =
    `Its lower edge runs ${mm(run.value)}, nine times in ten ${span(run)}. ` +
    `It crosses ${clearance} of bare clay ${inTwenty(reachesShelf)} times. ` +
    footWords(catchPlate, bareBandMm);
  return {
    run,
    flow,
    roll,
    reachesShelf: round(reachesShelf, 3),
    reachingThickness: unreached ? null : inMm(sample.reaching),
    bareBandMm,
    catchPlate,
    text,
  };
}

/** A bare band wider than this is no remedy [mm] (a choice, no source). */
const WIDEST_BAND_MM = 25;

/** What to do about the foot. */
export function footWords(catchPlate: boolean, bareBandMm: number): string {
  if (bareBandMm > WIDEST_BAND_MM) {
    return `Set it on a catch plate: a bare band of ${bareBandMm}\u00a0mm would be needed, so put it on thinner, stiffen it, or keep it to flat ware and the insides of bowls.`;
  }
  return catchPlate
    ? `Set it on a catch plate or a washed cookie, or leave ${bareBandMm}\u00a0mm bare.`
    : `Leave ${bareBandMm}\u00a0mm bare at the foot.`;
}

/** The thickness in words, where one reaches the shelf. */
export function reachingWords(reaching: Quantity | null, clearanceMm: number): string {
  if (!reaching) return "No coat that a wall can hold would reach the shelf.";
  return `A coat of ${coatMm(reaching.value)} would run ${stated(clearanceMm)}, nine times in ten between ${reaching.low.toFixed(2)} and ${coatMm(reaching.high)}.`;
}
