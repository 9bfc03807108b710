import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Problem, RunningReport } from "../../api/schemas/index.ts";
import { THAW } from "../../api/schemas/larch-lane.ts";
import { CLOUDBURST_OVER_THAW } from "../../api/schemas/larch-lane-running.ts";
import { faults, post, problemOf } from "./support.ts";

const ask = async (body: unknown) => {
  const response = await post("/v1/running", body);
  expect(response.status).toBe(200);
  return RunningReport.parse(await response.json());
};
const issuesOf = async (body: unknown) => (await problemOf(await post("/v1/running", body))).issues ?? [];
const thaw = { glaze: THAW, firing: { peakC: 1240 } };

describe("POST /v1/running", () => {
  it("answers the worked sample in the shape it promises", async () => {
    const report = await ask(CLOUDBURST_OVER_THAW);
    expect(report.layers?.interfaces).toHaveLength(1);
    expect(report.laterHeat.map(({ kind }) => kind)).toEqual(["decal"]);
    expect(report.sources).toContain("cone-charts");
  });

  it("answers the same, byte for byte, and echoes the seed", async () => {
    const texts = await Promise.all([1, 2].map(async () => (await post("/v1/running", thaw)).text()));
    expect(texts[0]).toBe(texts[1]);
    expect((await ask({ ...thaw, seed: 9 })).engine.seed).toBe(9);
  });

  it("says what it assumed", async () => {
    const { warnings } = await ask({ glaze: { recipe: THAW.recipe }, firing: { cone: "6" } });
    expect(warnings.map(({ code }) => code)).toEqual([
      "thickness-assumed",
      "cone-as-peak",
      "heating-assumed",
      "cooling-assumed",
      "wall-assumed",
    ]);
    expect(warnings.map(({ pointer }) => pointer)).toEqual([
      "/glaze/thicknessMm",
      "/firing/cone",
      "/firing/heatingCPerHour",
      "/firing/coolingCPerHour",
      "/wall",
    ]);
  });

  it.each([
    [{ ...thaw, firing: {} }, "/firing", "how hot"],
    [{ ...thaw, firing: { cone: 6 } }, "/firing/cone", "text"],
    [{ ...thaw, firing: { peakC: 2264 } }, "/firing/peakC", "1240"],
    [{ ...thaw, firing: { peakC: 1240, soakMinutes: 5 } }, "/firing/soakMinutes", "holdMinutes"],
    [{ ...thaw, wall: { clearenceMm: 5 } }, "/wall/clearenceMm", "clearanceMm"],
    [{ coats: [{ glaze: THAW, application: "dipp" }], firing: { peakC: 1240 } }, "/coats/0/application", "dip"],
    // Nothing in it sets to a glass, so no figure of its melt means anything.
    [
      { glaze: { oxides: { basis: "weightPercent", amounts: { CoO: 100 } } }, firing: { peakC: 1200 } },
      "/glaze",
      "no melt like it",
    ],
    [{ glaze: { expansion: { value: 6.5 } }, firing: { peakC: 1240 } }, "/glaze", "needs one of `recipe`, `oxides`"],
  ])("refuses %j", async (body, pointer, words) => {
    const issues = await issuesOf(body);
    const issue = issues.find((one) => one.pointer.startsWith(pointer));
    expect(`${issue?.message} ${issue?.suggestion}`, JSON.stringify(issues)).toContain(words);
    expect(issue).toBeDefined();
  });
});

describe("the picture", () => {
  const draw = (accept: string, query = "") => post(`/v1/running${query}`, thaw, { accept });

  it("comes where SVG is asked for, with a title in words", async () => {
    const response = await draw("image/svg+xml", "?theme=print&width=350&standalone=false");
    expect(response.headers.get("content-type")).toBe("image/svg+xml");
    expect(response.headers.get("content-security-policy")).toContain("default-src 'none'");
    expect(response.headers.get("vary")).toContain("accept");
    const svg = await response.text();
    expect(svg).toMatch(/^<svg [^>]*viewBox="0 0 350 /);
    expect(svg).toMatch(/<title[^>]*>This glaze/);
  });

  it("is refused in kinds and colours that there are not", async () => {
    expect((await draw("image/webp")).status).toBe(406);
    const { issues } = await problemOf(await draw("image/svg+xml", "?theme=sepia"));
    expect(issues?.[0]).toMatchObject({ pointer: "/theme" });
  });
});

it("whatever comes in, something sane goes out", async () => {
  const odd = fc.oneof(fc.double(), fc.string({ maxLength: 5 }), fc.constantFrom(null, [], {}, "6", -1, 1e300));
  const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  const oxides = fc.constantFrom("SiO2", "Al2O3", "B2O3", "Na2O", "K2O", "CaO", "MgO", "ZnO", "PbO", "Fe2O3", "V2O5");
  const glaze = fc.record({
    oxides: fc.record({ basis: fc.constant("weightPercent"), amounts: fc.dictionary(oxides, number(0, 60)) }),
    thicknessMm: fc.oneof(number(0.01, 5), odd),
  });
  const segment = fc.record({ toC: number(-50, 1700), cPerHour: number(1, 20000), holdMinutes: number(0, 10080) });
  const firing = fc.record(
    {
      peakC: fc.oneof(number(400, 1700), odd),
      cone: fc.oneof(fc.constantFrom("022", "6", "14"), odd),
      segments: fc.array(segment, { minLength: 1, maxLength: 6 }),
      holdMinutes: fc.oneof(number(0, 10080), odd),
    },
    { requiredKeys: [] },
  );
  const wall = fc.record(
    { slopeDeg: number(0, 90), glazedMm: number(1, 3000), clearanceMm: number(0.1, 1000) },
    { requiredKeys: [] },
  );
  await fc.assert(
    fc.asyncProperty(
      fc.record(
        { glaze, coats: fc.array(fc.record({ glaze }), { maxLength: 3 }), firing, wall, laterHeat: odd },
        { requiredKeys: ["firing"] },
      ),
      async (body) => {
        const response = await post("/v1/running", body);
        const answer = await response.json();
        if (response.status === 200) RunningReport.parse(answer);
        else {
          expect(response.status).toBe(422);
          Problem.parse(answer);
        }
      },
    ),
    { numRuns: 300, seed: 11 },
  );
  expect(faults).toEqual([]);
});
