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
  it("its median is 0", () => {
    close(studentQuantile(0.5, 7), 0, {
      abs: 1e-7,
      why: "where the incomplete beta nears 1, its last digits are lost",
    });
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

type Bar = Parameters<typeof measureShrinkage>[0]["bars"][number];
const interval = ({ low, value, high }: { low: number; value: number; high: number }) => [low, value, high];
/** Bars of 100 mm that shrink by so many per cent. */
const barsOf = (percents: number[], more: Partial<Bar> = {}): Bar[] =>
  percents.map((percent) => ({ plastic: 100, fired: 100 - percent, ...more }));

// Derived from mean ± t s/√n, mean ± t s √(1 + 1/n) and s √((n − 1)/χ²), with t and χ² from the tables above.
describe("what a few bars tell", () => {
  it("five bars: mean, next piece and spread, both ends", () => {
    const { total } = measureShrinkage({ bars: barsOf([12, 12.5, 12, 11.5, 12]) });
    // 2.1318 · 0.35355/√5 = 0.3371; · √1.2 = 0.8256; 0.35355 · √(4/9.4877) and · √(4/0.71072).
    expect(interval(total!.mean)).toEqual([11.66, 12, 12.34]);
    expect(interval(total!.nextPiece)).toEqual([11.17, 12, 12.83]);
    expect(interval(total!.spread!)).toEqual([0.23, 0.354, 0.839]);
    expect(total?.message).toBe(
      "Total shrinkage is 12 % of plastic length; nine times in ten the clay's own figure lies between 11.7 and 12.3 %, " +
        "from 5 bars. 1 bar more would bring that to ±0.3 points.",
    );
    expect([total?.bars, total?.outliers, total?.withoutOutliers]).toEqual([5, [], null]);
  });

  it("one bar: 0.3 points from piece to piece are assumed, and the ruler's half millimetre added", () => {
    const { total } = measureShrinkage({ bars: barsOf([12]) });
    // A reading is even over one division, two make √(2/12) · 0.5 mm = 0.2041; √(0.3² + 0.2041²) · 1.6449 = 0.5968.
    expect(interval(total!.mean)).toEqual([11.4, 12, 12.6]);
    // 0.5968 · √2 = 0.8441.
    expect(interval(total!.nextPiece)).toEqual([11.16, 12, 12.84]);
    expect(total?.spread).toBeNull();
    // A ruler of 1 mm: √(0.3² + 0.4082²) · 1.6449 = 0.8333.
    expect(interval(measureShrinkage({ bars: barsOf([12]), readTo: "1 mm" }).total!.mean)).toEqual([11.17, 12, 12.83]);
  });

  it("bars alike tell no more than the ruler can: finer on a long bar, or with a finer ruler", () => {
    const five = (request: object = {}, length = 100) =>
      measureShrinkage({
        bars: Array.from({ length: 5 }, () => ({ plastic: length, fired: 0.88 * length })),
        ...request,
      }).total!;
    // 2.1318/√5 = 0.9534 times 0.2041, 0.1021 and 0.0408.
    expect(interval(five().mean)).toEqual([11.81, 12, 12.19]);
    expect(interval(five({}, 200).mean)).toEqual([11.9, 12, 12.1]);
    expect(interval(five({ readTo: "0.1 mm" }).mean)).toEqual([11.96, 12, 12.04]);
    expect(five().moreBars).toBe(0);
    expect(five().message).not.toContain("more would bring");
  });

  it("bars of several lengths are read as their mean length is", () => {
    const bars = [50, 150].map((plastic) => ({ plastic, fired: 0.88 * plastic }));
    // 6.3138 · 0.2041/√2 = 0.9113.
    expect(interval(measureShrinkage({ bars }).total!.mean)).toEqual([11.09, 12, 12.91]);
  });

  it("how many more bars a nearer mean takes", () => {
    const bars = barsOf([12, 12.5, 12, 11.5, 12]);
    const more = (withinPercent: number) => measureShrinkage({ bars, withinPercent }).total!;
    // t of 35 degrees 1.690 · 0.35355/√36 = 0.0996; of 34 degrees 1.691 · 0.35355/√35 = 0.1011.
    expect(more(0.1).moreBars).toBe(31);
    expect(more(0.1).message).toContain("31 bars more would bring that to ±0.1 points.");
    // 0.3371 is near enough.
    expect(more(0.34).moreBars).toBe(0);
    // (1.645 · 0.35355/0.01)² is 3382: beyond a thousand nobody is sent.
    expect(more(0.01).moreBars).toBe(995);
    // One bar tells no spread, so two at least are wanted: t of one degree 6.314 · 0.3629/√2 = 1.62.
    expect(measureShrinkage({ bars: barsOf([12]), withinPercent: 5 }).total?.moreBars).toBe(1);
  });
});

// Two-sided limits at 5 % as tabled after Grubbs 1969 (from memory): 1.481 of 4, 2.02 of 7, 2.355 of 11, 2.412 of 12.
describe("bars that stand apart", () => {
  const outliers = (...percents: number[]) => {
    const { total } = measureShrinkage({ bars: barsOf(percents) });
    return total!.outliers.map(({ name, percent }) => `${name} ${percent}`);
  };
  it.each<[string, number[], string[]]>([
    // Mean 12.75, s 1.5: G = 1.5.
    ["one of four, the highest", [12, 12, 12, 15], ["bar 4 15"]],
    ["one of four, the first", [15, 12, 12, 12], ["bar 1 15"]],
    ["one of four, the lowest", [12, 9, 12, 12], ["bar 2 9"]],
    // Mean 12.5, s 0.577: G = 0.87.
    ["none of four that scatter", [12, 13, 12, 13], []],
    ["none of three", [12, 12, 15], []],
    ["none that are alike", [12, 12, 12, 12], []],
    // 18: G = 5/2.236 = 2.24; 13 would be next, but a quarter of seven is one.
    ["at most a quarter", [12, 12, 12, 12, 12, 13, 18], ["bar 7 18"]],
    // 16: G = 3.5/1.25 = 2.81; then 14: G = 1.82/0.61 = 2.99; then none.
    [
      "one after another, the farthest first",
      [12.1, 14, 11.9, 12, 12.1, 11.9, 12, 12.1, 16, 11.9, 12.1, 11.9],
      ["bar 9 16", "bar 2 14"],
    ],
  ])("%s", (_, percents, expected) => expect(outliers(...percents)).toEqual(expected));

  it("stay in the mean, and the mean without them is told beside it", () => {
    const { total } = measureShrinkage({ bars: barsOf([12, 12, 12, 15]) });
    expect(total?.mean.value).toBe(12.75);
    // Three bars alike: 2.920 · 0.2041/√3 = 0.3441.
    expect(interval(total!.withoutOutliers!)).toEqual([11.66, 12, 12.34]);
    expect(total?.outliers[0]?.message).toContain("bar 4 gives 15 %, the others 12 % on average.");
  });
});

// Welch: difference ± t √(s₁²/n₁ + s₂²/n₂), degrees of freedom after Welch and Satterthwaite (derived below).
describe("height less width", () => {
  const compare = (up: number[], across: number[], readTo = "0.1 mm") =>
    measureShrinkage({ bars: [...barsOf(up, { direction: "height" }), ...barsOf(across)], readTo }).heightLessWidth;

  it("of two and four bars whose means are equally well known: three degrees", () => {
    // s² 0.08/2 = 0.04 and 0.16/4 = 0.04; 0.08²/(0.04²/1 + 0.04²/3) = 3; 2.3534 · √0.08 = 0.6656.
    const less = compare([10, 10.4], [12.6, 11.8, 11.8, 11.8]);
    expect(interval(less!.difference)).toEqual([-2.47, -1.8, -1.13]);
    expect(less?.difference.unit).toBe("points");
    expect(less?.message).toContain("Height shrinks 1.8 points less than width.");
  });

  it("of three and three bars of one scatter: four degrees", () => {
    // s² 0.04/3 twice; 2.1318 · √0.02667 = 0.3481.
    const more = compare([14, 14.4, 14.2], [12, 12.4, 12.2]);
    expect(interval(more!.difference)).toEqual([1.65, 2, 2.35]);
    expect(more?.message).toContain("Height shrinks 2 points more than width.");
  });

  it("of bars alike: what the ruler leaves open, two degrees", () => {
    // 0.2041² = 0.04167, halved twice and added: 2.920 · 0.2041 = 0.5960.
    expect(interval(compare([10, 10], [12, 12], "0.5 mm")!.difference)).toEqual([-2.6, -2, -1.4]);
    const alike = compare([12, 12.2], [12.1, 12.3]);
    expect(alike?.message).toBe("Height and width shrink alike, as far as these bars can tell.");
  });

  it("needs two of each that were fired", () => {
    expect(compare([10], [12, 12, 12])).toBeNull();
    expect(compare([10, 10, 10], [12])).toBeNull();
    expect(compare([], [12, 12])).toBeNull();
    const dry = { plastic: 100, dry: 94, direction: "height" as const };
    expect(measureShrinkage({ bars: [...barsOf([12, 12]), dry, dry] }).heightLessWidth).toBeNull();
  });
});

// Derived: A 3, 4 and 5 %: 4 ± 2.920 · 1/√3; of one bar 15 % either way (from memory).
describe("absorption of several bars", () => {
  const of = (...weights: Bar["weights"][]) =>
    measureShrinkage({ bars: weights.map((one) => ({ plastic: 100, fired: 88, ...(one ? { weights: one } : {}) })) })
      .absorption!;
  it("has the interval of its mean, never below nothing", () => {
    const three = of({ dryG: 100, soakedG: 103 }, { dryG: 100, soakedG: 104 }, { dryG: 100, soakedG: 105 });
    expect(interval(three.waterAbsorption)).toEqual([2.31, 4, 5.69]);
    expect(three.bars).toBe(3);
    expect(interval(of({ dryG: 100, soakedG: 103 }).waterAbsorption)).toEqual([2.55, 3, 3.45]);
    // 4 ± 6.314 · 1.4142/√2 = 6.31.
    expect(interval(of({ dryG: 100, soakedG: 103 }, { dryG: 100, soakedG: 105 }).waterAbsorption)).toEqual([
      0, 4, 10.31,
    ]);
  });
  it("takes porosity and density from the bars that were hung in water", () => {
    const two = of({ dryG: 100, soakedG: 104 }, undefined, { dryG: 100, soakedG: 103, suspendedG: 58 });
    expect(two.bars).toBe(2);
    expect(two.waterAbsorption.value).toBe(3.5);
    // 300/45 = 6.667 and 99.8/45 = 2.2178, 15 % either way.
    expect(interval(two.apparentPorosity!)).toEqual([5.67, 6.67, 7.67]);
    expect(interval(two.bulkDensity!)).toEqual([1.89, 2.22, 2.55]);
    expect(of({ dryG: 100, soakedG: 100 }).waterAbsorption.value).toBe(0);
  });
});
