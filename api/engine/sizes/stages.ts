/** One size from wheel to kiln. @module */
import { type LengthUnit, lengthQuantity, MM, roundLength } from "../lengths/index.ts";
import { round } from "../quantity.ts";
import { type KnownShrinkage, LEATHER_SHARE, type Share, thrownLength } from "../shrinkage/index.ts";
import type { Size, Stage } from "./types.ts";

/** What must fit another piece is set finer. */
const FITS: ReadonlySet<string> = new Set(["gallery", "flange", "lid"]);

/** Shrinkage left from a stage to the fired pot, and the drying behind it, for one direction. */
export interface Way {
  total: Share;
  drying: Share;
  leatherHard: Share;
}

/**
 * The shares of plastic length lost at each stage, across or up.
 * @param known - from `knownShrinkage`
 * @param upright - whether the size is a height
 * @returns shares of plastic length [-]; drying of height is scaled as its total is
 */
export function wayOf(known: KnownShrinkage, upright: boolean): Way {
  const total = upright ? known.up : known.across;
  const scale = known.across.value > 0 ? total.value / known.across.value : 1;
  const dry = known.drying;
  // Drying is never more than all of it.
  const least = (share: number) => Math.min(share * scale, total.high);
  const drying = { value: Math.min(least(dry.value), total.value), low: least(dry.low), high: least(dry.high) };
  const value = drying.value * LEATHER_SHARE.value;
  const spread = (end: "low" | "high") =>
    Math.hypot(
      LEATHER_SHARE.value * (drying[end] - drying.value),
      drying.value * (LEATHER_SHARE[end] - LEATHER_SHARE.value),
    );
  return { total, drying, leatherHard: { value, low: value - spread("low"), high: value + spread("high") } };
}

/** What is left of a length after losing a share: more shrinkage, shorter length. */
export const after = (length: number, share: Share): Share => ({
  value: length * (1 - share.value),
  low: length * (1 - share.high),
  high: length * (1 - share.low),
});

/** Length to make for a fired length, with the interval that the shrinkage leaves: L/(1 − S) at value, low and high [mm]. */
export const before = (fired: number, share: Share): Share => ({
  value: thrownLength(fired, share.value),
  low: thrownLength(fired, share.low),
  high: thrownLength(fired, share.high),
});

/**
 * Sizes thrown, leather hard, bone dry and fired for one fired target.
 * @param name - of the part
 * @param fired - wanted [mm]
 * @param way - shrinkages of its direction
 * @param unit - of the answer
 * @returns thrown exact and rounded; later stages start from the rounded size
 * @example sizeFor("rim", 90, way, "mm").throwTo.text // "102 mm" at 12 %
 */
export function sizeFor(name: string, fired: number, way: Way, unit: LengthUnit): Size {
  const fits = FITS.has(name);
  const thrown = before(fired, way.total);
  const throwTo = roundLength(thrown.value, unit, fits);
  const set = throwTo.value * MM[unit];
  return {
    name,
    target: {
      value: round(fired / MM[unit], 4),
      unit,
      text: `${round(fired / MM[unit], unit === "in" ? 3 : 2)} ${unit}`,
    },
    thrown: lengthQuantity(thrown, unit),
    throwTo,
    leatherHard: lengthQuantity(after(set, way.leatherHard), unit),
    boneDry: lengthQuantity(after(set, way.drying), unit),
    lands: lengthQuantity(after(set, way.total), unit),
    throwBetween: null,
  };
}

/** Fired size of a pot that was measured at a stage [mm]. */
export function firedFrom(measured: number, stage: Stage, way: Way): Share {
  if (stage === "fired") return { value: measured, low: measured, high: measured };
  const lost = { thrown: 0, "leather-hard": way.leatherHard.value, "bone-dry": way.drying.value }[stage];
  const plastic = measured / (1 - lost);
  return after(plastic, way.total);
}
