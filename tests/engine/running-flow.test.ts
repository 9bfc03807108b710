/** Melts of known viscosity let run: melt work, one wall worked by hand, what many walls come to, what is drawn. */
import { describe, expect, it } from "vitest";
import type { ViscosityCurve } from "../../api/engine/glass/index.ts";
import type { RunDraws } from "../../api/engine/running/draws.ts";
import {
  edgeAdvance,
  filmProfile,
  frontAdvance,
  joinWork,
  type Leg,
  meltWork,
  minutesAbove,
  mixedShare,
  passingThickness,
  rollHeight,
  rollLength,
  type Timeline,
  workAt,
} from "../../api/engine/running/index.ts";
import { footWords, outcomeOf, reachingWords } from "../../api/engine/running/outcome.ts";
import { meltMinutes, meltPath, viscosityAt } from "../../api/engine/running/path.ts";
import { profileOf } from "../../api/engine/running/profile.ts";
import { type Melt, type RunSample, simulateRun, type WallM } from "../../api/engine/running/simulate.ts";
import { close } from "../support/close.ts";

/** Residuals from −1.97 to 1.97, middle 0, 5 % at −1.8; those above the middle twice as far: 95 % at 3.6. */
const shape = Array.from({ length: 64 }, (_, i) => ((i - 31.5) / 16) * (i > 32 ? 2 : 1));
/** A melt of 10^3 Pa·s at 1200 °C that is a decade stiffer every 50 K, with a scale of doubt in log η. */
const melt = (scale = 0, perK = 0.02): ViscosityCurve => ({
  parameters: { limit: -2, t12K: 1023, fragility: 40 },
  logViscosity: (c) => ({ value: 3 + perK * (1200 - c), scale, shape }),
  temperatureC: (log) => ({ value: 1200 - (log - 3) / perK, scale: scale / perK, shape }),
  warnings: [],
  sources: [],
});
const firing = (...legs: Leg[]): Timeline => ({ legs, peakC: 1200, plusMinusK: 10, from: "", warnings: [] });
const leg = (fromC: number, toC: number, minutes: number): Leg => ({ fromC, toC, seconds: minutes * 60 });

describe("melt work", () => {
  const soak = [leg(1200, 1200, 60)];
  const PER_K = 0.01;
  const known = melt(0, PER_K);
  // A decade in 100 K: ∫ 10^(−0.01 (1200 − T)) dT from T = a to 1200 = (1 − 10^(−0.01 (1200 − a)))/(0.01 ln 10).
  const kelvins = (fromC: number) => (1 - 10 ** (-PER_K * (1200 - fromC))) / (PER_K * Math.LN10);

  it("of a soak is time over viscosity, less by the deviate", () => {
    // 3600 s / 1000 Pa·s.
    const work = meltWork(melt(0.2), soak);
    close(workAt(work, 0), Math.log10(3.6), { abs: 1e-9 });
    close(workAt(work, 1), Math.log10(3.6) - 0.2, { abs: 1e-9 });
    close(workAt(work, -1.5), Math.log10(3.6) + 0.3, { abs: 1e-9 });
  });

  it("grows by the slope of the viscosity with every degree that the kiln is hotter", () => {
    const legs = [leg(20, 1200, 600), ...soak, leg(1200, 20, 400)];
    close(meltWork(known, legs).perKelvin, PER_K, { rel: 1e-6 });
    close(workAt(meltWork(known, legs, 10), 0) - workAt(meltWork(known, legs), 0), 10 * PER_K, { abs: 1e-6 });
    close(workAt(meltWork(known, soak, -10), 0), Math.log10(3.6) - 10 * PER_K, { abs: 1e-9 });
  });

  it.each<[string, Leg[], number]>([
    // Seconds a kelvin times kelvins over 10^3 Pa·s; what is 800 K cooler than the peak adds 10^−8 of it.
    ["up", [leg(20, 1200, 590)], (30 * kelvins(20)) / 1000],
    ["down", [leg(1200, 200, 1000)], (60 * kelvins(200)) / 1000],
    ["up a little", [leg(1150, 1200, 25)], (30 * kelvins(1150)) / 1000],
    ["up by less than a step", [leg(1197, 1200, 1.5)], (30 * kelvins(1197)) / 1000],
    ["up, a soak, and down", [leg(700, 1200, 250), ...soak, leg(1200, 700, 500)], 3.6 + (90 * kelvins(700)) / 1000],
    ["far too cool before", [leg(20, 400, 999), ...soak], 3.6],
  ])("of a firing %s", (_, legs, work) => {
    close(10 ** workAt(meltWork(known, legs), 0), work, {
      rel: 1.1e-6,
      why: "Simpson's rule: (0.01 ln 10 · 5 K)⁴/180",
    });
  });

  it("follows a doubt that is not the same at every temperature", () => {
    // An hour each at 10^3 Pa·s with a tenth, and at 10^3.5 with a half of doubt: 3600 (10^−(3 + 0.1 z) + 10^−(3.5 + 0.5 z)).
    const unlike: ViscosityCurve = {
      ...known,
      logViscosity: (c) => ({ value: c > 1175 ? 3 : 3.5, scale: c > 1175 ? 0.1 : 0.5, shape }),
    };
    const work = meltWork(unlike, [...soak, leg(1150, 1150, 60)]);
    for (const z of [-1.9, -1, 0, 1, 2, 3.9]) {
      const expected = Math.log10(3600 * (10 ** -(3 + 0.1 * z) + 10 ** -(3.5 + 0.5 * z)));
      close(workAt(work, z), expected, { abs: 8e-4, why: "straight lines over a grid: h²/8 · (0.4/2)² ln 10" });
    }
  });

  it("of a stack is that of each coat by its share of the flow", () => {
    const flat = (value: number, perKelvin: number) => ({
      start: -2,
      perStep: 6,
      values: new Float64Array(25).fill(value),
      perKelvin,
    });
    const joined = joinWork([flat(2, 0.01), flat(1, 0.03)], [0.875, 0.125]);
    // 0.875 · 100 + 0.125 · 10 = 88.75.
    for (const z of [-2, 0, 2]) close(workAt(joined, z), Math.log10(88.75));
    close(joined.perKelvin, Math.log10(87.5 * 10 ** 0.01 + 1.25 * 10 ** 0.03) - Math.log10(88.75), { abs: 1e-12 });
    expect(joined.values).toHaveLength(25);
  });
});

describe("one wall", () => {
  const inputs = ["viscosity", "thickness", "solids", "kiln", "mixing", "roll", "recipe", "density", "jump"] as const;
  /** Deviates in the middle of everything, but for those given. */
  const drawn = (even: Partial<RunDraws["even"]> = {}, normal: Partial<RunDraws["normal"]> = {}, z = 0): RunDraws => {
    const of = (value: number) =>
      Object.fromEntries(inputs.map((input) => [input, new Float64Array(1024).fill(value)])) as RunDraws["even"];
    return {
      even: { ...of(0.5), ...even },
      normal: { ...of(0), ...normal },
      viscosity: new Float64Array(1024).fill(z),
    };
  };
  const all = (value: number) => new Float64Array(1024).fill(value);
  const known = (log: number) => ({ start: -4, perStep: 3, values: new Float64Array(25).fill(log), perKelvin: 0.02 });
  const film: Melt = {
    separate: known(0),
    mixed: known(0),
    mixedShare: () => 1,
    thicknessM: 0.3e-3,
    plusMinusM: 0.06e-3,
    densityKgPerM3: 2500,
    plusMinusK: 10,
    recipeSd: 0.1,
    solids: { low: 0, high: 0.2 },
  };
  const wall: WallM = { slopeDeg: 90, glazedM: 0.1, clearanceM: 0.003, tensionNPerM: 0.32 };
  // The melt is 0.95 as dense as the glass; a tenth of solids slows it by (1 − 0.135)^2.5 (roscoe-1952, from memory).
  const PULL = 0.95 * 2500 * 9.80665;
  const WORK = (PULL / 3) * (1 - 0.135) ** 2.5;
  const run = (changes: Partial<Melt>, draws = drawn(), options: Parameters<typeof simulateRun>[3] = {}) =>
    simulateRun({ ...film, ...changes }, wall, draws, options);

  it("with everything in the middle is the closed form", () => {
    const { work, free, thickness, advance, roll, reaching } = run({});
    expect(work).toHaveLength(1024);
    close(work[7], WORK);
    close(thickness[7], 0.3e-3);
    close(free[7], WORK * 0.09e-6);
    const length = Math.cbrt((0.32 * 0.3e-3) / PULL);
    close(advance[7], edgeAdvance(WORK * 0.09e-6, 0.1, length, 1.525), { rel: 1e-9 });
    close(roll[7], rollHeight(0.3e-3, WORK * 0.09e-6, length, 1.525), { rel: 1e-9 });
    // Not asked for.
    expect(reaching[7]).toBe(0);
  });

  it.each<[string, RunDraws, number]>([
    ["a melt a tenth of a decade stiffer", drawn({}, { recipe: all(-1) }), 10 ** -0.1],
    // 1.645 standard deviations are the half-width of 10 K.
    ["a kiln 10 K too hot", drawn({}, { kiln: all(1.6448536269514722) }), 10 ** 0.2],
    ["no solids", drawn({ solids: all(0) }), (1 - 0.135) ** -2.5],
    ["a fifth of solids", drawn({ solids: all(1) }), ((1 - 0.27) / (1 - 0.135)) ** 2.5],
    ["the lightest melt", drawn({ density: all(0) }), 0.92 / 0.95],
    ["the heaviest melt", drawn({ density: all(1) }), 0.98 / 0.95],
  ])("with %s", (_, draws, factor) => {
    close(run({}, draws).work[0], WORK * factor, { rel: 1e-9 });
    close(run({}, draws).free[0], WORK * factor * 0.09e-6, { rel: 1e-9 });
  });

  it("reads the work at the deviate of its viscosity", () => {
    const values = Float64Array.from({ length: 25 }, (_, i) => -i / 3 / 10);
    const steep = { start: -4, perStep: 3, values, perKelvin: 0.02 };
    // A tenth less for each unit, from 0 at −4.
    close(run({ mixed: steep, separate: steep }, drawn({}, {}, 1)).work[0], WORK * 10 ** -0.5, { rel: 1e-9 });
  });

  it("of a thicker place flows with the square of it, and never of less than a fifth", () => {
    const z = 1.6448536269514722;
    const thick = run({}, drawn({}, { thickness: all(z) }));
    close(thick.thickness[0], 0.36e-3);
    close(thick.free[0], WORK * 0.36e-3 ** 2, { rel: 1e-9 });
    close(run({}, drawn({}, { thickness: all(-20) })).thickness[0], 0.06e-3);
  });

  it("has a roll between the lowest and the highest", () => {
    for (const [u, full] of [
      [0, 1.31],
      [1, 1.74],
    ] as const) {
      const { roll, free } = run({}, drawn({ roll: all(u) }));
      close(roll[0], rollHeight(0.3e-3, free[0]!, Math.cbrt((0.32 * 0.3e-3) / PULL), full), { rel: 1e-9 });
    }
  });

  it("of a stack lies as far between its bounds as is drawn, beyond what is mixed for certain", () => {
    const stack = { separate: known(-1), mixed: known(1), mixedShare: () => 0.5 };
    // Half is mixed, and of the other half a half: log work −1 · 0.25 + 1 · 0.75.
    close(run(stack).work[0], WORK * 10 ** 0.5, { rel: 1e-9 });
    close(run(stack, drawn({ mixing: all(0.2) })).work[0], WORK * 10 ** 0.2, { rel: 1e-9 });
    close(run(stack, drawn(), { bound: "separate" }).work[0], WORK / 10, { rel: 1e-9 });
    close(run(stack, drawn(), { bound: "mixed" }).work[0], WORK * 10, { rel: 1e-9 });
  });

  it("half as steep pulls half, on the level not at all", () => {
    const at = (slopeDeg: number, reaching = true) => simulateRun(film, { ...wall, slopeDeg }, drawn(), { reaching });
    close(at(30).work[0], WORK / 2, { rel: 1e-9 });
    const level = at(0);
    expect(level.advance[0]).toBe(0);
    expect(level.free[0]).toBe(0);
    close(level.roll[0], 0.3e-3);
    expect(level.reaching[0]).toBe(0.02);
  });

  it("goes on from an earlier firing", () => {
    const before = run({});
    const { free, advance, work } = run({ mixed: known(-1), separate: known(-1) }, drawn(), { before });
    close(work[0], WORK / 10, { rel: 1e-9 });
    close(free[0], 1.1 * WORK * 0.09e-6, { rel: 1e-9 });
    expect(advance[0]).toBeGreaterThan(before.advance[0]!);
  });

  it("finds the thickness that just reaches the shelf, both firings told", () => {
    const before = run({});
    const { reaching } = run({ mixed: known(-1), separate: known(-1) }, drawn(), { before, reaching: true });
    const h = reaching[0]!;
    const why = "sixteen halvings";
    close(edgeAdvance(1.1 * WORK * h ** 2, 0.1, Math.cbrt((0.32 * h) / PULL), 1.525), 0.003, { rel: 5e-4, why });
    // A melt that hardly flows reaches it at no thickness up to 20 mm; one that pours, at the thinnest tried.
    expect(run({ mixed: known(-7) }, drawn(), { reaching: true }).reaching[0]).toBe(0.02);
    expect(run({ mixed: known(9) }, drawn(), { reaching: true }).reaching[0]).toBe(1e-6);
  });
});

describe("a film", () => {
  it("runs as its own free run until half of its height, and as Huppert's sheet from there", () => {
    close(frontAdvance(0.05, 0.1), 0.05);
    // (27/4 · 0.01 · 0.4)^(1/3) − 0.1 = 0.027^(1/3) − 0.1.
    close(frontAdvance(0.4, 0.1), 0.2, { rel: 1e-9 });
    // Turned round: (0.1 + 0.2)³/(27/4 · 0.01) = 0.4 over a work of 10 is 0.04.
    close(passingThickness(10, 0.1, 0.2), 0.2, { rel: 1e-9 });
    close(passingThickness(10, 0.1, 0.05), Math.sqrt(0.005), { rel: 1e-9 });
    expect(passingThickness(0, 0.1, 0.003)).toBe(Number.POSITIVE_INFINITY);
  });

  it("thins from the top, and ends at its edges", () => {
    // Free run 10 mm: thinned down to 30 mm, √(7.5/30) = a half at a quarter of that; front at 110 mm.
    const at = [-0.001, 0, 0.0075, 0.03, 0.1, 0.11, 0.111];
    const heights = filmProfile(0.01, 0.3, 0.1, at);
    for (const [i, h] of [0, 0, 0.15, 0.3, 0.3, 0.3, 0].entries()) close(heights[i], h, { abs: 1e-12 });
  });

  it("rounds its edge over (σ h/ρ g)^(1/3)", () => {
    close(rollLength(0.3, 0.4e-3, 15000), 2e-3, { rel: 1e-9 });
    // Grown to 1 − 1/e where it has run 1.6 lengths; lag 1.5 · 0.5 · 2 = 1.5 mm, of which 1 − 1/e at 1.15 · 1.5 mm.
    const grown = 1 - 1 / Math.E;
    close(rollHeight(1, 3.2e-3, 2e-3, 1.5), 1 + 0.5 * grown, { rel: 1e-9 });
    close(edgeAdvance(1.725e-3, 1, 2e-3, 1.5), 1.725e-3 - 1.5e-3 * grown, { rel: 1e-9 });
    expect(edgeAdvance(0, 1, 0, 1.5)).toBe(0);
  });

  it("of several coats is one melt as far as its zones of mixing reach", () => {
    // Two interfaces, 0.01 to either side of each: 0.04 of 0.4.
    close(mixedShare(0.01, [0.1, 0.1, 0.2]), 0.1);
    expect(mixedShare(1, [0.1, 0.1])).toBe(1);
    expect(mixedShare(0, [0.1])).toBe(1);
  });
});

describe("a thousand walls", () => {
  const sample = (advance: (i: number) => number, reaching = 0.5e-3): RunSample => {
    const make = (of: (i: number) => number) => Float64Array.from({ length: 1024 }, (_, i) => of(i));
    return {
      advance: make((i) => advance((i * 389) % 1024)),
      free: make((i) => 2 * advance((i * 389) % 1024)),
      roll: make(() => 0.4e-3),
      reaching: make(() => reaching),
      work: make(() => 1),
      thickness: make(() => 0.3e-3),
    };
  };
  const wall = (clearanceM: number): WallM => ({ slopeDeg: 90, glazedM: 0.1, clearanceM, tensionNPerM: 0.32 });
  /** Runs of 0, 0.01, 0.02 … 10.23 mm. */
  const even = sample((i) => i * 1e-5);

  it("come to a middle, an interval, a chance, a band and a thickness", () => {
    const outcome = outcomeOf(even, wall(512 * 1e-5));
    // Ranks 51, 512 and 972 of 0 to 1023; 512 of 1024 reach 5.12 mm; 972.8 of 1024 stay above 9.72 mm.
    expect(outcome.run).toEqual({ value: 5.12, low: 0.51, high: 9.72, coverage: 0.9, unit: "mm" });
    expect(outcome.flow).toMatchObject({ value: 10.24, low: 1.02, high: 19.44 });
    expect(outcome.roll).toMatchObject({ value: 0.4, low: 0.4, high: 0.4 });
    expect(outcome.reachesShelf).toBe(0.5);
    expect(outcome.bareBandMm).toBe(10);
    expect(outcome.catchPlate).toBe(true);
    expect(outcome.reachingThickness).toMatchObject({ value: 0.5, unit: "mm" });
    expect(outcome.text.replaceAll("\u00a0", " ")).toBe(
      "Its lower edge runs 5.1 mm, nine times in ten 0.5 to 9.7 mm. It crosses 5.12 mm of bare clay about 10 in 20 times. Set it on a catch plate or a washed cookie, or leave 10 mm bare.",
    );
  });

  it("ask for a catch plate where more than a tenth reach the shelf", () => {
    // 102 and 103 of 1024.
    expect(outcomeOf(even, wall(922 * 1e-5)).catchPlate).toBe(false);
    expect(outcomeOf(even, wall(921 * 1e-5)).catchPlate).toBe(true);
  });

  it("leave a band of whole millimetres, three at least", () => {
    expect(
      outcomeOf(
        sample(() => 0.007),
        wall(0.01),
      ).bareBandMm,
    ).toBe(7);
    expect(
      outcomeOf(
        sample(() => 0.00701),
        wall(0.01),
      ).bareBandMm,
    ).toBe(8);
    expect(
      outcomeOf(
        sample(() => 0.001),
        wall(0.01),
      ).bareBandMm,
    ).toBe(3);
  });

  it("leave the least band that 973 of 1024 stay above", () => {
    // 973 is the first whole number past 95 % of 1024; that one runs just 7 mm, the next more.
    expect(
      outcomeOf(
        sample((i) => (i * 0.007) / 972),
        wall(0.01),
      ).bareBandMm,
    ).toBe(7);
    // That one runs just over 7 mm, the one before it less.
    expect(
      outcomeOf(
        sample((i) => (i * 0.007001) / 972),
        wall(0.01),
      ).bareBandMm,
    ).toBe(8);
  });

  it("name no thickness where none up to 20 mm reaches the shelf", () => {
    expect(
      outcomeOf(
        sample(() => 0, 0.02),
        wall(0.003),
      ).reachingThickness,
    ).toBeNull();
    expect(
      outcomeOf(
        sample(() => 0, 0.0199),
        wall(0.003),
      ).reachingThickness,
    ).toMatchObject({ value: 19.9 });
    expect(reachingWords(null, 3)).toBe("No coat that a wall can hold would reach the shelf.");
    const reaching = { value: 0.45, low: 0.3, high: 0.61, coverage: 0.9, unit: "mm" };
    expect(reachingWords(reaching, 3).replaceAll("\u00a0", " ")).toBe(
      "A coat of 0.45 mm would run 3 mm, nine times in ten between 0.30 and 0.61 mm.",
    );
  });

  it("advise a bare band up to 25 mm, and no longer", () => {
    expect(footWords(false, 25)).toContain("Leave 25\u00a0mm bare");
    expect(footWords(true, 25)).toContain("washed cookie, or leave 25\u00a0mm bare");
    for (const catchPlate of [false, true]) expect(footWords(catchPlate, 26)).toContain("a bare band of 26\u00a0mm");
  });

  it("have a profile that is close where it thins and ends at the edge", () => {
    // Edge at 100 + 4 mm, 33 points after x = 104 (i/32)²; the free run of 8 mm thins the coat down to 24 mm.
    const profile = profileOf(
      sample(() => 0.004),
      wall(0.01),
    );
    expect(profile).toHaveLength(33);
    expect(profile[0]).toEqual({ mm: 0, thicknessMm: 0 });
    // 0.3 √(6.5/24) = 0.156.
    expect(profile[8]).toEqual({ mm: 6.5, thicknessMm: 0.156 });
    expect(profile[16]).toEqual({ mm: 26, thicknessMm: 0.3 });
    expect(profile[32]).toEqual({ mm: 104, thicknessMm: 0.3 });
  });
});

describe("viscosity along a firing", () => {
  it("is told where the glaze is softer than 10^12 Pa·s, every 10 K", () => {
    // 10^12 Pa·s at 1200 − 9 · 50 = 750 °C.
    const path = meltPath(melt(0.1), firing(leg(20, 800, 78), leg(800, 800, 30), leg(800, 700, 20)));
    expect(path.map(({ c }) => c)).toEqual([750, 760, 770, 780, 790, 800, 800, 790, 780, 770, 760, 750]);
    // 10 °C a minute up, half an hour, 5 °C a minute down.
    expect(path.map(({ minutes }) => minutes)).toEqual([73, 74, 75, 76, 77, 78, 108, 110, 112, 114, 116, 118]);
    // ± 0.18 below and 0.36 above.
    expect(path[0]).toEqual({ minutes: 73, c: 750, logViscosity: 12, low: 11.82, high: 12.36 });
  });

  it("starts at the start where that is hot already", () => {
    expect(meltPath(melt(), firing(leg(780, 800, 2))).map(({ c }) => c)).toEqual([780, 790, 800]);
  });

  it("takes wider steps in a long firing", () => {
    // 2960 K over 150 − 2 points: 20 K.
    const path = meltPath(melt(), firing(leg(20, 1500, 148), leg(1500, 20, 148)));
    expect(path.slice(0, 3).map(({ c }) => c)).toEqual([760, 780, 800]);
    expect(path).toHaveLength(38 + 37);
  });

  it("counts minutes above a temperature", () => {
    const legs = [leg(1000, 1200, 100), leg(1200, 1200, 10), leg(1200, 1100, 25), leg(1100, 20, 100)];
    close(minutesAbove(legs, 1150), 25 + 10 + 12.5);
    close(minutesAbove(legs, 1100), 50 + 10 + 25);
    expect(minutesAbove(legs, 1200)).toBe(0);
    close(minutesAbove(legs, 10), 235);
  });

  it("tells the minutes below 10^4 Pa·s with the doubt of the viscosity", () => {
    // 10^4 Pa·s at 1150 °C; doubt of 0.1 in log η is 5 K: 9 K below, 18 K above. 2 °C a minute up, 4 down.
    const asked = firing(leg(1000, 1200, 100), leg(1200, 1200, 10), leg(1200, 1000, 50));
    expect(meltMinutes(melt(0.1), asked)).toEqual({
      value: 48, // 25 + 10 + 12.5 = 47.5
      high: 54, // above 1141 °C: 29.5 + 10 + 14.75 = 54.25
      low: 34, // above 1168 °C: 16 + 10 + 8
      coverage: 0.9,
      unit: "min",
    });
  });

  it("is as doubtful as the glass and the kiln together", () => {
    // 0.02 a kelvin times 10 K = 0.2, with 0.18 below and 0.36 above: √(0.2² + 0.18²) = 0.269, √(0.2² + 0.36²) = 0.412.
    expect(viscosityAt(melt(0.1), 1200, 10)).toMatchObject({ value: 3, low: 2.73, high: 3.41 });
  });
});
