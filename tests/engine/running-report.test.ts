/** What a report on running says: headline, words of numbers, stacks, what slows it, refirings, later heats, sources. */
import { describe, expect, it } from "vitest";
import { analyseGlaze } from "../../api/engine/chemistry/index.ts";
import { glassProperties, type ViscosityCurve, viscosityCurve } from "../../api/engine/glass/index.ts";
import { quantileOf } from "../../api/engine/quantity.ts";
import { type ReadCoat, withMore } from "../../api/engine/running/coats.ts";
import type { RunDraws } from "../../api/engine/running/draws.ts";
import {
  estimateRunning,
  type MadeGlaze,
  meltWork,
  mixedShare,
  mixingLength,
  type RunningReport,
  type RunningRequest,
  type Timeline,
  workAt,
} from "../../api/engine/running/index.ts";
import { laterHeatOf } from "../../api/engine/running/later-heat.ts";
import { layersReport } from "../../api/engine/running/layers.ts";
import { meltOf } from "../../api/engine/running/melt.ts";
import type { WallM } from "../../api/engine/running/simulate.ts";
import { coatMm, flowWords, inTwenty, mm, span, stated } from "../../api/engine/running/words.ts";
import { THAW } from "../../api/schemas/larch-lane.ts";
import { CLOUDBURST } from "../../api/schemas/larch-lane-running.ts";
import mechanics from "../../data/fit/mechanics.json" with { type: "json" };
import { close } from "../support/close.ts";

const firing = { peakC: 1240, heatingCPerHour: 80, holdMinutes: 20, coolingCPerHour: 150 };
const wall = { slopeDeg: 90, glazedMm: 100, clearanceMm: 3 };
const thaw: RunningRequest = { glaze: THAW, firing, wall };
const report = estimateRunning(thaw);
const plain = (text: string) => text.replaceAll("\u00a0", " ");
const thick = (thicknessMm: number) => ({ ...THAW, thicknessMm });

const inputs = ["viscosity", "thickness", "solids", "kiln", "mixing", "roll", "recipe", "density", "jump"] as const;
/** Every doubt in its middle, the kiln off by so many standard deviations. */
const middle = (kiln = 0): RunDraws => {
  const of = (value: number) =>
    Object.fromEntries(inputs.map((input) => [input, new Float64Array(1024).fill(value)])) as RunDraws["even"];
  return {
    even: of(0.5),
    normal: { ...of(0), kiln: new Float64Array(1024).fill(kiln) },
    viscosity: new Float64Array(1024),
  };
};
/** Residuals with 5 % at −1.8 and 95 % at 3.6 of the scale. */
const shape = Array.from({ length: 64 }, (_, i) => ((i - 31.5) / 16) * (i > 32 ? 2 : 1));
/** A melt of so many log10 Pa·s at 1200 °C, a decade stiffer every 100 K. */
const melt = (log: number, scale = 0): ViscosityCurve => ({
  parameters: { limit: -2, t12K: 1023, fragility: 40 },
  logViscosity: (c) => ({ value: log + 0.01 * (1200 - c), scale, shape }),
  temperatureC: (at) => ({ value: 1200 - 100 * (at - log), scale: 100 * scale, shape }),
  warnings: [],
  sources: [],
});
const LIME_GLASS = { SiO2: 68, Al2O3: 5, Na2O: 10, CaO: 17 };
const coat = (curve: ViscosityCurve, thicknessMm = 0.3, amounts: Record<string, number> = LIME_GLASS): ReadCoat => ({
  chemistry: analyseGlaze({ oxides: { basis: "weightPercent", amounts } }),
  curve,
  thicknessMm,
  plusMinusMm: thicknessMm / 4,
  densityKgPerM3: 2500,
  warnings: [],
});
const soak = (peakC: number, minutes: number): Timeline => ({
  legs: [{ fromC: peakC, toC: peakC, seconds: minutes * 60 }],
  peakC,
  plusMinusK: 10,
  from: "",
  warnings: [],
});
const upright: WallM = { slopeDeg: 90, glazedM: 0.1, clearanceM: 0.003, tensionNPerM: 0.32 };

describe("words of numbers", () => {
  it.each([
    [mm(0.049), "less than 0.1 mm"],
    [mm(0.05), "0.1 mm"],
    [mm(1.324), "1.3 mm"],
    [mm(9.94), "9.9 mm"],
    [mm(10), "10 mm"],
    [mm(12.6), "13 mm"],
    [coatMm(0.3), "0.30 mm"],
    [span({ low: 0.41, high: 2.2 }), "0.4 to 2.2 mm"],
    [span({ low: 0.41, high: 9.9 }), "0.4 to 9.9 mm"],
    [span({ low: 0.6, high: 10 }), "1 to 10 mm"],
    [inTwenty(0.024), "less than 1 in 20"],
    [inTwenty(0.026), "about 1 in 20"],
    [inTwenty(0.34), "about 7 in 20"],
    [inTwenty(0.97), "about 19 in 20"],
    [inTwenty(0.98), "more than 19 in 20"],
    [stated(3), "3 mm"],
    [stated(2.504), "2.5 mm"],
  ])("%s", (said, words) => {
    expect(plain(said)).toBe(words);
  });

  // Limits: common practice, no source.
  it.each([
    [1.99, 2, "is as thin as syrup", "is very runny"],
    [2.69, 2.7, "is very runny", "is runny"],
    [3.29, 3.3, "is runny", "stands up well"],
    [4.19, 4.2, "stands up well", "is stiff and hardly flows"],
    [5.49, 5.5, "is stiff and hardly flows", "does not melt out"],
  ])("10^%s and 10^%s Pa·s at the peak", (below, at, runnier, stiffer) => {
    expect([flowWords(below), flowWords(at)]).toEqual([runnier, stiffer]);
  });
});

describe("the headline", () => {
  const headline = (changes: Partial<RunningRequest>) => plain(estimateRunning({ ...thaw, ...changes }).headline);

  it("says how it flows, how far, and what to do about the foot", () => {
    const runny = estimateRunning({ ...thaw, glaze: thick(0.6) });
    const flows = `This glaze ${flowWords(runny.viscosityAtPeak.value)} at the peak and runs about ${mm(runny.run.value)}`;
    expect(runny.catchPlate).toBe(true);
    expect(runny.headline).toBe(
      `${flows}. It crosses 3\u00a0mm of bare clay ${inTwenty(runny.reachesShelf)} times. Set it on a catch plate or a washed cookie, or leave ${runny.bareBandMm}\u00a0mm bare.`,
    );
  });

  it("says that it should stay above the shelf where that is likely", () => {
    expect(headline({ glaze: thick(0.15) })).toMatch(
      /and runs about [\d.]+ mm\. It should stay above 3 mm of bare clay\.$/,
    );
    expect(headline({ glaze: thick(0.03) })).toContain("and runs less than 0.1 mm. It should");
  });

  it("speaks of a stack, and of level ground", () => {
    const coats = [{ glaze: thick(0.1) }, { glaze: thick(0.1) }];
    const { glaze: _, ...rest } = thaw;
    expect(estimateRunning({ ...rest, coats }).headline).toMatch(/^This stack of coats /);
    expect(headline({ wall: { ...wall, slopeDeg: 0 } })).toBe("This glaze lies level and does not run.");
  });
});

describe("figures of the report", () => {
  const thicker = estimateRunning({ ...thaw, glaze: thick(0.4) });

  it("are as reckoned with, with their doubt", () => {
    // A quarter of the thickness, and ten degrees, either way.
    expect(thicker.thickness).toEqual({ value: 0.4, low: 0.3, high: 0.5, coverage: 0.9, unit: "mm" });
    expect(report.firing.peak).toEqual({ value: 1240, low: 1230, high: 1250, coverage: 0.9, unit: "°C" });
    expect(report.firing.from).toBe("as stated");
    expect(report.wall).toEqual(wall);
    expect(report.engine.seed).toBe(1);
    expect(estimateRunning({ ...thaw, seed: 5 }).engine.seed).toBe(5);
  });

  it("hold the film from its upper edge to where its lower one has come", () => {
    const { profile, run } = thicker;
    expect(profile[0]).toEqual({ mm: 0, thicknessMm: 0 });
    close(profile.at(-1)?.mm, 100 + run.value, { abs: 0.0051 });
    expect(profile.at(-1)?.thicknessMm).toBe(0.4);
  });

  it("end with the thickness that would reach the shelf", () => {
    const { value, low, high } = thicker.reachingThickness!;
    expect(plain(thicker.text)).toMatch(/bare\. A coat of /);
    expect(plain(thicker.text)).toContain(
      `A coat of ${value.toFixed(2)} mm would run 3 mm, nine times in ten between ${low.toFixed(2)} and ${high.toFixed(2)} mm.`,
    );
  });

  it("name the sources of what was asked, and no others", () => {
    const of = (changes: Partial<RunningRequest>) => estimateRunning({ ...thaw, ...changes }).sources;
    const keys = report.sources;
    const cones = ["beerman-1956", "cone-charts"];
    expect(keys.filter((key) => [...cones, "inada-1978-3"].includes(key))).toEqual([]);
    expect(of({ firing: { cone: "6" } })).toEqual(expect.arrayContaining(cones));
    expect(of({ laterHeat: [{ kind: "decal", peakC: 780 }] })).toContain("inada-1978-3");
    expect(keys).toEqual([...keys].sort());
    expect(keys).toEqual(
      expect.arrayContaining(["huppert-1982", "thin-film-solved", "roscoe-1952", "kucuk-1999", "sciglass-2019"]),
    );
    // Coats that come later bring theirs.
    const more = of({
      refiring: { coats: [{ glaze: { recipe: [{ material: "bone-ash", parts: 10 }, ...THAW.recipe] } }] },
    });
    const bone = analyseGlaze({ recipe: [{ material: "bone-ash", parts: 10 }, ...THAW.recipe] }).sources;
    expect(more).toEqual(expect.arrayContaining(bone));
  });

  it("warn of a mixture out of range only where coats are mixed", () => {
    const strange = { oxides: { basis: "weightPercent" as const, amounts: { SiO2: 55, Al2O3: 5, Na2O: 20, CuO: 20 } } };
    const codes = ({ warnings }: { warnings: { code: string; pointer?: string }[] }) =>
      warnings.filter(({ code }) => code === "outside-training-range").map(({ pointer }) => pointer);
    expect(codes(estimateRunning({ ...thaw, glaze: { ...strange, thicknessMm: 0.2 } }))).toEqual(["/glaze"]);
    const { glaze: _, ...rest } = thaw;
    const mixed = { ...rest, coats: [{ glaze: { ...strange, thicknessMm: 0.2 } }, { glaze: thick(0.2) }] };
    expect(codes(estimateRunning(mixed))).toEqual(["/coats/0/glaze", undefined]);
  });
});

describe("the checklist's figures", () => {
  const causeIn = ({ faults }: RunningReport, id: string) => plain(faults.find((line) => line.id === id)?.cause ?? "");
  const cause = (request: RunningRequest, id: string) => causeIn(estimateRunning(request), id);

  it("count the soaks within 60 °C of the peak", () => {
    const segments = [
      { toC: 1000, cPerHour: 100, holdMinutes: 60 },
      { toC: 1180, cPerHour: 100, holdMinutes: 7 },
      { toC: 1181, cPerHour: 100, holdMinutes: 5 },
      { toC: 1240, cPerHour: 100, holdMinutes: 10 },
      { toC: 20, cPerHour: 150 },
    ];
    expect(cause({ ...thaw, firing: { segments } }, "short-melt")).toContain(", 15 of soak among them.");
    expect(cause({ ...thaw, firing: { peakC: 1240 } }, "short-melt")).toContain(", with no soak.");
  });

  it("take the coats put on before a refiring for theirs", () => {
    expect(causeIn(report, "thick-coat")).toContain("The coat is 0.30 mm fired; ");
    const coated = estimateRunning({ ...thaw, refiring: { coats: [{ glaze: { ...CLOUDBURST, thicknessMm: 0.2 } }] } });
    expect(causeIn(coated, "thick-coat")).toContain("The coat is 0.50 mm fired, in 2 coats;");
    expect(causeIn(report, "over-fired-glaze")).toBe("");
    expect(causeIn(coated, "over-fired-glaze")).not.toBe("");
  });

  it("take the tension of the outer coat, and say where none is known", () => {
    const copper = { oxides: { basis: "weightPercent" as const, amounts: { SiO2: 55, Al2O3: 5, Na2O: 20, CuO: 20 } } };
    const { glaze: _, ...rest } = thaw;
    const outside = estimateRunning({ ...rest, coats: [{ glaze: { ...copper, thicknessMm: 0.1 } }, { glaze: THAW }] });
    expect(causeIn(outside, "surface-tension")).toContain("could not be summed; 325 mN/m");
    expect(outside.surfaceTension).toMatchObject({ value: 325, low: 250, high: 400 });
    const inside = { ...rest, coats: [{ glaze: THAW }, { glaze: { ...copper, thicknessMm: 0.1 } }] };
    expect(cause(inside, "surface-tension")).toContain("Its surface tension is about");
  });

  it("mind whether the clay was fired before", () => {
    expect(cause({ ...thaw, bisque: false }, "gas-from-the-clay")).toContain("fired together with the glaze");
    expect(causeIn(report, "gas-from-the-clay")).toContain("where its bisque was short");
  });
});

describe("what slows it", () => {
  const { slows, run } = estimateRunning({ ...thaw, glaze: thick(0.5) });
  const lever = (id: string, of = slows) => of.find((one) => one.id === id);

  it("is told strongest first, as a share of the run", () => {
    const factors = slows.map(({ factor }) => factor);
    expect(factors).toEqual([...factors].sort((a, b) => a - b));
    for (const { factor, change, run: after, text } of slows) {
      close(factor, after.value / run.value, { abs: 0.0051, why: "both to two decimals" });
      expect(text).toBe(
        `${change}: ${mm(after.value)} in place of ${mm(run.value)}, ${Math.round(100 * factor)} % of it.`,
      );
    }
    expect(slows.map(({ change }) => plain(change)).sort()).toEqual([
      "1 % more alumina by weight in the fired glaze",
      "10 °C cooler",
      "A fifth less glaze",
      "Half the soak",
    ]);
  });

  it("is each worked out anew: a fifth less, half the soak, more alumina, ten degrees", () => {
    expect(lever("thinner-coat")?.run).toEqual(estimateRunning({ ...thaw, glaze: thick(0.4) }).run);
    const short = estimateRunning({ ...thaw, glaze: thick(0.5), firing: { ...firing, holdMinutes: 10 } });
    expect(lever("shorter-soak")?.run).toEqual(short.run);
    const oxides = (amounts: Record<string, number>): MadeGlaze => ({
      oxides: { basis: "weightPercent", amounts },
      thicknessMm: 0.5,
    });
    const amounts = analyseGlaze(THAW).fired.weightPercent;
    const stiffer = estimateRunning({ ...thaw, glaze: oxides(withMore(amounts, "Al2O3", 1)) }).run.value;
    const known = estimateRunning({ ...thaw, glaze: oxides(amounts) });
    const why = "the lever keeps density and surface tension";
    close(lever("more-alumina", known.slows)?.run.value, stiffer, { rel: 0.01, why });
    // Every temperature ten degrees lower, at the same pace: the same firing ten degrees cooler.
    const segments = (by: number) => [
      { toC: 1000 + by, cPerHour: 80 },
      { toC: 1240 + by, cPerHour: 80, holdMinutes: 20 },
      { toC: 20, cPerHour: 150 },
    ];
    const warm = estimateRunning({ ...thaw, firing: { segments: segments(0) } });
    const cool = estimateRunning({ ...thaw, firing: { segments: segments(-10) } });
    close(lever("cooler", warm.slows)?.run.value, cool.run.value, {
      abs: 0.011,
      rel: 0.01,
      why: "recipes spread alike",
    });
  });

  it("is a shorter soak only where there is one within 60 °C of the peak", () => {
    const ids = (toC: number) => {
      const segments = [
        { toC, cPerHour: 100, holdMinutes: 30 },
        { toC: 1240, cPerHour: 100 },
        { toC: 20, cPerHour: 150 },
      ];
      return estimateRunning({ ...thaw, firing: { segments } }).slows.map(({ id }) => id);
    };
    expect(ids(1180)).not.toContain("shorter-soak");
    expect(ids(1181)).toContain("shorter-soak");
  });

  it("has nothing to slow where it does not run", () => {
    for (const { factor, text, change } of estimateRunning({ ...thaw, firing: { peakC: 600 } }).slows) {
      expect(factor).toBe(1);
      expect(text).toBe(`${change}: it hardly runs as it is.`);
    }
  });
});

describe("a stack", () => {
  const stackOf = (coats: readonly ReadCoat[], at = soak(1200, 60)) => {
    const draws = middle();
    const ready = meltOf(coats, at, { low: 0, high: 0 }, draws);
    return { ready, report: layersReport(coats, ready, at, upright, draws) };
  };

  it("has thickness, doubt and density of its coats together", () => {
    const coats = [coat(melt(3), 0.3), { ...coat(melt(3), 0.4), densityKgPerM3: 3200 }];
    const { ready } = stackOf(coats);
    close(ready.thicknessM, 0.7e-3);
    // 0.075 and 0.1: 0.125.
    close(ready.plusMinusM, 0.125e-3);
    // (0.3 · 2500 + 0.4 · 3200)/0.7 = 2900.
    close(ready.densityKgPerM3, 2900);
    expect(ready.plusMinusK).toBe(10);
  });

  it("kept apart adds its coats' fluidities by their share of the flow", () => {
    // An hour at 10^3 beside the clay and 10^5 outside, equally thick: 3600 (0.875/10^3 + 0.125/10^5).
    const { ready } = stackOf([coat(melt(3)), coat(melt(5))]);
    close(10 ** workAt(ready.separate, 0), 3.6 * (0.875 + 0.00125), { rel: 1e-9 });
  });

  it("mixes over the length of the mixture's work, and is one melt so far", () => {
    const coats = [coat(melt(3), 0.05), coat(melt(5), 0.05)];
    const { ready, report } = stackOf(coats);
    // Both of one glass: the mixture is that glass. A jump half way between 0.1 and 1 nm in the logarithm.
    const glass = viscosityCurve(coats[0]!.chemistry.moleFractions);
    const length = mixingLength(10 ** workAt(meltWork(glass, soak(1200, 60).legs), 0), 1200, Math.sqrt(0.1) * 1e-9);
    close(ready.mixing?.[3], length, { rel: 1e-9 });
    close(ready.mixedShare(3), mixedShare(length, [0.05e-3, 0.05e-3]), { rel: 1e-9 });
    const { value, low, high } = report!.mixingLength;
    for (const each of [value, low, high]) close(each, length * 1e3, { abs: 0.0005 });
  });

  it("is nothing to a single coat", () => {
    const { ready, report } = stackOf([coat(melt(3))]);
    expect(report).toBeNull();
    expect(ready.mixing).toBeUndefined();
    expect(ready.mixedShare(0)).toBe(1);
    expect(ready.separate).toBe(ready.mixed);
  });

  it("tells of each pair, the outer less the inner, with both doubts", () => {
    const coats = [coat(melt(3)), coat(melt(4, 0.1)), coat(melt(2.5, 0.2))];
    const pairs = stackOf(coats).report!.interfaces;
    expect(pairs.map((pair) => pair.coats)).toEqual([
      [2, 3],
      [1, 2],
    ]);
    // 4 − 3, ± 1.8 and 3.6 tenths; 2.5 − 4: below √(0.36² + 0.36²), above √(0.72² + 0.18²) = 0.742.
    expect(pairs[0]?.viscosity).toMatchObject({ value: 1, low: 0.82, high: 1.36, unit: "log10(Pa·s)" });
    expect(pairs[1]?.viscosity).toMatchObject({ value: -1.5, low: -2.01, high: -0.76 });
    expect(pairs[0]?.text).toMatch(/^Coats 2 and 3, from the outside: /);
  });

  it.each([
    [3.14, "they flow alike"],
    [2.86, "they flow alike"],
    [3.16, "the one beneath is the runnier and carries the upper down"],
    [2.84, "the upper is the runnier and slides over"],
  ])("of 10^3 Pa·s under 10^%s", (outer, words) => {
    expect(stackOf([coat(melt(3)), coat(melt(outer))]).report!.interfaces[0]?.text).toContain(words);
  });

  it("tells which coat shrinks more as it cools, where they are unlike", () => {
    const soda = { SiO2: 62, Al2O3: 5, Na2O: 16, CaO: 17 };
    const expansion = (amounts: Record<string, number>) =>
      quantileOf(
        glassProperties(analyseGlaze({ oxides: { basis: "weightPercent", amounts } }).moleFractions).expansion,
        0.5,
      );
    const unlike = expansion(soda) - expansion(LIME_GLASS);
    // Six per cent more soda: by any published set more than 1e-6/K (30 to 40 of 1e-8/K a per cent).
    expect(unlike).toBeGreaterThan(1);
    const pair = (outer: Record<string, number>, inner: Record<string, number>) =>
      stackOf([coat(melt(3), 0.3, inner), coat(melt(3), 0.3, outer)]).report!.interfaces[0]!;
    const over = pair(soda, LIME_GLASS);
    close(over.expansion.value, unlike, { abs: 0.005 });
    expect(over.expansion).toMatchObject({ unit: "1e-6/K", rangeC: [20, 300] });
    expect(over.text).toContain("the upper wants to shrink more than the one beneath, and may craze");
    const under = pair(LIME_GLASS, soda);
    close(under.expansion.value, -unlike, { abs: 0.005 });
    expect(under.text).toContain("the one beneath wants to shrink more than the upper, and squeezes it");
    expect(pair(soda, soda).text).toContain("they shrink nearly alike");
  });

  it("says whether the order matters: by a fifth, and more than half a tenth of a millimetre", () => {
    const text = (inner: number, outer: number) => {
      const {
        separate,
        reversed,
        mixed,
        mixingLength: length,
        text,
      } = stackOf([coat(melt(inner)), coat(melt(outer))]).report!;
      expect(plain(text)).toContain(
        `Kept apart they run ${plain(mm(separate.value))}, melted into one ${plain(mm(mixed.value))};`,
      );
      const micron = (value: number) => Math.max(1, Math.round(1000 * value));
      expect(text).toContain(`over some ${micron(length.value)} µm (${micron(length.low)} to ${micron(length.high)});`);
      return { text: plain(text), separate: separate.value, reversed: reversed.value };
    };
    // 0.875/η₁ + 0.125/η₂ against 0.125/η₁ + 0.875/η₂: alike for equal melts, 7 times for a hard one over a soft.
    const alike = text(3, 3.05);
    expect(alike.separate / alike.reversed).toBeLessThan(1.2);
    expect(alike.text).toContain("The other way round they would run much the same.");
    for (const [inner, outer] of [
      [3, 4],
      [4, 3],
    ] as const) {
      const unlike = text(inner, outer);
      expect(unlike.text).toContain(`Put on the other way round the coats would run ${plain(mm(unlike.reversed))}: `);
    }
    // Ten times as stiff again they run a few hundredths: no difference worth telling.
    const stiff = text(5.2, 6.2);
    expect(stiff.separate).toBeGreaterThan(1.2 * stiff.reversed);
    expect(stiff.separate).toBeLessThan(0.05);
    expect(stiff.text).toContain("much the same");
  });
});

describe("a refiring", () => {
  const again = report.refiring;
  const refired = (coats: NonNullable<RunningRequest["refiring"]>["coats"]) =>
    estimateRunning({ ...thaw, refiring: { coats } }).refiring;
  const over = (thicknessMm: number) => ({ glaze: { ...CLOUDBURST, thicknessMm } });

  it("counts old and new coats together", () => {
    const asked = { ...thaw, glaze: thick(0.4) };
    expect(estimateRunning(asked).refiring.thickness).toMatchObject({ value: 0.4, low: 0.3, high: 0.5 });
    // 0.4 ± 0.1 and 0.96 ± 0.24: 1.36 ± 0.26, as 5, 12 and 13.
    const { thickness } = estimateRunning({ ...asked, refiring: { coats: [over(0.96)] } }).refiring;
    expect(thickness).toMatchObject({ value: 1.36, low: 1.1, high: 1.62, unit: "mm" });
  });

  it("says what is fired again, where the edge stands, and what to do about the foot", () => {
    expect(again.text).toBe(
      `Fired again as it is, the edge stands ${mm(again.run.value)} below where the glaze was put on. It crosses 3\u00a0mm of bare clay ${inTwenty(again.reachesShelf)} times. Set it on a catch plate or a washed cookie, or leave ${again.bareBandMm}\u00a0mm bare.`,
    );
    expect(plain(refired([over(0.2)]).text)).toMatch(/^With 0\.50 mm in all after the new coat, the edge stands /);
    expect(plain(refired([over(0.1), over(0.1)]).text)).toMatch(/^With 0\.50 mm in all after the new coats, the edge /);
  });

  it("of a glaze under itself runs the same the other way round", () => {
    const { layers } = refired([{ glaze: thick(0.3) }]);
    close(layers?.reversed.value, layers!.separate.value, { rel: 1e-3, why: "sums in another order" });
    expect(layers?.text).toContain("The other way round they would run much the same.");
  });

  it("asks for slow heating always, and for care with a new coat", () => {
    expect(again.advice).toHaveLength(1);
    expect(again.advice[0]?.text).toContain("Heat slowly to 600 °C");
    const { advice } = refired([over(0.2)]);
    const texts = advice.map(({ text }) => text);
    expect(texts).toHaveLength(3);
    expect(texts.at(-1)).toContain("Heat slowly to 600 °C");
    for (const { source } of advice) expect(source).toBe("common-practice");
  });

  it("in a firing of its own adds that firing's run", () => {
    const cool = estimateRunning({ ...thaw, refiring: { firing: { ...firing, peakC: 700 } } });
    expect(cool.refiring.run).toEqual(cool.run);
    const hot = estimateRunning({ ...thaw, refiring: { firing: { ...firing, peakC: 1260 } } });
    expect(hot.refiring.run.value).toBeGreaterThan(again.run.value);
  });
});

describe("a later heat", () => {
  // relaxed = 1 − exp(−G t/η) for a soak of an hour.
  const G = mechanics.setPoint.shearModulusGPa * 1e9;
  const logFor = (relaxed: number) => Math.log10((G * 3600) / -Math.log(1 - relaxed));
  const heat = (peakC: number, relaxed: number, kiln = 0, kind: "decal" | "lustre" | "enamel" | "other" = "decal") =>
    // The melt at 1200 °C that is so stiff at the peak of this heat.
    laterHeatOf(
      { kind, peakC },
      soak(peakC, 60),
      [coat(melt(logFor(relaxed) - 0.01 * (1200 - peakC)))],
      upright,
      middle(kiln),
    );

  it.each([
    [0.09, "kept"],
    [0.11, "partly-relaxed"],
    [0.94, "partly-relaxed"],
    [0.96, "set-anew"],
  ] as const)("that lets %s of the stress flow away: %s", (relaxed, stress) => {
    const report = heat(700, relaxed);
    close(report.relaxed.value, relaxed, { abs: 0.0005 });
    expect(report).toMatchObject({ kind: "decal", peakC: 700, stress });
    const words = {
      kept: "too cool for the glaze to flow",
      "partly-relaxed": "a part of the glaze",
      "set-anew": "set anew",
    };
    expect(report.text).toContain(words[stress]);
  });

  it("relaxes more where the kiln is too hot", () => {
    // 1.645 standard deviations are the half-width of 10 K: 0.1 in log η, so that e^−x = 0.5 becomes 0.5^(10^0.1).
    close(heat(700, 0.5, 1.645).relaxed.value, 1 - 0.5 ** (10 ** 0.1), { abs: 0.0005 });
  });

  it.each([
    ["decal", "The decal firing at 450 °C"],
    ["lustre", "The lustre firing at 450 °C"],
    ["enamel", "The enamel firing at 450 °C"],
    ["other", "The later firing at 450 °C"],
  ] as const)("for %s is called that", (kind, words) => {
    expect(heat(450, 0.01, 0, kind).text).toContain(words);
  });

  it("drives moisture out from 500 °C on", () => {
    expect(heat(499, 0.5).text).not.toContain("moisture");
    expect(heat(500, 0.5).text).toContain("drives out the moisture");
  });

  it("tells of a run that can be seen", () => {
    expect(heat(700, 0.5).text).not.toContain("It runs another");
    // Relaxed to the last bit at 10^3 Pa·s: an hour of that runs millimetres.
    const soft = laterHeatOf({ kind: "other", peakC: 1200 }, soak(1200, 60), [coat(melt(3))], upright, middle());
    expect(soft.text).toContain(`It runs another ${mm(soft.run.value)}.`);
    expect(soft.run.value).toBeGreaterThan(1);
  });

  it("is to be passed slowly where quartz turns, at 573 °C, and where cristobalite does", () => {
    const texts = (peakC: number) => heat(peakC, 0.5).advice.map(({ text }) => text);
    for (const peakC of [573, 574]) {
      expect(texts(peakC)).toHaveLength(3);
      expect(texts(peakC)[0]).toContain("Dry the piece through first");
      expect(texts(peakC)[1]).toContain("no faster than 100 °C an hour to 300 °C");
      expect(texts(peakC)[2]).toContain("ristobalite");
    }
    expect(texts(573)[2]).not.toContain("Quartz");
    expect(texts(574)[2]).toContain("Quartz in the clay turns at 573 °C");
  });

  it("heats the coats of a refiring too", () => {
    const laterHeat = [{ kind: "other" as const, peakC: 1200, holdMinutes: 60 }];
    const bare = estimateRunning({ ...thaw, laterHeat });
    const coated = estimateRunning({ ...thaw, laterHeat, refiring: { coats: [{ glaze: thick(0.3) }] } });
    // Twice as thick flows four times as far; the roll holds both back.
    expect(coated.laterHeat[0]!.run.value).toBeGreaterThan(3 * bare.laterHeat[0]!.run.value);
  });
});
