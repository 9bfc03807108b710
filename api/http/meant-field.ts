/**
 * Which known field an unknown one stands for: written otherwise, without its unit, by its trade word, or misspelt.
 *
 * @module
 */
import { closest } from "../engine/errors.ts";
import { TRADE_WORDS } from "./trade-words.ts";

/** Units that end a name, here and elsewhere. */
const UNITS =
  "CPerHour GPerCm3 Percent GPa MPa Mm Cm2 Cm In Inch Inches Minutes Years Deg Celsius Fahrenheit C F K G".split(" ");

/** Longest name that is looked at; the rest of a longer one is no name. */
const LONGEST = 64;

/** Small letters and digits alone: `peak_c`, `PeakC` and `peak-c` are one. */
const plain = (name: string): string => name.toLowerCase().replace(/[\s_-]+/g, "");
/** As here: `peak_c` is `peakC`. */
const camel = (name: string): string => name.replace(/[\s_-][a-z]/g, (pair) => pair.charAt(1).toUpperCase());

function withoutUnit(name: string): string {
  const humped = camel(name);
  const unit = UNITS.find((one) => humped.endsWith(one) && /[a-z]/.test(humped.charAt(humped.length - one.length - 1)));
  return plain(unit ? humped.slice(0, -unit.length) : humped);
}

/**
 * The known field that was meant.
 * @param given - a name that is not known
 * @param known - names that are known at that place
 * @param beside - the object that it stands in: a trade word never means a field that stands there already
 * @returns the first of: the same name in other letters, the same but for the unit it ends with, a trade word, a misspelling
 * @example meantField("wall_in", ["wallMm", "glazed"]) // "wallMm"
 * @example meantField("coe", ["value", "rangeC"]) // "value"
 */
export function meantField(given: string, known: readonly string[], beside: object = {}): string | undefined {
  const name = given.slice(0, LONGEST);
  const bare = withoutUnit(name);
  const words = [plain(name), bare].flatMap((word) => TRADE_WORDS.get(word) ?? []);
  return (
    known.find((field) => plain(field) === plain(name)) ??
    known.find((field) => withoutUnit(field) === bare) ??
    words.find((field) => known.includes(field) && !Object.hasOwn(beside, field)) ??
    closest(given, known)
  );
}
