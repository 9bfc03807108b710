/** The picture of the pull, worked out by hand: what stands where on the scale, and which words when. */
import { describe, expect, it } from "vitest";
import { checkFit, type FitReport, type Outcome, type StressCase } from "../../api/engine/fit/index.ts";
import { type PictureOptions, type Trial, verdictPicture } from "../../api/engine/pictures/index.ts";
import { binCases } from "../../api/engine/pictures/verdict/bins.ts";
import { bestOf, type Threshold } from "../../api/engine/pictures/verdict/label-places.ts";
import { aimOf, linesOf, stressScale } from "../../api/engine/pictures/verdict/scale.ts";
import { THAW_ON_RED_STONEWARE } from "../../api/schemas/larch-lane.ts";
import { ringsOf, shown, textsOf } from "./support.ts";

const thaw = checkFit(THAW_ON_RED_STONEWARE);
/** Place of a stress at 980 px: 968 px stand for 280 MPa, from 6 px on. */
const x = (mpa: number) => Math.round((6 + ((mpa + 200) * 968) / 280) * 100) / 100;

/** The report with other figures; each threshold known within ±5 MPa. */
function withFigures(
  [low, value, high]: readonly [number, number, number],
  [flakes, lift, later, once]: readonly [number, number, number, number] = [-120, -90, 10, 30],
): FitReport {
  const around = (mpa: number) => ({ ...thaw.stress, value: mpa, low: mpa - 5, high: mpa + 5 });
  const cases = Array.from({ length: 20 }, (_, i) => ({
    stressMPa: low + ((high - low) * i) / 19,
    outcome: "sound" as const,
  }));
  const thresholds = {
    ...thaw.thresholds,
    flakesComeOff: around(flakes),
    edgesMayLift: around(lift),
    mayCrackInTime: around(later),
    cracksOnCooling: around(once),
  };
  return { ...thaw, stress: { ...thaw.stress, low, value, high, cases }, thresholds };
}

const drawn = (report: FitReport, options: PictureOptions & { trials?: readonly Trial[] } = {}) =>
  verdictPicture(report, options);
const wordsOf = (svg: string) => textsOf(svg).map(({ words }) => words);
/** Every path of a colour and a width of stroke. */
const strokes = (svg: string, colour: string, width: string) =>
  [...svg.matchAll(/<path d="([^"]*)" fill="none" stroke="([^"]*)" stroke-width="([^"]*)"/g)]
    .filter(([, , stroke, wide]) => stroke === colour && wide === width)
    .map(([, d]) => d!);
const INK = "#1A201E";
const HOLD = "#1C6652";

describe("lines and aim", () => {
  it("keeps lines in an order that can be drawn, cracking before lifting", () => {
    const lines = (...mpa: [number, number, number, number]) => linesOf(withFigures([-10, 0, 10], mpa));
    expect(lines(-120, -90, 10, 30)).toEqual({ flakes: -120, lift: -90, later: 10, once: 30 });
    expect(lines(-50, -60, -80, -100)).toEqual({ flakes: -100, lift: -100, later: -100, once: -100 });
    expect(lines(-50, -60, -80, 20)).toEqual({ flakes: -80, lift: -80, later: -80, once: 20 });
  });

  it.each([
    // From the near end of lifting, 5 above its line, to the near end of cracking, 5 below its line.
    [-40, -25, [-35, -30]],
    [-40, -26, undefined],
    [-90.4, 9.6, [-85, 4]],
  ] as const)("aims between lifting at %d and cracking at %d at least 5 MPa apart", (lift, later, aim) => {
    expect(aimOf(withFigures([-10, 0, 10], [-120, lift, later, 50]))).toEqual(aim);
  });

  it("takes the nearer of both ways to crack", () => {
    expect(aimOf(withFigures([-10, 0, 10], [-120, -90, 40, 20]))).toEqual([-85, 15]); // 20 − 5 (arithmetic)
  });

  it("draws the bracket over the aim and says it in figures", () => {
    const svg = drawn(withFigures([-10, 0, 10]));
    const [d] = strokes(svg, HOLD, "2");
    const [, from, to] = /^M([\d.]+) [\d.]+v-7H([\d.]+)v7$/.exec(d!)!;
    expect([Number(from), Number(to)]).toEqual([x(-85), x(5)]); // lifting at −90 + 5, cracking at 10 − 5
    const [words] = textsOf(svg).filter(({ words }) => words === "aim here: −85 to +5");
    expect((words!.left + words!.right) / 2).toBeCloseTo((x(-85) + x(5)) / 2, 1);
  });

  it.each([
    ["beyond the left end", [-400, -300, -100, 0], /^M7 [\d.]+H[\d.]+v7$/],
    ["beyond the right end", [-20, 0, 100, 120], /^M[\d.]+ [\d.]+v-7H973$/],
    ["up to the very ends", [-215, -205, 85, 90], /^M7 [\d.]+v-7H973v7$/],
  ] as const)("leaves the bracket open where the aim runs %s", (_, lines, shape) => {
    expect(strokes(drawn(withFigures([-10, 0, 10], lines)), HOLD, "2")[0]).toMatch(shape);
  });

  it.each([
    // The aim ends at the cracking line less 5, begins at the lifting line plus 5; 8 MPa must lie on the scale.
    ["left", [-400, -300, -187, 0], true],
    ["left", [-400, -300, -188, 0], false],
    ["right", [-20, 67, 150, 160], true],
    ["right", [-20, 68, 150, 160], false],
  ] as const)("draws no bracket for an aim next to all of which lies beyond the %s end: %j", (_, lines, there) => {
    expect(strokes(drawn(withFigures([-10, 0, 10], lines)), HOLD, "2").length > 0).toBe(there);
  });

  it.each([
    [[-120, -90, 10, 30], "aim here: −85 to +5"],
    [[-120, -45, -10, 30], "−40 to −15"],
    [[-120, -30, -14, 30], "aim"],
  ] as const)("says as much of the aim as has room between %j", (lines, words) => {
    expect(wordsOf(drawn(withFigures([-10, 0, 10], lines)))).toContain(words);
  });
});

describe("the axis", () => {
  it("has a tick and its number every 50 MPa, every 100 where narrow, and the end in words", () => {
    const wide = textsOf(drawn(thaw)).filter(({ words }) => /^[+−]?\d+( MPa)?$/.test(words));
    const at = (words: string) => wide.findLast((text) => text.words === words)!;
    expect(at("−200").left).toBeCloseTo(6, 2);
    for (const mpa of [150, 100, 50]) expect((at(`−${mpa}`).left + at(`−${mpa}`).right) / 2).toBeCloseTo(x(-mpa), 1);
    expect((at("0").left + at("0").right) / 2).toBeCloseTo(x(0), 1);
    expect(at("+80 MPa").right).toBeCloseTo(974, 2);
    const ticks = [...drawn(thaw).matchAll(/<path d="M([\d.]+) [\d.]+v5"/g)].map(([, place]) => Number(place));
    expect(ticks).toEqual([-200, -150, -100, -50, 0, 50].map(x));
    expect([...drawn(thaw, { width: 350 }).matchAll(/v5"/g)]).toHaveLength(3); // −200, −100, 0
  });

  it.each([
    [980, "squeezed: the skin is too big, and may lift off", "pulled: the skin is too small, and may crack"],
    [720, "squeezed: too big, may lift off", "pulled: too small, may crack"],
    [350, "squeezed: it may lift", "pulled: it may crack"],
  ] as const)("promises at %d px what has room there", (width, left, right) => {
    expect(wordsOf(drawn(thaw, { width }))).toEqual(expect.arrayContaining([left, right]));
  });
});

describe("the interval", () => {
  it("runs from end to end of what is likely, with a ring at the middle", () => {
    const svg = drawn(withFigures([-60, -25, 15]));
    const [, from, to] = /^M([\d.]+) [\d.]+H([\d.]+)$/.exec(strokes(svg, INK, "3")[0]!)!;
    expect([Number(from), Number(to)]).toEqual([x(-60), x(15)]);
    const [, ring] = /<circle cx="([\d.]+)" cy="[\d.]+" r="9.5"/.exec(svg)!;
    expect(Number(ring)).toBe(x(-25));
    expect(wordsOf(svg)).toContain("−25\u00a0MPa9 in 10 between −60 and +15");
  });

  const ends = (svg: string) =>
    strokes(svg, INK, "1.5").find((d) => /^M[\d.]+ [\d.]+(v10|l-5 5l5 5)M[\d.]+ [\d.]+(v10|l5 5l-5 5)$/.test(d))!;
  it.each([
    [[-200, -60, 80], /v10M[\d.]+ [\d.]+v10$/],
    [[-201, -60, 80], /l-5 5l5 5M[\d.]+ [\d.]+v10$/],
    [[-200, -60, 81], /v10M[\d.]+ [\d.]+l5 5l-5 5$/],
  ] as const)("ends upright on the scale and in an arrowhead beyond it: %j", (stress, shape) => {
    expect(ends(drawn(withFigures(stress)))).toMatch(shape);
  });

  it.each([
    [[-200, -200, -190], 6 + 9],
    [[70, 80, 80], 974 - 9],
  ] as const)("keeps the ring inside at the ends of the scale: %j", (stress, at) => {
    const [, ring] = /<circle cx="([\d.]+)" cy="[\d.]+" r="9.5"/.exec(drawn(withFigures(stress)))!;
    expect(Number(ring)).toBe(at);
  });

  it.each([
    ["left", [-300, -250, -201], /^M28 ([\d.]+)H6M10 [\d.]+L6 \1L10 [\d.]+$/],
    ["right", [81, 90, 100], /^M952 ([\d.]+)H974M970 [\d.]+L974 \1L970 [\d.]+$/],
  ] as const)("is an arrow of 22 px without a ring where all of it lies beyond the %s end", (_, stress, shape) => {
    const svg = drawn(withFigures(stress));
    expect(strokes(svg, INK, "3").some((d) => shape.test(d))).toBe(true);
    expect(svg).not.toContain('r="9.5"');
  });

  it("draws a bar for an interval that touches the scale in its last point", () => {
    for (const stress of [
      [-300, -250, -200],
      [80, 90, 100],
    ] as const)
      expect(strokes(drawn(withFigures(stress)), INK, "3")[0]).toMatch(/^M([\d.]+) [\d.]+H\1$/);
  });

  it("draws no ring for a mean beyond the scale, though its interval reaches in", () => {
    expect(drawn(withFigures([-260, -201, -100]))).not.toContain('r="9.5"');
    expect(drawn(withFigures([0, 81, 150]))).not.toContain('r="9.5"');
  });
});

describe("pins", () => {
  /** Middles of the boxes, and the places that their stems come from. */
  const pinsOf = (trials: readonly number[], width: 980 | 350 = 980) => {
    const svg = drawn(thaw, { width, trials: trials.map((stressMPa, i) => ({ letter: "ABCDEFGH"[i]!, stressMPa })) });
    const side = width === 350 ? 19 : 20;
    const boxes = [
      ...svg.matchAll(new RegExp(`<rect x="([-\\d.]+)" y="[\\d.]+" width="${side}" height="${side}"`, "g")),
    ];
    const stems = [...svg.matchAll(/<path d="M([\d.]+) [\d.]+V[\d.]+L([\d.]+) /g)];
    const letters = textsOf(svg).filter(({ words }) => /^[A-H]$/.test(words));
    return {
      boxes: boxes.map(([, left]) => Number(left) + side / 2),
      stems: stems.map(([, from]) => Number(from)),
      letters: letters.map(({ words }) => words),
    };
  };

  it("stand at their stress, in its order", () => {
    const { boxes, stems, letters } = pinsOf([0, -150, -75]);
    expect(letters).toEqual(["B", "C", "A"]);
    expect(stems).toEqual([x(-150), x(-75), x(0)]);
    boxes.forEach((middle, i) => {
      expect(middle).toBeCloseTo(stems[i]!, 1);
    });
  });

  it("give way to the right where they would overlap, 24 px from one to the next", () => {
    const { boxes, stems } = pinsOf([0, 0, 1]);
    expect(stems).toEqual([x(0), x(0), x(1)]);
    // 0 MPa lies at 697.43 px; the others a pitch and two on.
    boxes.forEach((middle, i) => {
      expect(middle).toBeCloseTo(x(0) + 24 * i, 1);
    });
  });

  it.each([
    [
      [90, 80, 79],
      [974 - 10 - 48, 974 - 10 - 24, 974 - 10],
    ],
    [[-200], [6 + 10]],
    [
      [-300, -250],
      [6 + 10, 6 + 10 + 24],
    ],
    [[80], [974 - 10]],
  ])("stay on the scale at its ends: %j", (trials, middles) => {
    pinsOf(trials).boxes.forEach((middle, i) => {
      expect(middle).toBeCloseTo(middles[i]!, 1);
    });
  });

  it("stand closer than their pitch where they are too many for it", () => {
    // 342 px less half a box at each end hold 323 px: 20 pins stand 17 px apart, not 23.
    const svg = drawn(thaw, {
      width: 350,
      trials: Array.from({ length: 20 }, (_, i) => ({ letter: `${i}`, stressMPa: -60 })),
    });
    const boxes = [...svg.matchAll(/<rect x="([-\d.]+)" y="[\d.]+" width="19" height="19"/g)].map(([, l]) => Number(l));
    expect(boxes[0]).toBeCloseTo(4, 1);
    expect(boxes.at(-1)! + 19).toBeCloseTo(346, 1);
    expect(boxes[1]! - boxes[0]!).toBeCloseTo(17, 1);
  });

  it("are solid where they are the one looked at, and none makes no room", () => {
    const trials = [
      { letter: "A", stressMPa: -100, current: true },
      { letter: "B", stressMPa: 0 },
    ];
    const svg = drawn(thaw, { trials });
    const fills = [...svg.matchAll(/width="20" height="20" fill="([^"]*)"/g)].map(([, fill]) => fill);
    expect(fills).toEqual([INK, "#FBFCFA"]);
    const height = (picture: string) => Number(/viewBox="0 0 980 ([\d.]+)"/.exec(picture)![1]);
    expect(height(svg) - height(drawn(thaw))).toBe(32); // a pin of 20 and 12 around it
    expect(shown(svg)).toContain("Trials: A −100, B 0 MPa.");
    expect(shown(drawn(thaw))).not.toContain("Trials");
  });
});

describe("columns of rings", () => {
  // One pixel a MPa: −200 MPa at 0 px.
  const scale = stressScale(0, 280);
  const one = (stressMPa: number, outcome: Outcome = "sound"): StressCase => ({ stressMPa, outcome });
  const columns = (cases: StressCase[], lines: number[], size = 20, tallest = 1000) =>
    binCases(cases, lines, scale, size, tallest).columns.map(({ x, size, outcomes }) => [x, size, outcomes.length]);

  it.each([
    // Without a line they count from the left end.
    ["within", [], [one(-150)], [[50, 20, 1]]],
    ["at the left end", [], [one(-200)], [[10, 20, 1]]],
    ["at the right end", [], [one(80)], [[270, 20, 1]]],
    ["with lines beyond the scale", [-250, 90], [one(-150)], [[50, 20, 1]]],
    ["with lines a pixel from the ends", [-199, 79], [one(-150)], [[50, 20, 1]]],
    // With lines they count from the line: 0 MPa lies at 200 px.
    ["left of a line", [0], [one(-1)], [[190, 20, 1]]],
    ["left of a line, second", [0], [one(-21)], [[170, 20, 1]]],
    ["right of a line", [0], [one(1)], [[210, 20, 1]]],
    // Between two lines they share the room: 30 px hold one column of 20, 12 px one of 12, 50 px two of 25.
    ["between lines", [0, 30], [one(5)], [[215, 20, 1]]],
    ["between close lines", [0, 12], [one(5)], [[206, 12, 1]]],
    [
      "between far lines",
      [0, 50],
      [one(24), one(26)],
      [
        [212.5, 20, 1],
        [237.5, 20, 1],
      ],
    ],
    [
      "between lines that hold just two",
      [0, 40],
      [one(19), one(21)],
      [
        [210, 20, 1],
        [230, 20, 1],
      ],
    ],
    ["between two lines at one place", [0, 0], [one(5)], [[210, 20, 1]]],
    ["next to an end closer than a ring", [70], [one(75, "crazesLater")], [[275, 10, 1]]],
  ] as const)("stand %s", (_, lines, cases, expected) => {
    expect(columns([...cases], [...lines])).toEqual(expected);
  });

  it.each([
    ["crazesLater", 0, 210],
    ["crazesOnCooling", -0.3, 210],
    ["crazesLater", -0.4, 190],
    ["sound", 0, 190],
    ["sound", 0.3, 190],
    ["shivers", 0.3, 190],
    ["sound", 0.4, 210],
  ] as const)("puts %s at %d MPa on the side that it belongs to", (outcome, mpa, at) => {
    expect(columns([one(mpa, outcome)], [0])[0]![0]).toBe(at);
  });

  it("lets a sound case on the line of flakes stand right of it, where there is a line beyond", () => {
    // Lines at −100 and 0 MPa: 100 and 200 px; the room between them holds five columns of 20.
    expect(columns([one(-100)], [-100, 0])).toEqual([[110, 20, 1]]);
    expect(columns([one(-100.3)], [-100, 0])).toEqual([[110, 20, 1]]);
    expect(columns([one(-100.4)], [-100, 0])).toEqual([[90, 20, 1]]);
    expect(columns([one(-100, "shivers")], [-100, 0])).toEqual([[90, 20, 1]]);
    expect(columns([one(0)], [-100, 0])).toEqual([[190, 20, 1]]);
    expect(columns([one(-100)], [-100])).toEqual([[90, 20, 1]]);
  });

  it("piles cases beyond the scale four high at its ends, then inward", () => {
    const five = (mpa: number) => Array.from({ length: 5 }, () => one(mpa));
    expect(columns(five(100), [0])).toEqual([
      [270, 20, 4],
      [250, 20, 1],
    ]);
    expect(columns(five(-300), [0])).toEqual([
      [10, 20, 4],
      [30, 20, 1],
    ]);
    expect(columns(five(-300), [])).toEqual([[10, 20, 5]]);
    const { beyond } = binCases([...five(100), one(80), one(-200), one(-201)], [], scale, 20, 1000);
    expect([beyond.left.length, beyond.right.length]).toEqual([1, 5]);
  });

  it("shrinks rings until the highest column has room, to 7 px at the least", () => {
    const many = Array.from({ length: 5 }, () => one(-150));
    const pitch = (tallest: number) => binCases(many, [], scale, 20, tallest).pitch;
    expect(pitch(100)).toBe(20);
    expect(pitch(99)).toBeCloseTo(20 * 0.88, 9);
    // 20 × 0.88⁹ = 6.33 is the first below 7; 0.88⁸ would still be 7.19 (arithmetic).
    expect(pitch(1)).toBeCloseTo(20 * 0.88 ** 9, 9);
    expect(binCases([], [], scale, 20, 100)).toEqual({ columns: [], pitch: 20, beyond: { left: [], right: [] } });
  });
});

describe("words of the thresholds", () => {
  const scale = stressScale(0, 1000);
  const label = (x: number, width = 60): Threshold => ({ mpa: 0, x, beyond: 0, words: ["", ""], tint: "pull", width });
  /** Steps of 20 px, words 36 px tall; nothing below 20 px is free. */
  const places = (all: Threshold[], skyline: (from: number, to: number) => number = () => 14) =>
    bestOf(all, scale, skyline, 20, 36).map(({ side, tier, from, to }) => ({ side, tier, from, to }));

  it("stand right of their line, 7 px off, as low as is free", () => {
    expect(places([label(100)])).toEqual([{ side: 1, tier: 1, from: 107, to: 167 }]);
    expect(places([label(100)], () => 0)[0]!.tier).toBe(0);
    expect(places([label(100)], () => 41)[0]!.tier).toBe(3);
  });

  it("stand left of their line where the end of the scale is near", () => {
    expect(places([label(960)])).toEqual([{ side: -1, tier: 1, from: 893, to: 953 }]);
    expect(places([label(934)])[0]!.side).toBe(1); // ends at 1001, within a pixel
    expect(places([label(934.5)])[0]!.side).toBe(-1);
  });

  it("let what cracks in time stand left, away from what cracks at once", () => {
    const sides = places([label(100), label(300), label(500), label(700)]).map(({ side }) => side);
    expect(sides).toEqual([1, 1, -1, 1]);
  });

  it.each([
    // The first, which has no room on its left, ends at 87; words from 135 on, 48 px off, are no neighbours.
    [128, [1, 1]],
    [127, [1, 2]],
  ])("stagger neighbours that would read as one sentence: lines at 20 and %d", (other, tiers) => {
    const found = places([label(20), label(other)]);
    expect(found.map(({ tier }) => tier).sort()).toEqual(tiers);
  });

  it("look 4 px beyond their words for what is in the way", () => {
    const hill = (from: number, to: number) => (from < 104 && to > 170 ? 60 : 14);
    expect(places([label(100)], hill)).toEqual([{ side: -1, tier: 1, from: 33, to: 93 }]);
  });

  it("stand inside where their line lies beyond an end", () => {
    const [left] = places([{ ...label(0), beyond: -1 }]);
    const [right] = places([{ ...label(1000), beyond: 1 }]);
    expect([left!.from, left!.to, right!.from, right!.to]).toEqual([0, 60, 940, 1000]);
  });

  it("say which way a threshold beyond the scale lies", () => {
    const svg = drawn(withFigures([-10, 0, 10], [-260, -90, 10, 95]));
    const at = (words: string) => textsOf(svg).find((text) => text.words === words)!;
    expect(at("−260").left).toBeCloseTo(6 + 16, 1);
    expect(at("flakes come off").left).toBeCloseTo(6, 1);
    expect(at("+95").right).toBeCloseTo(974 - 16, 1);
    expect(at("cracks as it cools").right).toBeCloseTo(974, 1);
  });
});

describe("rings", () => {
  it("are twenty, each over its stress within a ring's width", () => {
    const svg = drawn(withFigures([-60, -25, 15], [-150, -120, 60, 70]));
    const middles = ringsOf(svg)
      .map(({ left, right }) => (left + right) / 2)
      .sort((a, b) => a - b);
    expect(middles).toHaveLength(20);
    middles.forEach((middle, i) => {
      expect(Math.abs(middle - x(-60 + (75 * i) / 19))).toBeLessThan(21);
    });
  });

  it("of one column stand in the order sound, in time, at once, lifting, from the ground up", () => {
    const report = withFigures([-10, 0, 10]);
    const outcomes: Outcome[] = ["shivers", "crazesOnCooling", "crazesLater", "sound"];
    // A column right of lines that lie far to the left, so that every outcome stands in it.
    report.stress.cases = outcomes.map((outcome) => ({ stressMPa: 0, outcome }));
    for (const threshold of Object.values(report.thresholds)) Object.assign(threshold, { value: -180 });
    const rings = [...drawn(report).matchAll(/<use href="#[\w-]+-(\w+)" transform="translate\([\d.]+ ([\d.]+)\)/g)];
    const upward = rings.map(([, outcome, y]) => ({ outcome, y: Number(y) })).sort((a, b) => b.y - a.y);
    expect(upward.map(({ outcome }) => outcome)).toEqual(["sound", "crazesLater", "crazesOnCooling", "shivers"]);
  });

  it("count in the description as they are drawn", () => {
    const report = withFigures([-60, -25, 15]);
    const outcomes: Outcome[] = ["crazesOnCooling", "crazesLater", "crazesLater", "shivers"];
    report.stress.cases.forEach((each, i) => {
      each.outcome = outcomes[i] ?? "sound";
    });
    expect(shown(drawn(report))).toContain("1 crack as the kiln cools, 2 in time, 16 hold and 1 shiver.");
  });

  it("say that no stress is clear of both risks where none is", () => {
    expect(shown(drawn(withFigures([-10, 0, 10], [-60, -20, -15, 10])))).toContain("no stress is clear of both risks");
    expect(shown(drawn(withFigures([-10, 0, 10])))).toContain("Aim for −85 to +5.");
  });
});
