import { describe, expect, it } from "vitest";
import { findRemedies, type LinearProgram, type RemediesRequest, solveLinear } from "../../api/engine/advice/index.ts";
import { THAW_ON_RED_STONEWARE } from "../../api/schemas/larch-lane.ts";
import { asSolver, loadHighs } from "../support/highs.ts";
import { SMALL } from "../support/small-misfit.ts";

const open = Number.POSITIVE_INFINITY;

describe("the solver", () => {
  it("solves what is worked by hand (derived, arithmetic)", () => {
    const sum = { weights: [1, 1], low: 3, high: open };
    const difference = { weights: [1, -1], low: -open, high: 1 };
    const [x, y] = solveLinear({ cost: [1, 2], low: [0, 0], high: [9, 9], rows: [sum, difference] })!;
    expect(x).toBeCloseTo(2, 9);
    expect(y).toBeCloseTo(1, 9);
    // The docstring's.
    const three = { weights: [1, 1], low: 3, high: 3 };
    expect(solveLinear({ cost: [1, 2], low: [0, 0], high: [9, 9], rows: [three] })).toEqual([3, 0]);
    // Low ends away from 0, on either side of it.
    expect(solveLinear({ cost: [2, 1], low: [0.5, -2], high: [9, 9], rows: [three] })).toEqual([0.5, 2.5]);
    expect(solveLinear({ cost: [1, 2], low: [-1, -2], high: [4, open], rows: [three] })).toEqual([4, -1]);
  });

  it("gives nothing where nothing can be, or where there is no end", () => {
    const between = { weights: [1], low: 2, high: 3 };
    expect(solveLinear({ cost: [1], low: [0], high: [1], rows: [between] })).toBeNull();
    expect(solveLinear({ cost: [1], low: [2], high: [1], rows: [] })).toBeNull();
    expect(solveLinear({ cost: [-1], low: [0], high: [open], rows: [] })).toBeNull();
  });

  // Huangfu & Hall 2018: HiGHS, a solver of another kind (revised simplex) by other hands.
  it("does as well as HiGHS on every programme of these searches", async () => {
    const reference = asSolver(await loadHighs());
    const misfits: RemediesRequest[] = [
      SMALL,
      THAW_ON_RED_STONEWARE,
      { ...THAW_ON_RED_STONEWARE, melt: { logViscosity: 0.5, surfaceTensionPercent: 8 }, target: 0.6 },
      { ...THAW_ON_RED_STONEWARE, forbid: ["silica"], seger: { B2O3: { max: 0.1 } } },
      { ...THAW_ON_RED_STONEWARE, body: { expansion: { value: 4.5, rangeC: [20, 500], plusMinus: 0.2 } } },
    ];
    let solved = 0;
    let impossible = 0;
    const compared = (program: LinearProgram) => {
      const [ours, theirs] = [solveLinear(program), reference(program)];
      if (ours === null || theirs === null) {
        impossible++;
        expect([ours, theirs]).toEqual([null, null]);
        return null;
      }
      solved++;
      const cost = (x: readonly number[]) => program.cost.reduce((sum, each, j) => sum + each * x[j]!, 0);
      expect(Math.abs(cost(ours) - cost(theirs))).toBeLessThan(1e-6 * (1 + Math.abs(cost(theirs))));
      for (const { weights, low, high } of program.rows) {
        const sum = weights.reduce((all, weight, j) => all + weight * ours[j]!, 0);
        const slack = 1e-7 * (1 + Math.max(...weights.map(Math.abs)));
        expect(sum).toBeGreaterThan(low - slack);
        expect(sum).toBeLessThan(high + slack);
      }
      return ours;
    };
    for (const request of misfits) findRemedies(request, compared);
    expect(solved).toBeGreaterThan(500);
    expect(impossible).toBeGreaterThan(100);
  });
});
