/** The picture of the pulls, worked out by hand: which oxides and materials get a bar, how long, and which words. */
import { describe, expect, it } from "vitest";
import { checkFit, type FitReport, type OxidePull, type PartPull, type Verdict } from "../../api/engine/fit/index.ts";
import { barScale } from "../../api/engine/pictures/contributions/bar.ts";
import { bestPart, partRowsOf, partsInWords, restInWords } from "../../api/engine/pictures/contributions/part-rows.ts";
import { bestSwap, rowsOf } from "../../api/engine/pictures/contributions/rows.ts";
import { contributionsPicture } from "../../api/engine/pictures/index.ts";
import { THAW_ON_RED_STONEWARE } from "../../api/schemas/larch-lane.ts";
import { shown, textsOf } from "./support.ts";

const thaw = checkFit(THAW_ON_RED_STONEWARE);
const pull = (oxide: string, pullMPa: number, weightPercent = 5, perWeightPercentMPa = 4): OxidePull => ({
  oxide,
  weightPercent,
  molePercent: 1,
  pullMPa,
  perWeightPercentMPa,
});
const silica = pull("SiO2", 0, 60, -3);
const made = (pulls: OxidePull[], parts?: PartPull[]): FitReport => ({ ...thaw, pulls, parts });
const part = (label: string, perPartMPa: number, material: string | null = label): PartPull => ({
  label,
  material,
  perPartMPa,
});
const plain = (words: string) => shown(words).replaceAll("\u00a0", " ").replaceAll("\u200b", "");
const titleOf = (svg: string) => plain(/<title[^>]*>(.*?)<\/title>/.exec(svg)![1]!);
const wordsOf = (svg: string) => textsOf(svg).map(({ words }) => plain(words));

describe("oxides with a bar", () => {
  it("pull by 1 MPa or more, or are 2 % of the glaze or more", () => {
    const pulls = [
      pull("A", 1, 0.1),
      pull("B", -1, 0.1),
      pull("C", 0.99, 2),
      pull("D", 0.99, 1.99),
      pull("E", -0.99, 1.99),
      silica,
    ];
    const { bars, yardstick, rest } = rowsOf(made(pulls));
    expect(bars.map(({ oxide }) => oxide)).toEqual(["A", "C", "B"]);
    expect(yardstick).toBe(silica);
    expect(rest.map(({ oxide }) => oxide)).toEqual(["D", "E"]);
    expect(rowsOf(made([pull("A", 1)])).yardstick).toBeUndefined();
  });

  it("are nine at most, those that pull or push hardest, from the hardest pull to the hardest push", () => {
    const pulls = Array.from({ length: 11 }, (_, i) => pull(`o${i}`, (i % 2 ? -1 : 1) * (i + 1)));
    const { bars, rest } = rowsOf(made(pulls));
    expect(bars.map(({ pullMPa }) => pullMPa)).toEqual([11, 9, 7, 5, 3, -4, -6, -8, -10]);
    expect(rest.map(({ pullMPa }) => pullMPa)).toEqual([1, -2]);
  });

  it("draw a bar from 1 MPa on, and words in its place below", () => {
    const bars = (mpa: number) => {
      const svg = contributionsPicture(made([pull("K2O", 100), pull("CaO", mpa), silica]));
      return [
        (svg.match(/fill="url\(#[\w-]+-(cracks|waves)\)"/g) ?? []).length,
        wordsOf(svg).includes("next to nothing"),
      ];
    };
    expect(bars(1)).toEqual([2, false]);
    expect(bars(-1)).toEqual([2, false]);
    expect(bars(0.99)).toEqual([1, true]);
    expect(bars(-0.99)).toEqual([1, true]);
  });

  it("are drawn without silica where the glaze holds none", () => {
    expect(wordsOf(contributionsPicture(made([pull("K2O", 100), silica])))).toContain("the yardstick");
    expect(wordsOf(contributionsPicture(made([pull("K2O", 100)])))).not.toContain("the yardstick");
  });
});

describe("the swap for silica", () => {
  it.each([
    // What one more per cent pulls, less silica's −3.
    ["the hardest", [pull("A", 1, 5, 4), pull("B", 1, 5, 9)], { oxide: "B", dropMPa: 12 }],
    ["the first of two alike", [pull("A", 1, 5, 4), pull("B", 1, 5, 4)], { oxide: "A", dropMPa: 7 }],
    ["of which there is one per cent", [pull("A", 1, 1, 9), pull("B", 1, 0.99, 20)], { oxide: "A", dropMPa: 12 }],
    ["that eases it by 1 MPa", [pull("A", 1, 5, -2)], { oxide: "A", dropMPa: 1 }],
    ["none that eases it by less", [pull("A", 1, 5, -2.1)], undefined],
  ])("is %s", (_, pulls, swap) => {
    expect(bestSwap(made([...pulls, silica]))).toEqual(swap);
  });

  it("needs silica to swap for", () => {
    expect(bestSwap(made([pull("A", 1, 5, 9)]))).toBeUndefined();
  });

  it.each([
    [
      [pull("K2O", 12.4, 5, 9), silica],
      "K2O pulls hardest toward crazing: +12 MPa. Swap 1 % of K2O for silica and the stress drops about 12 MPa.",
    ],
    [[pull("K2O", 1, 5, -3), silica], "K2O pulls hardest toward crazing: +1 MPa."],
    [[pull("K2O", 0.9, 5, -3), silica], "No oxide pulls harder toward crazing than silica in its place."],
    [[pull("Al2O3", -9, 5, -3), silica], "No oxide pulls harder toward crazing than silica in its place."],
    [[silica], "No oxide pulls harder toward crazing than silica in its place."],
  ])("and the hardest pull make the title", (pulls, title) => {
    expect(titleOf(contributionsPicture(made(pulls)))).toBe(title);
  });
});

describe("the length of bars", () => {
  it.each([
    // Room for a value at the right end, and at the left end where something pushes.
    [[10, -5], { zero: 250, perMpa: 20 }], // (500 − 50 − 150)/15; 150 + 5·20
    [[30], { zero: 100, perMpa: 350 / 30 }],
    [[10], { zero: 100, perMpa: 350 / 12 }], // less than the least that the room stands for
    [[-30], { zero: 450, perMpa: 10 }],
    [[], { zero: 100, perMpa: 350 / 12 }],
  ])("shares 400 px among %j", (values, scale) => {
    const { zero, perMpa } = barScale([100, 500], values, 50, 12);
    expect(zero).toBeCloseTo(scale.zero, 9);
    expect(perMpa).toBeCloseTo(scale.perMpa, 9);
  });
});

describe("one more part", () => {
  it("has a bar from 0.1 MPa on", () => {
    const rows = partRowsOf({ parts: [part("a", 0.1), part("b", -0.1), part("c", 0.099), part("d", 0)] });
    expect(rows.bars.map(({ name }) => name)).toEqual(["a", "b"]);
    expect(rows.faint.map(({ name }) => name)).toEqual(["c", "d"]);
  });

  it("has one for the ten that do most, in whatever order they come", () => {
    const parts = [3, -9, 1, 12, -2, 7, -11, 4, 10, -6, 8, -5].map((mpa) => part(`m${mpa}`, mpa));
    const { bars, cut } = partRowsOf({ parts });
    expect(bars.map(({ mpa }) => mpa)).toEqual([12, 10, 8, 7, 4, 3, -5, -6, -9, -11]);
    expect(cut.map(({ mpa }) => mpa)).toEqual([-2, 1]);
  });

  it("keeps one material apart where it does two different things", () => {
    expect(partRowsOf({ parts: [part("silica", 1), part("silica", 2)] }).bars).toHaveLength(2);
    expect(partRowsOf({ parts: [part("mine", 1, null), part("mine", 1, null)] }).bars).toHaveLength(1);
    expect(partRowsOf({ parts: [part("mine", 1, "silica"), part("yours", 1, "silica")] }).bars).toHaveLength(1);
  });

  it("says hyphens as they are only in a potter's own names", () => {
    const names = partRowsOf({ parts: [part("red-iron-oxide", 2), part("brook-clay", 1, null)] }).bars;
    expect(names.map(({ name }) => name)).toEqual(["red iron oxide", "brook-clay"]);
  });

  it("names six of those that do next to nothing, and counts the others", () => {
    const faint = (many: number) => Array.from({ length: many }, (_, i) => part(`f${i}`, 0));
    expect(restInWords(partRowsOf({ parts: faint(6) }))).toEqual(["Next to nothing: f0, f1, f2, f3, f4, f5."]);
    expect(restInWords(partRowsOf({ parts: faint(7) }))).toEqual([
      "Next to nothing: f0, f1, f2, f3, f4, f5 and 1 more.",
    ]);
    expect(restInWords(partRowsOf({ parts: [] }))).toEqual([]);
  });

  it.each([
    ["shivers", "One more part of whiting adds 3.8 MPa."],
    ["may-shiver", "One more part of whiting adds 3.8 MPa."],
    ["sound", "One more part of silica takes off 3.0 MPa."],
    ["may-craze", "One more part of silica takes off 3.0 MPa."],
    ["crazes", "One more part of silica takes off 3.0 MPa."],
  ] as [Verdict, string][])("helps most, where it %s", (verdict, words) => {
    const parts = [part("silica", -3.03), part("kaolin", -1), part("talc", 1), part("whiting", 3.76)];
    expect(plain(bestPart({ verdict, parts })!)).toBe(words);
  });

  it("helps nothing where all push, and it lifts, or all pull, and it crazes", () => {
    expect(bestPart({ verdict: "shivers", parts: [part("silica", -3)] })).toBeUndefined();
    expect(bestPart({ verdict: "crazes", parts: [part("whiting", 3)] })).toBeUndefined();
    expect(bestPart({ verdict: "shivers", parts: [] })).toBeUndefined();
  });

  it("comes to the end of the title and of the description", () => {
    const report = made(
      [pull("K2O", 1, 5, -3), silica],
      [part("whiting", 3.76), part("silica", -3.03), part("kaolin", 0)],
    );
    const svg = contributionsPicture({ ...report, verdict: "crazes" });
    expect(titleOf(svg)).toBe("K2O pulls hardest toward crazing: +1 MPa. One more part of silica takes off 3.0 MPa.");
    const { 1: description } = /<desc[^>]*>(.*?)<\/desc>/.exec(svg)!;
    expect(plain(description!)).toMatch(
      /left pushes toward shivering\. K2O 5\.0 %: \+1 MPa, one more per cent −3 MPa\. One more part of each material, the others staying: whiting \+3\.8 MPa; silica −3\.0 MPa\. Next to nothing: kaolin\.$/,
    );
    const without = contributionsPicture({
      ...made([pull("K2O", 1, 5, -3), pull("TiO2", 0, 0.1), silica]),
      verdict: "crazes",
    });
    expect(titleOf(without)).toBe("K2O pulls hardest toward crazing: +1 MPa.");
    expect(plain(/<desc[^>]*>(.*?)<\/desc>/.exec(without)![1]!)).toMatch(
      /one more per cent −3 MPa\. Next to nothing: TiO2\.$/,
    );
    const useless = contributionsPicture({
      ...made([pull("K2O", 1, 5, -3), silica], [part("whiting", 3)]),
      verdict: "crazes",
    });
    expect(titleOf(useless)).toBe("K2O pulls hardest toward crazing: +1 MPa.");
  });

  it("is told of no material where the recipe has none", () => {
    expect(partsInWords({ bars: [], faint: [], cut: [] })).toBe("One more part of each material, the others staying:");
  });
});

describe("columns", () => {
  it("tell the share to a tenth of a per cent and the pull of one more per cent", () => {
    const svg = contributionsPicture(made([pull("Na2O", 12.4, 2.345, 27.4), silica]));
    expect(wordsOf(svg)).toEqual([
      "in the glaze",
      "pull toward crazing, MPa",
      "1 % more",
      "Na2O",
      "2.3 %",
      "+12",
      "+27",
      "SiO2",
      "60.0 %",
      "the yardstick",
      "−3",
    ]);
    const narrow = contributionsPicture(made([pull("Na2O", 12.4), silica]), { width: 350 });
    expect(wordsOf(narrow)[2]).toBe("+1 %");
  });
});
