/** What a tile would show, which one to fire next, and which clay the glaze suits: each against the fit's own draws. */
import { describe, expect, it } from "vitest";
import { information, predict, type Question } from "../../api/engine/evidence/index.ts";
import { nextTiles } from "../../api/engine/evidence/next-tile.ts";
import { type ReadyPiece, readEvidence } from "../../api/engine/evidence/read-request.ts";
import { outcomesOn, suits } from "../../api/engine/evidence/suits.ts";
import type { EvidenceRequest, Piece } from "../../api/engine/evidence/types.ts";
import type { Cell } from "../../api/engine/evidence/weigh.ts";
import { DRAWS, NORMAL_SHAPE } from "../../api/engine/fit/draws.ts";
import { simulate } from "../../api/engine/fit/simulate.ts";
import { quenchDifferences } from "../../api/engine/fit/trials.ts";
import { RED_STONEWARE } from "../../api/schemas/larch-lane.ts";

const pieces = (...bodies: Piece[]): ReadyPiece[] => {
  const request: EvidenceRequest = { measured: [{ value: 7, rangeC: [20, 300] }], bodies };
  return [...readEvidence(request, 1).bodies];
};
const [RED] = pieces({ body: RED_STONEWARE }) as [ReadyPiece];
const days = (count: number): Question => ({ ask: "crazed", days: count });
const quench = (differenceK: number): Question => ({ ask: "quench", differenceK });
const SHIVERED: Question = { ask: "shivered" };
const share = (answers: Iterable<number>) => [...answers].reduce((sum, yes) => sum + yes, 0) / DRAWS;

/** The fit itself at one expansion after so many years, copied: the next call writes over it. */
function fitAt(alpha: number, years?: number, { situation, draws } = RED) {
  const expansion = { value: alpha, scale: 0, shape: NORMAL_SHAPE };
  const s = { ...situation, expansion, recipeSd: 0, serviceYears: years ?? situation.serviceYears };
  const simulation = simulate(s, draws);
  const differences = new Float64Array(DRAWS);
  quenchDifferences(s, simulation, draws, differences);
  return {
    // From the most squeezed: shivers, sound, crazes later, crazes on cooling.
    outcome: [...simulation.outcome],
    differences,
    mismatch: simulation.mismatch.slice(),
    glazePa: simulation.glazePa.slice(),
  };
}

describe("what a tile would show", () => {
  const alphas = Float64Array.of(4, 6.3, 7);
  const questions = [days(0), days(30), SHIVERED, quench(120), days(0.04), days(0.05), days(3650)];
  const told = predict(RED, questions, alphas);
  const at = (q: number, g: number) => [...told[q]!.subarray(g * DRAWS, (g + 1) * DRAWS)];

  it.each([0, 1, 2])("is what the fit says of each draw, at expansion number %d", (g) => {
    const now = fitAt(alphas[g]!);
    const month = fitAt(alphas[g]!, 30 / 365.25);
    const flag = (yes: boolean) => (yes ? 1 : 0);
    expect(at(0, g)).toEqual(now.outcome.map((rank) => flag(rank === 3)));
    expect(at(1, g)).toEqual(month.outcome.map((rank) => flag(rank >= 2)));
    expect(at(2, g)).toEqual(now.outcome.map((rank) => flag(rank === 0)));
    expect(at(3, g)).toEqual([...now.differences].map((k) => flag(k <= 120)));
    // An hour counts as at opening, a little more does not.
    expect(at(4, g)).toEqual(at(0, g));
    expect(at(5, g)).toEqual(fitAt(alphas[g]!, 0.05 / 365.25).outcome.map((rank) => flag(rank >= 2)));
  });

  it("crazes more as days go by and as the glaze expands more; shivers only where it expands less", () => {
    const crazed = (q: number, g: number) => share(at(q, g));
    expect(crazed(0, 2)).toBeGreaterThan(crazed(0, 1));
    expect(crazed(1, 1)).toBeGreaterThan(crazed(0, 1));
    expect(crazed(6, 1)).toBeGreaterThan(crazed(1, 1));
    expect(crazed(0, 0)).toBe(0);
    expect(share(at(2, 0))).toBeGreaterThan(0.05);
    expect(share(at(2, 2))).toBe(0);
  });

  it("no ware stands a quench by more than 400 K, as the fit has it", () => {
    expect(share(predict(RED, [quench(400)], Float64Array.of(3))[0]!)).toBe(1);
    expect(share(predict(RED, [quench(399)], Float64Array.of(3))[0]!)).toBeLessThan(1);
  });

  it("does not look at the tile's own expansion, nor at the doubt of its recipe", () => {
    const other = { ...RED.situation, expansion: { ...RED.situation.expansion, value: 9 }, recipeSd: 3 };
    expect(predict({ ...RED, situation: other }, questions, alphas)).toEqual(told);
  });

  it("bends by Timoshenko's formula (J. Opt. Soc. Am. 11 (1925) 233), never thinner than a fifth nor softer than 1 GPa", () => {
    const body = { ...RED.situation.body, youngsGPa: { value: 20, sd: 15 } };
    const tile: ReadyPiece = { ...RED, situation: { ...RED.situation, thicknessSd: 0.6, body } };
    const asks: Question[] = [
      { ask: "ring", radiusM: 0.03, sign: 1 },
      { ask: "ring", radiusM: 0.03, sign: -1 },
      { ask: "strip", lengthM: 0.2, held: "one-end" },
      { ask: "strip", lengthM: 0.2, held: "both-ends" },
    ];
    const [outside, inside, clamped, lying] = predict(tile, asks, Float64Array.of(6));
    const { mismatch, glazePa } = fitAt(6, undefined, tile);
    const { thickness, bodyStiffness } = tile.draws.normal;
    let thin = 0;
    let soft = 0;
    for (let i = 0; i < DRAWS; i++) {
      const times = 1 + 0.6 * thickness[i]!;
      const gPa = 20 + 15 * bodyStiffness[i]!;
      if (times < 0.2) thin++;
      if (gPa < 1) soft++;
      const t = 3e-4 * Math.max(times, 0.2);
      const n = glazePa[i]! / (Math.max(gPa, 1) * 1e9);
      const m = t / 5e-3;
      const stiffness = 3 * (1 + m) ** 2 + (1 + m * n) * (m * m + 1 / (m * n));
      const curvature = (6 * mismatch[i]! * (1 + m) ** 2) / ((t + 5e-3) * stiffness);
      // Single precision keeps seven digits of millimetres.
      expect(outside![i]!).toBeCloseTo(1000 * 2 * Math.PI * 0.03 ** 2 * curvature, 5);
      expect(inside![i]!).toBeCloseTo(-1000 * 2 * Math.PI * 0.03 ** 2 * curvature, 5);
      expect(clamped![i]!).toBeCloseTo((1000 * curvature * 0.2 ** 2) / 2, 5);
      expect(lying![i]!).toBeCloseTo((1000 * curvature * 0.2 ** 2) / 8, 5);
    }
    expect(Math.min(thin, soft)).toBeGreaterThan(10);
  });
});

/** Expansions alike in chance; all draws alike, or the first half only. */
const cells = (...alphas: number[]): Cell[] =>
  alphas.map((alpha) => ({ alpha, weights: new Float64Array(DRAWS).fill(1 / DRAWS) }));

/** Chance of each sight at each expansion, counted one by one. */
function sights(
  { situation, draws }: ReadyPiece,
  thicknessMm: number,
  belief: readonly Cell[],
  quenchK: number | null,
) {
  const tile = { draws, situation: { ...situation, thicknessM: thicknessMm / 1000 } };
  const alphas = Float64Array.from(belief, ({ alpha }) => alpha);
  const asks = [days(0), days(30), SHIVERED, quench(quenchK ?? 1)];
  const [opening, month, shivers, cracks] = predict(tile, asks, alphas) as [
    Float32Array,
    Float32Array,
    Float32Array,
    Float32Array,
  ];
  return belief.map(({ weights }, c) => {
    const chance = Float64Array.of(0, 0, 0, 0, 0);
    weights.forEach((w, i) => {
      const k = c * DRAWS + i;
      if (opening[k] === 1) chance[0]! += w;
      else if (month[k] === 1) chance[1]! += w;
      else if (shivers[k] === 1) chance[2]! += w;
      else if (quenchK !== null && cracks[k] === 1) chance[3]! += w;
      else chance[4]! += w;
    });
    return chance;
  });
}

const SIGHTS = [
  "it crazes at opening",
  "it crazes within a month",
  "it shivers",
  "it cracks in the quench",
  "it holds",
];

describe("the tile to fire next", () => {
  const unsure = cells(4.5, 5.2, 5.9, 6.6, 7.3);
  const alike = cells(5.4, 5.7, 6);

  it.each([
    ["an open belief", unsure, true],
    ["a belief in what hardly differs", alike, false],
  ])("tells most that looking or the best quench can tell: %s", (_, belief, quenched) => {
    const next = nextTiles([RED], belief, 0.3);
    expect(next).toHaveLength(3);
    expect(next.map(({ thicknessMm }) => thicknessMm).sort()).toEqual([0.15, 0.3, 0.6]);
    expect(next.map(({ bits }) => bits)).toEqual(next.map(({ bits }) => bits).sort((a, b) => b - a));
    expect(next.some(({ quenchK }) => quenchK !== null)).toBe(quenched);
    for (const { thicknessMm, quenchK, bits, expects, text } of next) {
      const look = information(sights(RED, thicknessMm, belief, null));
      const plunges = [100, 130, 160, 190].map((k) => information(sights(RED, thicknessMm, belief, k)));
      const most = Math.max(...plunges);
      // A quench has to tell 0.15 bit more.
      expect(quenchK !== null).toBe(most - look >= 0.15);
      expect(bits).toBeCloseTo(quenchK === null ? look : most, 3);
      if (quenchK !== null) expect([100, 130, 160, 190][plunges.indexOf(most)]).toBe(quenchK);
      expect(text.includes(`oven at ${(quenchK ?? 0) + 20}\u00a0°C`)).toBe(quenchK !== null);
      // What is expected, with its chance over the whole belief; what is rarer than 1 in 200 is not told.
      const chances = sights(RED, thicknessMm, belief, quenchK);
      const told = SIGHTS.flatMap((seen, k) => {
        const chance = chances.reduce((sum, one) => sum + one[k]!, 0) / belief.length;
        return chance < 0.005 ? [] : [{ seen, chance: expect.closeTo(chance, 3) }];
      });
      expect(expects).toMatchObject(told);
      expect(expects).toHaveLength(told.length);
    }
  });

  it("tells what each sight would leave (arithmetic)", () => {
    // Two expansions: at 2.5 nothing crazes, at 9 all craze at opening.
    const belief = cells(2.5, 9);
    const [one] = nextTiles([RED], belief, 0.3);
    // Cells 2.5–5.75 and 5.75–9. Now: 5 % is a tenth of the way through the first, 95 % nine tenths through the second.
    expect(one!.halfWidth.high).toBeCloseTo((5.75 + 0.9 * 3.25 - (2.5 + 0.1 * 3.25)) / 2, 2);
    expect(one!.halfWidth.low).toBe(0);
    // Afterwards one of the two is left, from 5 to 95 % of its cell: 0.9 × 3.25/2.
    expect(one!.halfWidth.value).toBeCloseTo((0.9 * 3.25) / 2, 2);
    expect(one!.bits).toBe(1);
    const crazes = one!.expects.find(({ seen }) => seen === "it crazes at opening")!;
    expect(crazes.chance).toBe(0.5);
    expect(crazes.expansion).toMatchObject({
      low: expect.closeTo(5.75 + 0.05 * 3.25, 2),
      value: expect.closeTo(5.75 + 0.5 * 3.25, 2),
      high: expect.closeTo(5.75 + 0.95 * 3.25, 2),
      rangeC: [20, 300],
    });
    for (const { seen, expansion } of one!.expects) {
      if (seen !== "it crazes at opening") expect(expansion.value).toBeCloseTo(2.5 + 0.5 * 3.25, 2);
    }
  });

  it("in between, cells reach half way to either neighbour (arithmetic)", () => {
    // Nothing is learned from a tile that shows the same of all three: cells 5–5.1, 5.1–5.3, 5.3–5.4, a third each.
    const dull = cells(5, 5.2, 5.4).map(({ alpha }) => ({
      alpha,
      weights: Float64Array.from({ length: DRAWS }, () => 0),
    }));
    const holds = drawThatHolds();
    for (const cell of dull) cell.weights[holds] = 1;
    const [one] = nextTiles([RED], dull, 0.3);
    expect(one!.bits).toBe(0);
    expect(one!.expects).toHaveLength(1);
    const { expansion } = one!.expects[0]!;
    expect(expansion).toMatchObject({
      // 0.05 is 0.15 of the first third; 0.5 the middle of the second; 0.95 is 0.85 of the last.
      low: expect.closeTo(5 + 0.15 * 0.1, 2),
      value: expect.closeTo(5.2, 2),
      high: expect.closeTo(5.3 + 0.85 * 0.1, 2),
    });
    expect(one!.halfWidth.value).toBe(one!.halfWidth.high);
  });

  /** A draw that holds at 5, 5.2 and 5.4, whatever the thickness and quench. */
  function drawThatHolds(): number {
    const tiles = [0.15, 0.3, 0.6].flatMap((mm) => {
      const tile = { draws: RED.draws, situation: { ...RED.situation, thicknessM: mm / 1000 } };
      return predict(tile, [days(30), SHIVERED, quench(190)], Float64Array.of(5, 5.2, 5.4));
    });
    const holds = Array.from({ length: DRAWS }, (_, i) => i).find((i) =>
      tiles.every((one) => [0, 1, 2].every((g) => one[g * DRAWS + i] === 0)),
    );
    return holds!;
  }

  it.each([
    [0.1, [0.05, 0.1, 0.2]],
    [0.09, [0.09, 0.18]],
    [1, [0.5, 1, 2]],
    [1.1, [0.55, 1.1]],
  ])("half as thick as %d mm, as thick and twice, between 0.05 and 2 mm", (usual, thicknesses) => {
    const told = nextTiles([RED], cells(5, 7), usual).map(({ thicknessMm }) => thicknessMm);
    expect(told.sort()).toEqual(thicknesses);
  });

  it("compares the first six clays", () => {
    const red = (value: number) => ({
      name: `red ${value}`,
      body: { ...RED_STONEWARE, expansion: { value, rangeC: [20, 500] as const, plusMinus: 0.3 } },
    });
    // The last clay would tell most of a glaze that is known to hold on the others.
    const belief = cells(5.8, 6.4);
    const rigid = [8.1, 8.2, 8.3, 8.4, 8.5].map(red);
    const with6 = nextTiles(pieces(...rigid, red(6)), belief, 0.3);
    expect(with6[0]!.body).toBe("red 6");
    const seventh = nextTiles(pieces(...rigid, red(8.6), red(6)), belief, 0.3);
    expect(seventh.map(({ body }) => body)).not.toContain("red 6");
    expect(seventh).toHaveLength(3);
  });
});

describe("whether it suits a clay", () => {
  it("weighs each draw of each expansion (arithmetic)", () => {
    const half = new Float64Array(DRAWS).fill(2 / DRAWS, 0, DRAWS / 2);
    const belief: Cell[] = [...cells(5), { alpha: 6.5, weights: half }];
    const names = ["shivers", "sound", "crazesLater", "crazesOnCooling"] as const;
    const [a, b] = [fitAt(5).outcome, fitAt(6.5).outcome];
    const chances = outcomesOn(RED, belief);
    names.forEach((name, rank) => {
      const first = a.filter((one) => one === rank).length / DRAWS;
      const second = b.slice(0, DRAWS / 2).filter((one) => one === rank).length / (DRAWS / 2);
      expect(chances[name]).toBeCloseTo((first + second) / 2, 9);
    });
  });

  it("rounds to four digits that sum to 1, and says it in twentieths", () => {
    const belief = cells(5.1, 5.9, 6.6);
    const chances = outcomesOn(RED, belief);
    const { probabilities, text, verdict } = suits({ ...RED, name: "the red" }, belief);
    for (const name of ["shivers", "sound", "crazesLater", "crazesOnCooling"] as const) {
      expect(Math.abs(probabilities[name] - chances[name])).toBeLessThanOrEqual(0.00015 + 1e-12);
      expect(probabilities[name]).toBeCloseTo(Math.round(probabilities[name] * 1e4) / 1e4, 12);
    }
    expect(Object.values(probabilities).reduce((sum, p) => sum + p, 0)).toBeCloseTo(1, 9);
    const in20 = (p: number) => Math.round(p * 20);
    expect(text).toContain(`sound about ${in20(chances.sound)} in 20`);
    expect(text).toContain(`later about ${in20(chances.crazesOnCooling + chances.crazesLater)} in 20`);
    expect(verdict).toBe("may-craze");
  });
});
