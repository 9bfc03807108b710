/** How a question is read before anything is drawn: what is taken where it is silent, what is remarked on, what is refused. */
import { describe, expect, it } from "vitest";
import { describeBody } from "../../api/engine/body/index.ts";
import { analyseGlaze } from "../../api/engine/chemistry/index.ts";
import { EngineError } from "../../api/engine/errors.ts";
import { TOUGHNESS } from "../../api/engine/fit/constants.ts";
import { crystalSd, materialsSd } from "../../api/engine/fit/glaze-doubts.ts";
import { checkFit, DEFAULTS, type FitRequest, logSettingViscosity, WIDEST } from "../../api/engine/fit/index.ts";
import { remarks, thicknessRemarks } from "../../api/engine/fit/remarks.ts";
import { prepare } from "../../api/engine/fit/situation.ts";
import { toughnessOf, weaker } from "../../api/engine/fit/toughness.ts";
import {
  expansionContributions,
  glassProperties,
  viscosityCurve,
  WITHOUT_PAPERS,
} from "../../api/engine/glass/index.ts";
import { quantileOf } from "../../api/engine/quantity.ts";
import { close } from "../support/close.ts";
import { issuesOf as issuesIn } from "../support/refusals.ts";

const Z90 = 1.6448536269514722;
type Glaze = FitRequest["glaze"];
const stated = (more: object = {}, beside: object = {}): Glaze => ({
  expansion: { value: 6.5, rangeC: [20, 300], plusMinus: 0.3, ...more },
  transitionC: 620,
  thicknessMm: 0.3,
  ...beside,
});
const body = { class: "red-stoneware", expansion: { value: 6.2, rangeC: [20, 500] as const, plusMinus: 0.3 } };
const question: FitRequest = { glaze: stated(), body };
const lime = (more: Record<string, number> = {}) => ({
  oxides: { basis: "moles" as const, amounts: { SiO2: 70, Al2O3: 8, CaO: 12, K2O: 6, Na2O: 4, ...more } },
});

const issuesOf = (request: FitRequest) => issuesIn(() => prepare(request));
const pointersOf = (request: FitRequest) => issuesOf(request).map(({ pointer }) => pointer);
const warningsOf = (request: FitRequest) => prepare(request).warnings.map(({ code, pointer }) => [code, pointer]);

describe("a stated expansion", () => {
  it("told in full is taken without a remark or caution, and rests on no source but the rise with temperature", () => {
    const { warnings, cautions, sources } = prepare(question);
    expect([warnings, cautions]).toEqual([[], []]);
    expect(sources).toEqual(["mclellan-shand-1984", ...describeBody(body).sources]);
  });

  it.each([
    ["no range", { rangeC: undefined }, {}, ["range-assumed", "/glaze/expansion/rangeC"]],
    ["no tolerance", { plusMinus: undefined }, {}, ["tolerance-assumed", "/glaze/expansion/plusMinus"]],
    ["no transition", {}, { transitionC: undefined }, ["set-point-assumed", "/glaze/transitionC"]],
    ["no thickness", {}, { thicknessMm: undefined }, ["thickness-assumed", "/glaze/thicknessMm"]],
  ])("with %s says what was assumed, and only that", (_what, more, beside, notice) => {
    expect(warningsOf({ ...question, glaze: stated(more, beside) })).toEqual([notice]);
  });

  it("without a range, tolerance, transition or thickness is taken as the defaults say", () => {
    const { situation: s } = prepare({ ...question, glaze: { expansion: { value: 6.5 } } });
    close(s.expansion.value, 6.5, { abs: 1e-12 });
    close(s.expansion.scale, DEFAULTS.statedPlusMinus / Z90, { abs: 1e-12 });
    expect([s.transitionC.value, s.transitionC.scale]).toEqual([630, 40]);
    expect(s.t12C).toEqual(s.transitionC);
    expect([s.youngsGPa.value, s.youngsGPa.scale]).toEqual([70, 5]);
    expect(s.thicknessM).toBe(0.0003);
    expect(s.toughness).toEqual(TOUGHNESS["alkali-lime"]);
    expect(s.recipeSd).toBe(0);
  });

  it("with a transition is doubted by 10 K", () => {
    const { transitionC } = prepare(question).situation;
    expect([transitionC.value, transitionC.scale]).toEqual([620, 10]);
  });

  // α/(1 + 0.0011 (middle − 160)), arithmetic: 20–500 has its middle at 260, 20–300 at 160, 0–100 at 50.
  it.each([
    [[20, 500], 6.5 / 1.11],
    [[20, 300], 6.5],
    [[0, 100], 6.5 / 0.879],
  ] as const)("over %j is brought to 20–300 °C, and its tolerance with it", (rangeC, expected) => {
    const { expansion } = prepare({ ...question, glaze: stated({ rangeC }) }).situation;
    close(expansion.value, expected, { rel: 1e-12 });
    close(expansion.scale, (0.3 / Z90) * (expected / 6.5), { rel: 1e-12 });
  });

  it.each<[string, number | string, object, object?]>([
    ["expansion/value", -0.01, { value: -0.01 }],
    ["expansion/value", 20.1, { value: 20.1 }],
    ["expansion/value", Number.NaN, { value: Number.NaN }],
    ["expansion/rangeC", "49 K apart", { rangeC: [20, 69] }],
    ["expansion/rangeC", "backwards", { rangeC: [300, 20] }],
    ["expansion/rangeC", "from −51 °C", { rangeC: [-51, 300] }],
    ["expansion/rangeC", "to 901 °C", { rangeC: [20, 901] }],
    ["expansion/plusMinus", -0.1, { plusMinus: -0.1 }],
    ["expansion/plusMinus", 5.1, { plusMinus: 5.1 }],
    ["transitionC", 299, {}, { transitionC: 299 }],
    ["transitionC", 901, {}, { transitionC: 901 }],
  ])("is refused at %s for %s", (pointer, _value, more, beside = {}) => {
    expect(pointersOf({ ...question, glaze: stated(more, beside) })).toEqual([`/glaze/${pointer}`]);
  });
  it.each<[string, object, object?]>([
    ["0", { value: 0 }],
    ["20", { value: 20 }],
    ["50 K apart", { rangeC: [20, 70] }],
    ["from −50 °C", { rangeC: [-50, 300] }],
    ["to 900 °C", { rangeC: [20, 900] }],
    ["±0", { plusMinus: 0 }],
    ["±5", { plusMinus: 5 }],
    ["a transition of 300 °C", {}, { transitionC: 300 }],
    ["a transition of 900 °C", {}, { transitionC: 900 }],
  ])("is still taken at the edge: %s", (_what, more, beside = {}) => {
    expect(pointersOf({ ...question, glaze: stated(more, beside) })).toEqual([]);
  });

  it("in another unit is refused with what was meant, and what is possible", () => {
    const [issue] = issuesOf({ ...question, glaze: stated({ value: 65 }) });
    expect(issue).toMatchObject({ suggestion: "6.5", allowed: [0, 20] });
    expect(issue!.message).toContain("you may mean 6.5");
    const [hopeless] = issuesOf({ ...question, glaze: stated({ value: 1e5 }) });
    expect(hopeless).not.toHaveProperty("suggestion");
    expect(hopeless!.message).not.toContain("mean");
  });
});

describe("ware and firing", () => {
  const hold = "/firing/cooling/0/holdMinutes";
  const second = "/firing/cooling/1/toC";
  it.each([
    ["/glaze/thicknessMm", 0.01, 5, (v: number) => ({ glaze: stated({}, { thicknessMm: v }) })],
    ["/ware/wallMm", 0.5, 100, (v: number) => ({ ware: { wallMm: v, edgeRadiusMm: 2 } })],
    ["/ware/edgeRadiusMm", 0.1, 1000, (v: number) => ({ ware: { edgeRadiusMm: v } })],
    ["/ware/serviceYears", 0.01, 200, (v: number) => ({ ware: { serviceYears: v } })],
    ["/firing/coolingCPerHour", 1, 20000, (v: number) => ({ firing: { coolingCPerHour: v } })],
    ["/firing/cooling/0/cPerHour", 1, 20000, (v: number) => ({ firing: { cooling: [{ toC: 20, cPerHour: v }] } })],
  ] as const)("%s lies between %d and %d, both taken", (pointer, low, high, of) => {
    expect(pointersOf({ ...question, ...of(low) })).toEqual([]);
    expect(pointersOf({ ...question, ...of(high) })).toEqual([]);
    for (const value of [low * 0.99, high * 1.01, Number.NaN]) {
      expect(issuesOf({ ...question, ...of(value) })).toMatchObject([{ pointer, allowed: [low, high] }]);
    }
  });

  it.each([
    ["no segment", { cooling: [] }, ["/firing/cooling"]],
    ["a segment to −51 °C", { cooling: [{ toC: -51, cPerHour: 9 }] }, ["/firing/cooling/0/toC"]],
    ["a soak of less than nothing", { cooling: [{ toC: 20, cPerHour: 9, holdMinutes: -1 }] }, [hold]],
    ["a soak of more than a week", { cooling: [{ toC: 20, cPerHour: 9, holdMinutes: 10081 }] }, [hold]],
    ["a start above the peak", { peakC: 1200, cooling: [{ toC: 1200, cPerHour: 9 }] }, ["/firing/cooling/0/toC"]],
    ["a start above any kiln", { cooling: [{ toC: 1700, cPerHour: 9 }] }, ["/firing/cooling/0/toC"]],
    [
      "a segment that stands still",
      {
        cooling: [
          { toC: 600, cPerHour: 9 },
          { toC: 600, cPerHour: 9 },
        ],
      },
      [second],
    ],
  ])("refuses %s", (_what, firing, pointers) => {
    expect(pointersOf({ ...question, firing })).toEqual(pointers);
  });
  it.each([
    ["−50 °C", { cooling: [{ toC: -50, cPerHour: 9 }] }],
    ["no soak", { cooling: [{ toC: 20, cPerHour: 9, holdMinutes: 0 }] }],
    ["a soak of a week", { cooling: [{ toC: 20, cPerHour: 9, holdMinutes: 10080 }] }],
    ["a start just below the peak", { peakC: 1200, cooling: [{ toC: 1199, cPerHour: 9 }] }],
    [
      "ramp after ramp",
      {
        cooling: [
          { toC: 600, cPerHour: 9 },
          { toC: 599, cPerHour: 9 },
        ],
      },
    ],
  ])("takes %s", (_what, firing) => expect(pointersOf({ ...question, firing })).toEqual([]));

  it("silent, is 5 mm of wall glazed on both faces, its edge half the wall, cooled at 100 K/h, for ten years", () => {
    const { situation: s } = prepare(question);
    expect(s).toMatchObject({ wallM: 0.005, edgeM: 0.0025, glazed: "both-faces", serviceYears: 10, onWare: true });
    expect(s.cooling).toMatchObject([{ toC: 20, logRamp: logSettingViscosity(100) }]);
    close(s.thicknessSd, 0.25 / Z90, { rel: 1e-12 });
  });
  it("told, is as told", () => {
    const ware = { wallMm: 8, edgeRadiusMm: 1, glazed: "one-face" as const, serviceYears: 2 };
    const { situation: s } = prepare({ ...question, ware, firing: { coolingCPerHour: 60 }, doubts: { onWare: false } });
    expect(s).toMatchObject({ wallM: 0.008, edgeM: 0.001, glazed: "one-face", serviceYears: 2, onWare: false });
    expect(s.cooling).toMatchObject([{ toC: 20, logRamp: logSettingViscosity(60) }]);
  });
  it("has an edge of a quarter of a millimetre at least, however thin the wall", () => {
    const edge = (wallMm: number) => prepare({ ...question, ware: { wallMm } }).situation.edgeM;
    close(edge(0.5), 0.00025, { rel: 1e-12 });
    close(edge(0.6), 0.0003, { rel: 1e-12 });
  });
});

describe("a mean to where the glaze is soft", () => {
  // A bar sags some 50 K past its transition, told (620 °C) or taken (630 °C).
  const told = (rangeC: readonly [number, number], beside: object = {}) =>
    prepare({ ...question, glaze: stated({ rangeC }, beside) }).warnings.filter(
      ({ code }) => code === "range-past-softening",
    );
  it("is told of, with what it is taken as: 6.5 over 20–900 °C at 0.0011/K from 160 °C is 6.5/1.33", () => {
    expect(told([20, 900])).toMatchObject([
      { pointer: "/glaze/expansion/rangeC", message: expect.stringContaining("makes 4.89 ×10⁻⁶/K") },
    ]);
  });
  it("not so one to where a dilatometer can go", () => {
    expect([told([20, 670]), told([20, 671]).length]).toEqual([[], 1]);
    const silent = { transitionC: undefined };
    expect([told([20, 680], silent), told([20, 681], silent).length]).toEqual([[], 1]);
  });
});

describe("what is unusual is remarked on", () => {
  const wall = (wallMm: number, thicknessMm: number) =>
    remarks(question, describeBody(body), thicknessMm, wallMm).map(({ code, pointer }) => [code, pointer]);
  it("a wall of less than three times its glaze", () => {
    expect(wall(2.99, 1)).toEqual([["thin-wall", "/ware/wallMm"]]);
    expect(wall(3, 1)).toEqual([]);
  });
  it("all coats together count against the wall", () => {
    const coat = stated({}, { thicknessMm: 0.4 }) as never;
    const ware = { wallMm: 2 };
    expect(warningsOf({ body, ware, glaze: { layers: [coat] } })).toEqual([]);
    expect(warningsOf({ body, ware, glaze: { layers: [coat, coat] } })).toEqual([["thin-wall", "/ware/wallMm"]]);
  });
  it("a glaze of more than 1.5 mm", () => {
    expect(thicknessRemarks({ oxides: lime().oxides, thicknessMm: 1.5 }, 1.5, "/glaze")).toEqual([]);
    expect(thicknessRemarks({ oxides: lime().oxides, thicknessMm: 1.6 }, 1.6, "/glaze")).toMatchObject([
      { code: "thick-glaze", pointer: "/glaze/thicknessMm" },
    ]);
  });
  // An inch is 25.4 mm: 0.012 in is 0.3048 mm, 0.039 in 0.9906 mm. Arithmetic.
  it.each([
    [0.012, "in inches, it is 0.3 mm."],
    [0.039, "in inches, it is 0.99 mm."],
  ])("a glaze of %d mm, which may be a coat in inches", (thicknessMm, meant) => {
    expect(thicknessRemarks({ oxides: lime().oxides, thicknessMm }, thicknessMm, "/glaze")).toEqual([
      { code: "thin-glaze", pointer: "/glaze/thicknessMm", message: expect.stringContaining(meant) },
    ]);
  });
  it("not so a glaze of 0.04 mm", () =>
    expect(thicknessRemarks({ oxides: lime().oxides, thicknessMm: 0.04 }, 0.04, "/glaze")).toEqual([]));
  // Red stoneware is fired to 1150–1260 °C (data/bodies/classes.json); 20 °C either way pass unremarked.
  it.each([
    [1129, true],
    [1130, false],
    [1280, false],
    [1281, true],
  ])("a red stoneware fired to %d °C: %s", (peakC, said) => {
    const notices = warningsOf({ ...question, firing: { peakC } });
    expect(notices).toEqual(said ? [["firing-unusual", "/firing/peakC"]] : []);
  });
  // A glaze of cone 10 by its oxides (Seger: 0.3 K2O, 0.7 CaO, 0.5 Al2O3, 4 SiO2) melts near 1200 °C, not at 1000.
  it("a glaze still stiffer than 10^5 Pa·s at the peak, of every coat; not where its melt is unknown", () => {
    const glaze = {
      oxides: { basis: "moles" as const, amounts: { K2O: 0.3, CaO: 0.7, Al2O3: 0.5, SiO2: 4 } },
      thicknessMm: 0.3,
    };
    const soft = viscosityCurve(analyseGlaze(glaze).moleFractions).temperatureC(5).value;
    expect(soft).toBeGreaterThan(1000);
    const unknown = { expansion: body.expansion };
    const told = (glaze: Glaze, peakC?: number) =>
      warningsOf({ body: unknown, glaze, ...(peakC === undefined ? {} : { firing: { peakC } }) })
        .filter(([code]) => code === "under-fired")
        .map(([, pointer]) => pointer);
    expect(told(glaze, soft - 1)).toEqual(["/firing/peakC"]);
    expect(told(glaze, soft + 1)).toEqual([]);
    expect(told(glaze)).toEqual([]);
    expect(told({ layers: [glaze, stated() as never, glaze] }, 1000)).toEqual(["/firing/peakC", "/firing/peakC"]);
    expect(told(stated(), 700)).toEqual([]);
    const [notice] = prepare({ body: unknown, glaze, firing: { peakC: 1000 } }).warnings.filter(
      ({ code }) => code === "under-fired",
    );
    const at = (c: number) =>
      Math.round(viscosityCurve(analyseGlaze(glaze).moleFractions).logViscosity(c).value * 10) / 10;
    expect(notice!.message).toContain(`10^${at(1000)} Pa·s`);
  });
  it("but not a firing of a body of unknown class", () => {
    const unknown = { expansion: body.expansion };
    const notices = warningsOf({ ...question, body: unknown, firing: { peakC: 800 } });
    expect(notices).toEqual([["class-unknown", "/body/class"]]);
  });
});

describe("a glaze by its oxides", () => {
  // Mole per cent is x/(100 + x): 3/103 is 2.9, 8/108 7.4, 8.6/108.6 7.9, 13.7/113.7 12.05. Arithmetic.
  it.each([
    ["alkali-lime", {}],
    ["alkali-lime", { PbO: 3 }],
    ["lead", { PbO: 8 }],
    ["alkali-lime", { B2O3: 8.6 }],
    ["borosilicate", { B2O3: 13.7 }],
    ["lead", { PbO: 10, B2O3: 20 }],
  ] as const)("is as tough as %s with %j beside 100 mol", (kind, more) => {
    expect(prepare({ ...question, glaze: lime(more) }).situation.toughness).toEqual(TOUGHNESS[kind]);
  });

  // Ranges of data/fit/mechanics.json hold nine in ten: middles 0.75, 0.825 and 0.625, half-widths 0.15, 0.125 and 0.075.
  // A limit is half way, a mol % a quarter: 0.75 − 0.125/2 = 0.6875; 0.75 + 0.075/4 = 0.76875, and so on. Arithmetic.
  it.each([
    [{ PbO: 0.05 }, 0.6875, 0.1125],
    [{ PbO: 0.04 }, 0.71875, 0.13125],
    [{ PbO: 0.06 }, 0.65625, 0.09375],
    [{ B2O3: 0.1 }, 0.7875, 0.1375],
    [{ B2O3: 0.09 }, 0.76875, 0.14375],
    // Half of what a boron glaze half way there has, half of a lead one: (0.7875 + 0.625)/2, (0.1375 + 0.075)/2.
    [{ PbO: 0.05, B2O3: 0.1 }, 0.70625, 0.10625],
  ])("passes from kind to kind in a straight line: %j", (shares, value, half) => {
    const toughness = toughnessOf(shares);
    close(toughness.value, value, { rel: 1e-12 });
    close(toughness.sd * Z90, half, { rel: 1e-9 });
  });
  it("moves no chance by a step with a trace of lead or boron", () => {
    // 4 mol % of ramp lower K by 0.125 or raise it by 0.075 of 0.75: a thousandth of a mol moves it by less than 1e-4 of itself,
    // and with it no more than a draw or two of 1024.
    for (const [oxide, limit] of [
      ["PbO", 5.263],
      ["B2O3", 11.111],
    ] as const) {
      const [below, above] = [limit - 0.001, limit + 0.001].map(
        (amount) => checkFit({ ...question, glaze: lime({ [oxide]: amount }) }).probabilities,
      );
      for (const outcome of Object.keys(below!) as (keyof typeof below)[])
        close(above![outcome], below![outcome], { abs: 3 / 1024 });
    }
  });
  it("of two, the less tough is told", () => {
    const { lead, borosilicate } = TOUGHNESS;
    expect(weaker(lead, borosilicate)).toBe(lead);
    expect(weaker(borosilicate, lead)).toBe(lead);
    expect(weaker(TOUGHNESS["alkali-lime"], borosilicate)).toBe(TOUGHNESS["alkali-lime"]);
  });
  it("sets halfway between viscosity curve and transition, and doubts it by half their gap", () => {
    const x = analyseGlaze(lime()).moleFractions;
    const [tg, curve] = [glassProperties(x).transitionC, viscosityCurve(x)];
    const stiff = curve.temperatureC(12);
    const { situation: s } = prepare({ ...question, glaze: lime() });
    close(s.t12C.value, (stiff.value + tg.value) / 2, { rel: 1e-12 });
    close(s.t12C.scale, Math.sqrt(stiff.scale ** 2 + tg.scale ** 2) / 2, { rel: 1e-12 });
    close(s.setPointSdK, Math.sqrt(25 ** 2 + ((stiff.value - tg.value) / 2) ** 2), { rel: 1e-12 });
    expect(Math.abs(stiff.value - tg.value)).toBeGreaterThan(1);
    expect(s.transitionC.value).toBe(tg.value);
    expect(s.fragility).toBe(curve.parameters.fragility);
  });
  it("is known better where papers are not doubted", () => {
    const expansion = (betweenPapers?: boolean) =>
      prepare({ ...question, glaze: lime(), doubts: { betweenPapers } }).situation.expansion;
    close(expansion(false).scale, expansion().scale * WITHOUT_PAPERS, { rel: 1e-12 });
    expect(expansion(false).value).toBe(expansion().value);
    expect(expansion(true)).toEqual(expansion());
  });
  // 0.12 × (ZrO2 + SnO2 + TiO2/2 − 1.5) in mol %, 0.6 at most (docstring; common practice, no source). Arithmetic.
  it.each([
    ["a little zircon", { ZrO2: 1.4 }, 0],
    ["zircon and tin", { ZrO2: 2, SnO2: 1.5 }, 0.12 * ((3.5 * 100) / 103.5 - 1.5)],
    ["titania, by half", { TiO2: 6 }, 0.12 * (300 / 106 - 1.5)],
    ["very much", { ZrO2: 8, SnO2: 3 }, 0.6],
  ])("is doubted for its crystals: %s", (_what, more, sd) => {
    const read = (doubts: FitRequest["doubts"]) => prepare({ ...question, glaze: lime(more), doubts });
    // Oxides carry no spread of materials, so what is left is the crystals'.
    close(read({}).situation.recipeSd, sd, { abs: 1e-9 });
    const crystals = read({}).warnings.filter(({ code }) => code === "crystals");
    expect(crystals.map(({ pointer }) => pointer)).toEqual(sd > 0 ? ["/glaze"] : []);
    expect(read({ crystals: false }).situation.recipeSd).toBe(0);
    expect(read({ crystals: false }).warnings.map(({ code }) => code)).not.toContain("crystals");
  });
  const recipe = [
    { material: "potash-feldspar", parts: 45 },
    { material: "silica", parts: 20 },
    { material: "whiting", parts: 18 },
    { material: "zircon", parts: 17 },
  ];
  it("or by its recipe, is doubted for its materials too: squares added", () => {
    const chemistry = analyseGlaze({ recipe });
    const { oxides } = expansionContributions(chemistry.moleFractions);
    const [materials, crystals] = [materialsSd(chemistry, oxides), crystalSd(chemistry.fired.molePercent)];
    expect(Math.min(materials, crystals)).toBeGreaterThan(0.05);
    const sd = (doubts: FitRequest["doubts"]) => prepare({ ...question, glaze: { recipe }, doubts }).situation.recipeSd;
    close(sd({}), Math.sqrt(materials ** 2 + crystals ** 2), { rel: 1e-12 });
    close(sd({ crystals: false }), materials, { rel: 1e-12 });
    close(sd({ materials: false }), crystals, { rel: 1e-12 });
  });
  it("passes on what chemistry and glass remark on, from the root of the request, and their sources", () => {
    const odd = {
      recipe: [...recipe, { material: "cryolite", parts: 9 }, { material: "zirconia", parts: 20 }],
    };
    const chemistry = analyseGlaze(odd);
    const glass = glassProperties(chemistry.moleFractions);
    const told = prepare({ ...question, glaze: odd });
    for (const list of [chemistry.warnings, glass.warnings]) {
      expect(list.length).toBeGreaterThan(0);
      const from = list.map((one) => (one.pointer === undefined ? one : { ...one, pointer: `/glaze${one.pointer}` }));
      expect(told.warnings).toEqual(expect.arrayContaining(from));
    }
    expect(told.sources).toEqual(expect.arrayContaining([...chemistry.sources, ...glass.sources]));
    expect(told.cautions).toEqual(chemistry.cautions);
    expect(chemistry.sources.some((key) => !glass.sources.includes(key))).toBe(true);
  });
  it("remarks and faults of a coat point into that coat", () => {
    const odd = { ...lime({ ZrO2: 12 }), thicknessMm: 0.2 };
    const { warnings } = prepare({ ...question, glaze: { layers: [stated() as never, odd] } });
    const pointers = warnings.flatMap(({ pointer }) => (pointer === undefined ? [] : [pointer]));
    expect(pointers.length).toBeGreaterThan(0);
    for (const pointer of pointers) expect(pointer).toMatch(/^\/glaze\/layers\/1(\/oxides|$)/);
    // Some speak of the glass as a whole, and point nowhere.
    expect(pointers.length).toBeLessThan(warnings.length);
  });
  it("is refused where nothing like it was measured: an interval wider than 12", () => {
    expect(WIDEST).toBe(12);
    const odd = (amounts: Record<string, number>) => ({ oxides: { basis: "molePercent" as const, amounts } });
    const glaze = odd({ Al2O3: 1, Li2O: 48, SiO2: 51 });
    const { expansion } = glassProperties(analyseGlaze(glaze).moleFractions);
    expect(quantileOf(expansion, 0.95) - quantileOf(expansion, 0.05)).toBeGreaterThan(WIDEST);
    // What makes it odd is told: the most plentiful oxide beside silica.
    for (const [amounts, said] of [
      [{ Al2O3: 1, Li2O: 48, SiO2: 51 }, "(51 mol % silica, 48 mol % Li2O)"],
      [{ Al2O3: 1, Li2O: 89, SiO2: 10 }, "(10 mol % silica, 89 mol % Li2O)"],
      [{ Al2O3: 10, Li2O: 90 }, "(0 mol % silica, 90 mol % Li2O)"],
    ] as const) {
      const [issue] = issuesOf({ ...question, glaze: odd(amounts) });
      expect(issue!.pointer).toBe("/glaze");
      expect(issue!.message).toContain(said);
    }
  });
});

describe("several coats", () => {
  const coat = (value: number, thicknessMm?: number) => stated({ value }, { thicknessMm }) as never;
  it("are one to six", () => {
    const of = (n: number) => ({ ...question, glaze: { layers: Array.from({ length: n }, () => coat(6, 0.1)) } });
    expect(issuesOf(of(0))).toMatchObject([{ pointer: "/glaze/layers", allowed: [1, 6] }]);
    expect(issuesOf(of(7))).toMatchObject([{ pointer: "/glaze/layers", allowed: [1, 6] }]);
    expect(issuesOf(of(1))).toEqual([]);
    expect(issuesOf(of(6))).toEqual([]);
  });
  it("keep their order, expansions and thicknesses", () => {
    const glaze = { layers: [coat(5, 0.1), coat(6, 0.2), coat(7, 0.3)] };
    const { situation: s, coats } = prepare({ ...question, glaze });
    expect([s, ...s.under].map(({ expansion }) => expansion.value)).toEqual([5, 6, 7]);
    const mm = [s, ...s.under].map(({ thicknessM }) => thicknessM * 1000);
    [0.1, 0.2, 0.3].forEach((thick, i) => {
      close(mm[i], thick, { abs: 1e-12 });
      expect(coats[i]!.thicknessMm).toBe(thick);
    });
  });
  it("say what was assumed of each, and a caution once", () => {
    const glaze = { layers: [coat(5), coat(6)] };
    expect(warningsOf({ ...question, glaze })).toEqual([
      ["thickness-assumed", "/glaze/layers/0/thicknessMm"],
      ["thickness-assumed", "/glaze/layers/1/thicknessMm"],
    ]);
    const lead = { ...lime({ PbO: 20 }), thicknessMm: 0.2 };
    const cautions = (layers: (typeof lead)[]) =>
      prepare({ ...question, glaze: { layers } }).cautions.map(({ code }) => code);
    expect(cautions([lead]).length).toBeGreaterThan(0);
    expect(cautions([lead, lead])).toEqual([...new Set(cautions([lead]))]);
  });
  it("rest on the sources of each, of the clay and of the rise with temperature", () => {
    const { sources } = prepare({ ...question, glaze: lime() });
    expect(sources).toEqual(
      expect.arrayContaining(["sciglass-2019", "mclellan-shand-1984", ...describeBody(body).sources]),
    );
    expect(prepare(question).sources).not.toContain("sciglass-2019");
    const layers = [coat(5, 0.1), { ...lime(), thicknessMm: 0.1 }];
    expect(prepare({ ...question, glaze: { layers } }).sources).toContain("sciglass-2019");
  });
  it("are judged as a glaze and refused as one", () => {
    const layers = [coat(6, 0.1), { ...lime(), thicknessMm: 9 }];
    expect(pointersOf({ ...question, glaze: { layers } })).toEqual(["/glaze/layers/1/thicknessMm"]);
    expect(() => checkFit({ ...question, glaze: { layers } })).toThrow(EngineError);
  });
});
