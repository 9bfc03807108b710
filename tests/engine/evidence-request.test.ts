/** From a request to tiles and back: what is read, refused and remarked on, and what the report says of it. */
import { beforeAll, describe, expect, it } from "vitest";
import { learnFromTiles, quantileIn } from "../../api/engine/evidence/index.ts";
import { readEvidence } from "../../api/engine/evidence/read-request.ts";
import type { EvidenceReport, EvidenceRequest, Piece, Tile } from "../../api/engine/evidence/types.ts";
import { RED_STONEWARE, THAW } from "../../api/schemas/larch-lane.ts";
import { issuesOf } from "../support/refusals.ts";

const RUN = { value: 7, rangeC: [20, 300] as const, plusMinus: 0.2 };
const STATED = { expansion: { value: 6.5, rangeC: [20, 300] as [number, number], plusMinus: 0.2 } };
const tile = (more: Partial<Tile> = {}): Tile => ({ body: RED_STONEWARE, seen: [{ kind: "crazed" }], ...more });
const read = (request: EvidenceRequest) => readEvidence(request, 1);
const codes = (request: EvidenceRequest) => read(request).warnings.map(({ code, pointer }) => [code, pointer]);

const refused = (request: EvidenceRequest) => issuesOf(() => read(request));
const pointers = (request: EvidenceRequest) => refused(request).map(({ pointer }) => pointer);

describe("a tile as read", () => {
  const thickness = (piece: Partial<Piece>, request: Partial<EvidenceRequest> = {}) =>
    read({ ...request, tiles: [tile(piece)] }).tiles[0]!.situation.thicknessM * 1000;

  it.each<[string, Partial<Piece>, Partial<EvidenceRequest>, number]>([
    ["0.3 mm where nothing is said", {}, {}, 0.3],
    ["the glaze's", {}, { glaze: { ...STATED, thicknessMm: 0.2 } }, 0.2],
    ["the request's before the glaze's", {}, { glaze: { ...STATED, thicknessMm: 0.2 }, thicknessMm: 0.4 }, 0.4],
    [
      "the tile's before either",
      { thicknessMm: 0.5 },
      { glaze: { ...STATED, thicknessMm: 0.2 }, thicknessMm: 0.4 },
      0.5,
    ],
    ["of one coat, times the coats", { thicknessMm: 0.25, coats: 3 }, {}, 0.75],
    ["of one coat where only coats are told", { coats: 2 }, {}, 0.6],
  ])("is as thick as told: %s", (_, piece, request, mm) => {
    expect(thickness(piece, request)).toBeCloseTo(mm, 12);
  });

  it("is fired and made as told", () => {
    const [one] = read({ tiles: [tile({ ware: { wallMm: 4 }, firing: { coolingCPerHour: 60 } })] }).tiles;
    expect(one!.situation.wallM).toBeCloseTo(0.004, 12);
    const [usual] = read({ tiles: [tile()] }).tiles;
    // Slower cooling relaxes a stiffer glass: 60 for 100 °C an hour is log₁₀(100/60) more.
    const stiffer = one!.situation.cooling[0]!.logRamp - usual!.situation.cooling[0]!.logRamp;
    expect(stiffer).toBeCloseTo(Math.log10(100 / 60), 9);
  });

  it("has its name, or that of its place", () => {
    const { tiles, bodies, runs } = read({
      tiles: [tile({ name: "on the sill" }), tile()],
      bodies: [{ body: RED_STONEWARE }, { name: "the red", body: RED_STONEWARE }],
      measured: [RUN, RUN],
    });
    expect(tiles.map(({ name, pointer }) => [name, pointer])).toEqual([
      ["on the sill", "/tiles/0"],
      ["tile 2", "/tiles/1"],
    ]);
    expect(bodies.map(({ name }) => name)).toEqual(["clay 1", "the red"]);
    expect(runs.map(({ name, pointer }) => [name, pointer])).toEqual([
      ["run 1", "/measured/0"],
      ["run 2", "/measured/1"],
    ]);
  });

  it("shares its clay with tiles of the same clay, and its thickness with none, not even one like it", () => {
    const [one, same, other] = read({ tiles: [tile(), tile(), tile({ body: { class: "buff-stoneware" } })] }).tiles;
    expect(same!.draws.normal.bodyMean).toEqual(one!.draws.normal.bodyMean);
    expect(same!.draws.normal.thickness).not.toEqual(one!.draws.normal.thickness);
    expect(other!.draws.normal.bodyMean).not.toEqual(one!.draws.normal.bodyMean);
    // Fields in another order are the same clay.
    const turned = Object.fromEntries(Object.entries(RED_STONEWARE).reverse()) as unknown as Tile["body"];
    const [, again] = read({ tiles: [tile(), tile({ body: turned })] }).tiles;
    expect(again!.draws.normal.bodyMean).toEqual(one!.draws.normal.bodyMean);
  });

  it("answers every question of everything seen", () => {
    const seen = [{ kind: "crazed", byDays: 9, soundAtDays: 1 }, { kind: "not-shivered" }] as const;
    expect(read({ tiles: [tile({ seen })] }).tiles[0]!.answered.map(({ answer }) => answer)).toEqual([1, 0, 0]);
  });
});

describe("what is known before", () => {
  const middle = (request: EvidenceRequest) => quantileIn(read(request).prior, 0.5);
  const half = (request: EvidenceRequest) => {
    const { prior } = read(request);
    return (quantileIn(prior, 0.95) - quantileIn(prior, 0.05)) / 2;
  };

  it("is what glazes can be, or what the glaze is said to be", () => {
    const unknown = { tiles: [tile()] };
    expect(read(unknown).known).toBe(false);
    // 7 ± 1.645 × 1.6, cut off at 2 and 13.
    expect(middle(unknown)).toBeCloseTo(7, 1);
    expect(half(unknown)).toBeCloseTo(1.645 * 1.6, 1);
    const stated = { glaze: STATED, tiles: [tile()] };
    expect(read(stated).known).toBe(true);
    expect(middle(stated)).toBeCloseTo(6.5, 2);
    expect(half(stated)).toBeCloseTo(0.2, 2);
  });

  it("of a run: ±0.2 where none is told, 20 to 300 °C where no range is, which is said", () => {
    const { runs, warnings } = read({ measured: [{ value: 7 }, { value: 7.77, rangeC: [20, 500], plusMinus: 0.111 }] });
    expect(runs[0]).toMatchObject({ value: 7, sd: expect.closeTo(0.2 / 1.6448536, 7) });
    // Middle of 20–500 is 260 °C: 1 + 0.0011 × 100.
    expect(runs[1]).toMatchObject({ value: expect.closeTo(7, 9), sd: expect.closeTo(0.1 / 1.6448536, 7) });
    expect(warnings.map(({ code, pointer }) => [code, pointer])).toEqual([["range-assumed", "/measured/0/rangeC"]]);
  });

  it.each<[string, EvidenceRequest, number | undefined]>([
    ["nothing of a bought glaze", { tiles: [tile()] }, undefined],
    ["nothing of a stated expansion by itself", { glaze: STATED, measured: [RUN] }, undefined],
    ["what is stated", { glaze: { ...STATED, transitionC: 612 }, tiles: [tile()] }, 612],
    ["what is stated, of a run alone", { glaze: { ...STATED, transitionC: 612 }, measured: [RUN] }, 612],
  ])("of the transition: %s", (_, request, transitionC) => {
    expect(read(request).transitionC).toBe(transitionC);
    if (!request.tiles) expect(learnFromTiles(request).glaze.transitionC).toBe(transitionC);
  });

  it("of a recipe: its own transition, a whole number, with or without a tile", () => {
    for (const request of [{ tiles: [tile()] }, { measured: [RUN] }, { measured: [RUN], bodies: [tile()] }]) {
      const { transitionC, sources } = read({ ...request, glaze: THAW });
      expect(transitionC).toBeGreaterThan(550);
      expect(transitionC).toBeLessThan(800);
      expect(Number.isInteger(transitionC)).toBe(true);
      // The recipe's own sources are told even where no tile was fired.
      expect(sources.length).toBeGreaterThan(3);
    }
  });
});

describe("what is remarked on", () => {
  const hot = { firing: { peakC: 1400 } };

  it("once, at the piece that it is about", () => {
    expect(codes({ tiles: [tile(), tile(hot), tile(hot)] })).toEqual([["firing-unusual", "/tiles/1/firing/peakC"]]);
    expect(codes({ tiles: [tile()], bodies: [tile(), tile(hot)] })).toEqual([
      ["firing-unusual", "/bodies/1/firing/peakC"],
    ]);
    // Another temperature is another remark.
    expect(codes({ tiles: [tile(hot), tile({ firing: { peakC: 1390 } })] })).toEqual([
      ["firing-unusual", "/tiles/0/firing/peakC"],
      ["firing-unusual", "/tiles/1/firing/peakC"],
    ]);
  });

  it("of a glaze that is given, at the glaze; a thick coat at its tile", () => {
    const leaded = { oxides: { basis: "weightPercent", amounts: { SiO2: 50, PbO: 40, Al2O3: 10 } } } as const;
    const { warnings, cautions } = read({ glaze: leaded, tiles: [tile({ thicknessMm: 2 }), tile()] });
    const places = warnings.map(({ code, pointer }) => [code, pointer]);
    expect(places).toContainEqual(["thick-glaze", "/tiles/0/thicknessMm"]);
    expect(places.filter(([code]) => code === "thick-glaze")).toHaveLength(1);
    // A caution is said once, however many tiles.
    expect(cautions.map(({ code }) => code)).toEqual([...new Set(cautions.map(({ code }) => code))]);
    expect(cautions.length).toBeGreaterThan(0);
  });

  it("nothing of the stand-in for a bought glaze, but how thick it lies", () => {
    expect(codes({ tiles: [tile(), tile({ thicknessMm: 2, ware: { wallMm: 8 } })] })).toEqual([
      ["thick-glaze", "/tiles/1/thicknessMm"],
    ]);
    expect(codes({ tiles: [tile({ ware: { wallMm: 6 }, firing: { peakC: 1240 } })] })).toEqual([]);
  });
});

describe("what is refused", () => {
  it("every fault at once, each once, where it stands", () => {
    expect(
      pointers({
        glaze: { recipe: [{ material: "whitting", parts: 1 }] },
        tiles: [tile(), tile({ body: { class: "red-stonewear" } })],
        bodies: [{ body: { class: "buf-stoneware" } }],
        measured: [{ value: 600 }],
      }),
    ).toEqual(["/glaze/recipe/0/material", "/tiles/1/body/class", "/bodies/0/body/class", "/measured/0/value"]);
  });

  it("a coat too thick at the tile, with what the other tile of it says too", () => {
    const thick = tile({ thicknessMm: 3, coats: 2 });
    expect(pointers({ tiles: [thick, thick] })).toEqual(["/tiles/0/thicknessMm", "/tiles/1/thicknessMm"]);
    expect(pointers({ tiles: [tile({ ware: { wallMm: 0.2 } })] })).toEqual(["/tiles/0/ware/wallMm"]);
  });

  it.each([0.1, 20])("takes a run of %d, and nothing beyond", (value) => {
    expect(pointers({ measured: [{ ...RUN, value }] })).toEqual([]);
    const beyond = value < 1 ? 0.09 : 20.1;
    expect(refused({ measured: [RUN, { ...RUN, value: beyond }] })).toMatchObject([
      { pointer: "/measured/1/value", allowed: [0.1, 20] },
    ]);
  });

  it("a request with nothing to learn from, though not one that has other faults", () => {
    expect(pointers({})).toEqual([""]);
    expect(pointers({ glaze: THAW, bodies: [{ body: RED_STONEWARE }] })).toEqual([""]);
    expect(pointers({ bodies: [{ body: { class: "red-stonewear" } }] })).toEqual(["/bodies/0/body/class"]);
    expect(pointers({ measured: [RUN] })).toEqual([]);
    // As of a stated glaze: from cold to hot, 50 °C apart, up to 900 °C; a tolerance from 0 to 5.
    for (const rangeC of [
      [300, 20],
      [20, 69],
      [20, 901],
      [-51, 300],
    ] as const) {
      expect(pointers({ measured: [{ value: 7, rangeC }] }), `${rangeC}`).toEqual(["/measured/0/rangeC"]);
    }
    for (const plusMinus of [-0.1, 5.1, Number.NaN]) {
      expect(pointers({ measured: [{ value: 7, plusMinus }] })).toEqual(["/measured/0/plusMinus"]);
    }
    expect(pointers({ tiles: [tile()] })).toEqual([]);
  });
});

describe("the report", () => {
  const holds = tile({ seen: [{ kind: "not-shivered" }] });
  const own = { expansion: { value: 5.4, rangeC: [20, 500] as const, plusMinus: 0.5 } };
  let runs: EvidenceReport;
  let open: EvidenceReport;
  beforeAll(() => {
    runs = learnFromTiles({ measured: [RUN, RUN] });
    open = learnFromTiles({
      tiles: [
        holds,
        { ...holds, thicknessMm: 0.2 },
        { ...holds, body: { class: "buff-stoneware" } },
        { ...holds, body: own, name: "a slip" },
      ],
      bodies: [{ name: "porcelain", body: { class: "studio-porcelain" } }],
    });
  });

  it("counts what it goes by", () => {
    expect(runs.headline).toMatch(/^Going by 2 pieces of evidence, the glaze expands 7\.0 /);
    expect(runs.headline).toContain("of a glaze of unknown composition I only knew 7.0 (4.4 to 9.6)");
    const { headline } = learnFromTiles({ glaze: STATED, measured: [RUN] });
    expect(headline).toMatch(/^Going by one piece of evidence, .*; before that, the recipe alone gave 6\.5 /);
  });

  it("hands on the middle and half of its interval as a stated glaze", () => {
    const { after, glaze, quantiles, before } = runs;
    // Two runs of ±0.2 are one of ±0.2/√2 = 0.141; the unknown glaze adds nearly nothing.
    expect(glaze.expansion.value).toBeCloseTo(7, 2);
    expect(glaze.expansion.plusMinus!).toBeGreaterThan(0.138);
    expect(glaze.expansion.plusMinus!).toBeLessThan(0.15);
    expect(glaze.expansion.value).toBeCloseTo((after.low + after.high) / 2, 2);
    expect(glaze.expansion.plusMinus!).toBeCloseTo((after.high - after.low) / 2, 2);
    expect(glaze.expansion.rangeC).toEqual([20, 300]);
    expect(before.low).toBeCloseTo(7 - 1.645 * 1.6, 1);
    expect(before.high).toBeCloseTo(7 + 1.645 * 1.6, 1);
    const { p05, p25, p50, p75, p95 } = quantiles;
    expect([p05, p50, p95].map((p) => Math.round(p * 100) / 100)).toEqual([after.low, after.value, after.high]);
    // Quartiles of a normal lie 0.6745 of a standard deviation off: 0.41 of the half-width of 90 %.
    expect((p75 - p25) / (p95 - p05)).toBeCloseTo(0.41, 1);
  });

  it("draws a curve of belief that holds 1 before and after", () => {
    const { belief } = runs;
    expect(belief).toHaveLength(61);
    const area = (of: "before" | "after", points = belief) => {
      const step = (points[60]!.expansion - points[0]!.expansion) / 60;
      return points.reduce((sum, point) => sum + point[of] * step, 0);
    };
    expect(Math.abs(area("after") - 1)).toBeLessThan(0.01);
    // The bell of 7 ± 1.6 before: 1/(1.6 √(2π)) = 0.2493 at its top, and as good as flat over what two runs leave.
    for (const { before } of belief) expect(Math.abs(before - 0.2493)).toBeLessThan(0.01);
    const wide = open.belief;
    expect(Math.abs(area("before", wide) - 1)).toBeLessThan(0.01);
    expect(Math.abs(area("after", wide) - 1)).toBeLessThan(0.01);
    expect(Math.max(...wide.map(({ before }) => before))).toBeCloseTo(0.2493, 2);
    for (let k = 1; k < 61; k++) expect(wide[k]!.expansion).toBeGreaterThan(wide[k - 1]!.expansion);
  });

  it.each<[Partial<EvidenceRequest>, number]>([
    [{}, 0.3],
    [{ glaze: { ...STATED, thicknessMm: 0.2 } }, 0.2],
    [{ glaze: { ...STATED, thicknessMm: 0.2 }, thicknessMm: 0.4 }, 0.4],
  ])("hands on the usual thickness: %j", (more, mm) => {
    const { glaze, next } = learnFromTiles({ ...more, measured: [RUN], bodies: [{ body: RED_STONEWARE }] });
    expect(glaze.thicknessMm).toBe(mm);
    for (const { thicknessMm } of next) expect([0.5, 1, 2].map((times) => times * mm)).toContain(thicknessMm);
  });

  it("tells of each clay once, under its own name, as stated before", () => {
    const { learnedBodies, next, suits } = open;
    expect(learnedBodies.map(({ name }) => name)).toEqual([
      expect.stringMatching(/^the red stoneware.* \(6\.2\u00a0×10⁻⁶\/K stated\)$/i),
      expect.stringMatching(/^the buff [^(]*$/i),
      "the clay of a slip (5.4\u00a0×10⁻⁶/K stated)",
    ]);
    expect(suits.map(({ name }) => name)).toEqual(["porcelain"]);
    expect(next).toHaveLength(3);
    const [red] = learnedBodies;
    expect(red!.before).toMatchObject({ low: 5.9, value: 6.2, high: 6.5, rangeC: [20, 500] });
    // Tiles that do not shiver say next to nothing of the clay: its draws stay as they are.
    for (const end of ["low", "value", "high"] as const) {
      expect(Math.abs(red!.after[end] - red!.before[end])).toBeLessThan(0.08);
    }
    expect(red!.after.rangeC).toEqual([20, 500]);
  });

  it("cautions of splinters always, of slivers where a tile shivered, of leaching where nothing is known", () => {
    const cautions = (request: EvidenceRequest) => learnFromTiles(request).cautions.map(({ code }) => code);
    const always = ["hot-quench", "not-a-certificate"];
    const known = cautions({ glaze: STATED, tiles: [tile({ seen: [...holds.seen, { kind: "crazed" }] })] });
    expect(known).toEqual(expect.arrayContaining(always));
    expect(known).not.toContain("shivering-slivers");
    expect(known).not.toContain("unknown-composition");
    const shivered = cautions({ tiles: [holds, tile({ seen: [{ kind: "shivered" }] })] });
    expect(shivered).toEqual(expect.arrayContaining([...always, "shivering-slivers", "unknown-composition"]));
  });

  it("tells what a tile says by itself as it would without a run beside it", () => {
    const one = learnFromTiles({ tiles: [tile()], measured: [{ ...RUN, plusMinus: 0.05 }] });
    const [byItself] = learnFromTiles({ tiles: [tile()] }).lessons;
    const [run, seen] = one.lessons;
    expect(seen!.alone).toEqual(byItself!.alone);
    // Without the run the tile is left; between the points of its grid to two hundredths.
    for (const end of ["low", "value", "high"] as const) {
      expect(Math.abs(run!.without[end] - byItself!.alone[end])).toBeLessThan(0.02);
    }
    // Without the tile, the run: ±0.05.
    expect((seen!.without.high - seen!.without.low) / 2).toBeLessThan(0.055);
    expect(one.before).toEqual(runs.before);
  });

  it("says what it began from, and where tiles and glaze part", () => {
    const warned = (request: EvidenceRequest) => learnFromTiles(request).warnings.map(({ code }) => code);
    expect(warned({ measured: [RUN] })).toEqual(["composition-unknown"]);
    const hot = { ...RUN, rangeC: [20, 900] as const };
    expect(warned({ measured: [hot] })).toEqual(["range-past-softening", "composition-unknown"]);
    expect(warned({ glaze: STATED, measured: [{ ...RUN, value: 6.55 }] })).toEqual([]);
    for (const value of [5.6, 7.4]) {
      const against = learnFromTiles({
        glaze: STATED,
        measured: [
          { ...RUN, value, plusMinus: 0.05 },
          { ...RUN, value, plusMinus: 0.05 },
        ],
      });
      expect(against.warnings).toMatchObject([{ code: "tiles-against-recipe", pointer: "/glaze" }]);
    }
  });

  it("says when too few of its cases agree with what was seen", () => {
    const ring = (closesMm: number) => ({ kind: "ring", radiusMm: 60, closesMm, plusMinusMm: 0.001 }) as const;
    const { warnings } = learnFromTiles({
      glaze: STATED,
      tiles: [tile({ seen: [ring(1)] }), tile({ seen: [ring(1.3)] }), tile({ seen: [ring(0.7)] })],
    });
    const few = warnings.find(({ code }) => code === "few-cases-agree")!;
    const count = Number(/about (\d+) of my 1024/.exec(few.message)![1]);
    expect(count).toBeGreaterThanOrEqual(1);
    expect(count).toBeLessThanOrEqual(24);
    expect(runs.warnings.map(({ code }) => code)).not.toContain("few-cases-agree");
  });
});
