import { describe, expect, it } from "vitest";
import { batchFromSeger } from "../../api/engine/chemistry/index.ts";
import { nonNegativeFit } from "../../api/engine/chemistry/non-negative-fit.ts";

const near = (values: number[]) => values.map((value) => expect.closeTo(value, 9));

describe("least squares with no amount below nothing", () => {
  // Worked by hand (arithmetic). Columns are listed one by one; the sums that lead to each answer stand beside it.
  const cases: [string, number[][], number[], number[]][] = [
    ["one column: 6/3", [[3]], [6], [2]],
    ["nothing wanted", [[1, 0]], [0, 0], [0]],
    [
      "a column of nothing",
      [
        [0, 0],
        [1, 0],
      ],
      [2, 0],
      [0, 2],
    ],
    ["what cannot be met is left: (3 + 1)/2", [[1, 1]], [3, 1], [2]],
    // a − b = 9 and a − 10 b = 0. The second column pulls the wrong way until the first is in.
    [
      "two that oppose each other",
      [
        [1, 1],
        [-1, -10],
      ],
      [9, 0],
      [10, 1],
    ],
    // All of e1 + e2 − 0.1 e3: the sum of the three comes in first and must leave again.
    [
      "one that comes in and leaves",
      [
        [1, 1, 1],
        [1, 0, 0],
        [0, 1, 0],
      ],
      [1, 1, -0.1],
      [0, 1, 1],
    ],
    // The same beside a fourth axis, whose column comes in before.
    [
      "one that leaves from the middle",
      [
        [1, 1, 1, 0],
        [1, 0, 0, 0],
        [0, 1, 0, 0],
        [0, 0, 0, 1],
      ],
      [1, 1, -0.1, 9],
      [0, 1, 1, 9],
    ],
    // The second column is the first but for a hair, the third lifts the rest towards that hair: the hair counts for nothing: 10, and (0.5 + 3)/2.
    [
      "one that adds but a hair",
      [
        [1, 0, 0],
        [1, 1e-11, 0],
        [0, -1, 1],
      ],
      [10, -0.5, 3],
      [10, 0, 1.75],
    ],
  ];
  it.each(cases)("%s", (_what, columns, target, value) => {
    expect(nonNegativeFit(columns, target)).toMatchObject({ value: near(value), converged: true });
    // A unit a billion billion times as large is the same mixture.
    const small = nonNegativeFit(
      columns,
      target.map((t) => t * 1e-18),
    );
    expect(small.value.map((v) => v * 1e18)).toEqual(near(value));
  });

  it("takes a step for each column that comes in, and one to see that none is left", () => {
    const axes = Array.from({ length: 20 }, (_, i) => Array.from({ length: 20 }, (_, j) => Number(i === j)));
    const twenty = nonNegativeFit(
      axes,
      axes.map((_, i) => i + 1),
    );
    expect(twenty).toEqual({ value: near(axes.map((_, i) => i + 1)), iterations: 21, converged: true });
    expect(nonNegativeFit(axes.slice(0, 2), axes[0]!)).toMatchObject({ iterations: 2 });
    expect(nonNegativeFit(axes.slice(0, 2), axes[2]!)).toMatchObject({ iterations: 1, value: [0, 0] });
    expect(nonNegativeFit(axes.slice(0, 2), new Array(20).fill(0))).toMatchObject({ iterations: 1, value: [0, 0] });
  });
});

describe("a batch", () => {
  it("of which nothing is needed has no per cents, rather than no numbers", () => {
    const { lines, missing } = batchFromSeger({ B2O3: 1 }, [
      { formula: "CaCO3" },
      { material: "silica", name: "flint" },
    ]);
    expect(lines).toEqual([
      { label: "CaCO3", parts: 0, percent: 0 },
      { label: "silica", parts: 0, percent: 0 },
    ]);
    expect(missing).toEqual({ B2O3: 1 });
  });

  it("says what comes along unasked as well, such as the silica of wollastonite where only lime is wanted", () => {
    // CaO + SiO2 against CaO alone: least squares (x − 1)² + x² → x = 1/2 mol, 116.16/2 g
    const { lines, missing } = batchFromSeger({ CaO: 1 }, [{ formula: "CaSiO3" }]);
    expect(lines).toEqual([{ label: "CaSiO3", parts: expect.closeTo(58.08, 9), percent: 100 }]);
    expect(missing).toEqual({ SiO2: expect.closeTo(-0.5, 9), CaO: expect.closeTo(0.5, 9) });
  });
});
