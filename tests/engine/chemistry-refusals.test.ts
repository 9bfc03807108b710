/** What the chemistry refuses, where it points and what it allows. Bounds and words are the product's own: no outside source. */
import { describe, expect, it } from "vitest";
import { Findings, MAX_AMOUNT, pointerToken } from "../../api/engine/chemistry/findings.ts";
import { analyseGlaze, batchFromSeger, fromSeger, OXIDES } from "../../api/engine/chemistry/index.ts";
import { unknownOxide } from "../../api/engine/chemistry/oxides.ts";
import { ImpossibleValueError, type Issue, UnknownNameError } from "../../api/engine/errors.ts";
import type { OxideComposition, Recipe } from "../../api/engine/recipe/types.ts";
import { caught } from "../support/refusals.ts";

const silica = { material: "silica", parts: 1 };
const flint = { weightPercent: { SiO2: 100 }, lossOnIgnitionPercent: 0 };
const LINE = "A recipe is a list of lines, each with a material and its parts.";
const TABLE = "List oxides with their amounts here, such as SiO2 and a number.";
const NOTHING = "These amounts leave nothing in the fired glaze. Give at least one oxide with an amount above 0.";
const WAYS = ["material", "analysis", "formula"];
const BASES = ["weightPercent", "molePercent", "moles"];
const sixtyFive = Object.fromEntries(Array.from({ length: 65 }, (_, i) => [`X${i}`, 1]));
const oneOf = (found: string) =>
  `A line names a material, or carries an analysis, or a formula: exactly one. This one has ${found}.`;
const notA = (what: string, read: string) => `${what} cannot be ${read}. Give a number of 0 or more.`;

/** Everything that an answer says: pointer, message or part of it, and what would be allowed. */
type Said = [string, string | RegExp, unknown[]?];
const recipes: [string, unknown, Said[]][] = [
  ["no glaze", {}, [["", /either as a recipe or as oxides/, ["recipe", "oxides"]]]],
  ["a word for a list", { recipe: "silica" }, [["/recipe", LINE]]],
  ["a word for additions", { recipe: [silica], additions: "tin" }, [["/additions", LINE]]],
  ["an empty list", { recipe: [] }, [["/recipe", /^The recipe is empty\. Give at least one/]]],
  ["parts of 0", { recipe: [{ ...silica, parts: 0 }] }, [["/recipe", /^The parts of this recipe add up to 0\./]]],
  [
    "no line",
    { recipe: [null] },
    [
      ["/recipe/0", oneOf("none of them"), WAYS],
      ["/recipe/0/parts", /Parts cannot be/],
    ],
  ],
  ["no material", { recipe: [{ parts: 1 }] }, [["/recipe/0", oneOf("none of them"), WAYS]]],
  ["two ways", { recipe: [{ ...silica, analysis: flint }] }, [["/recipe/0", oneOf("material and analysis"), WAYS]]],
  ["two others", { recipe: [{ ...silica, formula: "SiO2" }] }, [["/recipe/0", oneOf("material and formula"), WAYS]]],
  ["parts below 0", { recipe: [{ ...silica, parts: -1 }] }, [["/recipe/0/parts", notA("Parts", "-1")]]],
  ["parts in words", { recipe: [{ ...silica, parts: "5" }] }, [["/recipe/0/parts", /something other than a number/]]],
  ["a number for a formula", { recipe: [{ formula: 5, parts: 1 }] }, [["/recipe/0/formula", /is missing here/]]],
  [
    "101 lines of both lists",
    { recipe: Array(60).fill(silica), additions: Array(41).fill(silica) },
    [["/recipe", "This recipe has 101 lines; up to 100 are read, additions included.", [100]]],
  ],
  [
    "65 oxides",
    { recipe: [{ analysis: { weightPercent: sixtyFive }, parts: 1 }] },
    [["/recipe/0/analysis/weightPercent", "This lists 65 oxides; up to 64 are read.", [64]]],
  ],
  ["no table", { recipe: [{ analysis: {}, parts: 1 }] }, [["/recipe/0/analysis/weightPercent", TABLE]]],
];
const oxides: [string, unknown, Said[]][] = [
  [
    "nothing at all",
    null,
    [
      ["/oxides/basis", /^Say whether/, BASES],
      ["/oxides/amounts", TABLE],
    ],
  ],
  ["no basis", { amounts: { SiO2: 1 } }, [["/oxides/basis", /^Say whether/, BASES]]],
  ["no amounts", { basis: "moles" }, [["/oxides/amounts", TABLE]]],
  ["a list of amounts", { basis: "moles", amounts: ["SiO2"] }, [["/oxides/amounts", TABLE]]],
  ["an empty table", { basis: "moles", amounts: {} }, [["/oxides/amounts", NOTHING]]],
  ["amounts of 0", { basis: "moles", amounts: { SiO2: 0 } }, [["/oxides/amounts", NOTHING]]],
  ["gases alone", { basis: "moles", amounts: { CO2: 1 } }, [["/oxides/amounts", NOTHING]]],
  [
    "a name that is none",
    { basis: "moles", amounts: { Unobtainium: 1 } },
    [["/oxides/amounts/Unobtainium", /is not an oxide known here\. Write it as a formula/, [...OXIDES]]],
  ],
  [
    "one name and one amount",
    { basis: "moles", amounts: { Unobtainium: 1, CaO: -2 } },
    [
      ["/oxides/amounts/CaO", notA("CaO", "-2")],
      ["/oxides/amounts/Unobtainium", /not an oxide/, [...OXIDES]],
    ],
  ],
  [
    "a name and its amount",
    { basis: "moles", amounts: { "a/b~c": -2 } },
    [
      ["/oxides/amounts/a~1b~0c", notA("This amount", "-2")],
      ["/oxides/amounts/a~1b~0c", /not an oxide/, [...OXIDES]],
    ],
  ],
  [
    "over 105 %",
    { basis: "molePercent", amounts: { SiO2: 100, CaO: 5.1 } },
    [["/oxides/amounts", /add up to 105\.1 %\. Rounding does not explain that/, [105]]],
  ],
];

describe("what is said of a glaze that cannot be read", () => {
  it.each([
    ...recipes,
    ...oxides.map(([what, given, said]): [string, unknown, Said[]] => [`oxides: ${what}`, { oxides: given }, said]),
  ])("%s", (_what, glaze, said) => {
    expectSaid(() => analyseGlaze(glaze as Recipe | OxideComposition), said);
  });

  it("reads what stands at the bounds: 100 lines, 105 %, 1e12 parts", () => {
    const lines = (n: number) => Array(n).fill(silica);
    expect(analyseGlaze({ recipe: lines(60), additions: lines(40) }).lines).toHaveLength(100);
    for (const basis of ["weightPercent", "molePercent"] as const) {
      expect(analyseGlaze({ oxides: { basis, amounts: { SiO2: 105 } } }).fired.weightPercent).toEqual({ SiO2: 100 });
    }
    expect(analyseGlaze({ recipe: [{ ...silica, parts: MAX_AMOUNT }] }).lines[0]!.share).toBe(1);
  });

  it("takes a key without a value for a key left out", () => {
    const given = [
      { material: undefined, formula: "SiO2", parts: 1 },
      { material: undefined, formula: undefined, analysis: flint, parts: 1 },
    ];
    const { lines, fired } = analyseGlaze({ recipe: given as unknown as Recipe["recipe"] });
    expect(lines.map(({ label }) => label)).toEqual(["SiO2", "own analysis"]);
    expect(fired.weightPercent).toEqual({ SiO2: 100 });
  });
});

describe("what is said of a Seger formula that cannot be read", () => {
  it.each<[string, unknown, Said[]]>([
    ["nothing in it", {}, [["", "These amounts add up to 0. Give at least one oxide."]]],
    ["amounts of 0", { SiO2: 0 }, [["", "These amounts add up to 0. Give at least one oxide."]]],
    ["no table", null, [["", TABLE]]],
    ["a list", ["SiO2"], [["", TABLE]]],
    ["a word", "SiO2", [["", TABLE]]],
    ["an amount below 0", { SiO2: -1 }, [["/SiO2", notA("SiO2", "-1")]]],
    ["a name that is none", { Unobtainium: 1 }, [["/Unobtainium", /not an oxide/, [...OXIDES]]]],
    ["a form that no glaze is reckoned in", { MnO2: 1 }, [["/MnO2", /not an oxide/]]],
    [
      "name and amount",
      { Unobtainium: "1" },
      [
        ["/Unobtainium", notA("Unobtainium", "something other than a number")],
        ["/Unobtainium", /not an oxide/, [...OXIDES]],
      ],
    ],
  ])("%s", (_what, moles, said) => {
    expectSaid(() => fromSeger(moles as Record<string, number>), said);
  });

  it("names the faults of formula and ingredients together", () => {
    expectSaid(
      () => batchFromSeger({ SiO2: -1 }, [{ formula: "CaO)" }]),
      [
        ["/SiO2", notA("SiO2", "-1")],
        ["/recipe/0/formula", /no matching opening/],
      ],
    );
    expectSaid(() => batchFromSeger({}, [{ formula: "CaO" }]), [["", /add up to 0/]]);
  });
});

describe("an amount", () => {
  it.each([0, 0.5, 1e12])("%f is one", (value) => {
    const findings = new Findings();
    expect(findings.amount(value, "/parts", "Parts")).toBe(true);
    expect(findings.impossible).toEqual([]);
  });
  it.each([
    [-1, "Parts cannot be -1. Give a number of 0 or more."],
    [Number.NaN, "Parts cannot be NaN. Give a number of 0 or more."],
    [2e12, "Parts cannot be 2000000000000. Give a number of 0 or more, up to 1000000000000."],
    ["5", "Parts cannot be something other than a number. Give a number of 0 or more."],
    ["2e12", "Parts cannot be something other than a number. Give a number of 0 or more."],
    [null, "Parts cannot be something other than a number. Give a number of 0 or more."],
    [[2e12], "Parts cannot be something other than a number. Give a number of 0 or more."],
  ])("%j is none", (value, message) => {
    const findings = new Findings();
    expect(findings.amount(value, "/parts", "Parts")).toBe(false);
    expect(findings.impossible).toEqual([{ pointer: "/parts", message }]);
  });
});

describe("a table of amounts", () => {
  it("is read up to its bound and not beyond", () => {
    const findings = new Findings();
    expect(findings.entries({ SiO2: 1, CaO: 2 }, "/t", 2)).toEqual(Object.entries({ SiO2: 1, CaO: 2 }));
    expect(findings.impossible).toEqual([]);
    expect(findings.entries({ SiO2: 1, CaO: 2 }, "/t", 1)).toEqual([]);
    expect(findings.impossible).toMatchObject([{ pointer: "/t", allowed: [1] }]);
  });
  it.each([null, undefined, "SiO2", 5, ["SiO2", 1], []])("%j is none", (value) => {
    const findings = new Findings();
    expect(findings.entries(value, "/t", 2)).toEqual([]);
    expect(findings.impossible).toEqual([{ pointer: "/t", message: TABLE }]);
  });
  it("has names cut at 64 characters and escaped in pointers, as RFC 6901 asks", () => {
    expect(pointerToken("a/b~c/d~e")).toBe("a~1b~0c~1d~0e");
    expect(pointerToken("S".repeat(64))).toBe("S".repeat(64));
    expect(pointerToken("S".repeat(65))).toBe("S".repeat(64));
  });
});

describe("faults gathered", () => {
  it("are those of the input; a fault of the engine itself goes on", () => {
    const findings = new Findings();
    expect(() => findings.gather(() => new Array(-1))).toThrow(RangeError);
    const issue: Issue = { pointer: "/a", message: "no" };
    const fail = (error: Error) => () => {
      throw error;
    };
    expect(findings.gather(fail(new UnknownNameError([issue])))).toBeUndefined();
    expect(findings).toMatchObject({ unknown: [issue], impossible: [] });
    expect(() => findings.throwIfAny()).toThrow(UnknownNameError);
    expect(findings.gather(fail(new ImpossibleValueError([issue])))).toBeUndefined();
    expect(findings).toMatchObject({ unknown: [issue], impossible: [issue] });
    expect(() => findings.throwIfAny()).toThrow(ImpossibleValueError);
  });
});

describe("a name that is no oxide", () => {
  // Zeros for the letter O are seen through first: two of them in three letters are too far for a slip of the pen.
  it.each([
    ["C00", "CoO"],
    ["AL203", "Al2O3"],
    ["mn3o4", "Mn3O4"],
  ])("%s: meant is %s", (name, suggestion) => {
    expect(unknownOxide(name, "").suggestion).toBe(suggestion);
  });
  // Right formulas of elements that no glass here was measured with: Ni2O3, Al2O3 or Fe would be another glaze.
  it.each(["Nd2O3", "As2O3", "WO3", "Se", "U3O8", "Er2O3"])("%s: nothing is suggested for what is no slip", (name) => {
    const issue = unknownOxide(name, "/a");
    expect(issue).toMatchObject({ pointer: "/a", message: expect.stringContaining("not among the oxides counted") });
    expect(issue).not.toHaveProperty("suggestion");
  });
  it("of sums and losses says what to write", () => {
    for (const name of ["KNaO", "NaKO", "R2O"]) {
      expect(unknownOxide(name, "")).toEqual({
        pointer: "",
        message: `“${name}” stands for K2O and Na2O together. Write each by itself.`,
        allowed: ["K2O", "Na2O"],
      });
    }
    for (const name of ["LOI", "loi", "L.O.I."]) {
      expect(unknownOxide(name, "").message).toContain("lossOnIgnitionPercent");
      expect(unknownOxide(name, "")).not.toHaveProperty("suggestion");
    }
  });
  it("is repeated to forty characters, and no further", () => {
    expect(unknownOxide("x".repeat(40), "").message).toContain(`“${"x".repeat(40)}”`);
    expect(unknownOxide("x".repeat(41), "").message).toContain(`“${"x".repeat(40)}…”`);
  });
});

function expectSaid(run: () => unknown, said: Said[]): void {
  const { issues } = caught(run);
  expect(issues.map(({ pointer }) => pointer)).toEqual(said.map(([pointer]) => pointer));
  for (const [i, [, message, allowed]] of said.entries()) {
    if (typeof message === "string") expect(issues[i]!.message).toBe(message);
    else expect(issues[i]!.message).toMatch(message);
    if (allowed) expect(issues[i]!.allowed).toEqual(allowed);
  }
}
