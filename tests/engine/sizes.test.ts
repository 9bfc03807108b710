/** Worked examples of the doc comments, to the digits shown; what is refused, warned of and said. */
import { describe, expect, it } from "vitest";
import { Faults, lengthReader, readVolume, readWeight, roundLength } from "../../api/engine/lengths/index.ts";
import { knownShrinkage } from "../../api/engine/shrinkage/index.ts";
import {
  crossing,
  type SizesRequest,
  sizeFor,
  sphereThrough,
  volumeBetween,
  wayOf,
  workOutSizes,
} from "../../api/engine/sizes/index.ts";
import { close } from "../support/close.ts";
import { issuesOf as issuesIn } from "../support/refusals.ts";

it("examples of the doc comments", () => {
  const faults = new Faults();
  close(lengthReader("in", faults)("3½", "/height", "The height"), 88.9, { abs: 1e-9 });
  expect(readVolume("350 ml", "/holds", "The capacity", faults)).toBe(350);
  expect(readWeight("2.5 kg", "/dry", "The dry weight", faults)).toBe(2500);
  expect(roundLength(102.27, "mm").text).toBe("102 mm");
  const way = wayOf(knownShrinkage({ percent: 12, plusMinus: 0 }), false);
  expect(sizeFor("rim", 90, way, "mm").throwTo.text).toBe("102 mm");
  expect(sphereThrough(0, 50, 50)).toMatchObject({ radius: 50, centre: 50 });
  close(volumeBetween([sphereThrough(0, 50, 50)], 0, 50), (2 / 3) * Math.PI * 50 ** 3, { rel: 1e-12 });
  const bowTie = [
    { x: 0, y: 0 },
    { x: 1, y: 1 },
    { x: 1, y: 0 },
    { x: 0, y: 1 },
  ];
  expect(crossing(bowTie)).toEqual([0, 2]);
  const { sizes } = workOutSizes({ shrinkage: { percent: 12 }, fired: { rim: "90 mm" } });
  expect(sizes[0]?.throwTo.text).toBe("102 mm");
});

it("leather hard lies nearer to bone dry than to plastic", () => {
  const { sizes } = workOutSizes({
    shrinkage: { percent: 12, dryingPercent: 6, plusMinus: 0 },
    fired: { diameter: "440 mm" },
  });
  // 500 mm thrown: bone dry 470, leather hard about four fifths of the way (from memory).
  close(sizes[0]?.boneDry.value, 470, { abs: 0.005 });
  close(sizes[0]?.leatherHard.value, 476, { abs: 0.005 });
});

it("what must fit is set finer than what need not", () => {
  expect(roundLength(95.4545, "mm", true).text).toBe("95.5 mm");
  expect(roundLength(95.4545, "cm", true).text).toBe("9.55 cm");
  expect(roundLength(95.4545, "in", true).text).toBe("3 49/64 in");
});

const shrinkage = { percent: 12, plusMinus: 0.5 };
/** Nothing shrinks and clay weighs as much as water, so that a slab of 100 by 100 mm weighs 10 g a millimetre. */
const still = { percent: 0, plusMinus: 0 };
const asWater = { plasticDensityGPerCm3: 1, trimmingPercent: 0, throwingLossPercent: 0 };
const mug = { form: "straight", diameter: 80, height: 95, dimensions: "outside", wall: 5 } as const;

const issuesOf = (request: Partial<SizesRequest>) => issuesIn(() => workOutSizes({ shrinkage, ...request }));

describe("an outline crosses itself", () => {
  type Two = readonly [number, number];
  const points = (...corners: Two[]) => corners.map(([x, y]) => ({ x, y }));

  // Stretches a–b and c–d; each also stood on end, with ends and stretches changed about.
  it.each<[string, boolean, Two, Two, Two, Two]>([
    ["they cross", true, [0, 0], [2, 2], [2, 0], [0, 2]],
    ["one ends on the other", true, [0, 0], [4, 0], [1, 0], [3, 3]],
    ["one ends on a slope", true, [0, 0], [4, 4], [1, 1], [3, 0]],
    ["they share an end", true, [0, 0], [4, 0], [4, 0], [5, 3]],
    ["they lie on one another", true, [0, 0], [4, 0], [1, 0], [6, 0]],
    ["one points at the other and stops short", false, [0, 0], [4, 0], [5, 0], [5, 3]],
    ["one passes the end of the other", false, [0, 0], [4, 0], [5, -1], [6, 2]],
    ["one lies in a corner beside the other", false, [0, 0], [4, 4], [3, 1], [8, 1]],
    ["they run side by side", false, [0, 0], [4, 0], [0, 1], [4, 1]],
    ["they follow one another on one line", false, [0, 0], [4, 0], [5, 0], [9, 0]],
  ])("where %s: %s", (_, meet, a, b, c, d) => {
    for (const turned of [[a, b, c, d], [a, b, c, d].map(([x, y]): Two => [y, x])] as [Two, Two, Two, Two][]) {
      const [p, q, r, s] = turned;
      for (const [one, other] of [
        [
          [p, q],
          [r, s],
        ],
        [
          [r, s],
          [p, q],
        ],
      ] as [[Two, Two], [Two, Two]][]) {
        for (const [i, j] of [
          [0, 0],
          [0, 1],
          [1, 0],
          [1, 1],
        ] as const) {
          const line = points(one[i]!, one[1 - i]!, other[j]!, other[1 - j]!);
          expect(crossing(line), JSON.stringify(line)).toEqual(meet ? [0, 2] : undefined);
        }
      }
    }
  });

  it("with the way back from the last point to the first where it is closed, and only there", () => {
    const kite = points([0, 0], [2, -1], [2, 1], [4, 0]);
    expect(crossing(kite)).toBeUndefined();
    expect(crossing(kite, true)).toEqual([1, 3]);
  });
});

describe("clay on the scale", () => {
  // To 5 g below 200 g, 10 g above, 0.1 kg above 5 kg; pounds and ounces for inches (16 oz are 1 lb, 28.35 g 1 oz).
  it.each([
    [153, "155 g", "5 oz"],
    [204, "200 g", "7 oz"],
    [1, "5 g", "1 oz"],
    [454, "450 g", "1 lb"],
    [539, "540 g", "1 lb 3 oz"],
    [998, "1 kg", "2 lb 3 oz"],
    [1234, "1.23 kg", "2 lb 12 oz"],
    [4990, "4.99 kg", "11 lb"],
    [5040, "5 kg", "11 lb 2 oz"],
    [5060, "5.1 kg", "11 lb 2 oz"],
  ])("%d g are wedged as %s, or %s", (grams, metric, imperial) => {
    const of = (answerIn: "mm" | "cm" | "in") =>
      workOutSizes({
        shrinkage: still,
        answerIn,
        slabs: [{ length: 100, width: 100, thickness: grams / 10 }],
        clay: asWater,
      }).slabs[0]?.clay?.wedge;
    expect([of("mm"), of("cm"), of("in")]).toEqual([metric, metric, imperial]);
  });

  it("for all pieces is told where there are several, and not for a nest of many sizes", () => {
    const forAll = (set?: SizesRequest["set"]) =>
      workOutSizes({ shrinkage: still, profile: mug, clay: asWater, ...(set ? { set } : {}) }).clay?.forAll;
    expect([forAll(), forAll({ pieces: 1 }), forAll({ pieces: 4, scales: [1, 0.5] })]).toEqual([null, null, null]);
    // π (40² · 95 − 35² · 90)/1000 = 131.161 g each, 262.3 g for two.
    expect(forAll({ pieces: 2 })).toMatchObject({ pieces: 2, weight: { value: 0.26, unit: "kg" }, text: "260 g" });
  });
});

describe("what cannot be", () => {
  const points = (n: number) => Array.from({ length: n }, (_, i) => ({ across: 80, up: i }));
  const outline = { form: "points", dimensions: "outside", wall: 5 } as const;
  const notes = (n: number) => Array.from({ length: n }, () => ({ name: "rim", size: 110 }));
  const tile = { length: 100, width: 100 };
  const lid = { seat: 84, stage: "fired", clearance: 1 } as const;

  it.each<[Partial<SizesRequest>, string, string]>([
    [{}, "", "Ask for something"],
    [{ profile: mug, clay: { plasticDensityGPerCm3: 0.5 } }, "/clay/plasticDensityGPerCm3", "between 1 and 3 g/cm3"],
    [{ profile: mug, clay: { throwingLossPercent: 95 } }, "/clay/throwingLossPercent", "between 0 and 90 %"],
    [{ fired: { rim: 80, gallery: 80 } }, "/fired/gallery", "inside the rim: 80 mm is not less than 80 mm"],
    [{ fired: { height: 100, depth: 101 } }, "/fired/depth", "measured inside, down to the floor"],
    [{ fired: { rim: 80, wall: 40 } }, "/fired/wall", "Two walls of 40 mm fill a rim of 80 mm"],
    [{ fired: { height: 10, floor: 10 } }, "/fired/floor", "A floor of 10 mm fills a pot 10 mm tall"],
    [{ lid: { ...lid, seat: "84 ells" } }, "/lid/seat", "I don't know the unit"],
    [{ lid: { ...lid, flange: 85 } }, "/lid/flange", "A lid of 85 mm is larger than its pot"],
    [{ lid: { ...lid, flange: 84 } }, "/lid/flange", "A lid of 84 mm leaves no play in its pot"],
    [{ lid: { ...lid, sits: "over", flange: 84 } }, "/lid/flange", "84 mm across inside leaves no play on the neck"],
    [{ lid: { ...lid, sits: "over", flange: 83 } }, "/lid/flange", "83 mm across inside is smaller than the neck"],
    [{ lid: { ...lid, sits: "over", flange: 84 } }, "/lid/flange", "84 mm fired. Make it 86 mm"],
    [{ lid: { ...lid, clearance: 42 } }, "/lid/clearance", "leave nothing of a lid for a seat of 84 mm"],
    [{ oldNotes: { shrinkage, thrown: [] } }, "/oldNotes/thrown", "1 to 200 sizes; these are 0"],
    [{ oldNotes: { shrinkage, thrown: notes(201) } }, "/oldNotes/thrown", "these are 201"],
    [{ oldNotes: { shrinkage: { percent: -9 }, thrown: notes(1) } }, "/oldNotes/shrinkage/percent", "does not grow"],
    [{ profile: { ...mug, wall: "5 ells" } }, "/profile/wall", "I don't know the unit"],
    [{ profile: { ...mug, diameter: 0 } }, "/profile/diameter", "The diameter is 0"],
    [
      { profile: { ...mug, dimensions: "inside", diameter: 1, height: 1, holds: "1000 l" } },
      "/profile/holds",
      "No size of this shape",
    ],
    [
      {
        profile: {
          form: "tapered",
          rim: 80,
          height: 90,
          wall: 5,
          dimensions: "inside",
        } as SizesRequest["profile"] & {},
      },
      "/profile/foot",
      "The foot is missing",
    ],
    [
      { profile: { ...outline, points: points(1) } },
      "/profile/points",
      "2 to 200 points, from the foot up; this has 1",
    ],
    [{ profile: { ...outline, points: points(201) } }, "/profile/points", "this has 201"],
    [
      {
        profile: {
          ...outline,
          points: [
            { across: 70, up: 0 },
            { across: 90, up: "high" },
          ],
        },
      },
      "/profile/points/1/up",
      "no length I can read",
    ],
    [{ fired: { rim: 90 }, set: { scales: [] } }, "/set/scales", "1 to 50 steps; this has 0"],
    [{ fired: { rim: 90 }, set: { scales: Array(51).fill(1) } }, "/set/scales", "this has 51"],
    [{ fired: { rim: 90 }, set: { scales: [1, 0.01] } }, "/set/scales/1", "between 0.05 and 20"],
    [{ slabs: Array(51).fill(tile) }, "/slabs", "up to 50 kinds of slab; these are 51"],
    [{ shrinkage: { percent: -12 }, lid: { ...lid, stage: "bone-dry" } }, "/shrinkage/percent", "does not grow"],
  ])("%j is told once, at its place", (request, pointer, words) => {
    const issues = issuesOf(request);
    expect(issues.map((issue) => issue.pointer)).toEqual([pointer]);
    expect(issues[0]?.message).toContain(words);
  });

  it("the limits of a list, and what may be asked, are told with it", () => {
    const allowed = (request: Partial<SizesRequest>) => issuesOf(request)[0]?.allowed;
    expect(allowed({})).toEqual(["fired", "lid", "profile", "slabs", "oldNotes"]);
    expect(allowed({ slabs: Array(51).fill(tile) })).toEqual([50]);
    expect(allowed({ oldNotes: { shrinkage, thrown: [] } })).toEqual([200]);
    expect(allowed({ fired: { rim: 90 }, set: { scales: [] } })).toEqual([50]);
  });

  it("as much as the limits allow is answered", () => {
    expect(workOutSizes({ shrinkage, slabs: Array(50).fill(tile) }).slabs).toHaveLength(50);
    expect(workOutSizes({ shrinkage, oldNotes: { shrinkage, thrown: notes(200) } }).oldNotes).toHaveLength(200);
    expect(workOutSizes({ shrinkage, fired: { rim: 90 }, set: { scales: Array(50).fill(1) } }).sizes).toHaveLength(50);
    expect(workOutSizes({ shrinkage, profile: { ...outline, points: points(200) } }).sizes[0]?.name).toBe("foot");
  });

  it("an outline out of order is told by the numbers of its points", () => {
    const given = (...corners: [number, number][]) =>
      issuesOf({ profile: { ...outline, points: corners.map(([across, up]) => ({ across, up })) } });
    expect(given([70, 0], [120, 60], [120, 20], [70, 70])).toMatchObject([
      { pointer: "/profile/points/2", message: expect.stringContaining("after point 1 meets the one after point 3") },
    ]);
    expect(given([70, 0], [100, 60], [110, 40])).toMatchObject([
      { pointer: "/profile/points/2/up", message: expect.stringContaining("Point 3 lies below point 2") },
    ]);
  });
});

describe("what is said beside the figures", () => {
  const four = { diameter: 80, rim: 90, belly: 100, neck: 60 };
  const tile = { length: 108, width: 54 };
  // Arithmetic at 12 %: 80/0.88 = 90.9, 90/0.88 = 102.3, 100/0.88 = 113.6, 60/0.88 = 68.2; 108/0.88 = 122.7.
  it.each<[Partial<SizesRequest>, string]>([
    [
      { fired: four },
      "throw diameter 91 mm for 80 mm fired, rim 102 mm for 90 mm fired, belly 114 mm for 100 mm fired.",
    ],
    [{ slabs: [tile] }, "cut slab 1 123 mm by 61 mm."],
    [{ slabs: [{ ...tile, name: "threshold", thickness: 8 }] }, "cut threshold 123 mm by 61 mm."],
    [{ fired: { capacity: "350 ml" } }, "It holds 350 ml fired; freshly thrown it must hold 514 ml (505 to 522)."],
    [{ lid: { seat: 84, stage: "fired", clearance: 1 } }, "For a seat of 84 mm fired, throw the lid 93.2 mm"],
    [
      { oldNotes: { shrinkage: { percent: 9, plusMinus: 0 }, thrown: [{ name: "jug", size: 110 }] } },
      "jug, thrown 110 mm then, wants 114 mm now.",
    ],
  ])("%j", (request, words) => expect(workOutSizes({ shrinkage, ...request }).headline).toContain(words));

  it("a profile holds what it holds to its line", () => {
    const { capacity } = workOutSizes({ shrinkage: still, profile: { ...mug, belowRim: 10 } });
    // π 35² · 80 mm³ = 307.9 ml.
    expect(capacity?.message).toBe(
      "It holds 308 ml fired, to the line; freshly thrown it must hold 308 ml (308 to 308).",
    );
  });

  it.each<[SizesRequest["set"], string]>([
    [{}, "A set of one clay"],
    [{ pieces: 6 }, "6 pieces of one clay"],
    [{ pieces: 6, scales: [1, 0.8] }, "6 pieces in 2 steps of one clay"],
    [{ scales: [0.8], tolerance: 2 }, "within ±2 mm of one another's size."],
  ])("a set %j", (set, words) => {
    const message = (one: SizesRequest["set"]) =>
      workOutSizes({ shrinkage, fired: { rim: 90 }, set: one! }).set?.message;
    expect(message(set)).toContain(words);
    expect(message({})).toBe(
      "A set of one clay in one firing shrink alike: doubt about the shrinkage moves them all together.",
    );
  });

  it("warnings stand at the place that caused them, and only where there is cause", () => {
    const warned = (request: Partial<SizesRequest>) =>
      workOutSizes({ shrinkage, ...request }).warnings.map(({ code, pointer }) => [code, pointer]);
    expect(warned({ profile: mug })).toEqual([]);
    expect(warned({ fired: { rim: 90 }, set: { scales: [1, 0.8] } })).toEqual([]);
    expect(warned({ lid: { seat: 84, stage: "fired", clearance: 1 } })).toEqual([]);
    expect(warned({ fired: { rim: 90 }, shrinkage: { percent: 12 } })).toEqual([["tolerance-assumed", "/shrinkage"]]);
    expect(warned({ fired: { rim: 90 }, shrinkage: { class: "red-stoneware" } })).toEqual([
      ["shrinkage-by-class", "/shrinkage/class"],
    ]);
    const thrown = [{ name: "rim", size: 110 }];
    expect(warned({ oldNotes: { shrinkage: { class: "red-stoneware" }, thrown } })).toEqual([
      ["shrinkage-by-class", "/oldNotes/shrinkage/class"],
    ]);
    expect(warned({ oldNotes: { shrinkage: { percent: 9 }, thrown } })).toEqual([
      ["tolerance-assumed", "/oldNotes/shrinkage"],
    ]);
    const lid = { seat: 84, stage: "fired", clearance: 1.5, shrinkage: { percent: 9 } } as const;
    expect(warned({ lid })).toEqual([["tolerance-assumed", "/lid/shrinkage"]]);
  });

  it("sources are those of the shrinkages used, each once", () => {
    const request = { shrinkage: { ...shrinkage, dryingPercent: 6 }, fired: { rim: 90 } };
    expect(workOutSizes(request).sources).toEqual(["astm-c326", "clay-practice"]);
    const oldNotes = { shrinkage: { percent: 9 }, thrown: [{ name: "rim", size: 110 }] };
    expect(workOutSizes({ ...request, oldNotes }).sources).toEqual(["astm-c326", "clay-practice", "shrinkage-ranges"]);
  });

  it("a size asked for outweighs that of the profile", () => {
    const { sizes } = workOutSizes({ shrinkage, fired: { diameter: 82 }, profile: mug });
    expect(sizes.map(({ name, target }) => `${name} ${target.text}`)).toEqual(["diameter 82 mm", "height 95 mm"]);
  });
});
