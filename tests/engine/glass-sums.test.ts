/** What the fitted sums are made of: quantities of a glass, terms, spread and ranges, worked by hand on small figures. */
import { describe, expect, it } from "vitest";
import { measuredModel } from "../../api/engine/glass/measured-model.ts";
import type { ModelFile, SpreadFile } from "../../api/engine/glass/model-file.ts";
import { MODEL_OXIDES, vectorOf } from "../../api/engine/glass/oxides.ts";
import { rangeWarnings, trainingRange, widening } from "../../api/engine/glass/range-warnings.ts";
import { leverageOf, scaleFunction } from "../../api/engine/glass/spread.ts";
import { termSum } from "../../api/engine/glass/term-sum.ts";
import {
  addGradient,
  GROUPS,
  parseTerm,
  QUANTITIES,
  QUANTITY_COUNT,
  quantitiesOf,
} from "../../api/engine/glass/terms.ts";
import { close } from "../support/close.ts";

type Moles = Record<string, number>;
const N = MODEL_OXIDES.length;
const place = (oxide: string) => (MODEL_OXIDES as readonly string[]).indexOf(oxide);

function vector(moles: Moles): Float64Array {
  const x = new Float64Array(N);
  for (const oxide in moles) x[place(oxide)] = moles[oxide]!;
  return x;
}
function quantities(moles: Moles): Float64Array {
  const q = new Float64Array(QUANTITY_COUNT);
  quantitiesOf(vector(moles), q);
  return q;
}
const groupsOf = (moles: Moles) =>
  Object.fromEntries(GROUPS.map((group) => [group, quantities(moles)[QUANTITIES.indexOf(group)]!]));

const ALKALIS = ["Li2O", "Na2O", "K2O"];
const EARTHS = ["MgO", "CaO", "SrO", "BaO", "ZnO", "PbO", "FeO", "MnO", "CoO", "CuO", "NiO"];

describe("compositions", () => {
  it("are scaled to 1 and say what share has no place", () => {
    const x = new Float64Array(N).fill(9);
    close(vectorOf({ SiO2: 3, Na2O: 1 }, x), 0);
    expect([x[0], x[4], x[1]]).toEqual([0.75, 0.25, 0]);
    // 1 of 5 parts unknown.
    close(vectorOf({ SiO2: 3, Na2O: 1, V2O5: 1 }, x), 0.2, { abs: 1e-12 });
    expect([x[0], x[4]]).toEqual([0.75, 0.25]);
  });
  it("of unknown oxides alone, or of nothing, are all zeros", () => {
    const x = new Float64Array(N).fill(9);
    expect(vectorOf({ V2O5: 1 }, x)).toBe(1);
    expect([...x]).toEqual(Array(N).fill(0));
    expect(vectorOf({}, x)).toBe(0);
  });
});

describe("quantities of a glass", () => {
  it("sum three alkalis and eleven divalent oxides", () => {
    // 1 + 2 + 4 and 8 + 16 + … : powers of two, so that no oxide can stand for another.
    const powers = Object.fromEntries([...ALKALIS, ...EARTHS].map((oxide, i) => [oxide, 2 ** i]));
    expect(groupsOf({ SiO2: 2 ** 20, TiO2: 2 ** 21, Fe2O3: 2 ** 22, ...powers })).toMatchObject({
      R2O: 7,
      RO: 2 ** 14 - 8,
    });
  });
  it("keep every oxide as it is in front of the groups", () => {
    expect([...quantities({ SiO2: 0.7, Bi2O3: 0.3 }).slice(0, N)]).toEqual([...vector({ SiO2: 0.7, Bi2O3: 0.3 })]);
  });
  // Each row by hand: min(Al, R2O), min(Al, R2O + RO), min(B, max(R2O + RO − Al, 0)).
  it.each<{ of: Moles; alkali: number; flux: number; boron: number }>([
    { of: { Al2O3: 1, Na2O: 4, CaO: 8 }, alkali: 1, flux: 1, boron: 0 },
    { of: { Al2O3: 6, Na2O: 4, CaO: 8, B2O3: 2 }, alkali: 4, flux: 6, boron: 2 },
    { of: { Al2O3: 6, Na2O: 4, CaO: 8, B2O3: 9 }, alkali: 4, flux: 6, boron: 6 },
    { of: { Al2O3: 13, Na2O: 4, CaO: 8, B2O3: 9 }, alkali: 4, flux: 12, boron: 0 },
  ])("$of: alumina with alkali $alkali, with any flux $flux, boron in four $boron", ({ of, alkali, flux, boron }) => {
    expect(groupsOf(of)).toMatchObject({
      AluminaWithAlkali: alkali,
      AluminaWithFlux: flux,
      BoronInFour: boron,
    });
  });
  // What each rises (+) and falls (−) with, one for one, from the same formulas.
  const FLUXES = [...ALKALIS, ...EARTHS];
  it.each<{ of: Moles; quantity: string; rises: string[]; falls: string[] }>([
    { of: {}, quantity: "SiO2", rises: ["SiO2"], falls: [] },
    { of: {}, quantity: "Bi2O3", rises: ["Bi2O3"], falls: [] },
    { of: {}, quantity: "R2O", rises: ALKALIS, falls: [] },
    { of: {}, quantity: "RO", rises: EARTHS, falls: [] },
    { of: { Al2O3: 1, Na2O: 4 }, quantity: "AluminaWithAlkali", rises: ["Al2O3"], falls: [] },
    { of: { Al2O3: 6, Na2O: 4, CaO: 8 }, quantity: "AluminaWithAlkali", rises: ALKALIS, falls: [] },
    { of: { Al2O3: 6, Na2O: 4, CaO: 8 }, quantity: "AluminaWithFlux", rises: ["Al2O3"], falls: [] },
    { of: { Al2O3: 13, Na2O: 4, CaO: 8 }, quantity: "AluminaWithFlux", rises: FLUXES, falls: [] },
    { of: { Al2O3: 13, Na2O: 4, CaO: 8, B2O3: 1 }, quantity: "BoronInFour", rises: [], falls: [] },
    { of: { Al2O3: 6, Na2O: 4, CaO: 8, B2O3: 2 }, quantity: "BoronInFour", rises: ["B2O3"], falls: [] },
    { of: { Al2O3: 6, Na2O: 4, CaO: 8, B2O3: 9 }, quantity: "BoronInFour", rises: FLUXES, falls: ["Al2O3"] },
  ])("$quantity of $of rises with $rises, falls with $falls", ({ of, quantity, rises, falls }) => {
    const gradient = new Float64Array(N).fill(10);
    addGradient(QUANTITIES.indexOf(quantity), 0.5, quantities(of), gradient);
    const wanted = MODEL_OXIDES.map(
      (oxide) => 10 + (rises.includes(oxide) ? 0.5 : 0) - (falls.includes(oxide) ? 0.5 : 0),
    );
    expect([...gradient]).toEqual(wanted);
  });
});

describe("terms", () => {
  it("are one quantity or a product of two", () => {
    expect(parseTerm("SiO2")).toEqual({ name: "SiO2", first: 0, second: -1 });
    expect(parseTerm("R2O*SiO2")).toEqual({ name: "R2O*SiO2", first: N, second: 0 });
  });
  it.each(["Kryptonite", "Kryptonite*Na2O", "Na2O*"])("refuses %s", (name) => {
    expect(() => parseTerm(name)).toThrow("not known");
  });
  const TERMS = { SiO2: 2, "Na2O*SiO2": 3, "R2O*R2O": 5, "BoronInFour*CaO": 7 };
  const GLASS = { SiO2: 0.5, Na2O: 0.2, CaO: 0.1, B2O3: 0.2 };
  it("add up: 1 + 2 × 0.5 + 3 × 0.2 × 0.5 + 5 × 0.2² + 7 × 0.2 × 0.1", () => {
    const sum = termSum({ intercept: 1, terms: TERMS });
    expect(sum.count).toBe(4);
    close(sum.of(quantities(GLASS)), 1 + 1 + 0.3 + 0.2 + 0.14, { abs: 1e-12 });
  });
  it("have the derivatives of a product", () => {
    const file = { intercept: 1, terms: TERMS, spread: SPREAD, shape: [0], training: { rangesMolePercent: {} } };
    const gradient = measuredModel(file as unknown as ModelFile).gradient(quantities(GLASS));
    const of = (oxide: string) => gradient[place(oxide)]!;
    // Silica 2 + 3 Na; each alkali 2 × 5 R2O, soda 3 Si more; lime 7 boron in four (all 0.2 of it).
    close(of("SiO2"), 2 + 3 * 0.2, { abs: 1e-12 });
    close(of("Na2O"), 3 * 0.5 + 2 * 5 * 0.2, { abs: 1e-12 });
    close(of("K2O"), 2 * 5 * 0.2, { abs: 1e-12 });
    close(of("CaO"), 7 * 0.2, { abs: 1e-12 });
    // Boron is the lesser of boron and flux here, so it is boron that counts: 7 × CaO.
    close(of("B2O3"), 7 * 0.1, { abs: 1e-12 });
    expect(of("Al2O3")).toBe(0);
  });
});

/** Place of row i, column j in a lower triangle written row by row. */
const at = (i: number, j: number) => (i * (i + 1)) / 2 + j;
const factorOf = (entries: [row: number, column: number, value: number][]) => {
  const factor = new Float64Array((N * (N + 1)) / 2);
  for (const [row, column, value] of entries) factor[at(row, column)] = value;
  return factor;
};
/** F₀₀ = 3 alone: leverage 9 for any glass, so ln scale = ln 0.5 + 0.5 ln 9 + … = ln 1.5 + 1.5 × CaO. */
const SPREAD: SpreadFile = {
  base: Math.log(0.5),
  slopes: { CaO: 1.5 },
  leverageSlope: 0.5,
  leverageFactor: [...factorOf([[0, 0, 3]])],
  limits: [-0.5, 1],
};

describe("spread", () => {
  it("takes the leverage |F·(1, x₂ …)|² row by row", () => {
    const factor = factorOf([
      [0, 0, 2],
      [1, 0, 1],
      [1, 1, 3],
      [23, 0, 0.5],
      [23, 1, 4],
      [23, 23, 5],
    ]);
    // 2² + (1 + 3 × 0.2)² + (0.5 + 4 × 0.2 + 5 × 0.1)²; silica is not read.
    close(leverageOf(factor, vector({ SiO2: 0.7, Al2O3: 0.2, Bi2O3: 0.1 })), 4 + 1.6 ** 2 + 1.8 ** 2, { abs: 1e-12 });
  });

  const { low, high } = trainingRange({ SiO2: [40, 100], CaO: [5, 60], Na2O: [0, 20] });
  const scale = scaleFunction(SPREAD, low, high);
  // The file's limits hold ln scale between −0.5 and 1; the widening comes on top.
  it.each<{ why: string; of: Moles; log: number }>([
    { why: "inside the range", of: { SiO2: 0.9, CaO: 0.1 }, log: Math.log(1.5) + 0.15 },
    { why: "kept below the upper limit", of: { SiO2: 0.4, CaO: 0.6 }, log: 1 },
    { why: "2 % below the least lime", of: { SiO2: 0.97, CaO: 0.03 }, log: Math.log(1.5) + 0.045 + 8 * 0.02 },
    { why: "10 % too much soda", of: { SiO2: 0.6, CaO: 0.1, Na2O: 0.3 }, log: Math.log(1.5) + 0.15 + 8 * 0.1 },
    {
      why: "3 % of what no glass had and 5 % soda beyond",
      of: { SiO2: 0.62, CaO: 0.1, Na2O: 0.25, PbO: 0.03 },
      log: Math.log(1.5) + 0.15 + 8 * 0.08,
    },
    { why: "beyond both the limit and the range", of: { SiO2: 0.3, CaO: 0.7 }, log: 1 + 8 * (0.1 + 0.1) },
  ])("$why: ln scale $log", ({ of, log }) => {
    close(scale(vector(of)), Math.exp(log), { rel: 1e-12 });
  });
  it("is kept above the lower limit", () => {
    const narrow = scaleFunction({ ...SPREAD, base: -9 }, low, high);
    close(narrow(vector({ SiO2: 0.9, CaO: 0.1 })), Math.exp(-0.5), { rel: 1e-12 });
  });
  it("is doubled where a tenth of the glass is unknown", () => {
    expect([widening(0), widening(0.1)]).toEqual([1, 2]);
  });
});

describe("range", () => {
  const range = trainingRange({ SiO2: [40, 83.71], Al2O3: [0.52, 25], Na2O: [0, 34] });
  const said = (moles: Moles, unknown = 0) => rangeWarnings(range, vector(moles), unknown, moles);

  it("is read in mole per cent; an oxide without one has none at all", () => {
    const { low, high } = trainingRange({ SiO2: [40, 83.71] });
    expect([low[0], high[0], low[7], high[7]]).toEqual([0.4, 0.8371, 0, 0]);
  });
  it("holds its own ends", () => {
    expect(said({ SiO2: 0.8371, Al2O3: 0.0052, Na2O: 0.1577 })).toEqual([]);
    expect(said({ SiO2: 0.4, Al2O3: 0.25, Na2O: 0.34 })).toEqual([]);
  });
  it("names each oxide that leaves it, with the end that it passed", () => {
    const warnings = said({ SiO2: 0.3, Al2O3: 0.005, Na2O: 0.345, CaO: 0.35 });
    expect(warnings.map((warning) => warning.code)).toEqual(Array(4).fill("outside-training-range"));
    const [silica, alumina, soda, lime] = warnings.map((warning) => warning.message);
    expect(silica).toContain(
      "SiO2 is 30 mol % of this glass; the measured glasses behind the figures have no less than 40 mol %",
    );
    expect(alumina).toContain("Al2O3 is 0.5 mol %");
    expect(alumina).toContain("no less than 0.5 mol %");
    expect(soda).toContain("Na2O is 34.5 mol %");
    expect(soda).toContain("no more than 34 mol %");
    expect(lime).toContain("CaO is 35 mol %");
    expect(lime).toContain("no more than 0 mol %");
  });
  it("says nothing of a thousandth unknown, and names what more is of", () => {
    const glass = { SiO2: 0.7, Al2O3: 0.1, Na2O: 0.2 };
    expect(said(glass, 0.001)).toEqual([]);
    const [warning] = said({ ...glass, V2O5: 0.01, CeO2: 0, WO3: 0.02 }, 0.03);
    expect(warning!.code).toBe("oxide-not-in-model");
    expect(warning!.message).toContain("nothing about V2O5, WO3 (3 mol % of this glass)");
  });
  it("asks for a quarter of silica, boron and phosphate together", () => {
    const codes = (moles: Moles) => said(moles).map((warning) => warning.code);
    expect(codes({ SiO2: 0.125, B2O3: 0.0625, P2O5: 0.0625, Al2O3: 0.25 })).not.toContain("no-glass-former");
    const short = said({ SiO2: 0.12, B2O3: 0.06, P2O5: 0.06, Al2O3: 0.25 });
    expect(short[0]!.code).toBe("no-glass-former");
    expect(short[0]!.message).toContain("together are 24 mol %");
  });
});
