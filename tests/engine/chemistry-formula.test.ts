import { describe, expect, it } from "vitest";
import { MAX_FORMULA_DEPTH, MAX_FORMULA_LENGTH, parseFormula } from "../../api/engine/chemistry/index.ts";
import { ImpossibleValueError, UnknownNameError } from "../../api/engine/errors.ts";
import { close } from "../support/close.ts";
import { caught } from "../support/refusals.ts";

// Atoms counted by hand.
const read: [string, Record<string, number>][] = [
  ["SiO2", { Si: 1, O: 2 }],
  ["CaMg(CO3)2", { Ca: 1, Mg: 1, C: 2, O: 6 }],
  ["Al2O3.2SiO2.2H2O", { Al: 2, Si: 2, O: 9, H: 4 }],
  ["Al2O3·2SiO2·2H2O", { Al: 2, Si: 2, O: 9, H: 4 }],
  ["Al2O3 • 2SiO2 • 2H2O", { Al: 2, Si: 2, O: 9, H: 4 }],
  ["Na2O·2CaO·5B2O3·16H2O", { Na: 2, Ca: 2, B: 10, O: 34, H: 32 }],
  ["Na0.33(Al1.67Mg0.33)Si4O10(OH)2", { Na: 0.33, Al: 1.67, Mg: 0.33, Si: 4, O: 12, H: 2 }],
  ["K(Mg2.5Fe0.5)AlSi3O10(OH)1.75F0.25", { K: 1, Mg: 2.5, Fe: 0.5, Al: 1, Si: 3, O: 11.75, H: 1.75, F: 0.25 }],
  ["Na0.95Ca0.05Al1.05Si2.95O8", { Na: 0.95, Ca: 0.05, Al: 1.05, Si: 2.95, O: 8 }],
  ["Na2B4O5(OH)4.8(H2O)", { Na: 2, B: 4, O: 17, H: 20 }],
  ["NaCaB5O6(OH)6.5H2O", { Na: 1, Ca: 1, B: 5, O: 17, H: 16 }],
  ["Ca2B6O11.5H2O", { Ca: 2, B: 6, O: 16, H: 10 }],
  ["CaSO4.2(H2O)", { Ca: 1, S: 1, O: 6, H: 4 }],
  ["CaSO4.0.5H2O", { Ca: 1, S: 1, O: 4.5, H: 1 }],
  ["CaSO4·0.5H2O", { Ca: 1, S: 1, O: 4.5, H: 1 }],
  ["MgCl2.6H2O", { Mg: 1, Cl: 2, H: 12, O: 6 }],
  ["Al2(SO4)3.18H2O", { Al: 2, S: 3, O: 30, H: 36 }],
  ["2CoCO3.3Co(OH)2.H2O", { Co: 5, C: 2, O: 13, H: 8 }],
  ["0.3K2O·0.7CaO·0.5Al2O3·4SiO2", { K: 0.6, Ca: 0.7, Al: 1, Si: 4, O: 10.5 }],
  ["0.3K2O.0.7CaO.0.5Al2O3.4SiO2", { K: 0.6, Ca: 0.7, Al: 1, Si: 4, O: 10.5 }],
  ["PrO1.83", { Pr: 1, O: 1.83 }],
  ["K[AlSi3]O8", { K: 1, Al: 1, Si: 3, O: 8 }],
  ["[(OH)2]3", { O: 6, H: 6 }],
  ["O10.5(OH)1.5", { O: 12, H: 1.5 }],
  ["(OH)1.05(H2O)0.5", { O: 1.55, H: 2.05 }],
  ["Fe1.5Mg0.5SiO4", { Fe: 1.5, Mg: 0.5, Si: 1, O: 4 }],
  // A decimal point: inside brackets …
  ["Mg(CO3.5H2O)", { Mg: 1, C: 1, O: 4.5, H: 2 }],
  ["Mg[CO3.5H2O]", { Mg: 1, C: 1, O: 4.5, H: 2 }],
  // … after a 0, even where an anion could end the part …
  ["Ca5F0.5Cl0.5(PO4)3", { Ca: 5, F: 0.5, Cl: 0.5, P: 3, O: 12 }],
  // … after an element that ends no part …
  ["Mg1.8FeSiO4", { Mg: 1.8, Fe: 1, Si: 1, O: 4 }],
  ["Fe1.5.H2O", { Fe: 1.5, H: 2, O: 1 }],
  // … before what holds no oxygen, is oxygen, or is a bracketed OH …
  ["Mg(OH)1.5Cl", { Mg: 1, O: 1.5, H: 1.5, Cl: 1 }],
  ["Mg(OH)1.5Fe0.5SiO4", { Mg: 1, O: 5.5, H: 1.5, Fe: 0.5, Si: 1 }],
  ["Mg(OH)1.5Cl·2H2O", { Mg: 1, O: 3.5, H: 5.5, Cl: 1 }],
  ["CaTi(OH)1.5OSiO4", { Ca: 1, Ti: 1, O: 6.5, H: 1.5, Si: 1 }],
  ["Al2Si4O10.5[OH]1.5", { Al: 2, Si: 4, O: 12, H: 1.5 }],
  // … and at the head of a part.
  ["2.5CaO", { Ca: 2.5, O: 2.5 }],
  ["Na2B4O7 · 2.5H2O", { Na: 2, B: 4, O: 9.5, H: 5 }],
  ["CaSO4. 2.05H2O", { Ca: 1, S: 1, O: 6.05, H: 4.1 }],
  // Otherwise the dot joins: after any bracket, beside no digit, as the first of two.
  ["Na2B4O5[OH]4.8(H2O)", { Na: 2, B: 4, O: 17, H: 20 }],
  ["K2[SiO3]2.5H2O", { K: 2, Si: 2, O: 11, H: 10 }],
  ["CaCl2.CaF2", { Ca: 2, Cl: 2, F: 2 }],
  ["Si3N4.1.5H2O", { Si: 3, N: 4, H: 3, O: 1.5 }],
  ["  SiO2 ", { Si: 1, O: 2 }],
  ["Si10000O", { Si: 10_000, O: 1 }],
  ["H₂O", { H: 2, O: 1 }],
  ["CO", { C: 1, O: 1 }],
  ["Co", { Co: 1 }],
];

describe("formulas are read", () => {
  it.each(read)("%s", (text, atoms) => {
    const found = parseFormula(text);
    expect(Object.keys(found).sort()).toEqual(Object.keys(atoms).sort());
    for (const [symbol, count] of Object.entries(atoms)) close(found[symbol], count, { rel: 1e-12, label: symbol });
  });
});

describe("what is no formula is refused in plain words", () => {
  const refused: [string, RegExp][] = [
    ["", /missing/],
    ["   ", /missing/],
    ["(CaO", /never closed/],
    ["CaO)", /no matching opening/],
    ["[CaO)", /no matching opening/],
    ["CaO]", /no matching opening/],
    ["()", /closing bracket/],
    ["2", /no elements/],
    ["K2O.", /no elements/],
    [".K2O", /no elements/],
    ["K2O..H2O", /no elements/],
    ["CaO*2", /cannot be read/],
    ["CaSO4·½H2O", /cannot be read/],
    ["sio2", /start with a capital/],
    ["Si O2", /cannot be read/],
    ["Si0O2", /counts/],
    ["Si10001O2", /counts/],
    ["(Ca.5Mg.5)CO3", /cannot be read/],
    ["(Si2.O2)", /cannot be read/],
    ["Na0.5.2H2O", /cannot be read/],
    ["Na0.5.2.3H2O", /cannot be read/],
    ["Si-1", /cannot be read/],
    ["Si1e3", /cannot be read/],
  ];
  it.each(refused)("%j", (text, message) => {
    const error = caught(() => parseFormula(text, "/recipe/0/formula"));
    expect(error).toBeInstanceOf(ImpossibleValueError);
    expect(error.issues).toHaveLength(1);
    expect(error.issues[0]!.pointer).toBe("/recipe/0/formula");
    expect(error.issues[0]!.message).toMatch(message);
    expect(error.issues[0]).not.toHaveProperty("allowed");
  });

  it("what is no text at all", () => {
    for (const value of [5, null, undefined, {}]) expect(() => parseFormula(value as never)).toThrow(/missing/);
  });

  it("repeats forty characters of what was read, and no more", () => {
    const forty = `Xx${"O".repeat(38)}`;
    expect(caught(() => parseFormula(forty)).issues[0]!.message).toContain(`in “${forty}” is`);
    expect(caught(() => parseFormula(`${forty}O`)).issues[0]!.message).toContain(`in “${forty}…” is`);
  });

  it("names a symbol that is no element", () => {
    const error = caught(() => parseFormula("Xx2O3"));
    expect(error).toBeInstanceOf(UnknownNameError);
    expect(error.issues[0]!.message).toContain("Xx");
  });

  it("bounds length and depth", () => {
    expect(parseFormula("O".repeat(MAX_FORMULA_LENGTH))).toEqual({ O: MAX_FORMULA_LENGTH });
    const { message, allowed } = caught(() => parseFormula("O".repeat(MAX_FORMULA_LENGTH + 1))).issues[0]!;
    expect(message).toMatch(/201 characters long/);
    expect(allowed).toEqual([MAX_FORMULA_LENGTH]);
    const nest = (depth: number) => `${"(".repeat(depth)}O${")".repeat(depth)}`;
    expect(parseFormula(nest(MAX_FORMULA_DEPTH))).toEqual({ O: 1 });
    expect(() => parseFormula(nest(MAX_FORMULA_DEPTH + 1))).toThrow(/nested deeper/);
  });
});
