/** Notes for one clay or firing, turned into notes for another. @module */
import { type Faults, type LengthReader, type LengthUnit, lengthQuantity, MM, roundLength } from "../lengths/index.ts";
import { round } from "../quantity.ts";
import { type KnownShrinkage, knownShrinkage, thrownLength } from "../shrinkage/index.ts";
import { wayOf } from "./stages.ts";
import type { SizesReport, SizesRequest } from "./types.ts";

const MAX_NOTES = 200;

/**
 * What to throw now for the pot that those notes gave then: L_now = L_then (1 − S_then)/(1 − S_now).
 * The doubts of both shrinkages add in squares.
 */
export function convertNotes(
  { shrinkage, thrown }: NonNullable<SizesRequest["oldNotes"]>,
  now: KnownShrinkage,
  read: LengthReader,
  unit: LengthUnit,
  faults: Faults,
): { notes: SizesReport["oldNotes"]; then: KnownShrinkage | undefined } {
  const then = faults.gather("/oldNotes/shrinkage", () => knownShrinkage(shrinkage, unit));
  if (thrown.length === 0 || thrown.length > MAX_NOTES) {
    const message = `I convert 1 to ${MAX_NOTES} sizes; these are ${thrown.length}.`;
    faults.add("/oldNotes/thrown", message, { allowed: [MAX_NOTES] });
    return { notes: [], then };
  }
  const sizes = thrown.map(({ size }, i) => read(size, `/oldNotes/thrown/${i}/size`, "The size thrown"));
  if (!then) return { notes: [], then };
  const notes = thrown.map(({ name, upright = false }, i) => {
    const [old, fresh] = [wayOf(then, upright).total, wayOf(now, upright).total];
    const length = sizes[i]!;
    const fired = length * (1 - old.value);
    const value = thrownLength(fired, fresh.value);
    // Less shrinkage then, or more now, asks for a larger piece.
    const half = (mine: "low" | "high", theirs: "low" | "high") =>
      Math.hypot(
        thrownLength(fired, fresh[mine]) - value,
        thrownLength(length * (1 - old[theirs]), fresh.value) - value,
      );
    return {
      name,
      thrownThen: { value: round(length / MM[unit], 4), unit, text: `${round(length / MM[unit], 3)} ${unit}` },
      fired: lengthQuantity({ value: fired, low: length * (1 - old.high), high: length * (1 - old.low) }, unit),
      throwNow: lengthQuantity({ value, low: value - half("low", "high"), high: value + half("high", "low") }, unit),
      throwTo: roundLength(Number.isNaN(value) ? 0 : value, unit),
    };
  });
  return { notes, then };
}
