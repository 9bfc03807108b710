/** What must hold for any pot and any clay. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { crossing, workOutSizes } from "../../api/engine/sizes/index.ts";
import { close } from "../support/close.ts";

const percent = fc.double({ min: 1, max: 20, noNaN: true });
const mm = fc.double({ min: 30, max: 600, noNaN: true });

describe("any size", () => {
  it("thrown and shrunk returns the target, and every stage lies between", () => {
    fc.assert(
      fc.property(
        percent,
        percent,
        mm,
        fc.constantFrom("height", "rim", "gallery" as const),
        (across, up, target, part) => {
          const shrinkage = { percent: across, heightPercent: up, plusMinus: 0.5 };
          const [size] = workOutSizes({ shrinkage, fired: { [part]: target } }).sizes;
          const { thrown, throwTo, leatherHard, boneDry, lands } = size!;
          const lost = (part === "height" ? up : across) / 100;
          close(thrown.value * (1 - lost), target, { abs: 0.0051, why: "thrown is rounded to 0.01 mm" });
          expect(throwTo.value).toBeGreaterThanOrEqual(leatherHard.value);
          expect(leatherHard.value).toBeGreaterThanOrEqual(boneDry.value);
          expect(boneDry.value).toBeGreaterThanOrEqual(lands.value - 0.01);
          for (const q of [thrown, leatherHard, boneDry, lands])
            expect(q.low <= q.value && q.value <= q.high).toBe(true);
          expect(Math.abs(throwTo.value - thrown.value)).toBeLessThanOrEqual(0.51);
        },
      ),
    );
  });

  it("a nest scales, and so do capacity and clay with the cube", () => {
    fc.assert(
      fc.property(percent, mm, mm, fc.double({ min: 0.3, max: 3, noNaN: true }), (p, diameter, height, k) => {
        const shrinkage = { percent: p, plusMinus: 0.5 };
        const [one, many] = [1, k].map((scale) =>
          workOutSizes({ shrinkage, fired: { diameter }, set: { scales: [scale] } }),
        );
        close(many!.sizes[0]!.thrown.value, one!.sizes[0]!.thrown.value * k, {
          abs: 0.02,
          why: "both rounded to 0.01 mm",
        });
        const pot = (s: number) =>
          workOutSizes({
            shrinkage,
            profile: {
              form: "straight",
              diameter: diameter * s,
              height: height * s,
              dimensions: "outside",
              wall: 4 * s,
            },
          });
        close(pot(k).capacity!.fired.value, pot(1).capacity!.fired.value * k ** 3, {
          rel: 1e-6,
          abs: 0.05 + 0.05 * k ** 3,
        });
        close(pot(k).clay!.perPiece.value, pot(1).clay!.perPiece.value * k ** 3, {
          rel: 1e-6,
          abs: 0.5 + 0.5 * k ** 3,
        });
      }),
    );
  });

  it("converting notes there and back returns them", () => {
    fc.assert(
      fc.property(percent, percent, mm, (a, b, size) => {
        const convert = (from: number, to: number, length: number) =>
          workOutSizes({
            shrinkage: { percent: to, plusMinus: 0 },
            oldNotes: { shrinkage: { percent: from, plusMinus: 0 }, thrown: [{ name: "rim", size: length }] },
          }).oldNotes[0]!.throwNow.value;
        close(convert(b, a, convert(a, b, size)), size, { abs: 0.02, why: "rounded to 0.01 mm twice" });
      }),
    );
  });

  it("a better known shrinkage never widens an interval", () => {
    fc.assert(
      fc.property(percent, mm, (p, rim) => {
        const width = (plusMinus: number) => {
          const { thrown } = workOutSizes({ shrinkage: { percent: p, plusMinus }, fired: { rim } }).sizes[0]!;
          return thrown.high - thrown.low;
        };
        expect(width(0.2)).toBeLessThanOrEqual(width(1));
      }),
    );
  });

  it("wall, floor and line take from what it holds; what it holds and the clay fill the outside", () => {
    fc.assert(
      fc.property(mm, mm, fc.double({ min: 1, max: 10, noNaN: true }), (diameter, height, wall) => {
        const pot = (belowRim: number) =>
          workOutSizes({
            shrinkage: { percent: 12, plusMinus: 0 },
            profile: {
              form: "tapered",
              foot: diameter * 0.8,
              rim: diameter,
              height,
              dimensions: "outside",
              wall,
              belowRim,
            },
            clay: { plasticDensityGPerCm3: 1, trimmingPercent: 0, throwingLossPercent: 0 },
          });
        const full = pot(0);
        expect(pot(5).capacity!.fired.value).toBeLessThanOrEqual(full.capacity!.fired.value);
        const [r, R] = [0.4 * diameter, diameter / 2];
        const outside = (Math.PI * height * (R * R + R * r + r * r)) / 3 / 1000;
        const clay = full.clay!.perPiece.value * 0.88 ** 3;
        close(full.capacity!.fired.value + clay, outside, { abs: 0.5, why: "clay is rounded to 1 g" });
      }),
    );
  });
});

describe("crossing", () => {
  it("finds a bow tie and spares a convex outline, whatever its turn", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 6, noNaN: true }), (turn) => {
        const at = (angle: number) => ({ x: Math.cos(angle + turn), y: Math.sin(angle + turn) });
        const ring = [0, 1, 2, 3, 4, 5].map(at);
        expect(crossing(ring, true)).toBeUndefined();
        expect(crossing([at(0), at(2), at(1), at(3)], true)).toBeDefined();
      }),
    );
  });
});
