/** Thickness down the wall after the firing, for the picture. @module */
import { middle90 } from "../numeric/quantiles.ts";
import { round } from "../quantity.ts";
import { filmProfile } from "./film.ts";
import type { RunSample, WallM } from "./simulate.ts";
import type { RunningReport } from "./types.ts";

const POINTS = 33;

/**
 * The middle wall of the sample: a coat thinned from the top, level below, down to where the edge has come.
 * @param sample - runs
 * @returns distances from the upper edge [mm] with thickness there [mm], the roll left out
 */
export function profileOf(sample: RunSample, { glazedM }: WallM): RunningReport["profile"] {
  const free = middle90(sample.free).value;
  const thickness = middle90(sample.thickness).value;
  const edge = glazedM + middle90(sample.advance).value;
  // Close together at the top, where the thinning curves most.
  const at = Array.from({ length: POINTS }, (_, i) => edge * (i / (POINTS - 1)) ** 2);
  const heights = filmProfile(free, thickness, glazedM, at);
  return at.map((x, i) => ({ mm: round(x * 1000, 2), thicknessMm: round(heights[i]! * 1000, 3) }));
}
