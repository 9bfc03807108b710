/** The parts of learning from tiles, each by itself and worked by hand. */
import { describe, expect, it } from "vitest";
import { seenIssues } from "../../api/engine/evidence/check-seen.ts";
import {
  addLogLikelihood,
  asked,
  asRun,
  beliefOn,
  densityOf,
  posterior,
  quantileIn,
  unknownDensity,
} from "../../api/engine/evidence/index.ts";
import { learnAll } from "../../api/engine/evidence/lessons.ts";
import { canonical, tileDraws } from "../../api/engine/evidence/levels.ts";
import { between, GRID_POINTS, normalised, readingLikelihood } from "../../api/engine/evidence/prior.ts";
import type { Evidence } from "../../api/engine/evidence/read-request.ts";
import { verdictOf } from "../../api/engine/evidence/suits.ts";
import type { Seen } from "../../api/engine/evidence/types.ts";
import { cellsOf, chanceOf, drawWeights, effectiveDraws, type Joint } from "../../api/engine/evidence/weigh.ts";
import { chanceWords, expansionWords } from "../../api/engine/evidence/words.ts";
import { DRAWS, drawsFor, INPUTS, type Input } from "../../api/engine/fit/draws.ts";
import { quantity } from "../../api/engine/quantity.ts";

/** Half-width of a 90 % interval over its standard deviation: the 95 % point of the normal distribution. */
const Z = 1.6448536;

describe("what can have been seen", () => {
  const ring = { kind: "ring", radiusMm: 30, closesMm: 0.4 } as const;
  const strip = { kind: "strip", lengthMm: 200, bowMm: 0.4 } as const;
  const quench = { kind: "quench", differenceK: 100, cracked: true } as const;
  const crazed = { kind: "crazed" } as const;
  // Field, least and most; the sight with that field.
  const limits: [string, number, number, (value: number) => Seen][] = [
    ["byDays", 0, 36500, (byDays) => ({ ...crazed, byDays })],
    ["afterDays", 0, 36500, (afterDays) => ({ kind: "not-crazed", afterDays })],
    ["differenceK", 1, 600, (differenceK) => ({ ...quench, differenceK })],
    ["radiusMm", 5, 500, (radiusMm) => ({ ...ring, radiusMm })],
    ["closesMm", -20, 20, (closesMm) => ({ ...ring, closesMm })],
    ["plusMinusMm", 0, 20, (plusMinusMm) => ({ ...ring, plusMinusMm })],
    ["lengthMm", 10, 2000, (lengthMm) => ({ ...strip, lengthMm })],
    ["bowMm", -50, 50, (bowMm) => ({ ...strip, bowMm })],
    ["plusMinusMm", 0, 20, (plusMinusMm) => ({ ...strip, plusMinusMm })],
  ];

  it.each(limits)("takes %s from %d to %d, and nothing beyond", (field, least, most, seen) => {
    expect(seenIssues(seen(least), "/here")).toEqual([]);
    expect(seenIssues(seen(most), "/here")).toEqual([]);
    for (const beyond of [least - 0.01, most + 0.01]) {
      const issues = seenIssues(seen(beyond), "/here");
      expect(issues).toMatchObject([{ pointer: `/here/${field}`, allowed: [least, most] }]);
      expect(issues[0]!.message).toContain(`${beyond}`);
    }
  });

  it("takes what leaves the rest unsaid", () => {
    const plain: Seen[] = [crazed, ring, strip, quench, { kind: "shivered" }, { kind: "not-shivered" }];
    for (const seen of plain) expect(seenIssues(seen, "")).toEqual([]);
  });

  it.each([
    [{ byDays: 9, soundAtDays: 3 }, []],
    [{ byDays: 9, soundAtDays: 8.9 }, []],
    [{ byDays: 9, soundAtDays: 9 }, ["/soundAtDays"]],
    [{ byDays: 3, soundAtDays: 9 }, ["/soundAtDays"]],
    // Crazed at opening: there is nothing before.
    [{ soundAtDays: 0 }, ["/soundAtDays"]],
    [{ byDays: 9, soundAtDays: -1 }, ["/soundAtDays"]],
    [{ byDays: 40000, soundAtDays: 36501 }, ["/byDays", "/soundAtDays"]],
  ])("was sound before it was crazed: %j", (days, pointers) => {
    expect(seenIssues({ ...crazed, ...days }, "").map(({ pointer }) => pointer)).toEqual(pointers);
  });
});

describe("what was seen, as questions", () => {
  it.each<[Seen, [object, number][]]>([
    [{ kind: "crazed" }, [[{ ask: "crazed", days: 0 }, 1]]],
    [{ kind: "crazed", byDays: 14 }, [[{ ask: "crazed", days: 14 }, 1]]],
    [
      { kind: "crazed", byDays: 14, soundAtDays: 2 },
      [
        [{ ask: "crazed", days: 14 }, 1],
        [{ ask: "crazed", days: 2 }, 0],
      ],
    ],
    [{ kind: "not-crazed", afterDays: 90 }, [[{ ask: "crazed", days: 90 }, 0]]],
    [{ kind: "quench", differenceK: 130, cracked: true }, [[{ ask: "quench", differenceK: 130 }, 1]]],
    [{ kind: "quench", differenceK: 130, cracked: false }, [[{ ask: "quench", differenceK: 130 }, 0]]],
    [{ kind: "shivered" }, [[{ ask: "shivered" }, 1]]],
    [{ kind: "not-shivered" }, [[{ ask: "shivered" }, 0]]],
  ])("answers yes or no: %j", (seen, questions) => {
    expect(asked(seen)).toEqual(questions.map(([question, answer]) => ({ question, answer, sd: null })));
  });

  // Arithmetic: metres are mm/1000; a 90 % interval of ± is 1.645 standard deviations; ±0.1 mm where none is told.
  it.each<[Seen, object, number, number]>([
    [{ kind: "ring", radiusMm: 30, closesMm: 0.4 }, { ask: "ring", radiusM: 0.03, sign: 1 }, 0.4, 0.1 / Z],
    [
      { kind: "ring", radiusMm: 40, closesMm: -0.2, plusMinusMm: 0.05, face: "outside" },
      { ask: "ring", radiusM: 0.04, sign: 1 },
      -0.2,
      0.05 / Z,
    ],
    [
      { kind: "ring", radiusMm: 40, closesMm: 0.2, plusMinusMm: 0.05, face: "inside" },
      { ask: "ring", radiusM: 0.04, sign: -1 },
      0.2,
      0.05 / Z,
    ],
    [{ kind: "strip", lengthMm: 200, bowMm: 1 }, { ask: "strip", lengthM: 0.2, held: "one-end" }, 1, 0.1 / Z],
    [
      { kind: "strip", lengthMm: 200, bowMm: 1, plusMinusMm: 0.3, held: "both-ends" },
      { ask: "strip", lengthM: 0.2, held: "both-ends" },
      1,
      0.3 / Z,
    ],
  ])("reads millimetres: %j", (seen, question, mm, sd) => {
    const [one, ...more] = asked(seen);
    expect(more).toEqual([]);
    expect(one).toMatchObject({ question, answer: mm });
    expect(one!.sd).toBeCloseTo(sd, 7);
  });
});

describe("what is believed before any tile", () => {
  it("of an unknown glaze: normal about 7, and nothing beyond 2 and 13", () => {
    expect(unknownDensity(7)).toBe(1);
    // One standard deviation off: e^(−1/2).
    expect(unknownDensity(8.6)).toBeCloseTo(Math.exp(-0.5), 12);
    expect(unknownDensity(5.4)).toBeCloseTo(Math.exp(-0.5), 12);
    expect(unknownDensity(2)).toBeGreaterThan(0);
    expect(unknownDensity(13)).toBeGreaterThan(0);
    expect(unknownDensity(1.999)).toBe(0);
    expect(unknownDensity(13.001)).toBe(0);
  });

  it("of a model: a bell at each residual quantile, as wide as its neighbours stand apart (arithmetic)", () => {
    const density = densityOf({ value: 6, scale: 0.5, shape: [-1, 0, 2] }, 0.3);
    // Gaps: whole to the one neighbour at the ends (1 and 2), half the way over at the middle (3/2), times 0.5.
    const bells = [
      { centre: 5.5, sd: Math.sqrt(0.3 ** 2 + 0.5 ** 2 + 0.02 ** 2) },
      { centre: 6, sd: Math.sqrt(0.3 ** 2 + 0.75 ** 2 + 0.02 ** 2) },
      { centre: 7, sd: Math.sqrt(0.3 ** 2 + 1 ** 2 + 0.02 ** 2) },
    ];
    for (const alpha of [4.8, 5.5, 6, 6.6, 8]) {
      const sum = bells.reduce((p, { centre, sd }) => p + Math.exp(-0.5 * ((alpha - centre) / sd) ** 2) / sd, 0);
      expect(density(alpha)).toBeCloseTo(sum, 12);
    }
  });

  it("of a reading: normal, and one in fifty off by ten times its doubt (arithmetic)", () => {
    expect(readingLikelihood(0, 0.2)).toBeCloseTo(0.98 + 0.02 / 10, 12);
    // One standard deviation off, either way; the wide share is then a tenth of one off.
    const one = 0.98 * Math.exp(-0.5) + 0.002 * Math.exp(-0.005);
    expect(readingLikelihood(0.2, 0.2)).toBeCloseTo(one, 12);
    expect(readingLikelihood(-0.2, 0.2)).toBeCloseTo(one, 12);
    // Ten off: nothing but a mistake.
    expect(readingLikelihood(2, 0.2)).toBeCloseTo(0.002 * Math.exp(-0.5), 12);
  });

  it("brings a run over another range to 20–300 °C along the line 1 + 0.0011 (T − 160) (arithmetic)", () => {
    expect(asRun(7, [20, 300], 0.2).value).toBe(7);
    expect(asRun(7, [20, 300], 0.2).sd).toBeCloseTo(0.2 / Z, 7);
    // Middle of 20–500 is 260 °C: 1 + 0.0011 × 100 = 1.11.
    expect(asRun(7.77, [20, 500], 0.222)).toMatchObject({
      value: expect.closeTo(7, 9),
      sd: expect.closeTo(0.2 / Z, 7),
    });
    // Middle of 20–100 is 60 °C: 1 − 0.11 = 0.89.
    expect(asRun(6.23, [20, 100], 0.178)).toMatchObject({
      value: expect.closeTo(7, 9),
      sd: expect.closeTo(0.2 / Z, 7),
    });
    // No run is sharper than 0.02.
    expect(asRun(7, [20, 300], 0).sd).toBe(0.02);
    expect(asRun(7, [20, 300], 0.033).sd).toBeCloseTo(0.033 / Z, 7);
  });

  it("lies on an even grid that holds all but 2 in 10 000 at either end, and sums to 1", () => {
    const { alphas, weights } = beliefOn(unknownDensity, []);
    expect(alphas).toHaveLength(GRID_POINTS);
    expect(weights.reduce((sum, w) => sum + w, 0)).toBeCloseTo(1, 12);
    // From memory, of the normal distribution: 0.00089 lies below 2 (−3.125 standard deviations) and 0.00009 above 13
    // (+3.75), both cut off; with another 0.0002 that is 0.00109 below −3.07 and 0.00029 above +3.44.
    expect(alphas[0]!).toBeCloseTo(7 - 3.07 * 1.6, 1);
    expect(alphas[GRID_POINTS - 1]!).toBeCloseTo(7 + 3.44 * 1.6, 1);
    for (let g = 1; g < GRID_POINTS; g++) {
      expect(alphas[g]! - alphas[g - 1]!).toBeCloseTo((alphas[120]! - alphas[0]!) / 120, 9);
      expect(weights[g]! / weights[g - 1]!).toBeCloseTo(unknownDensity(alphas[g]!) / unknownDensity(alphas[g - 1]!), 9);
    }
  });

  it("narrows the grid about runs, and counts them no further", () => {
    const wide = beliefOn(unknownDensity, []);
    const runs = [
      { value: 7.3, sd: 0.05 },
      { value: 7.3, sd: 0.05 },
    ];
    const { alphas, weights } = beliefOn(unknownDensity, runs);
    const width = alphas[120]! - alphas[0]!;
    // Two runs of 0.05 are one of 0.035; ±3.54 of that, and room for one mistaken: far less than half a unit on either side.
    expect(width).toBeLessThan(0.8);
    expect(width).toBeGreaterThan(7 * 0.035);
    expect(width).toBeLessThan((wide.alphas[120]! - wide.alphas[0]!) / 10);
    expect((alphas[0]! + alphas[120]!) / 2).toBeCloseTo(7.3, 1);
    expect(weights[60]! / weights[0]!).toBeCloseTo(unknownDensity(alphas[60]!) / unknownDensity(alphas[0]!), 9);
  });

  it("stays as wide as before where runs leave nothing possible", () => {
    const nowhere = beliefOn((a) => (a > 5 && a < 6 ? 1e-300 : 0), [{ value: 19, sd: 0.02 }]);
    expect(nowhere.alphas[0]!).toBeCloseTo(5, 1);
    expect(nowhere.alphas[120]!).toBeCloseTo(6, 1);
  });

  it("lies between the points of a grid on straight lines, and nowhere beyond (arithmetic)", () => {
    const density = between({ alphas: Float64Array.of(5, 5.5, 6), weights: Float64Array.of(0.2, 0.6, 0.2) });
    // Weights over the step of a half.
    for (const [alpha, of] of [
      [5, 0.4],
      [5.25, 0.8],
      [5.5, 1.2],
      [5.9, 0.56],
      [4.99, 0],
      [6.01, 0],
    ] as const) {
      expect(density(alpha)).toBeCloseTo(of, 12);
    }
  });

  it("shares weights out to sum to 1", () => {
    expect([...normalised(Float64Array.of(1, 2, 5))]).toEqual([0.125, 0.25, 0.625]);
  });

  it("reads quantiles with each weight spread over its cell (arithmetic)", () => {
    const belief = { alphas: Float64Array.of(1, 2, 3), weights: Float64Array.of(0.25, 0.5, 0.25) };
    // Cells 0.5–1.5, 1.5–2.5, 2.5–3.5.
    for (const [p, at] of [
      [0.125, 1],
      [0.25, 1.5],
      [0.375, 1.75],
      [0.5, 2],
      [0.75, 2.5],
      [0.95, 3.3],
    ] as const) {
      expect(quantileIn(belief, p)).toBeCloseTo(at, 12);
    }
    // Nothing is left where no weight is; past all of it, the end.
    expect(quantileIn({ alphas: Float64Array.of(1, 2, 3), weights: Float64Array.of(0, 1, 0) }, 0)).toBe(1.5);
    expect(quantileIn({ alphas: Float64Array.of(1, 2, 3), weights: Float64Array.of(0.5, 0.4, 0) }, 0.95)).toBe(3);
    const finer = { alphas: Float64Array.of(6, 6.1), weights: Float64Array.of(0.5, 0.5) };
    expect(quantileIn(finer, 0.05)).toBeCloseTo(5.96, 12);
  });
});

/** A belief over expansions in which each draw weighs alike. */
const even = (alphas: number[], weights: number[]): Joint =>
  posterior({ alphas: Float64Array.from(alphas), weights: Float64Array.from(weights) }, [], []);
/** One figure for every expansion and draw, from the places of both. */
const table = (expansions: number, of: (g: number, i: number) => number) =>
  Array.from({ length: expansions * DRAWS }, (_, k) => of(Math.floor(k / DRAWS), k % DRAWS));

describe("weighing", () => {
  const yes = { question: { ask: "shivered" as const }, answer: 1, sd: null };

  it("a yes or no is mistaken once in fifty", () => {
    const added = addLogLikelihood(yes, Float32Array.of(1, 0), Float64Array.of(0, 2));
    expect(added[0]).toBeCloseTo(Math.log(0.98), 12);
    expect(added[1]).toBeCloseTo(2 + Math.log(0.02), 12);
    const no = addLogLikelihood({ ...yes, answer: 0 }, Float32Array.of(1, 0), Float64Array.of(0, 0));
    expect(no[0]).toBeCloseTo(Math.log(0.02), 12);
    expect(no[1]).toBeCloseTo(Math.log(0.98), 12);
  });

  it("a reading weighs by how far it is off, and none is sharper than a micrometre", () => {
    const ring = { question: { ask: "shivered" as const }, answer: 0.5, sd: 0.25 };
    const added = addLogLikelihood(ring, Float32Array.of(0.5, 0.25, 0.75), Float64Array.of(0, 1, 0));
    expect(added[0]).toBeCloseTo(Math.log(0.982), 12);
    // One standard deviation off, either way.
    const one = Math.log(0.98 * Math.exp(-0.5) + 0.002 * Math.exp(-0.005));
    expect(added[1]).toBeCloseTo(1 + one, 12);
    expect(added[2]).toBeCloseTo(one, 12);
    // An sd of 0 counts as 0.001 mm: 0.5 − 0.4990234375 is 0.9765625 of that.
    const z = 0.9765625;
    const sharp = addLogLikelihood({ ...ring, sd: 0 }, Float32Array.of(0.4990234375), Float64Array.of(0));
    expect(sharp[0]).toBeCloseTo(Math.log(0.98 * Math.exp(-(z ** 2) / 2) + 0.002 * Math.exp(-(z ** 2) / 200)), 9);
    // However far off, it stays a number.
    expect(addLogLikelihood({ ...ring, answer: 1e6 }, Float32Array.of(0), Float64Array.of(0))[0]).toBeCloseTo(
      Math.log(1e-300),
      6,
    );
  });

  it("is Bayes' rule (arithmetic)", () => {
    const prior = { alphas: Float64Array.of(5, 6), weights: Float64Array.of(0.6, 0.4) };
    const perAlpha = Float64Array.of(Math.log(0.1), Math.log(0.3));
    // Half of the draws bear the tile out at 6, a quarter at 5.
    const perDraw = Float64Array.from(
      table(2, (g, i) => Math.log(i < (g === 0 ? DRAWS / 4 : DRAWS / 2) ? 0.98 : 0.02)),
    );
    const joint = posterior(prior, [perAlpha], [perDraw]);
    const five = 0.6 * 0.1 * (0.25 * 0.98 + 0.75 * 0.02);
    const six = 0.4 * 0.3 * (0.5 * 0.98 + 0.5 * 0.02);
    expect(joint.belief.weights[0]).toBeCloseTo(five / (five + six), 12);
    expect(joint.belief.weights[1]).toBeCloseTo(six / (five + six), 12);
    expect(joint.belief.alphas).toBe(prior.alphas);
    expect(joint.alphas).toBe(prior.alphas);
    expect(joint.weights).toHaveLength(2 * DRAWS);
    // One draw by itself: borne out at 6 only, number 300; the first at both.
    const one = (prior: number, run: number, tile: number) => (prior * run * tile) / DRAWS / (five + six);
    expect(joint.weights[300]).toBeCloseTo(one(0.6, 0.1, 0.02), 12);
    expect(joint.weights[DRAWS + 300]).toBeCloseTo(one(0.4, 0.3, 0.98), 12);
    const draws = drawWeights(joint);
    expect(draws).toHaveLength(DRAWS);
    expect(draws[0]).toBeCloseTo(one(0.6, 0.1, 0.98) + one(0.4, 0.3, 0.98), 12);
    expect(draws[300]).toBeCloseTo(one(0.6, 0.1, 0.02) + one(0.4, 0.3, 0.98), 12);
    expect(draws[1023]).toBeCloseTo(one(0.6, 0.1, 0.02) + one(0.4, 0.3, 0.02), 12);
  });

  it("lets go of what is e⁻⁴⁰ of the likeliest, and keeps what is a little more", () => {
    const prior = { alphas: Float64Array.of(5, 6, 7), weights: Float64Array.of(1, 1, 1) };
    const { belief } = posterior(prior, [Float64Array.of(0, -39, -41)], []);
    expect(belief.weights[1]! / belief.weights[0]!).toBeCloseTo(Math.exp(-39), 24);
    expect(belief.weights[1]).toBeGreaterThan(0);
    expect(belief.weights[2]).toBe(0);
    // What the prior leaves out comes back where nothing else is left.
    const only = posterior({ ...prior, weights: Float64Array.of(0, 0, 1) }, [Float64Array.of(-1e4, 0, 0)], []);
    expect(only.belief.weights[2]).toBe(1);
  });

  it("counts how many equal draws a belief is worth (arithmetic)", () => {
    expect(effectiveDraws(Float64Array.of(0.25, 0.25, 0.25, 0.25))).toBe(4);
    expect(effectiveDraws(Float64Array.of(1, 0, 0, 0))).toBe(1);
    expect(effectiveDraws(Float64Array.of(0.5, 0.5, 0, 0))).toBe(2);
  });

  it("tells the chance of a yes or no", () => {
    const joint = even([5, 6], [0.25, 0.75]);
    // At 5 every draw says yes, at 6 one in four.
    const predicted = Float32Array.from(table(2, (g, i) => (g === 0 || i < DRAWS / 4 ? 1 : 0)));
    expect(chanceOf(yes, predicted, joint)).toBeCloseTo(0.25 + 0.75 * 0.25, 9);
    expect(chanceOf({ ...yes, answer: 0 }, predicted, joint)).toBeCloseTo(0.75 * 0.75, 9);
    // What has no weight does not count.
    expect(chanceOf(yes, predicted, even([5, 6], [1, 0]))).toBeCloseTo(1, 9);
  });

  it("tells the chance of a reading as far off or farther, on either side", () => {
    const joint = even([5], [1]);
    const half = Float32Array.from(table(1, () => 0.5));
    const at = (answer: number, sd = 0.25) => chanceOf({ question: { ask: "shivered" }, answer, sd }, half, joint);
    expect(at(0.5)).toBeCloseTo(1, 6);
    // From memory: 31.73 % lie beyond one standard deviation, 4.55 % beyond two.
    expect(at(0.75)).toBeCloseTo(0.3173, 4);
    expect(at(0.25)).toBeCloseTo(0.3173, 4);
    expect(at(0)).toBeCloseTo(0.0455, 4);
    // An sd of 0 counts as 0.001 mm.
    expect(at(0.5009765625, 0)).toBeCloseTo(0.3288, 3);
  });

  it("splits a belief into equally likely cells with the draws that go with each", () => {
    const prior = { alphas: Float64Array.of(5, 6, 7, 8), weights: Float64Array.of(0.25, 0.5, 0, 0.25) };
    // At 6 only the first half of the draws is left.
    const perDraw = Float64Array.from(table(4, (g, i) => (g === 1 && i >= DRAWS / 2 ? -100 : 0)));
    const joint = posterior(prior, [Float64Array.of(0, Math.log(2), 0, 0)], [perDraw]);
    const cells = cellsOf(joint, 4);
    // Weights ¼, ½, 0, ¼; cells 4.5–5.5, 5.5–6.5, –, 7.5–8.5: middles at ⅛, ⅜, ⅝ and ⅞ of it all.
    expect(cells.map(({ alpha }) => alpha)).toEqual([5, 5.75, 6.25, 8].map((alpha) => expect.closeTo(alpha, 9)));
    for (const { weights } of cells) {
      expect(weights).toHaveLength(DRAWS);
      expect(weights.reduce((sum, w) => sum + w, 0)).toBeCloseTo(1, 9);
    }
    expect(cells[0]!.weights[900]).toBeCloseTo(1 / DRAWS, 12);
    expect(cells[1]!.weights[900]).toBe(0);
    expect(cells[2]!.weights[0]).toBeCloseTo(2 / DRAWS, 12);
    expect(cells[3]!.weights[900]).toBeCloseTo(1 / DRAWS, 12);
  });

  it("cells reach for the expansion below where their own has no weight, and stay on the grid", () => {
    const joint = even([5, 6, 7], [0.5, 0, 0.5]);
    // Two cells of 5 reach from 4.5 to 5.5; eight cells: middles at 4.5 + (k + ½)/4.
    const cells = cellsOf(joint, 8);
    expect(cells.map(({ alpha }) => alpha)).toEqual(
      [4.625, 4.875, 5.125, 5.375, 6.625, 6.875, 7.125, 7.375].map((alpha) => expect.closeTo(alpha, 9)),
    );
    for (const { weights } of cells) expect(weights[7]).toBeCloseTo(1 / DRAWS, 12);
    // A lone expansion in the middle: its cell is 5.5–6.5, and 6.5 rounds to 7, which has none.
    const lone = cellsOf(even([5, 6, 7], [0, 1, 0]), 400);
    for (const { weights } of lone) expect(weights[7]).toBeCloseTo(1 / DRAWS, 12);
  });
});

describe("who shares what", () => {
  const base = drawsFor(1);
  const changed = (one: ReturnType<typeof tileDraws>, other: ReturnType<typeof tileDraws>) =>
    INPUTS.filter((input) => one.normal[input].some((z, i) => z !== other.normal[input][i]));
  const OF_CLAY: Input[] = [
    "bodyMean",
    "bodyQuartz",
    "bodyRise",
    "bodyCristobalite",
    "bodyStiffness",
    "moisture",
    "onWare",
    "interface",
    "rupture",
  ];

  it("another clay has a clay of its own, another tile a thickness; all else is the glaze's", () => {
    const one = tileDraws(base, 1, "red", "a");
    const sorted = (inputs: Input[]) => [...inputs].sort();
    expect(sorted(changed(one, tileDraws(base, 1, "buff", "a")))).toEqual(sorted(OF_CLAY));
    expect(changed(one, tileDraws(base, 1, "red", "b"))).toEqual(["thickness"]);
    expect(changed(one, tileDraws(base, 1, "red", "a"))).toEqual([]);
    expect(sorted(changed(one, tileDraws(base, 2, "red", "a")))).toEqual(sorted([...OF_CLAY, "thickness"]));
    expect(one.shaped).toBe(base.shaped);
  });

  it("whole draws of a clay are dealt together, each once", () => {
    const dealt = tileDraws(base, 1, "red", "a");
    const place = new Map([...base.normal.bodyMean].map((z, i) => [z, i]));
    const order = [...dealt.normal.bodyMean].map((z) => place.get(z)!);
    expect(new Set(order).size).toBe(DRAWS);
    // A shuffle leaves about one in a thousand where it was.
    expect(order.filter((from, to) => from === to).length).toBeLessThan(10);
    order.forEach((from, to) => {
      for (const input of OF_CLAY) {
        expect(dealt.normal[input][to]).toBe(base.normal[input][from]);
        expect(dealt.even[input][to]).toBe(base.even[input][from]);
      }
      expect(dealt.interfaceToughness[to]).toBe(base.interfaceToughness[from]);
    });
  });

  it("what is shuffled apart goes together no more", () => {
    const { normal } = tileDraws(base, 1, "red", "a");
    const correlation = (a: Float64Array, b: Float64Array) => a.reduce((sum, z, i) => sum + z * b[i]!, 0) / DRAWS;
    // Of 1024 independent pairs the correlation has a standard deviation of 1/32; four of them.
    for (const [a, b] of [
      [normal.bodyMean, base.normal.bodyMean],
      [normal.thickness, base.normal.thickness],
      [normal.bodyMean, normal.setPoint],
      [normal.bodyMean, normal.thickness],
      [normal.bodyMean, tileDraws(base, 1, "buff", "a").normal.bodyMean],
      [normal.thickness, tileDraws(base, 1, "red", "b").normal.thickness],
    ] as const) {
      expect(Math.abs(correlation(a, b))).toBeLessThan(4 / 32);
    }
  });

  it("writes a value the same way whatever order its fields came in", () => {
    expect(canonical({ b: [1, { d: null, c: "x" }], a: undefined, e: true })).toBe(
      '{"b":[1,{"c":"x","d":null}],"e":true}',
    );
    expect(canonical({ c: 2, a: 1, b: 3 })).toBe(canonical({ b: 3, a: 1, c: 2 }));
    expect(canonical([1, 2])).not.toBe(canonical([2, 1]));
    expect(canonical({ value: 6.2 })).not.toBe(canonical({ value: 6.3 }));
    expect(canonical(undefined)).toBe("null");
  });
});

describe("what runs taught", () => {
  /** A request of runs alone, on a wide and even prior. */
  const learned = (values: [number, number][], known = true) => {
    const runs = values.map(([value, sd], m) => ({ value, sd, pointer: `/measured/${m}`, name: `run ${m + 1}` }));
    const density = (a: number) => (a >= 4 && a <= 10 ? 1 : 0);
    const [before, prior] = [beliefOn(density, []), beliefOn(density, runs)];
    return learnAll({ density, before, prior, tiles: [], runs, known } as unknown as Evidence);
  };

  it("two alike narrow each other as normals do (derived)", () => {
    const { joint, lessons } = learned([
      [7, 0.2],
      [7, 0.2],
    ]);
    const half = (quantileIn(joint.belief, 0.95) - quantileIn(joint.belief, 0.05)) / 2;
    // 0.2/√2 × 1.645 = 0.2326, widened a little by what may be mistaken.
    expect(quantileIn(joint.belief, 0.5)).toBeCloseTo(7, 2);
    expect(half).toBeGreaterThan(0.2326 - 0.005);
    expect(half).toBeLessThan(0.2326 * 1.05);
    expect(lessons.map(({ name }) => name)).toEqual(["run 1", "run 2"]);
    const [{ alone, without, expected, conflicts, text }] = lessons as [(typeof lessons)[0]];
    expect(alone).toEqual(without);
    // 0.2 × 1.645 = 0.329 and what is mistaken, by itself.
    expect((alone.high - alone.low) / 2).toBeGreaterThan(0.32);
    expect(expected).toBeGreaterThan(0.95);
    expect(conflicts).toBe(false);
    expect(text).toMatch(/^It moved the answer hardly, from 7\.0 .* to 7\.0 .*, and narrowed it\.$/);
  });

  it("tells how likely each was going by the others, and which is at odds (derived)", () => {
    const apart = (by: number) =>
      learned([
        [7, 0.2],
        [7 + by, 0.2],
      ]).lessons;
    // Apart by the standard deviation of their difference, 0.2 √2: 31.7 % lie beyond; a little more may be mistaken.
    for (const { expected, conflicts } of apart(0.2 * Math.SQRT2)) {
      expect(expected).toBeGreaterThan(0.3);
      expect(expected).toBeLessThan(0.36);
      expect(conflicts).toBe(false);
    }
    // By three of them: 0.27 %, and what may be mistaken.
    for (const { expected, conflicts, text } of apart(0.2 * Math.SQRT2 * 3)) {
      expect(expected).toBeLessThan(0.05);
      expect(expected).toBeGreaterThan(0);
      expect(conflicts).toBe(true);
      expect(text).toContain("at odds with the rest");
    }
  });

  it("tells which way each moved it", () => {
    const [first, second] = learned([
      [6.8, 0.2],
      [7.2, 0.2],
    ]).lessons;
    expect(first!.text).toMatch(/^It moved the answer down, from 7\.2 /);
    expect(second!.text).toMatch(/^It moved the answer up, from 6\.8 /);
    expect(first!.text).toMatch(/to 7\.0 .*, and narrowed it\.$/);
  });

  it("says of one that tells nothing new that it taught little, and of a lone one what was before", () => {
    const { lessons } = learned([
      [7, 0.05],
      [7, 1],
    ]);
    expect(lessons[1]!.text).toMatch(/^It taught little: without it the rest would give 7\.0 \(6\.9 to 7\.1\)/);
    const [lone] = learned([[7, 0.2]]).lessons;
    expect(lone!.text).not.toContain("without it");
    const [off] = learned([[30, 0.2]]).lessons;
    expect(off!.conflicts).toBe(true);
    expect(off!.text).toContain("at odds with the recipe");
    // A lone run has nothing to be at odds with where the glaze is unknown.
    expect(learned([[30, 0.2]], false).lessons[0]!.conflicts).toBe(false);
    expect(
      learned(
        [
          [30, 0.2],
          [7, 0.2],
        ],
        false,
      ).lessons[0]!.conflicts,
    ).toBe(true);
  });

  it("is not blind to what would be possible without a sharp one (derived)", () => {
    const [sharp, loose] = learned([
      [7, 0.05],
      [7, 1],
    ]).lessons;
    // Without it the loose one is left, ±1.645; with it little more than ±0.082.
    expect(sharp!.without).toEqual(loose!.alone);
    expect((sharp!.without.high - sharp!.without.low) / 2).toBeGreaterThan(1.6);
    expect(sharp!.text).toMatch(/to 7\.0 \(6\.9 to 7\.1\).*, and narrowed it\.$/);
    // By itself, and before: what there was from 4 to 10, but a twentieth at either end.
    const [lone] = learned([[7, 0.05]]).lessons;
    // The ends of an even density are known to half a point of the grid, 6/120.
    const near = (figure: number) => expect.closeTo(figure, 1);
    expect(lone!.without).toMatchObject({ low: near(4.3), value: near(7), high: near(9.7) });
    expect(lone!.text).toMatch(/^It moved the answer hardly, from 7\.0 \(4\.3 to 9\.7\).*, and narrowed it\.$/);
  });

  it("keeps the order of the request, and does not mind it", () => {
    const forth = learned([
      [7.4, 0.2],
      [6.9, 0.1],
      [6.9, 0.3],
    ]);
    const back = learned([
      [6.9, 0.3],
      [6.9, 0.1],
      [7.4, 0.2],
    ]);
    expect(forth.lessons.map(({ pointer }) => pointer)).toEqual(["/measured/0", "/measured/1", "/measured/2"]);
    back.joint.belief.weights.forEach((w, g) => {
      expect(w).toBeCloseTo(forth.joint.belief.weights[g]!, 12);
    });
    expect(back.lessons[2]!.alone).toEqual(forth.lessons[0]!.alone);
    expect(back.lessons[1]!.without).toEqual(forth.lessons[1]!.without);
  });
});

describe("words", () => {
  it("twenty cases, dealt from the most squeezed to the most stretched (as judged by a fit)", () => {
    const of = (shivers: number, sound: number, crazesLater: number, crazesOnCooling: number) =>
      verdictOf({ shivers, sound, crazesLater, crazesOnCooling });
    expect(of(0.1, 0.8, 0.05, 0.05).of20).toEqual({ shivers: 2, sound: 16, crazesLater: 1, crazesOnCooling: 1 });
    expect(of(0, 0.85, 0.15, 0)).toEqual({
      verdict: "sound",
      of20: { shivers: 0, sound: 17, crazesLater: 3, crazesOnCooling: 0 },
    });
    expect(of(0, 0.25, 0.25, 0.5).verdict).toBe("crazes");
    expect(of(0.75, 0.25, 0, 0).verdict).toBe("shivers");
    expect(of(0.3, 0.7, 0, 0).verdict).toBe("may-shiver");
    expect(of(0, 0.7, 0.3, 0).verdict).toBe("may-craze");
    // The middle of a twentieth decides: 0.02 is less than half of one, 0.03 more.
    expect(of(0.02, 0.98, 0, 0).of20.shivers).toBe(0);
    expect(of(0.03, 0.97, 0, 0).of20.shivers).toBe(1);
    // Rounding may leave the sum short: what is left over crazes.
    expect(of(0, 0.9, 0, 0).of20).toEqual({ shivers: 0, sound: 18, crazesLater: 0, crazesOnCooling: 2 });
  });

  it("says expansions and chances, as in the docstrings", () => {
    expect(expansionWords(quantity(7.1, 6.4, 7.8, "1e-6/K"))).toBe("7.1 (6.4 to 7.8)\u00a0×10⁻⁶/K");
    expect(chanceWords(0.26)).toBe("about 5 in 20");
    expect(chanceWords(0.01)).toBe("less than 1 in 20");
    expect(chanceWords(0.99)).toBe("more than 19 in 20");
  });
});
