/** A bucket whose specific gravity is off. @module */
import { type Faults, readVolume } from "../lengths/index.ts";
import { type Quantity, quantity, round } from "../quantity.ts";
import { type Figure, READING_PLUS_MINUS } from "./practice.ts";
import { drySolids, dryToAdd, waterToAdd } from "./slurry.ts";
import type { BatchRequest, BucketAnswer } from "./types.ts";

/**
 * What to add to a bucket, or pour off it.
 * @param target - specific gravity wanted [-]
 * @param density - of the solids [g/cm3]
 * @returns amounts [g] with what hydrometer and density leave open; of no use where a fault was kept
 */
export function correct(
  bucket: NonNullable<BatchRequest["bucket"]>,
  target: number,
  density: Figure,
  faults: Faults,
): BucketAnswer {
  const volume = readVolume(bucket.volume, "/bucket/volume", "The bucket", faults);
  const gravity = bucket.specificGravity;
  checkGravity(gravity, "/bucket/specificGravity", density, faults);
  const range = (of: (g: number, d: number) => number): Quantity => {
    const value = of(gravity, density.value);
    const half = Math.hypot(
      of(gravity + READING_PLUS_MINUS, density.value) - value,
      Math.max(Math.abs(of(gravity, density.low) - value), Math.abs(of(gravity, density.high) - value)),
    );
    return quantity(value, Math.max(0, value - half), value + half, "g", { decimals: 0 });
  };
  const off = gravity - target;
  const answer = {
    addWater: off > 0 ? range((g) => waterToAdd(volume, g, target)) : null,
    pourOff: off < 0 ? range((g) => -waterToAdd(volume, g, target)) : null,
    addDry: off < 0 ? range((g, d) => dryToAdd(volume, g, target, d)) : null,
  };
  return {
    dry: range((g, d) => drySolids(volume * g, volume, d)),
    ...answer,
    message: say(answer, gravity, target, volume),
  };
}

/**
 * Keeps an issue where a specific gravity cannot be one of a slip; says what was probably meant.
 */
export function checkGravity(gravity: number, pointer: string, density: Figure, faults: Faults): void {
  const meant = [100, 1000].map((scale) => gravity / scale).find((one) => one > 1.05 && one < 2.2);
  if (meant !== undefined) {
    const message = `A specific gravity of ${gravity} looks like ${meant}: a litre that weighs ${round(1000 * meant, 0)} g. Write ${meant}.`;
    faults.add(pointer, message, { suggestion: String(meant) });
  } else if (!(gravity > 1)) {
    faults.add(
      pointer,
      `A specific gravity of ${gravity} is no more than water's, which is 1. Glazes lie between 1.3 and 1.7.`,
    );
  } else if (gravity < 2.3 && gravity >= density.low) {
    const message = `A slip of these solids cannot reach ${gravity}: dry, they weigh only ${round(density.value, 2)} g/cm3. Ask for less, or give the density you measured.`;
    faults.add(pointer, message);
  } else if (!(gravity < 2.3)) {
    faults.add(
      pointer,
      `A specific gravity of ${gravity} is that of stone, not of a slip. Glazes lie between 1.3 and 1.7.`,
    );
  }
}

function say(
  { addWater, pourOff, addDry }: Pick<BucketAnswer, "addWater" | "pourOff" | "addDry">,
  gravity: number,
  target: number,
  volume: number,
): string {
  const bucket = `${round(volume / 1000, 2)} l at ${gravity}`;
  if (addWater)
    return `${bucket} is too thick: stir in about ${addWater.value} g of water, a little at a time, and measure again.`;
  if (addDry && pourOff) {
    return `${bucket} is too thin: let it settle and pour off about ${pourOff.value} g of clear water, or sieve in about ${addDry.value} g of dry glaze.`;
  }
  return `${bucket} stands where it should, at ${target}.`;
}
