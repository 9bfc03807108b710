/** Lengths, volumes and weights as people write them. Inch and pound are exact by definition (1959). */
import { describe, expect, it } from "vitest";
import { ImpossibleValueError } from "../../api/engine/errors.ts";
import {
  Faults,
  inUnit,
  type LengthInput,
  type LengthUnit,
  lengthQuantity,
  lengthReader,
  ML,
  readNumber,
  readVolume,
  readWeight,
  roundLength,
  sayLength,
  type VolumeInput,
} from "../../api/engine/lengths/index.ts";
import { Volume } from "../../api/schemas/lengths.ts";
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
    [".25 cm", 2.5],
    ["9.25 cm", 92.5],
    ["3  1/2 in", 88.9],
    ["5000 mm", 5000],
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
    // Arithmetic: 3 · 25.4 + 5 = 81.2, and 100 + 4 · 25.4 = 201.6 = 7.937 in.
    ["3 in 5 mm", "mixes in and mm. Write one unit: if you meant the two added up, 81.2 mm or 3.197 in."],
    ["100 mm 4 in", "mixes mm and in. Write one unit: if you meant the two added up, 201.6 mm or 7.937 in."],
    ["3 in 5 in", "holds more than one length"],
    ["3 hands 5 mm", "holds more than one length"],
    ["3 mm 5 hands", "holds more than one length"],
    ["1 2 in 5 mm", "holds more than one length"],
    ["3 in 1 2 mm", "holds more than one length"],
    ["9,5 cm", "Write a decimal point: “9.5 cm”"],
    ["3½", "“3½” of what? Add the unit, such as “3½ in”"],
    ["-3 mm", "less than nothing"],
    ["3 furlongs", "I don't know the unit"],
    ["3 constructor", "I don't know the unit"],
    ["3 constructor 4 toString", "holds more than one length"],
    ["1 ft", "is in feet. Write it in inches."],
    ["1 foot", "is in feet"],
    ["2 feet", "is in feet"],
    ["2 ft.", "is in feet"],
    ["2'", "is in feet"],
    ["2′", "is in feet"],
    ["2 left", "I don't know the unit"],
    ["2 fto", "I don't know the unit"],
    ["2 m", "is in metres"],
    ["2 metres", "is in metres"],
    [{ value: 3, unit: "ft" as "in" }, "I read lengths in mm, cm or in"],
    [null as unknown as string, "no length I can read"],
    ["31/0 in", "no length I can read"],
    ["tall", "no length I can read"],
    ["", "no length I can read"],
    ["0 mm", "The height is 0. Give a length above 0."],
    [-4, "cannot be less than nothing"],
    ["90000 mm", "comes to 90 m, longer than any kiln"],
    ["5001 mm", "longer than any kiln"],
    ["3 1/2 1/2 in", "no length I can read"],
    [Number.NaN, "no number"],
  ])("%j", (input, words) => expect(read(input)).toContain(words));

  it("a length that is missing, and no more than the beginning of a long text", () => {
    expect(read(undefined as unknown as string)).toContain("The height is missing");
    expect(read("tall".repeat(20))).toContain(`“${"tall".repeat(10)}” is no length`);
  });

  it("nothing at all is a length only where the reader is told so", () => {
    const faults = new Faults();
    const length = lengthReader("mm", faults);
    expect(length("0 mm", "/line", "The line", { zero: true })).toBe(0);
    expect(faults.issues).toEqual([]);
    expect(length("0 mm", "/line", "The line", { zero: false })).toBeNaN();
    expect(faults.issues.map(({ pointer }) => pointer)).toEqual(["/line"]);
  });
});

describe("numbers with fractions", () => {
  it.each([
    ["31/2", 15.5],
    ["3 1/2", 3.5],
    ["12 1/2", 12.5],
    ["1 11/16", 1.6875],
    ["3 5/16", 3.3125],
    ["5/16", 0.3125],
    ["½", 0.5],
    ["⅓", 1 / 3],
    ["⅔", 2 / 3],
    ["¼", 0.25],
    ["¾", 0.75],
    ["⅛", 0.125],
    ["2⅜", 2.375],
    ["2 ⅝", 2.625],
    ["10⅞", 10.875],
    ["1e3", undefined],
    ["1/2/3", undefined],
    ["3 1/2/3", undefined],
    ["1/0", undefined],
  ])("%s is %d", (text, number) => expect(readNumber(text)).toBe(number));
});

// NIST Handbook 44, Appendix C: 1 US gallon 3.785 412 l, 1 US pint 473.176 5 ml; Weights and Measures Act 1985: 1 imperial
// gallon 4.546 09 l, a pint its eighth (from memory).
it.each([
  ["1 us gal", 3785.412],
  ["2.5 US gallons", 9463.53],
  ["1 imp gal", 4546.09],
  ["1 us pt", 473.1765],
  ["8 imp pints", 4546.09],
])("a bucket of %s holds %d ml", (text, ml) => {
  const faults = new Faults();
  close(readVolume(text, "/v", "The bucket", faults), ml, { abs: 0.005 });
  expect(faults.issues).toEqual([]);
});
it.each([
  [{ value: 2.5, unit: "us-gal" }, 9463.53],
  [{ value: 1, unit: "imp-gal" }, 4546.09],
  [{ value: 8, unit: "us-pt" }, 3785.412],
  [{ value: 8, unit: "imp-pt" }, 4546.09],
] as const)("%j holds %d ml, as the same in one text does", (given, ml) => {
  expect(Volume.parse(given)).toEqual(given);
  const read = (input: VolumeInput) => readVolume(input, "/v", "The bucket", new Faults());
  close(read(given), ml, { abs: 0.005 });
  expect(read(`${given.value} ${given.unit}`)).toBe(read(given));
});
it("every unit of volume may be written beside its value", () => {
  for (const unit of Object.keys(ML)) expect(Volume.safeParse({ value: 1, unit }).success, unit).toBe(true);
  expect(Volume.safeParse({ value: 1, unit: "gal" }).success).toBe(false);
});
it.each([
  ["5 gal", "us gal or imp gal"],
  ["5 gallons", "us gal or imp gal"],
  ["3 pints", "us pt or imp pt"],
])("%s may be either country's: %s", (text, said) => {
  const faults = new Faults();
  expect(readVolume(text, "/v", "The bucket", faults)).toBeNaN();
  expect(faults.issues).toMatchObject([{ pointer: "/v", message: expect.stringContaining(said) }]);
});

it("volumes and weights", () => {
  const faults = new Faults();
  const volume = (text: string) => readVolume(text, "/v", "The capacity", faults);
  const weight = (text: string) => readWeight(text, "/w", "The weight", faults);
  expect([volume("350 ml"), volume("2½ l"), weight("2 kg"), weight("500g")]).toEqual([350, 2500, 2000, 500]);
  close(volume("12 us fl oz"), 354.88, { abs: 0.005 });
  close(weight("5 lb"), 2267.96, { abs: 0.005 });
  expect(faults.issues).toEqual([]);
  for (const text of ["12 fl oz", "350", "0 ml", "-1 l", "−1 l", "3 cups", "3 dozen", "3 constructor", "2,5 l", "lots"])
    volume(text);
  expect(faults.issues.map(({ message }) => message)).toEqual([
    expect.stringContaining("29.57 ml in the United States and 28.41 ml in Britain"),
    expect.stringContaining("“350” of what?"),
    expect.stringContaining("must be above 0"),
    expect.stringContaining("must be above 0"),
    expect.stringContaining("must be above 0"),
    expect.stringContaining("I don't know the unit"),
    expect.stringContaining("I don't know the unit in “3 dozen”. Write it like"),
    expect.stringContaining("I don't know the unit in “3 constructor”. Write it like"),
    expect.stringContaining("Write a decimal point"),
    expect.stringContaining("“lots” is no amount I can read"),
  ]);
});

it("an amount with its unit apart, and the most that is read", () => {
  const faults = new Faults();
  expect(readVolume({ value: 2.5, unit: "l" }, "/v", "The capacity", faults)).toBe(2500);
  expect(readVolume("1000 l", "/v", "The capacity", faults)).toBe(1e6);
  // By definition, 453.59237 g.
  expect(readWeight({ value: 1, unit: "lb" }, "/w", "The weight", faults)).toBe(453.59237);
  expect(faults.issues).toEqual([]);
  const refused = [
    readVolume("1001 l", "/v", "The capacity", faults),
    readVolume(undefined, "/v", "The capacity", faults),
    readWeight("3 stone", "/w", "The weight", faults),
    readWeight("heavy".repeat(20), "/w", "The weight", faults),
  ];
  expect(refused).toEqual([Number.NaN, Number.NaN, Number.NaN, Number.NaN]);
  expect(faults.issues).toEqual([
    { pointer: "/v", message: expect.stringContaining("comes to more than 1000 l") },
    { pointer: "/v", message: expect.stringContaining("The capacity is missing") },
    { pointer: "/w", message: expect.stringContaining('I don\'t know the unit in “3 stone”. Write it like "2000 g"') },
    { pointer: "/w", message: expect.stringContaining(`“${"heavy".repeat(8)}” is no amount`) },
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
  // Finer steps for small things: 1.23 cm to 0.05 cm, 24.6 mm = 0.9685 in to 1/32 in, 12.3 mm to 0.5 mm above.
  [12.3, "cm", "1.25 cm"],
  [24.6, "in", "31/32 in"],
  [20.4, "mm", "20 mm"],
  [20.4, "cm", "2 cm"],
] as const)("%d mm in %s is set as %s", (mm, unit, text) => expect(roundLength(mm, unit).text).toBe(text));

// Arithmetic: 102.2727 mm = 10.22727 cm = 4.026484 in; 100 mm = 3.937008 in; 105 mm = 4.133858 in.
describe("lengths are told in the unit asked for", () => {
  it.each([
    ["mm", 102.27, [100, 105], "102.3 mm"],
    ["cm", 10.227, [10, 10.5], "10.23 cm"],
    ["in", 4.026, [3.937, 4.134], "4.03 in"],
  ] as const)("in %s", (unit, value, [low, high], text) => {
    expect(inUnit(102.2727, unit)).toBe(value);
    expect(lengthQuantity({ value: 102.2727, low: 100, high: 105 }, unit)).toMatchObject({ value, low, high, unit });
    expect(sayLength(102.2727, unit)).toBe(text);
  });

  it("to a hundredth of a millimetre where it is small", () => {
    expect(sayLength(9.0909, "mm")).toBe("9.09 mm");
    expect(sayLength(9.0909, "cm")).toBe("0.91 cm");
  });
});

describe("faults", () => {
  const limits = { from: 1, to: 3, unit: "g/cm3" };

  it.each([1, 2, 3])("%d lies within 1 to 3, ends included", (value) => {
    const faults = new Faults();
    expect(faults.number(value, "/x", "Density", limits)).toBe(true);
    expect(faults.issues).toEqual([]);
  });

  it.each([
    [0.9, "Density is 0.9. It must lie between 1 and 3 g/cm3."],
    [3.1, "Density is 3.1. It must lie between 1 and 3 g/cm3."],
    [Number.NaN, "Density is NaN. It must lie between 1 and 3 g/cm3."],
    ["2", "Density is no number. It must lie between 1 and 3 g/cm3."],
  ])("%j does not", (value, message) => {
    const faults = new Faults();
    expect(faults.number(value, "/x", "Density", limits)).toBe(false);
    expect(faults.issues).toEqual([{ pointer: "/x", message, allowed: ["1 to 3 g/cm3"] }]);
  });

  it("of a number without a unit end with the number", () => {
    const faults = new Faults();
    faults.number(9, "/x", "A share", { from: 0, to: 1, unit: "" });
    expect(faults.issues).toEqual([
      { pointer: "/x", message: "A share is 9. It must lie between 0 and 1.", allowed: ["0 to 1"] },
    ]);
  });

  it("of a part are kept under the place of the part, and what is no fault of the input passes through", () => {
    const faults = new Faults();
    const issue = { pointer: "/percent", message: "Too much.", suggestion: "12" };
    const part = () => {
      throw new ImpossibleValueError([issue]);
    };
    expect(faults.gather("/lid", () => 7)).toBe(7);
    expect(() => faults.throwIfAny()).not.toThrow();
    expect(faults.gather("/lid", part)).toBeUndefined();
    expect(faults.issues).toEqual([{ ...issue, pointer: "/lid/percent" }]);
    expect(() => faults.throwIfAny()).toThrow(ImpossibleValueError);
    expect(() =>
      faults.gather("/lid", () => {
        throw new TypeError("a slip of the program");
      }),
    ).toThrow(TypeError);
  });
});
