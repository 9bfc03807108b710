/** The search for the least change: never worse than trying everything, few materials, weighable amounts. */
import { describe, expect, it } from "vitest";
import {
  effortOf,
  FOR_THE_SCALES,
  fewMoves,
  KINDS,
  LEAST_CHANGE,
  type LinearProgram,
  layOut,
  leastChange,
  MOST_MOVED,
  MOST_MOVES,
  materialsMovedOf,
  movedOf,
  PER_MATERIAL,
  solveLinear as solve,
  USUAL,
} from "../../api/engine/advice/index.ts";
import type { RemediesRequest } from "../../api/engine/advice/types.ts";
import { THAW_ON_RED_STONEWARE } from "../../api/schemas/larch-lane.ts";
import { leastEffortByBranching } from "../support/counted-moves.ts";
import { loadHighs } from "../support/highs.ts";

const LEAST_OF_ALL = KINDS.at(-1)!;

interface Asked {
  parts: Record<string, number>;
  incoming?: string[];
  body?: RemediesRequest["body"];
  target: number;
  log: number;
  percent: number;
}

const HARD_STONEWARE = {
  class: "red-stoneware",
  expansion: { value: 6.6, rangeC: [20, 500] as [number, number], plusMinus: 0.2 },
  moistureExpansionPercent: 0.005,
};

/** A small recipe on the bench, with the terms of a search. */
function small({ parts, incoming = [], body = HARD_STONEWARE, target, log, percent }: Asked) {
  const recipe = Object.entries(parts).map(([material, amount]) => ({ material, parts: amount }));
  const melt = { logViscosity: log, surfaceTensionPercent: percent };
  const request: RemediesRequest = { glaze: { recipe, thicknessMm: 0.3 }, body, firing: { peakC: 1240 }, melt, target };
  const bench = layOut(request, incoming, 1);
  const now = bench.lines.map((line) => line.now);
  const start = bench.at(now)!;
  const shivers = start.probabilities.shivers > start.probabilities.crazesOnCooling + start.probabilities.crazesLater;
  const direction: 1 | -1 = shivers ? 1 : -1;
  const terms = { target, direction, low: now.map(() => 0), high: now.map((was) => was + 40), request, start };
  const holds = (x: readonly number[]) => {
    const there = bench.at(x);
    if (!there || there.sound < target) return false;
    const melts = Math.abs(there.logViscosity - start.logViscosity) <= log;
    return melts && Math.abs(there.tension! / start.tension! - 1) <= percent / 100;
  };
  return { bench, now, terms, holds };
}

/** Every change in whole steps with less effort than this, the least effort first. */
function changesBelow(effort: number, now: readonly number[], step: number): number[][] {
  const found: { change: number[]; effort: number }[] = [];
  const grow = (change: number[], spent: number) => {
    if (spent >= effort - 1e-9) return;
    if (change.length === now.length) {
      if (spent > 0) found.push({ change, effort: spent });
      return;
    }
    grow([...change, 0], spent);
    for (let by = step; spent + by + PER_MATERIAL < effort; by += step) {
      grow([...change, by], spent + by + PER_MATERIAL);
      if (by <= now[change.length]!) grow([...change, -by], spent + by + PER_MATERIAL);
    }
  };
  grow([], 0);
  return found.sort((a, b) => a.effort - b.effort).map(({ change }) => change);
}

describe("the least change", () => {
  const feldspathic = { "potash-feldspar": 50, whiting: 20, silica: 30 };
  // Independent: each search by trying every change in whole (or half) parts of less effort, by the full model.
  it.each([
    { name: "three lines", parts: feldspathic, target: 0.6, log: 0.6, percent: 20, step: 0.5 },
    { name: "a higher target", parts: feldspathic, target: 0.7, log: 0.8, percent: 20, step: 1 },
    {
      name: "kaolin may come in",
      parts: feldspathic,
      incoming: ["kaolin"],
      target: 0.7,
      log: 1.5,
      percent: 40,
      step: 1,
    },
    {
      name: "talc may come in, a tight melt",
      parts: feldspathic,
      incoming: ["talc"],
      target: 0.7,
      log: 0.3,
      percent: 8,
      step: 1,
    },
    {
      name: "one that shivers",
      parts: { petalite: 60, silica: 20, whiting: 10, talc: 10 },
      body: { class: "cristobalite-stoneware" },
      target: 0.6,
      log: 0.5,
      percent: 5,
      step: 1,
    },
  ])("is never worse than trying every change: $name", ({ step, ...asked }) => {
    const { bench, now, terms, holds } = small(asked);
    const found = leastChange(bench, LEAST_OF_ALL, terms, solve)!;
    expect(found.reaches).toBe(true);
    expect(holds(found.x)).toBe(true);
    const effort = effortOf(now, found.x, FOR_THE_SCALES);
    const changes = changesBelow(effort, now, step);
    expect(changes.length).toBeGreaterThan(50);
    const better = changes.find((change) => holds(now.map((parts, j) => parts + change[j]!)));
    expect(better).toBeUndefined();
  });

  it("moves few materials by amounts worth weighing, and not absurdly more parts than the fewest parts that do", () => {
    const request = { ...THAW_ON_RED_STONEWARE, melt: { logViscosity: 0.4, surfaceTensionPercent: 8 }, target: 0.6 };
    const bench = layOut(request, USUAL, 1);
    const now = bench.lines.map((line) => line.now);
    const start = bench.at(now)!;
    const terms = {
      target: 0.6,
      direction: -1 as const,
      low: now.map(() => 0),
      high: now.map((x) => x + 40),
      request,
      start,
    };
    const few = leastChange(bench, LEAST_OF_ALL, terms, solve)!;
    const fewestParts = leastChange(bench, LEAST_OF_ALL, terms, solve, { least: 0, perMaterial: 0 })!;
    expect(few.reaches && fewestParts.reaches).toBe(true);
    const [a, b] = [materialsMovedOf(now, few.x), materialsMovedOf(now, fewestParts.x)];
    expect(a).toBeLessThanOrEqual(MOST_MOVES);
    expect(a).toBeLessThan(b);
    few.x.forEach((parts, j) => {
      const change = Math.abs(parts - now[j]!);
      if (change > 1e-6) expect(change).toBeGreaterThanOrEqual(LEAST_CHANGE - 1e-6);
    });
    // Derived: the one with less effort may move more parts by no more than what the saved materials count.
    expect(few.moved).toBeLessThanOrEqual(fewestParts.moved + PER_MATERIAL * (b - a) + 1e-6);
    expect(few.moved).toBeLessThanOrEqual(MOST_MOVED);
  });
});

describe("effort", () => {
  it("counts parts and materials, as in the docstrings", () => {
    expect(movedOf([50, 30], [50, 36])).toBe(6);
    expect(materialsMovedOf([50, 30], [50, 36])).toBe(1);
    expect(effortOf([50, 30, 20], [50, 36, 18], FOR_THE_SCALES)).toBe(12);
  });
});

describe("choices of few moves", () => {
  it("are the best there are, by branch and bound (an independent way to the same programme)", async () => {
    const highs = await loadHighs();
    let compared = 0;
    // Programmes of the shape that a round has: one row to meet, two to stay within, a cap, drawn from a fixed sequence.
    let seed = 7;
    const next = () => {
      seed = (seed * 16807) % 2147483647;
      return seed / 2147483647;
    };
    for (let k = 0; k < 25; k++) {
      const n = 3 + (k % 4);
      const both = (weights: readonly number[]) => [...weights, ...weights.map((w) => -w), 0];
      const slopes = Array.from({ length: n }, () => next() * 4 - 3);
      const melt = Array.from({ length: n }, () => (next() - 0.5) * 0.1);
      const open = Number.POSITIVE_INFINITY;
      const program: LinearProgram = {
        cost: [...Array(2 * n).fill(1), 0],
        low: Array(2 * n + 1).fill(0),
        high: [...Array.from({ length: 2 * n }, () => 40), 0],
        rows: [
          { weights: both(slopes), low: -open, high: -10 - 30 * next() },
          { weights: both(melt), low: -0.3, high: 0.3 },
          { weights: [...Array(2 * n).fill(1), 0], low: -open, high: MOST_MOVED },
        ],
      };
      const rooms = Array.from({ length: n }, () => ({
        up: [0, 40] as const,
        down: [0, k % 3 === 0 ? 0 : 20] as const,
      }));
      rooms.forEach(({ down }, j) => {
        program.high[n + j] = down[1];
      });
      const best = leastEffortByBranching(highs, program, rooms, FOR_THE_SCALES, MOST_MOVES);
      const [first] = fewMoves(program, rooms, FOR_THE_SCALES, 1);
      if (best === null) expect(first).toBeUndefined();
      else {
        expect(first!.effort).toBeCloseTo(best, 5);
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(10);
  });

  it("worked by hand (derived, arithmetic)", () => {
    // Ten are needed. Line 0 brings 1 a part; lines 1 and 2 bring 2 a part, but may move 3 parts at most.
    const weights = [-1, -2, -2, 1, 2, 2, 0];
    const rows = [{ weights, low: Number.NEGATIVE_INFINITY, high: -10 }];
    const program = { cost: [1, 1, 1, 1, 1, 1, 0], low: Array(7).fill(0), high: [40, 3, 3, 0, 0, 0, 0], rows };
    const rooms = [40, 3, 3].map((most) => ({ up: [0, most] as const, down: [0, 0] as const }));
    const all = fewMoves(program, rooms, FOR_THE_SCALES, 2);
    const effort = (...lines: number[]) =>
      all.find(({ moves }) => moves.map(({ line }) => line).join() === lines.join())?.effort;
    // Five parts between lines 1 and 2, and two materials.
    expect(all[0]!.effort).toBeCloseTo(5 + 2 * 2, 9);
    expect(effort(1, 2)).toBeCloseTo(5 + 2 * 2, 9);
    // Three of line 1 leave four to line 0; line 0 by itself takes ten.
    expect(effort(0, 1)).toBeCloseTo(3 + 4 + 2 * 2, 9);
    expect(effort(0)).toBeCloseTo(10 + 2, 9);
    // Half a part of line 0 saves a quarter of a part, and is one material more.
    expect(effort(0, 1, 2)).toBeCloseTo(0.5 + 4.75 + 2 * 3, 9);
  });
});
