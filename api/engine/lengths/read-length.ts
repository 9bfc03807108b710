/** Reading a length in whatever unit it was measured. @module */
import type { Faults } from "./faults.ts";
import { hasFraction, partNumber, readNumber } from "./number-text.ts";
import type { LengthInput, LengthUnit } from "./types.ts";

/** Millimetres in each unit [mm]; the inch is exact since 1959. */
export const MM: Readonly<Record<LengthUnit, number>> = { mm: 1, cm: 10, in: 25.4 };

/** Longest length that is read [mm]: no kiln takes more. */
const LONGEST_MM = 5000;

/** A map, since a plain object would know "constructor" for a unit. */
const SPELT: ReadonlyMap<string, LengthUnit> = new Map(
  Object.entries({
    mm: "mm",
    millimetre: "mm",
    millimetres: "mm",
    millimeter: "mm",
    millimeters: "mm",
    cm: "cm",
    centimetre: "cm",
    centimetres: "cm",
    centimeter: "cm",
    centimeters: "cm",
    in: "in",
    "in.": "in",
    inch: "in",
    inches: "in",
    '"': "in",
    "″": "in",
    "”": "in",
  } as const),
);
const WRITE = 'Write it like "90 mm", "9 cm", "3.5 in" or "3 1/2 in".';

/** Reads lengths; faults are kept and NaN given back in their place. */
export type LengthReader = (
  input: LengthInput | undefined,
  pointer: string,
  what: string,
  options?: { zero?: boolean },
) => number;

/**
 * A reader for one request.
 * @param unit - unit of numbers that name none; millimetres, and no fractions, where it is left out
 * @param faults - receives what cannot be read
 * @returns a reader that gives millimetres [mm]
 * @example lengthReader("in", new Faults())("3½", "/height", "The height") // 88.9
 */
export function lengthReader(unit: LengthUnit | undefined, faults: Faults): LengthReader {
  return (input, pointer, what, options = {}) => {
    const read = input === undefined ? `${what} is missing. ${WRITE}` : readLength(input, unit);
    const fault = typeof read === "string" ? read : limit(read, what, options.zero === true);
    if (fault === undefined) return read as number;
    faults.add(pointer, fault);
    return Number.NaN;
  };
}

function limit(mm: number, what: string, zero: boolean): string | undefined {
  if (Number.isNaN(mm)) return `${what} is no number. ${WRITE}`;
  if (mm < 0) return `${what} cannot be less than nothing. ${WRITE}`;
  if (mm === 0 && !zero) return `${what} is 0. Give a length above 0.`;
  if (mm > LONGEST_MM)
    return `${what} comes to ${Number((mm / 1000).toPrecision(4))} m, longer than any kiln. Check the unit.`;
  return undefined;
}

/** Millimetres, or what is wrong with the input. */
function readLength(input: LengthInput, unit: LengthUnit | undefined): number | string {
  if (typeof input === "number") return input * MM[unit ?? "mm"];
  if (typeof input === "object" && input !== null) {
    const factor = MM[input.unit];
    return factor === undefined ? `I read lengths in mm, cm or in. ${WRITE}` : input.value * factor;
  }
  const shown = String(input).slice(0, 40);
  const { number, rest } = partNumber(shown);
  if (/^[-−]/.test(number)) return `“${shown}” is less than nothing. A length is above 0.`;
  if (number.includes(",")) {
    return `“${shown}” has a comma. Write a decimal point: “${shown.replace(",", ".")}”, and leave out marks of thousands.`;
  }
  if (/\d/.test(rest)) return twoUnits(shown, number, rest);
  const value = readNumber(number);
  if (value === undefined) return `“${shown}” is no length I can read. ${WRITE}`;
  if (rest === "") {
    if (unit) return value * MM[unit];
    if (!hasFraction(number)) return value;
    return `“${shown}” of what? Add the unit, such as “${shown} in”, or set \`unit\` for the whole request.`;
  }
  const spelt = SPELT.get(rest);
  if (spelt) return value * MM[spelt];
  if (rest === "m" || rest.startsWith("met")) return `“${shown}” is in metres. Write it in cm or mm.`;
  if (/^(?:f(?:oo|ee)?t\.?|['′])$/.test(rest)) return `“${shown}” is in feet. Write it in inches.`;
  return `I don't know the unit in “${shown}”. ${WRITE}`;
}

/** Words for a text with two numbers: what it may have meant, in one unit or the other. */
function twoUnits(shown: string, first: string, rest: string): string {
  const at = rest.search(/\d/);
  const unit = rest.slice(0, at).trim();
  const second = partNumber(rest.slice(at));
  const [a, b] = [SPELT.get(unit), SPELT.get(second.rest)];
  const [x, y] = [readNumber(first), readNumber(second.number)];
  if (a && b && a !== b && x !== undefined && y !== undefined) {
    const mm = x * MM[a] + y * MM[b];
    const sum = `${Number(mm.toFixed(1))} mm or ${Number((mm / MM.in).toFixed(3))} in`;
    return `“${shown}” mixes ${a} and ${b}. Write one unit: if you meant the two added up, ${sum}.`;
  }
  return `“${shown}” holds more than one length. Write one number and one unit.`;
}
