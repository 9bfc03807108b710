import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readEven, readPoints, tabulate } from "../../api/engine/numeric/interpolate.ts";
import { larger, smaller } from "../../api/engine/numeric/larger.ts";
import { GENERATING_VECTOR, LATTICE_POINTS, latticePoints, seededRandom } from "../../api/engine/numeric/lattice.ts";
import { columnScales, huberFit } from "../../api/engine/numeric/least-squares.ts";
import { cholesky, choleskySolve, invertLower } from "../../api/engine/numeric/linear-algebra.ts";
import { normalQuantile } from "../../api/engine/numeric/normal.ts";
import { NormalEquations } from "../../api/engine/numeric/normal-equations.ts";
import { ascending, middle90, middle90Of, selectRanks } from "../../api/engine/numeric/quantiles.ts";
import { close } from "../support/close.ts";

describe("normal quantile", () => {
  // Printed tables of the normal distribution (Abramowitz & Stegun 1964, table 26.5; from memory).
  it.each([
    [0.5, 0],
    [0.975, 1.959963984540054],
    [0.95, 1.6448536269514722],
    [0.9, 1.2815515655446004],
    [0.001, -3.090232306167813],
    [1e-9, -5.997807015007686],
  ])("Φ⁻¹(%d) = %d", (p, z) => close(normalQuantile(p), z, { abs: 1e-12 }));

  /** Φ(−z) by its continued fraction (Abramowitz & Stegun 1964, 26.2.14; from memory), good from z = 2 on. */
  const tail = (z: number) => {
    let fraction = z;
    for (let k = 400; k >= 1; k--) fraction = z + k / fraction;
    return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI) / fraction;
  };
  it.each([1e-300, 1e-100, 1e-20, 1e-12, 1.3e-11, 1.5e-11, 1e-10, 1e-6, 0.01])("is undone by the tail of %d", (p) => {
    // An error of 1e-15 in z tells z² times as much in the tail.
    close(tail(-normalQuantile(p)), p, { rel: 1e-11 });
  });
  it("mirrors at one half, and has no end at 0 and 1 (definition)", () => {
    for (const p of [0.01, 0.07, 0.08, 0.3]) close(normalQuantile(1 - p), -normalQuantile(p), { abs: 1e-13 });
    expect([normalQuantile(0), normalQuantile(1)]).toEqual([Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]);
  });
});

describe("lattice", () => {
  it("has the generating vector that component-by-component search finds (Nuyens & Cools 2006)", () => {
    const omega = (x: number) => 2 * Math.PI ** 2 * (x * x - x + 1 / 6);
    const term = (j: number, k: number, z: number) =>
      1 + omega(((k * z) % LATTICE_POINTS) / LATTICE_POINTS) / (j + 1) ** 2;
    const product = Array.from({ length: LATTICE_POINTS }, (_, k) => term(0, k, 1));
    const found = [1];
    for (let j = 1; j < GENERATING_VECTOR.length; j++) {
      let best = 0;
      let least = Number.POSITIVE_INFINITY;
      for (let z = 1; z < LATTICE_POINTS / 2; z += 2) {
        let sum = 0;
        for (let k = 0; k < LATTICE_POINTS; k++) sum += product[k]! * term(j, k, z);
        if (sum < least - 1e-9) [best, least] = [z, sum];
      }
      found.push(best);
      for (let k = 0; k < LATTICE_POINTS; k++) product[k]! *= term(j, k, best);
    }
    expect(found).toEqual(GENERATING_VECTOR);
  });
  it("spaces every single dimension evenly", () => {
    for (const column of latticePoints(16, 7)) {
      const sorted = [...column].sort((a, b) => a - b);
      for (let i = 1; i < sorted.length; i++) close(sorted[i]! - sorted[i - 1]!, 1 / LATTICE_POINTS, { abs: 1e-9 });
    }
  });
  it("integrates a product exactly enough: ∫∏(1 + (x − ½)) = 1", () => {
    const columns = latticePoints(5, 3);
    let sum = 0;
    for (let i = 0; i < LATTICE_POINTS; i++) sum += columns.reduce((p, column) => p * (0.5 + column[i]!), 1);
    close(sum / LATTICE_POINTS, 1, { abs: 0.01, why: "a plain random sample of 1024 errs by 0.02" });
  });
});

describe("shifts of the lattice", () => {
  /** The formulas beside seededRandom, in whole numbers of any length. */
  const byFormula = (seed: bigint, count: number) => {
    const low = (n: bigint) => BigInt.asUintN(32, n);
    return Array.from({ length: count }, (_, k) => {
      let m = low(seed + BigInt(k + 1) * 0x9e3779b9n);
      m ^= m >> 16n;
      m = low(m * 0x85ebca6bn);
      m ^= m >> 13n;
      m = low(m * 0xc2b2ae35n);
      return Number(m ^ (m >> 16n)) / 2 ** 32;
    });
  };
  it.each([0, 1, 7, 4294967295, -3])("are the numbers of the documented generator, seed %d", (seed) => {
    const random = seededRandom(seed);
    expect(Array.from({ length: 50 }, random)).toEqual(byFormula(BigInt(seed), 50));
  });
  it("come into the points as u = frac(k z/N + shift + 1/2N)", () => {
    const shifts = byFormula(5n, 20);
    latticePoints(20, 5).forEach((column, j) => {
      for (const k of [0, 1, 500, 1023]) {
        const u = (k * GENERATING_VECTOR[j]!) / 1024 + shifts[j]! + 1 / 2048;
        close(column[k]!, u % 1, { abs: 1e-9 });
      }
    });
  });
  it("are kept for the next call of the same seed, and of four seeds only", () => {
    const first = latticePoints(2, 101);
    expect(latticePoints(2, 101)).toBe(first);
    for (const seed of [102, 103, 104]) latticePoints(2, seed);
    expect(latticePoints(2, 101)).toBe(first);
    latticePoints(2, 105);
    expect(latticePoints(2, 101)).not.toBe(first);
    expect(latticePoints(2, 101)).toEqual(first);
  });
  it("are refused for more dimensions than the vector has", () => {
    expect(latticePoints(20, 1)).toHaveLength(20);
    expect(latticePoints(3, 1)).toHaveLength(3);
    expect(() => latticePoints(21, 1)).toThrow(RangeError);
  });
});

describe("tables and quantiles", () => {
  it("carries the first segment on before the start (straight lines by hand)", () => {
    const table = { start: 10, perStep: 0.1, values: Float64Array.of(0, 1, 4) };
    expect([readEven(table, -10), readEven(table, 5), readEven(table, 10)]).toEqual([-2, -0.5, 0]);
    expect([readEven(table, 20), readEven(table, 25), readEven(table, 30)]).toEqual([1, 2.5, 4]);
    const points: [number, number][] = [
      [0, 0],
      [10, 1],
      [30, 5],
    ];
    expect([-10, 0, 5, 10, 30, 40].map((at) => readPoints(points, at))).toEqual([-1, 0, 0.5, 1, 5, 7]);
  });
  it("tabulates from the first to the last abscissa", () => {
    expect(tabulate(20, 120, 50, (t) => t)).toEqual({ start: 20, perStep: 0.02, values: Float64Array.of(20, 70, 120) });
  });
  it("puts what is smaller before a rank and what is larger after it, equal values or not (definition)", () => {
    const samples = fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 1, maxLength: 60 });
    fc.assert(
      fc.property(samples, fc.array(fc.nat(59), { maxLength: 5 }), (sample, wanted) => {
        const ranks = [...new Set(wanted.filter((rank) => rank < sample.length))].sort((a, b) => a - b);
        const values = Float64Array.from(sample);
        const sorted = Float64Array.from(sample).sort();
        selectRanks(values, ranks);
        for (const rank of ranks) expect(values[rank]).toBe(sorted[rank]);
        expect([...values].sort((a, b) => a - b)).toEqual([...sorted]);
      }),
    );
  });
  it("reads every so many values: 0, 2, … 80 has 4, 40 and 76 (rank p(n − 1))", () => {
    const values = Float64Array.from({ length: 81 }, (_, i) => (i % 2 ? 1000 : i));
    expect(middle90(values, 2)).toEqual({ low: 4, value: 40, high: 76 });
    expect(middle90Of(values, ascending(values, 2))).toEqual({ low: 4, value: 40, high: 76 });
    expect(values[1]).toBe(1000);
  });
  it("reads between points and carries ends on", () => {
    expect(readEven({ start: 0, perStep: 0.1, values: Float64Array.of(0, 1, 4) }, 15)).toBe(2.5);
    expect(readEven({ start: 0, perStep: 0.1, values: Float64Array.of(0, 1, 4) }, 30)).toBe(7);
    expect(
      readPoints(
        [
          [0, 0],
          [10, 1],
          [30, 5],
        ],
        20,
      ),
    ).toBe(3);
    expect(tabulate(0, 100, 50, (t) => t * t).values[2]).toBe(10000);
  });
  it("finds ranks as sorting does", () => {
    const values = Float64Array.from({ length: 500 }, (_, i) => (i * 7919) % 503);
    const sorted = Float64Array.from(values).sort();
    const ranks = [0, 3, 250, 251, 499];
    selectRanks(values, ranks);
    for (const rank of ranks) expect(values[rank]).toBe(sorted[rank]);
    expect(middle90(Float64Array.from({ length: 101 }, (_, i) => i))).toEqual({ low: 5, value: 50, high: 95 });
  });
});

describe("order of a sample", () => {
  // Expected: the sort of the language itself.
  it("is that of a sort, whatever the sample and the stride, equal values in their own order", () => {
    const numbers = fc.double({ min: -1e9, max: 1e9, noNaN: true });
    const samples = fc.array(fc.oneof(numbers, fc.constantFrom(0, 1, 400)), { minLength: 1, maxLength: 300 });
    fc.assert(
      fc.property(samples, fc.integer({ min: 1, max: 5 }), (sample, stride) => {
        const values = Float64Array.from(sample);
        const places = sample.map((_, i) => i).filter((i) => i % stride === 0);
        expect([...ascending(values, stride)]).toEqual(places.sort((a, b) => sample[a]! - sample[b]! || a - b));
        expect([...values]).toEqual(sample);
      }),
    );
    expect([...ascending(Float64Array.of(3, 1, 2))]).toEqual([1, 2, 0]);
  });

  it("gives the same middle as picking ranks", () => {
    const values = Float64Array.from({ length: 1024 }, (_, i) => Math.sin(i * i));
    expect(middle90Of(values, ascending(values))).toEqual(middle90(values));
    expect(middle90Of(values, ascending(values, 4))).toEqual(middle90(values, 4));
  });
});

describe("symmetric systems", () => {
  // L·Lᵀ multiplied out by hand; above the diagonal of the matrix stands what must not be read.
  const l = Float64Array.of(2, 0, 0, 6, 1, 0, -8, 5, 3);
  const a = Float64Array.of(4, 99, 99, 12, 37, 99, -16, -43, 98);
  it("are factored, solved and their factor turned round", () => {
    expect(cholesky(a, 3)).toEqual(l);
    // A·(1, 2, 3) = (4 + 24 − 48, 12 + 74 − 129, −16 − 86 + 294)
    const x = choleskySolve(l, Float64Array.of(-20, -43, 192));
    x.forEach((value, i) => {
      close(value, i + 1, { abs: 1e-12 });
    });
    // By hand: 1/2; −6·½/1; (8·½ − 5·(−3))/3 = 19/3; and so on.
    const inverse = invertLower(l, 3);
    [0.5, 0, 0, -3, 1, 0, 19 / 3, -5 / 3, 1 / 3].forEach((value, i) => {
      close(inverse[i]!, value, { abs: 1e-12 });
    });
  });
  it("are refused, with the row, where not positive definite", () => {
    expect(() => cholesky(Float64Array.of(1, 0, 2, 1), 2)).toThrow("row 1");
    expect(() => cholesky(Float64Array.of(1, 0, 1, 1), 2)).toThrow(RangeError);
  });
});

describe("least squares", () => {
  const plain = { threshold: 1, ridge: 0 };
  const constant = (rows: number) => ({ rows, columns: 1, values: new Float64Array(rows).fill(1) });
  const columns2 = (x: number[]) => ({
    rows: x.length,
    columns: 2,
    values: Float64Array.from(x.flatMap((value) => [1, value])),
  });

  it("lets an outlier pull with the threshold only: of 0, 0, 0 and 10, 3m = 1 (Huber 1964, by hand)", () => {
    const fit = huberFit(constant(4), Float64Array.of(0, 0, 0, 10), plain);
    close(fit.coefficients[0]!, 1 / 3, { abs: 1e-6 });
    expect([...fit.weights.subarray(0, 3)]).toEqual([1, 1, 1]);
    close(fit.weights[3]!, 3 / 29, { abs: 1e-6 });
    expect(fit.converged).toBe(true);
    // Counting twice it pulls twice: 3m = 2.
    const twice = huberFit(constant(4), Float64Array.of(0, 0, 0, 10), {
      ...plain,
      weights: Float64Array.of(1, 1, 1, 2),
    });
    close(twice.coefficients[0]!, 2 / 3, { abs: 1e-6 });
    close(twice.weights[3]!, 6 / 28, { abs: 1e-6 });
    // Twice the threshold: 3m = 2 again, and the outlier counts 2/(10 − 2/3).
    const wide = huberFit(constant(4), Float64Array.of(0, 0, 0, 10), { threshold: 2, ridge: 0 });
    close(wide.coefficients[0]!, 2 / 3, { abs: 1e-6 });
    close(wide.weights[3]!, 6 / 28, { abs: 1e-6 });
  });
  it("tells how many rounds it took, and whether it settled", () => {
    const y = Float64Array.of(0, 0, 0, 10);
    expect(huberFit(constant(4), y, { ...plain, rounds: 1 })).toMatchObject({ iterations: 1, converged: false });
    // The plain mean, 2.5, is the first round's; with a start the first round may be the last.
    close(huberFit(constant(4), y, { ...plain, rounds: 1 }).coefficients[0]!, 2.5, { abs: 1e-9 });
    const start = Float64Array.of(1 / 3);
    expect(huberFit(constant(4), y, { ...plain, start })).toMatchObject({ iterations: 1, converged: true });
    expect(huberFit(constant(4), y, { ...plain, start: Float64Array.of(5) }).iterations).toBeGreaterThan(1);
    expect(huberFit(constant(2), Float64Array.of(1, 1), plain)).toMatchObject({ iterations: 2, converged: true });
    expect(huberFit(constant(2), Float64Array.of(1, 1), { ...plain, rounds: 0 }).coefficients).toEqual(
      Float64Array.of(0),
    );
  });
  it("finds a line, and shrinks its slope by 1 + ridge but not its height", () => {
    // x = ±1 about 0: Σx² = Σw = 2, so that (2 + 2·ridge)·b = Σxy = 2·3.
    const y = Float64Array.of(7, 13);
    const line = (ridge: number, x = 1, smallest = 0) =>
      huberFit(columns2([-x, x]), y, { threshold: 100, ridge, smallest }).coefficients;
    const free = line(0);
    close(free[0]!, 10, { abs: 1e-9 });
    close(free[1]!, 3, { abs: 1e-9 });
    close(line(0.5)[0]!, 10, { abs: 1e-9 });
    close(line(0.5)[1]!, 2, { abs: 1e-9 });
    // A tenth of the size costs the same while no floor is set; with one of 1: (0.02 + 2·0.01)·b = 0.6.
    close(line(0.5, 0.1)[1]!, 20, { abs: 1e-8 });
    close(line(0.01, 0.1, 1)[1]!, 15, { abs: 1e-8 });
  });
  it("sizes columns by their root mean square, with a floor, and 1 for none", () => {
    const design = { rows: 2, columns: 3, values: Float64Array.of(3, 0, 1, 4, 0, 1) };
    expect([...columnScales(design, 0)]).toEqual([Math.sqrt(12.5), 1, 1]);
    expect([...columnScales(design, 2)]).toEqual([Math.sqrt(12.5), 2, 2]);
  });
  it("gathers rows with weights and sizes, and pulls towards a centre: (Σw + p) b = Σwy + p c", () => {
    const equations = new NormalEquations(2);
    const ones = Float64Array.of(1, 2);
    equations.add(Float64Array.of(9, 1, 0, 9), 1, ones, 2, 10);
    equations.add(Float64Array.of(1, 0), 0, ones, 1, 4);
    equations.add(Float64Array.of(1, 1), 0, ones, 0, 1e9);
    equations.add(Float64Array.of(0, 4), 0, ones, 3, 6);
    expect(equations.total).toBe(6);
    // First: (3 + 5) b = 24 + 5·2; second, its entry halved to 2: (3·4 + 4) b = 3·2·6 − 4·1.
    const [b0, b1] = equations.solve(Float64Array.of(5, 4), Float64Array.of(2, -1));
    close(b0!, 34 / 8, { abs: 1e-12 });
    close(b1!, 2, { abs: 1e-12 });
    close(equations.solve(Float64Array.of(5, 4))[0]!, 3, { abs: 1e-12 });
    // Both at once, by hand: 2b + c = 5, b + 2c = 4 from rows (1, 0), (0, 1) and (1, 1) seeing 2, 1 and 3.
    const joined = new NormalEquations(2);
    for (const [row, y] of [
      [[1, 0], 2],
      [[0, 1], 1],
      [[1, 1], 3],
    ] as const)
      joined.add(Float64Array.from(row), 0, Float64Array.of(1, 1), 1, y);
    const [b, c] = joined.solve(new Float64Array(2));
    close(b!, 2, { abs: 1e-12 });
    close(c!, 1, { abs: 1e-12 });
  });
});

describe("larger and smaller", () => {
  it("are what their names say", () => {
    expect([larger(1, 2), larger(2, 1), smaller(1, 2), smaller(2, 1)]).toEqual([2, 2, 1, 1]);
  });
});
