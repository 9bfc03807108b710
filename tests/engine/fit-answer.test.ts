/** What an answer holds: figures read off the draws, coats one by one and melted, what is asked for beside it, its sources. */
import { beforeAll, describe, expect, it } from "vitest";
import { analyseGlaze } from "../../api/engine/chemistry/index.ts";
import { sourcesOf } from "../../api/engine/fit/answer-sources.ts";
import { FIT_SOURCES } from "../../api/engine/fit/constants.ts";
import { drawsFor } from "../../api/engine/fit/draws.ts";
import { checkFit, type FitRequest, glassContraction, judgeFit } from "../../api/engine/fit/index.ts";
import { type Simulation, simulate } from "../../api/engine/fit/simulate.ts";
import { prepare } from "../../api/engine/fit/situation.ts";
import { summarise } from "../../api/engine/fit/summary.ts";
import { TRIAL_SOURCES } from "../../api/engine/fit/trials.ts";
import { weighUp } from "../../api/engine/fit/weigh-up.ts";
import { appenDensity } from "../../api/engine/glass/index.ts";
import { DATA_VERSION, DEFAULT_SEED, ENGINE_VERSION } from "../../api/engine/version.ts";
import { close } from "../support/close.ts";

const Z90 = 1.6448536269514722;
const stated = (value: number, thicknessMm = 0.3) => ({
  expansion: { value, rangeC: [20, 300] as const, plusMinus: 0.3 },
  transitionC: 640,
  thicknessMm,
});
const body = { class: "red-stoneware", expansion: { value: 6.2, rangeC: [20, 500] as const, plusMinus: 0.3 } };
const question: FitRequest = { glaze: stated(6.5), body };

/** Ranks 5, 50 and 95 % of a sample in order, to the nearest, halves up; every `stride`th value alone. */
function middle(values: ArrayLike<number>, stride: number, by = 1) {
  const sorted = Array.from(values)
    .filter((_, i) => i % stride === 0)
    .sort((a, b) => a - b);
  const [low, value, high] = [0.05, 0.5, 0.95].map((p) => sorted[Math.round((sorted.length - 1) * p)]! * by);
  return { low: low!, value: value!, high: high! };
}

describe.each<[string, FitRequest]>([
  ["one coat", question],
  ["squeezed hard on a thin wall", { glaze: stated(3.4, 1.2), body, ware: { wallMm: 2.5, edgeRadiusMm: 0.5 } }],
  ["a piece that bends", { glaze: stated(5, 0.5), body, ware: { glazed: "one-face-free" } }],
  [
    "a piece that bends under a glaze as thick as its wall",
    { glaze: stated(5, 2.5), body, ware: { wallMm: 2.5, glazed: "one-face-free" } },
  ],
  ["two coats", { glaze: { layers: [stated(7, 0.2), stated(5, 0.4)] }, body, ware: { glazed: "one-face" } }],
])("figures of %s", (_what, request) => {
  const answer = checkFit(request);
  const { situation: s } = prepare(request);
  let simulation: Simulation;
  // The arrays are good until the next simulation.
  beforeAll(() => {
    simulation = simulate(s, drawsFor(DEFAULT_SEED));
  });
  const shown = (
    figure: { low: number; value: number; high: number },
    expected: ReturnType<typeof middle>,
    digits: number,
  ) => {
    for (const end of ["low", "value", "high"] as const)
      close(figure[end], expected[end], { abs: 0.501 * 10 ** -digits });
  };
  it("are the middles of the draws: of all for the stress, of every fourth for what is only shown", () => {
    const { stress, mismatch, setPointC, glaze, clay, coatStress } = simulation;
    const means = (contraction: Float64Array) => contraction.map((c, i) => (c * 1e6) / (setPointC[i]! - 20));
    shown(answer.stress, middle(stress, 1, 1e-6), 1);
    shown(answer.mismatch, middle(mismatch, 4, 100), 4);
    shown(answer.setPoint, middle(setPointC, 4), 0);
    shown(answer.glaze.expansionToSetPoint, middle(means(glaze), 4), 2);
    shown(answer.body.expansionToSetPoint, middle(means(clay), 4), 2);
    answer.coats?.forEach((coat, j) => {
      shown(coat.stress, middle(coatStress[j]!, 1, 1e-6), 1);
    });
    expect(answer.mismatch.rangeC).toEqual([20, answer.setPoint.value]);
  });
  it("count what lifts, flakes and splits, of 1024", () => {
    const { lifted } = simulation;
    expect(answer.shivering).toMatchObject({ edges: lifted.edges / 1024, flakes: lifted.flakes / 1024 });
    expect(answer.body.splits).toBe(lifted.splits / 1024);
  });
  it("share the whole skin with wall and edge", () => {
    const mm = [s, ...s.under].reduce((sum, { thicknessM }) => sum + thicknessM * 1000, 0);
    close(answer.glaze.thickness.value, mm, { abs: 0.00501 });
    close(answer.glaze.thickness.low, mm * 0.75, { abs: 0.00501 });
    const faces = s.glazed === "both-faces" ? 2 : 1;
    const { low, value, high } = middle(simulation.stress, 1, 1e-6);
    const turned = (by: number) => ({ low: -high * by, value: -value * by, high: -low * by });
    // In a piece that bends the clay's stress is that right under the glaze, of all draws.
    const { bent } = simulation;
    shown(answer.body.stress, bent ? middle(bent.underGlaze, 1, 1e-6) : turned((faces * mm) / (s.wallM * 1000)), 1);
    shown(answer.shivering.edgePull, turned(mm / (s.edgeM * 1000)), 1);
  });
  it("state what was told with nine in ten around it", () => {
    // ±10 K and ±5 GPa are standard deviations; a table of 64 quantiles read by straight lines.
    const { transition, youngs } = answer.glaze;
    close(transition.high - transition.value, 10 * Z90, { abs: 0.6 });
    close(youngs.high - youngs.value, 5 * Z90, { abs: 0.1 });
    expect([transition.value, youngs.value]).toEqual([640, 70]);
    expect(answer.body.expansion).toEqual({
      value: 6.2,
      low: 5.9,
      high: 6.5,
      coverage: 0.9,
      unit: "1e-6/K",
      rangeC: [20, 500],
    });
    // 30–60 MPa and 0.005–0.05 % after thirty years (data/bodies/classes.json), after ten (10/30)^¼ of it.
    expect(answer.body.rupture).toMatchObject({ low: 30, value: 45, high: 60 });
    const aged = (10 / 30) ** 0.25;
    shown(answer.body.moistureExpansion, { low: 0.005 * aged, value: 0.0275 * aged, high: 0.05 * aged }, 4);
  });
});

describe("figures", () => {
  it("show no more digits than they are worth, and over which range they are means", () => {
    const a = checkFit({
      glaze: { layers: [stated(6.5, 0.213), stated(6.2, 0.117)] },
      body: { ...body, youngsGPa: 51.37, ruptureMPa: 43.7, moistureExpansionPercent: 0.0312 },
      ware: { wallMm: 4.7 },
    });
    const toSetPoint = [20, a.setPoint.value];
    const { cracksOnCooling, mayCrackInTime, edgesMayLift, flakesComeOff } = a.thresholds;
    const rows = [
      [a.stress, 1],
      [cracksOnCooling, 1],
      [mayCrackInTime, 1],
      [edgesMayLift, 1],
      [flakesComeOff, 1],
      ...a.coats!.map(({ stress }) => [stress, 1] as const),
      [a.mismatch, 4, toSetPoint],
      [a.setPoint, 0],
      [a.glaze.expansion, 2, [20, 300]],
      [a.glaze.expansionToSetPoint, 2, toSetPoint],
      [a.glaze.transition, 0],
      [a.glaze.youngs, 1],
      [a.glaze.thickness, 2],
      [a.body.expansion, 2, [20, 500]],
      [a.body.expansionToSetPoint, 2, toSetPoint],
      [a.body.youngs, 1],
      [a.body.moistureExpansion, 4],
      [a.body.stress, 1],
      [a.body.rupture, 0],
      [a.shivering.edgePull, 1],
    ] as const;
    for (const [{ low, value, high, rangeC }, digits, range] of rows) {
      for (const end of [low, value, high]) expect(end).toBe(Number(end.toFixed(digits)));
      expect(rangeC).toEqual(range);
    }
  });
  it("are the thresholds that sentences speak of", () => {
    const porous: FitRequest = { ...question, body: { class: "red-earthenware" } };
    const { summary, figures } = weighUp(porous);
    expect(summary.moistureStress).toBeGreaterThan(10e6);
    for (const [name, { value }] of Object.entries(figures.thresholds)) {
      close(summary.thresholds[name as keyof typeof figures.thresholds] / 1e6, value, { abs: 0.0501 });
    }
    // 0.125 % after thirty years (0.05–0.2, data/bodies/classes.json), after ten (1/3)^¼; 70/(1 − 0.2) GPa. Arithmetic.
    close(summary.moistureStress, 0.00125 * (1 / 3) ** 0.25 * 87.5e9, { rel: 1e-9 });
  });
  it("give bounds of a body of phases at the set point, of no other body", () => {
    const phases = { ...question, body: { phases: { quartz: 18, mullite: 20, glass: 62 } } };
    const { prepared, summary, figures } = weighUp(phases);
    expect(figures.body.bounds).toEqual(prepared.body.bounds!(summary.setPointC.value));
    expect(weighUp(question).figures.body).not.toHaveProperty("bounds");
  });
  it("take an edge to bear 1 MPa at least, however weak the clay may be", () => {
    const { situation } = prepare(question);
    const weak = { ...situation, body: { ...situation.body, ruptureMPa: { value: 5, sd: 5 } } };
    const { thresholds } = summarise(weak, simulate(weak, drawsFor(1)));
    // One in ten: 5 − 1.28 × 5 is less than 1. −0.6 × 1 MPa × 2.5 mm/0.3 mm = −5 MPa; every second: −0.6 × 5 × 2.5/0.3.
    close(thresholds.edgesMayLift / 1e6, -5, { rel: 1e-9 });
    close(thresholds.flakesComeOff / 1e6, -25, { rel: 1e-9 });
  });
});

describe("several coats", () => {
  const oxides = (amounts: Record<string, number>, thicknessMm: number) => ({
    oxides: { basis: "moles" as const, amounts },
    thicknessMm,
  });
  const outer = oxides({ SiO2: 70, Al2O3: 8, CaO: 12, K2O: 10 }, 0.2);
  const inner = oxides({ SiO2: 62, Al2O3: 9, CaO: 14, Na2O: 10, MgO: 5 }, 0.6);

  it("melted into one are judged as their oxides mixed by weight, as thick as both", () => {
    const { mixed, coats } = checkFit({ body, glaze: { layers: [outer, inner] } });
    expect(coats!.map(({ thicknessMm }) => thicknessMm)).toEqual([0.2, 0.6]);
    const [a, b] = [outer, inner].map((coat) => analyseGlaze(coat).fired.weightPercent);
    const names = ["SiO2", "Al2O3", "CaO", "K2O", "Na2O", "MgO"];
    // 0.2 and 0.6 mm, each as heavy as its glass.
    const [light, heavy] = [outer, inner].map((coat) => appenDensity(analyseGlaze(coat).moleFractions).value!);
    const [p, q] = [light!, 3 * heavy!];
    const amounts = Object.fromEntries(
      names.map((name) => [name, (p * (a![name] ?? 0) + q * (b![name] ?? 0)) / (p + q)]),
    );
    const one = judgeFit({ body, glaze: { oxides: { basis: "weightPercent", amounts }, thicknessMm: 0.8 } });
    expect(mixed!.verdict).toBe(one.verdict);
    expect(mixed!.headline).toBe(one.headline);
    close(mixed!.probabilities.crazesOnCooling, one.probabilities.crazesOnCooling, { abs: 0.002 });
    close(mixed!.stress.value, one.stress.value, { abs: 0.11 });
    close(mixed!.stress.low, one.stress.low, { abs: 0.11 });
    expect(mixed!.stress).not.toHaveProperty("cases");
  });
  it("of a lead glaze over its like in thickness more is lead than half: 5.0 g/cm3 beside 2.5 make two thirds", () => {
    const lead = oxides({ SiO2: 60, PbO: 40 }, 0.3);
    const lime = oxides({ SiO2: 70, Al2O3: 8, CaO: 12, K2O: 10 }, 0.3);
    const [a, b] = [lead, lime].map((coat) => analyseGlaze(coat));
    const [x, y] = [a!, b!].map(({ moleFractions }) => appenDensity(moleFractions).value!);
    const share = x! / (x! + y!);
    expect(share).toBeGreaterThan(0.6);
    const { PbO } = a!.fired.weightPercent;
    // The mixture by itself: what it pulls is that of a glaze of so much lead.
    const of = (part: number) => {
      const names = ["SiO2", "Al2O3", "CaO", "K2O", "PbO"];
      const amount = (name: string) =>
        part * (a!.fired.weightPercent[name] ?? 0) + (1 - part) * (b!.fired.weightPercent[name] ?? 0);
      const amounts = Object.fromEntries(names.map((name) => [name, amount(name)]));
      return judgeFit({ body, glaze: { oxides: { basis: "weightPercent", amounts }, thicknessMm: 0.6 } }).stress.value;
    };
    expect(PbO).toBeGreaterThan(60);
    const { mixed } = checkFit({ body, glaze: { layers: [lead, lime] } });
    close(mixed!.stress.value, of(share), { abs: 0.11 });
    expect(Math.abs(of(share) - of(0.5))).toBeGreaterThan(1);
  });
  it("are told only where there are several, melted only where every coat's oxides are known", () => {
    const lone = checkFit({ body, glaze: { layers: [outer] } });
    expect([lone.coats, lone.mixed]).toEqual([undefined, undefined]);
    for (const layers of [
      [outer, stated(6)],
      [stated(6), outer],
    ]) {
      const fit = checkFit({ body, glaze: { layers } });
      expect(fit.coats).toHaveLength(2);
      expect(fit.mixed).toBeUndefined();
    }
  });
});

describe("beside the answer", () => {
  const recipe = [
    { material: "potash-feldspar", parts: 45 },
    { material: "silica", parts: 25 },
    { material: "whiting", parts: 18 },
    { material: "kaolin", parts: 12 },
  ];
  const parts = ["curves", "profile", "parts"] as const;
  it.each([[[]], [["curves"]], [["profile"]], [["parts"]], [["curves", "profile", "parts"]]] as const)(
    "comes what is asked for: %j",
    (include) => {
      const answer = checkFit({ body, glaze: { recipe }, include });
      expect(parts.filter((part) => part in answer)).toEqual(include);
    },
  );
  it("nothing comes unasked", () => {
    expect(parts.filter((part) => part in checkFit({ body, glaze: { recipe } }))).toEqual([]);
  });
  it("the glaze is drawn as in bulk where it takes up no clay, and where several coats part it from the clay", () => {
    const strain = 100 * glassContraction(6.5e-6, 320, 0.0011, 160);
    const at320 = (request: FitRequest) =>
      checkFit({ ...request, include: ["curves"] }).curves!.glaze.find(({ c }) => c === 320)!.strainPercent;
    close(at320({ ...question, doubts: { onWare: false } }), strain, { abs: 5.01e-5 });
    close(at320({ ...question, glaze: { layers: [stated(6.5), stated(6)] } }), strain, { abs: 5.01e-5 });
    expect(at320(question)).toBeLessThan(strain - 0.005);
  });
  it("the glaze's curve ends at its set point, counted once, the clay's 100 °C beyond", () => {
    const { curves, setPoint } = checkFit({ ...question, include: ["curves"] });
    for (const [curve, end] of [
      [curves!.glaze, setPoint.value],
      [curves!.body, setPoint.value + 100],
    ] as const) {
      const inner = Array.from({ length: Math.ceil((end - 20) / 20) }, (_, i) => 20 + 20 * i);
      expect(curve.map(({ c }) => c)).toEqual([...inner, end]);
    }
  });
  it("versions and the seed are echoed, the usual one where none is given", () => {
    const versions = { version: ENGINE_VERSION, dataVersion: DATA_VERSION };
    expect(checkFit(question).engine).toEqual({ ...versions, seed: DEFAULT_SEED });
    expect(judgeFit({ ...question, seed: 7 }).engine).toEqual({ ...versions, seed: 7 });
    expect(weighUp({ ...question, seed: 0 }).seed).toBe(0);
  });
});

describe("sources", () => {
  it("are those of the question, of any fit and of what is said, once each, in order", () => {
    const prepared = prepare(question);
    const said = { code: "", text: "", detail: "", quantities: [], sources: ["zinc", "aaa"] };
    const all = sourcesOf(prepared, ["more", "aaa"], [said]);
    expect(all).toEqual([...new Set([...prepared.sources, ...FIT_SOURCES, "more", "aaa", "zinc"])].sort());
  });
  it("of a whole answer hold those of trials, reasons and next steps; of a short one they do not", () => {
    const whole = checkFit(question);
    const told = [...whole.reasons, ...whole.next].flatMap(({ sources }) => sources);
    expect(whole.sources).toEqual(expect.arrayContaining([...TRIAL_SOURCES, ...told]));
    expect(judgeFit(question).sources).toEqual(sourcesOf(prepare(question), [], []));
    expect(judgeFit(question).sources).not.toContain("astm-c554");
  });
  it("of any fit are those of toughness, channelling, lifting, set point and what a glaze takes up", () => {
    expect(FIT_SOURCES).toEqual(
      expect.arrayContaining([
        "from-memory-handbooks",
        "beuth-1992",
        "soda-lime-toughness-1990",
        "inada-1978-3",
        "merritt-peters-1926",
      ]),
    );
    expect(new Set(FIT_SOURCES).size).toBe(FIT_SOURCES.length);
  });
});
