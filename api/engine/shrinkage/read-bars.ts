/** Reads bars in whatever units they were measured. @module */
import type { Notice } from "../errors.ts";
import { type Faults, type LengthReader, MM } from "../lengths/index.ts";
import { type Soaked, soak } from "./absorption.ts";
import { dryingShrinkage, firingShrinkage } from "./definitions.ts";
import type { Bar, Direction } from "./types.ts";

/** Most bars in one request [-]. */
export const MAX_BARS = 200;
/** Growth in the kiln that is still believed: quartz-rich bodies, bloating [-], from memory. */
const GROWTH = 0.02;
/** Total shrinkage beyond which two lengths are not of one bar [-]. */
const IMPOSSIBLE = 0.5;
/** Total shrinkage that is remarked on [-]. */
const UNUSUAL = 0.2;

/** A bar, read; shares of length [-]. */
export interface ReadBar {
  name: string;
  direction: Direction;
  plasticMm: number;
  drying: number | null;
  firing: number | null;
  total: number | null;
  soaked: Soaked | null;
}

/**
 * Reads bars and checks that each could be one bar.
 * @param bars - as given
 * @param pointer - where they stand
 * @param read - reader of lengths
 * @returns the bars that can be computed with; what cannot be is kept in `faults`
 */
export function readBars(
  bars: readonly Bar[],
  pointer: string,
  read: LengthReader,
  faults: Faults,
  warnings: Notice[],
): ReadBar[] {
  if (bars.length === 0 || bars.length > MAX_BARS) {
    faults.add(pointer, `I read 1 to ${MAX_BARS} bars, and this has ${bars.length}.`, { allowed: [MAX_BARS] });
    return [];
  }
  return bars.flatMap((bar, i) => readBar(bar, i, `${pointer}/${i}`, read, faults, warnings) ?? []);
}

function readBar(
  bar: Bar,
  index: number,
  at: string,
  read: LengthReader,
  faults: Faults,
  warnings: Notice[],
): ReadBar | undefined {
  const name = bar.name?.trim() ? bar.name.trim() : `bar ${index + 1}`;
  const plastic = read(bar.plastic, `${at}/plastic`, "The plastic length");
  const dry = bar.dry === undefined ? null : read(bar.dry, `${at}/dry`, "The dry length");
  const fired = bar.fired === undefined ? null : read(bar.fired, `${at}/fired`, "The fired length");
  const soaked = bar.weights ? (soak(bar.weights, `${at}/weights`, faults) ?? null) : null;
  if (dry === null && fired === null) {
    faults.add(at, `${name} has a plastic length alone. Give its dry or fired length too.`, {
      allowed: ["dry", "fired"],
    });
    return undefined;
  }
  if ([plastic, dry, fired].some(Number.isNaN)) return undefined;
  const sound = check(name, plastic, dry, fired, at, faults, warnings);
  if (!sound) return undefined;
  return {
    name,
    direction: bar.direction ?? "length",
    plasticMm: plastic,
    drying: dry === null ? null : dryingShrinkage(plastic, dry),
    firing: dry === null || fired === null ? null : firingShrinkage(dry, fired),
    total: fired === null ? null : dryingShrinkage(plastic, fired),
    soaked,
  };
}

/** Whether three lengths can be those of one bar; says what they look like where not. */
function check(
  name: string,
  plastic: number,
  dry: number | null,
  fired: number | null,
  at: string,
  faults: Faults,
  warnings: Notice[],
): boolean {
  const before = faults.issues.length;
  const last = fired ?? dry!;
  if (dry !== null && dry > plastic) {
    faults.add(`${at}/dry`, `${name} is longer dry than plastic. Clay shrinks as it dries: ${swapped(dry / plastic)}`);
  } else if (fired !== null && fired > plastic) {
    faults.add(`${at}/fired`, `${name} is longer fired than plastic: ${swapped(fired / plastic)}`);
  } else if (dry !== null && fired !== null && fired > dry * (1 + GROWTH)) {
    faults.add(`${at}/fired`, `${name} grows by more than 2 % in the kiln: ${swapped(fired / dry)}`);
  } else if (1 - last / plastic > IMPOSSIBLE) {
    faults.add(
      fired === null ? `${at}/dry` : `${at}/fired`,
      `${name} loses more than half its length: ${swapped(plastic / last)}`,
    );
  } else if (dry !== null && fired !== null && fired > dry) {
    const message = `${name} grew a little in the kiln. Quartz or bloating can do that; measure it once more.`;
    warnings.push({ code: "grew-in-the-kiln", message, pointer: `${at}/fired` });
  } else if (1 - last / plastic > UNUSUAL) {
    const message = `${name} shrinks by more than 20 %, which only very fine or very wet clays do. Check its lengths.`;
    warnings.push({ code: "large-shrinkage", message, pointer: at });
  }
  return faults.issues.length === before;
}

function swapped(ratio: number): string {
  for (const [factor, units] of [
    [MM.in, "inches and millimetres"],
    [10, "centimetres and millimetres"],
    [2.54, "inches and centimetres"],
  ] as const) {
    if (ratio > factor * 0.75 && ratio < factor * 1.3) return `this looks like ${units} mixed up. Give each its unit.`;
  }
  return "were two figures swapped, or one misread?";
}
