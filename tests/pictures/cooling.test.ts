/** The picture of cooling, worked out by hand: lengths, scales, the lens, room for words. */
import { describe, expect, it } from "vitest";
import { checkFit, type FitReport } from "../../api/engine/fit/index.ts";
import { Clearing } from "../../api/engine/pictures/expansion/clearing.ts";
import { type Frame, frameOf } from "../../api/engine/pictures/expansion/frame.ts";
import { at, type Length, lengthAt, lengthsOf, stepsOf } from "../../api/engine/pictures/expansion/lengths.ts";
import { placeLens } from "../../api/engine/pictures/expansion/lens.ts";
import { expansionPicture } from "../../api/engine/pictures/index.ts";
import { Sheet } from "../../api/engine/pictures/marks/sheet.ts";
import { THAW_ON_RED_STONEWARE } from "../../api/schemas/larch-lane.ts";
import { layoutFaults, shown, textsOf } from "./support.ts";

const thaw = checkFit({ ...THAW_ON_RED_STONEWARE, include: ["curves"] });
const told = (svg: string) => shown(/<title[^>]*>(.*?)<\/title>/.exec(svg)![1]!).replaceAll("\u00a0", " ");

/** A straight curve from 20 °C on, by its expansion in 10⁻⁶/K, known within a tenth of itself. */
const straight = (expansion: number, endC: number, points = 25) =>
  Array.from({ length: points }, (_, i) => {
    const c = 20 + ((endC - 20) * i) / (points - 1);
    const strainPercent = (c - 20) * expansion * 1e-4;
    return { c, strainPercent, lowPercent: strainPercent * 0.9, highPercent: strainPercent * 1.1 };
  });
/** Glaze of 8 and clay of 6 × 10⁻⁶/K from 500 °C to 20 °C: 0.384 % and 0.288 %. */
const made = (mismatch = -0.096, more: Partial<FitReport> = {}): FitReport => ({
  ...thaw,
  setPoint: { ...thaw.setPoint, value: 500, low: 470, high: 530 },
  mismatch: { ...thaw.mismatch, value: mismatch },
  curves: { glaze: straight(8, 500), body: straight(6, 740, 37) },
  ...more,
});

describe("lengths", () => {
  it("are counted from where the glaze sets", () => {
    const { setC, hotC, glaze, body } = lengthsOf(made())!;
    expect([setC, hotC]).toEqual([500, 740]);
    expect(glaze[0]!.percent).toBeCloseTo(-0.384, 9);
    expect(body[0]!.percent).toBeCloseTo(-0.288, 9);
    expect(lengthAt(body, 500)).toBeCloseTo(0, 9);
    expect(body.at(-1)!.percent).toBeCloseTo(240 * 6e-4, 9);
  });

  it("are in doubt by a tenth of what has been cooled: nothing at the set point, all of it at 20 °C", () => {
    const { glaze, body } = lengthsOf(made())!;
    expect([glaze[0]!.below, glaze[0]!.above]).toEqual([expect.closeTo(0.0384, 9), expect.closeTo(0.0384, 9)]);
    expect([glaze.at(-1)!.below, glaze.at(-1)!.above]).toEqual([0, 0]);
    expect(body[0]!.below).toBeCloseTo(0.0288, 9);
    expect(body.at(-1)!.above).toBeCloseTo(0.0144, 9);
  });

  it("stretch the glaze's to the mismatch of the report", () => {
    // 0.288 + 0.192 = 0.48 instead of 0.384: a quarter more, all along and in doubt too.
    const { glaze } = lengthsOf(made(-0.192))!;
    expect(glaze[0]).toEqual({
      c: 20,
      percent: expect.closeTo(-0.48, 9),
      below: expect.closeTo(0.048, 9),
      above: expect.closeTo(0.048, 9),
    });
    expect(glaze[12]!.percent).toBeCloseTo(-0.24, 9);
  });

  it("leave the glaze's alone where no stretch could reach the mismatch", () => {
    expect(lengthsOf(made(0.3))!.glaze[0]!.percent).toBeCloseTo(-0.384, 9);
    const still = made(-0.1, { curves: { glaze: straight(0, 500), body: straight(6, 740) } });
    expect(lengthsOf(still)!.glaze.every(({ percent }) => percent === 0)).toBe(true);
  });

  it("set no hotter than the glaze's curve reaches", () => {
    const early = made(-0.096, { setPoint: { ...thaw.setPoint, value: 650 } });
    expect(lengthsOf(early)!.setC).toBe(500);
    const late = made(-0.096, { setPoint: { ...thaw.setPoint, value: 450 } });
    expect(lengthsOf(late)!.setC).toBe(450);
  });

  it("need two points of each curve", () => {
    const [two, one] = [straight(8, 500, 2), straight(8, 500).slice(0, 1)];
    expect(lengthsOf(made(0, { curves: { glaze: two, body: two } }))).toBeDefined();
    expect(lengthsOf(made(0, { curves: { glaze: one, body: two } }))).toBeUndefined();
    expect(lengthsOf(made(0, { curves: { glaze: two, body: one } }))).toBeUndefined();
    expect(lengthsOf(made(0, { curves: { glaze: [], body: two } }))).toBeUndefined();
    expect(lengthsOf(made(0, { curves: { glaze: two, body: [] } }))).toBeUndefined();
    expect(lengthsOf(made(0, { curves: undefined }))).toBeUndefined();
  });

  it("lie on straight lines between points, and beyond the last of them where they may", () => {
    const curve = straight(10, 120, 3);
    expect(at(curve, 45)).toEqual({
      c: 45,
      strainPercent: expect.closeTo(0.025, 12),
      lowPercent: expect.closeTo(0.0225, 12),
      highPercent: expect.closeTo(0.0275, 12),
    });
    expect(at(curve, 0).strainPercent).toBe(0);
    expect(at(curve, 200).strainPercent).toBeCloseTo(0.1, 12);
    const lengths: Length[] = [0, 1, 3].map((percent, i) => ({ c: 20 + 50 * i, percent, below: 0, above: 0 }));
    expect([20, 45, 70, 95, 120, 170].map((c) => lengthAt(lengths, c))).toEqual([0, 0.5, 1, 2, 3, 5]);
  });
});

describe("steps of the clay", () => {
  /** Straight but for a rise over 20 °C up to a temperature. */
  const stepped = (upToC: number, percent: number, endC = 720) =>
    made(0, {
      curves: {
        glaze: straight(8, 500),
        body: Array.from({ length: (endC - 20) / 20 + 1 }, (_, i) => {
          const c = 20 + 20 * i;
          const strainPercent = (c - 20) * 6e-4 + (c >= upToC ? percent : 0);
          return { c, strainPercent, lowPercent: strainPercent, highPercent: strainPercent };
        }),
      },
    });

  it.each([
    [580, 0.03, [["quartz", 573, 0.03]]],
    [240, 0.02, [["cristobalite", 230, 0.02]]],
    [580, 0.011, [["quartz", 573, 0.011]]],
    [580, 0.009, []],
    [400, 0.05, []],
  ] as const)("up to %d °C by %d %%", (upToC, percent, steps) => {
    const found = stepsOf(stepped(upToC, percent)).map(({ name, c, percent }) => [name, c, Number(percent.toFixed(6))]);
    expect(found).toEqual(steps);
  });

  it("are told only where the curve reaches well beyond them", () => {
    expect(stepsOf(stepped(580, 0.03, 640))).toHaveLength(1);
    expect(stepsOf(stepped(580, 0.03, 620))).toHaveLength(0);
    expect(stepsOf(made(0, { curves: undefined }))).toEqual([]);
    expect(stepsOf(made(0, { curves: { glaze: [], body: [] } }))).toEqual([]);
  });
});

describe("scales of the cooling picture", () => {
  it.each([
    [980, 54, 954, 36, 400],
    [720, 54, 694, 36, 350],
    [350, 48, 332, 33, 300],
  ] as const)("at %d px", (width, left, right, top, tall) => {
    const frame = frameOf(new Sheet({ width }), lengthsOf(made())!);
    expect([frame.x(740), frame.x(380), frame.x(20)]).toEqual([left, (left + right) / 2, right]);
    expect(frame.y(frame.high)).toBe(top);
    expect(frame.y(frame.low)).toBe(top + tall);
    expect(frame.y((frame.high + frame.low) / 2)).toBeCloseTo(top + tall / 2, 9);
    // 0.384 with its tenth is the longest way down, 0.144 and a tenth the way up; 6 % of the whole stay free below.
    const whole = 0.384 * 1.1 + 0.144 * 1.1;
    expect(frame.low).toBeCloseTo(-0.384 * 1.1 - 0.06 * whole, 9);
  });

  it("never magnify what hardly shrinks", () => {
    const flat = { setC: 500, hotC: 740, glaze: [20, 500].map(zero), body: [20, 740].map(zero) };
    const { low, high } = frameOf(new Sheet({}), flat);
    expect(low).toBeCloseTo(-0.12 * 1.06, 12);
    // Two lines of words take 42 of 400 px above the lines.
    expect(high).toBeCloseTo((0.12 * 1.06 * 0.105) / (1 - 0.105), 9);
  });

  it("leave room above the lines from the set point on, as wide as their bands are there", () => {
    const raised = (c: number) => ({ c, percent: 0, below: 0, above: c <= 500 ? 0.1 : 0 });
    const { low, high } = frameOf(new Sheet({}), {
      setC: 500,
      hotC: 740,
      glaze: [20, 500].map(zero),
      body: [20, 500, 740].map(raised),
    });
    expect(low).toBeCloseTo(-0.02 - 0.12 * 0.06, 12);
    expect(high).toBeCloseTo((0.1 - 0.105 * low) / (1 - 0.105), 9);
  });

  function zero(c: number): Length {
    return { c, percent: 0, below: 0, above: 0 };
  }
});

describe("the cooling picture in °F", () => {
  // 500 (470 to 530) °C is 932 (878 to 986) °F; 20 °C is 68 °F, 573 °C 1063 °F; hot is 740 °C, 1364 °F (arithmetic).
  const svg = expansionPicture(made(), { temperature: "F" });
  const words = textsOf(svg).map((text) => text.words.replaceAll("\u00a0", " "));

  it("says each temperature in °F, and none in °C", () => {
    expect(words).toContain("932 °F: the skin sets");
    expect(words).toContain("9 in 10 between 878 and 986");
    expect(words).toContain("68 °F");
    expect(words.some((text) => text.startsWith("gap at 68 °F: 0.096"))).toBe(true);
    expect(shown(svg)).not.toContain("°C");
  });

  it.each([980, 720, 350] as const)("keeps its words clear of each other at %d px wide", (width) => {
    expect(layoutFaults(expansionPicture(made(), { temperature: "F", width }))).toEqual([]);
  });

  it("stands its ticks at round °F, evenly from 1200 to 200", () => {
    const ticks = textsOf(svg).filter(({ words: text }) => /^(1200 °F|1000|800|600|400|200)$/.test(text));
    const middles = ticks.map(({ left, right }) => (left + right) / 2);
    expect(ticks).toHaveLength(6);
    const steps = middles.slice(1).map((at, i) => at - middles[i]!);
    for (const step of steps) expect(step).toBeCloseTo(steps[0]!, 1);
  });
});

describe("the lens", () => {
  const gap = (tall: number) => ({ x: 900, clay: 300, glaze: 300 + tall });
  const anywhere = () => 1000;

  it("is as large as may be, in the upper right corner, and magnifies in half steps up to eight", () => {
    // 0.9 × 84 / 10 = 7.56
    expect(placeLens(gap(10), 100, 960, 84, anywhere)).toEqual({ x: 874, y: 184, r: 84, power: 7.5 });
    expect(placeLens(gap(-10), 100, 960, 84, anywhere)!.power).toBe(7.5);
    expect(placeLens(gap(0), 100, 960, 84, anywhere)!.power).toBe(8);
  });

  it("is left out where the gap is plain to see", () => {
    expect(placeLens(gap(30.2), 100, 960, 84, anywhere)!.power).toBe(2.5); // 75.6/30.2 = 2.503
    expect(placeLens(gap(30.3), 100, 960, 84, anywhere)).toBeUndefined();
  });

  it.each([
    // Its rim and 6 px below must be free.
    [100 + 120 + 6, 60],
    [100 + 120 + 5.9, 56],
    [100 + 72 + 6, 36],
    [100 + 72 + 5.9, undefined],
  ])("shrinks until it is clear of what lies at %d px", (free, r) => {
    expect(placeLens(gap(5), 100, 960, 84, () => free)?.r).toBe(r);
  });

  it("looks along all of its rim", () => {
    // Right of 956 px only 170 px are free: there the rim of a lens that ends at 958 px is as low as its middle.
    const steep = (x: number) => (x > 956 ? 170 : 1000);
    expect(placeLens(gap(5), 100, 960, 84, steep)!.r).toBe(64); // 100 + 64 + 6 = 170
  });
});

describe("room for words", () => {
  // A pixel a degree, hot at 0 px; a per cent is 100 px; both lines level at 100 px, their bands 10 px to each side.
  const frame: Frame = {
    left: 0,
    right: 700,
    top: 0,
    bottom: 400,
    height: 440,
    hotC: 720,
    low: -3,
    high: 1,
    x: (c) => 720 - c,
    y: (percent) => 100 - percent * 100,
  };
  const level = (endC: number) => Array.from({ length: 11 }, (_, i) => ({ c: 20 + ((endC - 20) * i) / 10, ...band }));
  const band = { percent: 0, below: 0.1, above: 0.1 };
  const lengths = { setC: 400, hotC: 720, glaze: level(400), body: level(720) };
  const box = (left: number, top: number) => ({ left, right: left + 50, top, bottom: top + 20 });

  it.each([
    [66, true],
    [66.5, false],
    [100, false],
    [113.5, false],
    [114, true],
  ])("is 4 px off the bands: words from %d px down to 20 more", (top, free) => {
    expect(new Clearing(frame, lengths).take(box(400, top))).toBe(free);
  });

  it("does not look for the glaze's line where it is not yet glass", () => {
    const far = { ...lengths, body: lengths.body.map((p) => ({ ...p, percent: -2 })) };
    // The glaze begins at 320 px.
    expect(new Clearing(frame, far).take(box(250, 90))).toBe(true);
    expect(new Clearing(frame, far).take(box(275, 90))).toBe(false);
  });

  it("is 4 px off other words", () => {
    const clear = (left: number, top: number) => {
      const clearing = new Clearing(frame, lengths);
      return [clearing.take(box(400, 200)), clearing.take(box(left, top))];
    };
    for (const [left, top, free] of [
      [454, 200, true],
      [453, 200, false],
      [346, 200, true],
      [347, 200, false],
      [400, 224, true],
      [400, 223, false],
      [400, 176, true],
      [400, 177, false],
    ] as const)
      expect(clear(left, top), `${left} ${top}`).toEqual([true, free]);
  });

  it("lies between the edges of a line's band", () => {
    const curve = [0, -1, -2].map((percent, i) => ({ c: 620 - 200 * i, percent, below: 0.1, above: 0.2 }));
    const clearing = new Clearing(frame, lengths);
    // Points at 100, 300 and 500 px, seen 26 px beyond the words.
    expect(clearing.edge(curve, 270, 310)).toEqual({ top: 180, bottom: 210 });
    expect(clearing.edge(curve, 325, 475)).toEqual({ top: 180, bottom: 310 });
    expect(clearing.edge(curve, 326, 474)).toEqual({ top: 80, bottom: 310 });
  });
});

describe("words of the cooling picture", () => {
  it.each([
    [-0.096, "From where it sets, the glaze shrinks 0.096 % more than the clay will let it."],
    [0.05, "From where it sets, the clay shrinks 0.050 % more than the glaze and squeezes it."],
    [0.0004, "Cold, glaze and clay come out the same length."],
    [-0.0004, "Cold, glaze and clay come out the same length."],
    [-0.0005, "From where it sets, the glaze shrinks 0.001 % more than the clay will let it."],
    [0.0006, "From where it sets, the clay shrinks 0.001 % more than the glaze and squeezes it."],
  ])("say what a mismatch of %d %% means", (mismatch, title) => {
    expect(told(expansionPicture(made(mismatch)))).toBe(title);
  });

  it("ask for the curves where they are missing", () => {
    const svg = expansionPicture(made(0, { curves: undefined }));
    expect(told(svg)).toBe("The cooling curves were not asked for.");
    expect(textsOf(svg).map(({ words }) => words)).toEqual(["The cooling curves were not asked for."]);
    expect(shown(svg)).toContain("Ask for them with include: curves.");
    const alone = textsOf(expansionPicture(made(0, { curves: undefined }), { standalone: true }));
    expect(alone.map(({ words }) => words)).toEqual([
      "The cooling curves were not asked for.",
      "Ask for them with include: curves.",
    ]);
  });

  it.each([980, 720, 350] as const)("name a temperature at most once every so many px at %d px wide", (width) => {
    const svg = expansionPicture(made(), { width });
    const numbers = textsOf(svg).filter(({ words }) => /^\d+( °C)?$/.test(words) && words !== "0");
    const every = width === 350 ? [600, 400, 200] : [700, 600, 500, 400, 300, 200, 100];
    expect(numbers.map(({ words }) => Number.parseInt(words, 10))).toEqual([...every, 20]);
    expect(numbers.filter(({ words }) => words.endsWith("°C")).map(({ words }) => words)).toEqual([
      `${every[0]} °C`,
      "20 °C",
    ]);
    const frame = frameOf(new Sheet({ width }), lengthsOf(made())!);
    for (const { words, left, right } of numbers.slice(0, -1))
      expect((left + right) / 2).toBeCloseTo(frame.x(Number.parseInt(words, 10)), 1);
  });

  it("count lengths in round steps, each at its height", () => {
    const svg = expansionPicture(made());
    const frame = frameOf(new Sheet({}), lengthsOf(made())!);
    const numbers = textsOf(svg).filter(({ words }) => /^[+−]0\.\d$|^0$/.test(words));
    expect(numbers.map(({ words }) => words)).toEqual(["−0.4", "−0.2", "0"].concat(frame.high > 0.2 ? ["+0.2"] : []));
    const lines = [...svg.matchAll(/<path d="M54 ([\d.]+)H954" fill="none" stroke="#CDD4CE"/g)].map(([, y]) =>
      Number(y),
    );
    [-0.4, -0.2, 0].forEach((percent, i) => {
      expect(lines[i]!).toBeCloseTo(frame.y(percent), 1);
    });
  });
});
