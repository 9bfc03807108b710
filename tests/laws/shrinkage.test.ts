/** What must hold for any set of bars. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { measureShrinkage, thrownLength, totalShrinkage } from "../../api/engine/shrinkage/index.ts";
import { close } from "../support/close.ts";

const bar = fc
  .record({
    plastic: fc.double({ min: 20, max: 300, noNaN: true }),
    drying: fc.double({ min: 0.01, max: 0.1, noNaN: true }),
    firing: fc.double({ min: 0, max: 0.1, noNaN: true }),
  })
  .map(({ plastic, drying, firing }) => ({
    plastic,
    dry: plastic * (1 - drying),
    fired: plastic * (1 - drying) * (1 - firing),
  }));
const bars = fc.array(bar, { minLength: 1, maxLength: 12 });

describe("any bars", () => {
  it("give intervals that hold their value, and the next piece a wider one", () => {
    fc.assert(
      fc.property(bars, (set) => {
        const { drying, firing, total } = measureShrinkage({ bars: set });
        for (const figure of [drying!, firing!, total!]) {
          const { mean, nextPiece, spread, outliers } = figure;
          expect(mean.low <= mean.value && mean.value <= mean.high).toBe(true);
          expect(nextPiece.low).toBeLessThanOrEqual(mean.low);
          expect(nextPiece.high).toBeGreaterThanOrEqual(mean.high);
          if (spread) expect(spread.low <= spread.value && spread.value <= spread.high).toBe(true);
          expect(outliers.length).toBeLessThanOrEqual(set.length / 4);
        }
      }),
    );
  });

  it("do not care for units or order", () => {
    fc.assert(
      fc.property(bars, (set) => {
        const inches = set.map(({ plastic, dry, fired }) => ({
          plastic: { value: plastic / 25.4, unit: "in" as const },
          dry: `${(dry / 10).toFixed(9)} cm`,
          fired: `${fired.toFixed(9)} mm`,
        }));
        const one = measureShrinkage({ bars: set });
        const other = measureShrinkage({ bars: [...inches].reverse() });
        for (const key of ["drying", "firing", "total"] as const) {
          close(other[key]!.mean.value, one[key]!.mean.value, { abs: 0.011, why: "rounded to 0.01" });
          close(other[key]!.mean.high, one[key]!.mean.high, { abs: 0.011, why: "rounded to 0.01" });
        }
      }),
    );
  });

  it("give the total that drying and firing make, and throw then shrink returns the target", () => {
    fc.assert(
      fc.property(bar, fc.double({ min: 5, max: 500, noNaN: true }), (one, target) => {
        const { bars: read } = measureShrinkage({ bars: [one] });
        const [{ dryingPercent, firingPercent, totalPercent }] = read as [(typeof read)[0]];
        const total = totalShrinkage(dryingPercent! / 100, firingPercent! / 100);
        close(100 * total, totalPercent!, { abs: 0.016, why: "three figures rounded to 0.01" });
        close(thrownLength(target, total) * (1 - total), target, { rel: 1e-12 });
      }),
    );
  });
});

it("a bar misread by two points among ten is named, and sound bars are not", () => {
  const set = [12.1, 11.9, 12.0, 12.2, 11.8, 12.1, 12.0, 14.1, 11.9, 12.0].map((percent, i) => ({
    name: `bar ${i + 1}`,
    plastic: 100,
    fired: 100 - percent,
  }));
  const { total } = measureShrinkage({ bars: set });
  expect(total?.outliers.map(({ name }) => name)).toEqual(["bar 8"]);
  close(total?.withoutOutliers?.value, 12, { abs: 0.005 });
  const sound = set.filter(({ name }) => name !== "bar 8");
  expect(measureShrinkage({ bars: sound }).total?.outliers).toEqual([]);
});
