/** Ranges of a mean that a sheet prints in °F or kelvins, and those in °C that look a little like them. */
import { describe, expect, it } from "vitest";
import { describeBody } from "../../api/engine/body/index.ts";
import { readEvidence } from "../../api/engine/evidence/read-request.ts";
import { prepare } from "../../api/engine/fit/situation.ts";
import { rangeMeant, rangeRemarks } from "../../api/engine/stated-mean.ts";

type Range = [number, number];

describe("a range in another unit", () => {
  // (°F − 32)·5/9: 68 is 20, 70 21.1, 72 22.2, 75 23.9, 77 25, 86 30, 65 18.3, 60 15.6, 90 32.2; 302 is 150, 572 300, 662 350,
  // 752 400, 932 500, 1112 600, 1000 537.8, 500 260, 930 498.9. Arithmetic.
  it.each([
    [68, 932, 20, 500],
    [70, 572, 21, 300],
    [72, 662, 22, 350],
    [75, 572, 24, 300],
    [77, 752, 25, 400],
    [60, 302, 16, 150],
    [90, 1112, 32, 600],
    [68, 1000, 20, 538],
    [72, 500, 22, 260],
    [77, 930, 25, 499],
  ])("%d to %d is °F for %d to %d", (from, to, cold, hot) =>
    expect(rangeMeant([from, to])).toEqual({ unit: "°F", range: [cold, hot] }),
  );

  // K − 273, or − 273.15 where the sheet counts the hundredths. Arithmetic.
  it.each([
    [293, 773, 20, 500],
    [298, 573, 25, 300],
    [273, 573, 0, 300],
    [300, 673, 27, 400],
    [295, 623, 22, 350],
    [293.15, 773.15, 20, 500],
    [293, 800, 20, 527],
  ])("%d to %d is kelvins for %d to %d", (from, to, cold, hot) =>
    expect(rangeMeant([from, to])).toEqual({ unit: "kelvins", range: [cold, hot] }),
  );

  // Means in °C as books and laboratories take them, from 50, 100 and 300 °C too; 573 °C is where quartz turns.
  // Common practice, no source.
  it.each([
    [20, 300],
    [25, 500],
    [0, 300],
    [-50, 300],
    [50, 350],
    [50, 400],
    [50, 572],
    [100, 400],
    [100, 500],
    [100, 572],
    [60, 500],
    [70, 500],
    [75, 1000],
    [80, 600],
    [90, 573],
    [300, 500],
    [300, 600],
    [300, 573],
    [280, 700],
    [311, 773],
    // A run read off between odd temperatures.
    [68, 397],
    [72, 411],
    [293, 587],
  ])("%d to %d is °C", (from, to) => expect(rangeMeant([from, to])).toBeUndefined());

  it("is told with what to write; nothing where no range stands", () => {
    expect(rangeRemarks([68, 932], "/body/expansion")).toEqual([
      {
        code: "range-unit",
        message:
          "I took the mean as one from 68 to 932 °C. If these are °F, it runs from 20 to 500 °C: write [20, 500].",
        pointer: "/body/expansion/rangeC",
      },
    ]);
    expect(rangeRemarks(undefined, "/body/expansion")).toEqual([]);
  });
});

describe("is told of", () => {
  const said = (warnings: readonly { code: string; pointer?: string }[]) =>
    warnings.filter(({ code }) => code === "range-unit").map(({ pointer }) => pointer);
  const mean = (rangeC: Range) => ({ value: 6, rangeC, plusMinus: 0.3 });
  const body = { class: "red-stoneware" };

  it("a body", () => {
    expect(said(describeBody({ expansion: mean([68, 932]) }, "/body").warnings)).toEqual(["/body/expansion/rangeC"]);
    expect(said(describeBody({ expansion: mean([20, 500]) }, "/body").warnings)).toEqual([]);
  });
  it("a glaze", () => {
    const warnings = (rangeC: Range) => prepare({ glaze: { expansion: mean(rangeC) }, body }).warnings;
    expect(said(warnings([293, 573]))).toEqual(["/glaze/expansion/rangeC"]);
    expect(said(warnings([20, 300]))).toEqual([]);
  });
  it("a dilatometer run", () => {
    const measured = [mean([20, 300]), mean([68, 572])];
    expect(said(readEvidence({ measured }, 1).warnings)).toEqual(["/measured/1/rangeC"]);
  });
});
