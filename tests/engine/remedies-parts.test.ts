/** The parts of a search for remedies, each by itself on figures that can be worked by hand. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { aimFor } from "../../api/engine/advice/aim.ts";
import type { Bench, BenchLine, State } from "../../api/engine/advice/bench.ts";
import { corner } from "../../api/engine/advice/corner.ts";
import { costsOf } from "../../api/engine/advice/costs.ts";
import { forTheScales } from "../../api/engine/advice/for-the-scales.ts";
import {
  effortOf,
  fewMoves,
  KINDS,
  type LinearProgram,
  leastChange,
  materialsMovedOf,
  movedOf,
  solveLinear as solve,
  USUAL,
} from "../../api/engine/advice/index.ts";
import { type Kind, without } from "../../api/engine/advice/kinds.ts";
import { liftsOf } from "../../api/engine/advice/lifts.ts";
import { atLimit, type Limit, limitsOf, missedBy, spanOf, type Terms } from "../../api/engine/advice/limits.ts";
import { program } from "../../api/engine/advice/program.ts";
import { type Asked, escaped } from "../../api/engine/advice/question.ts";
import { judged, recipeOf, searchOf, settle } from "../../api/engine/advice/settle.ts";
import { bentAt, moves, roomOf, slopesAt } from "../../api/engine/advice/slopes.ts";
import type { NewLine, RemediesRequest } from "../../api/engine/advice/types.ts";
import { chanceWords, changesInWords, recipeInWords, soundWords } from "../../api/engine/advice/words.ts";

const OPEN = Number.POSITIVE_INFINITY;
const [SILICA_ALONE, CLAY_AND_SILICA, FLUX_SWAP, BORON, LEAST_OF_ALL] = KINDS as [Kind, Kind, Kind, Kind, Kind];

/** How a made-up recipe turns out; figures that nothing asks for are left out. */
const state = (figures: Partial<State> = {}, moles: Record<string, number> = {}, weightPercent = {}): State =>
  ({
    sound: 0.5,
    stress: 30e6,
    spread: 5e6,
    logViscosity: 3,
    tension: 300,
    chemistry: { seger: { moles, silicaToAlumina: 8 }, fired: { weightPercent } },
    ...figures,
  }) as unknown as State;

const line = (id: string | null, now: number, moles: Record<string, number>, colours = false): BenchLine =>
  ({ id, name: id ?? "own", now, moles, colours, line: {} }) as unknown as BenchLine;

describe("the stress to aim at", () => {
  /** Sound by how much more the glass expands; each unit is worth 10 MPa. */
  const on = (sound: (by: number) => number) => {
    const bench = {
      shifted: (_: State, by: number) => ({ sound: sound(by), stress: 30e6 + by * 10e6 }),
    } as unknown as Bench;
    return (target: number, direction: -1 | 1) =>
      aimFor(bench, state({ sound: sound(0) }), { target, direction } as Terms);
  };

  it.each([-1, 1] as const)(
    "is the nearest that reaches, two in a thousand beyond; direction %d (arithmetic)",
    (way) => {
      // Half now, and 0.4 more for each unit: 0.702 is reached 0.505 away.
      const { stress, reachable } = on((by) => 0.5 + 0.4 * way * by)(0.7, way);
      expect(reachable).toBe(true);
      const by = ((stress - 30e6) / 10e6) * way;
      expect(by).toBeGreaterThanOrEqual(0.505);
      // A quarter halved seven times.
      expect(by).toBeLessThanOrEqual(0.505 + 0.25 / 2 ** 7);
    },
  );

  it.each([-1, 1] as const)("lets go of what is more than is wanted; direction %d (arithmetic)", (way) => {
    // 0.9 now, 0.2 less for each unit back: 0.702 is left 0.99 back.
    const { stress, reachable } = on((by) => 0.9 + 0.2 * way * by)(0.7, way);
    expect(reachable).toBe(true);
    const back = ((stress - 30e6) / 10e6) * -way;
    expect(back).toBeLessThanOrEqual(0.99);
    expect(back).toBeGreaterThanOrEqual(0.99 - 0.25 / 2 ** 7);
  });

  it("goes back five units at most where all of them hold", () => {
    expect(on(() => 0.9)(0.7, -1)).toEqual({ stress: 80e6, reachable: true });
    expect(on(() => 0.9)(0.7, 1)).toEqual({ stress: -20e6, reachable: true });
  });

  it("where nothing reaches, is where most stay sound (arithmetic)", () => {
    // Best one and a half units less, with 0.6.
    const peak = on((by) => 0.6 - 0.1 * Math.abs(by + 1.5));
    expect(peak(0.7, -1)).toEqual({ stress: 15e6, reachable: false });
    // The other way is only worse than now.
    expect(peak(0.7, 1)).toEqual({ stress: 30e6, reachable: false });
  });

  it("stays where it is where anything else is as good", () => {
    expect(on(() => 0.5)(0.7, -1)).toEqual({ stress: 30e6, reachable: false });
  });

  it("looks five units far, and no farther", () => {
    const from = (by: number) => on((x) => (x <= by ? 0.9 : 0.5))(0.7, -1).reachable;
    expect(from(-5)).toBe(true);
    expect(from(-5.1)).toBe(false);
  });

  it("a chance that is the target to the last digit is not enough room for rounding", () => {
    const { stress } = on((by) => 0.7 - 0.4 * by)(0.7, -1);
    // 0.002/0.4 = 0.005 units less.
    expect(stress).toBeLessThanOrEqual(30e6 - 0.05e6);
    expect(stress).toBeGreaterThanOrEqual(30e6 - 0.05e6 - 0.02e6);
  });
});

describe("what a change may cost", () => {
  // From and to a half with the least change that is told, and a hundredth less.
  it.each([
    ["B2O3", 0.7, "More boron", "Less boron"],
    ["MgO", 0.7, "More magnesia", "Less magnesia"],
    ["ZnO", 0.7, "More zinc", "Less zinc"],
    ["Na2O", 0.7, "More alkali", "Less alkali"],
    ["K2O", 0.7, "More alkali", "Less alkali"],
    ["SiO2", 1.5, "More silica", "Less silica"],
    ["Al2O3", 0.8, "More alumina", "Less alumina"],
    ["CaO", 1, "More lime", "Less lime"],
    ["SrO", 1, "More lime", "Less lime"],
    ["BaO", 1, "More lime", "Less lime"],
  ])("of %s from %d wt %% on", (oxide, from, more, less) => {
    const told = (was: number, is: number) => costsOf(state({}, {}, { [oxide]: was }), state({}, {}, { [oxide]: is }));
    expect(told(0, from)).toEqual([expect.stringMatching(`^${more}`), expect.stringMatching(/^Gloss/)]);
    expect(told(from, 0)).toEqual([expect.stringMatching(`^${less}`), expect.stringMatching(/^Gloss/)]);
    expect(told(0, from - 0.01)).toHaveLength(1);
    expect(told(from - 0.01, 0)).toHaveLength(1);
  });

  it("counts like oxides together, and says what lithia by itself does", () => {
    const told = (was: object, is: object) => costsOf(state({}, {}, was), state({}, {}, is)).slice(0, -1);
    expect(told({ Na2O: 3 }, { K2O: 3 })).toEqual([]);
    expect(told({}, { Na2O: 0.4, K2O: 0.4 })).toEqual([expect.stringMatching(/^More alkali/)]);
    expect(told({}, { Li2O: 0.3 })).toEqual([expect.stringMatching(/^Lithia/)]);
    expect(told({}, { Li2O: 0.29 })).toEqual([]);
    // Less of it is no warning.
    expect(told({ Li2O: 0.5 }, {})).toEqual([]);
    expect(told({}, { Li2O: 1 })).toHaveLength(2);
  });
});

describe("effort", () => {
  it("counts what moves by more than a solver leaves behind (arithmetic)", () => {
    expect(movedOf([50, 30, 20], [47, 30, 24])).toBe(7);
    expect(materialsMovedOf([50, 30, 20], [47, 30, 24])).toBe(2);
    expect(materialsMovedOf([50, 30], [50 + 5e-7, 30 - 5e-7])).toBe(0);
    expect(materialsMovedOf([50, 30], [50 - 5e-6, 30])).toBe(1);
    expect(effortOf([50, 30, 20], [47, 30, 24], { least: 0.5, perMaterial: 3 })).toBe(7 + 3 * 2);
  });
});

describe("limits", () => {
  const start = state({}, { SiO2: 3.2, Al2O3: 0.4 });
  const terms = (request: Partial<RemediesRequest>, from = start) => ({ request, start: from }) as Terms;
  const bounds = (kind: Kind, request: Partial<RemediesRequest>, from = start) =>
    limitsOf(kind, terms(request, from)).map(({ name, low, high }) => [name, low, high]);
  const near = (figure: number) => expect.closeTo(figure, 9);

  it("are a melt as runny and a surface tension within 5 % where nothing is said (arithmetic)", () => {
    expect(bounds(LEAST_OF_ALL, {})).toEqual([
      ["melt", near(2.8), near(3.2)],
      ["surface tension", near(285), near(315)],
    ]);
    expect(bounds(LEAST_OF_ALL, { melt: { logViscosity: 0.5, surfaceTensionPercent: 10 } })).toEqual([
      ["melt", near(2.5), near(3.5)],
      ["surface tension", near(270), near(330)],
    ]);
    // Where no set covers the glaze there is no tension to keep.
    expect(bounds(LEAST_OF_ALL, {}, state({ tension: null })).map(([name]) => name)).toEqual(["melt"]);
  });

  it("are those of the Seger formula and the ratio, either end open", () => {
    expect(
      bounds(LEAST_OF_ALL, {
        seger: { Al2O3: { min: 0.3 }, MgO: { max: 0.1 } },
        silicaToAlumina: { min: 6, max: 9 },
      }).slice(2),
    ).toEqual([
      ["Al2O3 in the Seger formula", 0.3, OPEN],
      ["MgO in the Seger formula", -OPEN, 0.1],
      ["silica to alumina", 6, 9],
    ]);
  });

  it("a kind holds its own ratio within 5 % (arithmetic)", () => {
    expect(bounds(CLAY_AND_SILICA, {}).slice(2)).toEqual([["silica to alumina kept", near(7.6), near(8.4)]]);
    expect(bounds(FLUX_SWAP, {}).slice(2)).toEqual([
      ["SiO2 in the Seger formula kept", near(3.04), near(3.36)],
      ["Al2O3 in the Seger formula kept", near(0.38), near(0.42)],
    ]);
  });

  it("read the figures of the full model", () => {
    const limits = limitsOf(FLUX_SWAP, terms({ seger: { MgO: { max: 1 } }, silicaToAlumina: { max: 9 } }));
    const there = state({ logViscosity: 3.1, tension: 310 }, { SiO2: 3, MgO: 0.2 });
    expect(limits.map(({ value }) => value(there))).toEqual([3.1, 310, 0.2, 8, 3, 0]);
    const none = state({ chemistry: { seger: null, fired: { weightPercent: {} } } as unknown as State["chemistry"] });
    expect(limits.map(({ value }) => value(none))).toEqual([3, 300, 0, 100, 0, 0]);
  });

  it("are missed by a share of their span, from a thousandth on; an open one counts in its own unit (arithmetic)", () => {
    const limit = (low: number, high: number): Limit => ({
      name: "any",
      value: ({ logViscosity }) => logViscosity,
      low,
      high,
    });
    const at = (logViscosity: number) => state({ logViscosity });
    expect(spanOf(limit(2, 4))).toBe(2);
    expect(spanOf(limit(2, OPEN))).toBe(1);
    expect(spanOf(limit(-OPEN, 4))).toBe(1);
    expect(missedBy(limit(2, 4), at(4.5))).toBeCloseTo(0.25, 12);
    expect(missedBy(limit(2, 4), at(1))).toBeCloseTo(0.5, 12);
    expect(missedBy(limit(2, OPEN), at(1.5))).toBeCloseTo(0.5, 12);
    expect(missedBy(limit(2, 4), at(3))).toBe(0);
    expect(missedBy(limit(2, 4), at(4.0019))).toBe(0);
    expect(missedBy(limit(2, 4), at(4.0021))).toBeCloseTo(0.00105, 9);
    // What can no longer be told counts as 0: kept only where 0 would be.
    expect(missedBy({ ...limit(2, 4), value: () => null }, at(3))).toBe(1);
    expect(missedBy({ ...limit(0, 4), value: () => null }, at(3))).toBe(0);
  });

  it("stand in the way within a twentieth of their span (arithmetic)", () => {
    const limit: Limit = { name: "any", value: ({ logViscosity }) => logViscosity, low: 2, high: 4 };
    const at = (logViscosity: number) => atLimit(limit, state({ logViscosity }));
    expect([1.9, 2, 2.09, 2.11, 3, 3.89, 3.91, 4, 4.2].map(at)).toEqual([
      true,
      true,
      true,
      false,
      false,
      false,
      true,
      true,
      true,
    ]);
    expect(atLimit({ ...limit, value: () => null }, state())).toBe(false);
  });
});

describe("kinds of change", () => {
  const silica = line("silica", 20, { SiO2: 1.66 });
  const sand = line("sand", 20, { SiO2: 0.94, Al2O3: 0.06 });
  const impure = line("impure", 20, { SiO2: 0.92, Al2O3: 0.08 });
  const kaolin = line("kaolin", 10, { Al2O3: 0.39, SiO2: 0.77 });
  const fluxed = line("fluxed", 10, { Al2O3: 0.3, SiO2: 0.61, CaO: 0.09 });
  const feldspar = line("feldspar", 40, { K2O: 0.125, Al2O3: 0.125, SiO2: 0.75 });
  const talc = line("talc", 5, { MgO: 0.43, SiO2: 0.57 });
  const borate = line("borate", 5, { B2O3: 0.4, CaO: 0.3, SiO2: 0.3 });
  const slight = line("slight", 5, { B2O3: 0.19, Na2O: 0.2, SiO2: 0.61 });
  const nothing = line("nothing", 5, {});
  const all = [silica, sand, impure, kaolin, fluxed, feldspar, talc, borate, slight, nothing];
  const ids = (may: (line: BenchLine) => boolean) => all.filter(may).map(({ id }) => id);
  // By mole: silica above 93 %; clay above 22 % alumina and under 8 % flux; boron above 20 %; flux above 8 %, no boron.
  const FLUXES = ["fluxed", "feldspar", "talc", "slight"];
  const SILICAS = ["silica", "sand"];

  it.each<[Kind, string[], string[]]>([
    [SILICA_ALONE, SILICAS, []],
    [CLAY_AND_SILICA, [...SILICAS, "kaolin"], []],
    [FLUX_SWAP, [...SILICAS, "kaolin", ...FLUXES], [...SILICAS, "kaolin", ...FLUXES]],
    [BORON, [...SILICAS, "borate"], FLUXES],
    [LEAST_OF_ALL, ids(() => true) as string[], ids(() => true) as string[]],
  ])("move what they are about: $kind", (kind, up, down) => {
    expect(ids(kind.up)).toEqual(up);
    expect(ids(kind.down)).toEqual(down);
  });

  it.each(["Li2O", "Na2O", "K2O", "MgO", "CaO", "SrO", "BaO", "ZnO"])("%s is a flux", (oxide) => {
    expect(BORON.down(line("any", 5, { [oxide]: 0.09, SiO2: 0.91 }))).toBe(true);
    expect(BORON.down(line("any", 5, { [oxide]: 0.07, SiO2: 0.93 }))).toBe(false);
  });

  it("for each part of boron, one and a half of silica at most, and two of other flux less at most", () => {
    const [silicas, fluxes] = BORON.rules!;
    expect([silica, borate, talc, kaolin].map((one) => silicas!(one))).toEqual([1, -1.5, 0, 0]);
    expect([silica, borate, talc, kaolin].map((one) => fluxes!(one))).toEqual([0, -2, -1, 0]);
  });

  it("leave out materials by name; they may still become less", () => {
    const kind = without(["zinc-oxide", "talc"]);
    expect(kind.title).toBe("the least change without zinc oxide and talc");
    expect(kind.up(talc)).toBe(false);
    expect(kind.up(silica)).toBe(true);
    expect(kind.up(line(null, 5, {}))).toBe(true);
    expect(kind.down(talc)).toBe(true);
  });

  it("have room up to the bounds, the other way round where the glaze should expand more", () => {
    const lines = [silica, kaolin, talc, borate, line("cobalt-oxide", 1, { CoO: 1 }, true)];
    const terms = (direction: -1 | 1) =>
      ({ direction, low: [5, 10, 0, 5, 0], high: [45, 30, 5, 25, 9] }) as unknown as Terms;
    const rooms = (kind: Kind, direction: -1 | 1) =>
      roomOf(lines, kind, terms(direction)).map(({ up, down }) => [up[1], down[1]]);
    expect(rooms(SILICA_ALONE, -1)).toEqual([
      [25, 0],
      [0, 0],
      [0, 0],
      [0, 0],
      [0, 0],
    ]);
    expect(rooms(SILICA_ALONE, 1)).toEqual([
      [0, 15],
      [0, 0],
      [0, 0],
      [0, 0],
      [0, 0],
    ]);
    expect(rooms(BORON, -1)).toEqual([
      [25, 0],
      [0, 0],
      [0, 5],
      [20, 0],
      [0, 0],
    ]);
    expect(rooms(BORON, 1)).toEqual([
      [0, 15],
      [0, 0],
      [0, 0],
      [0, 0],
      [0, 0],
    ]);
    // Kinds that swap, and the least change, move both ways whichever way it goes; talc may not grow, clay not shrink.
    for (const way of [-1, 1] as const) {
      expect(rooms(FLUX_SWAP, way)).toEqual([
        [25, 15],
        [20, 0],
        [0, 5],
        [0, 0],
        [0, 0],
      ]);
      expect(rooms(LEAST_OF_ALL, way)).toEqual([
        [25, 15],
        [20, 0],
        [0, 5],
        [20, 0],
        [0, 0],
      ]);
    }
    expect(roomOf(lines, SILICA_ALONE, terms(-1)).map(moves)).toEqual([true, false, false, false, false]);
    expect(roomOf(lines, SILICA_ALONE, terms(1)).map(moves)).toEqual([true, false, false, false, false]);
  });
});

describe("the best corner", () => {
  const at = (v: number[] | null) => v?.map((x) => Math.round(x * 1e9) / 1e9) ?? null;

  it.each<[string, number[][], { w: number[]; most: number }[], number, number[], number[] | null]>([
    ["one unknown to a bound", [[-2]], [{ w: [], most: -6 }], 0.5, [10], [3]],
    ["no less than the least", [[-2]], [{ w: [], most: -0.2 }], 0.5, [10], [0.5]],
    ["no more than the most", [[-2]], [{ w: [], most: -21 }], 0.5, [10], null],
    ["exactly the most", [[-2]], [{ w: [], most: -20 }], 0.5, [10], [10]],
    [
      "two bounds against each other",
      [[-2, 1]],
      [
        { w: [], most: -6 },
        { w: [], most: 2 },
      ],
      0.5,
      [10],
      null,
    ],
    ["a bound that even the least breaks", [[1]], [{ w: [], most: 0.4 }], 0.5, [10], null],
    ["two unknowns, the more helpful first", [[-2], [-1]], [{ w: [], most: -6 }], 0, [10, 10], [3, 0]],
    ["two unknowns, each a least", [[-2], [-1]], [{ w: [], most: -6 }], 0.5, [10, 10], [2.75, 0.5]],
    ["two unknowns, the helpful one at its most", [[-2], [-1]], [{ w: [], most: -6 }], 0, [2, 10], [2, 2]],
    [
      "two unknowns at a crossing",
      [
        [-2, 1],
        [-1, -1],
      ],
      [
        { w: [], most: -6 },
        { w: [], most: 1 },
      ],
      0,
      [10, 10],
      [7 / 3, 4 / 3],
    ],
    ["three unknowns, one helps", [[-1], [-3], [-2]], [{ w: [], most: -6 }], 0, [9, 9, 9], [0, 2, 0]],
    [
      "three unknowns, each at its most but the last",
      [[-1], [-3], [-2]],
      [{ w: [], most: -6 }],
      0,
      [9, 1, 1],
      [1, 1, 1],
    ],
  ])("%s (arithmetic)", (_, columns, rows, least, most, best) => {
    const found = corner(columns, rows, least, most);
    expect(at(found)).toEqual(at(best));
  });

  it("is as good as the solver's, in one to three unknowns", () => {
    const weight = fc.integer({ min: -4, max: 4 });
    const question = fc.integer({ min: 1, max: 3 }).chain((k) =>
      fc.record({
        rows: fc.array(
          fc.record({ w: fc.array(weight, { minLength: k, maxLength: k }), most: fc.integer({ min: -12, max: 12 }) }),
          { minLength: 1, maxLength: 4 },
        ),
        most: fc.array(fc.integer({ min: 1, max: 8 }), { minLength: k, maxLength: k }),
        least: fc.constantFrom(0, 0.5),
      }),
    );
    fc.assert(
      fc.property(question, ({ rows, most, least }) => {
        const columns = most.map((_, i) => rows.map(({ w }) => w[i]!));
        const found = corner(columns, rows, least, most);
        const best = solve({
          cost: most.map(() => 1),
          low: most.map(() => least),
          high: most,
          rows: rows.map(({ w, most: high }) => ({ weights: w, low: -OPEN, high })),
        });
        if (best === null) expect(found).toBeNull();
        else
          expect(found!.reduce((sum, v) => sum + v, 0)).toBeCloseTo(
            best.reduce((sum, v) => sum + v, 0),
            6,
          );
      }),
      { numRuns: 60 },
    );
  });
});

describe("choices of few moves", () => {
  const rooms = (...most: [number, number][]) =>
    most.map(([up, down]) => ({ up: [0, up] as const, down: [0, down] as const }));
  const needs = (weights: number[], high: number): LinearProgram => {
    const row = [...weights, ...weights.map((w) => -w), 0];
    return { cost: [], low: [], high: [], rows: [{ weights: row, low: -OPEN, high }] };
  };
  const told = (choices: ReturnType<typeof fewMoves>) =>
    choices.map(({ moves, parts, effort }) => [
      moves.map(({ line, way }) => way * (line + 1)).join(),
      parts.map((p) => Math.round(p * 1e6) / 1e6),
      Math.round(effort * 1e6) / 1e6,
    ]);

  it("go either way, the least effort first, and none beyond what is promising (arithmetic)", () => {
    // Eight are needed: a part more of the first brings 2, a part less of the second 1.
    const program = needs([-2, 1], -8);
    expect(told(fewMoves(program, rooms([9, 9], [9, 9]), { least: 0.5, perMaterial: 2 }, 2))).toEqual([
      ["1", [4], 6],
      // Least of the second is half a part, which saves a quarter of the first.
      ["1,-2", [3.75, 0.5], 8.25],
      // Half a part more of it takes a quarter more.
      ["1,2", [4.25, 0.5], 8.75],
      ["-2", [8], 10],
    ]);
    expect(told(fewMoves(program, rooms([9, 9], [9, 9]), { least: 0.5, perMaterial: 2 }, 1.4))).toHaveLength(2);
    expect(told(fewMoves(program, rooms([9, 9], [9, 9]), { least: 0.5, perMaterial: 2 }, 1))).toHaveLength(1);
  });

  it("need room for the least that is worth weighing", () => {
    const program = needs([-2, 1], -1);
    const choices = (up: number, down: number) =>
      told(fewMoves(program, rooms([up, 0], [0, down]), { least: 0.5, perMaterial: 2 }, 9)).map(([moves]) => moves);
    expect(choices(0.5, 1)).toEqual(["1", "-2", "1,-2"]);
    expect(choices(0.4, 1)).toEqual(["-2"]);
    expect(choices(0.5, 0.4)).toEqual(["1"]);
    // Without a least, no room is none all the same.
    expect(
      told(fewMoves(program, rooms([0, 0], [0, 1]), { least: 0, perMaterial: 0 }, 9)).map(([moves]) => moves),
    ).toEqual(["-2"]);
  });

  it("go up to three moves, and no further (arithmetic)", () => {
    // Each brings 2 a part, of which it has two: eleven are three moves' work, thirteen would be four's.
    const four = rooms([2, 0], [2, 0], [2, 0], [2, 0]);
    const choices = told(fewMoves(needs([-2, -2, -2, -2], -11), four, { least: 0.5, perMaterial: 2 }, 1));
    expect(choices.map(([moves]) => moves)).toEqual(["1,2,3", "1,2,4", "1,3,4", "2,3,4"]);
    for (const [, , effort] of choices) expect(effort).toBe(5.5 + 2 * 3);
    expect(fewMoves(needs([-2, -2, -2, -2], -13), four, { least: 0.5, perMaterial: 2 }, 1)).toEqual([]);
  });

  it("keep both ends of a row", () => {
    const program: LinearProgram = { cost: [], low: [], high: [], rows: [{ weights: [1, -1, 0], low: 3, high: 4 }] };
    expect(told(fewMoves(program, rooms([9, 9]), { least: 0, perMaterial: 2 }, 2))).toEqual([["1", [3], 5]]);
    expect(told(fewMoves(program, rooms([2, 9]), { least: 0, perMaterial: 2 }, 2))).toEqual([]);
  });
});

/**
 * A made-up glaze whose stress falls by so many MPa with each part more of a line, whose melt stiffens by so much, and of
 * which a sixtieth more crazes with each MPa. A unit of expansion is worth 10 MPa.
 */
function straight(lines: readonly (BenchLine & { eases: number; stiffens?: number })[], melt = 9) {
  const at = (x: readonly number[]): State => {
    const sum = (of: (j: number) => number) =>
      x.reduce((total, parts, j) => total + of(j) * (parts - lines[j]!.now), 0);
    const stress = 30e6 - 1e6 * sum((j) => lines[j]!.eases);
    return state({ stress, sound: soundAt(stress), logViscosity: 3 + sum((j) => lines[j]!.stiffens ?? 0) });
  };
  const bench = {
    lines,
    at,
    shifted: ({ stress }: State, by: number) => ({ stress: stress + 10e6 * by, sound: soundAt(stress + 10e6 * by) }),
  } as unknown as Bench;
  const now = lines.map((one) => one.now);
  const request = { melt: { logViscosity: melt } } as RemediesRequest;
  const terms: Terms = {
    target: 0.7,
    direction: -1,
    low: now.map(() => 0),
    high: now.map((was) => was + 40),
    request,
    start: at(now),
  };
  return { bench, now, terms };
}
const soundAt = (stress: number) => Math.min(Math.max(1 - stress / 60e6, 0), 1);
/** From 30 MPa, 0.5, to 0.702 is 0.202 × 60 MPa; the aim lies up to 0.25/128 units of 10 MPa beyond. */
const NEEDED = 0.202 * 60;
const BEYOND = (10 * 0.25) / 2 ** 7;

describe("the search on straight lines", () => {
  const silica = { ...line("silica", 30, { SiO2: 1 }), eases: 2, stiffens: 0.05 };
  const kaolin = { ...line("kaolin", 10, { Al2O3: 1, SiO2: 2 }), eases: 1 };
  const feldspar = { ...line("potash-feldspar", 50, { K2O: 1, Al2O3: 1, SiO2: 6 }), eases: -1.5 };
  const whiting = { ...line("whiting", 10, { CaO: 1 }), eases: 0 };
  const lines = [silica, kaolin, feldspar, whiting];
  const changeOf = (x: readonly number[], now: readonly number[]) => x.map((parts, j) => parts - now[j]!);
  const between = (value: number, low: number, high: number) => {
    expect(value).toBeGreaterThanOrEqual(low - 1e-6);
    expect(value).toBeLessThanOrEqual(high + 1e-6);
  };

  it("moves the one material that takes least (arithmetic)", () => {
    const { bench, now, terms } = straight(lines);
    const found = leastChange(bench, LEAST_OF_ALL, terms, solve)!;
    const [more, ...others] = changeOf(found.x, now);
    between(more!, NEEDED / 2, (NEEDED + BEYOND) / 2);
    expect(others).toEqual([0, 0, 0]);
    expect(found.reaches).toBe(true);
    expect(found.moved).toBeCloseTo(more!, 9);
  });

  it("takes another where the melt holds that back (arithmetic)", () => {
    // A fifth of a decade is 4 parts of silica: 8 of the 12 MPa. Silica and feldspar: 4 + 2.7 + 2 × 2; feldspar alone: 8.1 + 2.
    const { bench, now, terms } = straight(lines, 0.2);
    const [, , less, ...rest] = changeOf(leastChange(bench, LEAST_OF_ALL, terms, solve)!.x, now);
    between(-less!, NEEDED / 1.5, (NEEDED + BEYOND) / 1.5);
    expect(rest).toEqual([0]);
  });

  it("takes two where one does not get there (arithmetic)", () => {
    // Feldspar may lose 5 parts, 7.5 MPa; 4.6 MPa of silica are 2.3 parts.
    const { bench, now, terms } = straight(lines, 0.2);
    const found = leastChange(bench, LEAST_OF_ALL, { ...terms, low: [0, 0, 45, 0] }, solve)!;
    const [more, clay, less] = changeOf(found.x, now);
    // A hundredth of its span short of the limit of the melt: (0.2 − 0.004)/0.05 parts.
    expect(clay).toBe(0);
    between(2 * more! - 1.5 * less!, NEEDED, NEEDED + BEYOND);
    between(more!, 0, 3.92);
    // The sum of parts is least with as much silica as the melt lets in.
    expect(more!).toBeCloseTo(3.92, 2);
    expect(found.tight).toContain("melt");
  });

  it("each kind moves its own, and tells what stops it (arithmetic)", () => {
    const { bench, now, terms } = straight(lines, 0.2);
    const found = leastChange(bench, SILICA_ALONE, terms, solve)!;
    const [more, ...others] = changeOf(found.x, now);
    // The melt lets in 3.92 parts, 0.6307; of that it may lose 0.02, with 0.002 to spare.
    const short = 0.5 + (2 * 3.92) / 60 - 0.02 + 0.002;
    between(more!, ((short - 0.5) * 60) / 2, ((short - 0.5) * 60 + BEYOND) / 2);
    expect(others).toEqual([0, 0, 0]);
    expect(found.reaches).toBe(false);
    expect(found.tight).toEqual(["melt"]);
    expect(leastChange(bench, BORON, { ...terms, direction: 1, low: now }, solve)).toBeNull();
  });

  it("never moves a material by less than is worth weighing (arithmetic)", () => {
    // Silica may gain 6 parts: 12 MPa of 12.12. The rest is a tenth of a part of kaolin, but half a part is the least.
    const { bench, now, terms } = straight([silica, kaolin]);
    const found = leastChange(bench, CLAY_AND_SILICA, { ...terms, high: [36, 50] }, solve)!;
    const [more, clay] = changeOf(found.x, now);
    expect(clay!).toBeCloseTo(0.5, 6);
    between(2 * more! + 0.5, NEEDED, NEEDED + BEYOND);
    // Without the count every part is as good as another; least of all is six and an eighth.
    const free = leastChange(bench, CLAY_AND_SILICA, { ...terms, high: [36, 50] }, solve, {
      least: 0,
      perMaterial: 0,
    })!;
    expect(changeOf(free.x, now)[0]!).toBeCloseTo(6, 6);
    between(changeOf(free.x, now)[1]!, NEEDED - 12, NEEDED - 12 + BEYOND);
  });

  /** Lines that may only grow: so many MPa with each part more, and room for so many parts. */
  const growing = (...lines: [eases: number, room: number][]) => {
    const { bench, now, terms } = straight(lines.map(([eases], j) => ({ ...line(`material-${j}`, 10, {}), eases })));
    const high = lines.map(([, room]) => 10 + room);
    return (more: Partial<Terms> = {}) => {
      const found = leastChange(bench, LEAST_OF_ALL, { ...terms, low: now, high, ...more }, solve)!;
      return { found, change: changeOf(found.x, now) };
    };
  };

  it("where three are not enough, leaves out what can be, the smallest move first (arithmetic)", () => {
    // At their most: 4 + 3 + 2.5 + 1.2 + 4.5 MPa; any three bring 11.5 at most. With all five the fifth moves 0.95 parts.
    const { found, change } = growing([4, 1], [3, 1], [2.5, 1], [2, 0.6], [1.5, 3])();
    // Without the fourth, the smallest, 9.5 MPa and the rest from the fifth; then nothing more can be left out.
    expect(change.slice(0, 4)).toEqual([1, 1, 1, 0].map((parts) => expect.closeTo(parts, 6)));
    between(change[4]!, (NEEDED - 9.5) / 1.5, (NEEDED + BEYOND - 9.5) / 1.5);
    expect(found.reaches).toBe(true);
  });

  it("keeps the bounds of a line that has no room for what is worth weighing (arithmetic)", () => {
    // 0.3 and 0.45 parts of 10 MPa each are 7.5 MPa; half a part would be the least that moves otherwise.
    const { found, change } = growing([10, 0.3], [10, 0.45])();
    expect(change).toEqual([expect.closeTo(0.3, 6), expect.closeTo(0.45, 6)]);
    expect(found.reaches).toBe(false);
    // Beside others that have it, it is left out: as above, without the fourth.
    const beside = growing([4, 1], [3, 1], [2.5, 1], [2.2, 0.4], [1.5, 3])().change;
    expect(beside[3]).toBe(0);
    between(beside[4]!, (NEEDED - 9.5) / 1.5, (NEEDED + BEYOND - 9.5) / 1.5);
  });

  it.each([
    // Two parts of 1 MPa each; a chance of 0.018 less, 0.02 with 0.002 to spare, is 1.08 MPa, and 0.048 less is 2.88.
    // Eight MPa less 1.08 are still four lines' work: simple enough.
    [4, 8, 4, 1.08],
    // Twelve less 1.08 are still six lines' work, less 2.88 only five's.
    [6, 12, 5, 2.88],
  ])(
    "of what falls short with %d lines, leaves out all but what %d MPa need (arithmetic)",
    (lines, most, kept, less) => {
      const all = Array.from({ length: lines }, (): [number, number] => [1, 2]);
      const { found, change } = growing(...all)({ target: 0.95 });
      expect(change.filter((parts) => parts > 0)).toHaveLength(kept);
      between(
        change.reduce((sum, parts) => sum + parts, 0),
        most - less,
        most - less + BEYOND,
      );
      expect(found.reaches).toBe(false);
    },
  );

  it("what gets there by the least that is worth weighing reaches, though the search before it fell short", () => {
    // 0.3 parts of 30 MPa each are where that one ended, at 0.65; half a part is 15 MPa, 0.75.
    const { bench, now, terms } = straight([{ ...silica, eases: 30 }]);
    const x = now.map((parts) => parts + 0.3);
    const onlyChosen = (programme: LinearProgram) =>
      programme.low.some((least) => least > 0) ? solve(programme) : null;
    const from = { x, state: bench.at(x)! };
    const found = leastChange(bench, SILICA_ALONE, terms, onlyChosen, undefined, from)!;
    expect(changeOf(found.x, now)).toEqual([0.5]);
    expect(found.reaches).toBe(true);
    expect(leastChange(bench, SILICA_ALONE, { ...terms, target: 0.8 }, onlyChosen, undefined, from)!.reaches).toBe(
      false,
    );
  });

  it("ends where the model itself is, not its straight lines (arithmetic)", () => {
    const { bench, now, terms } = straight([silica]);
    /** 2 MPa a part less, of which 0.04 for each part moved are lost; the melt stiffens faster and faster. */
    const curved: Bench = {
      ...bench,
      at([parts]) {
        const more = parts! - 30;
        const stress = 30e6 - 2e6 * more + 0.04e6 * more ** 2;
        return state({ stress, sound: soundAt(stress), logViscosity: 3 + 0.02 * more + 0.002 * more ** 2 });
      },
    };
    const rooms = roomOf(bench.lines, SILICA_ALONE, terms);
    const from = { x: now, state: curved.at(now)! };
    const moved = (melt: number) => {
      const held = { ...terms, request: { melt: { logViscosity: melt } } as RemediesRequest };
      return settle(searchOf(curved, SILICA_ALONE, held, solve), rooms, from)!;
    };
    // 2 d − 0.04 d² = MPa.
    const parts = (mpa: number) => (2 - Math.sqrt(4 - 0.16 * mpa)) / 0.08;
    between(moved(9).moved, parts(NEEDED), parts(NEEDED + BEYOND));
    expect(moved(9).reaches).toBe(true);
    // 0.02 d + 0.002 d² = 0.2 at d = 6.18, before that: 10.8 MPa. A programme aims at 0.196, 6.09 parts.
    const { moved: short, reaches, tight } = moved(0.2);
    between(short, 6.05, (Math.sqrt(0.0004 + 0.008 * 0.2) - 0.02) / 0.004);
    expect(reaches).toBe(false);
    expect(tight).toEqual(["melt"]);
  });

  it("gives nothing where nothing may move, or nothing helps", () => {
    const { bench, now, terms } = straight(lines);
    expect(leastChange(bench, LEAST_OF_ALL, { ...terms, low: now, high: now }, solve)).toBeNull();
    expect(leastChange(bench, LEAST_OF_ALL, terms, () => null)).toBeNull();
  });

  it("from beyond what is wanted, goes back to what is enough (arithmetic)", () => {
    const { bench, now, terms } = straight(lines);
    const x = [40, 10, 50, 10];
    const rooms = roomOf(bench.lines, SILICA_ALONE, terms);
    const found = settle(searchOf(bench, SILICA_ALONE, terms, solve), rooms, { x, state: bench.at(x)! })!;
    between(changeOf(found.x, now)[0]!, NEEDED / 2, (NEEDED + BEYOND) / 2);
  });

  it("from outside a limit, comes within it first; what cannot is no answer (arithmetic)", () => {
    const { bench, now, terms } = straight([silica]);
    // 3 is 0.2 short of the limit, which are four parts; a programme aims a hundredth of 0.8 inside it. 0.55 is 1.5 parts.
    const within: Limit = { name: "melt", value: ({ logViscosity }) => logViscosity, low: 3.2, high: 4 };
    const search = { bench, kind: SILICA_ALONE, terms: { ...terms, target: 0.55 }, limits: [within], solve };
    const upTo = (most: number) => settle(search, [{ up: [0, most], down: [0, 0] }], { x: now, state: terms.start });
    const found = upTo(40)!;
    between(found.moved, 4, 4 + 0.008 / 0.05);
    expect(found.reaches).toBe(true);
    expect(upTo(3)).toBeNull();
  });

  it("rests on slopes of half a part, and tells what straight lines miss (arithmetic)", () => {
    const { bench, now, terms } = straight(lines, 0.2);
    const limits = limitsOf(SILICA_ALONE, terms).slice(0, 1);
    const rooms = roomOf(bench.lines, LEAST_OF_ALL, terms);
    const slopes = slopesAt(bench, now, terms.start, rooms, limits);
    [-2e6, -1e6, 1.5e6, 0].forEach((slope, j) => {
      expect(slopes.stress[j]).toBeCloseTo(slope, 3);
    });
    expect(slopes.spread.map(Math.abs)).toEqual([0, 0, 0, 0]);
    expect(slopes.limits[0]!.map((slope) => Math.round(slope * 1e9) / 1e9 + 0)).toEqual([0.05, 0, 0, 0]);
    // Lines that may not move have no slope.
    const still = slopesAt(bench, now, terms.start, roomOf(bench.lines, SILICA_ALONE, terms), limits);
    expect(still.stress.map((slope) => Math.round(slope))).toEqual([-2e6, 0, 0, 0]);
    const x = [33, 10, 50, 10];
    const there = { x, state: state({ stress: 25e6, logViscosity: 3.2 }) };
    const bent = bentAt(limits, { x: now, state: terms.start }, there, slopes);
    // Three parts of silica promised 24 MPa and 3.15.
    expect(bent.stress).toBeCloseTo(1, 6);
    expect(bent.limits[0]!).toBeCloseTo(0.05, 9);
  });

  it("takes the slope of a line that may only become less downward, while there is half a part of it", () => {
    const seen: number[][] = [];
    const { bench, now, terms } = straight(lines);
    const watched: Bench = {
      ...bench,
      at(x) {
        seen.push([...x]);
        return bench.at(x);
      },
    };
    const rooms = now.map((_, j) => ({
      up: [0, j === 0 ? 9 : 0] as const,
      down: [0, j === 2 || j === 3 ? 9 : 0] as const,
    }));
    slopesAt(watched, now, terms.start, rooms, []);
    expect(seen.map((x) => changeOf(x, now))).toEqual([
      [0.5, 0, 0, 0],
      [0, 0, -0.5, 0],
      [0, 0, 0, -0.5],
    ]);
    seen.length = 0;
    const scarce = [30, 10, 50, 0.4];
    slopesAt(watched, scarce, terms.start, rooms, []);
    expect(seen[2]).toEqual([30, 10, 50, 0.9]);
  });

  it("takes no slope of a line where a little more of it cannot be judged", () => {
    const { bench, now, terms } = straight(lines);
    const shy: Bench = { ...bench, at: (x) => (x[1]! > 10 ? null : bench.at(x)) };
    const slopes = slopesAt(shy, now, terms.start, roomOf(bench.lines, LEAST_OF_ALL, terms), []);
    expect(slopes.stress.map((slope) => Math.round(slope))).toEqual([-2e6, 0, 1.5e6, 0]);
  });

  it("judges a recipe by its limits and by what is wanted (arithmetic)", () => {
    const { bench, now, terms } = straight(lines, 0.2);
    const search = searchOf(bench, LEAST_OF_ALL, terms, solve);
    const x = [36.2, 10, 50, 10];
    const found = judged(search, x, bench.at(x)!);
    // 6.2 parts: 12.4 MPa; 0.31 of 0.2 decades, 0.11 beyond a span of 0.4.
    expect(found).toMatchObject({
      x,
      reaches: true,
      moved: expect.closeTo(6.2, 9),
      missed: expect.closeTo(0.11 / 0.4, 9),
      tight: ["melt"],
    });
    expect(judged(search, now, terms.start)).toMatchObject({ reaches: false, moved: 0, missed: 0, tight: [] });
  });

  it("reads a recipe off a programme's columns, never less than nothing", () => {
    expect(recipeOf([30, 10, 2], [5, 0, 0, 0, 4, 3, 0, 0])).toEqual([35, 6, 0]);
  });
});

describe("one round as a programme", () => {
  const lines = [
    { ...line("silica", 30, { SiO2: 1 }), eases: 2, stiffens: 0.05 },
    { ...line("borate", 5, { B2O3: 1 }), eases: 1 },
    { ...line("whiting", 10, { CaO: 1 }), eases: -1 },
  ];
  const { bench, now, terms } = straight(lines, 0.2);
  const kind = BORON;
  const limits = limitsOf(kind, terms).slice(0, 1);
  const rooms = roomOf(bench.lines, kind, terms);
  const slopes = { stress: [-2e6, -1e6, 1e6], spread: [-1e4, 0, 2e4], limits: [[0.05, 0, 0]] };
  const here = {
    x: now,
    state: terms.start,
    slopes,
    aim: { stress: 18e6, reachable: true },
    reach: 25,
    strict: "all" as const,
    kind,
    bent: { stress: 0, limits: [0] },
  };
  const near = (figures: number[]) =>
    figures.map((figure) => (Number.isFinite(figure) ? expect.closeTo(figure, 9) : figure));
  const rows = (more: Partial<typeof here> | { strict: "limits" | "nothing" } | { aim: object }, of = terms) =>
    program(bench, of, rooms, limits, { ...here, ...more } as Parameters<typeof program>[4]).rows;
  const row = (weights: number[], low: number, high: number) => ({
    weights: near(weights),
    ...{ low: near([low])[0], high: near([high])[0] },
  });

  it("aims at the stress, keeps the limits, the reach, what may move in all, and the kind's own rules (arithmetic)", () => {
    const all = rows({});
    // 12 MPa less, or lower still.
    expect(all[0]).toEqual(row([-2, -1, 1, 2, 1, -1, -1, 0], -OPEN, -12));
    // The melt within ±0.2, a hundredth of 0.4 inside; the last column is how far past, in spans.
    expect(all[1]).toEqual(row([0.05, 0, 0, -0.05, 0, 0, 0, -0.4], -OPEN, 0.196));
    expect(all[2]).toEqual(row([0.05, 0, 0, -0.05, 0, 0, 0, 0.4], -0.196, OPEN));
    expect(all.slice(3, 6)).toEqual(
      [0, 1, 2].map((j) =>
        row([0, 1, 2, 0, 1, 2].map((k, i) => (k === j ? (i < 3 ? 1 : -1) : 0) + 0).concat(0, 0), -25, 25),
      ),
    );
    expect(all[6]).toEqual(row([1, 1, 1, 1, 1, 1, 0, 0], -OPEN, 60));
    // Silica no more than one and a half of boron, other flux less by two at most.
    expect(all[7]).toEqual(row([1, -1.5, 0, -1, 1.5, 0, 0, 0], -OPEN, 0));
    expect(all[8]).toEqual(row([0, -2, -1, 0, 2, 1, 0, 0], -OPEN, 0));
    expect(all).toHaveLength(9);
  });

  it("within one MPa of the aim where nothing reaches, and the other way round for a glaze that should expand more", () => {
    const short = rows({ aim: { stress: 18e6, reachable: false } });
    expect(short[0]).toEqual(row([-2, -1, 1, 2, 1, -1, -1, 0], -OPEN, -12));
    expect(short[1]).toEqual(row([-2, -1, 1, 2, 1, -1, 1, 0], -13, OPEN));
    const more = rows({ aim: { stress: 42e6, reachable: true } }, { ...terms, direction: 1 });
    expect(more[0]).toEqual(row([-2, -1, 1, 2, 1, -1, 1, 0], 12, OPEN));
    expect(more.at(-1)).toMatchObject({ low: 0, high: OPEN });
    const both = rows({ aim: { stress: 42e6, reachable: false } }, { ...terms, direction: 1 });
    expect([both[0]!.high, both[1]!.low]).toEqual(near([13, 12]));
  });

  it("counts from the recipe as it stands, and allows for the bend (arithmetic)", () => {
    const x = [34, 5, 10];
    const bent = { stress: 2, limits: [0.01] };
    const [stress, above, below, reach] = rows({
      x,
      state: state({ stress: 22e6, logViscosity: 3.2 }),
      bent,
      reach: 3,
    });
    // From 22 MPa four less; what four parts brought is counted again: −4 − 8, and 2 for the bend.
    expect(stress!.high).toBeCloseTo(-4 - 8 - 2, 9);
    // 3.2 less the 0.2 of four parts and the bend of 0.01: 3.2 − 0.004 − 3.01, and 2.8 + 0.004 − 3.01.
    expect(above!.high).toBeCloseTo(0.186, 9);
    expect(below!.low).toBeCloseTo(-0.206, 9);
    expect([reach!.low, reach!.high]).toEqual(near([1, 7]));
  });

  it("leaves out a limit on what is not known, and rules where a kind has none", () => {
    const unknown: Limit = { ...limits[0]!, value: () => null };
    expect(program(bench, terms, rooms, [unknown], here).rows).toHaveLength(7);
    // Without the two rules of boron; and what may not move needs no reach.
    const free = roomOf(bench.lines, LEAST_OF_ALL, terms);
    expect(program(bench, terms, free, limits, { ...here, kind: LEAST_OF_ALL }).rows).toHaveLength(7);
    const still = rooms.map((room, j) => (j === 1 ? { up: [0, 0] as const, down: [0, 0] as const } : room));
    expect(program(bench, terms, still, limits, here).rows).toHaveLength(8);
  });

  it("costs parts; what is short or past only where it may be; and doubt where that has to shrink (arithmetic)", () => {
    const costs = (more: object) => {
      const { cost, low, high } = program(bench, terms, rooms, limits, { ...here, ...more } as Parameters<
        typeof program
      >[4]);
      return { cost, low, high };
    };
    const room = [40, 40, 0, 0, 0, 10];
    expect(costs({})).toEqual({ cost: [1, 1, 1, 1, 1, 1, 0, 0], low: Array(8).fill(0), high: [...room, 0, 0] });
    expect(costs({ strict: "limits" })).toMatchObject({ cost: [1, 1, 1, 1, 1, 1, 1e4, 0], high: [...room, 1e4, 0] });
    expect(costs({ strict: "nothing" })).toMatchObject({
      cost: [1, 1, 1, 1, 1, 1, 1e4, 1e7],
      high: [...room, 1e4, 1e7],
    });
    // A part of silica takes 0.01 MPa of doubt: two parts' worth; whiting brings 0.02, four.
    expect(costs({ aim: { stress: 18e6, reachable: false } }).cost).toEqual(near([-1, 1, 5, 3, 1, -3, 0, 0]));
  });
});

describe("rounding for the scales", () => {
  const silica = { ...line("silica", 30, { SiO2: 1 }), eases: 2, stiffens: 0.05 };
  const whiting = { ...line("whiting", 10.3, { CaO: 1 }), eases: -1 };
  const round = (x: number[], reaches: boolean, melt = 9, more: Partial<Terms> = {}) => {
    const { bench, terms } = straight([silica, whiting], melt);
    const found = { x, state: bench.at(x)!, moved: 0, reaches, tight: [] };
    const { x: rounded } = forTheScales(bench, LEAST_OF_ALL, { ...terms, ...more }, found);
    return rounded.map((parts) => Math.round(parts * 1e9) / 1e9);
  };

  it("takes the fewest half parts that still reach (arithmetic)", () => {
    // 12 MPa are wanted: six parts and a little.
    expect(round([36.07, 10.3], true, 9, { target: 0.7001 })).toEqual([36.5, 10.3]);
    expect(round([36.07, 10.3], true, 9, { target: 0.6999 })).toEqual([36, 10.3]);
    // Two lines: 5.2 up and 1.7 less. Half a part less of the first and a step more of the second are as few.
    const [more, less] = round([35.2, 8.6], true, 9, { target: 0.7001 });
    expect(2 * (more! - 30) - (less! - 10.3)).toBeGreaterThan(12);
    expect(((more! - 30) / 0.5) % 1).toBeCloseTo(0, 9);
    expect(((10.3 - less!) / 0.5) % 1).toBeCloseTo(0, 9);
    expect(more! - 30 + 10.3 - less!).toBeCloseTo(7, 9);
  });

  it("takes finer steps where coarse ones break a limit (arithmetic)", () => {
    // The melt lets in 6.2 parts of silica: six and a half are too many, six too few.
    expect(round([36.07, 10.3], true, 0.31, { target: 0.7001 })).toEqual([36.1, 10.3]);
    // And 6.07 parts: not even six and a tenth.
    expect(round([36.03, 10.3], true, 0.3035, { target: 0.7001 })).toEqual([36.05, 10.3]);
    expect(round([36.03, 10.3], true, 0.3017, { target: 0.7001 })).toEqual([36.03, 10.3]);
  });

  it("what falls short may lose half a hundredth (arithmetic)", () => {
    // 3.92 parts are 0.6307; three and a half, 0.6167, lose too much, and four break the melt; 3.8 are 0.6267.
    expect(round([33.92, 10.3], false, 0.196)).toEqual([33.9, 10.3]);
    expect(round([33.6, 10.3], false, 0.18)).toEqual([33.5, 10.3]);
  });

  it("stays within the bounds of each line, and leaves what does not move", () => {
    expect(round([36.07, 10.3], true, 9, { target: 0.7001, high: [36.2, 50] })).toEqual([36.2, 10.3]);
    // All whiting out, 22.3 MPa together: not less than nothing, though ten and a half parts would be the next half.
    expect(round([36, 0], true, 9, { target: 0.87, high: [36, 50] })).toEqual([36, 0]);
    expect(round([36.07, 10.3 + 5e-7], true, 9, { target: 0.7001 })[1]).toBe(10.3);
  });

  it("no line goes below its least (arithmetic)", () => {
    // 12.6 MPa are wanted: five and a half parts and one and a half are 12.5; two would be the next half, but 1.7 is all.
    expect(round([35.5, 8.6], true, 9, { target: 0.71, low: [0, 8.6] })).toEqual([35.5, 8.6]);
  });

  /** Three or four lines that moved: every recipe that is tried while none is good enough. */
  const tried = (changes: number[]) => {
    const lines = changes.map((_, j) => ({ ...line(`material-${j}`, 10, {}), eases: 1 }));
    const { bench, now, terms } = straight(lines);
    const x = now.map((parts, j) => parts + changes[j]!);
    const seen: number[][] = [];
    const watched: Bench = {
      ...bench,
      at(next) {
        seen.push(next.map((parts, j) => Math.round((parts - now[j]!) * 1e6) / 1e6));
        return null;
      },
    };
    const found = { x, state: bench.at(x)!, moved: 0, reaches: true, tight: [] };
    expect(forTheScales(watched, LEAST_OF_ALL, terms, found).x).toBe(x);
    return seen;
  };

  it("tries each line a step less, to the step or a step more, never none at all, the fewest parts first", () => {
    const seen = tried([0.3, 1.2, 2.2]);
    // By halves: half a part or one of the first, for it has no step less; 1 to 2 and 2 to 3 of the others: 2 × 3 × 3.
    const halves = seen.slice(0, 18);
    expect(new Set(halves.map((x) => x.join())).size).toBe(18);
    expect(new Set(halves.map(([first]) => first))).toEqual(new Set([0.5, 1]));
    expect(new Set(halves.map(([, second]) => second))).toEqual(new Set([1, 1.5, 2]));
    expect(new Set(halves.map(([, , third]) => third))).toEqual(new Set([2, 2.5, 3]));
    const sums = halves.map((x) => x.reduce((sum, parts) => sum + parts, 0));
    expect(sums).toEqual([...sums].sort((a, b) => a - b));
    // Then by tenths, of which the first has three.
    expect(seen[18]).toEqual([0.3, 1.2, 2.2]);
  });

  it("tries 27 of each rounding at most, neither the fewest parts nor the most (arithmetic)", () => {
    // Each of four lines by three steps are 81, from which the middle is taken; four roundings.
    const seen = tried([1.23, 1.23, 1.23, 1.23]);
    expect(seen).toHaveLength(4 * 27);
    const sums = seen.slice(0, 27).map((x) => x.reduce((sum, parts) => sum + parts, 0));
    // From 4 to 8, one of each end; by halves: 1, 4, 10, 16, 19, 16, 10, 4 and 1 of them.
    expect(Math.min(...sums)).toBeGreaterThan(4);
    expect(Math.max(...sums)).toBeLessThan(8);
  });

  it("gives back what was found where no rounding holds", () => {
    // From 6.0655 parts on it reaches, up to 6.068 the melt stays within: no hundredth lies between.
    expect(round([36.066, 10.3], true, 0.3028, { target: 0.702183 })).toEqual([36.066, 10.3]);
  });
});

describe("limits in words, and the question without them", () => {
  const asked = (tension: number | null = 300) => {
    const start = state({ tension }, { Al2O3: 0.412, SiO2: 3.3 });
    return { bench: { peakC: 1240.4 }, terms: { start, request: {} } } as unknown as Asked;
  };
  const lifts = (request: Partial<RemediesRequest>, from = asked()) => liftsOf(request as RemediesRequest, from);
  const one = (request: Partial<RemediesRequest>) => lifts(request).at(-1)!;

  it("name the melt and the surface tension, as set or as taken (arithmetic: 10^0.2 is 1.6, 10^0.5 is 3.2)", () => {
    const [melt, tension, ...more] = lifts({});
    expect(more).toEqual([]);
    expect(melt).toMatchObject({ limit: "melt", pointer: "/melt/logViscosity" });
    expect(melt!.said).toContain("no more than 1.6 times stiffer or thinner at 1240\u00a0°C");
    expect(tension).toMatchObject({ limit: "surface tension", pointer: "/melt/surfaceTensionPercent" });
    expect(tension!.said).toContain("within 5\u00a0%");
    const set = lifts({ melt: { logViscosity: 0.5, surfaceTensionPercent: 8 } });
    expect(set[0]!.said).toContain("3.2 times");
    expect(set[1]!.said).toContain("within 8\u00a0%");
    expect(lifts({}, asked(null)).map(({ limit }) => limit)).toEqual(["melt"]);
  });

  it.each<[Partial<RemediesRequest>, string, string, string, object]>([
    [
      { seger: { Al2O3: { max: 0.5 } } },
      "Al2O3 in the Seger formula",
      "/seger/Al2O3",
      "Al2O3 in the Seger formula was to stay at 0.5 mol or less; it is 0.41 now.",
      { seger: {} },
    ],
    [
      { seger: { ZnO: { min: 0.1 } } },
      "ZnO in the Seger formula",
      "/seger/ZnO",
      "ZnO in the Seger formula was to stay at 0.1 mol or more; it is 0 now.",
      { seger: {} },
    ],
    [
      { silicaToAlumina: { min: 7, max: 9 } },
      "silica to alumina",
      "/silicaToAlumina",
      "Silica to alumina was to stay between 7 and 9 to 1; it is 8 now.",
      {},
    ],
    [
      { parts: { "zinc-oxide": { max: 3 } } },
      "parts",
      "/parts/zinc-oxide",
      "Zinc oxide was to stay at 3 parts in 100 or less.",
      { parts: {} },
    ],
    [{ keep: ["kaolin"] }, "kept", "/keep", "Kaolin was to stay as it is.", {}],
    [
      { keep: ["kaolin", "talc", "zinc-oxide"] },
      "kept",
      "/keep",
      "Kaolin, talc and zinc oxide were to stay as they are.",
      {},
    ],
    [{ allow: [] }, "materials", "/allow", "Nothing may come in or become more.", {}],
    [
      { allow: ["silica", "talc"] },
      "materials",
      "/allow",
      "Nothing but silica and talc may come in or become more.",
      {},
    ],
    [{ forbid: ["zinc-oxide"] }, "materials", "/forbid", "Zinc oxide may not come in or become more.", {}],
  ])("%j", (request, limit, pointer, said, off) => {
    const lift = one(request);
    expect(lifts(request)).toHaveLength(3);
    expect(lift).toMatchObject({ limit, pointer, said });
    expect(lift.off(request as RemediesRequest)).toEqual(off);
  });

  it("lift one and leave the others", () => {
    const request = {
      seger: { Al2O3: { max: 0.5 }, ZnO: { max: 0.1 } },
      parts: { talc: { max: 3 }, silica: { max: 30 } },
      melt: { logViscosity: 0.3, surfaceTensionPercent: 8 },
    };
    const [melt, tension, alumina, zinc, talc] = lifts(request);
    const off = (lift: typeof melt) => lift!.off(request as unknown as RemediesRequest);
    expect(off(melt)).toEqual({ ...request, melt: { logViscosity: 6, surfaceTensionPercent: 8 } });
    expect(off(tension)).toEqual({ ...request, melt: { logViscosity: 0.3, surfaceTensionPercent: 100 } });
    expect(off(alumina)).toEqual({ ...request, seger: { ZnO: { max: 0.1 } } });
    expect(off(zinc)).toEqual({ ...request, seger: { Al2O3: { max: 0.5 } } });
    expect(off(talc)).toEqual({ ...request, parts: { silica: { max: 30 } } });
  });

  it("point at names with strokes and tildes (RFC 6901)", () => {
    expect(escaped("a/b~c/d")).toBe("a~1b~0c~1d");
  });
});

describe("words", () => {
  const newLine = (name: string, before: number, after: number) =>
    ({ name, before, after, change: after - before }) as NewLine;

  it("say chances, and what falls just short of a target, as in the docstrings", () => {
    expect(chanceWords(0.86)).toBe("about 17 in 20");
    expect(soundWords(0.846, 0.85)).toBe("about 17 in 20, just short of that");
    expect(soundWords(0.85, 0.85)).toBe("about 17 in 20");
    expect(soundWords(0.86, 0.85)).toBe("about 17 in 20");
    expect(soundWords(0.7, 0.85)).toBe("about 14 in 20");
  });

  it("say what changes, as in the docstring, and the recipe as on a card", () => {
    const lines = [
      newLine("silica", 22, 27.5),
      newLine("whiting", 18, 16),
      newLine("kaolin", 12, 12),
      newLine("talc", 3, 0),
    ];
    expect(changesInWords(lines)).toBe("silica 22 → 27.5 (+5.5), whiting 18 → 16 (−2), talc 3 → 0 (−3)");
    expect(recipeInWords(lines, [])).toBe("silica 27.5; whiting 16; kaolin 12 (55.5 together)");
    const whole = [newLine("silica", 50, 60), newLine("kaolin", 50, 40)];
    expect(recipeInWords(whole, [newLine("cobalt oxide", 1, 1)])).toBe("silica 60; kaolin 40; + cobalt oxide 1");
    // A twentieth of a part is weighed away.
    expect(recipeInWords([newLine("silica", 50, 60.04), newLine("kaolin", 50, 40)], [])).toBe(
      "silica 60.04; kaolin 40",
    );
  });

  it("the usual materials are known, each once", () => {
    expect(new Set(USUAL).size).toBe(USUAL.length);
  });
});
