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
import { checkFit } from "../../api/engine/fit/index.ts";
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

  it("names a few corners and counts the rest", () => {
    const names = ["Thaw", "Hail", "Sleet", "Rime", "Squall", "Fog"];
    const said = (shares: number[]) => sharesInWords(names, shares).replaceAll("\u00a0", " ");
    expect(said([0.5, 0.125, 0, 0.125, 0.125, 0.125])).toBe(
      "50 % Thaw, 12.5 % Hail, 12.5 % Rime, 12.5 % Squall and 12.5 % Fog",
    );
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
