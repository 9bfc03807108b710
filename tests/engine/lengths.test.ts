/** Lengths, volumes and weights as people write them. Inch and pound are exact by definition (1959). */
import { describe, expect, it } from "vitest";
import {
  Faults,
  type LengthInput,
  type LengthUnit,
  lengthReader,
  readNumber,
  readVolume,
  readWeight,
  roundLength,
} from "../../api/engine/lengths/index.ts";
import { close } from "../support/close.ts";

function read(input: LengthInput, unit?: LengthUnit): number | string {
  const faults = new Faults();
  const mm = lengthReader(unit, faults)(input, "/x", "The height");
  expect(Number.isNaN(mm)).toBe(faults.issues.length > 0);
  return faults.issues[0]?.message ?? mm;
}

describe("lengths are read", () => {
  it.each([
    ["90 mm", 90],
    ["9.0cm", 90],
    ["9 centimetres", 90],
    ["3.5in", 88.9],
    ["3 1/2 in", 88.9],
    ["3-1/2 inches", 88.9],
    ["3½ in", 88.9],
    ['3 ½"', 88.9],
    ["½ in", 12.7],
    ["7/8 in", 22.225],
    [" 12   mm ", 12],
    [".5 cm", 5],
    [{ value: 3.5, unit: "in" as const }, 88.9],
    [42, 42],
    ["42", 42],
  ])("%j is %d mm", (input, mm) => close(read(input) as number, mm, { rel: 1e-12 }));

  it("numbers take the request's unit, fractions too", () => {
    close(read(3.5, "in") as number, 88.9, { rel: 1e-12 });
    close(read("3½", "in") as number, 88.9, { rel: 1e-12 });
    close(read("3", "cm") as number, 30, { rel: 1e-12 });
  });
});

describe("what cannot be a length is told", () => {
  it.each([
    ["3 in 5 mm", "mixes in and mm. Write one unit: if you meant the two added up, 81.2 mm or 3.197 in."],
    ["100 mm 4 in", "mixes mm and in"],
    ["9,5 cm", "Write a decimal point: “9.5 cm”"],
    ["3½", "“3½” of what? Add the unit, such as “3½ in”"],
    ["-3 mm", "less than nothing"],
    ["3 furlongs", "I don't know the unit"],
    ["1 ft", "is in feet. Write it in inches."],
    ["2 m", "is in metres"],
    ["31/0 in", "no length I can read"],
    ["tall", "no length I can read"],
    ["", "no length I can read"],
    ["0 mm", "The height is 0. Give a length above 0."],
    [-4, "cannot be less than nothing"],
    ["90000 mm", "comes to 90 m, longer than any kiln"],
    ["3 1/2 1/2 in", "no length I can read"],
    [Number.NaN, "no number"],
  ])("%j", (input, words) => expect(read(input)).toContain(words));
});

it("fractions keep whole and part apart", () => {
  expect(readNumber("31/2")).toBe(15.5);
  expect(readNumber("3 1/2")).toBe(3.5);
  expect(readNumber("1e3")).toBeUndefined();
});

it("volumes and weights", () => {
  const faults = new Faults();
  const volume = (text: string) => readVolume(text, "/v", "The capacity", faults);
  const weight = (text: string) => readWeight(text, "/w", "The weight", faults);
  expect([volume("350 ml"), volume("2½ l"), weight("2 kg"), weight("500g")]).toEqual([350, 2500, 2000, 500]);
  close(volume("12 us fl oz"), 354.88, { abs: 0.005 });
  close(weight("5 lb"), 2267.96, { abs: 0.005 });
  expect(faults.issues).toEqual([]);
  for (const text of ["12 fl oz", "350", "0 ml", "-1 l", "3 cups", "2,5 l"]) volume(text);
  expect(faults.issues.map(({ message }) => message)).toEqual([
    expect.stringContaining("29.57 ml in the United States and 28.41 ml in Britain"),
    expect.stringContaining("“350” of what?"),
    expect.stringContaining("must be above 0"),
    expect.stringContaining("must be above 0"),
    expect.stringContaining("I don't know the unit"),
    expect.stringContaining("Write a decimal point"),
  ]);
});

it.each([
  [102.27, "mm", "102 mm"],
  [12.3, "mm", "12.5 mm"],
  [102.27, "cm", "10.2 cm"],
  [102.27, "in", "4 in"],
  [103.6, "in", "4 1/16 in"],
  [9.5, "in", "3/8 in"],
  [0.1, "mm", "0.5 mm"],
  [25.3, "in", "1 in"],
] as const)("%d mm in %s is set as %s", (mm, unit, text) => expect(roundLength(mm, unit).text).toBe(text));
