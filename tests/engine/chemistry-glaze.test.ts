import { describe, expect, it } from "vitest";
import { analyseGlaze, batchFromSeger, materialAnalysis } from "../../api/engine/chemistry/index.ts";
import { nonNegativeFit } from "../../api/engine/chemistry/non-negative-fit.ts";
import { ImpossibleValueError, type Issue, UnknownNameError } from "../../api/engine/errors.ts";
import { listMaterials } from "../../api/engine/recipe/materials.ts";
import type { OxideComposition, Recipe } from "../../api/engine/recipe/types.ts";
import { close } from "../support/close.ts";
import { caught } from "../support/refusals.ts";

// Larch Lane's “Drizzle”, worked by hand with theoretical materials (derived, arithmetic):
// 556.65 g feldspar = 1 mol, 200.17 g calcite = 2 mol, 258.16 g kaolinite = 1 mol, 240.33 g silica = 4 mol
// → K2O 1, CaO 2, Al2O3 2, SiO2 12; fluxes 3.
const drizzle: Recipe = {
  recipe: [
    { material: "potash-feldspar-theoretical", parts: 556.654 },
    { material: "calcite", parts: 200.172 },
    { material: "kaolinite", parts: 258.157 },
    { material: "silica-theoretical", parts: 240.332 },
  ],
};

describe("a recipe worked by hand", () => {
  const ours = analyseGlaze(drizzle);
  it("comes to the Seger formula", () => {
    const wanted = { SiO2: 4, Al2O3: 2 / 3, K2O: 1 / 3, CaO: 2 / 3 };
    expect(Object.keys(ours.seger!.moles)).toEqual(Object.keys(wanted));
    for (const [oxide, moles] of Object.entries(wanted)) close(ours.seger!.moles[oxide], moles, { rel: 1e-5 });
    close(ours.seger!.fluxSum, 1, { rel: 1e-12 });
    close(ours.seger!.silicaToAlumina, 6, { rel: 1e-5 });
    close(ours.seger!.alkaliShare, 1 / 3, { rel: 1e-5 });
  });
  it("loses its carbon dioxide and water: 2 CO2 and 2 H2O of 1255.3 g", () => {
    close(ours.asWeighed.lossOnIgnitionPercent, (100 * (2 * 44.009 + 2 * 18.015)) / 1255.315, { rel: 1e-5 });
    close(ours.massBalance.glassG, 100 - ours.asWeighed.lossOnIgnitionPercent, { abs: 1e-9 });
  });
  it("has shares that add up", () => {
    const sum = (record: Readonly<Record<string, number>>) => Object.values(record).reduce((a, b) => a + b, 0);
    close(sum(ours.moleFractions), 1, { rel: 1e-12 });
    close(sum(ours.fired.weightPercent), 100, { rel: 1e-12 });
    close(sum(ours.fired.molePercent), 100, { rel: 1e-12 });
    close(sum(ours.asWeighed.weightPercent) + ours.asWeighed.lossOnIgnitionPercent, 100, { rel: 1e-12 });
    close(
      ours.lines.reduce((a, line) => a + line.share, 0),
      1,
      { rel: 1e-12 },
    );
  });
  it("counts additions and keeps them apart in the lines", () => {
    const tinted = analyseGlaze({ ...drizzle, additions: [{ material: "red-iron-oxide", parts: 50 }] });
    close(tinted.fired.weightPercent.Fe2O3, (100 * 50) / (50 + 1255.315 - 124.048), { rel: 1e-5 });
    expect(tinted.lines.map(({ addition }) => addition)).toEqual([false, false, false, false, true]);
    close(tinted.seger!.silicaToAlumina, 6, { rel: 1e-5 });
  });
});

describe("spread", () => {
  it("agrees with ten thousand recipes drawn at random (Monte Carlo of the same normal spreads)", () => {
    const lines = [
      { material: "potash-feldspar", parts: 40 },
      { material: "silica", parts: 25 },
      { material: "whiting", parts: 20 },
      { material: "kaolin", parts: 15 },
    ];
    const { weightPercentSd } = analyseGlaze({ recipe: lines });
    const next = generator(7);
    const seen: Record<string, number[]> = {};
    for (let draw = 0; draw < 10_000; draw++) {
      const grams: Record<string, number> = {};
      for (const { material, parts } of lines) {
        const { weightPercent, plusMinusWeightPercent } = materialAnalysis(material);
        for (const [oxide, percent] of Object.entries(weightPercent)) {
          const drawn = percent + (plusMinusWeightPercent[oxide]! / 1.6449) * normal(next);
          grams[oxide] = (grams[oxide] ?? 0) + parts * drawn;
        }
      }
      const total = Object.values(grams).reduce((a, b) => a + b, 0);
      for (const [oxide, gram] of Object.entries(grams)) {
        const column = seen[oxide] ?? [];
        seen[oxide] = column;
        column.push((100 * gram) / total);
      }
    }
    for (const oxide of ["SiO2", "Al2O3", "K2O", "CaO", "Na2O"]) {
      close(weightPercentSd[oxide], deviation(seen[oxide]!), { rel: 0.04, why: "sampling noise", label: oxide });
    }
  });
  it("is nothing for a glaze given by its oxides", () => {
    const ours = analyseGlaze({ oxides: { basis: "moles", amounts: { SiO2: 3, CaO: 1 } } });
    expect(ours.weightPercentSd).toEqual({ SiO2: 0, CaO: 0 });
    expect(ours.lines).toEqual([]);
  });
});

describe("oxides given directly", () => {
  it("mean the same glass in every basis", () => {
    const moles = analyseGlaze({ oxides: { basis: "moles", amounts: { SiO2: 4, Al2O3: 0.5, CaO: 0.7, K2O: 0.3 } } });
    for (const basis of ["weightPercent", "molePercent"] as const) {
      const again = analyseGlaze({ oxides: { basis, amounts: moles.fired[basis] } });
      for (const [oxide, share] of Object.entries(moles.moleFractions))
        close(again.moleFractions[oxide], share, { rel: 1e-12 });
    }
  });
  it("keep FeO, turn MnO2, leave gases out", () => {
    const ours = analyseGlaze({ oxides: { basis: "moles", amounts: { SiO2: 3, FeO: 1, MnO2: 1, CO2: 5, CaO: 1 } } });
    expect(Object.keys(ours.moleFractions)).toEqual(["SiO2", "CaO", "FeO", "MnO"]);
    expect(ours.warnings.map(({ code }) => code)).toEqual(["oxide-converted", "volatile-left-out"]);
    close(ours.moleFractions.SiO2, 0.5, { rel: 1e-12 });
  });
});

describe("unusual input is answered with a warning", () => {
  const line = (analysis: object) =>
    ({
      recipe: [
        { analysis, parts: 10 },
        { material: "silica", parts: 10 },
      ],
    }) as Recipe;
  const cases: [string, Recipe | OxideComposition, string, string | undefined][] = [
    ["one material", { recipe: [{ material: "wood-ash", parts: 1 }] }, "single-material", "/recipe"],
    [
      "low total",
      line({ weightPercent: { CaO: 50 }, lossOnIgnitionPercent: 30 }),
      "analysis-total",
      "/recipe/0/analysis",
    ],
    ["no loss stated", line({ weightPercent: { CaO: 56 } }), "loss-assumed", "/recipe/0/analysis"],
    ["heavy loss", line({ weightPercent: { Na2O: 20 }, lossOnIgnitionPercent: 80 }), "high-loss", "/recipe/0"],
    [
      "huge parts",
      {
        recipe: [
          { material: "silica", parts: 2e5 },
          { material: "talc", parts: 1 },
        ],
      },
      "huge-parts",
      "/recipe/0/parts",
    ],
    [
      "fluorine",
      {
        recipe: [
          { material: "silica", parts: 2 },
          { formula: "CaF2", parts: 1 },
        ],
      },
      "fluorine-leaves",
      "/recipe/1",
    ],
    ["no flux", { oxides: { basis: "moles", amounts: { SiO2: 1 } } }, "no-flux", undefined],
    ["no silica", { oxides: { basis: "moles", amounts: { B2O3: 1, CaO: 1 } } }, "no-silica", undefined],
    [
      "low per cents",
      { oxides: { basis: "weightPercent", amounts: { SiO2: 60, CaO: 20 } } },
      "analysis-total",
      "/oxides/amounts",
    ],
  ];
  it.each(cases)("%s", (_what, glaze, code, pointer) => {
    expect(analyseGlaze(glaze).warnings).toContainEqual(
      expect.objectContaining(pointer ? { code, pointer } : { code }),
    );
  });
  it("says nothing about a plain recipe", () => expect(analyseGlaze(drizzle).warnings).toEqual([]));
  it("has no Seger formula without a flux", () => {
    expect(analyseGlaze({ oxides: { basis: "moles", amounts: { SiO2: 1 } } }).seger).toBeNull();
  });
});

describe("cautions come once each, with leach tests named", () => {
  const codes = (glaze: Recipe | OxideComposition) => analyseGlaze(glaze).cautions.map(({ code }) => code);
  const withOxide = (oxide: string, percent: number) =>
    codes({ oxides: { basis: "weightPercent", amounts: { SiO2: 80 - percent, CaO: 20, [oxide]: percent } } });
  it.each([
    ...["PbO:lead", "CdO:cadmium", "BaO:barium", "Sb2O3:antimony", "Cr2O3:chromium", "MnO:manganese", "NiO:nickel"],
    ...["CoO:cobalt", "V2O5:vanadium", "Li2O:lithium", "CuO:high-copper", "BeO:beryllium"],
  ])("%s", (pair) => {
    const [oxide, code] = pair.split(":") as [string, string];
    expect(withOxide(oxide, 4)).toEqual([code, "leach-test"]);
    expect(withOxide(oxide, 0.005)).toEqual([]);
  });
  it("draws the line for copper at 3 %", () => {
    expect(withOxide("CuO", 2.9)).toEqual([]);
    expect(withOxide("CuO", 3.1)).toEqual(["high-copper", "leach-test"]);
  });
  it("warns of what is handled even where little of it is in the glaze", () => {
    const blue = {
      recipe: [
        { material: "silica", parts: 99.95 },
        { material: "cobalt-carbonate", parts: 0.05 },
      ],
    };
    expect(codes(blue)).toEqual(["cobalt", "silica-dust", "leach-test"]);
  });
  // From 1 % of the line's weight on; mineral names in brackets.
  it.each<[string, object, string[]]>([
    ["CaF2 (fluorspar)", { formula: "CaF2" }, ["fluoride-fumes"]],
    ["CaSO4·2H2O (gypsum)", { formula: "CaSO4·2H2O" }, ["sulfur-fumes"]],
    ["FeS2 (pyrite)", { formula: "FeS2" }, ["sulfur-fumes"]],
    ["KNO3 (nitre)", { formula: "KNO3" }, ["nitrogen-fumes"]],
    ["NaCl (salt)", { formula: "NaCl" }, ["chlorine-fumes"]],
    ["CaCO3", { formula: "CaCO3" }, []],
    ["an ash with 1 % SO3 of 100", { analysis: { weightPercent: { CaO: 99, SO3: 1 } } }, ["sulfur-fumes"]],
    ["an ash with less", { analysis: { weightPercent: { CaO: 99.1, SO3: 0.9 } } }, []],
    ["fluorspar weighed as nothing", { formula: "CaF2", parts: 0 }, []],
  ])("fumes of a line of one's own: %s", (_what, line, expected) => {
    const recipe = [
      { formula: "CaSiO3", parts: 90 },
      { parts: 10, ...line },
    ] as Recipe["recipe"];
    expect(codes({ recipe })).toEqual(expected);
  });
  // The rule is common practice, no source: silica by itself, from 90 % on, or an analysis of clay, feldspar or stone.
  const analysis = (weightPercent: Record<string, number>, lossOnIgnitionPercent = 0) => ({
    analysis: { weightPercent, lossOnIgnitionPercent },
  });
  it.each<[string, object, string[]]>([
    ["quartz", { formula: "SiO2" }, ["silica-dust"]],
    ["quartz under a name", { formula: "SiO2", name: "quartz" }, ["silica-dust"]],
    ["quartz weighed as nothing", { formula: "SiO2", parts: 0 }, []],
    ["silica bound in a mineral", { formula: "KAlSi3O8" }, []],
    ["sand with 90 % silica", analysis({ SiO2: 90, Al2O3: 5, CaO: 5 }), ["silica-dust"]],
    ["with less", analysis({ SiO2: 89.9, Al2O3: 5, CaO: 5.1 }), []],
    ["a clay", analysis({ SiO2: 46, Al2O3: 38, K2O: 2 }, 14), ["silica-dust"]],
    ["a feldspar", analysis({ SiO2: 67, Al2O3: 18, K2O: 11, Na2O: 4 }), ["silica-dust"]],
    ["window glass", analysis({ SiO2: 72, Al2O3: 2, Na2O: 14, CaO: 12 }), []],
    ["a frit with boron", analysis({ SiO2: 50, Al2O3: 12, B2O3: 20, CaO: 18 }), []],
    ["a frit with lead", analysis({ SiO2: 50, Al2O3: 9, PbO: 41 }), ["lead", "leach-test"]],
    ["alumina", analysis({ Al2O3: 99, SiO2: 1 }), []],
  ])("silica dust of a line of one's own: %s", (_what, line, expected) => {
    const recipe = [
      { formula: "CaSiO3", parts: 50 },
      { parts: 50, ...line },
    ] as Recipe["recipe"];
    expect(codes({ recipe })).toEqual(expected);
  });
  // Bauxite is left out: its quartz is too little for an analysis to tell.
  const dusty = listMaterials().filter(
    ({ id, analysis, cautions }) => analysis && id !== "bauxite" && cautions.some(({ code }) => code === "silica-dust"),
  );
  it.each(dusty.map(({ id, analysis }) => [id, analysis!] as const))(
    "the analysis of %s says of silica dust what the material says",
    (_id, analysis) => expect(codes({ recipe: [{ analysis, parts: 1 }] })).toContain("silica-dust"),
  );
  it("names the tests and promises nothing", () => {
    const message = analyseGlaze({ oxides: { basis: "moles", amounts: { SiO2: 2, PbO: 1 } } }).cautions.at(-1)!.message;
    for (const words of ["ISO 6486", "ASTM C738", "EN 1388", "differ by country", "never certifies"])
      expect(message).toContain(words);
  });
});

describe("impossible input is refused with every fault named", () => {
  it("gathers issues of all lines", () => {
    const error = refused({
      recipe: [
        { material: "whitting", parts: -1 },
        { parts: 3 },
        { formula: "K20", parts: 1 },
        { analysis: { weightPercent: { SiO: 4, CaO: 120 } }, parts: Number.NaN },
      ],
      additions: [{ material: "silica", formula: "SiO2", parts: 1 }],
    });
    expect(error).toBeInstanceOf(ImpossibleValueError);
    const pointers = error.issues.map(({ pointer }) => pointer).sort();
    expect(pointers).toEqual([
      "/additions/0",
      "/recipe/0/material",
      "/recipe/0/parts",
      "/recipe/1",
      "/recipe/2/formula",
      "/recipe/3/analysis",
      "/recipe/3/analysis/weightPercent/SiO",
      "/recipe/3/parts",
    ]);
    const suggestions = error.issues.flatMap(({ suggestion }) => suggestion ?? []).sort();
    expect(suggestions).toEqual(["K2O", "SiO2", "whiting"]);
  });
  const cases: [string, unknown, string, RegExp][] = [
    ["nothing", {}, "", /recipe or as oxides/],
    ["both", { recipe: [], oxides: {} }, "", /one of the two/],
    ["null", null, "", /recipe or as oxides/],
    ["empty recipe", { recipe: [] }, "/recipe", /empty/],
    ["zero total", { recipe: [{ material: "silica", parts: 0 }] }, "/recipe", /add up to 0/],
    ["infinite", { recipe: [{ material: "silica", parts: Number.POSITIVE_INFINITY }] }, "/recipe/0/parts", /Infinity/],
    ["absurd", { recipe: [{ material: "silica", parts: 1e13 }] }, "/recipe/0/parts", /up to 1000000000000/],
    ["101 lines", { recipe: Array(101).fill({ material: "silica", parts: 1 }) }, "/recipe", /101 lines; up to 100/],
    ["only water", { recipe: [{ formula: "H2O", parts: 1 }] }, "/recipe/0/formula", /Nothing of this stays/],
    ["negative oxide", { oxides: { basis: "moles", amounts: { SiO2: -1 } } }, "/oxides/amounts/SiO2", /-1/],
    ["no oxides", { oxides: { basis: "moles", amounts: {} } }, "/oxides/amounts", /leave nothing/],
    ["over 105", { oxides: { basis: "weightPercent", amounts: { SiO2: 106 } } }, "/oxides/amounts", /106\.0 %/],
    ["no basis", { oxides: { amounts: { SiO2: 1 } } }, "/oxides/basis", /weight per cent, mole per cent or moles/],
    ["not a list", { recipe: "silica" }, "/recipe", /list of lines/],
    ["odd name", { recipe: [{ material: { toString: 1 }, parts: 1 }] }, "/recipe/0/material", /Name a material/],
  ];
  it.each(cases)("%s", (_what, glaze, pointer, message) => {
    const { issues } = refused(glaze);
    const issue = issues.find((each: Issue) => each.pointer === pointer);
    expect(issue?.message).toMatch(message);
  });
  it.each([
    ["SiO", "SiO2"],
    ["K20", "K2O"],
    ["Al203", "Al2O3"],
    ["sio2", "SiO2"],
    ["Na2o", "Na2O"],
  ])("%s: did you mean %s?", (name, suggestion) => {
    const error = refused({ oxides: { basis: "moles", amounts: { [name]: 1 } } });
    expect(error).toBeInstanceOf(UnknownNameError);
    expect(error.issues[0]).toMatchObject({ pointer: `/oxides/amounts/${name}`, suggestion });
  });
});

describe("from formula to batch", () => {
  it("says what cannot be made", () => {
    const { missing } = batchFromSeger({ CaO: 1, SiO2: 2, B2O3: 0.5 }, [
      { material: "calcite" },
      { material: "silica-theoretical" },
    ]);
    expect(Object.keys(missing)).toEqual(["B2O3"]);
    close(missing.B2O3, 0.5, { rel: 1e-12 });
  });
  it("never asks for less than nothing, and knows the same mineral twice", () => {
    const { lines } = batchFromSeger({ CaO: 1 }, [
      { material: "wollastonite-theoretical" },
      { formula: "CaCO3" },
      { formula: "CaCO3" },
    ]);
    for (const { parts } of lines) expect(parts).toBeGreaterThanOrEqual(0);
    close(lines[1]!.parts + lines[2]!.parts, 100.086, { abs: 0.001 });
    expect(lines[0]!.parts).toBeLessThan(1e-9);
  });
  it("meets the textbook case", () => {
    // derived (arithmetic): [1 0] and [1 1] make [3 1] as 2 and 1; the pull of the second alone is not enough
    expect(
      nonNegativeFit(
        [
          [1, 0],
          [1, 1],
        ],
        [3, 1],
      ),
    ).toMatchObject({ value: [expect.closeTo(2, 10), expect.closeTo(1, 10)], converged: true });
    expect(nonNegativeFit([[1, 0]], [-1, 0]).value).toEqual([0]);
  });
});

const refused = (glaze: unknown) => caught(() => analyseGlaze(glaze as Recipe));

/** Park–Miller generator. */
function generator(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

function normal(next: () => number): number {
  return Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next());
}

function deviation(values: number[]): number {
  const mean = values.reduce((a, b) => a + b, 0) / values.length;
  return Math.sqrt(values.reduce((a, b) => a + (b - mean) ** 2, 0) / (values.length - 1));
}
