import { describe, expect, it } from "vitest";
import {
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
import { close } from "../support/close.ts";

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

  it("refuses elements that have no oxide here, and a formula with a zero for the letter O", () => {
    expect(() => yieldOfFormula("UO2")).toThrow(UnknownNameError);
    expect(() => yieldOfFormula("K20")).toThrow(/K2O/);
    expect(() => yieldOfFormula("H2O")).toThrow(/Nothing of this stays/);
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

  it("serves a built-in material as analysis whether it is kept by formula or not", () => {
    close(materialAnalysis("calcite").lossOnIgnitionPercent, 43.97, { abs: 0.005 });
    expect(materialAnalysis("whiting").lossOnIgnitionPercent).not.toBe(
      materialAnalysis("calcite").lossOnIgnitionPercent,
    );
    expect(materialAnalysis("China Clay").plusMinusWeightPercent.SiO2).toBeGreaterThan(0);
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
