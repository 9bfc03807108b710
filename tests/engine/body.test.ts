import { describe, expect, it } from "vitest";
import {
  type Body,
  contractionAt,
  describeBody,
  findBody,
  listBodies,
  mixture,
  mixtureStrain,
  moistureAge,
  toVolume,
} from "../../api/engine/body/index.ts";
import { close } from "../support/close.ts";
import { issuesOf as issuesIn } from "../support/refusals.ts";

const issuesOf = (body: Body) => issuesIn(() => describeBody(body, "/body"));
const codes = (body: Body) => describeBody(body).warnings.map(({ code }) => code);

describe("docstring examples", () => {
  it("describeBody, findBody, mixture, mixtureStrain, toVolume, moistureAge", () => {
    close(describeBody({ class: "red-stoneware" }).expansion.value, 5.55, { abs: 1e-12 });
    expect(findBody("red-stoneware").expansion.rangeC).toEqual([20, 500]);
    close(
      mixture(
        [
          { fraction: 0.3, value: 25, bulk: 90 },
          { fraction: 0.7, value: 5, bulk: 40.5 },
        ],
        29,
      ).kerner,
      12.39,
      { abs: 0.005 },
    );
    close(mixtureStrain({ glass: 1 }, 520).kerner, 0.00275, { abs: 1e-12 });
    expect(toVolume({ glass: 1 })).toEqual({ glass: 1 });
    expect(moistureAge(30)).toBe(1);
  });
});

describe("classes", () => {
  it("are at least twelve, each with sources and ordered ranges", () => {
    expect(listBodies().length).toBeGreaterThanOrEqual(12);
    for (const row of listBodies()) {
      expect(row.sources.length, row.id).toBeGreaterThan(0);
      const spans = [
        row.firingC,
        row.quartzFraction,
        row.cristobaliteFraction,
        row.youngsGPa,
        row.ruptureMPa,
        row.poisson,
      ];
      for (const [low, high] of spans) expect(low, row.id).toBeLessThanOrEqual(high);
      expect(row.expansion.low).toBeLessThan(row.expansion.high);
    }
  });
  // The 20–600 °C means printed beside the 20–500 °C ones (handbooks, from memory) are met within half their spread.
  it.each(["red-stoneware", "buff-stoneware", "studio-porcelain", "white-earthenware", "red-earthenware"])(
    "%s: the quartz step joins its two printed means",
    (id) => {
      const row = findBody(id);
      const printed = row.alsoPrinted.find(({ rangeC }) => rangeC[1] === 600)!;
      const mean = (contractionAt(describeBody({ class: id }), 600) / 580) * 1e6;
      close(mean, (printed.low + printed.high) / 2, {
        abs: (printed.high - printed.low) / 2,
        why: "the print is a range of bodies, not one",
      });
    },
  );
});

describe("what is unusual is answered with a warning", () => {
  it.each<[string, Body, string]>([
    ["class alone", { class: "red-stoneware" }, "class-only"],
    ["no range", { expansion: { value: 6 }, class: "red-stoneware" }, "range-assumed"],
    ["no tolerance", { expansion: { value: 6 }, class: "red-stoneware" }, "tolerance-assumed"],
    ["no class", { expansion: { value: 6 } }, "class-unknown"],
    [
      "a mean outside its class",
      { expansion: { value: 8.5, rangeC: [20, 500] }, class: "red-stoneware" },
      "facts-disagree",
    ],
    ["absorption outside its class", { class: "studio-porcelain", absorptionPercent: 9 }, "facts-disagree"],
    ["much quartz", { class: "red-stoneware", quartzPercent: 35 }, "dunting-quartz"],
    ["much cristobalite", { class: "buff-stoneware", cristobalitePercent: 8 }, "dunting-cristobalite"],
    [
      "quartz that leaves no room",
      { class: "red-stoneware", expansion: { value: 4, rangeC: [20, 500] }, quartzPercent: 50 },
      "facts-disagree",
    ],
    ["a stiff sponge", { class: "red-earthenware", absorptionPercent: 14, youngsGPa: 75 }, "facts-disagree"],
    [
      "a dry body that swells",
      { class: "studio-porcelain", absorptionPercent: 0.2, moistureExpansionPercent: 0.1 },
      "facts-disagree",
    ],
    ["phases that leave a rest", { phases: { quartz: 20, mullite: 15 } }, "glass-assumed"],
    [
      "a curve that ends early",
      {
        curve: [
          { c: 20, strainPercent: 0 },
          { c: 400, strainPercent: 0.22 },
        ],
      },
      "curve-ends-below-quartz-step",
    ],
    [
      "a curve with a gap",
      {
        curve: [
          { c: 20, strainPercent: 0 },
          { c: 400, strainPercent: 0.22 },
        ],
      },
      "wide-gap-in-curve",
    ],
  ])("%s", (_, body, code) => expect(codes(body)).toContain(code));
});

describe("what cannot be is refused, with the mend", () => {
  it.each<[string, Body, string, RegExp]>([
    ["misspelt class", { class: "red-stonware" }, "/body/class", /Did you mean red-stoneware/],
    ["600 for 6.0", { expansion: { value: 600 } }, "/body/expansion/value", /may mean 6\b/],
    ["62 for 6.2", { expansion: { value: 62 } }, "/body/expansion/value", /may mean 6\.2/],
    ["range upside down", { expansion: { value: 6, rangeC: [500, 20] } }, "/body/expansion/rangeC", /50 °C apart/],
    ["negative tolerance", { expansion: { value: 6, plusMinus: -1 } }, "/body/expansion/plusMinus", /between 0 and 5/],
    [
      "falling curve",
      {
        curve: [
          { c: 20, strainPercent: 0 },
          { c: 500, strainPercent: 0.3 },
          { c: 400, strainPercent: 0.2 },
        ],
      },
      "/body/curve/2/c",
      /falls back from 500 to 400/,
    ],
    [
      "repeated point",
      {
        curve: [
          { c: 20, strainPercent: 0 },
          { c: 500, strainPercent: 0.3 },
          { c: 500, strainPercent: 0.3 },
        ],
      },
      "/body/curve/2/c",
      /stands twice/,
    ],
    ["one point", { curve: [{ c: 20, strainPercent: 0 }] }, "/body/curve", /at least two points/],
    [
      "strain in the wrong unit",
      {
        curve: [
          { c: 20, strainPercent: 0 },
          { c: 500, strainPercent: 300 },
        ],
      },
      "/body/curve/1/strainPercent",
      /per cent of the length/,
    ],
    ["phases over 100", { phases: { quartz: 80, glass: 40 } }, "/body/phases", /add up to 120/],
    ["unknown phase", { phases: { kwartz: 20, glass: 80 } }, "/body/phases/kwartz", /Did you mean quartz/],
    [
      "absorption of 300",
      { class: "red-stoneware", absorptionPercent: 300 },
      "/body/absorptionPercent",
      /between 0 and 40/,
    ],
  ])("%s", (_, body, pointer, message) => {
    const [issue] = issuesOf(body);
    expect(issue?.pointer).toBe(pointer);
    expect(issue?.message).toMatch(message);
  });
});

describe("ways of knowing one body agree", () => {
  it("a curve drawn from a stated mean gives the same contraction", () => {
    const stated = describeBody({ class: "red-stoneware", expansion: { value: 6, rangeC: [20, 500], plusMinus: 0.2 } });
    const curve = Array.from({ length: 71 }, (_, i) => ({
      c: 20 + i * 10,
      strainPercent: contractionAt(stated, 20 + i * 10) * 100,
    }));
    const drawn = describeBody({ curve });
    for (const c of [100, 300, 500, 600, 650, 700]) {
      close(contractionAt(drawn, c), contractionAt(stated, c), {
        abs: 3e-5,
        why: "points 10 °C apart",
      });
    }
  });
});
