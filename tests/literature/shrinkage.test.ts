/** Shrinkage by ASTM C326, and the statistics of a few bars, against printed figures. */
import { describe, expect, it } from "vitest";
import {
  chiSquareQuantile,
  dryingShrinkage,
  firingShrinkage,
  grubbsLimit,
  knownShrinkage,
  measureShrinkage,
  studentQuantile,
  thrownLength,
  totalShrinkage,
  volumeShrinkage,
} from "../../api/engine/shrinkage/index.ts";
import { close } from "../support/close.ts";

// ASTM C326: drying and total are shares of plastic length, firing of dry length (definitions from memory). The worked
// figures are arithmetic of those definitions, derived apart from this code; tolerance: half of the last digit.
describe("ASTM C326", () => {
  it("a bar of 100, 94.2 and 87.9 mm shrinks 5.8, 6.688 and 12.1 %", () => {
    close(100 * dryingShrinkage(100, 94.2), 5.8, { abs: 1e-9 });
    close(100 * firingShrinkage(94.2, 87.9), 6.688, { abs: 0.0005 });
    close(100 * dryingShrinkage(100, 87.9), 12.1, { abs: 1e-9 });
    const { drying, firing, total } = measureShrinkage({ bars: [{ plastic: 100, dry: 94.2, fired: 87.9 }] });
    expect([drying, firing, total].map((figure) => figure?.mean.value)).toEqual([5.8, 6.69, 12.1]);
    expect([drying, firing, total].map((figure) => figure?.basis)).toEqual([
      "plastic length",
      "dry length",
      "plastic length",
    ]);
  });
  it("6 % drying and 7 % firing are 12.58 % together, and 100 mm fired want 114.39 mm", () => {
    const total = totalShrinkage(0.06, 0.07);
    close(100 * total, 12.58, { abs: 0.005 });
    close(thrownLength(100, total), 114.39, { abs: 0.005 });
    close(100 * knownShrinkage({ dryingPercent: 6, firingPercent: 7 }).across.value, 12.58, { abs: 0.005 });
  });
  it("12 %: 90 mm fired want 102.27 mm, not 100.8", () => close(thrownLength(90, 0.12), 102.27, { abs: 0.005 }));
  it("13 % of length are 34.15 % of volume, and 350 ml fired want 531.5 ml", () => {
    close(100 * volumeShrinkage(0.13), 34.15, { abs: 0.005 });
    close(350 / (1 - volumeShrinkage(0.13)), 531.5, { abs: 0.05 });
  });
});

// Tables of the t distribution as printed in textbooks of statistics (three decimals, from memory).
describe("Student's t", () => {
  it.each([
    [1, 0.95, 6.314],
    [2, 0.95, 2.92],
    [4, 0.95, 2.132],
    [9, 0.95, 1.833],
    [29, 0.95, 1.699],
    [1, 0.975, 12.706],
    [4, 0.975, 2.776],
    [9, 0.975, 2.262],
    [30, 0.975, 2.042],
    [120, 0.975, 1.98],
    [9, 0.995, 3.25],
    [2, 0.995, 9.925],
  ])("%d degrees of freedom at %d: %d", (freedom, probability, expected) =>
    close(studentQuantile(probability, freedom), expected, { abs: 0.0005 }),
  );
  // Closed forms, derived: t of one degree is tan(π(p − ½)), of two (2p − 1)√(2/(4p(1 − p))).
  it.each([0.6, 0.75, 0.9, 0.95, 0.99, 0.999])("closed forms at %d", (p) => {
    close(studentQuantile(p, 1), Math.tan(Math.PI * (p - 0.5)), { rel: 1e-9 });
    close(studentQuantile(p, 2), (2 * p - 1) * Math.sqrt(2 / (4 * p * (1 - p))), { rel: 1e-9 });
    close(studentQuantile(1 - p, 7), -studentQuantile(p, 7), { rel: 1e-9 });
  });
});

// Tables of chi-square as printed in textbooks of statistics (from memory); two degrees: −2 ln(1 − p), derived.
describe("chi-square", () => {
  it.each([
    [1, 0.95, 3.841],
    [2, 0.95, 5.991],
    [9, 0.95, 16.919],
    [9, 0.05, 3.325],
    [30, 0.95, 43.773],
    [30, 0.05, 18.493],
  ])("%d degrees of freedom at %d: %d", (freedom, probability, expected) =>
    close(chiSquareQuantile(probability, freedom), expected, { abs: 0.0005 }),
  );
  it.each([0.01, 0.5, 0.99])("closed form at %d", (p) =>
    close(chiSquareQuantile(p, 2), -2 * Math.log(1 - p), { rel: 1e-9 }),
  );
});

// Two-sided limits at 5 % as tabled after Grubbs 1969 (from memory).
describe("Grubbs", () => {
  it.each([
    [4, 1.481],
    [5, 1.715],
    [7, 2.02],
    [10, 2.29],
    [20, 2.709],
  ])("%d bars: %d", (n, expected) =>
    close(grubbsLimit(n), expected, { abs: 0.001, why: "tables differ by one in the last digit" }),
  );
});

// ASTM C373 (formulas from memory), worked by hand: D 100 g, M 103 g, S 58 g.
it("absorption 3 %, porosity 6.67 %, density 2.218 g/cm3 from 100, 103 and 58 g", () => {
  const { absorption } = measureShrinkage({
    bars: [{ plastic: 100, fired: 88, weights: { dryG: 100, soakedG: 103, suspendedG: 58 } }],
  });
  close(absorption?.waterAbsorption.value, 3, { abs: 0.005 });
  close(absorption?.apparentPorosity?.value, 6.67, { abs: 0.005 });
  close(absorption?.bulkDensity?.value, 2.22, { abs: 0.005 });
});

// Hand-worked (derived): 12.0, 12.5, 12.0, 11.5, 12.0 % have mean 12, s = 0.35355; t 2.132 at 4 degrees.
it("five bars: 12.00 ± 0.34 %, the next piece ± 0.83", () => {
  const bars = [88, 87.5, 88, 88.5, 88].map((fired) => ({ plastic: 100, fired }));
  const { total } = measureShrinkage({ bars });
  close(total?.mean.value, 12, { abs: 1e-9 });
  close(total?.spread?.value, 0.354, { abs: 0.0005 });
  close(total!.mean.high - 12, 0.34, { abs: 0.005 });
  close(total!.nextPiece.high - 12, 0.83, { abs: 0.005 });
  // t(5 df) 2.015 · 0.35355/√6 = 0.291 ≤ 0.3: one bar more.
  expect(total?.moreBars).toBe(1);
});
