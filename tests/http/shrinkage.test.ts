import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Problem, ShrinkageReport } from "../../api/schemas/index.ts";
import { SLATE_BARS } from "../../api/schemas/larch-lane-sizes.ts";
import { faults, post, problemOf } from "./support.ts";

const ask = async (body: unknown) => {
  const response = await post("/v1/shrinkage", body);
  expect(response.status).toBe(200);
  return ShrinkageReport.parse(await response.json());
};
const issuesOf = async (body: unknown) => (await problemOf(await post("/v1/shrinkage", body))).issues ?? [];
const bars = (...rows: Record<string, unknown>[]) => ({ bars: rows });

describe("POST /v1/shrinkage", () => {
  it("reads mixed units, bar by bar", async () => {
    // 4 in = 101.6 mm; 88.9/101.6 = 0.875 (derived).
    const { total, bars: read } = await ask(
      bars({ plastic: "4 in", fired: "88.9 mm" }, { plastic: { value: 10, unit: "cm" }, fired: "3 4/9 in" }),
    );
    expect(read.map(({ totalPercent }) => totalPercent)).toEqual([12.5, 12.51]);
    expect(total?.bars).toBe(2);
  });

  it("sets height beside diameter", async () => {
    const of = (direction: string, percent: number) => ({ direction, plastic: 100, fired: 100 - percent });
    const { heightLessWidth, byDirection, total } = await ask(
      bars(
        of("height", 14),
        of("height", 14.2),
        of("height", 13.8),
        of("diameter", 12),
        of("diameter", 12.2),
        of("diameter", 11.8),
      ),
    );
    expect(byDirection.map(({ direction }) => direction)).toEqual(["diameter", "height"]);
    expect(total?.mean.value).toBe(12);
    expect(heightLessWidth?.difference.value).toBe(2);
    expect(heightLessWidth?.message).toContain("Height shrinks 2 points more than width");
  });

  it("warns of a single bar, and counts the bars of the standard", async () => {
    expect((await ask(bars({ plastic: 100, fired: 88 }))).warnings.map(({ code }) => code)).toEqual(["single-bar"]);
    expect((await ask(SLATE_BARS)).warnings.map(({ code }) => code)).toEqual(["fewer-than-standard"]);
  });

  it("answers the same, byte for byte", async () => {
    const texts = await Promise.all([1, 2].map(async () => (await post("/v1/shrinkage", SLATE_BARS)).text()));
    expect(texts[0]).toBe(texts[1]);
  });
});

describe("bars that cannot be", () => {
  it.each([
    [bars({ plastic: 94, dry: 100 }), "/bars/0/dry", "longer dry than plastic"],
    [bars({ plastic: 100, fired: "3.5 mm" }), "/bars/0/fired", "inches and millimetres mixed up"],
    [bars({ plastic: 100, fired: 8.8 }), "/bars/0/fired", "centimetres and millimetres mixed up"],
    [bars({ plastic: 100, dry: 90, fired: 95 }), "/bars/0/fired", "grows by more than 2 %"],
    [bars({ plastic: 100 }), "/bars/0", "plastic length alone"],
    [bars({ plastic: "3 in 5 mm", fired: 70 }), "/bars/0/plastic", "mixes in and mm"],
    [bars({ plastic: 100, fired: "" }), "/bars/0/fired", "`fired` is empty. I take at least 1 letter."],
    [bars({ plastic: true, fired: 88 }), "/bars/0/plastic", "a number or a text in double quotes or an object"],
    [bars({ plastic: { value: 3.5, unit: "inch" }, fired: 88 }), "/bars/0/plastic/unit", "Did you mean"],
    [bars({ plastic: { value: 3.5 }, fired: 88 }), "/bars/0/plastic/unit", "missing"],
    [bars({ fired: 88 }), "/bars/0/plastic", "missing"],
    [bars({ plastic: 100, fired: 88, weights: { dryG: 40, soakedG: 39 } }), "/bars/0/weights/soakedG", "swapped"],
    [bars({ plastic: 100, fird: 88 }), "/bars/0/fird", "Did you mean `fired`"],
    [bars(), "/bars", "0 entries"],
    [{}, "/bars", "missing"],
  ])("%j", async (body, pointer, words) => {
    const issues = await issuesOf(body);
    expect(issues.find((issue) => issue.pointer === pointer)?.message).toContain(words);
  });

  it("all are told at once", async () => {
    expect(await issuesOf(bars({ plastic: 94, dry: 100 }, { plastic: "9,5 cm", fired: 80 }))).toHaveLength(2);
  });
});

it("whatever comes in, something sane goes out", async () => {
  const odd = fc.oneof(
    fc.double(),
    fc.string({ maxLength: 12 }),
    fc.constantFrom(null, [], {}, "3½ in", "1/0 in", 1e300),
  );
  const row = fc.record({ plastic: odd, dry: odd, fired: odd, weights: odd, name: odd }, { requiredKeys: [] });
  await fc.assert(
    fc.asyncProperty(
      fc.record({ bars: fc.array(row, { maxLength: 3 }), unit: odd, readTo: odd }, { requiredKeys: ["bars"] }),
      async (body) => {
        const response = await post("/v1/shrinkage", body);
        const answer = await response.json();
        if (response.status === 200) ShrinkageReport.parse(answer);
        else {
          expect(response.status).toBe(422);
          Problem.parse(answer);
        }
      },
    ),
    { numRuns: 500, seed: 7 },
  );
  expect(faults).toEqual([]);
});
