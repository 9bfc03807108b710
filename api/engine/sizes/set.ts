/** Sets: many alike, or a nest in steps. @module */
import type { Notice } from "../errors.ts";
import { type Faults, inUnit, type LengthReader, type LengthUnit, MM, sayLength } from "../lengths/index.ts";
import type { KnownShrinkage } from "../shrinkage/index.ts";
import type { Size, SizesRequest } from "./types.ts";

/** Normal quantile of a 90 % interval. */
const Z = 1.645;
const MAX_PIECES = 10_000;
const MAX_SCALES = 50;

/** A set, read. */
export interface ReadSet {
  pieces: number | null;
  /** Fired tolerance of one piece, either way [mm]. */
  tolerance: number | null;
  scales: readonly number[];
}

/** Reads a set; without one, a single piece at full size. */
export function readSet(set: SizesRequest["set"], read: LengthReader, faults: Faults): ReadSet {
  const { pieces, tolerance, scales = [1] } = set ?? {};
  if (pieces !== undefined)
    faults.number(pieces, "/set/pieces", "The number of pieces", { from: 1, to: MAX_PIECES, unit: "pieces" });
  if (scales.length === 0 || scales.length > MAX_SCALES) {
    faults.add("/set/scales", `A nest has 1 to ${MAX_SCALES} steps; this has ${scales.length}.`, {
      allowed: [MAX_SCALES],
    });
  }
  for (const [i, scale] of scales.entries()) {
    faults.number(scale, `/set/scales/${i}`, "A step of the nest", { from: 0.05, to: 20, unit: "times the full size" });
  }
  const mm = tolerance === undefined ? null : read(tolerance, "/set/tolerance", "The tolerance");
  return { pieces: pieces ?? null, tolerance: mm, scales };
}

/**
 * How exactly each piece must be thrown so that nine in ten land within the tolerance of each other's size.
 * What the clay varies by from piece to piece is taken off first.
 *
 *     half = (tolerance − 1.645 s L)/(1 − S)
 */
export function throwBetween(
  size: Size,
  { tolerance }: ReadSet,
  known: KnownShrinkage,
  unit: LengthUnit,
  warnings: Notice[],
): Size {
  if (tolerance === null) return size;
  const thrown = size.throwTo.value * MM[unit];
  const left = tolerance - Z * known.pieceSd * thrown;
  if (left <= 0) {
    const message = `The ${size.name} cannot be held within ±${sayLength(tolerance, unit)}: the clay alone differs by ±${sayLength(Z * known.pieceSd * thrown, unit)} from piece to piece. Allow more, or sort after firing.`;
    warnings.push({ code: "tolerance-below-clay", message, pointer: "/set/tolerance" });
    return size;
  }
  const half = left / (1 - known.across.value);
  return { ...size, throwBetween: { low: inUnit(thrown - half, unit), high: inUnit(thrown + half, unit), unit } };
}

/** A set in a sentence. */
export function saySet({ pieces, tolerance, scales }: ReadSet, unit: LengthUnit): string {
  const many = pieces === null ? "A set" : `${pieces} pieces`;
  const nest = scales.length > 1 ? ` in ${scales.length} steps` : "";
  const within =
    tolerance === null
      ? ""
      : ` Thrown between the sizes shown, nine in ten land within ±${sayLength(tolerance, unit)} of one another's size.`;
  return `${many}${nest} of one clay in one firing shrink alike: doubt about the shrinkage moves them all together.${within}`;
}
