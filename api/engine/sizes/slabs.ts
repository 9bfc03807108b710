/** Tiles and slabs: what to cut. @module */
import type { Faults, LengthReader, LengthUnit } from "../lengths/index.ts";
import type { KnownShrinkage } from "../shrinkage/index.ts";
import { type Allowances, clayFor, NOTHING } from "./clay.ts";
import { sizeFor, wayOf } from "./stages.ts";
import type { SizesReport, SlabRequest } from "./types.ts";

const MAX_SLABS = 50;

/**
 * Sizes to cut and to roll for fired tiles, and the clay they take.
 * @param slabs - fired sizes; waste is what is trimmed off the rolled sheet [% of the clay rolled], none if left out
 */
export function cutSlabs(
  slabs: readonly SlabRequest[],
  known: KnownShrinkage,
  allowances: Allowances,
  read: LengthReader,
  unit: LengthUnit,
  faults: Faults,
): SizesReport["slabs"] {
  if (slabs.length > MAX_SLABS) {
    faults.add("/slabs", `I take up to ${MAX_SLABS} kinds of slab; these are ${slabs.length}.`, {
      allowed: [MAX_SLABS],
    });
    return [];
  }
  return slabs.map((slab, i) => {
    const at = `/slabs/${i}`;
    const length = read(slab.length, `${at}/length`, "The length");
    const width = read(slab.width, `${at}/width`, "The width");
    const thick = slab.thickness === undefined ? null : read(slab.thickness, `${at}/thickness`, "The thickness");
    const { pieces = 1, wastePercent = 0 } = slab;
    faults.number(pieces, `${at}/pieces`, "The number of slabs", { from: 1, to: 100_000, unit: "slabs" });
    faults.number(wastePercent, `${at}/wastePercent`, "Waste", { from: 0, to: 90, unit: "%" });
    const across = wayOf(known, false);
    const sizes = [sizeFor("length", length, across, unit), sizeFor("width", width, across, unit)];
    if (thick !== null) sizes.push(sizeFor("thickness", thick, wayOf(known, true), unit));
    const waste = { value: wastePercent, low: wastePercent, high: wastePercent };
    const clay =
      thick === null
        ? null
        : clayFor(length * width * thick, known, { ...allowances, trimming: waste, loss: NOTHING }, unit, pieces);
    return { name: slab.name ?? `slab ${i + 1}`, sizes, pieces, clay };
  });
}
