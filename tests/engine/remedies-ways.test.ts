/** From a question to what a search rests on, and the ways that leave the recipe alone: small questions, soon answered. */
import { describe, expect, it } from "vitest";
import { nameOf, shifted } from "../../api/engine/advice/bench.ts";
import { otherCooling } from "../../api/engine/advice/cooling.ts";
import { findRemedies, hoursThrough, inWindow, layOut, rateAt, USUAL } from "../../api/engine/advice/index.ts";
import { otherWays } from "../../api/engine/advice/other-ways.ts";
import { askedOf, checkNames, fitOf, idsOf } from "../../api/engine/advice/question.ts";
import type { RemediesRequest } from "../../api/engine/advice/types.ts";
import { firstThatReaches } from "../../api/engine/advice/ways.ts";
import { standingOf } from "../../api/engine/advice/words.ts";
import { listBodies } from "../../api/engine/body/index.ts";
import { analyseGlaze } from "../../api/engine/chemistry/index.ts";
import { drawsFor } from "../../api/engine/fit/draws.ts";
import { checkFit } from "../../api/engine/fit/index.ts";
import { prepare } from "../../api/engine/fit/situation.ts";
import type { FitRequest } from "../../api/engine/fit/types.ts";
import { unroundedTension, viscosityCurve } from "../../api/engine/glass/index.ts";
import { THAW, THAW_ON_RED_STONEWARE } from "../../api/schemas/larch-lane.ts";
import { issuesOf } from "../support/refusals.ts";
import { SMALL } from "../support/small-misfit.ts";

/** No recipe is searched here. */
const never = () => null;
const soundOf = (request: FitRequest) => checkFit(request).probabilities.sound;

describe("a recipe on the bench", () => {
  const glaze = {
    recipe: [
      { material: "potash-feldspar", parts: 84 },
      { material: "whiting", parts: 36 },
      { name: "Own clay", analysis: { weightPercent: { SiO2: 60, Al2O3: 40 } }, parts: 40 },
      { formula: "ZrSiO4", parts: 40 },
    ],
    additions: [{ material: "cobalt-oxide", parts: 2 }],
    thicknessMm: 0.4,
  };
  const request = { ...THAW_ON_RED_STONEWARE, glaze } as unknown as FitRequest;
  const bench = layOut(request, ["whiting", "talc"], 1);

  it("stands in parts of a hundred, with what may come in once (arithmetic)", () => {
    expect(bench.lines.map(({ id, now }) => [id, now])).toEqual([
      ["potash-feldspar", 42],
      ["whiting", 18],
      [null, 20],
      [null, 20],
      ["talc", 0],
    ]);
    expect(bench.lines.map(({ name }) => name)).toEqual(["potash feldspar", "whiting", "Own clay", "ZrSiO4", "talc"]);
    expect(bench.peakC).toBe(1240);
    // Where no peak is told, the middle of what the clay is fired to.
    const { firingC } = prepare(request).body.class;
    expect(layOut({ ...request, firing: undefined }, [], 1).peakC).toBe((firingC[0] + firingC[1]) / 2);
  });

  it("knows what colours or opacifies: a fifth of it by weight", () => {
    const colours = (line: object) =>
      layOut({ ...request, glaze: { recipe: [{ ...line, parts: 1 }, ...THAW.recipe] } } as FitRequest, [], 1).lines[0]!
        .colours;
    expect(bench.lines.map((line) => line.colours)).toEqual([false, false, false, true, false]);
    expect(colours({ analysis: { weightPercent: { SiO2: 79, Fe2O3: 21 } } })).toBe(true);
    expect(colours({ analysis: { weightPercent: { SiO2: 81, Fe2O3: 19 } } })).toBe(false);
    expect(colours({ analysis: { weightPercent: { SiO2: 78, Fe2O3: 11, TiO2: 11 } } })).toBe(true);
  });

  it("knows the ratio of what each line leaves in the glaze (arithmetic)", () => {
    const share = (line: (typeof bench.lines)[number], oxide: string) => line.moles[oxide]! / all(line.moles);
    const all = (moles: Readonly<Record<string, number>>) =>
      Object.values(moles).reduce((sum, amount) => sum + amount, 0);
    // CaCO₃ leaves CaO; the built-in material is not quite pure.
    expect(share(bench.lines[1]!, "CaO")).toBeGreaterThan(0.95);
    // 60 wt % of SiO₂, 60.084 g/mol, and 40 of Al₂O₃, 101.961 g/mol: 0.9986 and 0.3923 mol.
    expect(share(bench.lines[2]!, "SiO2")).toBeCloseTo(0.9986 / 1.3909, 3);
    // ZrSiO₄ leaves one of each.
    expect(share(bench.lines[3]!, "ZrO2")).toBeCloseTo(0.5, 9);
  });

  it("writes a recipe without what is nothing, and keeps the share of what colours (arithmetic)", () => {
    expect(bench.glaze([50, 0, 20, 20, 10])).toEqual({
      recipe: [
        { material: "potash-feldspar", parts: 50 },
        { name: "Own clay", analysis: { weightPercent: { SiO2: 60, Al2O3: 40 } }, parts: 20 },
        { formula: "ZrSiO4", parts: 20 },
        { material: "talc", parts: 10 },
      ],
      // Two parts over 200 are one over a hundred.
      additions: [{ material: "cobalt-oxide", parts: 1 }],
      thicknessMm: 0.4,
    });
    expect(bench.glaze([100, 0, 20, 20, 10]).additions).toEqual([{ material: "cobalt-oxide", parts: 1.5 }]);
    expect(layOut(THAW_ON_RED_STONEWARE, [], 1).glaze([1, 1, 1, 1, 1])).not.toHaveProperty("additions");
  });

  it("turns out as a fit says", () => {
    const small = layOut(SMALL, [], 1);
    const there = small.at([50, 20, 40])!;
    const recipe = [...(SMALL.glaze as typeof THAW).recipe.slice(0, 2), { material: "silica", parts: 40 }];
    const fit = checkFit({ ...SMALL, glaze: { recipe, thicknessMm: 0.3 } });
    expect(there.probabilities.sound).toBeCloseTo(fit.probabilities.sound, 3);
    expect(there.sound).toBe(there.probabilities.sound);
    expect(Object.values(there.probabilities).reduce((sum, p) => sum + p, 0)).toBeCloseTo(1, 9);
    // A mean and a middle of the same thousand, and a spread of which 1.645 reach the ends of nine in ten, roughly.
    expect(Math.abs(there.stress / 1e6 - fit.stress.value)).toBeLessThan(2);
    const half = (fit.stress.high - fit.stress.low) / 2;
    expect((1.645 * there.spread) / 1e6 / half).toBeGreaterThan(0.9);
    expect((1.645 * there.spread) / 1e6 / half).toBeLessThan(1.1);
    expect(there.expansion).toBeCloseTo(
      prepare({ ...SMALL, glaze: { recipe, thicknessMm: 0.3 } }).situation.expansion.value,
      9,
    );
    // Pure nothing is no glaze.
    expect(small.at([0, 0, 0])).toBeNull();
  });

  it("and its melt as the glass sums say, at the peak", () => {
    const x = [50, 20, 40];
    const there = layOut(SMALL, [], 1).at(x)!;
    const { recipe } = SMALL.glaze as typeof THAW;
    const { moleFractions, fired } = analyseGlaze({ recipe: recipe.map((line, j) => ({ ...line, parts: x[j]! })) });
    expect(there.logViscosity).toBeCloseTo(viscosityCurve(moleFractions).logViscosity(1240).value, 9);
    expect(there.tension).toBeCloseTo(unroundedTension(moleFractions, fired.weightPercent)!, 9);
  });

  it("a fault of its own is not taken for a recipe that cannot be judged", () => {
    const nonsense = undefined as unknown as number[];
    expect(() => layOut(SMALL, [], 1).at(nonsense)).toThrow(TypeError);
  });

  it("has a material once that is written twice, so that a limit holds for all of it (arithmetic)", () => {
    const recipe = [
      { material: "silica", parts: 10 },
      { material: "whiting", parts: 20 },
      { material: "quartz", parts: 20 },
      { formula: "KAlSi3O8", parts: 25 },
      { formula: "KAlSi3O8", parts: 25 },
    ];
    const twice: RemediesRequest = { ...SMALL, glaze: { recipe } };
    const { lines } = layOut(fitOf(twice), [], 1);
    // Formulas are each a line of their own.
    expect(lines.map(({ name, now, line }) => [name, now, line.parts])).toEqual([
      ["silica", 30, 30],
      ["whiting", 20, 20],
      ["KAlSi3O8", 25, 25],
      ["KAlSi3O8", 25, 25],
    ]);
    const { terms } = askedOf({ ...twice, parts: { silica: { max: 32 } } }, checkFit(SMALL), 0.8, 1)!;
    expect(terms.high[0]).toBe(32);
  });

  it("a glass that expands more is pulled more", () => {
    const small = layOut(SMALL, [], 1);
    const start = small.at([50, 20, 30])!;
    const more = small.shifted(start, 0.5);
    expect(small.shifted(start, 0)).toEqual({ sound: start.sound, stress: start.stress });
    expect(more.stress).toBeGreaterThan(start.stress);
    expect(more.sound).toBeLessThan(start.sound);
    expect(more).toEqual(shifted(start.prepared.situation, 0.5, drawsFor(1)));
  });

  it("calls a line as a potter would", () => {
    expect(nameOf({ material: "zinc-oxide", parts: 1 })).toBe("zinc oxide");
    expect(nameOf({ formula: "CaCO3", parts: 1 })).toBe("CaCO3");
    expect(nameOf({ formula: "CaCO3", name: "chalk", parts: 1 })).toBe("chalk");
    expect(nameOf({ analysis: { weightPercent: { SiO2: 100 } }, parts: 1 })).toBe("own material");
  });
});

describe("names in a question", () => {
  const refused = (request: Partial<RemediesRequest>) =>
    issuesOf(() => checkNames(request as RemediesRequest)).map(({ pointer, suggestion }) => [pointer, suggestion]);

  it("are known, or refused with what may be meant", () => {
    expect(refused({})).toEqual([]);
    expect(
      refused({ allow: ["silica"], forbid: ["talc"], keep: ["kaolin"], parts: { silica: {} }, seger: { CaO: {} } }),
    ).toEqual([]);
    expect(
      refused({
        allow: ["silica", "silca"],
        keep: ["kaolinn"],
        forbid: ["moonrock-x"],
        parts: { "zinc/oxyde": {} },
        seger: { "CaO/x": {}, Si02: {} },
      }),
    ).toEqual(
      [
        ["/allow/1", "silica"],
        ["/forbid/0", undefined],
        ["/keep/0", "kaolin"],
        ["/parts/zinc~1oxyde", "zinc-oxide"],
        ["/seger/CaO~1x", expect.anything()],
        ["/seger/Si02", "SiO2"],
      ].map(([pointer, suggestion]) => [
        pointer,
        pointer === "/seger/CaO~1x" ? expect.toSatisfy(() => true) : suggestion,
      ]),
    );
  });

  it("a least that is more than the most is refused, the same is not", () => {
    expect(refused({ parts: { silica: { min: 9, max: 3 } } })).toEqual([["/parts/silica", undefined]]);
    expect(refused({ parts: { silica: { min: 9, max: 9 }, talc: { min: 9 }, kaolin: { max: 0 } } })).toEqual([]);
  });

  it("are read as identifiers", () => {
    expect(idsOf(["silica", "zinc oxide"])).toEqual(["silica", "zinc-oxide"]);
    expect(idsOf()).toEqual([]);
  });

  it("only what a fit takes goes into one", () => {
    const { target: _, ...fit } = { ...THAW_ON_RED_STONEWARE, target: 0.7 };
    expect(fitOf({ ...fit, target: 0.7, forbid: ["talc"], seed: 3 })).toEqual({ ...fit, seed: 3 });
  });
});

describe("terms of a search", () => {
  const before = checkFit(SMALL);
  const asked = (more: Partial<RemediesRequest>, stands = before) => askedOf({ ...SMALL, ...more }, stands, 0.8, 1)!;
  const spans = (more: Partial<RemediesRequest>) => {
    const { bench, terms } = asked(more);
    return Object.fromEntries(bench.lines.map(({ id }, j) => [id, [terms.low[j], terms.high[j]]]));
  };

  it("let the usual materials come in, each by 40 parts more at most, and all go out (arithmetic)", () => {
    const all = spans({});
    expect(all).toMatchObject({ "potash-feldspar": [0, 90], whiting: [0, 60], silica: [0, 70], kaolin: [0, 40] });
    expect(Object.keys(all).sort()).toEqual([...USUAL].sort());
  });

  it("what is forbidden may leave but neither grow nor come in", () => {
    const all = spans({ forbid: ["silica", "kaolin"] });
    expect(all.silica).toEqual([0, 30]);
    expect(all.kaolin).toBeUndefined();
    expect(all.whiting).toEqual([0, 60]);
  });

  it("a list of what is allowed says what may come in and grow", () => {
    expect(spans({ allow: ["silica", "talc"] })).toEqual({
      "potash-feldspar": [0, 50],
      whiting: [0, 20],
      silica: [0, 70],
      talc: [0, 40],
    });
    expect(spans({ allow: [] })).toEqual({ "potash-feldspar": [0, 50], whiting: [0, 20], silica: [0, 30] });
    expect(spans({ allow: ["silica", "talc"], forbid: ["talc"] })).not.toHaveProperty("talc");
  });

  it("what is kept keeps its parts; bounds of parts hold, but for where it stands already", () => {
    const all = spans({
      keep: ["whiting"],
      parts: {
        silica: { min: 25, max: 35 },
        "potash-feldspar": { min: 55 },
        kaolin: { max: 12 },
        talc: { min: 3, max: 60 },
      },
    });
    expect(all).toMatchObject({ whiting: [20, 20], silica: [25, 35], kaolin: [0, 12], talc: [0, 60] });
    // Fifty parts are less than the least already: it may stay, or grow.
    expect(all["potash-feldspar"]).toEqual([50, 90]);
    expect(spans({ parts: { silica: { max: 20 } } }).silica).toEqual([0, 30]);
    expect(spans({ parts: { silica: { max: 20 } }, forbid: ["silica"] }).silica).toEqual([0, 30]);
  });

  it("turn by what goes wrong more often", () => {
    const stands = (shivers: number, later: number, cooling: number) => {
      const probabilities = {
        shivers,
        crazesLater: later,
        crazesOnCooling: cooling,
        sound: 1 - shivers - later - cooling,
      };
      return asked({}, { ...before, probabilities }).terms.direction;
    };
    expect(stands(0.3, 0.1, 0.1)).toBe(1);
    expect(stands(0.3, 0.2, 0.2)).toBe(-1);
    expect(stands(0.2, 0.1, 0.1)).toBe(-1);
  });

  it("are none of a recipe that cannot be judged", () => {
    const recipe = [
      { material: "potash-feldspar", parts: 40 },
      { formula: "CoO", parts: 30 },
      { material: "silica", parts: 20 },
    ];
    expect(issuesOf(() => checkFit({ ...fitOf(SMALL), glaze: { recipe } }))).toHaveLength(1);
    expect(askedOf({ ...SMALL, glaze: { recipe } }, before, 0.8, 1)).toBeNull();
  });

  it("start from the recipe as it stands", () => {
    const { terms, bench } = asked({});
    expect(terms.target).toBe(0.8);
    expect(terms.start.sound).toBeCloseTo(before.probabilities.sound, 3);
    expect(terms.start.stress).toBe(bench.at(bench.lines.map(({ now }) => now))!.stress);
  });
});

describe("schedules", () => {
  const steps = [
    { toC: 900, cPerHour: 300, holdMinutes: 15 },
    { toC: 600, cPerHour: 100 },
    { toC: 20, cPerHour: 50 },
  ];

  it("the rate at a temperature is that of the segment that passes it", () => {
    expect([1000, 900.1, 900, 899.9, 600, 599, 20, 0].map((c) => rateAt(steps, c))).toEqual([
      300, 300, 100, 100, 50, 50, 50, 50,
    ]);
  });

  it("the hours through a window count each segment for its part of it (arithmetic)", () => {
    // 100 K at 300, 300 K at 100, 100 K at 50.
    expect(hoursThrough(steps, { fromC: 1000, toC: 500 })).toBeCloseTo(1 / 3 + 3 + 2, 9);
    expect(hoursThrough(steps, { fromC: 900, toC: 600 })).toBeCloseTo(3, 9);
    expect(hoursThrough(steps, { fromC: 700, toC: 650 })).toBeCloseTo(0.5, 9);
  });

  it("a window that ends where segments do cuts none, and one above the peak begins there (arithmetic)", () => {
    expect(inWindow(steps, { fromC: 900, toC: 600 }, () => 40, 1200)).toEqual([
      steps[0],
      { toC: 600, cPerHour: 40 },
      steps[2],
    ]);
    // From the peak at 950: the soak at 900 stays.
    expect(inWindow(steps, { fromC: 950, toC: 600 }, () => 40, 950)).toEqual([
      { toC: 900, cPerHour: 40, holdMinutes: 15 },
      { toC: 600, cPerHour: 40 },
      steps[2],
    ]);
    // Segments above the peak are never met.
    expect(inWindow(steps, { fromC: 800, toC: 700 }, () => 40, 850)).toEqual([
      { toC: 800, cPerHour: 100 },
      { toC: 700, cPerHour: 40 },
      { toC: 600, cPerHour: 100 },
      steps[2],
    ]);
  });
});

describe("the first of several that reaches", () => {
  const glaze = (value: number): FitRequest => ({
    glaze: { expansion: { value, rangeC: [20, 300], plusMinus: 0.2 } },
    body: { class: "red-stoneware" },
  });
  const tried = [7.5, 6.5, 5.8, 5.6].map((value): [number, FitRequest] => [value, glaze(value)]);
  const chance = tried.map(([, request]) => soundOf(request));

  it("is told, else the best, else nothing", () => {
    expect(chance[2]!).toBeGreaterThan(chance[1]!);
    expect(firstThatReaches(tried, chance[2]! - 0.001)).toMatchObject([
      { value: 5.8, report: { probabilities: { sound: chance[2] } } },
    ]);
    expect(firstThatReaches(tried, chance[1]!)).toMatchObject([{ value: 6.5 }]);
    expect(firstThatReaches(tried.slice(0, 2), 0.999)).toMatchObject([{ value: 6.5 }]);
    expect(firstThatReaches([tried[1]!, tried[0]!], 0.999)).toMatchObject([{ value: 6.5 }]);
    expect(firstThatReaches([], 0.5)).toEqual([]);
  });
});

describe("ways that leave the recipe alone", () => {
  const expansion = { value: 6.5, rangeC: [20, 300] as [number, number], plusMinus: 0.2 };
  const request: RemediesRequest = {
    glaze: { expansion, thicknessMm: 0.5 },
    body: { class: "red-stoneware" },
    firing: { peakC: 1240 },
  };
  const before = checkFit(request);
  const ways = (more: Partial<RemediesRequest>, target = 0.95) => {
    const asked = { ...request, ...more };
    return otherWays(asked, fitOf(asked), checkFit(fitOf(asked)), target);
  };
  const at = (mm: number) => soundOf({ ...fitOf(request), glaze: { expansion, thicknessMm: mm } });
  /** 0.9 to 0.3 of half a millimetre. */
  const THINNER = [0.45, 0.4, 0.35, 0.3, 0.25, 0.2, 0.15];

  it("a coat as much thinner as it takes, by tenths of what there is", () => {
    const target = at(0.3);
    const [thin] = ways({ bodies: [] }, target).filter(({ kind }) => kind === "thickness");
    const first = THINNER.find((mm) => at(mm) >= target)!;
    expect(first).toBe(0.3);
    expect(thin!.fit).toEqual({ ...fitOf(request), glaze: { expansion, thicknessMm: 0.3 } });
    expect(thin!.text).toContain("0.30\u00a0mm thick instead of 0.50\u00a0mm");
    expect(thin).toMatchObject({
      reaches: true,
      blocks: [],
      recipe: null,
      melt: null,
      cooling: null,
      partsMoved: 0,
      materialsMoved: 0,
    });
    expect(thin!.before).toEqual(standingOf(before));
    expect(thin!.after.probabilities.sound).toBe(target);
  });

  it("the best coat where none reaches, with what stops it", () => {
    const chances = THINNER.map(at);
    const most = Math.max(...chances);
    const [thin] = ways({ bodies: [] }, 0.999).filter(({ kind }) => kind === "thickness");
    expect(thin!.after.probabilities.sound).toBe(most);
    expect(thin!.reaches).toBe(false);
    const last = chances.indexOf(most) === THINNER.length - 1;
    expect(thin!.blocks).toEqual([
      { limit: "thickness", text: last ? "Thinner still, it would hardly cover." : "Thinner still does no better." },
    ]);
  });

  it("never thinner than a tenth of a millimetre, nor of several coats at once", () => {
    const thick = (mm: number) =>
      ways({ glaze: { expansion, thicknessMm: mm }, bodies: [] }, 0.999).filter(({ kind }) => kind === "thickness");
    expect(thick(0.1)).toEqual([]);
    for (const { fit } of thick(0.25))
      expect((fit.glaze as { thicknessMm: number }).thicknessMm).toBeGreaterThanOrEqual(0.1);
    const layers = {
      layers: [
        { expansion, thicknessMm: 0.2 },
        { expansion, thicknessMm: 0.2 },
      ],
    };
    // Not even where any chance would do.
    expect(ways({ glaze: layers, bodies: [] }, 0).map(({ kind }) => kind)).not.toContain("thickness");
    expect(ways({ bodies: [] }, 0).map(({ kind }) => kind)).toContain("thickness");
  });

  it("0.3 mm where no thickness is told", () => {
    const [thin] = ways({ glaze: { expansion }, bodies: [] }, 0.999).filter(({ kind }) => kind === "thickness");
    expect(thin!.text).toContain("instead of 0.30\u00a0mm");
  });

  it("clays at hand by how well it holds on them: the best, and another that reaches", () => {
    const clay = (value: number) => ({
      class: "red-stoneware",
      expansion: { value, rangeC: [20, 500] as [number, number], plusMinus: 0.2 },
    });
    const bodies = [
      { name: "low", body: clay(6.6) },
      { body: clay(7.4) },
      { name: "middle", body: clay(7.1) },
      { name: "worse", body: clay(5) },
    ];
    const chances = bodies.map(({ body }) => soundOf({ ...fitOf(request), body }));
    const others = (target: number) => ways({ bodies }, target).filter(({ kind }) => kind === "body");
    expect(chances[1]!).toBeGreaterThan(chances[2]!);
    expect(chances[2]!).toBeGreaterThan(chances[0]!);
    // Two at most, the best first, whatever their order; one without a name has its place.
    expect(others(chances[0]!).map(({ title }) => title)).toEqual(["another clay: clay 2", "another clay: middle"]);
    expect(others(chances[2]! + 0.001).map(({ title }) => title)).toEqual(["another clay: clay 2"]);
    const [best] = others(chances[1]!);
    expect(best!.fit).toEqual({ ...fitOf(request), body: bodies[1]!.body });
    expect(best!.reaches).toBe(true);
    expect(best!.after.probabilities.sound).toBe(chances[1]);
    const [short] = others(0.9999);
    expect(short).toMatchObject({
      reaches: false,
      blocks: [{ limit: "body", text: "No other clay that I tried does better." }],
    });
  });

  it("nothing that does not keep 0.02 more sound, unless it reaches", () => {
    const clay = {
      class: "red-stoneware",
      expansion: { value: 5, rangeC: [20, 500] as [number, number], plusMinus: 0.2 },
    };
    expect(ways({ bodies: [{ name: "worse", body: clay }] }).filter(({ kind }) => kind === "body")).toEqual([]);
    for (const { after, reaches } of ways({})) {
      expect(reaches || after.probabilities.sound >= before.probabilities.sound + 0.02).toBe(true);
    }
    // The same clay again keeps as many: enough only where that was wanted.
    const same = [{ name: "same", body: request.body }];
    const sound = before.probabilities.sound;
    expect(ways({ bodies: same }, sound).map(({ kind }) => kind)).toContain("body");
    expect(ways({ bodies: same }, sound + 0.001).map(({ kind }) => kind)).not.toContain("body");
  });

  it.each([
    // Hard porcelain is fired to 1350–1420 °C, cordierite ware to 1220–1320; either side 20 are allowed for.
    [1329, ["cordierite-ware"]],
    [1330, ["cordierite-ware", "hard-porcelain"]],
    [1340, ["cordierite-ware", "hard-porcelain"]],
    [1341, ["hard-porcelain"]],
    [1440, ["hard-porcelain"]],
    [1441, []],
  ])("built-in clays that are fired to %d °C (arithmetic)", (peakC, clays) => {
    const told = ways({ firing: { peakC } }, 0).filter(({ kind }) => kind === "body");
    expect(told.map(({ fit }) => (fit.body as { class: string }).class).sort()).toEqual(clays);
    for (const { fit } of told) expect(fit.firing).toEqual({ peakC });
  });

  it("not its own again, and any where no peak is told; the two best", () => {
    const own = { body: { class: "hard-porcelain" }, firing: { peakC: 1400 } };
    expect(ways(own, 0).filter(({ kind }) => kind === "body")).toEqual([]);
    const chances = listBodies()
      .filter(({ id }) => id !== "red-stoneware")
      .map(({ id, name }) => ({ name, sound: soundOf({ ...fitOf(request), firing: undefined, body: { class: id } }) }))
      .sort((a, b) => b.sound - a.sound);
    expect(
      ways({ firing: undefined }, 0)
        .filter(({ kind }) => kind === "body")
        .map(({ title }) => title),
    ).toEqual(chances.slice(0, 2).map(({ name }) => `another clay: ${name}`));
  });

  it("refuses a clay that cannot be, where it stands in the request", () => {
    const bodies = [{ body: { class: "buff-stoneware" } }, { body: { class: "red-stonewear" } }];
    expect(issuesOf(() => ways({ bodies })).map(({ pointer }) => pointer)).toEqual(["/bodies/1/body/class"]);
  });
});

describe("another cooling", () => {
  const stated = (value: number, transitionC: number): FitRequest => ({
    glaze: { expansion: { value, rangeC: [20, 300], plusMinus: 0.2 }, transitionC },
    body: { class: "white-earthenware" },
    firing: { peakC: 1060, coolingCPerHour: 100 },
  });
  const cooled = (fit: FitRequest, target = 0.999) => otherCooling(fit, checkFit(fit), target);
  const RATES = [400, 300, 200, 150, 100, 75, 50, 30, 20, 10];
  const up = (c: number) => Math.ceil(c / 10) * 10;
  const down = (c: number) => Math.floor(c / 10) * 10;

  it("is the better of slower and faster, each tried as a whole schedule (arithmetic)", () => {
    for (const fit of [stated(4.3, 540), stated(8, 700)]) {
      const before = checkFit(fit);
      const { low, high } = before.setPoint;
      const slow = { fromC: up(high), toC: down(low - 30) };
      const fast = { fromC: up(high + 20), toC: Math.max(down(low), 600) };
      const at = (rate: number) => {
        const { fromC, toC } = rate < 100 ? slow : fast;
        const cooling = [
          { toC: fromC, cPerHour: 100 },
          { toC, cPerHour: rate },
          { toC: 20, cPerHour: 100 },
        ];
        return { rate, sound: fromC - toC < 20 ? 0 : soundOf({ ...fit, firing: { peakC: 1060, cooling } }) };
      };
      const tried = RATES.filter((rate) => rate !== 100).map(at);
      const best = tried.reduce((a, b) => (b.sound > a.sound ? b : a));
      const [way] = cooled(fit);
      expect(way!.report.probabilities.sound).toBe(best.sound);
      expect(way!.cooling).toMatchObject(best.rate < 100 ? slow : fast);
      expect(way!.title).toMatch(best.rate < 100 ? /^slower/ : /^faster/);
      // The first rate that reaches is taken, the gentlest first.
      const target = Math.min(best.sound, before.probabilities.sound + 0.01);
      const side = tried.filter(({ rate }) => (best.rate < 100 ? rate < 100 : rate > 100));
      const gentlest = (best.rate < 100 ? side : [...side].reverse()).find(({ sound }) => sound >= target)!;
      expect(cooled(fit, target)[0]!.cooling!.cPerHour).toBe(gentlest.rate);
    }
  });

  it("is never faster than 600 °C down, and not at all where the window would be too narrow", () => {
    // Sets below 600: only slower is left.
    const [soft] = cooled(stated(8, 520));
    expect(soft!.title).toMatch(/^slower/);
    // A peak as low leaves a window of 19 K, or of 20, which can be kept.
    const toC = down(checkFit(stated(5, 700)).setPoint.low - 30);
    const upTo = (peakC: number) => cooled({ ...stated(5, 700), firing: { peakC, coolingCPerHour: 100 } });
    expect(upTo(toC + 19)).toEqual([]);
    expect(upTo(toC + 20)).toMatchObject([{ cooling: { fromC: toC + 20, toC } }]);
    // Faster from 610 to 600 °C would be no worse than now, and slower is: but ten degrees are too few.
    const narrow = stated(6.5, 545);
    expect(up(checkFit(narrow).setPoint.high + 20)).toBe(610);
    const [slower] = cooled(narrow);
    expect(slower!.title).toMatch(/^slower/);
    expect(slower!.report.probabilities.sound).toBeLessThan(soundOf(narrow));
    // Twenty are enough.
    const enough = stated(6.5, 550);
    expect(up(checkFit(enough).setPoint.high + 20)).toBe(620);
    expect(cooled(enough)).toMatchObject([{ cooling: { fromC: 620, toC: 600 } }]);
  });

  it("faster where that helps, told as such, and what it saves (arithmetic)", () => {
    const [way] = cooled(stated(4.5, 700));
    const { fromC, toC, cPerHour, hours } = way!.cooling!;
    const { low, high } = checkFit(stated(4.5, 700)).setPoint;
    expect([fromC, toC]).toEqual([up(high + 20), down(low)]);
    expect(toC).toBeGreaterThanOrEqual(600);
    expect(way!.title).toBe("faster cooling where the glaze sets");
    expect(cPerHour).toBe(400);
    expect(hours).toBeCloseTo((fromC - toC) / 400 - (fromC - toC) / 100, 1);
    expect(way!.costs[0]).toMatch(/^Faster cooling strains/);
    expect(way!.stops).toBe("A studio kiln hardly keeps a faster rate there.");
    expect(way!.text).toContain(
      `Cool at 400\u00a0°C an hour instead of 100\u00a0°C an hour between ${fromC} and ${toC}`,
    );
    // Of the rates above, the gentlest that reaches: 150 does not, 200 may.
    const at = (rate: number) => {
      const cooling = [
        { toC: fromC, cPerHour: 100 },
        { toC, cPerHour: rate },
        { toC: 20, cPerHour: 100 },
      ];
      return soundOf({ ...stated(4.5, 700), firing: { peakC: 1060, cooling } });
    };
    const gentlest = [150, 200, 300, 400].find((rate) => at(rate) >= at(300))!;
    expect(cooled(stated(4.5, 700), at(300))[0]!.cooling!.cPerHour).toBe(gentlest);
  });

  it("what is faster already stays so", () => {
    const cooling = [
      { toC: 720, cPerHour: 450 },
      { toC: 20, cPerHour: 100 },
    ];
    const [way] = cooled({ ...stated(4.5, 700), firing: { peakC: 1060, cooling } });
    const { cPerHour, toC } = way!.cooling!;
    expect(way!.title).toMatch(/^faster/);
    expect(way!.fit.firing!.cooling).toEqual([cooling[0], { toC, cPerHour }, cooling[1]]);
  });

  it("a rate that is hardly slower is slower all the same (arithmetic)", () => {
    // From 76 to 75 K/h: some 140 K take a minute and a half longer, which is nothing to a tenth of an hour.
    const [way] = cooled({ ...stated(4.3, 540), firing: { peakC: 1060, coolingCPerHour: 76 } }, 0);
    expect(way!.cooling).toMatchObject({ cPerHour: 75, insteadOfCPerHour: 76, hours: 0 });
    expect(way!.title).toMatch(/^slower/);
    expect(way!.costs[0]).toMatch(/^The firing takes about 1 hour longer/);
  });

  it("100 °C an hour where nothing is told, and the rate of the segment that passes the set point otherwise", () => {
    const silent = { ...stated(4.3, 540), firing: { peakC: 1060 } };
    expect(cooled(silent)[0]!.cooling!.insteadOfCPerHour).toBe(100);
    const { firing: _, ...none } = silent;
    expect(cooled(none)[0]!.cooling!.insteadOfCPerHour).toBe(100);
    const steps = {
      ...silent,
      firing: {
        peakC: 1060,
        cooling: [
          { toC: 700, cPerHour: 250 },
          { toC: 20, cPerHour: 120 },
        ],
      },
    };
    expect(cooled(steps)[0]!.cooling!.insteadOfCPerHour).toBe(120);
    // The middle of where it may set counts, not its cold end.
    const later = [
      { toC: 510, cPerHour: 250 },
      { toC: 20, cPerHour: 120 },
    ];
    const early = { ...silent, firing: { peakC: 1060, cooling: later } };
    expect(checkFit(early).setPoint.low).toBeLessThan(510);
    expect(checkFit(early).setPoint.value).toBeGreaterThan(510);
    expect(cooled(early)[0]!.cooling!.insteadOfCPerHour).toBe(250);
    // What is slower already stays so.
    expect(cooled(steps)[0]!.fit.firing!.cooling![0]).toEqual({ toC: 700, cPerHour: 250 });
  });

  it("says how much longer it takes, whole hours upward (arithmetic)", () => {
    const [way] = cooled(stated(4.3, 540));
    const { hours, cPerHour, fromC, toC } = way!.cooling!;
    expect(hours).toBeCloseTo((fromC - toC) / cPerHour - (fromC - toC) / 100, 1);
    expect(way!.costs[0]).toContain(`about ${Math.ceil(hours)} hour`);
    expect(way!.costs[0]!.includes("hours longer")).toBe(hours > 1);
  });

  it("says why it stops: at the end of what a kiln keeps, or where more does no better", () => {
    for (const fit of [stated(4.3, 540), stated(8, 700), stated(6.5, 620)]) {
      for (const way of cooled(fit)) {
        const ends = [10, 400].includes(way.cooling!.cPerHour);
        expect(way.stops).toMatch(ends ? /^A studio kiln hardly keeps/ : /does no better\.$/);
      }
    }
  });

  it("speaks of quartz by where the glaze sets, and not at all of a clay without it", () => {
    const costs = (fit: FitRequest) =>
      cooled(fit)
        .flatMap((way) => way.costs)
        .join(" ");
    expect(costs(stated(4.3, 480))).toContain("while this glaze is still soft");
    expect(costs(stated(4.3, 570))).toContain("may set while quartz in the clay turns");
    expect(costs(stated(8, 720))).toContain("when this glaze has set");
    // Two volumes in a hundred at most; bone china may hold three.
    expect(cooled({ ...stated(6, 600), body: { class: "lithia-flameware" } })[0]!.costs).toHaveLength(1);
    expect(cooled({ ...stated(6, 600), body: { class: "bone-china" } })[0]!.costs).toHaveLength(2);
  });

  it.each([
    // Nine glazes in ten set above 600 °C now, or only then; below 550 °C now, or only then.
    [4.3, 650, "low", 600, [false, true], "may set while quartz in the clay turns"],
    [4.3, 656, "low", 600, [true, true], "when this glaze has set"],
    [8, 670, "low", 600, [true, false], "may set while quartz in the clay turns"],
    [4.3, 504, "high", 551, [false, false], "while this glaze is still soft"],
    [4.3, 514, "high", 551, [true, false], "may set while quartz in the clay turns"],
    [4.3, 540, "high", 551, [true, true], "may set while quartz in the clay turns"],
  ] as const)("by the rate now and the other, both: %d, %d °C", (value, transitionC, end, from, above, words) => {
    const [way] = cooled(stated(value, transitionC));
    const { before, after } = way!.cooling!.setPoint;
    expect([before[end] >= from, after[end] >= from]).toEqual(above);
    expect(way!.costs[1]).toContain(words);
  });
});

describe("the answer", () => {
  const glaze = { expansion: { value: 6.3, rangeC: [20, 300] as [number, number], plusMinus: 0.2 } };
  const bought: RemediesRequest = { glaze, body: { class: "buff-stoneware" }, bodies: [] };

  it("where it fits as it is, says so and looks no further", () => {
    const sound = soundOf(fitOf(bought));
    const report = findRemedies({ ...bought, target: sound }, never);
    expect(report).toMatchObject({ remedies: [], blocked: [], target: sound });
    expect(report.headline).toMatch(/^It fits as it is/);
    expect(report.warnings.map(({ code }) => code)).not.toContain("recipe-unknown");
    expect(findRemedies({ ...bought, target: sound + 0.001 }, never).headline).not.toMatch(/^It fits/);
  });

  it("hands on what a fit warns of and cautions, and asks a bought glaze for its recipe", () => {
    const unsaid: RemediesRequest = { ...bought, glaze: { expansion: { value: 6.3 } } };
    const fit = checkFit(fitOf(unsaid));
    expect(fit.warnings.length).toBeGreaterThan(1);
    const { warnings, cautions, sources } = findRemedies(unsaid, never);
    expect(warnings.slice(0, -1)).toEqual(fit.warnings);
    expect(warnings.at(-1)).toMatchObject({ code: "recipe-unknown", pointer: "/glaze" });
    expect(cautions).toEqual(fit.cautions);
    expect(sources).toEqual([...new Set([...fit.sources, "common-practice"])].sort());
  });

  it("of a recipe: what reaches by parts and materials, what leaves it alone after that, then what falls short", () => {
    const clay = {
      class: "red-stoneware",
      expansion: { value: 7.6, rangeC: [20, 500] as [number, number], plusMinus: 0.2 },
    };
    const asked: RemediesRequest = {
      ...SMALL,
      allow: ["silica", "talc"],
      target: 0.6,
      bodies: [{ name: "fitting", body: clay }],
    };
    const { remedies, warnings, before, headline, blocked } = findRemedies(asked);
    expect(before).toEqual(standingOf(checkFit(fitOf(SMALL))));
    expect(warnings).toEqual([]);
    expect(blocked).toEqual([]);
    const place = remedies.map(({ reaches, recipe }) => (reaches ? (recipe ? 1 : 2) : 3));
    expect(new Set(place).size).toBe(3);
    expect(place).toEqual([...place].sort());
    const efforts = remedies
      .filter(({ reaches, recipe }) => reaches && recipe)
      .map(({ partsMoved, materialsMoved }) => partsMoved + 2 * materialsMoved);
    expect(efforts.length).toBeGreaterThan(1);
    expect(efforts).toEqual([...efforts].sort((a, b) => a - b));
    const short = remedies.filter(({ reaches }) => !reaches).map(({ after }) => after.probabilities.sound);
    expect(short).toEqual([...short].sort((a, b) => b - a));
    expect(headline).toContain(`${place.filter((one) => one < 3).length} ways bring it`);
    expect(headline).toContain(`the least: ${remedies[0]!.text}`);
  });

  it("one material more counts as two parts", () => {
    const melt = { logViscosity: 0.3, surfaceTensionPercent: 10 };
    const asked = { ...SMALL, allow: ["silica", "zinc-oxide"], target: 0.5, bodies: [], melt };
    const moved = findRemedies(asked).remedies.filter(({ reaches, recipe }) => reaches && recipe);
    const parts = moved.map(({ partsMoved }) => partsMoved);
    const efforts = moved.map(({ partsMoved, materialsMoved }) => partsMoved + 2 * materialsMoved);
    expect(efforts).toEqual([...efforts].sort((a, b) => a - b));
    // By parts alone they would come in another order.
    expect(parts).not.toEqual([...parts].sort((a, b) => a - b));
  });

  it("no recipe is searched where it fits as it is", () => {
    const search = () => {
      throw new Error("searched");
    };
    expect(findRemedies({ ...SMALL, target: 0.05 }, search).remedies).toEqual([]);
    expect(() => findRemedies({ ...SMALL, bodies: [] }, search)).toThrow("searched");
  });

  it("wants 17 of 20 where nothing is said, and puts what reaches first", () => {
    const clay = (value: number) => ({
      class: "buff-stoneware",
      expansion: { value, rangeC: [20, 500] as [number, number], plusMinus: 0.2 },
    });
    const report = findRemedies({ ...bought, bodies: [{ name: "fitting", body: clay(7.8) }] }, never);
    expect(report.target).toBe(0.85);
    const { remedies } = report;
    expect(remedies[0]).toMatchObject({ kind: "body", reaches: true });
    expect(remedies.map(({ reaches }) => reaches)).toEqual(
      remedies.map(({ reaches }) => reaches).sort((a, b) => Number(b) - Number(a)),
    );
    const short = remedies.filter(({ reaches }) => !reaches).map(({ after }) => after.probabilities.sound);
    expect(short).toEqual([...short].sort((a, b) => b - a));
    expect(report.headline).toContain("One way brings it to about 17 in 20 or better; the least: On fitting");
    expect(report.blocked).toEqual([]);
    const two = findRemedies(
      {
        ...bought,
        bodies: [
          { name: "fitting", body: clay(7.8) },
          { name: "too", body: clay(7.7) },
        ],
      },
      never,
    );
    expect(two.headline).toContain("2 ways bring it");
    expect(two.sources).toContain("common-practice");
    expect(two.engine.seed).toBe(1);
    expect(findRemedies({ ...bought, seed: 7 }, never).engine.seed).toBe(7);
  });

  it("where nothing reaches, says how far it gets, by what, and how far the expansion is off", () => {
    const report = findRemedies({ ...bought, target: 0.7 }, never);
    const [best] = report.remedies;
    expect(best!.reaches).toBe(false);
    expect(report.headline).toContain(`by ${best!.title}.`);
    expect(report.blocked.map(({ limit }) => limit)).toContain("recipe");
    const glassy = { ...glaze, expansion: { ...glaze.expansion, value: 7 } };
    const none = findRemedies({ ...bought, glaze: glassy, target: 0.7 }, never);
    expect(none.remedies).toEqual([]);
    expect(none.headline).toContain("I found nothing that helps");
  });
});
