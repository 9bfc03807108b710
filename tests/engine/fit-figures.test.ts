/** What a fit tells beside its draws, worked out again from the documented formulas at the centre of the doubt. */
import { describe, expect, it } from "vitest";
import { contractionAt } from "../../api/engine/body/index.ts";
import {
  bilayerStress,
  checkFit,
  type FitRequest,
  glassContraction,
  straightWallStress,
  YEAR_S,
} from "../../api/engine/fit/index.ts";
import { prepare } from "../../api/engine/fit/situation.ts";
import { quantileOf } from "../../api/engine/quantity.ts";
import mechanics from "../../data/fit/mechanics.json" with { type: "json" };
import { close } from "../support/close.ts";

const Z90 = 1.6448536269514722;
const glaze = (value: number, thicknessMm: number) => ({
  expansion: { value, rangeC: [20, 300] as const, plusMinus: 0.4 },
  thicknessMm,
});
const plain: FitRequest = {
  glaze: glaze(6.5, 0.3),
  body: { class: "red-stoneware", expansion: { value: 6.2, rangeC: [20, 500], plusMinus: 0.3 } },
  include: ["curves", "profile"],
};
const requests: [string, FitRequest][] = [
  ["both faces", plain],
  [
    "one face for a year",
    { ...plain, glaze: glaze(7.4, 0.15), ware: { glazed: "one-face", serviceYears: 1, wallMm: 4 } },
  ],
  [
    "free to bend, sharp edge",
    { ...plain, glaze: glaze(5, 0.6), ware: { glazed: "one-face-free", edgeRadiusMm: 0.5 } },
  ],
  [
    "an opaque recipe, whose materials and crystals are doubted",
    {
      ...plain,
      glaze: {
        recipe: [
          { material: "potash-feldspar", parts: 45 },
          { material: "silica", parts: 20 },
          { material: "whiting", parts: 18 },
          { material: "zircon", parts: 17 },
        ],
        thicknessMm: 0.4,
      },
    },
  ],
  ["a borosilicate on porous clay", { ...plain, body: { class: "red-earthenware" }, ware: { serviceYears: 0.02 } }],
];

describe.each(requests)("%s", (_what, request) => {
  const { situation: s } = prepare(request);
  const report = checkFit(request);
  const youngs = quantileOf(s.youngsGPa, 0.5) * 1e9;
  const nu = mechanics.poisson.value;
  const plane = [youngs / (1 - nu ** 2), (s.body.youngsGPa.value * 1e9) / (1 - s.body.poisson ** 2)] as const;
  const contrast = (plane[0] - plane[1]) / (plane[0] + plane[1]);
  const { start, step, z: table } = mechanics.channelling;
  const i = Math.floor((contrast - start) / step);
  const z = table[i]! + (table[i + 1]! - table[i]!) * ((contrast - start) / step - i);
  const toughness = ([low, high]: readonly number[], deviate = 0) =>
    ((low! + high!) / 2 + (deviate * (high! - low!)) / 2 / Z90) * 1e6;
  const ranges = mechanics.toughness;
  const cracks = (k: number) => k / Math.sqrt(z * s.thicknessM) / 1e6;
  const growing = () => {
    const { speedAtToughnessMPerS: a, exponent, runM } = mechanics.crackGrowth;
    return Math.min((runM / (a * s.serviceYears * YEAR_S)) ** (1 / exponent), 1);
  };
  const growth = (percent: number) => ((percent / 100) * (s.serviceYears / 30) ** 0.25 * youngs) / (1 - nu) / 1e6;
  const thick = (s.thicknessSd * Z90) / 2;

  it("cracks above K/√(Zh); in time above the greater of K0 and what a crack needs to run, less what moisture adds", () => {
    const { cracksOnCooling, mayCrackInTime } = report.thresholds;
    const k = (deviate: number) => cracks(toughness(ranges["alkali-lime"].range, deviate));
    close(cracksOnCooling.value, k(0), { abs: 0.0501 });
    const half = Math.hypot(k(Z90) - k(0), k(0) * thick);
    close(cracksOnCooling.low, k(0) - half, { abs: 0.0501 });
    close(cracksOnCooling.high, k(0) + half, { abs: 0.0501 });
    const creep = (deviate: number) => Math.max(cracks(toughness(ranges.floor.range, deviate)), growing() * k(deviate));
    const middle = creep(0) - growth(s.body.moisturePercent.value);
    const wide = Math.hypot(creep(Z90) - creep(0), creep(0) * thick, growth(s.body.moisturePercent.sd * Z90));
    close(mayCrackInTime.value, middle, { abs: 0.0501 });
    close(mayCrackInTime.low, middle - wide, { abs: 0.0501 });
    close(mayCrackInTime.high, middle + wide, { abs: 0.0501 });
  });

  it("lifts at the weaker of face and edge: at its median, and where one glaze in ten would", () => {
    const { median, logSd } = mechanics.interface;
    const face = (deviate: number) =>
      -Math.sqrt((2 * youngs * median * Math.exp(logSd * deviate)) / ((1 - nu ** 2) * s.thicknessM)) / 1e6;
    const { value, sd } = s.body.ruptureMPa;
    const edge = (deviate: number) =>
      (-Math.max(value + sd * deviate, 1) * mechanics.strength.tensileShare * s.edgeM) / s.thicknessM;
    const lift = (deviate: number) => Math.max(face(deviate), edge(deviate));
    const { edgesMayLift, flakesComeOff } = report.thresholds;
    // 10 % point of the normal distribution: −1.2816 (printed tables, from memory).
    close(edgesMayLift.value, lift(-1.2815515655446), { abs: 0.0501 });
    close(edgesMayLift.high, lift(-1.2815515655446) * (1 - thick), { abs: 0.0501 });
    const half = Math.hypot(lift(Z90) - lift(0), lift(0) * thick);
    close(flakesComeOff.value, lift(0), { abs: 0.0501 });
    close(flakesComeOff.low, lift(0) - half, { abs: 0.0501 });
  });

  it("gives each figure its interval: nine in ten of what was stated or drawn", () => {
    const { glaze: g, body: b, shivering } = report;
    const half = (p: number) => Math.hypot(quantileOf(s.expansion, p) - quantileOf(s.expansion, 0.5), s.recipeSd * Z90);
    close(g.expansion.value, quantileOf(s.expansion, 0.5), { abs: 0.00501 });
    close(g.expansion.low, quantileOf(s.expansion, 0.5) - half(0.05), { abs: 0.00501 });
    close(g.expansion.high, quantileOf(s.expansion, 0.5) + half(0.95), { abs: 0.00501 });
    close(g.thickness.value, s.thicknessM * 1000, { abs: 0.00501 });
    close(g.thickness.high, s.thicknessM * 1000 * (1 + s.thicknessSd * Z90), { abs: 0.00501 });
    close(b.youngs.high, s.body.youngsGPa.value + s.body.youngsGPa.sd * Z90, { abs: 0.0501 });
    const aged = (s.serviceYears / 30) ** 0.25;
    close(b.moistureExpansion.value, s.body.moisturePercent.value * aged, { abs: 5.01e-5 });
    close(b.rupture.value, s.body.ruptureMPa.value, { abs: 0.501 });
    // The wall balances the glaze, the edge feels σt/R: arithmetic on the stress shown, so rounding stays.
    const faces = s.glazed === "both-faces" ? 2 : 1;
    const perWall = (faces * s.thicknessM) / s.wallM;
    if (s.glazed !== "one-face-free") {
      close(b.stress.value, -report.stress.value * perWall, { abs: 0.051 + 0.05 * perWall });
      close(b.stress.low, -report.stress.high * perWall, { abs: 0.051 + 0.05 * perWall });
    } else {
      // Where the piece bends it is what the profile shows right under the glaze.
      const under = report.profile!.find(({ layer }) => layer === "body")!.stressMPa;
      close(b.stress.value, under, { rel: 0.05, why: "the middle of the draws, not the draw of the middles" });
    }
    const perEdge = s.thicknessM / s.edgeM;
    close(shivering!.edgePull.value, -report.stress.value * perEdge, { abs: 0.051 + 0.05 * perEdge });
    close(shivering!.edgeRadiusMm, s.edgeM * 1000, { rel: 1e-9 });
    expect(g.expansionToSetPoint.rangeC).toEqual([20, report.setPoint.value]);
    expect(b.expansionToSetPoint.rangeC).toEqual([20, report.setPoint.value]);
    // Mismatch = (clay − glaze) to the set point; medians of products differ a little from products of medians.
    const length = (report.setPoint.value - 20) * 1e-4;
    close(report.mismatch.value, (b.expansionToSetPoint.value - g.expansionToSetPoint.value) * length, {
      abs: 0.006,
      why: "medians of three samples",
    });
  });

  it("draws both curves: the glaze as it counts on ware to its set point, the clay to 100 °C beyond", () => {
    const { glaze: g, body: b } = report.curves!;
    const drop = mechanics.onWare.mostDrop * 0.5 * Math.min(1, mechanics.onWare.fullUpToMm / 1000 / s.thicknessM);
    const alpha = quantileOf(s.expansion, 0.5) - drop;
    expect(g.at(-1)!.c).toBe(report.setPoint.value);
    close(b.at(-1)!.c, report.setPoint.value + 100, { abs: 1 });
    expect(g.slice(0, 3).map(({ c }) => c)).toEqual([20, 40, 60]);
    for (const { c, strainPercent, lowPercent, highPercent } of g.slice(0, -1)) {
      const strain = (a: number, rise = s.rise.perKelvin) => 100 * glassContraction(a * 1e-6, c, rise, s.rise.anchorC);
      close(strainPercent, strain(alpha), { abs: 5.01e-5 });
      const risen = strain(alpha, s.rise.perKelvin + s.rise.sd * Z90) - strain(alpha);
      const half = (p: number) =>
        Math.hypot(quantileOf(s.expansion, p) - quantileOf(s.expansion, 0.5), s.recipeSd * Z90, drop * 0.9);
      close(lowPercent, strain(alpha) - Math.hypot(strain(half(0.05)), risen), { abs: 5.01e-5 });
      close(highPercent, strain(alpha) + Math.hypot(strain(half(0.95)), risen), { abs: 5.01e-5 });
    }
    for (const { c, strainPercent, lowPercent, highPercent } of b.slice(0, -1)) {
      const middle = contractionAt(s.body, c);
      const moved = ["bodyMean", "bodyQuartz", "bodyCristobalite", "bodyRise"] as const;
      const half = Math.hypot(...moved.map((input) => contractionAt(s.body, c, { [input]: Z90 }) - middle));
      close(strainPercent, 100 * middle, { abs: 5.01e-5 });
      close(lowPercent, 100 * (middle - half), { abs: 5.01e-5 });
      close(highPercent, 100 * (middle + half), { abs: 5.01e-5 });
    }
  });

  it("draws stress through the wall whose forces add up to nothing", () => {
    const profile = report.profile!;
    const both = s.glazed === "both-faces";
    const [t, h] = [s.thicknessM * 1000, s.wallM * 1000];
    const depths = both ? [0, t, t, t + h, t + h, 2 * t + h] : [0, t, t, t + h];
    profile.forEach(({ depthMm }, at) => {
      close(depthMm, depths[at]!, { abs: 1e-4 });
    });
    expect(profile.map(({ layer }) => layer)).toEqual(
      both ? ["glaze", "glaze", "body", "body", "glaze", "glaze"] : ["glaze", "glaze", "body", "body"],
    );
    let force = 0;
    let largest = 0;
    for (let at = 0; at < profile.length; at += 2) {
      const [a, b] = [profile[at]!, profile[at + 1]!];
      const own = ((a.stressMPa + b.stressMPa) / 2) * (b.depthMm - a.depthMm);
      force += own;
      largest = Math.max(largest, Math.abs(own));
    }
    // Moduli across the thickness are those of the biaxial state in both layers: forces balance as they stand.
    close(force, 0, { abs: 0.01 * (h + 2 * t), why: "stresses are rounded to 0.01 MPa" });
    if (s.glazed !== "one-face-free") close(profile[0]!.stressMPa, report.stress.value, { abs: 0.0501 });
    else expect(profile[0]!.stressMPa).not.toBe(profile[1]!.stressMPa);
  });
});

const mean = ([a, b]: readonly [{ stressMPa: number }, { stressMPa: number }]) => (a.stressMPa + b.stressMPa) / 2;

describe("several coats", () => {
  it("are drawn one under the other, on both faces in mirror order, and balance the wall", () => {
    const layers = [glaze(7, 0.2), glaze(5.5, 0.4)];
    for (const glazed of ["both-faces", "one-face", "one-face-free"] as const) {
      const { profile, coats } = checkFit({ ...plain, glaze: { layers }, ware: { glazed } });
      const both = glazed === "both-faces";
      const thick = both ? [0.2, 0.4, 5, 0.4, 0.2] : [0.2, 0.4, 5];
      const pieces = thick.map((_, k) => [profile![2 * k]!, profile![2 * k + 1]!] as const);
      expect(profile).toHaveLength(2 * thick.length);
      let force = 0;
      pieces.forEach(([a, b], k) => {
        close(b.depthMm - a.depthMm, thick[k]!, { abs: 1e-4 });
        expect(a.layer).toBe(thick[k] === 5 ? "body" : "glaze");
        force += mean(pieces[k]!) * thick[k]!;
      });
      close(force, 0, { abs: 0.04, why: "stresses are rounded to 0.01 MPa over 5 mm" });
      close(mean(pieces[0]!), coats![0]!.stress.value, { abs: 0.0501 });
      close(mean(pieces[1]!), coats![1]!.stress.value, { abs: 0.0501 });
      if (both) expect(pieces[4]![0].stressMPa).toBe(pieces[0]![0].stressMPa);
      if (glazed !== "one-face-free") continue;
      // ∫σ z dz of each piece about the outer face, σ straight from a to b: t²(a + 2b)/6 + z₀ t (a + b)/2.
      const moment = pieces.reduce((sum, [a, b], k) => {
        const [t, at] = [thick[k]!, a.depthMm];
        return sum + (t * t * (a.stressMPa + 2 * b.stressMPa)) / 6 + at * t * mean([a, b]);
      }, 0);
      close(moment, 0, { abs: 0.1, why: "stresses are rounded to 0.01 MPa, over 5 mm twice" });
    }
  });
  it("of one kind bend like one coat", () => {
    const ware = { glazed: "one-face-free", wallMm: 2.5 } as const;
    const bent = (made: FitRequest["glaze"]) => checkFit({ ...plain, glaze: made, ware, doubts: { onWare: false } });
    const one = bent(glaze(5, 2));
    const two = bent({ layers: [glaze(5, 0.8), glaze(5, 1.2)] });
    expect(two.probabilities).toEqual(one.probabilities);
    expect(two.thresholds).toEqual(one.thresholds);
    expect([two.body.stress, two.body.splits]).toEqual([one.body.stress, one.body.splits]);
    const faces = ({ profile }: typeof one) => [0, -3, -2, -1].map((i) => profile!.at(i)!.stressMPa);
    const why = "of one coat the stress of its middle mismatch, of two the middles of their stresses, to 0.1 MPa";
    const largest = Math.max(...faces(one).map(Math.abs));
    faces(two).forEach((stress, i) => {
      close(stress, faces(one)[i]!, { abs: 0.06 * largest, why });
    });
  });
});

describe("a glaze thick beside the wall of a piece that bends", () => {
  const request = { ...plain, glaze: glaze(5, 2.5), ware: { glazed: "one-face-free", wallMm: 2.5 } } as const;
  const report = checkFit(request);
  it("is squeezed as a whole and pulled at its surface, so that it cracks where its mean would hold it", () => {
    const [surface, inner] = report.profile!;
    expect(report.stress.value).toBeLessThan(0);
    expect(surface!.stressMPa).toBeGreaterThan(0);
    expect(inner!.stressMPa).toBeLessThan(report.stress.value);
    const straight = checkFit({ ...request, ware: { glazed: "one-face", wallMm: 2.5 } });
    // Even, it would crack from the same K/√(Zh), and sloping from 1.5 (K² d)^⅓ − d/2.
    const even = straight.thresholds.cracksOnCooling.value;
    const d = surface!.stressMPa - inner!.stressMPa;
    const why = "the middle of the draws, not the draw of the middles";
    close(report.thresholds.cracksOnCooling.value, 1.5 * Math.cbrt(even * even * d) - d / 2, { abs: 0.05 * d, why });
    expect(report.thresholds.mayCrackInTime.value).toBeLessThan(straight.thresholds.mayCrackInTime.value);
  });
  it("is told of, with the stress of the face that is pulled harder", () => {
    const of = (asked: FitRequest) => checkFit(asked).reasons.find(({ code }) => code === "sloping-stress");
    const { text, sources } = of(request)!;
    const [surface] = report.profile!;
    const [, told] = /pulled harder stands at \+(\d+)/.exec(text)!;
    close(Number(told), surface!.stressMPa, { abs: 1.5, why: "rounded to 1 MPa; the middle of the draws" });
    // A difference has no sign.
    expect(text).toMatch(/the stress in the glaze differs by \d+\u00a0MPa/);
    expect(sources).toEqual(["beuth-1992", "hutchinson-suo-1992"]);
    expect(of({ ...request, ware: { glazed: "one-face-free" }, glaze: glaze(5, 0.3) })).toBeUndefined();
    expect(of({ ...request, ware: { glazed: "one-face", wallMm: 2.5 } })).toBeUndefined();
  });
});

describe("one layer is one layer", () => {
  it("whether bent or straight, a wall without end is the thin glaze (limit of the formulas)", () => {
    const layers = { glazePa: 70e9, glazePoisson: 0.2, glazeM: 1e-7, bodyPa: 60e9, bodyPoisson: 0.2, wallM: 1 };
    close(bilayerStress(layers, 6e-4).glazeMean, -52.5e6, { rel: 1e-5 });
    close(straightWallStress(layers, 6e-4, 2), -52.5e6, { rel: 1e-5 });
  });
});
