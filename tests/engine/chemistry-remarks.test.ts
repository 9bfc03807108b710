import { describe, expect, it } from "vitest";
import { glazeCautions } from "../../api/engine/chemistry/cautions.ts";
import { analyseGlaze, fromSeger, OXIDE_INDEX, OXIDES } from "../../api/engine/chemistry/index.ts";
import { CAUTIONS, findMaterial } from "../../api/engine/recipe/materials.ts";
import type { Analysis, OxideComposition, RecipeLine } from "../../api/engine/recipe/types.ts";
import { close } from "../support/close.ts";

const silica = { material: "silica", parts: 100 };
const lime = { formula: "CaO", parts: 50 };
type Amounts = OxideComposition["oxides"];

describe("what is remarked on a line, and what passes without a word", () => {
  const analysed = (weightPercent: Record<string, number>, lossOnIgnitionPercent?: number): RecipeLine => {
    const analysis: Analysis =
      lossOnIgnitionPercent === undefined ? { weightPercent } : { weightPercent, lossOnIgnitionPercent };
    return { name: "grit", analysis, parts: 50 };
  };
  it.each<[string, RecipeLine, [string, string, RegExp][]]>([
    ["a plain formula", lime, []],
    ["100,000 parts", { formula: "CaO", parts: 100_000 }, []],
    ["more", { formula: "CaO", parts: 100_001 }, [["huge-parts", "/parts", /^100001 parts of CaO is a great deal/]]],
    ["more of a built-in material", { material: "silica", parts: 100_001 }, [["huge-parts", "/parts", /of silica/]]],
    ["a whole analysis", analysed({ CaO: 60 }, 40), []],
    ["a loss of 70 %", analysed({ CaO: 30 }, 70), []],
    ["a higher loss", analysed({ CaO: 20 }, 80), [["high-loss", "", /^grit loses 80 % of its weight in the kiln/]]],
    // Soda crystals, Na2O·CO2·10H2O: (44.009 + 180.15)/286.138 = 78 %
    ["soda crystals", { material: "soda-crystals", parts: 9 }, [["high-loss", "", /^soda-crystals loses 78 %/]]],
    [
      "fluorspar",
      { material: "fluorspar", parts: 9 },
      [["fluorine-leaves", "", /fluorine of fluorspar is counted as/]],
    ],
    ["fluorine in an analysis", analysed({ CaO: 95, F: 5 }, 0), [["fluorine-leaves", "", /fluorine of grit/]]],
    ["up to 1 % taken as loss", analysed({ CaO: 99 }), []],
    [
      "over 1 % taken as loss",
      analysed({ CaO: 98.5 }),
      [["loss-assumed", "/analysis", /grit states .* the 1\.5 % missing/]],
    ],
    ["a total of 95", analysed({ CaO: 60 }, 35), []],
    ["a total below", analysed({ CaO: 60 }, 34.9), [["analysis-total", "/analysis", /of grit adds up to 94\.9 %/]]],
    ["a total of 101.5", analysed({ CaO: 60 }, 41.5), []],
    ["a total above", analysed({ CaO: 60 }, 41.6), [["analysis-total", "/analysis", /adds up to 101\.6 %/]]],
    ["a total above, without a loss", analysed({ CaO: 102 }), [["analysis-total", "/analysis", /adds up to 102\.0 %/]]],
    ["99.5 without a loss", analysed({ CaO: 99.5 }), []],
  ])("%s", (_what, line, remarks) => {
    const { warnings } = analyseGlaze({ recipe: [silica, lime, line] });
    expect(warnings).toEqual(
      remarks.map(([code, at, message]) => ({
        code,
        pointer: `/recipe/2${at}`,
        message: expect.stringMatching(message),
      })),
    );
  });

  it.each<[string, Amounts, string | undefined]>([
    ["a total of 95 %", { basis: "weightPercent", amounts: { SiO2: 60, CaO: 35 } }, undefined],
    ["94.9 %", { basis: "weightPercent", amounts: { SiO2: 60, CaO: 34.9 } }, "94.9"],
    ["101.5 mol %", { basis: "molePercent", amounts: { SiO2: 60, CaO: 41.5 } }, undefined],
    ["101.6 mol %", { basis: "molePercent", amounts: { SiO2: 60, CaO: 41.6 } }, "101.6"],
    ["moles, whatever they add up to", { basis: "moles", amounts: { SiO2: 200, CaO: 3 } }, undefined],
    ["a form to be turned, listed at 0", { basis: "moles", amounts: { SiO2: 2, CaO: 1, MnO2: 0 } }, undefined],
  ])("%s", (_what, oxides, said) => {
    const { warnings } = analyseGlaze({ oxides });
    const message = `These amounts add up to ${said} %; they have been brought to 100, but check the figures.`;
    expect(warnings).toEqual(said ? [{ code: "analysis-total", message, pointer: "/oxides/amounts" }] : []);
  });
});

describe("a line is called", () => {
  const flint = { weightPercent: { SiO2: 100 } };
  it.each<[unknown, string]>([
    [{ material: "China clay" }, "kaolin"],
    [{ formula: "CaCO3" }, "CaCO3"],
    [{ formula: "CaCO3", name: "shells" }, "shells"],
    [{ formula: "CaCO3", name: "" }, "CaCO3"],
    [{ formula: "CaCO3", name: 5 }, "CaCO3"],
    [{ formula: "CaCO3", name: "s".repeat(101) }, "s".repeat(100)],
    [{ analysis: flint }, "own analysis"],
    [{ analysis: flint, name: "pebbles" }, "pebbles"],
  ])("%j → %s", (line, label) => {
    const { lines } = analyseGlaze({ recipe: [{ ...(line as RecipeLine), parts: 10 }, silica] });
    expect(lines[0]).toMatchObject({
      label,
      material: label === "kaolin" ? "kaolin" : null,
      parts: 10,
      share: 10 / 110,
    });
  });
});

describe("per 100 g", () => {
  it("of glass given by its oxides nothing is lost, and moles come of weights", () => {
    // 2 mol SiO2 of 60.083 g and 1 mol PbO of 223.199 g: 343.365 g
    const ours = analyseGlaze({ oxides: { basis: "moles", amounts: { SiO2: 2, PbO: 1 } } });
    const weight = { SiO2: (100 * 2 * 60.083) / 343.365, PbO: (100 * 223.199) / 343.365 };
    for (const oxide of ["SiO2", "PbO"] as const) {
      close(ours.fired.weightPercent[oxide], weight[oxide], { rel: 1e-12 });
      close(ours.asWeighed.weightPercent[oxide], weight[oxide], { rel: 1e-12 });
    }
    close(ours.moles.SiO2, 200 / 343.365, { rel: 1e-12 });
    close(ours.massBalance.glassG, 100, { rel: 1e-12 });
    expect(ours.massBalance).toMatchObject({ weighedG: 100, lostG: 0 });
  });
  it("of fired glass moles count what is left, as weighed what was there: 1 mol CaCO3 and 1 mol SiO2", () => {
    // 100.086 g + 60.083 g = 160.169 g, of which 44.009 g CO2 leave: 116.16 g of glass
    const ours = analyseGlaze({
      recipe: [
        { formula: "CaCO3", parts: 100.086 },
        { formula: "SiO2", parts: 60.083 },
      ],
    });
    close(ours.moles.CaO, 100 / 116.16, { rel: 1e-12 });
    close(ours.fired.weightPercent.CaO, 5607.7 / 116.16, { rel: 1e-12 });
    close(ours.asWeighed.weightPercent.CaO, 5607.7 / 160.169, { rel: 1e-12 });
    close(ours.lines[0]!.lossOnIgnitionPercent, 4400.9 / 100.086, { rel: 1e-12 });
    close(ours.lines[1]!.lossOnIgnitionPercent, 0, { abs: 1e-12 });
    close(ours.lines[0]!.share, 100.086 / 160.169, { rel: 1e-12 });
  });
  it("the smallest amounts keep their proportions", () => {
    const { moleFractions } = analyseGlaze({ oxides: { basis: "moles", amounts: { SiO2: 2e-300, CaO: 1e-300 } } });
    close(moleFractions.SiO2, 2 / 3, { rel: 1e-12 });
  });
  it("what is listed at 0 is not there", () => {
    const amounts = { SiO2: 2, MgO: 0, CaO: 1 };
    expect(Object.keys(fromSeger(amounts))).toEqual(["SiO2", "CaO"]);
    const { moles, weightPercentSd } = analyseGlaze({ oxides: { basis: "moles", amounts } });
    for (const table of [moles, weightPercentSd]) expect(Object.keys(table)).toEqual(["SiO2", "CaO"]);
  });
  it("there is no ratio of silica to alumina without alumina", () => {
    const { seger } = analyseGlaze({ oxides: { basis: "moles", amounts: { SiO2: 2, CaO: 1 } } });
    expect(seger).toEqual({ moles: { SiO2: 2, CaO: 1 }, fluxSum: 1, silicaToAlumina: null, alkaliShare: 0 });
  });
});

describe("sources", () => {
  it("are the atomic weights, those of each material weighed, and those of hazards where there is a caution", () => {
    const glass = (amounts: Record<string, number>) => analyseGlaze({ oxides: { basis: "moles", amounts } }).sources;
    expect(glass({ SiO2: 2, CaO: 1 })).toEqual(["ciaaw-2021"]);
    expect(glass({ SiO2: 2, PbO: 1 })).toEqual(["ciaaw-2021", "hazard-classes"]);
    const wanted = ["ciaaw-2021", ...findMaterial("whiting").sources, "hazard-classes"];
    const whiting = [
      { material: "whiting", parts: 1 },
      { formula: "SiO2", parts: 1 },
    ];
    expect(analyseGlaze({ recipe: whiting }).sources).toEqual([...new Set(wanted)]);
  });
  it("and cautions come only of what weighs something", () => {
    const recipe = [lime, { formula: "CaSiO3", parts: 50 }, { material: "barium-carbonate", parts: 0 }];
    const { cautions, sources } = analyseGlaze({ recipe });
    expect(cautions).toEqual([]);
    expect(sources).toEqual(["ciaaw-2021"]);
  });
});

describe("cautions", () => {
  const withOxide = (oxide: string, percent: number) =>
    glazeCautions(
      [],
      OXIDES.map((_, i) => (i === OXIDE_INDEX.get(oxide) ? percent : 0)),
    ).map(({ code }) => code);
  const limits = CAUTIONS.flatMap(({ code, oxide, limitFiredPercent }) =>
    oxide ? [{ code, oxide, limit: limitFiredPercent! }] : [],
  );
  it.each(limits)("$code from $limit % $oxide on", ({ code, oxide, limit }) => {
    expect(withOxide(oxide, limit)).toEqual([code, "leach-test"]);
    expect(withOxide(oxide, limit * (1 - 1e-9))).toEqual([]);
  });

  // What says more stands for what says less: particular dusts for the plain one, much copper for copper.
  it.each([
    [["whiting"], ["dust"]],
    [["whiting", "silica"], ["silica-dust"]],
    [["whiting", "wollastonite"], ["needle-dust"]],
    [["whiting", "talc-theoretical"], ["talc-dust"]],
    [["whiting", "zircon"], ["zircon-dust"]],
    [
      ["calcite", "silica", "talc-theoretical"],
      ["silica-dust", "talc-dust"],
    ],
  ])("%j call for %j", (materials, codes) => {
    const recipe = [{ formula: "CaSiO3", parts: 50 }, ...materials.map((material) => ({ material, parts: 10 }))];
    expect(analyseGlaze({ recipe }).cautions.map(({ code }) => code)).toEqual(codes);
  });
  it.each([
    [1, ["copper"]],
    [10, ["high-copper", "leach-test"]],
  ])("%f parts of copper oxide in a hundred call for %j", (parts, codes) => {
    const recipe = [
      { formula: "CaSiO3", parts: 60 },
      { formula: "CaO", parts: 40 },
      { material: "copper-oxide", parts },
    ];
    expect(analyseGlaze({ recipe }).cautions.map(({ code }) => code)).toEqual(codes);
  });
});
