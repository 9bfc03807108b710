import { describe, expect, it } from "vitest";
import { analyseGlaze } from "../../api/engine/chemistry/index.ts";
import { checkFit } from "../../api/engine/fit/index.ts";
import { THAW, THAW_ON_RED_STONEWARE } from "../../api/schemas/larch-lane.ts";
import { get, post, THAW_TEXT } from "./support.ts";

const answerOf = async (path: string, body: unknown) => {
  const response = await post(path, body);
  expect(response.status).toBe(200);
  expect(response.headers.get("content-type")).toBe("application/json");
  return response.json();
};

describe("POST /v1/chemistry", () => {
  it("whiting loses carbon dioxide and leaves lime", async () => {
    const recipe = [{ formula: "CaCO3", parts: 250 }];
    const chemistry = await answerOf("/v1/chemistry", { glaze: { recipe } });
    // Derived (arithmetic) from CIAAW weights: CaO 56.077 of 100.086.
    expect(chemistry.asWeighed).toEqual({ weightPercent: { CaO: 56.03 }, lossOnIgnitionPercent: 43.97 });
    expect(chemistry.fired.weightPercent).toEqual({ CaO: 100 });
    expect(chemistry.massBalance).toEqual({ weighedG: 100, glassG: 56.029, lostG: 43.971, error: 0 });
    expect(chemistry.lines[0]).toMatchObject({ parts: 250, sharePercent: 100, addition: false, material: null });
  });

  it("a Seger formula comes back as given", async () => {
    // A cone 4 limestone glaze formula, common practice, no source; the round trip is arithmetic.
    const amounts = { K2O: 0.3, CaO: 0.7, Al2O3: 0.5, SiO2: 4 };
    const { seger } = await answerOf("/v1/chemistry", { glaze: { oxides: { basis: "moles", amounts } } });
    expect(seger).toEqual({ moles: amounts, fluxSum: 1, silicaToAlumina: 8, alkaliShare: 0.3 });
  });

  it("points notices into the request", async () => {
    const { warnings, cautions } = analyseGlaze({ recipe: [{ material: "silica", parts: 100 }] });
    const answer = await answerOf("/v1/chemistry", { glaze: { recipe: [{ material: "silica", parts: 100 }] } });
    const engine = [...warnings, ...cautions];
    const served = [...answer.warnings, ...answer.cautions];
    expect(engine.length).toBeGreaterThan(0);
    expect(served.map((one) => one.pointer)).toEqual(
      engine.map((one) => (one.pointer === undefined ? undefined : `/glaze${one.pointer}`)),
    );
  });
});

describe("POST /v1/expansion", () => {
  it("contributions and yardstick add up to the best figure", async () => {
    const { best, contributions, all } = await answerOf("/v1/expansion", { glaze: THAW });
    const sum = contributions.oxides.reduce(
      (total: number, one: { contribution: number }) => total + one.contribution,
      0,
    );
    // Each is rounded to 0.001 and the best to 0.01.
    expect(Math.abs(contributions.reference + sum - best.expansion.value)).toBeLessThan(0.005 + 0.0005 * 12);
    expect(all[0].model).toBe(best.model);
    expect(best.expansion).toMatchObject({ unit: "1e-6/K", rangeC: [20, 300], coverage: 0.9 });
  });

  it("refuses a glaze known only by its expansion: there is nothing to work out", async () => {
    const response = await post("/v1/expansion", { glaze: { expansion: { value: 6.5 } } });
    expect(response.status).toBe(422);
    expect((await response.json()).issues[0].pointer).toMatch(/^\/glaze/);
  });
});

describe("POST /v1/fit", () => {
  it("serves what the engine answers, whole", async () => {
    const report = JSON.parse(JSON.stringify(checkFit(THAW_ON_RED_STONEWARE)));
    expect(await answerOf("/v1/fit", THAW_TEXT)).toEqual(report);
  });

  it("gives curves only when asked", async () => {
    expect(await answerOf("/v1/fit", THAW_TEXT)).not.toHaveProperty("curves");
    const { curves } = await answerOf("/v1/fit", { ...THAW_ON_RED_STONEWARE, include: ["curves"] });
    expect(curves.glaze.length).toBeGreaterThan(10);
    expect(curves.body.length).toBeGreaterThan(10);
  });

  it.each([
    ["a class", { class: "red-stoneware" }],
    ["a stated mean", { expansion: { value: 6.1 } }],
    [
      "a curve",
      {
        curve: [
          { c: 20, strainPercent: 0 },
          { c: 300, strainPercent: 0.16 },
          { c: 700, strainPercent: 0.45 },
        ],
      },
    ],
    ["phases", { phases: { quartz: 20, mullite: 20, glass: 60 } }],
  ])("takes a body by %s", async (_, body) => {
    const { probabilities } = await answerOf("/v1/fit", { ...THAW_ON_RED_STONEWARE, body });
    const sum = Object.values(probabilities as Record<string, number>).reduce((total, one) => total + one, 0);
    expect(sum).toBeCloseTo(1, 9);
  });

  it("takes a glaze by its expansion alone, and a seed", async () => {
    const answer = await answerOf("/v1/fit", {
      glaze: { expansion: { value: 5.5, rangeC: [20, 400], plusMinus: 0.2 }, transitionC: 600 },
      body: { class: "red-stoneware" },
      seed: 7,
    });
    expect(answer.engine.seed).toBe(7);
    expect(answer.pulls).toEqual([]);
  });

  it("answers the same question the same way, byte for byte", async () => {
    const texts = await Promise.all([1, 2, 3].map(async () => (await post("/v1/fit", THAW_TEXT)).text()));
    expect(new Set(texts).size).toBe(1);
  });
});

describe("sources", () => {
  it("every key in an answer is served", async () => {
    const { data } = await (await get("/v1/sources?limit=200")).json();
    const known = new Set(data.map((one: { key: string }) => one.key));
    for (const [path, body] of [
      ["/v1/fit", THAW_ON_RED_STONEWARE],
      ["/v1/chemistry", { glaze: THAW }],
      ["/v1/expansion", { glaze: THAW }],
    ] as const) {
      const text = JSON.stringify(await answerOf(path, body));
      const keys = [...text.matchAll(/"sources":(\[[^\]]*\])/g)].flatMap((found) => JSON.parse(found[1]!));
      expect(keys.length).toBeGreaterThan(0);
      expect([...new Set(keys)].filter((key) => !known.has(key))).toEqual([]);
    }
  });
});

describe("x-request-id", () => {
  it("keeps a sane one and replaces a strange one", async () => {
    expect((await get("/health", { "x-request-id": "larch-lane_7" })).headers.get("x-request-id")).toBe("larch-lane_7");
    const made = (await get("/health", { "x-request-id": "<script>" })).headers.get("x-request-id");
    expect(made).toMatch(/^[0-9a-f-]{36}$/);
    const long = (await get("/health", { "x-request-id": "a".repeat(101) })).headers.get("x-request-id");
    expect(long).toMatch(/^[0-9a-f-]{36}$/);
  });
});
