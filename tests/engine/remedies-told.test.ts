/** Recipes that were found, told: which are told apart, what they weigh, what stops them; and what stops any recipe. */
import { beforeAll, describe, expect, it } from "vitest";
import type { Bench, BenchLine, State } from "../../api/engine/advice/bench.ts";
import { whatBlocks } from "../../api/engine/advice/blocked.ts";
import { KINDS, layOut, solveLinear as solve } from "../../api/engine/advice/index.ts";
import type { Kind } from "../../api/engine/advice/kinds.ts";
import type { Terms } from "../../api/engine/advice/limits.ts";
import { askedOf, fitOf } from "../../api/engine/advice/question.ts";
import { recipeRemedies } from "../../api/engine/advice/recipe-remedies.ts";
import { recipeRemedy } from "../../api/engine/advice/recipe-remedy.ts";
import type { Found } from "../../api/engine/advice/settle.ts";
import type { Block, RemediesRequest, Remedy } from "../../api/engine/advice/types.ts";
import { analyseGlaze } from "../../api/engine/chemistry/index.ts";
import { drawsFor } from "../../api/engine/fit/draws.ts";
import { checkFit } from "../../api/engine/fit/index.ts";
import { simulate } from "../../api/engine/fit/simulate.ts";
import { prepare } from "../../api/engine/fit/situation.ts";
import { surfaceTension, viscosityCurve } from "../../api/engine/glass/index.ts";
import { quantileOf } from "../../api/engine/quantity.ts";
import type { Recipe } from "../../api/engine/recipe/types.ts";
import { SMALL } from "../support/small-misfit.ts";

const never = () => null;
const LEAST_OF_ALL = KINDS.at(-1)!;
const before = checkFit(SMALL);

describe("a recipe as told", () => {
  // Two hundred parts as given: half of each for every hundred.
  const recipe = [
    { material: "potash-feldspar", parts: 100 },
    { material: "whiting", parts: 40 },
    { material: "silica", parts: 60 },
  ];
  const coloured: RemediesRequest = {
    ...SMALL,
    glaze: { recipe, additions: [{ material: "cobalt-oxide", parts: 3 }], thicknessMm: 0.3 },
  };
  const asked = askedOf({ ...coloured, allow: ["silica", "talc", "kaolin"] }, before, 0.3, 1)!;
  const { bench, terms } = asked;
  const told = (x: number[], more: Partial<Found> = {}, on: Partial<Terms> = {}, kind: Kind = LEAST_OF_ALL): Remedy => {
    const found: Found = { x, state: bench.at(x)!, moved: 0, reaches: false, tight: [], ...more };
    return recipeRemedy({ bench, kind, terms: { ...terms, ...on }, found }, before);
  };

  it("gives each line before and after, leaves out what never was, and adds up (arithmetic)", () => {
    // Feldspar 50, whiting 20, silica 30, talc and kaolin 0, of which silica 10 more and feldspar 5 less.
    const {
      recipe: card,
      partsMoved,
      materialsMoved,
      text,
      fit,
      after,
      reaches,
      kind,
      title,
    } = told([45, 20, 40, 0, 0]);
    expect(card!.lines.map(({ name, before: was, after: is, change }) => [name, was, is, change])).toEqual([
      ["potash feldspar", 50, 45, -5],
      ["whiting", 20, 20, 0],
      ["silica", 30, 40, 10],
    ]);
    expect(card!.lines[2]!.line).toEqual({ material: "silica", parts: 40 });
    expect([partsMoved, materialsMoved]).toEqual([15, 2]);
    // Three over 200 are 1.5 over 100; the batch is now 105: 1.575.
    expect(card!.additions).toMatchObject([{ name: "cobalt oxide", before: 1.5, after: 1.58, change: 0.08 }]);
    expect(card!.text).toBe("potash feldspar 45; whiting 20; silica 40; + cobalt oxide 1.58 (105 together)");
    expect(text).toContain("potash feldspar 50 → 45 (−5), silica 30 → 40 (+10): it then stays sound");
    const verified = checkFit(fit);
    expect(after.probabilities).toEqual(verified.probabilities);
    expect(reaches).toBe(verified.probabilities.sound >= 0.3);
    expect([kind, title]).toEqual(["least-change", "the least change of all"]);
  });

  it("tells the costs of the change, not of the way back", () => {
    const { costs } = told([50, 20, 40, 0, 0]);
    expect(costs).toContainEqual(expect.stringMatching(/^More silica/));
    expect(costs).not.toContainEqual(expect.stringMatching(/^Less silica/));
  });

  it("tells a line that came in, and one that went", () => {
    const lines = told([50, 0, 30, 2, 0]).recipe!.lines;
    expect(lines.map(({ name, before: was, after: is }) => [name, was, is])).toEqual([
      ["potash feldspar", 50, 50],
      ["whiting", 20, 0],
      ["silica", 30, 30],
      ["talc", 0, 2],
    ]);
  });

  it("tells the melt of both at the peak, as a fit's glass has it", () => {
    const { melt } = told([50, 20, 40, 0, 0]);
    const at = (x: number[]) => viscosityCurve(bench.at(x)!.chemistry.moleFractions).logViscosity(1240);
    for (const [side, x] of [
      ["before", [50, 20, 30, 0, 0]],
      ["after", [50, 20, 40, 0, 0]],
    ] as const) {
      const told = melt!.logViscosity[side];
      expect(told.low).toBeLessThan(told.value);
      expect(told.value).toBeLessThan(told.high);
      expect(Math.abs(told.value - at([...x]).value)).toBeLessThan(0.1);
      expect(told.rangeC).toEqual([1240, 1240]);
      // Nine in ten lie between, as of every quantity.
      expect(told.coverage).toBe(0.9);
      expect(told.low).toBeCloseTo(quantileOf(at([...x]), 0.05), 1);
      expect(told.high).toBeCloseTo(quantileOf(at([...x]), 0.95), 1);
    }
    // Silica stiffens the melt (common practice, no source).
    expect(melt!.logViscosity.after.value).toBeGreaterThan(melt!.logViscosity.before.value);
    expect(melt!.surfaceTension!.before.value).toBeGreaterThan(250);
    expect(melt!.surfaceTension!.after.value).toBeGreaterThan(250);
  });

  describe("the surface tension", () => {
    const tension = (tin: number, zinc: number) => {
      const glaze = {
        recipe: [
          { material: "potash-feldspar", parts: 40 },
          { material: "silica", parts: 20 },
          { material: "zinc-oxide", parts: 30 },
        ],
      };
      const request: RemediesRequest = { ...SMALL, glaze, allow: ["tin-oxide"] };
      const { bench, terms } = askedOf(request, before, 0.999, 1)!;
      expect(bench.lines.map(({ id }) => id)).toEqual(["potash-feldspar", "silica", "zinc-oxide", "tin-oxide"]);
      const x = [40, 20, zinc, tin];
      const found: Found = { x, state: bench.at(x)!, moved: 0, reaches: false, tight: [] };
      const { melt } = recipeRemedy({ bench, kind: LEAST_OF_ALL, terms, found }, before);
      return { told: melt!.surfaceTension, sets: [terms.start, found.state].map(setsOf) };
    };
    const setsOf = ({ chemistry: { moleFractions, fired } }: State) =>
      surfaceTension(moleFractions, fired.weightPercent).map(({ value }) => value);

    it("is that of the first set that covers the glaze", () => {
      // The first has no figure for zinc oxide, the second has.
      const { told, sets } = tension(0, 26);
      expect(sets.map(([first]) => first)).toEqual([null, null]);
      expect(sets[0]![1]).not.toBeNull();
      expect(told).toEqual({ before: sets[0]![1], after: sets[1]![1] });
    });

    it("is not told where none covers one of the two", () => {
      // None has a figure for tin oxide.
      const { told, sets } = tension(40, 30);
      expect(sets[1]).toEqual([null, null, null]);
      expect(told).toBeNull();
    });
  });

  const short = { target: 0.999 };
  it.each<[string, Partial<Found>, Kind, [string, string | undefined][]]>([
    ["the melt", { tight: ["melt"] }, LEAST_OF_ALL, [["melt", "/melt/logViscosity"]]],
    [
      "the surface tension",
      { tight: ["surface tension"] },
      LEAST_OF_ALL,
      [["surface tension", "/melt/surfaceTensionPercent"]],
    ],
    [
      "the ratio that was asked for",
      { tight: ["silica to alumina"] },
      LEAST_OF_ALL,
      [["silica to alumina", "/silicaToAlumina"]],
    ],
    ["an oxide", { tight: ["MgO in the Seger formula"] }, LEAST_OF_ALL, [["MgO in the Seger formula", undefined]]],
    ["what its kind keeps", { tight: ["silica to alumina kept"] }, KINDS[1]!, [["kind", undefined]]],
    [
      "both",
      { tight: ["melt", "SiO2 in the Seger formula kept"] },
      KINDS[2]!,
      [
        ["melt", "/melt/logViscosity"],
        ["kind", undefined],
      ],
    ],
    ["nothing but the materials", {}, LEAST_OF_ALL, [["kind", undefined]]],
  ])("says that %s stops it", (_, found, kind, blocks) => {
    const remedy = told([50, 20, 31, 0, 0], found, short, kind);
    expect(remedy.reaches).toBe(false);
    expect(remedy.blocks.map(({ limit, pointer }) => [limit, pointer])).toEqual(blocks);
  });

  it("says in words what is kept, by kind", () => {
    const text = (limit: string, kind: Kind) =>
      told([50, 20, 31, 0, 0], { tight: [limit] }, short, kind).blocks[0]!.text;
    expect(text("silica to alumina kept", KINDS[1]!)).toBe("Farther, silica and alumina would not keep their ratio.");
    expect(text("SiO2 in the Seger formula kept", KINDS[2]!)).toBe(
      "Farther, silica or alumina would not stay what it is.",
    );
    expect(text("MgO in the Seger formula", LEAST_OF_ALL)).toBe(
      "The limit on MgO in the Seger formula is reached. Widen it to go farther.",
    );
  });

  it("says that a material is at its end, within a twentieth of a part, where it moved at all", () => {
    const ends = (x: number[], low: number[], high: number[]) =>
      told(x, { tight: ["melt"] }, { ...short, low, high }).blocks.some(
        ({ limit, pointer }) => limit === "parts" && pointer === "/parts",
      );
    const wide = [90, 60, 70, 40, 40];
    const none = [0, 0, 0, 0, 0];
    expect(ends([50, 20, 40, 0, 0], none, [90, 60, 40, 40, 40])).toBe(true);
    expect(ends([50, 20, 39.96, 0, 0], none, [90, 60, 40, 40, 40])).toBe(true);
    expect(ends([50, 20, 39.9, 0, 0], none, [90, 60, 40, 40, 40])).toBe(false);
    expect(ends([45, 20, 30, 0, 0], [45, 0, 0, 0, 0], wide)).toBe(true);
    expect(ends([45.04, 20, 30, 0, 0], [45, 0, 0, 0, 0], wide)).toBe(true);
    expect(ends([45.1, 20, 30, 0, 0], [45, 0, 0, 0, 0], wide)).toBe(false);
    // All of it gone is no limit; neither is what never moved.
    expect(ends([50, 0, 30, 0, 0], none, wide)).toBe(false);
    expect(ends([50, 20, 30.04, 0, 0], none, [50, 20, 30.04, 0, 0])).toBe(false);
  });

  it("what reaches has nothing in its way", () => {
    expect(told([50, 20, 40, 0, 0], { tight: ["melt"] }, { target: 0.01 })).toMatchObject({
      reaches: true,
      blocks: [],
    });
  });
});

/** A made-up bench as straight as a line: so many MPa less with each part of a line more; a sixtieth crazes with each. */
function straight(
  lines: { id: string; now: number; eases: number; moles: Record<string, number> }[],
  { target = 0.7, log = 9 } = {},
) {
  const real = layOut(SMALL, [], 1);
  const { chemistry, prepared } = real.at([50, 20, 30])!;
  const sound = (stress: number) => Math.min(Math.max(1 - stress / 60e6, 0), 1);
  const at = (x: readonly number[]): State => {
    const stress = 30e6 - x.reduce((sum, parts, j) => sum + 1e6 * lines[j]!.eases * (parts - lines[j]!.now), 0);
    const figures = { stress, sound: sound(stress), spread: 5e6, logViscosity: 3, tension: 300 };
    return { ...figures, chemistry, prepared } as unknown as State;
  };
  const bench = {
    ...real,
    lines: lines.map(
      (one): BenchLine => ({
        ...one,
        name: one.id,
        line: { material: one.id, parts: one.now },
        colours: false,
      }),
    ),
    at,
    glaze: () => SMALL.glaze,
    shifted: ({ stress }: State, by: number) => ({ stress: stress + 10e6 * by, sound: sound(stress + 10e6 * by) }),
  } as unknown as Bench;
  const now = lines.map((one) => one.now);
  const terms: Terms = {
    target,
    direction: -1,
    low: now.map(() => 0),
    high: now.map((was) => was + 40),
    request: { ...SMALL, melt: { logViscosity: log, surfaceTensionPercent: 90 } },
    start: at(now),
  };
  return { bench, terms };
}

describe("recipes told apart", () => {
  const FELDSPAR = { id: "potash-feldspar", now: 50, eases: -1.5, moles: { K2O: 1, Al2O3: 1, SiO2: 6 } };
  const WHITING = { id: "whiting", now: 20, eases: -0.1, moles: { CaO: 1 } };
  const SILICA = { id: "silica", now: 30, eases: 2, moles: { SiO2: 1 } };
  const KAOLIN = { id: "kaolin", now: 0, eases: 1, moles: { Al2O3: 1, SiO2: 2 } };
  const COLEMANITE = { id: "colemanite", now: 0, eases: 4, moles: { CaO: 2, B2O3: 3 } };
  const TALC = { id: "talc", now: 0, eases: 3, moles: { MgO: 3, SiO2: 4 } };
  const titles = (lines: Parameters<typeof straight>[0], more: Parameters<typeof straight>[1] = {}) =>
    recipeRemedies(straight(lines, more), before, solve).map(({ title }) => title);

  // All stay in sight: 12.12 MPa are 6.06 parts of silica, 4.04 of talc, 3.03 of colemanite, 8.08 of feldspar less.
  it.each([
    // Alone, with clay, as a swap and as the least change of all it is the same; boron has nothing to lead with.
    ["the same move is told once, under its first kind", [FELDSPAR, WHITING, SILICA], ["silica alone"]],
    // Talc is the best swap and the least of all; without it there is silica, which is told already.
    [
      "what is better is told beside it",
      [FELDSPAR, WHITING, SILICA, TALC],
      ["silica alone", "other fluxes, silica and alumina kept"],
    ],
    [
      "so is boron, which is no other flux",
      [FELDSPAR, WHITING, SILICA, COLEMANITE],
      ["silica alone", "boron for other fluxes, with some silica"],
    ],
    [
      "and each of them",
      [FELDSPAR, WHITING, SILICA, COLEMANITE, TALC],
      ["silica alone", "other fluxes, silica and alumina kept", "boron for other fluxes, with some silica"],
    ],
  ])("%s (arithmetic)", (_, lines, told) => {
    expect(titles(lines)).toEqual(told);
  });

  it("looks again without what the least change brought in, while fewer than three reach", () => {
    // Both talc and kaolin help, and silica does not: without talc, then without kaolin too.
    const none = { ...SILICA, eases: 0 };
    const flat = { ...FELDSPAR, eases: -0.01 };
    const without = titles([
      flat,
      { ...WHITING, eases: 0 },
      none,
      { ...TALC, moles: { Fe2O3: 1 } },
      { ...KAOLIN, id: "zinc-oxide", moles: { Fe2O3: 1 } },
    ]);
    expect(without).toEqual(["the least change of all", "the least change without talc"]);
  });

  it("three recipes that reach are enough; one that falls short without what came in is no answer", () => {
    // Of lines of no kind, each brings 12.12 MPa by itself, the next one less readily; six MPa are all that the last can.
    const incoming = (id: string, eases: number) => ({ id, now: 0, eases, moles: { Fe2O3: 1 } });
    const still = { ...FELDSPAR, eases: 0 };
    const ids = ["talc", "kaolin", "zinc-oxide", "dolomite"];
    const four = ids.map((id, j) => incoming(id, 3 - j / 2));
    expect(titles([still, ...four])).toEqual([
      "the least change of all",
      "the least change without talc",
      "the least change without talc and kaolin",
    ]);
    expect(titles([still, incoming("talc", 3), incoming("kaolin", 0.15)])).toEqual(["the least change of all"]);
  });

  it("what reaches is told beside a like change that does not (arithmetic)", () => {
    // Silica brings 11 MPa; with 0.6 of boron, which lets in 0.9 of it, 4.2; all of both, 13.4.
    const { bench, terms } = straight([
      { ...FELDSPAR, eases: 0 },
      { ...SILICA, eases: 2 },
      { ...COLEMANITE, eases: 4 },
    ]);
    const remedies = recipeRemedies({ bench, terms: { ...terms, high: [90, 35.5, 0.6] } }, before, solve);
    expect(remedies.map(({ kind, materialsMoved }) => [kind, materialsMoved])).toEqual([
      ["silica", 1],
      ["boron", 2],
      ["least-change", 2],
    ]);
    const [, short, least] = remedies;
    expect(short!.partsMoved).toBeLessThanOrEqual(1.5);
    expect(least!.partsMoved).toBeGreaterThan(5);
  });

  it("recipes a part and a half apart are one (arithmetic)", () => {
    // Silica brings 11.8 MPa. With half a part of kaolin, 5.8 parts do; with half of talc 5.75: 1.05 apart in sum.
    const { bench, terms } = straight([
      { ...FELDSPAR, eases: 0 },
      { ...SILICA, eases: 2 },
      { ...KAOLIN, eases: 1 },
      { ...TALC, eases: 1.2 },
    ]);
    const high = [90, 35.9, 40, 40];
    const alike = recipeRemedies({ bench, terms: { ...terms, high } }, before, solve);
    expect(alike.map(({ kind }) => kind)).toEqual(["silica", "alumina-with-silica"]);
  });

  it("a like change that takes far less is told in place of what was found first (arithmetic)", () => {
    // Feldspar less brings 1.5 MPa a part, 7.9 of them at most; boron a quarter.
    const { bench, terms } = straight([
      { ...FELDSPAR, eases: -1.5 },
      { ...WHITING, eases: 0 },
      { ...COLEMANITE, eases: 0.25 },
    ]);
    const remedies = recipeRemedies({ bench, terms: { ...terms, low: [42.1, 0, 0] } }, before, solve);
    // Twelve MPa with no more than twice as much flux out as boron in, 3.25 × 3.7, are 11.1 parts; least, 7.9 and 0.6.
    const both = remedies.filter(({ materialsMoved }) => materialsMoved === 2);
    expect(both.map(({ kind }) => kind)).toEqual(["least-change"]);
    expect(both[0]!.partsMoved).toBeGreaterThanOrEqual(8.5);
    // What is aimed beyond and rounded takes less than one and a half.
    expect(both[0]!.partsMoved).toBeLessThan(10);
  });

  it("what falls short is told from 0.02 more on (arithmetic)", () => {
    // Forty parts of silica at most: 3.6 MPa are 0.06, of which 0.02 may go for a simpler change; 1 MPa is 0.017.
    const weak = (eases: number) => titles([{ ...SILICA, eases }], { target: 0.9 });
    expect(weak(0.09)).toEqual(["silica alone"]);
    expect(weak(0.025)).toEqual([]);
  });
});

describe("what stops any recipe", () => {
  const glaze = { expansion: { value: 6.3, rangeC: [20, 300] as [number, number], plusMinus: 0.2 } };
  const bought: RemediesRequest = { glaze, body: { class: "buff-stoneware" } };
  const stands = checkFit(fitOf(bought));
  const blocks = (target: number, remedies: readonly Remedy[] = []) =>
    whatBlocks({ request: bought, asked: null, before: stands, target, seed: 1, solve: never }, remedies);
  const { situation } = prepare(fitOf(bought));
  const soundAt = (by: number) => {
    const expansion = { ...situation.expansion, value: situation.expansion.value + by };
    return simulate({ ...situation, expansion }, drawsFor(1)).counts.sound / 1024;
  };
  let scan: { by: number; less: number; more: number }[];
  let most: number;
  beforeAll(() => {
    const shifts = Array.from({ length: 50 }, (_, k) => (k + 1) / 10);
    scan = shifts.map((by) => ({ by, less: soundAt(-by), more: soundAt(by) }));
    most = Math.max(...scan.flatMap(({ less, more }) => [less, more]));
  });

  it("of a bought glaze: by how much less it would have to expand, the nearest tenth that does", () => {
    const target = most - 0.05;
    const [block, ...others] = blocks(target);
    expect(others).toEqual([]);
    expect(block).toMatchObject({ limit: "recipe", pointer: "/glaze" });
    const nearest = scan.find(({ less, more }) => less >= target || more >= target)!;
    expect(nearest.less).toBeGreaterThanOrEqual(target);
    expect(block!.text).toContain(`about ${nearest.by.toFixed(2)}\u00a0×10⁻⁶/K less`);
  });

  it("of one that shivers: by how much more", () => {
    const shivering: RemediesRequest = {
      glaze: { expansion: { ...glaze.expansion, value: 3 } },
      body: { class: "cristobalite-stoneware" },
    };
    const here = checkFit(fitOf(shivering));
    expect(here.probabilities.shivers).toBeGreaterThan(0.5);
    const target = 0.5;
    const stuck = { request: shivering, asked: null, before: here, target, seed: 1, solve: never };
    const [{ text }] = whatBlocks(stuck, []) as [Block];
    const by = Number(/about (\d\.\d+)/.exec(text)![1]);
    expect(text).toContain(`about ${by.toFixed(2)}\u00a0×10⁻⁶/K more`);
    // Borne out by fits of glazes that expand so much more, and a tenth less than that; half a hundredth for rounding.
    const at = (value: number) =>
      checkFit({ ...fitOf(shivering), glaze: { expansion: { ...glaze.expansion, value } } });
    expect(at(3 + by).probabilities.sound).toBeGreaterThanOrEqual(target - 0.005);
    expect(at(3 + by - 0.1).probabilities.sound).toBeLessThan(target + 0.005);
  });

  it("nothing of doubt while what any expansion gets to is within 0.02 of what is wanted", () => {
    expect(blocks(most + 0.019)).toEqual([]);
    const [doubt, ...others] = blocks(most + 0.021);
    expect(others).toEqual([]);
    expect(doubt!.limit).toBe("doubt");
    expect(doubt!.text).toContain(`no more than about ${Math.round(most * 20)} in 20`);
    const [first] = [...stands.drivers].sort((a, b) => b.verdictShare - a.verdictShare);
    expect(doubt!.text).toContain(`Least is known of ${first!.label};`);
  });

  it("a recipe that was found farther than any shift counts too", () => {
    const found = { recipe: {}, after: { probabilities: { sound: most + 0.1 } } } as unknown as Remedy;
    expect(blocks(most + 0.1, [found])).toEqual([]);
    const coat = { recipe: null, after: { probabilities: { sound: most + 0.1 } } } as unknown as Remedy;
    expect(blocks(most + 0.1, [coat]).map(({ limit }) => limit)).toEqual(["doubt"]);
  });

  describe("of a recipe of which only silica may move, in a melt that hardly may", () => {
    const request: RemediesRequest = {
      ...SMALL,
      allow: ["silica"],
      keep: ["potash-feldspar", "whiting"],
      melt: { logViscosity: 0.05, surfaceTensionPercent: 30 },
    };
    const target = 0.85;
    const blocksOf = (one: RemediesRequest, found: readonly Remedy[] = []) => {
      const asked = askedOf(one, before, target, 1)!;
      return whatBlocks({ request: one, asked, before, target, seed: 1, solve }, found);
    };
    /** By hand: every half part of silica more, while the melt stays within so much. */
    const scan = (log: number) => {
      const { bench, terms } = askedOf(request, before, target, 1)!;
      const there = Array.from({ length: 80 }, (_, k) => bench.at([50, 20, 30.5 + k / 2])!);
      const within = there.filter(({ logViscosity }) => Math.abs(logViscosity - terms.start.logViscosity) <= log);
      return Math.max(terms.start.sound, ...within.map(({ sound }) => sound));
    };

    it("names each limit without which it gets 0.02 farther, the one that holds back most first", () => {
      const told = blocksOf(request).filter(({ limit }) => limit !== "doubt");
      const pointers = told.map(({ pointer }) => pointer);
      const melt = told.find(({ limit }) => limit === "melt")!;
      expect(melt.pointer).toBe("/melt/logViscosity");
      // Between the marks of the scan; nothing farther than what is wanted is looked for.
      expect(Math.abs(melt.soundWithout! - Math.min(scan(9), target))).toBeLessThan(0.02);
      expect(pointers).not.toContain("/melt/surfaceTensionPercent");
      const without = told.map(({ soundWithout }) => soundWithout!);
      expect(without).toEqual([...without].sort((a, b) => b - a));
      // 0.02 farther, less what may lie between the marks.
      for (const sound of without) expect(sound).toBeGreaterThanOrEqual(scan(0.05));
      for (const { text, soundWithout } of told) expect(text.includes("gets there")).toBe(soundWithout! >= target);
    });

    it("names none of them where a recipe was found as far on", () => {
      const found = { recipe: {}, after: { probabilities: { sound: target } } } as unknown as Remedy;
      expect(blocksOf(request, [found]).filter(({ limit }) => limit !== "doubt")).toEqual([]);
    });
  });

  describe("of a recipe that is outside its own limits, of which no solver makes anything", () => {
    const blocksOf = (seger: RemediesRequest["seger"]) => {
      const request = { ...SMALL, seger };
      const asked = askedOf(request, before, 0.85, 1)!;
      return whatBlocks({ request, asked, before, target: 0.85, seed: 1, solve: never }, []);
    };
    // 0.31 of alumina and 3.7 of silica.
    const { moles } = analyseGlaze(SMALL.glaze as Recipe).seger!;
    const asItStands = expect.closeTo(before.probabilities.sound, 3);

    it("the limit that it breaks, without which it gets as far as it stands", () => {
      expect(moles.Al2O3).toBeLessThan(0.5);
      const [block, ...others] = blocksOf({ Al2O3: { min: 0.5 } });
      expect(others).toEqual([]);
      expect(block).toMatchObject({
        limit: "Al2O3 in the Seger formula",
        pointer: "/seger/Al2O3",
        soundWithout: asItStands,
      });
      expect(block!.text).toContain("Without that, a change of recipe gets to about 7 in 20.");
    });

    it("two of them together, where lifting one leaves the other", () => {
      expect(moles.SiO2).toBeLessThan(5);
      const [block, ...others] = blocksOf({ Al2O3: { min: 0.5 }, SiO2: { min: 5 } });
      expect(others).toEqual([]);
      expect(block).toMatchObject({ limit: "together", soundWithout: asItStands });
      expect(block).not.toHaveProperty("pointer");
      for (const oxide of ["Al2O3", "SiO2"]) expect(block!.text).toContain(`${oxide} in the Seger formula was to stay`);
      expect(block!.text).toContain("without all of them a change of recipe gets to about 7 in 20.");
    });

    it("none where it keeps them", () => {
      expect(blocksOf({ Al2O3: { min: 0.2 }, SiO2: { min: 3 } })).toEqual([]);
    });
  });

  it("of a recipe that a solver gets nowhere with, nothing", () => {
    const asked = askedOf(SMALL, before, 0.6, 1)!;
    expect(whatBlocks({ request: SMALL, asked, before, target: 0.6, seed: 1, solve: never }, [])).toEqual([]);
  });
});
