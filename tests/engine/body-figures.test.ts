/** Figures of a body worked out by hand from the documented formulas and the ranges of data/bodies. */
import { describe, expect, it } from "vitest";
import { at, fromSpan, MATRIX_RISE, Z90 } from "../../api/engine/body/body-model.ts";
import {
  type Body,
  contractionAt,
  describeBody,
  findBody,
  listBodies,
  moistureAge,
  toVolume,
} from "../../api/engine/body/index.ts";
import { mixtureStrain, PHASES } from "../../api/engine/body/phases.ts";
import phaseData from "../../data/bodies/phases.json" with { type: "json" };
import { close } from "../support/close.ts";
import { issuesOf as issuesIn } from "../support/refusals.ts";

const tiny = { abs: 1e-12 };
const codes = (body: Body) => describeBody(body).warnings.map(({ code }) => code);
const issuesOf = (body: Body) => issuesIn(() => describeBody(body, "/body"));

// Strain of quartz and cristobalite as printed in data/bodies/phases.json, read off at temperatures of its points.
const quartz = (c: number) => PHASES.get("quartz")!.strain(c);
const cristobalite = (c: number) => PHASES.get("cristobalite")!.strain(c);

describe("spreads", () => {
  it("hold nine in ten of a range, and stop at their floor (definition)", () => {
    const spread = fromSpan([2, 6], 1);
    close(at(spread, Z90), 6, tiny);
    close(at(spread, 0), 4, tiny);
    close(at(spread, -Z90), 2, tiny);
    expect(at(spread, -100)).toBe(1);
    close(at(fromSpan([2, 6]), -10 * Z90), 4 - 20, tiny);
    close(at(fromSpan([-1, 1], 0), -Z90), 0, tiny);
  });
  it("age by the fourth root: ten years, one sixteenth of thirty", () => {
    close(moistureAge(30 / 16), 0.5, tiny);
    close(moistureAge(10), (1 / 3) ** 0.25, tiny);
  });
});

// ε(T) = A·m(T) + q·f·Q(T) + c·C(T), m(T) = (T − 20)(1 + k((T + 20)/2 − 260)), as the docstring of scaledMixture says.
describe("a body of a stated mean", () => {
  const m = (c: number, k: number) => (c - 20) * (1 + k * ((c + 20) / 2 - 260));
  const expected = (
    c: number,
    [from, to]: [number, number],
    strain: number,
    q: number,
    f: number,
    s: number,
    k: number,
  ) => {
    const grains = q * f * (quartz(to) - quartz(from)) + s * (cristobalite(to) - cristobalite(from));
    return ((strain - grains) / (m(to, k) - m(from, k))) * m(c, k) + q * f * quartz(c) + s * cristobalite(c);
  };
  const body = (rangeC: [number, number]) =>
    describeBody({ class: "red-stoneware", expansion: { value: 6, rangeC, plusMinus: 0.2 } });

  it.each<[[number, number]]>([[[20, 500]], [[20, 700]], [[100, 500]]])("over %j °C", (rangeC) => {
    const strain = 6e-6 * (rangeC[1] - rangeC[0]);
    // Red stoneware: quartz 0.06–0.2, factor 0.68, cristobalite 0–0.01; k 0.0006 ± 0.00025.
    const quartzSd = 0.07 / Z90;
    const cristobaliteSd = 0.005 / Z90;
    for (const c of [100, 200, 500, 600, 900, 1000]) {
      const at0 = contractionAt(body(rangeC), c);
      close(at0, expected(c, rangeC, strain, 0.13, 0.68, 0.005, 0.0006), { rel: 1e-9 });
      close(
        contractionAt(body(rangeC), c, { bodyQuartz: 0.5, bodyCristobalite: 0.6, bodyRise: 2 }),
        expected(c, rangeC, strain, 0.13 + 0.5 * quartzSd, 0.68, 0.005 + 0.6 * cristobaliteSd, 0.0011),
        { rel: 1e-9 },
      );
      const higher = (0.2 / Z90) * 1e-6 * (rangeC[1] - rangeC[0]);
      close(
        contractionAt(body(rangeC), c, { bodyMean: 1 }),
        expected(c, rangeC, strain + higher, 0.13, 0.68, 0.005, 0.0006),
        { rel: 1e-9 },
      );
      // Neither mineral falls below none.
      close(
        contractionAt(body(rangeC), c, { bodyQuartz: -9, bodyCristobalite: -9 }),
        expected(c, rangeC, strain, 0, 0.68, 0, 0.0006),
        { rel: 1e-9 },
      );
    }
    expect(MATRIX_RISE.value).toBe(0.0006);
  });

  it("leaves a quarter of the strain to the glass, whatever quartz is counted", () => {
    const crowded = describeBody({
      class: "red-stoneware",
      expansion: { value: 4, rangeC: [20, 500], plusMinus: 0.2 },
      quartzPercent: 50,
      cristobalitePercent: 20,
    });
    const strain = 4e-6 * 480;
    const q = 0.5 * (2450 / 2650);
    const s = 0.2 * (2450 / 2330);
    const less = (0.75 * strain) / (q * 0.68 * quartz(500) + s * cristobalite(500));
    for (const c of [200, 500, 600]) {
      close(contractionAt(crowded, c), expected(c, [20, 500], strain, less * q, 0.68, less * s, 0.0006), { rel: 1e-9 });
    }
  });
  it("carries the tables on beyond both ends by their last stretch", () => {
    const stated = body([20, 500]);
    for (const c of [10, 1100]) {
      const [a, b] = c < 20 ? [20, 22.5] : [997.5, 1000];
      const on = (table: (c: number) => number) => table(a) + ((table(b) - table(a)) * (c - a)) / (b - a);
      const strain = 6e-6 * 480;
      const grains = 0.13 * 0.68 * quartz(500) + 0.005 * cristobalite(500);
      close(
        contractionAt(stated, c),
        ((strain - grains) / m(500, 0.0006)) * m(c, 0.0006) + 0.13 * 0.68 * on(quartz) + 0.005 * on(cristobalite),
        { rel: 1e-9 },
      );
    }
  });
  it("keeps what was stated, or ±0.4 over 20–500 °C where nothing was (docstring)", () => {
    const full = describeBody({ class: "red-stoneware", expansion: { value: 6, rangeC: [20, 600], plusMinus: 0.2 } });
    expect(full).toMatchObject({ classId: "red-stoneware", basis: "stated", warnings: [] });
    expect(full.expansion).toEqual({ value: 6, sd: 0.2 / Z90, rangeC: [20, 600] });
    expect(full.sources).toEqual(findBody("red-stoneware").sources);
    const bare = describeBody({ expansion: { value: 6 } });
    expect(bare).toMatchObject({ classId: null, basis: "stated" });
    expect(bare.expansion).toEqual({ value: 6, sd: 0.4 / Z90, rangeC: [20, 500] });
    expect(bare.warnings.map(({ code }) => code)).toEqual(["range-assumed", "tolerance-assumed", "class-unknown"]);
    const low = describeBody({ class: "red-stoneware" });
    expect(low.expansion.value - low.expansion.sd * Z90).toBeCloseTo(4.8, 10);
    expect(low).toMatchObject({ classId: "red-stoneware", basis: "class" });
  });
  it("doubts a mean more than 0.3 beyond its class over the like range only", () => {
    // Red stoneware: 4.8–6.3 over 20–500 °C, 5.3–7 over 20–600 °C; nothing is printed for 20–700 °C.
    const said = (value: number, to: number) =>
      codes({ class: "red-stoneware", expansion: { value, rangeC: [20, to], plusMinus: 0.2 } });
    expect([said(6.5, 500), said(4.6, 500), said(7.2, 600), said(9, 700)]).toEqual([[], [], [], []]);
    for (const odd of [said(6.7, 500), said(4.4, 500), said(7.4, 600), said(4.9, 600)]) {
      expect(odd).toEqual(["facts-disagree"]);
    }
  });
  it("doubts minerals that take more than three quarters of it, whichever was counted", () => {
    const said = (facts: object) =>
      describeBody(
        { class: "red-stoneware", expansion: { value: 6, rangeC: [20, 500], plusMinus: 0.2 }, ...facts },
        "/body",
      ).warnings.filter(({ code }) => code === "facts-disagree");
    // 0.75·6e-6·480 less half a per cent of cristobalite, over 0.68·Q(500), is 38 % quartz by weight.
    const rest = 0.75 * 6e-6 * 480 - 0.005 * cristobalite(500);
    const limit = (100 * rest) / (0.68 * quartz(500)) / (2450 / 2650);
    expect(said({ quartzPercent: limit - 0.1 })).toEqual([]);
    expect(said({ quartzPercent: limit + 0.1 })).toMatchObject([{ pointer: "/body/quartzPercent" }]);
    expect(said({ cristobalitePercent: 40 })).toMatchObject([{ pointer: "/body/cristobalitePercent" }]);
  });
  it.each<[Body, boolean]>([
    [{ expansion: { value: -2 } }, true],
    [{ expansion: { value: -2.1 } }, false],
    [{ expansion: { value: 20 } }, true],
    [{ expansion: { value: 20.1 } }, false],
    [{ expansion: { value: Number.NaN } }, false],
    [{ expansion: { value: 6, rangeC: [20, 70] } }, true],
    [{ expansion: { value: 6, rangeC: [20, 69] } }, false],
    [{ expansion: { value: 6, rangeC: [-50, 500] } }, true],
    [{ expansion: { value: 6, rangeC: [-51, 500] } }, false],
    [{ expansion: { value: 6, rangeC: [20, 1200] } }, true],
    [{ expansion: { value: 6, rangeC: [20, 1201] } }, false],
    [{ expansion: { value: 6, plusMinus: 0 } }, true],
    [{ expansion: { value: 6, plusMinus: 5 } }, true],
    [{ expansion: { value: 6, plusMinus: 5.1 } }, false],
  ])("%j is taken: %s (the bounds that its message names)", (body, taken) => {
    expect(issuesOf(body)).toHaveLength(taken ? 0 : 1);
  });
});

describe("a body of phases", () => {
  it("is filled up with glass, and has a doubt of 6 % (docstring)", () => {
    const dry = { absorptionPercent: 0 };
    const some = describeBody({ phases: { mullite: 40 }, ...dry });
    const whole = describeBody({ phases: { mullite: 40, glass: 60 }, ...dry });
    expect(some.warnings.map(({ code }) => code)).toEqual(["glass-assumed"]);
    expect(whole.warnings).toEqual([]);
    expect(whole).toMatchObject({ classId: null, basis: "phases" });
    expect(codes({ phases: { mullite: 40, glass: 59.6 }, ...dry })).toEqual([]);
    for (const c of [300, 900]) {
      close(contractionAt(some, c), contractionAt(whole, c), tiny);
      close(contractionAt(whole, c, { bodyMean: 1 }) / contractionAt(whole, c), 1.06, tiny);
    }
    close(whole.expansion.value, (contractionAt(whole, 500) / 480) * 1e6, tiny);
    close(whole.expansion.sd, 0.06 * whole.expansion.value, tiny);
    close(contractionAt(describeBody({ phases: { mullite: 40, glass: 10 } }), 500), contractionAt(whole, 500), tiny);
  });
  it("of glass alone grows 5.5 ×10⁻⁶/K by every rule; of quartz alone as quartz does (data/bodies/phases.json)", () => {
    const glass = describeBody({ phases: { glass: 100 } });
    close(contractionAt(glass, 520), 0.00275, tiny);
    expect(glass.bounds!(520)).toEqual({ turner: 5.5, linear: 5.5 });
    close(contractionAt(describeBody({ phases: { quartz: 100 } }), 500), quartz(500), tiny);
  });
  it("has bounds by the rule of Turner and by volume, quartz with 0.68 of its strain beside glass", () => {
    const q = PHASES.get("quartz")!;
    const g = PHASES.get("glass")!;
    const { turner, linear } = describeBody({ phases: { quartz: 30, glass: 70 } }).bounds!(500);
    const strains = [0.68 * q.strain(500), g.strain(500)] as const;
    close(linear, ((0.3 * strains[0] + 0.7 * strains[1]) / 480) * 1e6, { abs: 0.005 });
    const top = 0.3 * q.bulkPa * strains[0] + 0.7 * g.bulkPa * strains[1];
    close(turner, (top / (0.3 * q.bulkPa + 0.7 * g.bulkPa) / 480) * 1e6, { abs: 0.005 });
    // K = E/(3(1 − 2ν)), G = E/(2(1 + ν)), glass 70 GPa and 0.2.
    close(g.bulkPa, 70e9 / 1.8, { rel: 1e-12 });
    close(g.shearPa, 70e9 / 2.4, { rel: 1e-12 });
  });
  it("lends the glass's stiffness to a phase without one, and says so", () => {
    const told = (phases: Record<string, number>) =>
      codes({ phases, absorptionPercent: 0 }).filter((code) => !code.startsWith("dunting"));
    expect(told({ tridymite: 10, glass: 90 })).toEqual(["stiffness-unknown"]);
    expect(told({ "beta-spodumene": 10, glass: 90 })).toEqual(["stiffness-unknown"]);
    for (const [id, { youngsGPa }] of Object.entries(phaseData.phases)) {
      const expected = youngsGPa === null ? ["glass-assumed", "stiffness-unknown"] : ["glass-assumed"];
      expect(told({ [id]: 10 }), id).toEqual(expected);
    }
    expect(told({ tridymite: 0, glass: 100 })).toEqual([]);
    close(PHASES.get("tridymite")!.bulkPa, 70e9 / 1.8, { rel: 1e-12 });
  });
  it("turns weights into volumes: equal masses go as one over the density", () => {
    const quartzDensity = PHASES.get("quartz")!.densityKgPerM3;
    const glassDensity = PHASES.get("glass")!.densityKgPerM3;
    const volumes = toVolume({ quartz: 3, glass: 3 });
    close(volumes.quartz!, glassDensity / (quartzDensity + glassDensity), tiny);
    close(volumes.quartz! + volumes.glass!, 1, tiny);
  });
  it.each<[Record<string, number>, boolean]>([
    [{ quartz: 0 }, false],
    [{ quartz: -1, glass: 90 }, false],
    [{ quartz: Number.NaN }, false],
    [{ quartz: 0, glass: 100.5 }, true],
    [{ glass: 100.6 }, false],
  ])("%j is taken: %s", (phases, taken) => expect(issuesOf({ phases })).toHaveLength(taken ? 0 : 1));
});

describe("a body known by its curve", () => {
  const straight = (to: number, from = 20) => [
    { c: from, strainPercent: 0 },
    { c: (from + to) / 2, strainPercent: ((to - from) / 2) * 6e-4 },
    { c: to, strainPercent: (to - from) * 6e-4 },
  ];
  it("reads a straight line of 6 ×10⁻⁶/K anywhere, and counts from 20 °C", () => {
    for (const from of [20, 100]) {
      const body = describeBody({ curve: straight(700, from) });
      for (const c of [20, 100, 300, 600, 900]) close(contractionAt(body, c), (c - 20) * 6e-6, { abs: 1e-9 });
      close(body.expansion.value, 6, { abs: 1e-9 });
      // ±3 % of the reading at 90 %.
      close(body.expansion.sd, (6 * 0.03) / Z90, { abs: 1e-9 });
      close(contractionAt(body, 500, { bodyMean: Z90 }) / contractionAt(body, 500), 1.03, { abs: 1e-9 });
      expect(body).toMatchObject({ classId: null, basis: "curve" });
    }
  });
  it("takes a stated doubt at the hot end: 0.0204 % of 0.408 % is a twentieth", () => {
    const body = describeBody({ curve: straight(700), plusMinusPercent: 0.0204 });
    close(contractionAt(body, 300, { bodyMean: Z90 }) / contractionAt(body, 300), 1.05, { abs: 1e-9 });
  });
  it("goes on from 650 °C at the slope of its last 100 K, of none below 600 °C", () => {
    // From 0.3 % at 600 °C: 0.002 %/K to 650 °C, then 0.001 %/K.
    const curve = (to: number) => [
      { c: 20, strainPercent: 0 },
      { c: 600, strainPercent: 0.3 },
      { c: 650, strainPercent: 0.4 },
      ...(to > 650 ? [{ c: to, strainPercent: 0.4 + (to - 650) * 0.001 }] : []),
    ];
    const beyond = (to: number) => {
      const body = describeBody({ curve: curve(to) });
      return contractionAt(body, to + 100) - contractionAt(body, to);
    };
    close(beyond(650), 0.001 * 2, { abs: 1e-9 });
    // From 0.3 % at 600 °C to 0.45 % at 700 °C.
    close(beyond(700), 0.001 * 1.5, { abs: 1e-9 });
    // From 0.35 % at 625 °C to 0.475 % at 725 °C.
    close(beyond(725), 0.001 * 1.25, { abs: 1e-9 });
    close(beyond(800), 0.001, { abs: 1e-9 });
  });
  it("goes on alike from a dense run with noise: ± 0.002 % from degree to degree", () => {
    const run = Array.from({ length: 681 }, (_, k) => ({
      c: 20 + k,
      strainPercent: k * 6e-4 + (k % 2 === 0 ? 0.002 : -0.002),
    }));
    // At most 0.002 % at the end and 0.004 % in the slope over 100 K; the slope of two neighbours would be 0.4 % off.
    const off = contractionAt(describeBody({ curve: run }), 800) - 780 * 6e-6;
    expect(Math.abs(off) * 100).toBeLessThan(0.0061);
  });
  // A·L(T) + q f Q(T), A from the mean to the end, L = (T − 20)(1 + 0.0006((T + 20)/2 − 260)), q 0–0.25, f 0.8 of any body.
  const length = (c: number) => (c - 20) * (1 + 0.0006 * ((c + 20) / 2 - 260));
  const goesOn = (end: number, c: number, q: number) =>
    ((6e-6 * (end - 20) - q * 0.8 * quartz(end)) / length(end)) * length(c) + q * 0.8 * quartz(c);
  it.each([500, 560, 575, 640])(
    "one that ends at %d °C goes on as any body of its mean, in step with the quartz",
    (end) => {
      const body = describeBody({ curve: straight(end) });
      close(contractionAt(body, end, { bodyQuartz: 1 }), (end - 20) * 6e-6, { abs: 1e-9 });
      const more = 0.125 / Z90;
      for (const [bodyQuartz, q] of [
        [0, 0.125],
        [1, 0.125 + more],
        [-5, 0],
      ] as const) {
        close(contractionAt(body, 700, { bodyQuartz }), goesOn(end, 700, q), { abs: 1e-9 });
      }
      const wide = contractionAt(body, 700, { bodyMean: Z90, bodyQuartz: -5 });
      close(wide / contractionAt(body, 700, { bodyQuartz: -5 }), 1.03, { abs: 1e-9 });
      expect(codes({ curve: straight(end) }).includes("curve-ends-below-quartz-step")).toBe(end < 575);
    },
  );
  it("says much the same of 700 °C wherever it is cut off from 500 °C on, most of all within the quartz step", () => {
    const whole = describeBody({
      expansion: { value: 5.6, rangeC: [20, 500], plusMinus: 0.2 },
      class: "buff-stoneware",
    });
    const cut = (end: number) => {
      const temperatures = [...Array.from({ length: Math.ceil((end - 20) / 10) }, (_, i) => 20 + 10 * i), end];
      return describeBody({ curve: temperatures.map((c) => ({ c, strainPercent: contractionAt(whole, c) * 100 })) });
    };
    for (let end = 500; end <= 700; end += 1) {
      const off = contractionAt(cut(end), 700) - contractionAt(whole, 700);
      // 0.01 % of length is some 9 MPa; a last slope of 550 to 560 °C carried on would be 0.13 % off.
      expect(Math.abs(off), `ends at ${end} °C`).toBeLessThan(1e-4);
    }
  });
  it("tells of a gap wider than 150 °C, at the point after it", () => {
    const gaps = (a: number, b: number) =>
      describeBody({
        curve: [
          { c: 20, strainPercent: 0 },
          { c: a, strainPercent: 0.1 },
          { c: b, strainPercent: 0.2 },
        ],
      }).warnings.filter(({ code }) => code === "wide-gap-in-curve");
    expect(gaps(150, 300)).toEqual([]);
    expect(gaps(150, 301)).toMatchObject([{ pointer: "/curve/2" }]);
    expect(gaps(171, 300)).toMatchObject([{ pointer: "/curve/1" }]);
  });
  it.each<[number, number, number, boolean]>([
    [150, 200, 0.1, true],
    [151, 200, 0.1, false],
    [20, 199, 0.1, false],
    [-50, 500, 3, true],
    [-51, 500, 0.1, false],
    [20, 1700, 0.1, true],
    [20, 1701, 0.1, false],
    [20, 500, 3.1, false],
    [20, 500, -3.1, false],
    [20, Number.NaN, 0.1, false],
    [20, 500, Number.NaN, false],
  ])("from %d to %d °C, %d %%, is taken: %s (the bounds that its message names)", (from, to, percent, taken) => {
    const curve = [
      { c: from, strainPercent: 0 },
      { c: to, strainPercent: percent },
    ];
    expect(issuesOf({ curve })).toHaveLength(taken ? 0 : 1);
  });
});

describe("facts beside a body", () => {
  const facts = (given: object) => describeBody({ class: "red-stoneware", ...given });
  it("stand with a tenth to either side; else the range of the class", () => {
    const told = facts({ youngsGPa: 50, ruptureMPa: 40, moistureExpansionPercent: 0.05 });
    expect(told.youngsGPa).toEqual({ value: 50, sd: 5 / Z90, floor: 0 });
    expect(told.ruptureMPa).toEqual({ value: 40, sd: 4 / Z90, floor: 0 });
    close(told.moisturePercent.sd, 0.005 / Z90, tiny);
    // Red stoneware: 40–65 GPa, 30–60 MPa, growth 0.005–0.05 %, Poisson 0.18–0.25.
    const plain = facts({});
    close(at(plain.youngsGPa, Z90), 65, tiny);
    close(at(plain.ruptureMPa, -Z90), 30, tiny);
    close(at(plain.moisturePercent, Z90), 0.05, tiny);
    close(plain.poisson, 0.215, tiny);
    expect([at(plain.youngsGPa, -99), at(plain.ruptureMPa, -99), at(plain.moisturePercent, -99)]).toEqual([3, 1, 0]);
  });
  it("pores take stiffness: W 10 % is P 0.2, of 70 GPa 1 − 0.38 + 0.036 stays, a quarter to either side", () => {
    const { youngsGPa } = describeBody({ expansion: { value: 6 }, absorptionPercent: 10 });
    close(youngsGPa.value, 45.92, tiny);
    close(youngsGPa.sd, (45.92 * 0.25) / Z90, tiny);
    expect(at(youngsGPa, -99)).toBe(3);
  });
  it("a class is as stiff as its range at the middle of what it takes up: 40–65 GPa at 3 %, 0.76 of that at 10 %", () => {
    expect(facts({ absorptionPercent: 3 }).youngsGPa).toEqual(facts({}).youngsGPa);
    const pores = 0.075 / 1.075;
    const share = 0.656 / (1 - 1.9 * pores + 0.9 * pores * pores);
    const { youngsGPa } = facts({ absorptionPercent: 10 });
    close(at(youngsGPa, -Z90), 40 * share, tiny);
    close(at(youngsGPa, Z90), 65 * share, tiny);
    expect(at(youngsGPa, -99)).toBe(3);
  });
  // Of no class: straight lines from 0–0.005 % at 0.5 by 0.005–0.05 % at 3 to 0.02–0.18 % at 10 % absorption.
  it.each([
    [0, 0, 0.005],
    [0.5, 0, 0.005],
    [1.75, 0.0025, 0.0275],
    [3, 0.005, 0.05],
    [6.5, 0.0125, 0.115],
    [10, 0.02, 0.18],
    [30, 0.02, 0.18],
  ])("at %d %% absorption a body of no class grows by %d to %d %%", (absorptionPercent, least, most) => {
    const { moisturePercent } = describeBody({ expansion: { value: 6 }, absorptionPercent });
    close(at(moisturePercent, -Z90), least, tiny);
    close(at(moisturePercent, Z90), most, tiny);
  });
  // Red stoneware takes up 1–5 % and grows by 0.005–0.05 %; by absorption 0.001–0.014 % at 1, 0.065/7–0.61/7 % at 5 %.
  it.each([
    [1, 0.005, 0.05],
    [5, 0.005, 0.05],
    [10, 0.005 + 0.02 - 0.065 / 7, 0.05 + 0.18 - 0.61 / 7],
    [0.5, 0, (0.05 * 0.005) / 0.014],
  ])("at %d %% red stoneware grows by %d to %d %%: as its class within it", (absorptionPercent, least, most) => {
    const { moisturePercent } = facts({ absorptionPercent });
    close(at(moisturePercent, -Z90), least, tiny);
    close(at(moisturePercent, Z90), most, tiny);
  });
  it("an absorption in the middle of its class changes nothing, of any class", () => {
    for (const { id, absorptionPercent: usual, moistureExpansionPercent } of listBodies()) {
      const told = describeBody({ class: id, absorptionPercent: (usual![0] + usual![1]) / 2 });
      expect(told.youngsGPa, id).toEqual(describeBody({ class: id }).youngsGPa);
      if (moistureExpansionPercent)
        expect(told.moisturePercent, id).toEqual(describeBody({ class: id }).moisturePercent);
    }
  });
  it("a tenth of a per cent more water is never more than 0.007 % more growth", () => {
    for (const told of [{ expansion: { value: 6 } }, ...listBodies().map(({ id }) => ({ class: id }))]) {
      const most = (w: number) => at(describeBody({ ...told, absorptionPercent: w }).moisturePercent, Z90);
      for (let w = 0; w < 25; w += 0.1) expect(Math.abs(most(w + 0.1) - most(w)), `${w} %`).toBeLessThan(0.007);
    }
  });
  it.each([
    ["absorptionPercent", 0, 40],
    ["moistureExpansionPercent", 0, 1],
    ["youngsGPa", 1, 400],
    ["ruptureMPa", 1, 500],
    ["quartzPercent", 0, 80],
    ["cristobalitePercent", 0, 60],
  ])("%s is taken from %d to %d, as its message says", (name, low, high) => {
    const issues = (value: number) => issuesOf({ class: "red-stoneware", [name]: value });
    expect([issues(low), issues(high)]).toEqual([[], []]);
    for (const value of [low - 0.01, high + 0.01, Number.NaN]) {
      expect(issues(value)).toMatchObject([{ pointer: `/body/${name}`, allowed: [low, high] }]);
    }
  });
  it("are doubted only where they disagree", () => {
    // Red stoneware takes up 1–5 %: beyond 8.5 or below −0.5 % it is told.
    expect(codes({ class: "red-stoneware", absorptionPercent: 8.5 })).toEqual(["class-only"]);
    expect(codes({ class: "red-stoneware", absorptionPercent: 8.6 })).toEqual(["class-only", "facts-disagree"]);
    expect(codes({ class: "red-stoneware", absorptionPercent: 0 })).toEqual(["class-only"]);
    expect(codes({ class: "red-stoneware", absorptionPercent: 5, youngsGPa: 55 })).toEqual(["class-only"]);
    const stiff = (youngsGPa: number) => codes({ class: "red-stoneware", absorptionPercent: 8, youngsGPa });
    // At the middle of the class, 3 %, it is 52.5 GPa.
    const left = (w: number) => 1 - (1.9 * w) / (1 + w) + 0.9 * (w / (1 + w)) ** 2;
    const expected = (52.5 * left(0.2)) / left(0.075);
    expect(stiff(expected * 1.49)).toEqual(["class-only"]);
    expect(stiff(expected * 1.51)).toEqual(["class-only", "facts-disagree"]);
    expect(stiff(expected * 0.51)).toEqual(["class-only"]);
    expect(stiff(expected * 0.49)).toEqual(["class-only", "facts-disagree"]);
  });
  it("a counted mineral is known to 15 %, or to half a per cent of the volume", () => {
    const grown = (quartzPercent: number, deviate: number) =>
      contractionAt(facts({ expansion: { value: 6, rangeC: [20, 500] }, quartzPercent }), 600, { bodyQuartz: deviate });
    const volume = 2450 / 2650;
    // Another count at no deviate is the same body.
    close(grown(20, Z90), grown(23, 0), tiny);
    close(grown(2, Z90), grown(2 + 0.5 / volume, 0), tiny);
  });
  it("much quartz or cristobalite is told of from 22 and 3 % of the volume on, if anything is known of it", () => {
    const dunting = (body: Body) => codes(body).filter((code) => code.startsWith("dunting"));
    const volume = { quartz: 2450 / 2650, cristobalite: 2450 / 2330 };
    const stated = { expansion: { value: 8, rangeC: [20, 500] as const } };
    expect(dunting({ ...stated, quartzPercent: 22.01 / volume.quartz })).toEqual(["dunting-quartz"]);
    expect(dunting({ ...stated, quartzPercent: 21.9 / volume.quartz })).toEqual([]);
    expect(dunting({ ...stated, cristobalitePercent: 3.01 / volume.cristobalite })).toEqual(["dunting-cristobalite"]);
    expect(dunting({ ...stated, cristobalitePercent: 2.9 / volume.cristobalite })).toEqual([]);
    expect(dunting(stated)).toEqual([]);
    // Phases are by volume as they stand.
    const phases = (quartz: number, cristobalite: number) =>
      dunting({ phases: { quartz, cristobalite, glass: 100 - quartz - cristobalite } });
    expect(phases(22, 3)).toEqual(["dunting-quartz", "dunting-cristobalite"]);
    expect(phases(21.9, 2.9)).toEqual([]);
  });
  it("pores are asked after where a curve or phases say nothing of them", () => {
    const curve = [
      { c: 20, strainPercent: 0 },
      { c: 100, strainPercent: 0.05 },
    ];
    const line = { curve: [...curve, { c: 700, strainPercent: 0.42 }] };
    const said = (body: Body) => describeBody(body, "/body").warnings.filter(({ code }) => code === "pores-unknown");
    for (const body of [line, { phases: { mullite: 30, glass: 70 } }]) {
      expect(said(body)).toMatchObject([
        { pointer: "/body/absorptionPercent", message: expect.stringContaining("and any stiffness") },
      ]);
      expect(said({ ...body, youngsGPa: 60 })[0]!.message).not.toContain("stiffness");
      expect(said({ ...body, absorptionPercent: 3 })).toEqual([]);
      expect(said({ ...body, moistureExpansionPercent: 0.01 })).toEqual([]);
    }
    expect(said({ class: "red-stoneware" })).toEqual([]);
    expect(said({ expansion: { value: 6 } })).toEqual([]);
  });
});

describe("what is said of facts that disagree", () => {
  const said = (body: Body) =>
    describeBody(body, "/body").warnings.filter(({ code }) => code === "facts-disagree" || code.startsWith("dunting"));
  const stoneware = { class: "red-stoneware" };
  it("a dry body that grows: up to 0.5 % absorption and beyond 0.02 % growth, against 0.005 %", () => {
    const dry = (absorptionPercent: number, moistureExpansionPercent?: number) =>
      said({ ...stoneware, absorptionPercent, moistureExpansionPercent });
    expect(dry(0.5, 0.021)).toMatchObject([
      { pointer: "/body/moistureExpansionPercent", message: expect.stringContaining("some 0.016 % more") },
    ]);
    for (const [absorption, growth] of [
      [0.5, 0.02],
      [0.51, 0.021],
      [0.3, undefined],
    ] as const) {
      expect(dry(absorption, growth)).toEqual([]);
    }
    expect(said({ ...stoneware, moistureExpansionPercent: 0.5 })).toEqual([]);
    expect(said({ ...stoneware, youngsGPa: 390 })).toEqual([]);
  });
  it("absorption half below or half above its class, by how much; of no class nothing", () => {
    expect(said({ ...stoneware, absorptionPercent: 8.6 })).toMatchObject([
      { pointer: "/body/absorptionPercent", message: expect.stringContaining("is 3.6 % outside") },
    ]);
    const thirsty = listBodies().find(({ absorptionPercent: usual }) => usual && usual[0] > 4)!;
    const low = thirsty.absorptionPercent![0];
    const least = low / 2 - 1;
    expect(said({ class: thirsty.id, absorptionPercent: least }).filter(isAbsorption)).toEqual([]);
    expect(said({ class: thirsty.id, absorptionPercent: least - 0.1 }).filter(isAbsorption)).toMatchObject([
      { message: expect.stringContaining(`is ${Math.round((low - least + 0.1) * 10) / 10} % outside`) },
    ]);
    expect(said({ expansion: { value: 6 }, absorptionPercent: 30 })).toEqual([]);
  });
  it("minerals of a class never disagree with a mean; counted ones over its own range, and how much they make up", () => {
    // 0.13·0.68 of quartz strain over 20–700 °C is nearly all of 2 ×10⁻⁶/K.
    expect(said({ ...stoneware, expansion: { value: 2, rangeC: [20, 700], plusMinus: 0.2 } })).toEqual([]);
    const stated = { value: 6, rangeC: [400, 500] as const, plusMinus: 0.2 };
    const rest = 0.75 * 6e-6 * 100 - 0.005 * (cristobalite(500) - cristobalite(400));
    const limit = (100 * rest) / (0.68 * (quartz(500) - quartz(400))) / (2450 / 2650);
    const counted = (quartzPercent: number) => said({ ...stoneware, expansion: stated, quartzPercent });
    expect(counted(limit - 0.1).filter(({ pointer }) => pointer === "/body/quartzPercent")).toEqual([]);
    const beyond = counted(limit + 0.1).filter(({ pointer }) => pointer === "/body/quartzPercent");
    expect(beyond).toMatchObject([{ message: expect.stringContaining("make up 4.5 of the 6") }]);
  });
  it("quartz of a class by itself, in per cent", () => {
    for (const row of listBodies()) {
      const middle = (row.quartzFraction[0] + row.quartzFraction[1]) / 2;
      const told = said({ class: row.id }).filter(({ code }) => code === "dunting-quartz");
      expect(told, row.id).toHaveLength(middle >= 0.22 ? 1 : 0);
      if (told[0]) expect(told[0].message).toContain(`about ${Math.round(middle * 100)} % quartz`);
    }
    expect(said({ ...stoneware, cristobalitePercent: 20 }).at(-1)!.message).toContain("about 21 % cristobalite");
  });
  it("growth of any body, 0–0.06 %, where a class has no figure", () => {
    const unknown = listBodies().find((row) => row.moistureExpansionPercent === null);
    if (unknown) close(at(describeBody({ class: unknown.id }).moisturePercent, Z90), 0.06, tiny);
    close(at(describeBody({ expansion: { value: 6 } }).moisturePercent, Z90), 0.06, tiny);
  });
  const isAbsorption = ({ pointer }: { pointer?: string }) => pointer === "/body/absorptionPercent";
});

describe("refusals help", () => {
  it("with what is allowed and what was probably meant", () => {
    expect(issuesOf({ class: "red-stonware" })).toMatchObject([
      { suggestion: "red-stoneware", allowed: listBodies().map(({ id }) => id) },
    ]);
    expect(issuesOf({ phases: { kwartz: 20, glass: 80 } })).toMatchObject([
      { suggestion: "quartz", allowed: Object.keys(phaseData.phases) },
    ]);
    expect(issuesOf({ expansion: { value: 600 } })).toMatchObject([{ suggestion: "6", allowed: [-2, 20] }]);
    const [none] = issuesOf({ expansion: { value: Number.NaN } });
    expect(none).not.toHaveProperty("suggestion");
    expect(none!.message).not.toContain("may mean");
  });
  it("at the place, once", () => {
    const curve = (a: number, b: number) => [
      { c: a, strainPercent: 0 },
      { c: b, strainPercent: 0.1 },
    ];
    expect(issuesOf({ curve: curve(20, 100) })).toMatchObject([{ pointer: "/body/curve", message: /20 to 100 °C/ }]);
    expect(issuesOf({ curve: curve(-60, 100) })).toMatchObject([{ pointer: "/body/curve/0/c", message: /−50/ }]);
    expect(issuesOf({ curve: [{ c: 20, strainPercent: 0 }] })).toHaveLength(1);
    expect(issuesOf({ phases: { quartz: 0 } })).toMatchObject([{ pointer: "/body/phases", message: /nothing/ }]);
    expect(issuesOf({ phases: { kwartz: 120 } })).toHaveLength(1);
    expect(issuesOf({ phases: { quartz: -5, glass: 20 } })).toMatchObject([{ pointer: "/body/phases/quartz" }]);
    expect(issuesOf({ phases: { kwartz: 0 } })).toHaveLength(1);
  });
});

describe("curves and phases in full", () => {
  it("a curve counted from another length is the same curve", () => {
    const from = (zero: number) =>
      describeBody({
        curve: [
          { c: 20, strainPercent: zero },
          { c: 300, strainPercent: zero + 0.15 },
          { c: 600, strainPercent: zero + 0.4 },
        ],
        plusMinusPercent: 0.02,
      });
    for (const c of [100, 500, 800]) {
      close(contractionAt(from(0.3), c), contractionAt(from(0), c), { abs: 1e-12 });
      close(contractionAt(from(0.3), c, { bodyMean: 1 }), contractionAt(from(0), c, { bodyMean: 1 }), { abs: 1e-12 });
    }
    expect(from(0).sources).toEqual([]);
  });
  it("phases mix by Kerner's rule, quartz with 0.68 beside glass; sources are those of the phases", () => {
    const q = PHASES.get("quartz")!;
    const g = PHASES.get("glass")!;
    const body = describeBody({ phases: { quartz: 30, glass: 70 } });
    const stiff = (bulk: number) => bulk / (3 * bulk + 4 * g.shearPa);
    const top = 0.3 * stiff(q.bulkPa) * 0.68 * q.strain(500) + 0.7 * stiff(g.bulkPa) * g.strain(500);
    close(contractionAt(body, 500), top / (0.3 * stiff(q.bulkPa) + 0.7 * stiff(g.bulkPa)), { rel: 1e-9 });
    expect(new Set(body.sources)).toEqual(new Set([...q.sources, ...g.sources]));
    expect(body.expansion.rangeC).toEqual([20, 500]);
    expect(describeBody({ phases: { mullite: 40 } }).warnings[0]!.message).toMatch(/add up to 40 %.* other 60 %/);
  });
  it("quartz parts from 20 % glass by volume as in vitrified bodies, from half as much half as far, from none not at all", () => {
    const at600 = (glass: number, factor: number) => {
      const phases = { quartz: 60, mullite: 40 - glass, glass };
      close(contractionAt(describeBody({ phases }), 600), mixtureStrain(phases, 600, { quartzFactor: factor }).kerner, {
        rel: 1e-9,
      });
    };
    at600(30, 0.68);
    at600(20, 0.68);
    at600(10, 0.84);
    at600(0, 1);
  });
  it("phases with hardly any glass are doubted: an analysis of crystals alone comes to 100 % without it", () => {
    for (const [glass, told] of [
      [0, true],
      [4.9, true],
      [5, false],
    ] as const) {
      expect(codes({ phases: { quartz: 60, mullite: 40 - glass, glass } }).includes("little-glass"), `${glass} %`).toBe(
        told,
      );
    }
  });
  it("a body of unknown class is in more doubt than one of a class, in every way (docstring: broad on purpose)", () => {
    const expansion = { value: 6, rangeC: [20, 500] as const, plusMinus: 0.2 };
    const unknown = describeBody({ expansion });
    const told = describeBody({ expansion, class: "red-stoneware" });
    for (const fact of ["youngsGPa", "ruptureMPa", "moisturePercent"] as const) {
      expect(unknown[fact].sd, fact).toBeGreaterThan(told[fact].sd);
    }
    for (const input of ["bodyQuartz", "bodyCristobalite"] as const) {
      const moved = (body: typeof told) =>
        Math.abs(contractionAt(body, 600, { [input]: 1 }) - contractionAt(body, 600));
      expect(moved(unknown), input).toBeGreaterThan(moved(told));
    }
    // Poisson's ratio of fired clay: 0.15 to 0.25 (data/bodies/classes.json).
    expect(unknown.poisson).toBeGreaterThan(0.15);
    expect(unknown.poisson).toBeLessThan(0.25);
    expect(unknown.sources).toEqual([]);
  });
  it("a phase measured in ceramics is scaled to that mean", () => {
    for (const [id, row] of Object.entries(phaseData.phases) as [string, { ceramicMean20To1000?: number }][]) {
      if (!row.ceramicMean20To1000) continue;
      close(PHASES.get(id)!.strain(1000), row.ceramicMean20To1000 * 980e-6, { rel: 1e-9, label: id });
    }
  });
});
