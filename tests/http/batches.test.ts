import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BatchReport, Problem } from "../../api/schemas/index.ts";
import { THAW } from "../../api/schemas/larch-lane.ts";
import { THAW_BUCKET } from "../../api/schemas/larch-lane-sizes.ts";
import { faults, get, post, problemOf } from "./support.ts";

const ask = async (body: unknown) => BatchReport.parse(await (await post("/v1/batches", body)).json());

describe("POST /v1/batches", () => {
  it("answers Larch Lane's bucket, byte for byte the same", async () => {
    const batch = await ask(THAW_BUCKET);
    expect(batch.lines.map(({ label, weighG }) => [label, weighG])).toEqual([
      ["potash-feldspar", 840],
      ["silica", 440],
      ["whiting", 360],
      ["kaolin", 240],
      ["frit-soda-borosilicate", 120],
    ]);
    expect(batch.sheets).toHaveLength(1);
    const texts = await Promise.all([1, 2].map(async () => (await post("/v1/batches", THAW_BUCKET)).text()));
    expect(texts[0]).toBe(texts[1]);
  });

  it("prints cautions for what is weighed on the sheet", async () => {
    const glaze = { recipe: THAW.recipe, additions: [{ material: "barium-carbonate", parts: 4 }] };
    const { cautions, sheets } = await ask({ ...THAW_BUCKET, glaze });
    expect(cautions.map(({ code }) => code)).toEqual(expect.arrayContaining(["barium", "silica-dust"]));
    const printed = sheets
      .map(({ svg }) => svg)
      .join("")
      .replace(/<\/text>\n<text[^>]*>/g, " ");
    for (const { message } of cautions) expect(printed).toContain(message.split(" ").slice(0, 5).join(" "));
    expect(printed).toContain("Weighed by");
  });

  it("gives SVG and PDF", async () => {
    const svg = await post("/v1/batches", THAW_BUCKET, { accept: "image/svg+xml" });
    expect(await svg.text()).toBe((await ask(THAW_BUCKET)).sheets[0]!.svg);
    const pdf = await post("/v1/batches", THAW_BUCKET, { accept: "application/pdf" });
    expect(await pdf.text()).toMatch(/^%PDF-1\.7\n[\s\S]*\(Batch sheet: Thaw\)[\s\S]*%%EOF\n$/);
  });

  it("spreads a recipe of a hundred lines over sheets, each line once", async () => {
    const recipe = Array.from({ length: 100 }, (_, i) => ({
      name: `jar ${i + 1}.`,
      formula: "SiO2",
      parts: 100 - i / 2,
    }));
    const { sheets } = await ask({ ...THAW_BUCKET, glaze: { recipe } });
    const text = sheets.map(({ svg }) => svg).join("");
    for (let i = 1; i <= 100; i++) expect(text.split(`>jar ${i}.<`)).toHaveLength(2);
  });

  it("puts a bucket right, and says when it is", async () => {
    const bucket = async (specificGravity: number) =>
      (await ask({ ...THAW_BUCKET, solidsDensityGPerCm3: 2.65, bucket: { volume: "5 l", specificGravity } })).bucket!;
    expect((await bucket(1.5)).addWater).toMatchObject({ value: 556, unit: "g" });
    expect(await bucket(1.4)).toMatchObject({ addWater: null, pourOff: { value: 556 }, addDry: { value: 552 } });
    expect((await bucket(1.45)).message).toContain("stands where it should");
  });

  it("warns where part of the glaze goes into the water, and where a density is not known", async () => {
    const recipe = [...THAW.recipe, { material: "borax", parts: 20 }];
    const codes = (await ask({ ...THAW_BUCKET, glaze: { recipe } })).warnings.map(({ code }) => code);
    expect(codes).toEqual(["density-assumed", "dissolves"]);
  });

  it("names only sources that are served", async () => {
    const { data } = await (await get("/v1/sources?limit=200")).json();
    const known = new Set(data.map(({ key }: { key: string }) => key));
    expect((await ask(THAW_BUCKET)).sources.filter((key) => !known.has(key))).toEqual([]);
  });
});

describe("what cannot be", () => {
  it.each([
    [{ ...THAW_BUCKET, specificGravity: 145 }, "/specificGravity", "looks like 1.45"],
    [{ ...THAW_BUCKET, specificGravity: 1450 }, "/specificGravity", "looks like 1.45"],
    [{ ...THAW_BUCKET, specificGravity: 1 }, "/specificGravity", "no more than water's"],
    [{ ...THAW_BUCKET, specificGravity: 3 }, "/specificGravity", "that of stone"],
    [
      { ...THAW_BUCKET, glaze: { recipe: [{ material: "boric-acid", parts: 1 }] } },
      "/specificGravity",
      "they weigh only 1.44 g/cm3",
    ],
    [{ ...THAW_BUCKET, amount: { dry: "2" } }, "/amount/dry", "“2” of what?"],
    [{ ...THAW_BUCKET, amount: { dry: "0.01 g" } }, "/amount", "too little to weigh out"],
    [{ ...THAW_BUCKET, amount: { dry: "0 g" } }, "/amount/dry", "above 0"],
    [{ ...THAW_BUCKET, amount: {} }, "/amount", "needs one of `dry`, `volume`, `dips`"],
    [{ ...THAW_BUCKET, amount: { dry: "2 kg", volume: "3 l" } }, "/amount", "two ways of saying one thing"],
    [{ ...THAW_BUCKET, amount: { volume: "5 fl oz" } }, "/amount/volume", "us fl oz or imp fl oz"],
    [
      { ...THAW_BUCKET, amount: { dips: { pieces: 0, areaCm2: 4, thicknessMm: 0.3 } } },
      "/amount/dips/pieces",
      "between 1 and",
    ],
    [{ ...THAW_BUCKET, bucket: { volume: "5 l", specificGravity: 0.9 } }, "/bucket/specificGravity", "water's"],
    [
      { ...THAW_BUCKET, glaze: { recipe: [{ material: "whitting", parts: 1 }] } },
      "/glaze/recipe/0/material",
      "Did you mean whiting",
    ],
    [{ ...THAW_BUCKET, solidsDensityGPerCm3: 26 }, "/solidsDensityGPerCm3", "between 1.5 and 7"],
    [{ ...THAW_BUCKET, glaze: { oxides: { basis: "moles", amounts: { SiO2: 1 } } } }, "/glaze/recipe", "missing"],
  ])("%j", async (body, pointer, words) => {
    const { issues = [] } = await problemOf(await post("/v1/batches", body));
    expect(issues.find((issue) => issue.pointer === pointer)?.message).toContain(words);
  });
});

it("whatever comes in, something sane goes out", async () => {
  const odd = fc.oneof(
    fc.double(),
    fc.string({ maxLength: 9 }),
    fc.constantFrom(null, [], {}, "2 kg", 1.45, 1.01, 2.29),
  );
  const body = fc.record(
    {
      glaze: fc.oneof(fc.constant({ recipe: THAW.recipe }), odd),
      amount: fc.oneof(
        fc.record({ dry: odd }),
        fc.record({ volume: odd }),
        fc.constant({ dry: "2 kg" }),
        fc.record({ dips: fc.record({ pieces: odd, areaCm2: odd, thicknessMm: odd }) }),
      ),
      specificGravity: odd,
      solidsDensityGPerCm3: odd,
      bucket: fc.record({ volume: fc.constantFrom("5 l", "x"), specificGravity: odd }),
    },
    { requiredKeys: ["glaze", "amount"] },
  );
  await fc.assert(
    fc.asyncProperty(body, async (request) => {
      const response = await post("/v1/batches", request);
      const answer = await response.json();
      if (response.status === 200) BatchReport.parse(answer);
      else {
        expect(response.status).toBe(422);
        Problem.parse(answer);
      }
    }),
    { numRuns: 700, seed: 10 },
  );
  expect(faults).toEqual([]);
});
