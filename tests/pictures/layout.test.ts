/** Whatever the question, words in a picture keep clear of each other, of lines and of the edge. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { FitRequest } from "../../api/engine/fit/index.ts";
import {
  contributionsPicture,
  expansionPicture,
  type PictureWidth,
  stressPicture,
  verdictPicture,
} from "../../api/engine/pictures/index.ts";
import { THAW_ON_RED_STONEWARE } from "../../api/schemas/larch-lane.ts";
import { layoutFaults, questions, reportOf, ringsOf, textsOf, uprights } from "./support.ts";

const widths: readonly PictureWidth[] = [980, 720, 350];
const trials = fc.array(
  fc.record({
    letter: fc.constantFrom("A", "B", "C", "D", "AA"),
    stressMPa: fc.double({ min: -300, max: 200, noNaN: true }),
    current: fc.boolean(),
  }),
  { maxLength: 6 },
);

describe("words keep clear", () => {
  it("in the verdict", () => {
    fc.assert(
      fc.property(questions, trials, fc.boolean(), (question, pins, heading) => {
        const report = reportOf(question);
        if (!report) return;
        for (const width of widths) {
          const svg = verdictPicture(report, { width, standalone: heading, trials: pins });
          expect(layoutFaults(svg), `${width}`).toEqual([]);
          const crossed = textsOf(svg).filter((box) =>
            uprights(svg).some(
              ({ x, top, bottom }) => x > box.left && x < box.right && top < box.bottom && bottom > box.top,
            ),
          );
          expect(crossed, `crossed by a line at ${width}`).toEqual([]);
        }
      }),
      { numRuns: 150 },
    );
  });

  it.each([
    ["the cooling curves", expansionPicture],
    ["the pulls", contributionsPicture],
  ] as const)("in %s", (_, draw) => {
    fc.assert(
      fc.property(questions, fc.boolean(), (question, heading) => {
        const report = reportOf(question);
        if (!report) return;
        for (const width of widths)
          expect(layoutFaults(draw(report, { width, standalone: heading })), `${width}`).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  it("in one more part of each material, whatever the materials are called and however many", () => {
    const thaw = reportOf({ ...THAW_ON_RED_STONEWARE, include: ["parts"] } as FitRequest)!;
    const part = fc.record({
      label: fc.oneof(
        fc.constantFrom(
          "silica",
          "frit-soda-borosilicate",
          "own analysis",
          "NaAlSi3O8",
          "the grey one from under the old barn",
        ),
        fc.string({ maxLength: 60 }),
      ),
      material: fc.constantFrom(null, "silica"),
      perPartMPa: fc.oneof(fc.double({ min: -60, max: 60, noNaN: true }), fc.constantFrom(0, -0.04, 0.1)),
    });
    fc.assert(
      fc.property(fc.array(part, { maxLength: 100 }), fc.boolean(), (parts, heading) => {
        for (const width of widths) {
          const svg = contributionsPicture({ ...thaw, parts }, { width, standalone: heading });
          expect(layoutFaults(svg), `${width}`).toEqual([]);
          expect(Buffer.byteLength(svg)).toBeLessThan(30_000);
          const bars = [...svg.matchAll(/<rect x="([-\d.]+)" y="[-\d.]+" width="([\d.]+)" [^>]*fill="url/g)];
          for (const [, x, length] of bars) {
            expect(Number(x)).toBeGreaterThanOrEqual(0);
            expect(Number(x) + Number(length)).toBeLessThanOrEqual(width);
          }
        }
      }),
      { numRuns: 150 },
    );
  });

  it("in the stress through the wall", () => {
    fc.assert(
      fc.property(questions, (question) => {
        const report = reportOf(question);
        if (!report) return;
        for (const width of widths) {
          expect(layoutFaults(stressPicture(report, { width, ware: question.ware ?? {} })), `${width}`).toEqual([]);
        }
      }),
      { numRuns: 150 },
    );
  });

  it("off the lines of both materials", () => {
    fc.assert(
      fc.property(questions, (question) => {
        const report = reportOf(question);
        if (!report) return;
        for (const width of widths) {
          const svg = expansionPicture(report, { width });
          const lines = [
            ...svg.matchAll(/<path d="M([^"Z]+)" fill="none" stroke="[^"]*" stroke-width="(?:5|2.25)"\/>/g),
          ];
          const points = lines.flatMap(([, d]) => d!.split("L").map((point) => point.split(" ").map(Number)));
          const hit = textsOf(svg).filter(({ left, right, top, bottom }) =>
            points.some(([x, y]) => x! > left && x! < right && y! > top && y! < bottom),
          );
          expect(hit, `${width}`).toEqual([]);
        }
      }),
      { numRuns: 150 },
    );
  });
});

describe("the rings", () => {
  it("are twenty, count like the sentence, and none straddles a line", () => {
    fc.assert(
      fc.property(questions, (question) => {
        const report = reportOf(question);
        if (!report) return;
        for (const width of widths) {
          const svg = verdictPicture(report, { width });
          const rings = ringsOf(svg);
          const count = (outcomes: readonly { outcome: string }[]) => outcomes.map(({ outcome }) => outcome).sort();
          expect(count(rings)).toEqual(count(report.stress.cases));
          for (const { left, right } of rings) {
            const straddled = uprights(svg).filter(({ x }) => x > left + 0.3 && x < right - 0.3);
            expect(straddled, `${width}: ${left} to ${right}`).toEqual([]);
          }
        }
      }),
      { numRuns: 200 },
    );
  });

  it("stand on the side of the line that their outcome says", () => {
    fc.assert(
      fc.property(questions, (question) => {
        const report = reportOf(question);
        if (!report) return;
        const { cracksOnCooling, mayCrackInTime, flakesComeOff, edgesMayLift } = report.thresholds;
        // Where moisture has pushed cracking below lifting, the order of the lines says nothing.
        if (mayCrackInTime.value <= edgesMayLift.value || flakesComeOff.value < -199) return;
        const x = (mpa: number) => 6 + ((mpa + 200) / 280) * 968;
        for (const { outcome, left, right } of ringsOf(verdictPicture(report))) {
          const middle = (left + right) / 2;
          if (outcome === "crazesOnCooling" && cracksOnCooling.value < 79)
            expect(middle).toBeGreaterThan(x(cracksOnCooling.value));
          if (outcome === "crazesLater" && mayCrackInTime.value < 79)
            expect(middle).toBeGreaterThan(x(mayCrackInTime.value));
          if (outcome === "sound" && mayCrackInTime.value < 79) expect(middle).toBeLessThan(x(mayCrackInTime.value));
          if (outcome === "shivers") expect(middle).toBeLessThan(x(flakesComeOff.value));
        }
      }),
      { numRuns: 150 },
    );
  });
});
