/** Another cooling as a remedy: a schedule, with nothing in it that the model does not know. */
import { describe, expect, it } from "vitest";
import { otherCooling } from "../../api/engine/advice/cooling.ts";
import { findRemedies, hoursThrough, inWindow, rateAt } from "../../api/engine/advice/index.ts";
import type { RemediesRequest } from "../../api/engine/advice/types.ts";
import { checkFit } from "../../api/engine/fit/index.ts";
import { setPointOffset } from "../../api/engine/fit/set-point.ts";

/** No recipe is searched here. */
const never = () => null;

/** A glaze of stated expansion and transition, whose set point is known to ±16 °C and more. */
const stated = (value: number, transitionC: number): RemediesRequest["glaze"] => ({
  expansion: { value, rangeC: [20, 300], plusMinus: 0.2 },
  transitionC,
});
const coolingOf = (request: RemediesRequest) =>
  findRemedies({ ...request, bodies: [] }, never).remedies.find(({ kind }) => kind === "cooling");

describe("a schedule with another rate between two temperatures", () => {
  const window = { fromC: 740, toC: 600 };

  it("splits a single rate in three (worked by hand)", () => {
    expect(inWindow([{ toC: 20, cPerHour: 100 }], window, () => 30, 1240)).toEqual([
      { toC: 740, cPerHour: 100 },
      { toC: 600, cPerHour: 30 },
      { toC: 20, cPerHour: 100 },
    ]);
  });

  it("keeps soaks and other rates where they are (worked by hand)", () => {
    const schedule = [
      { toC: 1000, cPerHour: 300, holdMinutes: 30 },
      { toC: 650, cPerHour: 150, holdMinutes: 60 },
      { toC: 100, cPerHour: 80 },
    ];
    expect(inWindow(schedule, window, () => 20, 1240)).toEqual([
      { toC: 1000, cPerHour: 300, holdMinutes: 30 },
      { toC: 740, cPerHour: 150 },
      { toC: 650, cPerHour: 20, holdMinutes: 60 },
      { toC: 600, cPerHour: 20 },
      { toC: 100, cPerHour: 80 },
    ]);
  });

  it("begins at the peak where the window does, and goes below a schedule that ends hot (worked by hand)", () => {
    expect(inWindow([{ toC: 700, cPerHour: 200 }], window, () => 50, 740)).toEqual([{ toC: 600, cPerHour: 50 }]);
    expect(inWindow([{ toC: 20, cPerHour: 200 }], window, () => 50, 720)).toEqual([
      { toC: 600, cPerHour: 50 },
      { toC: 20, cPerHour: 200 },
    ]);
  });

  it("is told what there is, and keeps what is slower already (worked by hand)", () => {
    const schedule = [
      { toC: 680, cPerHour: 200 },
      { toC: 20, cPerHour: 15 },
    ];
    expect(inWindow(schedule, window, (now) => Math.min(now, 30), 1240)).toEqual([
      { toC: 740, cPerHour: 200 },
      { toC: 680, cPerHour: 30 },
      { toC: 20, cPerHour: 15 },
    ]);
    // 60 K at 200 and 80 K at 15 K/h.
    expect(hoursThrough(schedule, window)).toBeCloseTo(60 / 200 + 80 / 15, 9);
  });

  it("changes nothing where the rate is the same", () => {
    const schedule = [{ toC: 20, cPerHour: 100 }];
    expect(inWindow(schedule, window, () => 100, 1240)).toEqual(schedule);
    expect(
      rateAt(
        [
          { toC: 760, cPerHour: 300 },
          { toC: 500, cPerHour: 80 },
        ],
        700,
      ),
    ).toBe(80);
    expect(
      rateAt(
        [
          { toC: 760, cPerHour: 300 },
          { toC: 500, cPerHour: 80 },
        ],
        300,
      ),
    ).toBe(80);
  });
});

describe("the cooling that is advised", () => {
  const soft: RemediesRequest = { glaze: stated(4.3, 540), body: { class: "white-earthenware" }, target: 0.9 };

  it("is verified by a fit of the whole schedule, before and after", () => {
    const { fit, before, after, cooling, text } = coolingOf(soft)!;
    const verified = checkFit(fit);
    expect(verified.probabilities).toEqual(after.probabilities);
    expect(after.probabilities.sound).toBeGreaterThan(before.probabilities.sound + 0.02);
    expect(cooling!.setPoint.after).toEqual(verified.setPoint);
    expect(fit.firing!.coolingCPerHour).toBeUndefined();
    const slow = fit.firing!.cooling!.filter(({ cPerHour }) => cPerHour === cooling!.cPerHour);
    expect(slow).toEqual([{ toC: cooling!.toC, cPerHour: cooling!.cPerHour }]);
    expect(text).toContain(`between ${cooling!.fromC} and ${cooling!.toC}\u00a0°C`);
    // Derived (arithmetic): what the slow stretch takes longer.
    const stretch = cooling!.fromC - cooling!.toC;
    expect(cooling!.hours).toBeCloseTo(stretch / cooling!.cPerHour - stretch / cooling!.insteadOfCPerHour, 1);
  });

  it("moves the set point as relaxation says, η = G δT/q, and claims no other effect", () => {
    const { cooling } = coolingOf(soft)!;
    const { before, after } = cooling!.setPoint;
    const derived = setPointOffset(540, cooling!.cPerHour) - setPointOffset(540, cooling!.insteadOfCPerHour);
    // Both are rounded to 1 °C.
    expect(Math.abs(after.value - before.value - derived)).toBeLessThanOrEqual(2);
  });

  it("does as well as the same rate all the way down: only where the glaze sets does the rate count", () => {
    const { after, cooling } = coolingOf(soft)!;
    const throughout = checkFit({ ...soft, firing: { coolingCPerHour: cooling!.cPerHour } });
    // One glaze in a hundred sets outside the window.
    expect(Math.abs(after.probabilities.sound - throughout.probabilities.sound)).toBeLessThan(0.02);
  });

  it("a stiff glaze has set before quartz turns: the rate there changes nothing, and it is said", () => {
    const firing = { peakC: 1280 };
    const stiff: RemediesRequest = { glaze: stated(5, 740), body: { class: "red-stoneware" }, firing };
    const { low } = checkFit(stiff).setPoint;
    expect(low).toBeGreaterThan(600);
    const at = (cPerHour: number) =>
      checkFit({
        ...stiff,
        firing: {
          peakC: 1280,
          cooling: [
            { toC: 600, cPerHour: 100 },
            { toC: 550, cPerHour },
            { toC: 20, cPerHour: 100 },
          ],
        },
      }).probabilities;
    expect(at(10)).toEqual(at(100));
    const told = coolingOf({ ...stiff, target: 0.9 });
    expect(told!.costs.join(" ")).toContain("how fast you pass that changes nothing in these figures");
  });

  it("says at every cooling of a clay with quartz that dunting is not calculated", () => {
    for (const [value, transitionC] of [
      [4.3, 540],
      [4.5, 600],
      [4.3, 500],
      [7.0, 700],
    ] as const) {
      for (const clay of ["white-earthenware", "red-earthenware", "red-stoneware"]) {
        const request = { glaze: stated(value, transitionC), body: { class: clay } };
        const [way] = otherCooling(request, checkFit(request), 0.99);
        expect(way!.costs.join(" ")).toMatch(/573\u00a0°C.*dunts there is not calculated/);
      }
    }
  });

  it("never passes the quartz step faster than before", () => {
    let faster = 0;
    for (let value = 3; value <= 9; value += 1.5) {
      for (const transitionC of [560, 700]) {
        for (const clay of ["white-earthenware", "red-earthenware", "cristobalite-stoneware", "hard-porcelain"]) {
          const request = { glaze: stated(value, transitionC), body: { class: clay } };
          const [way] = otherCooling(request, checkFit(request), 0.99);
          if (!way || way.cooling!.cPerHour <= 100) continue;
          faster++;
          expect(way.cooling!.toC).toBeGreaterThanOrEqual(600);
          expect(rateAt(way.fit.firing!.cooling!, 573)).toBe(100);
          expect(way.cooling!.hours).toBeLessThan(0);
        }
      }
    }
    expect(faster).toBeGreaterThan(5);
  });

  it("changes a schedule of segments where the glaze sets, and leaves its soaks", () => {
    const cooling = [
      { toC: 700, cPerHour: 200, holdMinutes: 20 },
      { toC: 20, cPerHour: 150 },
    ];
    const { fit, cooling: changed } = coolingOf({ ...soft, firing: { peakC: 1060, cooling } })!;
    expect(fit.firing!.cooling![0]).toEqual(cooling[0]);
    expect(fit.firing!.cooling!.at(-1)).toEqual(cooling.at(-1));
    expect(changed!.insteadOfCPerHour).toBe(150);
  });
});
