/** What holds of every film, stack and firing. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  edgeAdvance,
  estimateRunning,
  filmProfile,
  flowShares,
  frontAdvance,
  meanVelocity,
  passingThickness,
  type RunningRequest,
  rollHeight,
} from "../../api/engine/running/index.ts";
import { THAW } from "../../api/schemas/larch-lane.ts";
import { CLOUDBURST } from "../../api/schemas/larch-lane-running.ts";
import { close } from "../support/close.ts";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const mm = (min: number, max: number) => between(min, max).map((value) => value / 1000);

describe("a film", () => {
  it("twice as thick moves four times as fast", () => {
    fc.assert(
      fc.property(mm(0.01, 2), between(10, 1e7), between(1, 90), (thicknessM, viscosityPaS, slopeDeg) => {
        const film = { thicknessM, viscosityPaS, slopeDeg, densityKgPerM3: 2400 };
        close(meanVelocity({ ...film, thicknessM: 2 * thicknessM }), 4 * meanVelocity(film), { rel: 1e-12 });
      }),
    );
  });

  it("keeps its volume, however far it runs", () => {
    fc.assert(
      fc.property(between(0, 3), mm(0.05, 2), between(0.01, 1), (share, thicknessM, glazedM) => {
        const free = share * glazedM;
        const front = glazedM + frontAdvance(free, glazedM);
        // Midpoints after x = front · s², so that the square root at the top is summed exactly.
        const n = 2000;
        const at = Array.from({ length: n }, (_, i) => front * ((i + 0.5) / n) ** 2);
        const heights = filmProfile(free, thicknessM, glazedM, at);
        const volume = heights.reduce((sum, h, i) => sum + h * front * 2 * ((i + 0.5) / n) * (1 / n), 0);
        close(volume, thicknessM * glazedM, { rel: 2e-3, why: "2000 midpoints over a kink" });
      }),
    );
  });

  it("runs on without a jump where the thinning reaches the edge, and never back", () => {
    fc.assert(
      fc.property(between(0.01, 1), between(0, 3), between(1e-6, 0.1), (glazedM, share, more) => {
        const at = frontAdvance(share * glazedM, glazedM);
        const on = frontAdvance(share * glazedM * (1 + more), glazedM);
        expect(on).toBeGreaterThanOrEqual(at);
        expect(on - at).toBeLessThanOrEqual(share * glazedM * more * (1 + 1e-9) + 1e-12);
      }),
    );
  });

  it("of the thickness that just reaches the shelf does just that", () => {
    fc.assert(
      fc.property(between(100, 1e7), between(0.01, 1), mm(0.5, 500), (work, glazedM, clearanceM) => {
        const thickness = passingThickness(work, glazedM, clearanceM);
        close(frontAdvance(work * thickness ** 2, glazedM), clearanceM, { rel: 1e-9, abs: 1e-12 });
      }),
    );
  });

  it("is held back by its roll, never pushed back, and less so in proportion the farther it runs", () => {
    fc.assert(
      fc.property(mm(0, 300), mm(0.1, 5), between(1, 2), (free, length, full) => {
        const advance = edgeAdvance(free, 0.2, length, full);
        expect(advance).toBeGreaterThanOrEqual(-1e-15);
        expect(advance).toBeLessThanOrEqual(frontAdvance(free, 0.2) + 1e-15);
        const height = rollHeight(1, free, length, full);
        expect(height).toBeGreaterThanOrEqual(1);
        expect(height).toBeLessThanOrEqual(full);
      }),
    );
  });
});

describe("a stack", () => {
  const coats = fc.array(between(0.01, 2), { minLength: 1, maxLength: 6 });

  it("shares its flow out completely, most to the clay's side", () => {
    fc.assert(
      fc.property(coats, (thicknesses) => {
        const shares = flowShares(thicknesses);
        close(
          shares.reduce((sum, share) => sum + share, 0),
          1,
          { rel: 1e-12 },
        );
        const even = flowShares(thicknesses.map(() => 1));
        expect(even).toEqual([...even].sort((a, b) => b - a));
      }),
    );
  });

  it("is the same whether a coat is counted once or cut in two", () => {
    fc.assert(
      fc.property(coats, between(0.05, 0.95), (thicknesses, cut) => {
        const [first, ...rest] = thicknesses as [number, ...number[]];
        const shares = flowShares([first * cut, first * (1 - cut), ...rest]);
        close(shares[0]! + shares[1]!, flowShares(thicknesses)[0]!, { rel: 1e-9 });
      }),
    );
  });
});

describe("an answer", () => {
  const glaze = fc.record({
    recipe: fc.constantFrom(THAW.recipe, CLOUDBURST.recipe),
    thicknessMm: between(0.05, 1),
  });
  const questions: fc.Arbitrary<RunningRequest> = fc.record({
    glaze,
    firing: fc.record({
      peakC: between(1000, 1300),
      heatingCPerHour: between(30, 300),
      holdMinutes: between(1, 120),
      coolingCPerHour: between(30, 400),
    }),
    wall: fc.record({ slopeDeg: between(5, 90), glazedMm: between(20, 300), clearanceMm: between(1, 20) }),
  });
  const middle = (request: RunningRequest) => estimateRunning(request).run.value;

  it("is the same twice, and changes with the seed by less than its interval", () => {
    fc.assert(
      fc.property(questions, (request) => {
        const report = estimateRunning(request);
        expect(estimateRunning(request)).toEqual(report);
        const other = estimateRunning({ ...request, seed: 7 }).run;
        expect(Math.abs(other.value - report.run.value)).toBeLessThanOrEqual(
          0.2 * (report.run.high - report.run.low) + 0.02,
        );
      }),
      { numRuns: 20 },
    );
  });

  it("runs farther when thicker, hotter, longer, steeper or cooled more slowly", () => {
    fc.assert(
      fc.property(questions, (request) => {
        const run = middle(request);
        const { glaze, firing, wall } = request as Required<RunningRequest>;
        const farther: RunningRequest[] = [
          { ...request, glaze: { ...glaze, thicknessMm: glaze.thicknessMm! * 1.3 } },
          { ...request, firing: { ...firing, peakC: firing.peakC! + 20 } },
          { ...request, firing: { ...firing, holdMinutes: firing.holdMinutes! * 2 } },
          { ...request, firing: { ...firing, coolingCPerHour: firing.coolingCPerHour! / 2 } },
          { ...request, wall: { ...wall, slopeDeg: Math.min(90, wall.slopeDeg! * 1.3) } },
        ];
        for (const each of farther) expect(middle(each)).toBeGreaterThanOrEqual(run - 0.011);
      }),
      { numRuns: 25 },
    );
  });

  it("never reaches a farther shelf more often", () => {
    fc.assert(
      fc.property(questions, (request) => {
        const near = estimateRunning(request);
        const wall = { ...request.wall, clearanceMm: request.wall!.clearanceMm! * 1.5 };
        const far = estimateRunning({ ...request, wall });
        expect(far.reachesShelf).toBeLessThanOrEqual(near.reachesShelf);
        expect(far.run).toEqual(near.run);
        expect(near.refiring.run.value).toBeGreaterThanOrEqual(near.run.value);
        expect(near.refiring.reachesShelf).toBeGreaterThanOrEqual(near.reachesShelf);
      }),
      { numRuns: 25 },
    );
  });
});
