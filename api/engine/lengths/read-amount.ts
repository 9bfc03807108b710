/** Reading volumes and weights. @module */
import type { Faults } from "./faults.ts";
import { partNumber, readNumber } from "./number-text.ts";
import type { VolumeInput, VolumeUnit, WeightInput, WeightUnit } from "./types.ts";

/** Millilitres in each unit [ml], by definition: the US gallon 231 cubic inches, the imperial gallon 4.54609 l. */
export const ML: Readonly<Record<VolumeUnit, number>> = {
  ml: 1,
  l: 1000,
  "us-fl-oz": 29.5735295625,
  "imp-fl-oz": 28.4130625,
  "us-gal": 3785.411784,
  "imp-gal": 4546.09,
  "us-pt": 473.176473,
  "imp-pt": 568.26125,
};
/** Grams in each unit [g]; the pound by definition, 453.59237. */
export const GRAMS: Readonly<Record<WeightUnit, number>> = { g: 1, kg: 1000, lb: 453.59237, oz: 28.349523125 };

const VOLUMES: ReadonlyMap<string, VolumeUnit> = new Map(
  Object.entries({
    ml: "ml",
    millilitre: "ml",
    millilitres: "ml",
    milliliter: "ml",
    milliliters: "ml",
    cc: "ml",
    l: "l",
    litre: "l",
    litres: "l",
    liter: "l",
    liters: "l",
    "us fl oz": "us-fl-oz",
    "imp fl oz": "imp-fl-oz",
    "us-fl-oz": "us-fl-oz",
    "imp-fl-oz": "imp-fl-oz",
    "us gal": "us-gal",
    "us-gal": "us-gal",
    "us gallon": "us-gal",
    "us gallons": "us-gal",
    "imp gal": "imp-gal",
    "imp-gal": "imp-gal",
    "imp gallon": "imp-gal",
    "imp gallons": "imp-gal",
    "us pt": "us-pt",
    "us-pt": "us-pt",
    "us pint": "us-pt",
    "us pints": "us-pt",
    "imp pt": "imp-pt",
    "imp-pt": "imp-pt",
    "imp pint": "imp-pt",
    "imp pints": "imp-pt",
  } as const),
);
const WEIGHTS: ReadonlyMap<string, WeightUnit> = new Map(
  Object.entries({
    g: "g",
    gram: "g",
    grams: "g",
    kg: "kg",
    kilo: "kg",
    kilos: "kg",
    kilogram: "kg",
    kilograms: "kg",
    lb: "lb",
    lbs: "lb",
    pound: "lb",
    pounds: "lb",
    oz: "oz",
    ounce: "oz",
    ounces: "oz",
  } as const),
);

/**
 * A volume in millilitres [ml]; NaN, with a fault kept, where it cannot be.
 * @example readVolume("350 ml", "/holds", "The capacity", new Faults()) // 350
 */
export function readVolume(input: VolumeInput | undefined, pointer: string, what: string, faults: Faults): number {
  const write = 'Write it like "350 ml", "2.5 l" or "12 us fl oz".';
  const fluid = "A fluid ounce is 29.57 ml in the United States and 28.41 ml in Britain: write us fl oz or imp fl oz.";
  const gallon = "A gallon is 3.785 l in the United States and 4.546 l in Britain: write us gal or imp gal.";
  const pint = "A pint is 473 ml in the United States and 568 ml in Britain: write us pt or imp pt.";
  const hint = (unit: string) =>
    /^(fl|oz)/.test(unit) ? fluid : /^gal/.test(unit) ? gallon : /^(pt|pint)/.test(unit) ? pint : write;
  return amount(input, pointer, what, faults, {
    scale: ML,
    spelt: VOLUMES,
    write,
    hint,
    most: 1e6,
    mostText: "1000 l",
  });
}

/**
 * A weight in grams [g]; NaN, with a fault kept, where it cannot be.
 * @example readWeight("2.5 kg", "/dry", "The dry weight", new Faults()) // 2500
 */
export function readWeight(input: WeightInput | undefined, pointer: string, what: string, faults: Faults): number {
  const write = 'Write it like "2000 g", "2.5 kg" or "5 lb".';
  return amount(input, pointer, what, faults, {
    scale: GRAMS,
    spelt: WEIGHTS,
    write,
    hint: () => write,
    most: 1e6,
    mostText: "1000 kg",
  });
}

interface Kind {
  scale: Readonly<Record<string, number>>;
  spelt: ReadonlyMap<string, string>;
  write: string;
  hint: (unit: string) => string;
  most: number;
  mostText: string;
}

function amount(
  input: string | { value: number; unit: string } | undefined,
  pointer: string,
  what: string,
  faults: Faults,
  { scale, spelt, write, hint, most, mostText }: Kind,
): number {
  const refuse = (message: string) => {
    faults.add(pointer, message);
    return Number.NaN;
  };
  if (input === undefined) return refuse(`${what} is missing. ${write}`);
  let value: number | undefined;
  let unit: string | undefined;
  if (typeof input === "object") {
    value = input.value;
    unit = input.unit;
  } else {
    const shown = String(input).slice(0, 40);
    const { number, rest } = partNumber(shown);
    if (number.includes(",")) return refuse(`“${shown}” has a comma. Write a decimal point. ${write}`);
    value = number.startsWith("-") || number.startsWith("−") ? -1 : readNumber(number);
    unit = spelt.get(rest.replace(/\./g, ""));
    if (value === undefined) return refuse(`“${shown}” is no amount I can read. ${write}`);
    if (unit === undefined)
      return refuse(`${rest === "" ? `“${shown}” of what?` : `I don't know the unit in “${shown}”.`} ${hint(rest)}`);
  }
  const read = value * (scale[unit] ?? Number.NaN);
  if (!(read > 0)) return refuse(`${what} must be above 0. ${write}`);
  if (read > most) return refuse(`${what} comes to more than ${mostText}. Check the unit.`);
  return read;
}
