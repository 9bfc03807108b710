/** Worked examples of the doc comments, figures worked by hand, and what stands on the sheet. */
import { describe, expect, it } from "vitest";
import {
  type BatchRequest,
  drySolids,
  dryToAdd,
  planBatch,
  roundShares,
  solidsShare,
  waterToAdd,
} from "../../api/engine/batches/index.ts";
import type { EngineError } from "../../api/engine/errors.ts";
import { textWidth } from "../../api/engine/rulers/index.ts";
import { close } from "../support/close.ts";

it("examples of the doc comments", () => {
  close(drySolids(1450, 1000, 2.65), 722.7, { abs: 0.05 });
  close(solidsShare(1.45, 2.65), 0.4984, { abs: 0.00005 });
  close(waterToAdd(5000, 1.5, 1.45), 555.6, { abs: 0.05 });
  close(dryToAdd(5000, 1.4, 1.45, 2.65), 552.1, { abs: 0.05 });
  expect(roundShares([1 / 3, 1 / 3, 1 / 3], 2)).toEqual([0.34, 0.33, 0.33]);
  const { lines } = planBatch({ glaze: { recipe: [{ material: "whiting", parts: 1 }] }, amount: { dry: "1 kg" } });
  expect(lines[0]?.weighG).toBe(1000);
});

it("a batch of thirds sums to the hundredth", () => {
  const recipe = ["silica", "kaolin", "whiting"].map((material) => ({ material, parts: 1 }));
  const { lines, dry } = planBatch({ glaze: { recipe }, amount: { dry: "1 kg" }, specificGravity: 1.45 });
  expect(lines.map(({ weighG }) => weighG)).toEqual([333.34, 333.33, 333.33]);
  expect(dry.totalG).toBe(1000);
});

/** All that is not asked for here stays out of the way: 1 kg of silica at 1.45. */
const plan = (more: Partial<BatchRequest> = {}) =>
  planBatch({
    glaze: { recipe: [{ material: "silica", parts: 1 }] },
    amount: { dry: "1 kg" },
    specificGravity: 1.45,
    ...more,
  });
const mix = (recipe: [material: string, parts: number][], additions: [material: string, parts: number][] = []) => {
  const lines = (rows: [string, number][]) => rows.map(([material, parts]) => ({ material, parts }));
  return { recipe: lines(recipe), additions: lines(additions) };
};
const of = (value: number, low: number, high: number) => expect.objectContaining({ value, low, high });

function issuesOf(more: Partial<BatchRequest>) {
  try {
    plan(more);
  } catch (error) {
    return (error as EngineError).issues;
  }
  return [];
}

// Largest remainder, by hand.
it.each([
  [2, [0.503, 0.277, 0.22], [0.5, 0.28, 0.22], "of 50.3, 27.7 and 22 one is missing, and 27.7 lost most"],
  [0, [1.5, 2.5, 3.75, 0.25], [2, 2, 4, 0], "two of 8 are missing; of two that lost a half the first has it"],
  [2, [0.004, 0.004, 0.002], [0.01, 0, 0], "0.4, 0.4 and 0.2 together are one"],
])("rounds to %i decimals: %j to %j, since %s", (decimals, amounts, rounded) =>
  expect(roundShares(amounts, decimals)).toEqual(rounded),
);

describe("water", () => {
  // D dry grams at g fill D(ρ − 1)/(ρ(g − 1)) ml. Silica is 2.65 ± 0.05 (data/materials, data/batches): a kilogram fills
  // 1000·1.65/2.65/0.45 = 1383.6 ml, at 2.60 1367.5 and at 2.70 1399.2; 1.45 times that less a kilogram is water.
  it("is what the density of the solids leaves open", () => {
    const { solidsDensity, water, volume, dryPerLitre, solids } = plan();
    expect(solidsDensity).toEqual(of(2.65, 2.6, 2.7));
    expect(volume).toEqual(of(1384, 1368, 1399));
    expect(water).toEqual(of(1006, 983, 1029));
    expect(dryPerLitre).toEqual(of(723, 715, 731)); // 10⁶ over those millilitres
    expect(solids).toEqual(of(49.8, 49.3, 50.4)); // that in 1450 g
  });

  it("is told in the headline and the steps, a tenth of it kept back", () => {
    const { headline, steps } = plan({ name: " Frost " });
    expect(headline).toBe("Frost: 1000 g dry and about 1006 g of water make 1.38 l at 1.45.");
    expect(steps).toEqual([
      expect.stringContaining("Weigh in this order"),
      expect.stringContaining("Start with 910 g of water"), // 0.9 · 1006 = 905.6, to tens
      expect.stringContaining("until it stands at 1.45: a litre weighs 1450 g"),
    ]);
    const glaze = mix([["silica", 50]], [["tin-oxide", 5]]);
    expect(plan({ name: " ", glaze }).headline).toMatch(/^batch: 1100 g dry \(100 g of it additions\) and about/);
  });

  it("is for 1.45 where no specific gravity is stated, with a warning", () => {
    const { specificGravity, warnings, sources } = plan({ specificGravity: undefined });
    expect(specificGravity).toBe(1.45);
    expect(warnings.map(({ code }) => code)).toContain("gravity-assumed");
    expect(plan().warnings.map(({ code }) => code)).not.toContain("gravity-assumed");
    expect(sources).toEqual(expect.arrayContaining(["brongniart", "glaze-practice"]));
  });
});

describe("density of the solids", () => {
  const glaze = (frit: number) => ({
    glaze: mix([
      ["silica", 100 - frit],
      ["frit-soda-borosilicate", frit],
      ["frit-potash-borosilicate", 0],
    ]),
  });

  // Volumes add, 1/Σ(x/ρ): 0.7 at 2.65 and 0.3 at 2.6 (2.4 to 2.8): 1/(0.26415 + 0.11538) = 2.635; 1/(0.26415 + 0.125)
  // − 0.05 = 2.520; 1/(0.26415 + 0.10714) + 0.05 = 2.743.
  it("takes the usual one for what has none, and says for how much of the batch", () => {
    const { solidsDensity, warnings } = plan(glaze(30));
    expect(solidsDensity).toEqual(of(2.63, 2.52, 2.74));
    expect(warnings.find(({ code }) => code === "density-assumed")!.message).toContain(
      "no density for frit-soda-borosilicate (30 % of the batch) and took 2.6 g/cm3",
    );
  });

  it("says nothing of two parts in a hundred", () => {
    const codes = (frit: number) => plan(glaze(frit)).warnings.map(({ code }) => code);
    expect([codes(2), codes(3)].map((list) => list.includes("density-assumed"))).toEqual([false, true]);
    const dissolving = (borax: number) =>
      plan({
        glaze: mix([
          ["silica", 100 - borax],
          ["borax", borax],
        ]),
      }).warnings;
    expect(dissolving(2).map(({ code }) => code)).not.toContain("dissolves");
    expect(dissolving(3).find(({ code }) => code === "dissolves")!.message).toContain("into the water: borax. ");
  });

  it("is not remarked on where all of it is known", () =>
    expect(
      plan({
        glaze: mix([
          ["silica", 1],
          ["potash-feldspar", 2],
        ]),
      }).warnings,
    ).toEqual([]));

  it("is as stated where it was measured", () =>
    expect(plan({ ...glaze(30), solidsDensityGPerCm3: 2.7 }).solidsDensity).toEqual(of(2.7, 2.7, 2.7)));
});

describe("lines", () => {
  it("are parts in a hundred of the recipe, what weighs nothing left out", () => {
    const glaze = mix(
      [
        ["whiting", 10],
        ["talc", 0],
        ["silica", 30],
      ],
      [["tin-oxide", 2]],
    );
    const { lines } = plan({ glaze });
    expect(lines.map(({ label, inHundred, weighG }) => [label, inHundred, weighG])).toEqual([
      ["silica", 75, 750],
      ["whiting", 25, 250],
      ["tin-oxide", 5, 50],
    ]);
    // Whiting loses 43.5 of an analysis that adds up to 99.83 (data/materials), 43.57 %; 250 g of it 108.94 g.
    expect(lines[1]).toMatchObject({ lossOnIgnitionPercent: 43.57, lossG: 108.94, runningG: 1000 });
  });

  it("of a recipe of additions alone are parts in a hundred of these", () => {
    const { lines, dry } = plan({
      glaze: mix(
        [["silica", 0]],
        [
          ["silica", 30],
          ["whiting", 10],
        ],
      ),
    });
    expect(lines.map(({ inHundred, weighG }) => [inHundred, weighG])).toEqual([
      [75, 750],
      [25, 250],
    ]);
    expect(dry).toEqual({ recipeG: 0, additionsG: 1000, totalG: 1000 });
  });

  it("carry what the chemistry remarks, each pointing at its line or at the glaze", () => {
    const { warnings } = plan({ glaze: { recipe: [{ formula: "SiO2", parts: 2e6 }] } });
    expect(warnings.map(({ code, pointer }) => [code, pointer])).toEqual(
      expect.arrayContaining([
        ["huge-parts", "/glaze/recipe/0/parts"],
        ["no-flux", "/glaze"],
      ]),
    );
  });
});

describe("dips", () => {
  const dips = { pieces: 10, areaCm2: 400, thicknessMm: 0.3 };
  const glaze = { recipe: [{ formula: "CaCO3", parts: 10 }], additions: [{ formula: "CaCO3", parts: 1 }] };

  // 10 · 400 cm² · 0.03 cm at 2.4 g/cm³ (2.25 to 2.55) are 288 g fired (270 to 306). CaCO3 loses 44.009/100.086 = 43.97 %
  // (CIAAW weights): over 0.5603 that is 514 g dry (482 to 546), additions counted in.
  it("take more dry glaze than they leave on the ware fired", () => {
    const { dips: answer, dry } = plan({ glaze, amount: { dips } });
    expect(answer!.dryOnWare).toEqual(of(514, 482, 546));
    close(dry.totalG, 288 / (1 - 44.009 / 100.086), { abs: 0.05, why: "atomic weights to three decimals" });
    expect(answer!.message).toBe(
      "10 pieces of 400 cm2 with 0.3 mm of fired glaze carry about 514 g of dry glaze. The bucket is empty then: say what must stay in it to dip in.",
    );
  });

  it("leave something in the bucket where it is asked for", () =>
    expect(plan({ glaze, amount: { dips: { ...dips, pieces: 1, keepInBucket: "2.5 l" } } }).dips!.message).toBe(
      "1 piece of 400 cm2 with 0.3 mm of fired glaze carry about 51 g of dry glaze; 2.5 l stays in the bucket to dip in.",
    ));

  it("of less than a gram are refused, and a gram is weighed", () => {
    expect(issuesOf({ amount: { dry: "0.9 g" } })).toMatchObject([{ pointer: "/amount", allowed: ["1 g or more"] }]);
    expect(plan({ amount: { dry: "1 g" } }).dry.totalG).toBe(1);
  });
});

describe("a bucket", () => {
  const bucket = (specificGravity: number, more: Partial<BatchRequest> = {}) =>
    plan({ bucket: { volume: "5 l", specificGravity }, ...more }).bucket!;
  const known = { solidsDensityGPerCm3: 2.65 };

  // 5 l at 1.5 hold 2500·2.65/1.65 = 4015.2 g dry; a hydrometer 0.01 off makes it 50·2.65/1.65 = 80.3 more or less. Of
  // silica (2.60 to 2.70), 2500·2.60/1.60 is 47.3 more and 2500·2.70/1.70 44.6 less: √(80.3² + 47.3²) = 93.2.
  it("holds what hydrometer and density leave open", () => {
    expect(bucket(1.5, known).dry).toEqual(of(4015, 3935, 4095));
    expect(bucket(1.5).dry).toEqual(of(4015, 3922, 4108));
  });

  // 5000·0.05/0.45 = 555.6 g of water, and 0.01 more on the hydrometer asks for 5000·0.01/0.45 = 111.1 more; at 1.455
  // 55.6 g, and it may be none.
  it("that is too thick wants water", () => {
    expect(bucket(1.5, known)).toMatchObject({ addWater: of(556, 444, 667), pourOff: null, addDry: null });
    expect(bucket(1.455, known).addWater).toEqual(of(56, 0, 167));
    expect(bucket(1.5, known).message).toBe(
      "5 l at 1.5 is too thick: stir in about 556 g of water, a little at a time, and measure again.",
    );
  });

  // 5000·0.05/(1 − 1.45/2.65) = 552.1 g of dry glaze, ± 5000·0.01/(1 − 1.45/2.65) = 110.4.
  it("that is too thin wants water off or dry glaze in", () => {
    expect(bucket(1.4, known)).toMatchObject({
      addWater: null,
      pourOff: of(556, 444, 667),
      addDry: of(552, 442, 663),
      message:
        "5 l at 1.4 is too thin: let it settle and pour off about 556 g of clear water, or sieve in about 552 g of dry glaze.",
    });
  });

  it("that is right wants nothing", () =>
    expect(bucket(1.45, known)).toMatchObject({ addWater: null, pourOff: null, addDry: null }));
});

it("a specific gravity that cannot be says what was meant, or what can be", () => {
  expect(issuesOf({ specificGravity: 145 })).toMatchObject([
    { pointer: "/specificGravity", message: expect.stringContaining("a litre that weighs 1450 g"), suggestion: "1.45" },
  ]);
  // Solids of 1.6 make 1.6 only without any water.
  expect(issuesOf({ specificGravity: 1.6, solidsDensityGPerCm3: 1.6 })).toMatchObject([
    { pointer: "/specificGravity", message: expect.stringContaining("cannot reach 1.6") },
  ]);
});

it("a long sheet keeps to its margins, and its columns keep apart", () => {
  const recipe = Array.from({ length: 60 }, (_, i) => ({
    name: `a rather long name for a material of the studio, number ${i}`,
    formula: "SiO2",
    parts: 100 - i,
  }));
  const additions = ["barium-carbonate", "cobalt-oxide", "nickel-oxide", "frit-lead-bisilicate"].map((material) => ({
    material,
    parts: 4,
  }));
  const { sheets, cautions } = planBatch({
    name: "Low Sun over the long hill, with a very long name indeed",
    glaze: { recipe, additions },
    amount: { dry: "900 kg" },
    specificGravity: 1.45,
    bucket: { volume: "5 l", specificGravity: 1.35 },
  });
  expect(cautions.length).toBeGreaterThanOrEqual(4);
  for (const { widthMm, heightMm, labels } of sheets) {
    const spans = labels.map(({ text, x, y, size, anchor = "start", bold }) => {
      const wide = textWidth(text, size, bold);
      const from = anchor === "start" ? x : anchor === "middle" ? x - wide / 2 : x - wide;
      return { text, from, to: from + wide, y };
    });
    for (const { from, to, y, text } of spans) {
      expect(from >= 11.9 && to <= widthMm - 11.9 && y <= heightMm - 11.9, text).toBe(true);
    }
    for (const [i, one] of spans.entries()) {
      for (const other of spans.slice(i + 1)) {
        if (Math.abs(one.y - other.y) > 2.5) continue;
        expect(one.to <= other.from || other.to <= one.from, `${one.text} | ${other.text}`).toBe(true);
      }
    }
  }
});

describe("the sheet", () => {
  /** What stands on a sheet, row by row from the top, cells from the left. */
  const rowsOf = ({ labels }: (typeof sheets)[number]) => {
    const rows = new Map<number, typeof labels>();
    for (const label of labels.filter(({ text }) => text !== ""))
      rows.set(
        label.y,
        [...(rows.get(label.y) ?? []), label].sort((a, b) => a.x - b.x),
      );
    return [...rows]
      .sort(([a], [b]) => a - b)
      .map(([y, cells]) => ({ y, cells, text: cells.map(({ text }) => text).join(" | ") }));
  };
  // 515 g dry at 2.5 g/cm³ and 1.45 fill 515·1.5/2.5/0.45 = 686.7 ml: 480.7 g of water, nine tenths of it 430 to tens.
  // 50 g of CaCO3 lose 22 g (43.97 %), 4.27 % of 515.
  const { sheets } = plan({
    name: "Snow",
    glaze: {
      recipe: [
        { name: "chalk", formula: "CaCO3", parts: 5 },
        { name: "lane-sand", formula: "SiO2", parts: 30 },
        { name: "spar", formula: "KAlSi3O8", parts: 15 },
      ],
      additions: [
        { material: "tin-oxide", parts: 1 },
        { name: "white", formula: "ZrSiO4", parts: 0.5 },
      ],
    },
    amount: { dry: "500 g" },
    solidsDensityGPerCm3: 2.5,
    bucket: { volume: "5 l", specificGravity: 1.5 },
  });
  const [sheet] = sheets as [(typeof sheets)[number]];
  const rows = rowsOf(sheet);

  it("says it all, from the top", () => {
    expect(rows.map(({ text }) => text)).toEqual([
      "Batch sheet: Snow",
      "Snow: 515 g dry (15 g of it additions) and about 481 g of water make 0.69 l at 1.45.",
      "Material | in 100 | weigh, g | running, g",
      // Identifiers of built-in materials lose their hyphens, own names keep them.
      "lane-sand | 60.00 | 300.00 | 300.00",
      "spar | 30.00 | 150.00 | 450.00",
      "chalk | 10.00 | 50.00 | 500.00",
      "Additions, over the hundred",
      "tin oxide | 2.00 | 10.00 | 510.00",
      "white | 1.00 | 5.00 | 515.00",
      "Dry in all | 515.00",
      "How",
      "· | Weigh in this order and tick each line; the running total shows a slip at once.",
      "· | Start with 430 g of water, add the dry glaze to it, and let it soak.",
      "· | Sieve, then add water until it stands at 1.45: a litre weighs 1450 g.",
      "· | Water in all: about 481 g (481 to 481).",
      "· | In the kiln 22 g (4.27 %) leave; 493 g of glass stay.",
      "· | 5 l at 1.5 is too thick: stir in about 556 g of water, a little at a time, and measure again.",
      "Mind",
      expect.stringMatching(/^· \| Fine silica dust scars the lungs/),
      "Weighed by | Date | Specific gravity | Fired glaze, mm",
      "Sheet 1 of 1",
    ]);
  });

  it("is bold in its headings and its total, and nowhere else", () => {
    const bold = rows.filter(({ cells }) => cells.some((cell) => cell.bold));
    for (const { cells } of bold) expect(cells.every((cell) => cell.bold)).toBe(true);
    const first = bold.map(({ cells }) => cells[0]!.text);
    expect(first).toEqual([
      "Batch sheet: Snow",
      "Material",
      "Additions, over the hundred",
      "Dry in all",
      "How",
      "Mind",
    ]);
  });

  it("has even rows, each line with a box to tick and ruled off below", () => {
    const table = rows.slice(2, 10);
    for (const [i, { y }] of table.slice(1).entries()) close(y - table[i]!.y, 7, { abs: 1e-9 });
    // Letters are 3.6 mm high: no row of the sheet runs into the next.
    for (const [i, { y }] of rows.slice(1).entries()) expect(y - rows[i]!.y).toBeGreaterThan(4);
    const rules = sheet.strokes.filter(({ closed }) => !closed).map(({ points: [from, to] }) => [from![1], to![1]]);
    const ruled = (y: number) => rules.some(([from, to]) => from === to && from! > y && from! < y + 7);
    const boxes = sheet.strokes.filter(({ closed }) => closed).map(({ points }) => points);
    const ticked = ({ y, cells }: (typeof rows)[number]) =>
      boxes.some((points) => {
        const ys = points.map(([, at]) => at);
        return Math.min(...ys) < y && Math.max(...ys) > y && points.every(([x]) => x < cells[0]!.x);
      });
    const lines = table.filter(({ cells }) => cells.length === 4);
    expect(lines.map(({ y }) => ruled(y))).toEqual(Array(6).fill(true));
    expect(lines.map(ticked)).toEqual([false, ...Array(5).fill(true)]);
    expect(boxes).toHaveLength(5);
  });

  it("has a line to write on over each field of the signature, apart from the next", () => {
    const { y, cells } = rows.at(-2)!;
    const over = sheet.strokes
      .filter(({ points }) => points.every(([, at]) => at < y && at > y - 7))
      .map(({ points: [from, to] }) => [from![0], to![0]] as const);
    expect(over.map(([from]) => from)).toEqual(cells.map(({ x }) => x));
    const ends = [...cells.slice(1).map(({ x }) => x), sheet.widthMm - 12];
    for (const [i, [from, to]] of over.entries()) expect(to > from + 30 && to < ends[i]! - 3).toBe(true);
  });

  it("carries no bar to check the scale by, and nothing to mind where nothing harms", () => {
    const [plain] = plan({ glaze: { recipe: [{ name: "spar", formula: "KAlSi3O8", parts: 1 }] } }).sheets;
    const texts = rowsOf(plain!).map(({ text }) => text);
    // Three steps, the water and the kiln; nothing of dips or a bucket that nobody asked for.
    expect(texts.filter((text) => text.startsWith("·"))).toHaveLength(5);
    expect(texts).not.toContain("Mind");
    expect(texts.join(" ")).not.toContain("Check bar");
  });

  it("says what the dips take", () => {
    const dips = { pieces: 10, areaCm2: 400, thicknessMm: 0.3 };
    const { sheets, dips: answer } = plan({ amount: { dips } });
    const rows = rowsOf(sheets[0]!).map(({ text }) => text);
    const from = rows.findIndex((text) => text.startsWith("· | 10 pieces"));
    // Broken into two rows, the second without a bullet.
    expect(`${rows[from]} ${rows[from + 1]}`).toBe(`· | ${answer!.message}`);
  });

  it.each([
    [24, 1],
    [25, 2],
    [48, 2],
  ])("of %i lines has %i tables and one total", (count, tables) => {
    const recipe = Array.from({ length: count - 1 }, (_, i) => ({ name: `jar ${i}`, formula: "SiO2", parts: 1 }));
    const glaze = { recipe, additions: [{ name: "last", formula: "SnO2", parts: 1 }] };
    const texts = plan({ glaze }).sheets.flatMap((each) => rowsOf(each).map(({ cells: [first] }) => first!.text));
    const times = (wanted: string) => texts.filter((text) => text === wanted).length;
    expect([times("Material"), times("Dry in all"), times("Additions, over the hundred")]).toEqual([tables, 1, 1]);
  });
});
