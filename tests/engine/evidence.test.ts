import { describe, expect, it } from "vitest";
import { EngineError } from "../../api/engine/errors.ts";
import { information, learnFromTiles, normalCdf, predict, tileDraws } from "../../api/engine/evidence/index.ts";
import type { EvidenceRequest, Tile } from "../../api/engine/evidence/types.ts";
import { drawsFor, NORMAL_SHAPE } from "../../api/engine/fit/draws.ts";
import { checkFit } from "../../api/engine/fit/index.ts";
import { simulate } from "../../api/engine/fit/simulate.ts";
import { prepare } from "../../api/engine/fit/situation.ts";
import { THAW } from "../../api/schemas/larch-lane.ts";
import { HOARFROST } from "../../api/schemas/larch-lane-tiles.ts";

const RED = { class: "red-stoneware", expansion: { value: 6.2, rangeC: [20, 500] as const, plusMinus: 0.3 } };
const tile = (...seen: Tile["seen"]): Tile => ({ body: RED, thicknessMm: 0.3, seen });
const width = ({ low, high }: { low: number; high: number }) => high - low;

describe("learning from tiles", () => {
  it("expects more of a glaze that crazes and less of one that shivers", () => {
    const crazed = learnFromTiles({ tiles: [tile({ kind: "crazed" })] });
    const shivered = learnFromTiles({ tiles: [tile({ kind: "shivered" })] });
    expect(crazed.after.value).toBeGreaterThan(crazed.before.value);
    expect(shivered.after.value).toBeLessThan(shivered.before.value - 1);
    expect(crazed.headline).toContain("before that, of a glaze of unknown composition I only knew 7.0");
  });

  it("learns more from a cut ring than from a look, and more from both", () => {
    const look = learnFromTiles({ tiles: [tile({ kind: "not-crazed", afterDays: 90 })] });
    const ring = learnFromTiles({ tiles: [tile({ kind: "ring", radiusMm: 30, closesMm: 0.4, plusMinusMm: 0.05 })] });
    const both = learnFromTiles({
      tiles: [
        tile({ kind: "not-crazed", afterDays: 90 }, { kind: "ring", radiusMm: 30, closesMm: 0.4, plusMinusMm: 0.05 }),
      ],
    });
    expect(width(ring.after)).toBeLessThan(width(look.after));
    expect(width(both.after)).toBeLessThanOrEqual(width(ring.after) * 1.02);
  });

  it("takes a dilatometer run nearly at its word", () => {
    const { after } = learnFromTiles({ measured: [{ value: 7.1, rangeC: [20, 300], plusMinus: 0.2 }] });
    // A run of ±0.2 on a prior of ±2.6: 7.1 ± 0.2 within 1 % (derived: product of normals), widened by mistakes.
    expect(Math.abs(after.value - 7.1)).toBeLessThan(0.03);
    expect(width(after) / 2).toBeGreaterThan(0.19);
    expect(width(after) / 2).toBeLessThan(0.25);
  });

  it("does not mind the order of tiles, nor of what was seen on them", () => {
    const { tiles } = HOARFROST;
    const forth = learnFromTiles(HOARFROST);
    const back = learnFromTiles({
      ...HOARFROST,
      tiles: [...tiles].reverse(),
    });
    expect(back.after).toEqual(forth.after);
    expect(back.belief).toEqual(forth.belief);
    const byName = ({ lessons }: typeof forth) => new Map(lessons.map((l) => [l.name, { ...l, pointer: "" }]));
    expect(byName(back)).toEqual(byName(forth));
    expect(back.suits).toEqual(forth.suits);
  });

  it("does not take tiles of one doubtful clay for as many clays", () => {
    const buff = { class: "buff-stoneware" };
    const same = learnFromTiles({
      tiles: [0.2, 0.3, 0.4].map((thicknessMm) => ({ ...tile({ kind: "crazed" }), body: buff, thicknessMm })),
    });
    const different = learnFromTiles({
      tiles: [5.2, 5.45, 5.7].map((value, i) => ({
        ...tile({ kind: "crazed" }),
        body: { class: "buff-stoneware", expansion: { value, rangeC: [20, 500] as const, plusMinus: 0.75 } },
        thicknessMm: [0.2, 0.3, 0.4][i]!,
      })),
    });
    // Three clays of the same class, each as doubtful, cannot all be off the same way.
    expect(same.after.low).toBeLessThan(different.after.low);
  });

  it("tells a tile that does not belong", () => {
    const holds = [0.3, 0.31, 0.32].map((thicknessMm) => ({
      ...tile({ kind: "ring", radiusMm: 30, closesMm: 0.6, plusMinusMm: 0.05 }),
      thicknessMm,
    }));
    const { lessons } = learnFromTiles({ tiles: [...holds, { ...tile({ kind: "crazed" }), name: "odd" }] });
    expect(lessons.filter(({ conflicts }) => conflicts).map(({ name }) => name)).toEqual(["odd"]);
    expect(lessons[3]!.text).toContain("at odds with the rest");
  });

  it("learns of the clay too", () => {
    const doubtful = { class: "red-stoneware", expansion: { value: 6.2, rangeC: [20, 500] as const, plusMinus: 0.8 } };
    const { learnedBodies } = learnFromTiles({
      glaze: { expansion: { value: 6.5, rangeC: [20, 300], plusMinus: 0.1 } },
      tiles: [{ body: doubtful, seen: [{ kind: "ring", radiusMm: 30, closesMm: 1.2, plusMinusMm: 0.05 }] }],
    });
    // A ring that closes far says that the clay shrinks more than its sheet says.
    expect(learnedBodies[0]!.after.value).toBeGreaterThan(6.4);
    expect(width(learnedBodies[0]!.after)).toBeLessThan(width(learnedBodies[0]!.before));
  });

  it("feeds straight back into a fit", () => {
    const { glaze, suits } = learnFromTiles({ ...HOARFROST, bodies: [{ name: "red", body: RED, thicknessMm: 0.3 }] });
    const fit = checkFit({ glaze, body: RED });
    expect(fit.glaze.expansion.value).toBeCloseTo(glaze.expansion.value, 1);
    // The fit knows the interval only, not which draws explain the tiles; it comes out less sure, not otherwise.
    expect(Math.abs(fit.probabilities.sound - suits[0]!.probabilities.sound)).toBeLessThan(0.25);
    const sum = Object.values(suits[0]!.probabilities).reduce((a, b) => a + b, 0);
    expect(sum).toBeCloseTo(1, 9);
  });

  it("says when tiles and recipe disagree", () => {
    const tiles = [0.3, 0.31].map((thicknessMm) => ({
      ...tile({ kind: "ring", radiusMm: 30, closesMm: 1.6, plusMinusMm: 0.05 }),
      thicknessMm,
    }));
    const { warnings, lessons } = learnFromTiles({ glaze: THAW, tiles });
    expect(warnings.map(({ code }) => code)).toContain("tiles-against-recipe");
    expect(lessons).toHaveLength(2);
  });

  it("proposes tiles by what they are expected to tell", () => {
    const { next } = learnFromTiles(HOARFROST);
    expect(next).toHaveLength(3);
    expect(next[0]!.bits).toBeGreaterThanOrEqual(next[1]!.bits);
    for (const { expects, halfWidth } of next) {
      expect(expects.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1, 1);
      expect(halfWidth.value).toBeLessThan(halfWidth.high);
    }
  });
});

describe("its parts", () => {
  it("information: a sure answer tells all, a coin nothing (derived)", () => {
    expect(information([Float64Array.of(1, 0), Float64Array.of(0, 1)])).toBe(1);
    expect(information([Float64Array.of(0.5, 0.5), Float64Array.of(0.5, 0.5)])).toBe(0);
    // Half sure: 1 − H(0.25) = 0.1887 bit (derived).
    expect(information([Float64Array.of(0.75, 0.25), Float64Array.of(0.25, 0.75)])).toBeCloseTo(0.1887, 4);
  });

  it("shares of a normal distribution against printed tables (common tables, from memory)", () => {
    for (const [z, share] of [
      [0, 0.5],
      [1, 0.841345],
      [1.644854, 0.95],
      [-1.959964, 0.025],
      [3, 0.99865],
    ] as const) {
      expect(Math.abs(normalCdf(z) - share)).toBeLessThan(1e-6);
    }
  });

  it("shuffles what a clay or a tile has of its own, and nothing else", () => {
    const base = drawsFor(1);
    const one = tileDraws(base, 1, "red", "a");
    const two = tileDraws(base, 1, "red", "b");
    expect(one.normal.bodyMean).toEqual(two.normal.bodyMean);
    expect(one.normal.thickness).not.toEqual(two.normal.thickness);
    expect(one.normal.setPoint).toBe(base.normal.setPoint);
    expect([...one.normal.bodyMean].sort()).toEqual([...base.normal.bodyMean].sort());
  });
});

describe("ring and strip as the literature has them", () => {
  const glaze = { expansion: { value: 6, rangeC: [20, 300] as const, plusMinus: 0.1 }, thicknessMm: 0.3 };
  const { situation } = prepare({ glaze, body: RED, ware: { wallMm: 4 } });
  const draws = drawsFor(1);
  const alpha = 6;
  const [ring, strip] = predict(
    { situation, draws },
    [
      { ask: "ring", radiusM: 0.03, sign: 1 },
      { ask: "strip", lengthM: 0.2, held: "both-ends" },
    ],
    Float64Array.of(alpha),
  );
  const expansion = { value: alpha, scale: 0, shape: NORMAL_SHAPE };
  const simulated = simulate({ ...situation, expansion, recipeSd: 0 }, draws);
  // Kept, since the next simulation writes over them.
  const [mismatch, glazePa] = [simulated.mismatch.slice(), simulated.glazePa.slice()];

  it("bends every draw by Timoshenko's formula (J. Opt. Soc. Am. 11 (1925) 233)", () => {
    for (let i = 0; i < 1024; i += 97) {
      const t = 3e-4 * Math.max(1 + situation.thicknessSd * draws.normal.thickness[i]!, 0.2);
      const { value, sd, floor = 1 } = situation.body.youngsGPa;
      const n = glazePa[i]! / (Math.max(value + sd * draws.normal.bodyStiffness[i]!, floor) * 1e9);
      const h = t + 4e-3;
      const m = t / 4e-3;
      const curvature =
        (6 * mismatch[i]! * (1 + m) ** 2) / (h * (3 * (1 + m) ** 2 + (1 + m * n) * (m * m + 1 / (m * n))));
      expect(strip![i]!).toBeCloseTo((1000 * (curvature * 0.04)) / 8, 5);
      expect(ring![i]!).toBeCloseTo(1000 * 2 * Math.PI * 9e-4 * curvature, 5);
    }
  });
});

describe("what cannot be", () => {
  const refused = (request: EvidenceRequest) => {
    try {
      learnFromTiles(request);
    } catch (error) {
      if (error instanceof EngineError) return error.issues.map(({ pointer }) => pointer);
      throw error;
    }
    return [];
  };

  it("wants something to learn from", () => expect(refused({})).toEqual([""]));

  it("says which tile is wrong, and how", () => {
    expect(
      refused({
        tiles: [
          tile({ kind: "crazed", byDays: 3, soundAtDays: 9 }),
          { ...tile({ kind: "quench", differenceK: -5, cracked: true }), body: { class: "red-stonewear" } },
          { ...tile({ kind: "crazed" }), thicknessMm: 4, coats: 9 },
        ],
      }),
    ).toEqual([
      "/tiles/0/seen/0/soundAtDays",
      "/tiles/1/seen/0/differenceK",
      "/tiles/1/body/class",
      "/tiles/2/thicknessMm",
    ]);
  });

  it("stays finite where everything contradicts", () => {
    const { after } = learnFromTiles({
      measured: [
        { value: 0.2, plusMinus: 0 },
        { value: 19, plusMinus: 0 },
      ],
      tiles: [
        tile({ kind: "ring", radiusMm: 5, closesMm: 20, plusMinusMm: 0 }, { kind: "crazed" }, { kind: "shivered" }),
      ],
    });
    for (const figure of [after.low, after.value, after.high]) expect(Number.isFinite(figure)).toBe(true);
  });
});
