/** Walls cut through, worked out by hand: stress at each depth, the edge of a coat that runs, and what is said of scale. */
import { describe, expect, it } from "vitest";
import { checkFit, DEFAULTS, type FitReport, type Ware } from "../../api/engine/fit/index.ts";
import { stressPicture } from "../../api/engine/pictures/index.ts";
import { edgeOf, thickening } from "../../api/engine/pictures/running/edge.ts";
import { wallOf } from "../../api/engine/pictures/stress/layers.ts";
import { stressScale } from "../../api/engine/pictures/verdict/scale.ts";
import { estimateRunning, type RunningReport } from "../../api/engine/running/index.ts";
import { THAW, THAW_ON_RED_STONEWARE } from "../../api/schemas/larch-lane.ts";
import { shown, textsOf } from "./support.ts";

const thaw = checkFit(THAW_ON_RED_STONEWARE);
const run = estimateRunning({ glaze: THAW, firing: { peakC: 1240 } });
const plain = (words: string) => shown(words).replaceAll("\u00a0", " ");
const titleOf = (svg: string) => plain(/<title[^>]*>(.*?)<\/title>/.exec(svg)![1]!);
const wordsOf = (svg: string) => textsOf(svg).map(({ words }) => plain(words));

/** The answer with another stress and another thickness of the coat. */
function made(value: number, mm = 0.3, [low, high] = [value - 20, value + 20]): FitReport {
  const thickness = { ...thaw.glaze.thickness, value: mm };
  return { ...thaw, stress: { ...thaw.stress, value, low, high }, glaze: { ...thaw.glaze, thickness } };
}

describe("a glazed wall", () => {
  it.each([
    // The clay carries what the glaze does not: −stress × coats × thickness / wall.
    ["both-faces", ["glaze", "clay", "glaze"], 4],
    ["one-face", ["glaze", "clay"], 2],
  ] as const)("%s: %j", (glazed, layers, mpa) => {
    const wall = wallOf(made(-40), { wallMm: 6, glazed });
    expect(wall.layers.map(({ name }) => name)).toEqual(layers);
    expect(wall.layers[1]!.outer).toBeCloseTo(mpa, 9);
    expect(wall.layers[1]!.inner).toBeCloseTo(mpa, 9);
    // −60 to −20 in the glaze: from half to one and a half of it in the clay.
    expect(wall.layers[1]!.likely).toEqual([expect.closeTo(mpa / 2, 9), expect.closeTo(mpa * 1.5, 9)]);
    expect(wall.layers[0]!.likely).toEqual([-60, -20]);
    expect(wall.layers[2]?.likely).toBeUndefined();
    expect(wall.bends).toBeUndefined();
  });

  it("is glazed on both faces and as thick as usual where nothing is said", () => {
    expect(wallOf(made(-40)).layers).toEqual(
      wallOf(made(-40), { wallMm: DEFAULTS.wallMm, glazed: "both-faces" }).layers,
    );
  });

  it.each([
    [1, "hollow"],
    [0.99, undefined],
    [-0.99, undefined],
    [-1, "domed"],
  ] as const)("free to bend turns, at %d MPa, %s", (mpa, bends) => {
    expect(wallOf(made(mpa), { glazed: "one-face-free" }).bends).toBe(bends);
    const svg = stressPicture(made(mpa), { ware: { glazed: "one-face-free" } });
    expect(wordsOf(svg).includes(`The glazed face turns ${bends}.`)).toBe(bends !== undefined);
  });

  it("has one profile whatever the mismatch, which only scales it", () => {
    const layers = (value: number) =>
      wallOf({ ...made(-40), mismatch: { ...thaw.mismatch, value } }, { wallMm: 5, glazed: "one-face-free" }).layers;
    for (const [i, layer] of layers(0).entries()) {
      expect(layer.outer).toBeCloseTo(layers(0.2)[i]!.outer, 6);
      expect(layer.inner).toBeCloseTo(layers(-0.1)[i]!.inner, 6);
    }
  });

  it.each([
    [1, ["glaze", "clay", "glaze"]],
    [2, ["outer coat", "inner coat", "clay", "inner coat", "outer coat"]],
    [3, ["outer coat", "coat", "inner coat", "clay", "inner coat", "coat", "outer coat"]],
  ])("of %d coats is named from the outside in", (many, names) => {
    const coats = Array.from({ length: many }, () => ({ thicknessMm: 0.2, stress: thaw.stress }));
    const report = { ...made(-40), coats } as FitReport;
    expect(wallOf(report).layers.map(({ name }) => name)).toEqual(names);
  });
});

describe("words on a wall", () => {
  it.each([
    [1, "Cold, the glaze is stretched at +1 MPa and the clay squeezed in return."],
    [-1, "Cold, the glaze is squeezed at −1 MPa and the clay stretched in return."],
    [0.99, "Cold, glaze and clay hardly pull on each other."],
    [-0.99, "Cold, glaze and clay hardly pull on each other."],
  ])("say what %d MPa do", (mpa, title) => {
    expect(titleOf(stressPicture(made(mpa)))).toBe(title);
  });

  it.each([
    // At 980 px the clay is drawn 128 px thick, a coat 46 px: of a 6 mm wall 2.156 mm would be to scale.
    [0.3, 6, "one-face", "Glaze drawn 7.2 times too thick."],
    [0.2157, 6, "one-face", "Glaze drawn 10 times too thick."],
    [0.2, 6, "one-face", "Glaze drawn 11 times too thick."],
    [2.05, 6, "one-face", "Glaze drawn 1.1 times too thick."], // 1.052
    [2.06, 6, "one-face", "Drawn to scale."], // 1.047
    [2.26, 6, "one-face", "Drawn to scale."], // 0.954
    [2.28, 6, "one-face", "Clay drawn 1.1 times too thick."], // 0.946
    [5, 6, "one-face", "Clay drawn 2.3 times too thick."], // 1/0.431
  ] as const)("say how a coat of %d mm on %d mm of clay, %s, is drawn", (mm, wallMm, glazed, words) => {
    expect(wordsOf(stressPicture(made(-40, mm), { ware: { wallMm, glazed } }))).toContain(words);
  });

  it("say that coats of different thickness are not to scale", () => {
    const coats = [0.2, 0.4].map((thicknessMm) => ({ thicknessMm, stress: thaw.stress }));
    expect(wordsOf(stressPicture({ ...made(-40), coats } as FitReport))).toContain("Not drawn to scale.");
    const alike = [0.3, 0.3].map((thicknessMm) => ({ thicknessMm, stress: thaw.stress }));
    // Two coats of 30 px: 30/0.3/(128/6) = 4.69.
    expect(wordsOf(stressPicture({ ...made(-40), coats: alike } as FitReport, { ware: { wallMm: 6 } }))).toContain(
      "Glaze drawn 4.7 times too thick.",
    );
  });

  it("name layers with their thickness where there is room", () => {
    const svg = (width: 980 | 350) => wordsOf(stressPicture(made(-40), { width, ware: { wallMm: 5.25 } }));
    expect(svg(980)).toEqual(expect.arrayContaining(["glaze, 0.30 mm", "clay, 5.3 mm"]));
    expect(svg(350).join()).not.toContain("glaze, ");
  });

  it.each([
    ["both-faces", "glazed on both faces,"],
    ["one-face", "glazed on one face, closed so that it cannot bend,"],
    ["one-face-free", "glazed on one face, free to bend,"],
  ] as const)("tell of a wall %s", (glazed, words) => {
    const told = plain(stressPicture(made(-40), { ware: { wallMm: 6, glazed } }));
    expect(told).toContain(`Stress through a wall ${words}`);
    expect(told).toContain("glaze as a whole −40, 9 in 10 between −60 and −20.");
  });
});

describe("stress at each depth", () => {
  const drawn = (report: FitReport, ware: Ware = { wallMm: 6, glazed: "one-face" }) => stressPicture(report, { ware });
  /** The scale as drawn, by the line of nought and the axis. */
  const scaleOf = (svg: string) => {
    const ticks = [...svg.matchAll(/<path d="M([\d.]+) [\d.]+v5"/g)].map(([, x]) => Number(x));
    return stressScale(ticks[0]!, 974);
  };

  it("is a bar from nought to the stress", () => {
    const svg = drawn(made(-40));
    const { x } = scaleOf(svg);
    const [, zero, to] = /<path d="M([\d.]+) 27H([\d.]+)L/.exec(svg)!;
    expect([Number(zero), Number(to)]).toEqual([expect.closeTo(x(0), 1), expect.closeTo(x(-40), 1)]);
  });

  it.each([
    // Words 9 px off the interval on its right; else on its left; else off the bar, above the interval.
    ["right of the interval", made(-40), "−40 MPa", "left", (x: (mpa: number) => number) => x(0) + 9],
    [
      "right of the interval that reaches further",
      made(-10),
      "−10 MPa",
      "left",
      (x: (mpa: number) => number) => x(10) + 9,
    ],
    ["left of what reaches the right end", made(60), "+60 MPa", "right", (x: (mpa: number) => number) => x(0) - 9],
    [
      "left of an interval that reaches further",
      made(20, 0.3, [-20, 79]),
      "+20 MPa",
      "right",
      (x: (mpa: number) => number) => x(-20) - 9,
    ],
    ["beside the bar", made(20, 0.3, [-190, 79]), "+20 MPa", "left", (x: (mpa: number) => number) => x(20) + 9],
    [
      "on the bar's other side",
      made(70, 0.3, [-190, 79]),
      "+70 MPa",
      "right",
      (x: (mpa: number) => number) => x(0) - 9,
    ],
  ] as const)("is said %s", (_, report, words, edge, place) => {
    const svg = drawn(report);
    const text = textsOf(svg).find((each) => each.words === words)!;
    expect(text[edge]).toBeCloseTo(place(scaleOf(svg).x), 1);
  });

  it("is said from face to face where it slopes by 1 MPa or more", () => {
    const words = wordsOf(drawn(made(40), { wallMm: 5, glazed: "one-face-free" }));
    expect(words.some((each) => /^\+\d+ to \+\d+ MPa$/.test(each))).toBe(true);
    expect(words.some((each) => /^−\d+ to \+\d+ MPa$/.test(each))).toBe(true);
    const flat = wordsOf(drawn(made(1), { wallMm: 30, glazed: "one-face-free" }));
    expect(flat).toContain("+1 MPa");
  });

  it("ends in an arrowhead where the interval runs on beyond the scale", () => {
    const ends = (low: number, high: number) =>
      /<path d="(M[^"]*(?:v10|5 5)M[^"]*)"/.exec(drawn(made(0, 0.3, [low, high])))![1];
    expect(ends(-200, 80)).toMatch(/v10M.*v10$/);
    expect(ends(-201, 80)).toMatch(/l-5 5l5 5M.*v10$/);
    expect(ends(-200, 81)).toMatch(/v10M.*l5 5l-5 5$/);
  });
});

describe("the edge of a coat that runs", () => {
  const quantity = (value: number, low = value, high = value) => ({ ...run.run, value, low, high });
  const report = (
    [low, value, high]: [number, number, number],
    { clearanceMm = 10, glazedMm = 100, thickness = 0.5, roll = 1 } = {},
  ): RunningReport => ({
    ...run,
    run: quantity(value, low, high),
    roll: quantity(roll),
    thickness: quantity(thickness),
    wall: { ...run.wall, clearanceMm, glazedMm },
    profile: [0.3, 0.4, 0.2].map((thicknessMm) => ({ ...run.profile[0]!, thicknessMm })),
  });

  it.each([
    // A quarter more than the far end of the interval is shown, 3 mm at the least; a shelf within four such, or 10 mm.
    [[1, 2, 4], { clearanceMm: 21 }, { upMm: 5, downMm: 5, shelf: false }],
    [[1, 2, 4], { clearanceMm: 20 }, { upMm: 20, downMm: 20, shelf: true }],
    [[0, 0, 0], { clearanceMm: 13 }, { upMm: 3, downMm: 3, shelf: false }],
    [[0, 0, 0], { clearanceMm: 12 }, { upMm: 12, downMm: 12, shelf: true }],
    [[0, 0, 0], { clearanceMm: 1 }, { upMm: 3, downMm: 1, shelf: true }],
    [[8, 20, 40], { clearanceMm: 201, glazedMm: 30 }, { upMm: 30, downMm: 50, shelf: false }],
  ] as const)("runs %j mm: of a wall %j the picture shows %j", (run, wall, shown) => {
    expect(edgeOf(report([...run], wall))).toMatchObject(shown);
  });

  it("carries every length that is drawn", () => {
    expect(edgeOf(report([1, 2, 4]))).toMatchObject({
      coatMm: 0.5,
      filmMm: 0.4,
      rollMm: 1,
      runMm: 2,
      lowMm: 1,
      highMm: 4,
    });
  });

  it.each([
    // At 20 px/mm: half a millimetre is 10 px, a roll of 1 mm 20 px.
    [0.5, 1, 20, 1],
    [0.25, 1, 20, 1], // 5 px just show
    [0.24, 1, 20, 2], // 4.8 px are doubled: whole numbers
    [0.1, 1, 20, 3], // 2 px need 2.5 times
    [0.02, 1, 20, 15], // 0.4 px need 12.5: in fives
    [0.025, 1, 20, 10],
    [0.5, 2.2, 20, 1],
    [0.5, 4.4, 20, 0.5], // 88 px of roll may take 44
  ])("of %d mm with a roll of %d mm at %d px/mm is drawn %d times as thick", (thickness, roll, mmPx, times) => {
    expect(thickening(edgeOf(report([1, 2, 4], { thickness, roll })), mmPx)).toBeCloseTo(times, 9);
  });
});
