/** Running: worked examples of the docstrings, what is assumed, what is refused, what each part of the answer says. */
import { describe, expect, it } from "vitest";
import { analyseGlaze } from "../../api/engine/chemistry/index.ts";
import { appenDensity, viscosityCurve } from "../../api/engine/glass/index.ts";
import { quantileOf } from "../../api/engine/quantity.ts";
import { runDraws } from "../../api/engine/running/draws.ts";
import {
  CONES,
  coneEnd,
  edgeAdvance,
  estimateRunning,
  filmProfile,
  flowShares,
  frontAdvance,
  type MadeGlaze,
  meanVelocity,
  minutesAbove,
  mixedShare,
  mixingLength,
  passingThickness,
  type RunningRequest,
  readTimeline,
  rollHeight,
  rollLength,
  stiffening,
  surfaceVelocity,
} from "../../api/engine/running/index.ts";
import { THAW } from "../../api/schemas/larch-lane.ts";
import { CLOUDBURST, CLOUDBURST_OVER_THAW } from "../../api/schemas/larch-lane-running.ts";
import sources from "../../data/sources.json" with { type: "json" };
import { close } from "../support/close.ts";
import { issuesOf as issuesIn } from "../support/refusals.ts";

const firing = { peakC: 1240, heatingCPerHour: 80, holdMinutes: 20, coolingCPerHour: 150 };
const wall = { slopeDeg: 90, glazedMm: 100, clearanceMm: 3 };
const thaw: RunningRequest = { glaze: THAW, firing, wall };
const issuesOf = (request: unknown) => issuesIn(() => estimateRunning(request as RunningRequest));

describe("worked examples", () => {
  it("of the docstrings", () => {
    const film = { thicknessM: 0.3e-3, viscosityPaS: 1e3, densityKgPerM3: 2500 };
    close(meanVelocity(film), 7.35e-7, { abs: 0.005e-7 });
    close(surfaceVelocity(film), 1.1e-6, { abs: 0.05e-6 });
    close(frontAdvance(0.00132, 0.1), 0.00132);
    close(passingThickness(14700, 0.1, 0.003), 0.00045, { abs: 0.000005 });
    expect(filmProfile(0, 0.3e-3, 0.1, [0.05])).toEqual([0.0003]);
    close(rollLength(0.35, 0.3e-3, 24500), 0.00162, { abs: 0.000005 });
    close(rollHeight(0.3e-3, 0.0032, 0.0016, 1.5), 0.0004, { abs: 0.000005 });
    close(edgeAdvance(0.01, 0.1, 0, 1.5), 0.01);
    close(stiffening(0.1), 0.157, { abs: 0.0005 });
    expect(flowShares([0.2, 0.2])).toEqual([0.875, 0.125]);
    close(mixingLength(1.8, 1240, 0.3e-9), 1.58e-5, { abs: 0.005e-5 });
    close(mixedShare(0.00002, [0.0002, 0.0002]), 0.1, { rel: 1e-12 });
    expect(coneEnd("6", 60).peakC).toBe(1211.5);
    expect(readTimeline({ peakC: 1240 }).legs).toHaveLength(2);
    const amounts = { SiO2: 70, Al2O3: 8, CaO: 12, K2O: 5, Na2O: 5 };
    expect(
      estimateRunning({ glaze: { oxides: { basis: "molePercent", amounts } }, firing: { peakC: 1240 } }).catchPlate,
    ).toBe(false);
  });
});

describe("a firing", () => {
  it("adds up its minutes", () => {
    const { legs, peakC } = readTimeline({
      segments: [
        { toC: 1120, cPerHour: 100 },
        { toC: 1220, cPerHour: 50, holdMinutes: 30 },
        { toC: 1020, cPerHour: 200 },
        { toC: 20, cPerHour: 100 },
      ],
    });
    expect(peakC).toBe(1220);
    // 11 h + 2 h + 0.5 h + 1 h + 10 h, and above 1120 °C: 2 h + 0.5 h + 0.5 h (derived).
    close(legs.reduce((sum, { seconds }) => sum + seconds, 0) / 3600, 24.5, { rel: 1e-12 });
    close(minutesAbove(legs, 1120), 180, { rel: 1e-12 });
  });

  it("is let cool where its segments end hot, and says so", () => {
    const { legs, warnings } = readTimeline({ segments: [{ toC: 1200, cPerHour: 100 }] });
    expect(legs.at(-1)).toMatchObject({ fromC: 1200, toC: 20 });
    expect(warnings[0]?.message).toContain("150 °C an hour");
  });

  it("by cone states what it took, and that a cone is no temperature", () => {
    const { warnings, firing } = estimateRunning({ ...thaw, firing: { ...firing0, cone: "6" } });
    expect(firing.peak).toMatchObject({ value: 1212, unit: "°C" });
    const said = warnings.find(({ code }) => code === "cone-as-peak");
    expect(said?.pointer).toBe("/firing/cone");
    expect(said?.message).toContain("heat-work, not a temperature");
  });
  const firing0 = { heatingCPerHour: 60, coolingCPerHour: 150 };

  it("knows its cones in order, coolest first", () => {
    expect(CONES[0]).toBe("022");
    expect(CONES.at(-1)).toBe("14");
    expect(CONES.indexOf("01")).toBe(CONES.indexOf("1") - 1);
    const peaks = CONES.map((cone) => coneEnd(cone, 150).peakC);
    expect(peaks).toEqual([...peaks].sort((a, b) => a - b));
  });

  it("is the same by peak, by cone and by segments", () => {
    const byPeak = estimateRunning({ ...thaw, firing: { peakC: 1240, heatingCPerHour: 80, coolingCPerHour: 150 } });
    const bySegments = estimateRunning({
      ...thaw,
      firing: {
        segments: [
          { toC: 1240, cPerHour: 80 },
          { toC: 20, cPerHour: 150 },
        ],
      },
    });
    expect(bySegments.run).toEqual(byPeak.run);
    expect(bySegments.firing.path).toEqual(byPeak.firing.path);
  });
});

describe("the answer", () => {
  const report = estimateRunning(thaw);

  it("has an interval on every quantity, and every source is listed", () => {
    const walk = (value: unknown, at: string): void => {
      if (value === null || typeof value !== "object") {
        if (typeof value === "number") expect(Number.isFinite(value), at).toBe(true);
        return;
      }
      const q = value as { value?: number; low?: number; high?: number; unit?: string };
      if (q.unit !== undefined) {
        expect(q.low!, at).toBeLessThanOrEqual(q.value!);
        expect(q.high!, at).toBeGreaterThanOrEqual(q.value!);
        expect(q.unit, at).not.toBe("");
      }
      for (const [key, each] of Object.entries(value)) walk(each, `${at}/${key}`);
    };
    const full = estimateRunning(CLOUDBURST_OVER_THAW);
    for (const each of [report, full]) {
      walk(each, "");
      for (const key of each.sources) expect(Object.keys(sources.sources), key).toContain(key);
      for (const { source } of each.faults) expect(each.sources).toContain(source);
    }
  });

  it("follows the viscosity down and up again", () => {
    const { path } = report.firing;
    expect(path.length).toBeGreaterThan(30);
    expect(path.length).toBeLessThan(160);
    const runniest = path.reduce((a, b) => (a.logViscosity < b.logViscosity ? a : b));
    expect(runniest.c).toBe(1240);
    for (const { logViscosity, low, high } of path) {
      expect(low).toBeLessThanOrEqual(logViscosity);
      expect(high).toBeGreaterThanOrEqual(logViscosity);
      expect(logViscosity).toBeLessThanOrEqual(12.1);
    }
    const times = path.map(({ minutes }) => minutes);
    expect(times).toEqual([...times].sort((a, b) => a - b));
    close(report.viscosityAtPeak.value, runniest.logViscosity, { abs: 0.01 });
  });

  it("is the closed form, put together by hand for a soak that does nearly all of it", () => {
    const soak = {
      segments: [
        { toC: 1240, cPerHour: 20000, holdMinutes: 60 },
        { toC: 20, cPerHour: 20000 },
      ],
    };
    const { run, roll, flow } = estimateRunning({ ...thaw, firing: soak });
    const { moleFractions } = analyseGlaze(THAW);
    const viscosityPaS = 10 ** quantileOf(viscosityCurve(moleFractions).logViscosity(1240), 0.5);
    // Middles of what is uncertain: solids 7.5 %, melt 0.95 as dense as the cold glass, a roll of 1.525.
    const densityKgPerM3 = 950 * appenDensity(moleFractions).value!;
    const stiff = viscosityPaS * (1 - 1.35 * 0.075) ** -2.5;
    const free = meanVelocity({ thicknessM: 0.3e-3, viscosityPaS: stiff, densityKgPerM3 }) * 3600;
    const length = rollLength(0.332, 0.3e-3, densityKgPerM3 * 9.80665);
    const why = "medians of what is uncertain, one by one; the ramps add 3 minutes";
    close(flow.value, free * 1e3, { rel: 0.08, why });
    close(run.value, edgeAdvance(free, 0.1, length, 1.525) * 1e3, { rel: 0.1, why });
    close(roll.value, rollHeight(0.3e-3, free, length, 1.525) * 1e3, { rel: 0.05, why });
  });

  it("is surer where less is uncertain", () => {
    const width = (request: RunningRequest) => {
      const { run } = estimateRunning(request);
      return Math.log(run.high / run.low);
    };
    const thick: RunningRequest = { ...thaw, glaze: { ...THAW, thicknessMm: 0.8 } };
    // The same peak by cone, which the tables put ± 21 °C, and as stated, ± 10 °C.
    const cone = { cone: "6", heatingCPerHour: 60, coolingCPerHour: 150 };
    const stated = { peakC: coneEnd("6", 60).peakC, heatingCPerHour: 60, coolingCPerHour: 150 };
    expect(width({ ...thick, firing: cone })).toBeGreaterThan(width({ ...thick, firing: stated }) + 0.02);
    // The same glass by its oxides, which bring no spread of materials.
    const { fired } = analyseGlaze(THAW);
    const known = { oxides: { basis: "weightPercent" as const, amounts: fired.weightPercent }, thicknessMm: 0.8 };
    expect(width(thick)).toBeGreaterThan(width({ ...thick, glaze: known }) + 0.01);
    const { meltMinutes } = report.firing;
    expect(meltMinutes.low).toBeLessThan(meltMinutes.value - 10);
    expect(meltMinutes.high).toBeGreaterThan(meltMinutes.value + 10);
  });

  it("draws each doubt by itself", () => {
    const { normal } = runDraws(1, [-1, 1]);
    const names = Object.keys(normal) as (keyof typeof normal)[];
    const pairs = names.flatMap((a, i) => names.slice(i + 1).map((b) => [a, b] as const));
    for (const [a, b] of pairs) {
      const product = normal[a].reduce((sum, z, i) => sum + z * normal[b][i]!, 0) / normal[a].length;
      expect(Math.abs(product), `${a} and ${b}`).toBeLessThan(0.05);
    }
  });

  it("advises a catch plate above one chance in ten, and not below", () => {
    for (const thicknessMm of [0.2, 0.3, 0.4, 0.5, 0.6, 0.8]) {
      const { reachesShelf, catchPlate } = estimateRunning({ ...thaw, glaze: { ...THAW, thicknessMm } });
      expect(catchPlate).toBe(reachesShelf > 0.1);
    }
  });

  it("names a band that holds nineteen times in twenty", () => {
    const thick = { ...thaw, glaze: { ...THAW, thicknessMm: 0.6 } };
    const { bareBandMm } = estimateRunning(thick);
    expect(bareBandMm).toBeGreaterThan(3);
    const { reachesShelf } = estimateRunning({ ...thick, wall: { ...wall, clearanceMm: bareBandMm } });
    expect(reachesShelf).toBeLessThanOrEqual(0.05);
    const less = estimateRunning({ ...thick, wall: { ...wall, clearanceMm: bareBandMm - 1 } });
    expect(less.reachesShelf).toBeGreaterThan(0.05);
  });

  it("names the thickness that reaches the shelf half the time", () => {
    const thicknessMm = report.reachingThickness!.value;
    const { reachesShelf } = estimateRunning({ ...thaw, glaze: { ...THAW, thicknessMm } });
    close(reachesShelf, 0.5, { abs: 0.06, why: "the spread of the thickness is not even about its middle" });
  });

  it("runs farther in a second firing, and farther still under a new coat", () => {
    expect(report.refiring.run.value).toBeGreaterThan(2 * report.run.value);
    const coated = estimateRunning({ ...thaw, refiring: { coats: [{ glaze: THAW }] } });
    expect(coated.refiring.run.value).toBeGreaterThan(2 * report.refiring.run.value);
    expect(coated.refiring.advice.map(({ text }) => text).join()).toContain("drinks no water");
    expect(new Set(coated.refiring.advice.map(({ source }) => source))).toEqual(new Set(["common-practice"]));
    expect(coated.faults[0]).toMatchObject({ id: "over-fired-glaze", likelihood: "likely" });
    expect(coated.run).toEqual(report.run);
    expect(report.refiring.layers).toBeNull();
    expect(coated.refiring.layers?.interfaces[0]?.coats).toEqual([1, 2]);
  });

  it("tells what slows it, strongest first, each by working it out anew", () => {
    const ids = report.slows.map(({ id }) => id);
    expect(ids.sort()).toEqual(["cooler", "more-alumina", "shorter-soak", "thinner-coat"]);
    for (const { factor } of report.slows) expect(factor).toBeLessThan(1);
    const cooler = estimateRunning({ ...thaw, firing: { ...firing, peakC: 1230 } });
    const lever = report.slows.find(({ id }) => id === "cooler")!;
    close(cooler.run.value, lever.run.value, {
      rel: 0.03,
      why: "the lever shifts the whole firing, this only its peak",
    });
    const thin = estimateRunning({ ...thaw, glaze: { ...THAW, thicknessMm: 0.24 } });
    expect(thin.run).toEqual(report.slows.find(({ id }) => id === "thinner-coat")!.run);
    expect(estimateRunning({ ...thaw, firing: { peakC: 1240 } }).slows.map(({ id }) => id)).not.toContain(
      "shorter-soak",
    );
  });

  it("lies still on the level, with a warning", () => {
    const level = estimateRunning({ ...thaw, wall: { ...wall, slopeDeg: 0 } });
    expect(level.run).toMatchObject({ value: 0, low: 0, high: 0 });
    expect(level.headline).toContain("does not run");
    expect(level.reachingThickness).toBeNull();
    expect(level.warnings.map(({ code }) => code)).toContain("level-ground");
  });

  it("answers for a firing that is far too cool", () => {
    const cool = estimateRunning({ ...thaw, firing: { peakC: 600 } });
    expect(cool.run.high).toBe(0);
    expect(cool.headline).toContain("does not melt out");
    expect(cool.firing.meltMinutes.value).toBe(0);
  });
});

describe("a stack", () => {
  const bare = { recipe: THAW.recipe, thicknessMm: 0.2 };
  const soft = { ...CLOUDBURST, thicknessMm: 0.2 };
  const stack = (...glazes: MadeGlaze[]) =>
    estimateRunning({ coats: glazes.map((glaze) => ({ glaze })), firing, wall });
  const over = stack(soft, bare);

  it("minds the order: a soft coat next to the clay carries the rest", () => {
    const under = stack(bare, soft);
    expect(under.layers!.separate.value).toBeGreaterThan(2 * over.layers!.separate.value);
    const why = "the roll takes the outer coat's surface tension";
    close(over.layers!.reversed.value, under.layers!.separate.value, { rel: 0.005, why });
    expect(over.layers!.text).toContain("carries the rest");
    expect(under.layers!.interfaces[0]!.text).toContain("carries the upper down");
    expect(over.layers!.interfaces[0]!.text).toContain("slides over");
    // Melted into one, the order is forgotten.
    close(under.layers!.mixed.value, over.layers!.mixed.value, { rel: 0.02, why });
  });

  it("counts its coats as they were given, the outer one first", () => {
    const three = stack(soft, bare, { ...soft, thicknessMm: 0.1 }).layers!.interfaces;
    expect(three.map(({ coats }) => coats).sort()).toEqual([
      [1, 2],
      [2, 3],
    ]);
    const [upper, lower] = [...three].sort((a, b) => a.coats[0] - b.coats[0]);
    expect(upper!.viscosity.value).toBeLessThan(-0.1);
    expect(lower!.viscosity.value).toBeGreaterThan(0.1);
  });

  it("lies between its bounds", () => {
    const { run, layers } = over;
    const ends = [layers!.separate.value, layers!.mixed.value].sort((a, b) => a - b);
    expect(run.value).toBeGreaterThanOrEqual(ends[0]! - 0.01);
    expect(run.value).toBeLessThanOrEqual(ends[1]! + 0.01);
    expect(layers!.mixingLength.value).toBeGreaterThan(0.001);
    expect(layers!.mixingLength.high).toBeLessThan(0.4);
  });

  it("mixes its coats by weight: a fifth of one and four fifths of the other", () => {
    const thinOver = stack({ ...soft, thicknessMm: 0.1 }, { ...bare, thicknessMm: 0.4 });
    const [a, b] = [soft, bare].map((glaze) => analyseGlaze(glaze).fired.weightPercent) as [
      Record<string, number>,
      Record<string, number>,
    ];
    const amounts = Object.fromEntries(
      [...new Set([...Object.keys(a), ...Object.keys(b)])].map((oxide) => [
        oxide,
        0.2 * (a[oxide] ?? 0) + 0.8 * (b[oxide] ?? 0),
      ]),
    );
    const one = estimateRunning({
      glaze: { oxides: { basis: "weightPercent", amounts }, thicknessMm: 0.5 },
      firing,
      wall,
    });
    const why = "the coats differ in density by a few parts in a thousand, and two vary less than one";
    close(thinOver.layers!.mixed.value, one.run.value, { rel: 0.1, why });
    close(thinOver.viscosityAtPeak.value, one.viscosityAtPeak.value, { abs: 0.02, why });
  });

  it("of one glaze twice is that glaze, twice as thick", () => {
    const twice = stack(bare, bare);
    const once = estimateRunning({ glaze: { ...bare, thicknessMm: 0.4 }, firing, wall });
    close(twice.layers!.separate.value, twice.layers!.mixed.value, { rel: 1e-3 });
    close(twice.run.value, once.run.value, {
      rel: 0.1,
      why: "two coats differ each on its own, so the stack varies less",
    });
    close(twice.layers!.interfaces[0]!.expansion.value, 0);
  });

  it("takes its thickness from how it was put on, and says whose word that is", () => {
    const { thickness, warnings } = estimateRunning({
      coats: [{ glaze: { recipe: THAW.recipe }, application: "brush", coats: 3 }],
      firing,
      wall,
    });
    expect(thickness).toMatchObject({ value: 0.33, low: 0.21, high: 0.45, unit: "mm" });
    expect(warnings[0]).toMatchObject({ code: "thickness-from-application", pointer: "/coats/0/application" });
    expect(warnings[0]?.message).toContain("common practice, no source");
  });
});

describe("the checklist", () => {
  const ids = (request: RunningRequest, likelihood: string) =>
    estimateRunning(request)
      .faults.filter((line) => line.likelihood === likelihood)
      .map(({ id }) => id);

  it("never gives a number for the chance, and says where each line comes from", () => {
    for (const line of estimateRunning(thaw).faults) {
      expect(["likely", "possible", "unlikely"]).toContain(line.likelihood);
      expect(line.source).not.toBe("");
      for (const words of [line.cause, line.check, line.remedy]) expect(words).toMatch(/\.$/);
      expect(JSON.stringify(line)).not.toMatch(/chance|probability|in 20/);
    }
  });

  it("is ranked, likeliest first", () => {
    const order = ["likely", "possible", "unlikely"];
    const ranks = estimateRunning(CLOUDBURST_OVER_THAW).faults.map(({ likelihood }) => order.indexOf(likelihood));
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
  });

  it("sees clay, fluffy powders, gas, thickness, stiff melts and once-fired clay", () => {
    const clayey = {
      recipe: [
        { material: "kaolin", parts: 35 },
        { material: "potash-feldspar", parts: 30 },
        { material: "whiting", parts: 25 },
        { material: "magnesium-carbonate", parts: 10 },
      ],
      thicknessMm: 1.2,
    };
    const likely = ids({ ...thaw, glaze: clayey, bisque: false }, "likely");
    expect(likely).toEqual(
      expect.arrayContaining([
        "clay-shrinks",
        "fluffy-powders",
        "thick-coat",
        "gas-from-the-glaze",
        "gas-from-the-clay",
      ]),
    );
    expect(ids({ ...thaw, firing: { peakC: 1000 } }, "likely")).toEqual(
      expect.arrayContaining(["stiff-at-peak", "stiff-melt-keeps-holes", "short-melt"]),
    );
  });

  it("warns of food surfaces where a fault is likely", () => {
    const codes = (request: RunningRequest) => estimateRunning(request).cautions.map(({ code }) => code);
    expect(codes({ ...thaw, glaze: { ...THAW, thicknessMm: 1.2 } })).toContain("bare-or-pitted-food-surface");
    expect(codes(thaw)).not.toContain("bare-or-pitted-food-surface");
  });
});

describe("a later heat", () => {
  const at = (peakC: number, kind: "decal" | "lustre" = "decal") =>
    estimateRunning({ ...thaw, laterHeat: [{ kind, peakC }] }).laterHeat[0]!;

  it("keeps the stress when cool and sets it anew when hot", () => {
    expect(at(450).stress).toBe("kept");
    expect(at(800).stress).toBe("set-anew");
    const shares = [450, 550, 600, 650, 700, 800].map((c) => at(c).relaxed.value);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(at(800).text).toContain("judge the fit with this cooling");
  });

  it("passes the clay's steps again, slowly", () => {
    expect(
      at(800)
        .advice.map(({ text }) => text)
        .join(),
    ).toContain("573 °C");
    expect(
      at(500)
        .advice.map(({ text }) => text)
        .join(),
    ).not.toContain("573 °C");
    const report = estimateRunning({ ...thaw, laterHeat: [{ kind: "lustre", peakC: 720 }] });
    expect(report.cautions.map(({ code }) => code)).toContain("kiln-fumes");
  });
});

describe("what cannot be", () => {
  it.each([
    [{ firing }, "/glaze", "which glaze"],
    [{ ...thaw, coats: [{ glaze: THAW }] }, "/glaze", "not both"],
    [{ glaze: THAW }, "/firing", "how hot"],
    [{ ...thaw, firing: { cone: "6", peakC: 1220 } }, "/firing", "not several"],
    [{ ...thaw, firing: { cone: "6.3" } }, "/firing/cone", "no cone 6.3"],
    [{ ...thaw, firing: { cone: "constructor" } }, "/firing/cone", "no cone"],
    [{ ...thaw, firing: { peakC: 2260 } }, "/firing/peakC", "1700"],
    [{ ...thaw, firing: { segments: [{ toC: 300, cPerHour: 100 }] } }, "/firing/segments", "No glaze melts"],
    [{ ...thaw, firing: { segments: [{ toC: 20, cPerHour: 100 }] } }, "/firing/segments/0/toC", "goes nowhere"],
    [{ ...thaw, firing: { segments: [{ toC: 1200, cPerHour: 9 }], holdMinutes: 5 } }, "/firing/holdMinutes", "already"],
    [{ ...thaw, glaze: { ...THAW, thicknessMm: 30 } }, "/glaze/thicknessMm", "0.01 and 5"],
    [{ firing, coats: [{ glaze: THAW, application: "dip" }] }, "/coats/0/application", "not both"],
    [{ firing, coats: [] }, "/coats", "1 to 6"],
    [{ ...thaw, wall: { slopeDeg: 120 } }, "/wall/slopeDeg", "0 and 90"],
    [{ ...thaw, laterHeat: [{ kind: "decal", peakC: 1250 }] }, "/laterHeat/0/peakC", "refiring"],
    [{ ...thaw, refiring: { firing: { cone: "99" } } }, "/refiring/firing/cone", "no cone 99"],
    [{ ...thaw, glaze: { recipe: [{ material: "whitting", parts: 10 }] } }, "/glaze/recipe/0/material", "whiting"],
  ])("%j", (request, pointer, words) => {
    const issue = issuesOf(request).find((one) => one.pointer === pointer);
    expect(`${issue?.message} ${issue?.suggestion}`).toContain(words);
  });

  it("is told all at once", () => {
    const bad = { glaze: { ...THAW, thicknessMm: -1 }, firing: { peakC: 99 }, wall: { glazedMm: 0, clearanceMm: -3 } };
    expect(issuesOf(bad)).toHaveLength(4);
  });
});
