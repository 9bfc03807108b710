/** Oxides that are known and not counted: left out as traces, refused beyond them, and cautioned of all the same. */
import { describe, expect, it } from "vitest";
import { analyseGlaze, analyseMaterial, batchFromSeger, molarMass } from "../../api/engine/chemistry/index.ts";
import { UnknownNameError } from "../../api/engine/errors.ts";
import type { OxideComposition, Recipe } from "../../api/engine/recipe/types.ts";
import { close } from "../support/close.ts";
import { caught } from "../support/refusals.ts";

type Basis = OxideComposition["oxides"]["basis"];
const oxides = (amounts: Record<string, number>, basis: Basis = "weightPercent") =>
  analyseGlaze({ oxides: { basis, amounts } });
const whiting = { material: "whiting", parts: 50 };
const clay = (weightPercent: Record<string, number>, parts: number, lossOnIgnitionPercent?: number) => ({
  name: "clay",
  analysis: { weightPercent, ...(lossOnIgnitionPercent === undefined ? {} : { lossOnIgnitionPercent }) },
  parts,
});
/** A stain of which two fifths are not counted. */
const stain = (parts: number) => clay({ ZrO2: 40, SiO2: 20, Er2O3: 40 }, parts, 0);
const stained = (parts: number): Recipe => ({ recipe: [{ formula: "CaSiO3", parts: 99 }], additions: [stain(parts)] });

describe("a glaze by its oxides", () => {
  it("is that of the rest, with a word on what was left out", () => {
    const ours = oxides({ SiO2: 65, CaO: 34.5, Nd2O3: 0.5 });
    const rest = oxides({ SiO2: 65, CaO: 34.5 });
    expect(ours.fired).toEqual(rest.fired);
    close(ours.fired.weightPercent.SiO2, 6500 / 99.5, { rel: 1e-12 });
    close(ours.massBalance.error, 0, { abs: 1e-9 });
    expect(ours.warnings).toEqual([
      {
        code: "trace-left-out",
        pointer: "/oxides/amounts/Nd2O3",
        message:
          "Nd2O3 (0.50 % of the fired glaze) is left out: not among the oxides counted here. The rest is taken for the whole.",
      },
    ]);
  });
  it("names several in one remark, and the least as such", () => {
    const [warning, ...more] = oxides({ SiO2: 65, CaO: 34.6, WO3: 0.4, Y2O3: 0.001 }).warnings;
    expect(more).toEqual([]);
    expect(warning!.pointer).toBe("/oxides/amounts");
    expect(warning!.message).toMatch(/^WO3 \(0\.40 % .*\), Y2O3 \(less than 0\.01 % .*\) are left out/);
  });
  it("says nothing of what is listed at 0", () => {
    expect(oxides({ SiO2: 65, CaO: 35, Nd2O3: 0 }).warnings).toEqual([]);
  });
  it("may hold 1 % of it, all together, and no more", () => {
    expect(oxides({ SiO2: 60, CaO: 39, Nd2O3: 1 }).warnings).toHaveLength(1);
    const { issues } = caught(() => oxides({ SiO2: 60, CaO: 38.8, Nd2O3: 0.6, Er2O3: 0.6 }));
    expect(issues.map(({ pointer }) => pointer)).toEqual(["/oxides/amounts/Nd2O3", "/oxides/amounts/Er2O3"]);
    for (const { message, allowed, suggestion } of issues) {
      expect(message).toMatch(/Up to 1 % of the fired glaze such oxides are left out; here they make 1\.2 %/);
      expect(allowed).toContain("SiO2");
      expect(suggestion).toBeUndefined();
    }
  });
  it("is judged by weight where the amounts are moles", () => {
    // Nd2O3 336.477 g, SiO2 60.083 g, CaO 56.077 g: 0.1 mol in 100 are 0.57 wt %, 0.2 mol 1.14.
    close(molarMass("Nd2O3"), 2 * 144.24 + 3 * 15.999, { rel: 1e-12 });
    const glaze = (rare: number) => oxides({ SiO2: 60, CaO: 40 - rare, Nd2O3: rare }, "molePercent");
    const share = (100 * 0.1 * 336.477) / (60 * 60.083 + 39.9 * 56.077 + 0.1 * 336.477);
    expect(glaze(0.1).warnings[0]!.message).toContain(`${share.toFixed(2)} %`);
    expect(() => glaze(0.2)).toThrow(/here they make 1\.14 %/);
  });
  it("counts it in the total", () => {
    expect(oxides({ SiO2: 65, CaO: 29.5, Nd2O3: 0.5 }).warnings.map(({ code }) => code)).toEqual(["trace-left-out"]);
  });
  it("has to hold something else", () => {
    expect(() => oxides({ Nd2O3: 100 })).toThrow(UnknownNameError);
    expect(() => oxides({ Nd2O3: 0.5, H2O: 1 })).toThrow(/make 100 %/);
  });
});

describe("names", () => {
  it.each([
    "Y2O3",
    "MoO3",
    "WO3",
    "Er2O3",
    "Ag2O",
    "Au",
    "GeO2",
    "Tb4O7",
    "Ta2O5",
    "ThO2",
    "Sc2O3",
    "Tl2O",
    "HgO",
    "Pt",
  ])("%s may be left out", (name) =>
    expect(oxides({ SiO2: 65, CaO: 34.5, [name]: 0.5 }).warnings[0]!.code).toBe("trace-left-out"),
  );
  // However little: what is meant may be an oxide that counts.
  it.each([
    ["PdO", "PbO"],
    ["AgO", "MgO"],
    ["EuO", "CuO"],
    ["AL203", "Al2O3"],
    ["nd2o3", "Nd2O3"],
    ["SEO2", "SeO2"],
    ["Nd2O5", "Nb2O5"],
    ["Mg2O3", undefined],
    ["W", undefined],
    ["YAl3(BO3)4", undefined],
    ["Zy2O3", undefined],
  ])("%s is refused", (name, meant) => {
    const [issue] = caught(() => oxides({ SiO2: 65, CaO: 34.99, [name]: 0.01 })).issues;
    expect(issue!.pointer).toBe(`/oxides/amounts/${name}`);
    if (meant) expect(issue!.suggestion).toBe(meant);
  });
});

describe("a line's own analysis", () => {
  const listed = { SiO2: 60, Al2O3: 20 };
  it("weighs what it holds beside its traces (arithmetic: 0.9 % of 50 parts are 0.45)", () => {
    const ours = analyseGlaze({ recipe: [clay({ ...listed, Nd2O3: 0.9 }, 50, 19.1), whiting] });
    const rest = analyseGlaze({ recipe: [clay(listed, 49.55, 19.1), whiting] });
    for (const [oxide, percent] of Object.entries(rest.fired.weightPercent))
      close(ours.fired.weightPercent[oxide], percent, { rel: 1e-12 });
    close(ours.massBalance.error, 0, { abs: 1e-9 });
    close(ours.massBalance.glassG + ours.massBalance.lostG, 100, { abs: 1e-9 });
    // The line is what was weighed.
    expect(ours.lines[0]).toMatchObject({ parts: 50, share: 0.5 });
    // 0.45 of what stays: 40 of the clay's 50 parts, 0.45, and whiting's glass.
    const glass = 40 + (50 * (100 - ours.lines[1]!.lossOnIgnitionPercent)) / 100;
    const share = (100 * 0.45) / (glass + 0.45);
    expect(ours.warnings).toEqual([
      {
        code: "trace-left-out",
        pointer: "/recipe/0/analysis/weightPercent/Nd2O3",
        message: expect.stringContaining(`Nd2O3 (${share.toFixed(2)} % of the fired glaze)`),
      },
    ]);
  });
  it("takes for loss what is missing from all that is listed", () => {
    const [stated, assumed] = [19.1, undefined].map((loss) =>
      analyseGlaze({ recipe: [clay({ ...listed, Nd2O3: 0.9 }, 50, loss), whiting] }),
    );
    for (const [oxide, percent] of Object.entries(stated!.fired.weightPercent))
      close(assumed!.fired.weightPercent[oxide], percent, { rel: 1e-12 });
    expect(assumed!.warnings.map(({ code }) => code)).toEqual(["loss-assumed", "trace-left-out"]);
  });
  it("may be mostly traces, where the glaze is not: 2.5 parts of 40 % in 101.5 are 0.99 %, 2.6 in 101.6 1.02 %", () => {
    const { fired, warnings } = analyseGlaze(stained(2.5));
    // 40 % of 2.5 parts are 1, beside 100.5 that count.
    close(fired.weightPercent.ZrO2, 100 / 100.5, { rel: 1e-12 });
    expect(warnings.map(({ message }) => message)).toContainEqual(expect.stringMatching(/^Er2O3 \(0\.99 %/));
    const { issues } = caught(() => analyseGlaze(stained(2.6)));
    expect(issues).toMatchObject([
      { pointer: "/additions/0/analysis/weightPercent/Er2O3", message: expect.stringContaining("they make 1.02 %") },
    ]);
  });
  it("counts together with other lines, and for nothing where none of it is weighed", () => {
    const twice: Recipe = { recipe: [{ formula: "CaSiO3", parts: 99 }, stain(1.3), stain(1.3)] };
    expect(caught(() => analyseGlaze(twice)).issues).toHaveLength(2);
    const codes = analyseGlaze(stained(0)).warnings.map(({ code }) => code);
    expect(codes).not.toContain("trace-left-out");
  });
  it("is refused where nothing of it counts", () => {
    const { issues } = caught(() => analyseGlaze({ recipe: [whiting, clay({ Er2O3: 100 }, 0.1, 0)] }));
    expect(issues).toMatchObject([{ pointer: "/recipe/1/analysis/weightPercent/Er2O3" }]);
  });
  it("by itself is told without its traces: 40 and 20 of 60", () => {
    const { weightPercent } = analyseMaterial(stain(1)).fired;
    close(weightPercent.ZrO2, 4000 / 60, { rel: 1e-12 });
    expect(() => analyseGlaze({ recipe: [stain(1)] })).toThrow(UnknownNameError);
  });
  it("makes a batch for a formula: 56.077 g of CaO in a lime with 0.5 % of traces", () => {
    const lime = (rare: number) => [{ analysis: { weightPercent: { CaO: 100 - rare, Nd2O3: rare } } }];
    close(batchFromSeger({ CaO: 1 }, lime(0.5)).lines[0]!.parts, 56.077 / 0.995, { rel: 1e-9 });
    expect(() => batchFromSeger({ CaO: 1 }, lime(2))).toThrow(UnknownNameError);
  });
});

// Hazards from memory of official classifications; the limits are common practice, no source.
describe("cautions of what was left out", () => {
  const codes = (traces: Record<string, number>) =>
    oxides({ SiO2: 65, CaO: 34.5, ...traces }).cautions.map(({ code }) => code);
  it.each([
    ["As2O3", ["arsenic", "leach-test"]],
    ["As2O5", ["arsenic", "leach-test"]],
    ["SeO2", ["selenium", "leach-test"]],
    ["Se", ["selenium", "leach-test"]],
    ["TeO2", ["tellurium", "leach-test"]],
    ["Tl2O", ["thallium", "leach-test"]],
    ["HgO", ["mercury", "leach-test"]],
    ["U3O8", ["radioactive", "leach-test"]],
    ["ThO2", ["radioactive", "leach-test"]],
    ["MoO3", ["suspect-dust"]],
    ["In2O3", ["suspect-dust"]],
    ["Nd2O3", []],
  ])("%s: %j", (oxide, expected) => {
    expect(codes({ [oxide]: 0.5 })).toEqual(expected);
    expect(codes({ [oxide]: 0.005 })).toEqual([]);
  });
  it("count an element's oxides together: 0.006 % and 0.006 % of arsenic pass 0.01 %", () => {
    expect(codes({ As2O3: 0.006 })).toEqual([]);
    expect(codes({ As2O3: 0.006, As2O5: 0.006 })).toEqual(["arsenic", "leach-test"]);
  });
  it("come of an analysis too, with their source", () => {
    const { cautions, sources } = analyseGlaze({
      recipe: [{ formula: "CaSiO3", parts: 99 }, clay({ ZrO2: 90, UO2: 10 }, 1, 0)],
    });
    expect(cautions.map(({ code }) => code)).toEqual(["radioactive", "leach-test"]);
    expect(sources).toContain("hazard-classes");
  });
});
