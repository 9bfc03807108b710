import { describe, expect, it } from "vitest";
import {
  analyseGlaze,
  fire,
  fromSeger,
  materialAnalysis,
  molarMass,
  OXIDES,
  parseFormula,
  segerFormula,
  yieldOfAnalysis,
  yieldOfFormula,
} from "../../api/engine/chemistry/index.ts";
import { UnknownNameError } from "../../api/engine/errors.ts";
import { listMaterials } from "../../api/engine/recipe/materials.ts";
import { close } from "../support/close.ts";
import { caught } from "../support/refusals.ts";

/** Grams left of 100 g, and grams lost (net). All expectations: derived (arithmetic) with ciaaw-2021 masses. */
const fired: [string, Record<string, number>, number, string][] = [
  ["CaCO3", { CaO: 56.029 }, 43.971, "carbon dioxide leaves"],
  ["MnO2", { MnO: 81.597 }, 18.403, "half the oxygen leaves"],
  ["Co3O4", { CoO: 93.356 }, 6.644, "a quarter of the oxygen leaves"],
  ["FeO", { Fe2O3: 111.134 }, -11.134, "oxygen is taken up"],
  ["Fe3O4", { Fe2O3: 103.455 }, -3.455, "oxygen is taken up"],
  ["Cu2O", { CuO: 111.181 }, -11.181, "oxygen is taken up"],
  ["Pb3O4", { PbO: 97.666 }, 2.334, "red lead gives off oxygen"],
  ["Pr6O11", { Pr2O3: 96.867 }, 3.133, "oxygen leaves"],
  ["CaF2", { CaO: 71.827 }, 28.173, "fluorine leaves, oxygen takes its place"],
  ["SiC", { SiO2: 149.848 }, -49.848, "carbon burns, silicon takes up oxygen"],
  ["KNO3", { K2O: 46.585 }, 53.415, "nitrogen oxides leave"],
  ["CaSO4", { CaO: 41.193 }, 58.807, "sulfate leaves"],
  ["FeS2", { Fe2O3: 66.556 }, 33.444, "sulfur leaves, oxygen is taken up"],
];
describe("what the kiln leaves of 100 g", () => {
  it.each(fired)("%s → %o, %f g lost: %s", (formula, left, lost) => {
    const ours = yieldOfFormula(formula);
    expect(Object.keys(ours.weightPercent)).toEqual(Object.keys(left));
    for (const [oxide, gram] of Object.entries(left)) close(ours.weightPercent[oxide], gram, { abs: 0.002 });
    close(100 * ours.lost, lost, { abs: 0.002 });
  });

  it("names gases and oxygen one by one", () => {
    const gypsum = fire(parseFormula("CaSO4.2H2O"));
    if ("homeless" in gypsum) throw new Error("gypsum has a home");
    expect(Object.keys(gypsum.gases).sort()).toEqual(["H2O", "SO3"]);
    close(gypsum.gases.H2O, 2 * molarMass("H2O"), { rel: 1e-12 });
    expect(gypsum.oxygenTakenUpG).toBe(0);
  });

  it("neither gains nor loses oxygen where the formula is in balance, decimals or not", () => {
    // Montmorillonite: 0.33/2 + 1.67·3/2 + 0.33 + 4·2 + 2/2 = 12 O; a frit: 0.3 + 0.7 + 0.3·3 + 0.7·3 + 2.6·2 = 9.2 O.
    const clay = fire(parseFormula("Na0.33(Al1.67Mg0.33)Si4O10(OH)2"));
    expect(clay).toMatchObject({ gases: { H2O: expect.closeTo(18.015, 10) }, oxygenTakenUpG: 0 });
    expect(clay).not.toHaveProperty("gases.O");
    const frit = fire(parseFormula("0.3Na2O·0.7CaO·0.3Al2O3·0.7B2O3·2.6SiO2"));
    expect(frit).toMatchObject({ gases: {}, oxygenTakenUpG: 0 });
    expect(frit).not.toHaveProperty("gases.O");
  });

  it("lists what is left in the order of all tables, whatever the order of the formula", () => {
    expect(Object.keys(yieldOfFormula("NaAlSi3O8").weightPercent)).toEqual(["SiO2", "Al2O3", "Na2O"]);
  });

  it("tells how much of the loss is fluorine", () => {
    close(yieldOfFormula("CaF2").fluorine, (2 * 18.998) / 78.074, { rel: 1e-12 });
    expect(yieldOfFormula("CaCO3").fluorine).toBe(0);
  });

  it("has 3 % of each figure for a spread where none is given, and otherwise what is given", () => {
    close(yieldOfFormula("CaCO3").plusMinus[0], (0.03 * 56.077) / 100.086, { rel: 1e-12 });
    const dolomite = yieldOfFormula("CaMg(CO3)2", "", { CaO: 0.9 });
    expect(Object.keys(dolomite.weightPercent)).toEqual(["MgO", "CaO"]);
    expect(dolomite.plusMinus).toEqual([0, 0.9 / 100]);
  });

  it("refuses elements that have no oxide here, and a formula with a zero for the letter O", () => {
    const { issues } = caught(() => yieldOfFormula("UO2", "/formula"));
    expect(issues).toMatchObject([{ pointer: "/formula", message: expect.stringMatching(/^U has/), allowed: OXIDES }]);
    expect(() => yieldOfFormula("UO2")).toThrow(UnknownNameError);
    expect(() => yieldOfFormula("K20")).toThrow(/K2O/);
    expect(() => yieldOfFormula("H2O")).toThrow(/Nothing of this stays/);
    // Forty characters of each are repeated, and no more.
    const long = caught(() => yieldOfFormula(`K20${"Si".repeat(30)}`)).issues[0]!;
    expect(long.message).toContain(`“K20${"Si".repeat(18)}S”`);
    expect(long.message).toContain(`mean K2O${"Si".repeat(18)}S,`);
  });
});

describe("analyses", () => {
  it("takes what is missing as loss where none is stated", () => {
    const { yielded, assumedLossPercent } = yieldOfAnalysis({ weightPercent: { CaO: 56 } });
    expect(assumedLossPercent).toBe(44);
    close(yielded.lost, 0.44, { rel: 1e-12 });
  });

  it("brings a stated total to 100", () => {
    const { yielded } = yieldOfAnalysis({ weightPercent: { CaO: 54, SiO2: 2 }, lossOnIgnitionPercent: 42 });
    close(yielded.weightPercent.CaO, (100 * 54) / 98, { rel: 1e-12 });
    close(yielded.lost, 42 / 98, { rel: 1e-12 });
  });

  it("turns FeO and MnO2 into the oxides counted, with the oxygen in the loss", () => {
    const { yielded } = yieldOfAnalysis({ weightPercent: { FeO: 50, MnO2: 50 }, lossOnIgnitionPercent: 0 });
    close(yielded.weightPercent.Fe2O3, 55.567, { abs: 0.002 });
    close(yielded.weightPercent.MnO, 40.798, { abs: 0.002 });
    close(100 * yielded.lost, 100 - 55.567 - 40.798, { abs: 0.004 });
  });

  it("has 2 % of each figure and at least 0.05 for a spread, turned and brought to the total with its figure", () => {
    // 98 in all. Half-widths: CaO 0.02·56 = 1.12, MgO 0.05, FeO 0.02·10 = 0.2, all per 98; FeO → Fe2O3 × 159.687/(2·71.844)
    const { yielded } = yieldOfAnalysis({ weightPercent: { CaO: 56, MgO: 1, FeO: 10 }, lossOnIgnitionPercent: 31 });
    expect(Object.keys(yielded.weightPercent)).toEqual(["MgO", "CaO", "Fe2O3"]);
    const turned = 159.687 / (2 * 71.844);
    const halves = [0.05, 1.12, 0.2 * turned];
    for (const [i, half] of halves.entries()) close(yielded.plusMinus[i], half / 98, { rel: 1e-12 });
    close(yielded.lost, (31 - 10 * (turned - 1)) / 98, { rel: 1e-12 });
    expect(yielded.fluorine).toBe(0);
  });

  it("adds up the half-widths of two forms of one oxide", () => {
    const both = yieldOfAnalysis({ weightPercent: { SiO2: 90, Fe2O3: 5, MnO2: 0, FeO: 5 } }, "", {
      Fe2O3: 0.3,
      FeO: 0.4,
    });
    expect(Object.keys(both.yielded.weightPercent)).toEqual(["SiO2", "Fe2O3"]);
    close(both.yielded.plusMinus[1], (0.3 + (0.4 * 159.687) / (2 * 71.844)) / 100, { rel: 1e-12 });
  });

  it("counts fluorine among the oxides as lost, brought to the total with the rest", () => {
    const { yielded } = yieldOfAnalysis({ weightPercent: { SiO2: 60, CaO: 30, F: 4 }, lossOnIgnitionPercent: 4 });
    close(yielded.fluorine, 4 / 98, { rel: 1e-12 });
    close(yielded.lost, 8 / 98, { rel: 1e-12 });
  });

  it("leaves out what is listed at 0", () => {
    const { yielded } = yieldOfAnalysis({ weightPercent: { MgO: 0, CaO: 56 } });
    expect(yielded.weightPercent).toEqual({ CaO: expect.closeTo(56, 10) });
  });

  const refused: [string, Record<string, number>, unknown, string, RegExp, number[]?][] = [
    ["only water", { H2O: 100 }, undefined, "", /Nothing of this stays/],
    ["all at 0", { SiO2: 0 }, undefined, "", /Nothing of this stays/],
    ["a loss below 0", { SiO2: 100 }, -1, "/lossOnIgnitionPercent", /Loss on ignition cannot be -1\./],
    ["a loss in words", { SiO2: 99 }, "1", "/lossOnIgnitionPercent", /cannot be something other than a number/],
    ["a total above 105", { SiO2: 100 }, 5.1, "", /adds up to 105\.1 %/, [105]],
  ];
  it.each(refused)("refuse %s", (_what, weightPercent, lossOnIgnitionPercent, where, message, allowed) => {
    const analysis = { weightPercent, lossOnIgnitionPercent } as Parameters<typeof yieldOfAnalysis>[0];
    const { issues } = caught(() => yieldOfAnalysis(analysis, "/a"));
    expect(issues).toEqual([{ pointer: `/a${where}`, message: expect.stringMatching(message), allowed }]);
  });

  it("pass at 105, the highest total read", () => {
    const { totalPercent } = yieldOfAnalysis({ weightPercent: { SiO2: 100 }, lossOnIgnitionPercent: 5 });
    expect(totalPercent).toBe(105);
  });

  it("serves a built-in material as analysis whether it is kept by formula or not", () => {
    close(materialAnalysis("calcite").lossOnIgnitionPercent, 43.97, { abs: 0.005 });
    expect(materialAnalysis("whiting").lossOnIgnitionPercent).not.toBe(
      materialAnalysis("calcite").lossOnIgnitionPercent,
    );
    expect(materialAnalysis("China Clay").plusMinusWeightPercent.SiO2).toBeGreaterThan(0);
  });
});

describe("built-in materials kept by formula", () => {
  const rows = listMaterials().filter(({ formula }) => formula);
  it.each(rows)("$id has the spread of its row", ({ id, plusMinusWeightPercent }) => {
    for (const [oxide, half] of Object.entries(materialAnalysis(id).plusMinusWeightPercent)) {
      close(half, plusMinusWeightPercent[oxide] ?? 0, { rel: 1e-12, label: oxide });
    }
  });
});

// Moles of the oxide counted from one mole of what is listed: atoms of the metal, by hand.
const listedAs: [string, string, number][] = [
  ["Fe", "Fe2O3", 1 / 2],
  ["Fe3O4", "Fe2O3", 3 / 2],
  ["MnO2", "MnO", 1],
  ["Mn2O3", "MnO", 2],
  ["Mn3O4", "MnO", 3],
  ["Co2O3", "CoO", 2],
  ["Co3O4", "CoO", 3],
  ["Cu2O", "CuO", 2],
  ["Ni2O3", "NiO", 2],
  ["Pb3O4", "PbO", 3],
  ["PbO2", "PbO", 1],
  ["Pr6O11", "Pr2O3", 3],
  ["PrO2", "Pr2O3", 1 / 2],
  ["Sb2O5", "Sb2O3", 1],
  ["CrO3", "Cr2O3", 1 / 2],
  ["Ce2O3", "CeO2", 2],
];
describe("other spellings in a glaze given by its oxides", () => {
  it.each(listedAs)("%s is counted as %s, %f mol from one", (name, oxide, moles) => {
    const { moleFractions, warnings } = analyseGlaze({
      oxides: { basis: "moles", amounts: { SiO2: 1, CaO: 1, [name]: 2 } },
    });
    close(moleFractions[oxide]! / moleFractions.SiO2!, 2 * moles, { rel: 1e-12 });
    const message = `${name} is counted as ${oxide}.`;
    expect(warnings).toEqual([{ code: "oxide-converted", message, pointer: `/oxides/amounts/${name}` }]);
  });
  it.each(["H2O", "H2O+", "H2O-", "CO2", "C", "SO3", "S", "N2O5", "F", "Cl"])("%s is left out", (name) => {
    const { moleFractions, warnings } = analyseGlaze({
      oxides: { basis: "moles", amounts: { SiO2: 1, CaO: 1, [name]: 2 } },
    });
    expect(moleFractions).toEqual({ SiO2: 0.5, CaO: 0.5 });
    const message = `${name} is left out: it leaves in the kiln and is not part of the fired glass.`;
    expect(warnings).toEqual([{ code: "volatile-left-out", message, pointer: `/oxides/amounts/${name}` }]);
  });
});

describe("fluxes", () => {
  // R2O and RO of the Seger formula; colouring oxides apart: `common practice, no source`.
  const fluxes = "Li2O Na2O K2O MgO CaO SrO BaO ZnO PbO CdO Rb2O Cs2O BeO".split(" ");
  const alkalis = "Li2O Na2O K2O Rb2O Cs2O".split(" ");
  it.each(OXIDES)("%s", (oxide) => {
    const seger = segerFormula(OXIDES.map((each) => (each === oxide ? 2 : 0)));
    if (!fluxes.includes(oxide)) return expect(seger).toBeNull();
    expect(seger?.moles).toEqual({ [oxide]: 1 });
    expect(seger?.alkaliShare).toBe(alkalis.includes(oxide) ? 1 : 0);
  });
});

describe("docstring examples", () => {
  it("hold to the digits shown", () => {
    expect(molarMass("SiO2")).toBeCloseTo(60.083, 10);
    close(yieldOfFormula("CaCO3").weightPercent.CaO, 56.029, { abs: 0.0005 });
    close(fromSeger({ K2O: 0.3, CaO: 0.7, Al2O3: 0.5, SiO2: 4 }).SiO2, 66.98, { abs: 0.005 });
    const moles = OXIDES.map((oxide) => ({ K2O: 0.6, CaO: 1.4, Al2O3: 1, SiO2: 8 })[oxide as string] ?? 0);
    const seger = segerFormula(moles);
    expect(seger?.moles).toEqual({ SiO2: 4, Al2O3: 0.5, K2O: 0.3, CaO: 0.7 });
    const calcite = fire(parseFormula("CaCO3"));
    close("gases" in calcite ? calcite.gases.CO2 : undefined, 44.009, { abs: 0.0005 });
    close(materialAnalysis("calcite").lossOnIgnitionPercent, 43.971, { abs: 0.0005 });
  });
});
