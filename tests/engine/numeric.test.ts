import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readEven, readPoints, tabulate } from "../../api/engine/numeric/interpolate.ts";
import { larger, smaller } from "../../api/engine/numeric/larger.ts";
import { GENERATING_VECTOR, LATTICE_POINTS, latticePoints } from "../../api/engine/numeric/lattice.ts";
import { normalQuantile } from "../../api/engine/numeric/normal.ts";
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

describe("tables and quantiles", () => {
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

describe("larger and smaller", () => {
  it("are what their names say", () => {
    expect([larger(1, 2), larger(2, 1), smaller(1, 2), smaller(2, 1)]).toEqual([2, 2, 1, 1]);
  });
});
