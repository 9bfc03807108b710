import { describe, expect, it } from "vitest";
import {
  blendPicture,
  canDraw,
  csvHeading,
  csvRow,
  gridWalk,
  judgeBlend,
  letters,
  openBlend,
  simplexSize,
  simplexWalk,
} from "../../api/engine/blends/index.ts";
import type { BlendPoint, BlendRequest } from "../../api/engine/blends/types.ts";
import { analyseGlaze } from "../../api/engine/chemistry/index.ts";
import type { EngineError } from "../../api/engine/errors.ts";
import { checkFit } from "../../api/engine/fit/index.ts";
import { THEMES } from "../../api/engine/pictures/marks/theme.ts";
import { RED_STONEWARE, THAW } from "../../api/schemas/larch-lane.ts";

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
  ])("%i corners in %i steps are %i points, none twice, each one step from the one before", (k, steps, size) => {
    const points = [...simplexWalk(k, steps)];
    expect(simplexSize(k, steps)).toBe(size);
    expect(points).toHaveLength(size);
    expect(new Set(points.map(String)).size).toBe(size);
    points.forEach((point, i) => {
      expect(point.reduce((a, b) => a + b, 0)).toBe(steps);
      if (i === 0) return;
      const moved = point.reduce((sum, count, c) => sum + Math.abs(count - points[i - 1]![c]!), 0);
      expect(moved).toBe(2);
    });
  });

  it("walks a grid to and fro", () => {
    const points = [...gridWalk(3, 2)];
    expect(points).toHaveLength(12);
    points.forEach(({ row, column, shares }, i) => {
      expect(shares.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
      if (i > 0) expect(Math.abs(row - points[i - 1]!.row) + Math.abs(column - points[i - 1]!.column)).toBe(1);
    });
  });

  it("letters rows beyond Z", () =>
    expect([0, 25, 26, 27, 701, 702].map(letters)).toEqual(["A", "Z", "AA", "AB", "ZZ", "AAA"]));
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

  it("carries additions at their share", () => {
    const quarter = judged(report.points).find(({ shares }) => shares[2] === 0.25 && shares[0] === 0.75)!;
    expect(quarter.additions).toEqual([{ material: "red-iron-oxide", parts: 1 }]);
  });

  it("goes on from any index, point for point", () => {
    const rest = [...openBlend({ ...request, from: 7, count: 3 }).points()];
    expect(rest).toEqual(report.points.slice(7, 10));
  });

  it("says how to come from one tile to the next", () => {
    expect(report.points[0]!.move).toBeNull();
    expect(report.points[1]!.move).toBe("25 % less Thaw, 25 % more Sleet");
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
    expect(refused({ ...request, corners: [corners[0]!] })).toEqual(["/corners"]);
    expect(refused({ ...request, shape: "grid" })).toEqual(["/corners"]);
    expect(refused({ ...request, steps: 200 })).toEqual(["/steps"]);
    expect(refused({ ...request, from: 99 })).toEqual(["/from"]);
    expect(refused({ ...request, stepsDown: 3 })).toEqual(["/stepsDown"]);
    expect(refused({ ...request, body: { class: "red-stonewear" } })).toEqual(["/body/class"]);
  });
});

describe("as a table", () => {
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

describe("as a picture", () => {
  it.each([
    ["a line", { ...request, corners: corners.slice(0, 2) }, "simplex"],
    ["a triangle", request, "simplex"],
    ["a grid", { ...request, corners: [...corners, { name: "<Rime>", glaze: THAW }], shape: "grid" as const }, "grid"],
  ] as const)("draws %s with title and words, and no number left out", (_, asked, shape) => {
    const report = judgeBlend(asked);
    expect(canDraw(report, shape)).toBe(true);
    const svg = blendPicture(report, shape, { standalone: true });
    expect(svg).toMatch(/^<svg [^>]*role="img"/);
    expect(svg).not.toMatch(/NaN|Infinity|undefined|<Rime>/);
    expect(svg).toContain("<title");
    for (const { label } of report.points) expect(svg).toContain(`>${label}<`);
  });

  it("fills as many dots as there are sound mixtures", () => {
    const report = judgeBlend({ ...request, steps: 8 });
    const sound = judged(report.points).filter(({ verdict }) => verdict === "sound").length;
    const { ink2 } = THEMES.light;
    expect(sound).toBeGreaterThan(0);
    expect(blendPicture(report, "simplex").split(`r="4" fill="${ink2}"`)).toHaveLength(sound + 1);
  });

  it("does not draw what is not whole", () => {
    expect(canDraw(judgeBlend({ ...request, count: 4 }), "simplex")).toBe(false);
  });

  it("runs its contours where the chance crosses them", () => {
    const steep = judgeBlend({ ...request, steps: 8 });
    const sound = judged(steep.points).map(({ probabilities }) => probabilities.sound);
    // Some mixtures lie on either side of 10 in 20, so the dashed contour has to be there.
    expect(Math.min(...sound)).toBeLessThan(0.5);
    expect(Math.max(...sound)).toBeGreaterThan(0.5);
    expect(blendPicture(steep, "simplex")).toMatch(/<path d="M[^"]*L[^"]*" [^>]*stroke-dasharray="8 4"/);
  });
});
