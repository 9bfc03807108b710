import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Problem, RulerReport } from "../../api/schemas/index.ts";
import { SHRINK_RULER } from "../../api/schemas/larch-lane-sizes.ts";
import { faults, post, problemOf } from "./support.ts";

const shrinkage = { percent: 12, plusMinus: 0.5 };
const long = { shrinkage, draw: { ruler: { length: "1500 mm" } } };
const accept = (type: string) => ({ accept: type });

describe("POST /v1/rulers", () => {
  it("answers JSON with every sheet, byte for byte the same", async () => {
    const report = RulerReport.parse(await (await post("/v1/rulers", SHRINK_RULER)).json());
    expect(report).toMatchObject({ page: "A4", checkBarMm: 100 });
    expect(report.lengths[0]).toMatchObject({
      name: "100 mm fired",
      drawn: { value: 113.64, low: 112.99, high: 114.29 },
    });
    expect(report.sheets.map(({ widthMm, heightMm }) => [widthMm, heightMm])).toEqual([[210, 297]]);
    const texts = await Promise.all([1, 2].map(async () => (await post("/v1/rulers", SHRINK_RULER)).text()));
    expect(texts[0]).toBe(texts[1]);
  });

  it("answers SVG, sheet by sheet", async () => {
    const { sheets } = RulerReport.parse(await (await post("/v1/rulers", long)).json());
    expect(sheets.length).toBeGreaterThan(1);
    for (const [i, { svg }] of sheets.entries()) {
      const response = await post(`/v1/rulers?sheet=${i + 1}`, long, accept("image/svg+xml"));
      expect(response.headers.get("content-type")).toBe("image/svg+xml");
      expect(response.headers.get("x-sheets")).toBe(String(sheets.length));
      expect(await response.text()).toBe(svg);
    }
  });

  it("answers PDF, the same bytes each time", async () => {
    const [one, two] = await Promise.all([1, 2].map(() => post("/v1/rulers", long, accept("application/pdf"))));
    expect(one!.headers.get("content-type")).toBe("application/pdf");
    const bytes = new Uint8Array(await one!.arrayBuffer());
    expect(new TextDecoder("latin1").decode(bytes.slice(0, 8))).toBe("%PDF-1.7");
    expect(new Uint8Array(await two!.arrayBuffer())).toEqual(bytes);
  });

  it.each([
    ["application/pdf;q=0.5, image/svg+xml", "image/svg+xml"],
    ["text/html, */*;q=0.1", "application/json"],
    ["image/*", "image/svg+xml"],
    ["application/json;q=0, */*", "image/svg+xml"],
    ["application/*", "application/json"],
  ])("accept %s gets %s", async (wanted, type) => {
    expect((await post("/v1/rulers", SHRINK_RULER, accept(wanted))).headers.get("content-type")).toBe(type);
  });

  it("says what it serves to whoever asks for something else", async () => {
    const problem = await problemOf(await post("/v1/rulers", SHRINK_RULER, accept("image/png")));
    expect(problem.status).toBe(406);
    expect(problem.detail).toContain("application/json, image/svg+xml or application/pdf");
  });

  it("hostile names stay text", async () => {
    const name = `</text><script>&"'\u0000雪(\\)`;
    const draw = {
      template: {
        name,
        points: [
          { across: 70, up: 0 },
          { across: 90, up: 80 },
        ],
      },
    };
    const svg = await (await post("/v1/rulers", { shrinkage, draw }, accept("image/svg+xml"))).text();
    expect(svg).not.toContain("<script");
    expect(svg).not.toContain("\u0000");
    expect(svg).toContain("&lt;/text&gt;&lt;script&gt;&amp;");
    const pdf = await (await post("/v1/rulers", { shrinkage, draw }, accept("application/pdf"))).text();
    expect(pdf).toContain("\\(\\\\\\)");
  });
});

const points = (...rows: [number, number][]) => ({
  template: { points: rows.map(([across, up]) => ({ across, up })) },
});

describe("what cannot be", () => {
  it.each([
    [{ shrinkage, draw: {} }, "/draw", "needs one of `ruler`, `template`, `gauges`"],
    [
      { shrinkage, draw: { ruler: { length: 100 }, gauges: { gallery: 80, clearance: 1 } } },
      "/draw",
      "two ways of saying one thing",
    ],
    [{ shrinkage, draw: { ruler: { length: "0 mm" } } }, "/draw/ruler/length", "above 0"],
    [{ shrinkage: { percent: 0.12 }, draw: { ruler: { length: 100 } } }, "/shrinkage/percent", "Did you mean 12 %"],
    [{ shrinkage, draw: points([70, 0], [120, 60], [120, 20], [70, 70]) }, "/draw/template/points/2", "crosses itself"],
    [{ shrinkage, draw: points([4000, 0], [4500, 4900]) }, "/draw", "more than 40 sheets"],
    [
      { shrinkage, draw: { gauges: { gallery: 80, clearance: 40 } } },
      "/draw/gauges/clearance",
      "leaves nothing of a lid",
    ],
    [{ shrinkage, draw: { ruler: { length: 100 } }, page: "A5" }, "/page", "A4"],
  ])("%j", async (body, pointer, words) => {
    const { issues = [] } = await problemOf(await post("/v1/rulers", body));
    expect(issues.find((issue) => issue.pointer === pointer)?.message).toContain(words);
  });

  it("a sheet that is not there", async () => {
    const { issues } = await problemOf(await post("/v1/rulers?sheet=9", SHRINK_RULER, accept("image/svg+xml")));
    expect(issues).toEqual([
      { pointer: "/sheet", message: "There is one sheet; sheet 9 is not among them.", allowed: [1] },
    ]);
  });
});

it("whatever comes in, something sane goes out", async () => {
  const odd = fc.oneof(fc.double(), fc.string({ maxLength: 9 }), fc.constantFrom(null, [], {}, "3½ in", 0, 80, 5000));
  const point = fc.record({ across: odd, up: odd }, { requiredKeys: [] });
  const draw = fc.oneof(
    fc.record({ ruler: fc.record({ length: odd, reads: fc.constantFrom("up", "across") }) }),
    fc.record({
      template: fc.record({ points: fc.array(point, { maxLength: 5 }), side: fc.constantFrom("inside", "outside") }),
    }),
    fc.record({ gauges: fc.record({ gallery: odd, clearance: odd }) }),
    odd,
  );
  const body = fc.record(
    {
      shrinkage: fc.oneof(fc.constant(shrinkage), fc.record({ percent: odd })),
      draw,
      unit: fc.constantFrom("mm", "in", "ell"),
      page: odd,
    },
    { requiredKeys: ["draw", "shrinkage"] },
  );
  await fc.assert(
    fc.asyncProperty(body, async (request) => {
      const response = await post("/v1/rulers", request);
      const answer = await response.json();
      if (response.status === 200) RulerReport.parse(answer);
      else {
        expect(response.status).toBe(422);
        Problem.parse(answer);
      }
    }),
    { numRuns: 500, seed: 9 },
  );
  expect(faults).toEqual([]);
});
