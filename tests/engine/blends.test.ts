import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { casesHolding } from "../../api/engine/blends/holding.ts";
import {
  csvHeading,
  csvRow,
  headline,
  judgeBlend,
  latticeOf,
  letters,
  openBlend,
  sharesInWords,
  simplexLabel,
  simplexOrder,
  simplexSize,
  stepsOf,
} from "../../api/engine/blends/index.ts";
import type { BlendPoint, BlendRequest } from "../../api/engine/blends/types.ts";
import { analyseGlaze } from "../../api/engine/chemistry/index.ts";
import type { EngineError } from "../../api/engine/errors.ts";
import { verdictOf } from "../../api/engine/evidence/suits.ts";
import { FIT_SOURCES } from "../../api/engine/fit/constants.ts";
import { checkFit } from "../../api/engine/fit/index.ts";
import { quantity, UNITS } from "../../api/engine/quantity.ts";
import { RED_STONEWARE, THAW } from "../../api/schemas/larch-lane.ts";
import { close } from "../support/close.ts";

const HAIL = {
  recipe: [
    { material: "nepheline-syenite", parts: 80 },
    { material: "silica", parts: 60 },
    { material: "talc", parts: 30 },
    { material: "kaolin", parts: 30 },
  ],
};
const SLEET = {
  recipe: [
    { material: "soda-feldspar", parts: 40 },
    { material: "silica", parts: 35 },
    { material: "whiting", parts: 25 },
  ],
  additions: [{ material: "red-iron-oxide", parts: 4 }],
};
const corners = [
  { name: "Thaw", glaze: THAW },
  { name: "Hail", glaze: HAIL },
  { name: "Sleet", glaze: SLEET },
];
const request: BlendRequest = { corners, steps: 4, body: RED_STONEWARE };
const judged = (points: readonly unknown[]) => points as BlendPoint[];

describe("the order of tiles", () => {
  // Counts of compositions: C(n + k − 1, k − 1) (derived).
  it.each([
    [2, 10, 11],
    [3, 10, 66],
    [4, 5, 56],
    [6, 4, 126],
    [12, 4, 1365],
    [40, 2, 820],
  ])("%i corners in %i steps are %i points, none twice, each one step from the one before", (k, steps, size) => {
    const order = simplexOrder(k, steps);
    const points = Array.from({ length: size }, (_, index) => order(index));
    expect(simplexSize(k, steps)).toBe(size);
    expect(new Set(points.map(String)).size).toBe(size);
    points.forEach((point, i) => {
      expect(point).toHaveLength(k);
      expect(point.reduce((a, b) => a + b, 0)).toBe(steps);
      expect(Math.min(...point)).toBeGreaterThanOrEqual(0);
      if (i === 0) return;
      const moved = point.reduce((sum, count, c) => sum + Math.abs(count - points[i - 1]![c]!), 0);
      expect(moved).toBe(2);
    });
    expect(points[0]![0]).toBe(steps);
    expect(new Set(points.map(simplexLabel)).size).toBe(size);
  });

  it("walks a grid to and fro", () => {
    const grid = latticeOf(4, "grid", 3, 2);
    expect(grid.size).toBe(12);
    const points = Array.from({ length: 12 }, (_, index) => grid.at(index));
    const place = ({ shares: [, b = 0, c = 0, d = 0] }: (typeof points)[number]) => [(b + d) * 3, (c + d) * 2];
    points.forEach((point, i) => {
      expect(point.shares.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
      if (i === 0) return;
      const [[x, y], [x0, y0]] = [place(point), place(points[i - 1]!)];
      expect(Math.abs(x! - x0!) + Math.abs(y! - y0!)).toBeCloseTo(1, 12);
    });
    expect(points.map(({ label }) => label).join(" ")).toBe("A1 A2 A3 A4 B4 B3 B2 B1 C1 C2 C3 C4");
  });

  it("goes through a line and a triangle as they are weighed, the first corner falling and the rest to and fro", () => {
    const places = (corners: number) => {
      const { size, at } = latticeOf(corners, "simplex", 2, 2);
      return Array.from({ length: size }, (_, index) => at(index));
    };
    expect(places(2)).toEqual([
      { label: "1", shares: [1, 0] },
      { label: "2", shares: [0.5, 0.5] },
      { label: "3", shares: [0, 1] },
    ]);
    expect(places(3)).toEqual([
      { label: "A1", shares: [1, 0, 0] },
      { label: "B2", shares: [0.5, 0, 0.5] },
      { label: "B1", shares: [0.5, 0.5, 0] },
      { label: "C1", shares: [0, 1, 0] },
      { label: "C2", shares: [0, 0.5, 0.5] },
      { label: "C3", shares: [0, 0, 1] },
    ]);
  });

  it("letters rows beyond Z", () =>
    expect([0, 25, 26, 27, 701, 702].map(letters)).toEqual(["A", "Z", "AA", "AB", "ZZ", "AAA"]));

  it("labels what is in a tile of many corners, and nothing else", () => {
    expect(simplexLabel([3, 0, 1, 0])).toBe("A3C1");
    expect(simplexLabel(Array.from({ length: 28 }, (_, c) => (c === 27 ? 2 : 0)))).toBe("AB2");
  });
});

describe("a blend", () => {
  const report = judgeBlend(request);

  it("has its corners where they are, judged as a fit judges them", () => {
    for (const [c, { glaze }] of corners.entries()) {
      const point = judged(report.points).find(({ shares }) => shares[c] === 1)!;
      const fit = checkFit({ glaze: { ...glaze, thicknessMm: 0.3 }, body: RED_STONEWARE });
      expect(point.probabilities).toEqual(fit.probabilities);
      expect(point.verdict).toBe(fit.verdict);
      expect(point.expansion).toEqual(fit.glaze.expansion);
    }
  });

  it("mixes by dry weight: half and half of two batches is half the oxides as weighed (derived)", () => {
    const middle = judged(report.points).find(({ shares }) => shares[0] === 0.5 && shares[1] === 0.5)!;
    const weighed = (glaze: Parameters<typeof analyseGlaze>[0]) => analyseGlaze(glaze).asWeighed.weightPercent;
    const [thaw, hail, mixed] = [weighed(THAW), weighed(HAIL), weighed({ recipe: middle.recipe })];
    for (const oxide of Object.keys(mixed)) {
      expect(mixed[oxide]!).toBeCloseTo(((thaw[oxide] ?? 0) + (hail[oxide] ?? 0)) / 2, 6);
    }
    expect(middle.recipe.reduce((sum, { parts }) => sum + parts, 0)).toBeCloseTo(100, 6);
  });

  it("lists what is weighed in one order on every tile, whichever corners are in it", () => {
    const listed = (shares: number[]) => {
      const point = judged(report.points).find((one) => String(one.shares) === String(shares))!;
      return point.recipe.map((line) => ("material" in line ? line.material : ""));
    };
    const all = listed([0.25, 0.5, 0.25]);
    expect(all).toHaveLength(8); // five of Thaw, two more of Hail, one more of Sleet
    const later = listed([0, 0.5, 0.5]);
    expect(later).toEqual(all.filter((material) => later.includes(material)));
  });

  it("carries additions at their share", () => {
    const quarter = judged(report.points).find(({ shares }) => shares[2] === 0.25 && shares[0] === 0.75)!;
    expect(quarter.additions).toEqual([{ material: "red-iron-oxide", parts: 1 }]);
  });

  it("goes on from any index, point for point", () => {
    const rest = [...openBlend({ ...request, from: 7, count: 3 }).points()];
    expect(rest).toEqual(report.points.slice(7, 10));
  });

  it("counts its tiles and carries what is true of all of them once", () => {
    expect(report.points.map(({ index, of }) => [index, of])).toEqual(Array.from({ length: 15 }, (_, i) => [i, 15]));
    expect(report.corners).toEqual(["Thaw", "Hail", "Sleet"]);
    expect(report.engine).toMatchObject({ seed: 1 });
    expect(judgeBlend({ ...request, seed: 7, count: 1 }).engine.seed).toBe(7);
    const codes = report.cautions.map(({ code }) => code);
    expect(new Set(codes).size).toBe(codes.length);
    // Silica and kaolin are weighed, and a caution of theirs stands before that.
    expect(codes).toContain("silica-dust");
    expect(codes.at(-1)).toBe("not-a-certificate");
    expect(report.sources).toEqual([...new Set(report.sources)].sort());
    const named = corners.flatMap(({ glaze }) => analyseGlaze(glaze).sources);
    expect(report.sources).toEqual(expect.arrayContaining([...named, ...FIT_SOURCES]));
    for (const { warnings } of judged(report.points)) expect(warnings).toEqual([]);
  });

  it("keeps the seed it is given", () => {
    const [a, b, c] = [7, 7, 8].map(
      (seed) => judged(judgeBlend({ ...request, seed, count: 1 }).points)[0]!.probabilities,
    );
    expect(a).toEqual(b);
    expect(a).not.toEqual(c);
  });

  it("is as thick as asked for, or as its first corner", () => {
    const chances = (more: Partial<BlendRequest>) =>
      judged(judgeBlend({ ...request, ...more, count: 1 }).points)[0]!.probabilities;
    const alone = (glaze: typeof HAIL, thicknessMm: number) =>
      checkFit({ glaze: { ...glaze, thicknessMm }, body: RED_STONEWARE }).probabilities;
    expect(chances({ thicknessMm: 0.8 })).toEqual(alone(THAW, 0.8));
    const thick = [{ glaze: HAIL, name: "Hail" }, { glaze: { ...HAIL, thicknessMm: 0.8 } }];
    expect(chances({ corners: [...thick].reverse() })).toEqual(alone(HAIL, 0.8));
    // The second corner's thickness is not asked; a glaze is 0.3 mm unless told otherwise.
    expect(chances({ corners: thick })).toEqual(alone(HAIL, 0.3));
  });

  it("tells stress, Seger formula, shares and parts as a fit does, rounded", () => {
    const [thaw] = judged(report.points);
    const fit = checkFit({ glaze: THAW, body: RED_STONEWARE });
    for (const end of ["value", "low", "high"] as const) close(thaw!.stress[end], fit.stress[end], { abs: 0.05 });
    expect(thaw!.stress.unit).toBe("MPa");
    for (const { stress } of judged(report.points)) expect(String(stress.value)).toMatch(/^-?\d+(\.\d)?$/);
    const { moles } = analyseGlaze(THAW).seger!;
    for (const oxide in moles) close(thaw!.seger![oxide], moles[oxide]!, { abs: 0.0005 });
    const third = judged(judgeBlend({ ...request, steps: 3, from: 2, count: 1 }).points)[0]!;
    expect(third.shares).toEqual([0.666667, 0, 0.333333]);
    // Two thirds of 42 parts and a third of nothing; a third of 4 over 100 (derived).
    expect(third.recipe[0]).toEqual({ material: "potash-feldspar", parts: 28 });
    expect(third.additions).toEqual([{ material: "red-iron-oxide", parts: 1.333 }]);
  });

  it("has no Seger formula where there is no flux", () => {
    const glass = (silica: number) => ({
      glaze: {
        recipe: [
          { formula: "SiO2", parts: silica },
          { formula: "B2O3", parts: 20 },
        ],
      },
    });
    const { points } = judgeBlend({ ...request, corners: [glass(80), glass(70)], steps: 1 });
    expect(judged(points).map(({ seger }) => seger)).toEqual([null, null]);
  });

  it("says of each tile whether anything like it was measured", () => {
    const zinc = {
      recipe: [
        { formula: "SiO2", parts: 45 },
        { formula: "ZnO", parts: 55 },
      ],
    };
    const { points, warnings } = judgeBlend({
      ...request,
      corners: [corners[1]!, { name: "zinc", glaze: zinc }],
      steps: 4,
    });
    const codes = judged(points).map((point) => [...new Set(point.warnings.map(({ code }) => code))]);
    expect([codes[0], codes.at(-1)]).toEqual([[], ["outside-training-range"]]);
    // That no thickness was stated is said once, beside them.
    expect(warnings.map(({ code }) => code)).toEqual(
      expect.arrayContaining(["outside-training-range", "thickness-assumed"]),
    );
  });

  it("leaves a gap where a mixture has too many lines to be read, and goes on", () => {
    // Sixty lines are read, a hundred at most; the two corners have none in common.
    const many = (name: string) => ({
      name,
      glaze: {
        recipe: Array.from({ length: 60 }, (_, i) => ({ name: `${name} ${i}`, formula: "NaAlSi3O8", parts: 1 })),
      },
    });
    const whole = judgeBlend({ ...request, corners: [many("a"), many("b")], steps: 2 });
    expect(whole.points.map((point) => "problem" in point)).toEqual([false, true, false]);
    expect(whole.points[1]).toEqual({
      index: 1,
      of: 3,
      label: "2",
      shares: [0.5, 0.5],
      move: "50 % less a, 50 % more b",
      problem: "This recipe has 120 lines; up to 100 are read, additions included.",
    });
    expect(csvRow(whole.points[1]!)).toBe(
      '1,2,50,50,,,,,,,,,,,,,"This recipe has 120 lines; up to 100 are read, additions included."\r\n',
    );
    expect(csvHeading(whole.corners).split(",")).toHaveLength(17);
    expect(whole.headline).toMatch(/ of 2 mixtures should hold/);
    expect(headline(["a", "b"], [whole.points[1]!])).toBe("None of these 1 mixtures can be judged.");
  });

  it("says how to come from one tile to the next", () => {
    expect(report.points[0]!.move).toBeNull();
    expect(report.points[1]!.move).toBe("25 % less Thaw, 25 % more Sleet");
    // A square walked to and fro, shares by area (derived).
    const square: BlendRequest = { ...request, corners: [...corners, { glaze: HAIL }], shape: "grid", steps: 2 };
    expect([...openBlend({ ...square, from: 1, count: 4 }).points()].map(({ move }) => move)).toEqual([
      "50 % less Thaw, 50 % more Hail",
      "50 % less Thaw, 50 % more Hail",
      "50 % less Hail, 50 % more corner 4",
      "25 % less Hail, 25 % less corner 4, 25 % more Thaw, 25 % more Sleet",
    ]);
  });

  it("names a corner that cannot be judged before anything is mixed", () => {
    const odd = { recipe: [{ material: "alumina", parts: 100 }] };
    const pointers = () => {
      try {
        return judgeBlend({ ...request, corners: [corners[0]!, { name: "odd", glaze: odd }] }).headline;
      } catch (error) {
        return (error as EngineError).issues.map(({ pointer }) => pointer);
      }
    };
    expect(pointers()).toEqual(["/corners/1/glaze"]);
  });

  it("says which corner is wrong, and how", () => {
    const refused = (asked: BlendRequest) => {
      try {
        judgeBlend(asked);
      } catch (error) {
        return (error as EngineError).issues.map(({ pointer }) => pointer);
      }
      return [];
    };
    const wrong = { recipe: [{ material: "whitting", parts: 10 }] };
    expect(refused({ ...request, corners: [corners[0]!, { glaze: wrong }] })).toEqual([
      "/corners/1/glaze/recipe/0/material",
    ]);
    // The same slip in two corners is two; what is wrong with the clay is one, however many corners meet it.
    expect(refused({ ...request, corners: [{ glaze: wrong }, corners[0]!, { glaze: wrong }] })).toEqual([
      "/corners/0/glaze/recipe/0/material",
      "/corners/2/glaze/recipe/0/material",
    ]);
    expect(refused({ ...request, corners: [corners[0]!] })).toEqual(["/corners"]);
    expect(refused({ ...request, shape: "grid" })).toEqual(["/corners"]);
    expect(refused({ ...request, from: 99 })).toEqual(["/from"]);
    expect(refused({ ...request, stepsDown: 3 })).toEqual(["/stepsDown"]);
    expect(refused({ ...request, body: { class: "red-stonewear" } })).toEqual(["/body/class"]);
  });
});

describe("a blend made ready", () => {
  const ready = (more: Partial<BlendRequest>) => openBlend({ ...request, ...more }).ready;
  const issuesOf = (more: Partial<BlendRequest>) => {
    try {
      ready(more);
    } catch (error) {
      return (error as EngineError).issues;
    }
    return [];
  };
  const two = corners.slice(0, 2);
  const square: Partial<BlendRequest> = { shape: "grid", corners: [...corners, corners[0]!] };

  it("weighs the same material of two corners once, its parts in a hundred of each", () => {
    const pair = [
      [
        ["silica", 5],
        ["potash-feldspar", 25],
        ["silica", 10],
        ["whiting", 10],
      ] as const,
      [
        ["whiting", 1],
        ["soda-feldspar", 3],
      ] as const,
    ].map((rows) => ({
      glaze: {
        recipe: rows.map(([material, parts]) => ({ material, parts })),
        additions: [{ material: "whiting", parts: 1 }],
      },
    }));
    const { lines, takes } = ready({ corners: pair });
    expect(lines.map(({ line, addition }) => [(line as { material: string }).material, addition])).toEqual([
      ["silica", false],
      ["potash-feldspar", false],
      ["whiting", false],
      ["whiting", true],
      ["soda-feldspar", false],
    ]);
    expect(takes.map((corner) => corner.map(({ at, parts }) => [at, parts]))).toEqual([
      [
        [0, 30],
        [1, 50],
        [2, 20],
        [3, 2],
      ],
      [
        [2, 25],
        [4, 75],
        [3, 25],
      ],
    ]);
  });

  it("leaves out of a mixture what weighs nothing in it", () => {
    const without = { recipe: [...HAIL.recipe, { material: "zircon", parts: 0 }] };
    const [point] = judged(judgeBlend({ ...request, corners: [{ glaze: without }, corners[0]!], count: 1 }).points);
    expect(point!.recipe).toHaveLength(HAIL.recipe.length);
    expect(point!.additions).toEqual([]);
  });

  it("has ten steps, from the first point to the last, and numbers the corners without a name", () => {
    expect(ready({ corners: two.map(({ glaze }) => ({ glaze })), steps: undefined })).toMatchObject({
      names: ["corner 1", "corner 2"],
      from: 0,
      to: 11,
      lattice: { size: 11 },
    });
    // A square of 11 by 11, and of 4 by 4 or 4 by 3.
    const sizes = [{ steps: undefined }, { steps: 3 }, { steps: 3, stepsDown: 2 }];
    expect(sizes.map((steps) => ready({ ...square, ...steps }).lattice.size)).toEqual([121, 16, 12]);
    expect(ready({ from: 14 })).toMatchObject({ from: 14, to: 15 });
    expect(ready({ from: 3, count: 99 })).toMatchObject({ from: 3, to: 15 });
  });

  it("tells of each mixture that the peak does not melt, or that is like molten feldspar", () => {
    // Albite beside a lead glass: at 900 °C the one is stiff, the other runs.
    const albite = { name: "Albite", glaze: { recipe: [{ formula: "NaAlSi3O8", parts: 100 }] } };
    const lead = {
      name: "Lead",
      glaze: {
        recipe: [
          { formula: "PbO", parts: 60 },
          { formula: "SiO2", parts: 40 },
        ],
      },
    };
    const { points } = judgeBlend({ corners: [albite, lead], steps: 1, body: RED_STONEWARE, firing: { peakC: 900 } });
    const codes = judged(points).map(({ warnings }) => warnings.map(({ code }) => code));
    expect(codes[0]).toEqual(expect.arrayContaining(["under-fired", "feldspar-glass"]));
    expect(codes[1]).not.toEqual(expect.arrayContaining(["under-fired"]));
    expect(codes[1]).not.toEqual(expect.arrayContaining(["feldspar-glass"]));
  });

  it("tells what is remarked of several corners once, at the first of them", () => {
    const fluorspar = { glaze: { recipe: [...THAW.recipe, { formula: "CaF2", parts: 2 }] } };
    const { warnings, cautions, sources } = ready({
      corners: [corners[1]!, fluorspar, fluorspar],
      body: { class: "red-stoneware" },
    });
    for (const list of [warnings.map(({ message }) => message), cautions.map(({ code }) => code), sources]) {
      expect(new Set(list).size).toBe(list.length);
    }
    expect(warnings.find(({ code }) => code === "fluorine-leaves")!.pointer).toBe("/corners/1/glaze/recipe/5");
    const pointers = warnings.filter((warning) => "pointer" in warning).map(({ pointer }) => pointer);
    expect(pointers.filter((pointer) => pointer!.startsWith("/body"))).not.toEqual([]);
    for (const pointer of pointers) expect(pointer).toMatch(/^\/(corners\/[01]\/glaze|body|firing|ware)/);
  });

  const added = (silica: number) => {
    const additions = { "potash-feldspar": 1000, whiting: 400, silica };
    const lines = Object.entries(additions).map(([material, parts]) => ({ material, parts }));
    return [two[0]!, { glaze: { recipe: [{ material: "kaolin", parts: 2 }], additions: lines } }];
  };
  it.each<[string, Partial<BlendRequest>, [string, string, unknown[]?][]]>([
    ["one corner", { corners: [corners[0]!] }, [["/corners", "two corners or more; I read 1", [2]]]],
    ["a square of three", { shape: "grid" }, [["/corners", "A grid has 4 corners; I read 3", [4]]]],
    ["two corners", { corners: two }, []],
    ["no steps", { steps: 0 }, [["/steps", "from 1 to 200; I read 0", [1, 200]]]],
    ["half a step", { steps: 1.5 }, [["/steps", "whole, from 1 to 200; I read 1.5", [1, 200]]]],
    ["201 steps", { corners: two, steps: 201 }, [["/steps", "I read 201", [1, 200]]]],
    ["1 step", { steps: 1 }, []],
    ["200 steps", { corners: two, steps: 200 }, []],
    ["a side of a triangle", { stepsDown: 4 }, [["/stepsDown", "Only a grid has a side of its own"]]],
    ["no steps down", { ...square, stepsDown: 0 }, [["/stepsDown", "I read 0", [1, 200]]]],
    ["a point beyond the last", { from: 15 }, [["/from", "15 points, numbered from 0; there is none at 15"]]],
    ["the last point", { from: 14 }, []],
    ["additions of a thousand times", { corners: added(600) }, []],
    [
      "additions of more",
      { corners: added(604) },
      [
        [
          "/corners/1/glaze/additions",
          "weigh 1002 times the recipe that they are added to; I mix up to 1000",
          [0, 1000],
        ],
      ],
    ],
    // 200 · 100 points, and 201 · 100.
    ["20000 points", { ...square, steps: 199, stepsDown: 99 }, []],
    [
      "more points of a square",
      { ...square, steps: 200, stepsDown: 99 },
      [
        [
          "/steps",
          "These steps across and down make 20100 points; I answer 20000 at most. Take fewer steps.",
          [20_000],
        ],
      ],
    ],
    [
      "two steps between 300 corners", // 300 · 301/2 (derived)
      { corners: Array(300).fill(corners[0]), steps: 2 },
      [["/steps", "300 corners in 2 steps make 45150 points; I answer 20000 at most. Take at most 1 step, or", [1, 1]]],
    ],
    [
      "more corners than points",
      { corners: Array(20_001).fill(corners[0]), steps: 1 },
      [
        [
          "/corners",
          "20001 corners in 1 step make 20001 points; I answer 20000 at most. Leave corners out.",
          [2, 20_000],
        ],
      ],
    ],
    [
      "201 steps between many",
      { corners: Array(12).fill(corners[0]), steps: 201 },
      [["/steps", "from 1 to 200; I read 201", [1, 200]]],
    ],
    [
      "several things",
      { corners: [corners[0]!], steps: 0, from: 99 },
      [
        ["/corners", "I read 1", [2]],
        ["/steps", "I read 0", [1, 200]],
      ],
    ],
  ])("takes or refuses %s", (_, more, expected) =>
    expect(issuesOf(more)).toEqual(
      expected.map(([pointer, message, allowed]) => ({
        pointer,
        message: expect.stringContaining(message),
        ...(allowed ? { allowed } : {}),
      })),
    ),
  );
});

describe("as a table", () => {
  it("is a heading and a row a point", () => {
    expect(csvHeading(["Thaw", "Hail"])).toBe(
      "index,label,Thaw [%],Hail [%],verdict,sound [-],crazes on cooling [-],crazes later [-],shivers [-]," +
        "expansion 20-300 °C [1e-6/K],low,high,stress [MPa; tension +],low,high,recipe,problem\r\n",
    );
    const point: BlendPoint = {
      index: 3,
      of: 4,
      label: "4",
      shares: [0.333333, 0.666667],
      move: "33.3 % less Thaw, 33.3 % more Hail",
      recipe: [
        { material: "silica", parts: 60 },
        { name: "lane spar", formula: "KAlSi3O8", parts: 29.5 },
        { formula: "CaCO3", parts: 9.5 },
        { analysis: { weightPercent: { SiO2: 100 } }, parts: 1 },
      ],
      additions: [{ material: "tin-oxide", parts: 4 }],
      seger: null,
      expansion: quantity(6.2, 5.9, 6.5, UNITS.expansion),
      verdict: "sound",
      probabilities: { sound: 0.9, crazesOnCooling: 0.05, crazesLater: 0.03, shivers: 0.02 },
      stress: quantity(-20.5, -60, 10.1, UNITS.stress),
      warnings: [],
    };
    expect(csvRow(point)).toBe(
      "3,4,33.33,66.67,sound,0.9,0.05,0.03,0.02,6.2,5.9,6.5,-20.5,-60,10.1," +
        "silica 60; lane spar 29.5; CaCO3 9.5; own material 1; tin-oxide 4,\r\n",
    );
  });

  // Quotes by RFC 4180: around a comma, a quote or a break of lines, quotes inside doubled.
  it.each([
    ["=1+1", "'=1+1 [%]"],
    ["+1", "'+1 [%]"],
    ["-1", "'-1 [%]"],
    ["@x", "'@x [%]"],
    ["\tx", "'\tx [%]"],
    ["\rx", '"\'\rx [%]"'],
    ["a=1", "a=1 [%]"],
    ["a\nb", '"a\nb [%]"'],
    ['a"b', '"a""b [%]"'],
  ])("writes %j as %j", (name, cell) => expect(csvHeading([name])).toContain(`label,${cell},verdict`));

  it("quotes what needs it, and never hands a spreadsheet a formula", () => {
    const [first] = judgeBlend({ ...request, count: 1 }).points;
    const heading = csvHeading(['=HYPERLINK("x")', "Hail, the second"]);
    expect(heading).toContain(`"'=HYPERLINK(""x"") [%]"`);
    expect(heading).toContain('"Hail, the second [%]"');
    expect(csvRow(first!).split(",")[1]).toBe("A1");
    expect(csvRow(first!).endsWith("\r\n")).toBe(true);
    const columns = (row: string) => row.trimEnd().split(",").length;
    expect(columns(csvRow(first!))).toBe(columns(csvHeading(["a", "b", "c"])));
  });
});

describe("a blend of many corners", () => {
  const dozen = Array.from({ length: 12 }, (_, c) => ({
    name: `Glaze ${c + 1}`,
    glaze: {
      recipe: [
        { material: "potash-feldspar", parts: 40 + c },
        { material: "silica", parts: 20 + 2 * c },
        { material: "whiting", parts: 25 - c },
        { material: "kaolin", parts: 12 },
      ],
      additions: c === 7 ? [{ material: "tin-oxide", parts: 6 }] : [],
    },
  }));
  const asked: BlendRequest = { corners: dozen, steps: 3, body: RED_STONEWARE };
  const report = judgeBlend(asked);

  it("judges every mixture, with the chemistry of what is in it", () => {
    expect(report.points).toHaveLength(364); // C(14, 11) (derived)
    const mixed = judged(report.points).find(({ label }) => label === "A1E1H1")!;
    // A third of each (derived): 40, 44 and 47 parts of feldspar in 97, 105 and 111.
    const feldspar = (100 * (40 / 97 + 44 / 105 + 47 / 111)) / 3;
    expect(mixed.recipe.find((line) => "material" in line && line.material === "potash-feldspar")!.parts).toBeCloseTo(
      feldspar,
      3,
    );
    // 6 parts over 111 in a third of it (derived): 100 · 6/111/3.
    expect(mixed.additions).toEqual([{ material: "tin-oxide", parts: 1.802 }]);
    const fit = checkFit({ glaze: { ...dozen[7]!.glaze, thicknessMm: 0.3 }, body: RED_STONEWARE });
    expect(judged(report.points).find(({ label }) => label === "H3")!.probabilities).toEqual(fit.probabilities);
  });

  it("goes on from any index as if it had never stopped", () => {
    expect([...openBlend({ ...asked, from: 200, count: 5 }).points()]).toEqual(report.points.slice(200, 205));
  });

  it("has a column for each corner in its table", () => {
    const columns = (row: string) => row.trimEnd().split(",").length;
    expect(columns(csvHeading(report.corners))).toBe(columns(csvHeading(["a", "b"])) + 10);
    expect(columns(csvRow(report.points[40]!))).toBe(columns(csvHeading(report.corners)));
  });

  it("takes as many steps as one answer holds unless told otherwise", () => {
    // C(15, 11) = 1365 is within 2500, C(16, 11) = 4368 is not; 66 mixtures of three are (derived).
    expect([2, 3, 5, 6, 12, 60, 3000].map(stepsOf)).toEqual([10, 10, 10, 9, 4, 2, 1]);
  });

  it.each([
    [12, 7, "/steps", [1, 6], "12 corners in 7 steps make 31824 points; I answer 20000 at most. Take at most 6 steps"],
    [3, 199, "/steps", [1, 198], "Take at most 198 steps"],
    [150, 10, "/steps", [1, 2], "150 corners in 10 steps make more than a thousand million points"],
  ])(
    "refuses %i corners in %i steps by their points, and says what would do",
    (count, steps, pointer, allowed, words) => {
      const many = Array.from({ length: count }, (_, c) => dozen[c % 12]!);
      const refusal = () => judgeBlend({ ...asked, corners: many, steps });
      expect(refusal).toThrow();
      try {
        refusal();
      } catch (error) {
        const [issue] = (error as EngineError).issues;
        expect(issue).toMatchObject({ pointer, allowed });
        expect(issue!.message).toContain(words);
      }
    },
  );

  it("refuses additions beside which the recipe is nothing", () => {
    const heavy = { glaze: { ...dozen[0]!.glaze, additions: [{ material: "zircon", parts: 1e6 }] } };
    try {
      judgeBlend({ ...asked, corners: [dozen[1]!, heavy] });
      expect.unreachable();
    } catch (error) {
      const [issue] = (error as EngineError).issues;
      expect(issue).toMatchObject({ pointer: "/corners/1/glaze/additions", allowed: [0, 1000] });
    }
  });

  it("answers a crowd of corners without ado", () => {
    const crowd = Array.from({ length: 1000 }, (_, c) => ({ glaze: dozen[c % 12]!.glaze }));
    const points = [...openBlend({ ...asked, corners: crowd, steps: 1, from: 998 }).points()];
    expect(points.map(({ label }) => label)).toEqual(["ALK1", "ALL1"]);
  });
});

describe("told in a sentence", () => {
  const line = (sound: readonly number[]) =>
    sound.map((chance, index) => ({
      ...judged(judgeBlend({ ...request, count: 1 }).points)[0]!,
      label: String(index + 1),
      shares: [1 - index / (sound.length - 1), index / (sound.length - 1)],
      verdict: chance >= 0.85 ? ("sound" as const) : ("may-craze" as const),
      probabilities: { crazesOnCooling: 0, crazesLater: 1 - chance, sound: chance, shivers: 0 },
    }));
  it.each([
    [
      [0.5, 0.75, 0.2],
      "None of 3 mixtures should hold. Nearest is tile 2, 50 % Thaw and 50 % Hail: its chance of staying sound is about 15 in 20.",
    ],
    [
      [0.5, 0.9, 0.2],
      "One of 3 mixtures should hold. It is tile 2, 50 % Thaw and 50 % Hail: its chance of staying sound is about 18 in 20.",
    ],
    [
      [0.5, 0.9, 1],
      "Two of 3 mixtures should hold. Likeliest is tile 3, Hail alone: its chance of staying sound is more than 19 in 20.",
    ],
  ])("%j", (sound, words) => {
    expect(headline(["Thaw", "Hail"], line(sound)).replaceAll("\u00a0", " ")).toBe(words);
  });

  it("takes the first of equal chances", () =>
    expect(headline(["Thaw", "Hail"], line([0.9, 0.9])).replaceAll("\u00a0", " ")).toMatch(
      /^Two of 2 mixtures should hold\. Likeliest is tile 1, Thaw alone: /,
    ));

  it("names a few corners and counts the rest", () => {
    const names = ["Thaw", "Hail", "Sleet", "Rime", "Squall", "Fog"];
    const said = (shares: number[]) => sharesInWords(names, shares).replaceAll("\u00a0", " ");
    expect(said([0.5, 0.125, 0, 0.125, 0.125, 0.125])).toBe(
      "50 % Thaw, 12.5 % Hail, 12.5 % Rime, 12.5 % Squall and 12.5 % Fog",
    );
    expect(said([1 / 3, 2 / 3, 0, 0, 0, 0])).toBe("33.3 % Thaw and 66.7 % Hail");
    expect(said([0.5, 0.1, 0.1, 0.1, 0.1, 0.1])).toBe("50 % Thaw, 10 % Hail, 10 % Sleet, 10 % Rime and two more");
  });
});

describe("cases that hold", () => {
  const chances = fc
    .tuple(fc.integer({ min: 0, max: 1024 }), fc.integer({ min: 0, max: 1024 }), fc.integer({ min: 0, max: 1024 }))
    .map((cuts) => [...cuts].sort((a, b) => a - b).map((cut) => cut / 1024) as [number, number, number])
    .map(([a, b, c]) => ({ shivers: a, sound: b - a, crazesLater: c - b, crazesOnCooling: 1 - c }));

  it("are counted as a fit counts them", () => {
    fc.assert(
      fc.property(chances, (given) => {
        expect(casesHolding(given)).toBe(verdictOf(given).of20.sound);
      }),
    );
  });

  it("are never fewer than the chance promises, and at most one more", () => {
    fc.assert(
      fc.property(chances, (given) => {
        expect(casesHolding(given)).toBeGreaterThanOrEqual(Math.floor(given.sound * 20));
        expect(casesHolding(given)).toBeLessThan(given.sound * 20 + 1);
      }),
    );
  });
});
