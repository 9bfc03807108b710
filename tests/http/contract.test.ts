/** Real answers against the shapes they are described by, unknown fields refused. */
import { describe, expect, it } from "vitest";
import type { z } from "zod";
import type { FitReport as EngineReport, FitRequest as EngineRequest } from "../../api/engine/fit/types.ts";
import { listMaterials } from "../../api/engine/recipe/materials.ts";
import type { Shown } from "../../api/http/operation.ts";
import * as schemas from "../../api/schemas/index.ts";
import { THAW, THAW_ON_RED_STONEWARE } from "../../api/schemas/larch-lane.ts";
import { pageOf } from "../../api/schemas/lists.ts";
import { get, post, stream, THAW_TEXT } from "./support.ts";

// Both compile only while what the engine takes and gives fits what the service says.
const requestFits = (request: z.output<typeof schemas.FitRequest>): EngineRequest => request;
const reportFits = (report: EngineReport): Shown<z.output<typeof schemas.FitReport>> => report;

const questions: Record<string, unknown> = {
  Thaw: THAW_ON_RED_STONEWARE,
  "with curves": { ...THAW_ON_RED_STONEWARE, include: ["curves"] },
  "by class alone": { glaze: THAW, body: { class: "studio-porcelain" } },
  "a stated glaze": { glaze: { expansion: { value: 6.5 } }, body: { expansion: { value: 6.2 } } },
  "with additions": {
    glaze: { ...THAW, additions: [{ material: "copper-carbonate", parts: 4 }] },
    body: { phases: { quartz: 20, glass: 80 }, absorptionPercent: 3, ruptureMPa: 40 },
    ware: { glazed: "one-face", wallMm: 3 },
  },
  lead: {
    glaze: { oxides: { basis: "weightPercent", amounts: { PbO: 60, SiO2: 35, Al2O3: 5 } } },
    body: { class: "red-earthenware" },
  },
  "almost only silica": { glaze: { recipe: [{ material: "silica", parts: 1 }] }, body: { class: "red-stoneware" } },
};

describe("answers keep their described shape", () => {
  it("the compiler agrees about the main question", () => {
    expect([requestFits, reportFits].map((one) => one.length)).toEqual([1, 1]);
  });

  it.each(Object.entries(questions))("fit: %s", async (_, question) => {
    const response = await post("/v1/fit", question);
    expect(response.status).toBe(200);
    schemas.FitReport.parse(await response.json());
  });

  it.each([
    ["/v1/materials?limit=200", pageOf(schemas.Material, "M", "")],
    ["/v1/bodies", pageOf(schemas.BodyClass, "B", "")],
    ["/v1/expansion-models", pageOf(schemas.ExpansionModel, "E", "")],
    ["/v1/sources?limit=200", pageOf(schemas.Source, "S", "")],
    ["/v1/materials/kaolin", schemas.Material],
    ["/v1/bodies/red-stoneware", schemas.BodyClass],
    ["/health", schemas.Health],
  ] as [string, z.ZodType][])("GET %s", async (path, schema) => {
    schema.parse(await (await get(path)).json());
  });

  it("chemistry and expansion of every built-in material", async () => {
    for (const { id } of listMaterials()) {
      const glaze = { recipe: [{ material: id, parts: 40 }, ...THAW.recipe] };
      schemas.Chemistry.parse(await (await post("/v1/chemistry", { glaze })).json());
      schemas.ExpansionReport.parse(await (await post("/v1/expansion", { glaze })).json());
    }
  });

  it("problems and stream lines", async () => {
    schemas.Problem.parse(await (await get("/v1/nowhere")).json());
    schemas.Problem.parse(await (await post("/v1/fit", { glaze: {}, body: { class: "x" }, extra: 1 })).json());
    const fits = await stream("/v1/fit/stream", [THAW_TEXT, "{"]);
    for (const line of fits.lines) schemas.FitLineAnswer.parse(line);
    const expansions = await stream("/v1/expansion/stream", [JSON.stringify({ glaze: THAW }), "{"]);
    for (const line of expansions.lines) schemas.ExpansionLineAnswer.parse(line);
  });
});

describe("the description", () => {
  const document = async () => (await get("/openapi.json")).json();

  it("is the committed one", async () => {
    const committed = await import("../../api/openapi.json", { with: { type: "json" } });
    expect(await document()).toEqual(committed.default);
  });

  it("names every call", async () => {
    const { paths, openapi } = await document();
    expect(openapi).toBe("3.1.0");
    const calls = Object.entries(
      paths as Record<string, Record<string, { operationId: string; tags: string[] }>>,
    ).flatMap(([path, methods]) =>
      Object.entries(methods).map(([method, call]) => [method, path, call.operationId, call.tags[0]]),
    );
    expect(calls).toEqual([
      ["post", "/v1/fit", "checkFit", "fit"],
      ["post", "/v1/fit/stream", "streamFit", "fit"],
      ["post", "/v1/fit/verdicts", "judgeFits", "fit"],
      ["post", "/v1/expansion", "estimateExpansion", "expansion"],
      ["post", "/v1/expansion/stream", "streamExpansion", "expansion"],
      ["post", "/v1/chemistry", "analyseChemistry", "chemistry"],
      ["post", "/v1/evidence", "learnFromTiles", "evidence"],
      ["post", "/v1/remedies", "findRemedies", "remedies"],
      ["post", "/v1/blends", "mapBlend", "blends"],
      ["post", "/v1/running", "estimateRunning", "running"],
      ["post", "/v1/sizes", "workOutSizes", "sizes"],
      ["post", "/v1/shrinkage", "measureShrinkage", "shrinkage"],
      ["post", "/v1/rulers", "drawRuler", "rulers"],
      ["post", "/v1/batches", "planBatch", "batches"],
      ["get", "/v1/materials", "listMaterials", "materials"],
      ["get", "/v1/materials/{id}", "getMaterial", "materials"],
      ["get", "/v1/bodies", "listBodies", "bodies"],
      ["get", "/v1/bodies/{id}", "getBody", "bodies"],
      ["get", "/v1/expansion-models", "listExpansionModels", "expansionModels"],
      ["get", "/v1/sources", "listSources", "sources"],
      ["get", "/health", "getHealth", "service"],
      ["get", "/ready", "getReady", "service"],
    ]);
  });

  it("keeps limits, tuples, nulls and strictness", async () => {
    const { components } = await document();
    const { RecipeGlaze, MaterialLine, Quantity, Chemistry, FittedBody, Glaze, OxideGlaze } = components.schemas;
    expect(RecipeGlaze).toMatchObject({ additionalProperties: false, required: ["recipe"] });
    expect(RecipeGlaze.properties.recipe).toMatchObject({ minItems: 1, maxItems: 100 });
    expect(RecipeGlaze.properties.thicknessMm).toMatchObject({ minimum: 0.01, maximum: 5 });
    expect(MaterialLine.properties.parts).toMatchObject({ minimum: 0, maximum: 1e6 });
    expect(Quantity.properties.rangeC).toMatchObject({ minItems: 2, maxItems: 2 });
    expect(Quantity.required).toEqual(["value", "low", "high", "coverage", "unit"]);
    expect(Chemistry.properties.seger.anyOf).toEqual([{ $ref: "#/components/schemas/Seger" }, { type: "null" }]);
    expect(FittedBody.properties.class).toMatchObject({ type: ["string", "null"] });
    expect(Glaze.anyOf.map((one: { $ref: string }) => one.$ref.split("/").at(-1))).toEqual([
      "RecipeGlaze",
      "OxideGlaze",
      "StatedGlaze",
      "LayeredGlaze",
    ]);
    expect(OxideGlaze.properties.oxides.properties.amounts.additionalProperties).toMatchObject({ minimum: 0 });
  });

  it("describes every field, and gives an example of every figure that goes in", async () => {
    const { components } = await document();
    const bare: string[] = [];
    for (const [name, schema] of Object.entries(components.schemas as Record<string, Record<string, unknown>>)) {
      if (!schema.description) bare.push(name);
      for (const [field, inner] of Object.entries(
        (schema.properties ?? {}) as Record<string, Record<string, unknown>>,
      )) {
        const told = inner.description ?? inner.$ref;
        if (!told) bare.push(`${name}.${field}`);
      }
    }
    expect(bare).toEqual([]);
    const { MaterialLine, Firing, Ware } = components.schemas;
    for (const { properties } of [MaterialLine, Firing, Ware]) {
      for (const field of Object.values(properties as Record<string, { examples?: unknown[] }>)) {
        expect(field.examples?.length).toBeGreaterThan(0);
      }
    }
  });

  it("gives examples that the service itself takes", async () => {
    const { paths } = await document();
    for (const [path, { post: call }] of Object.entries(paths as Record<string, { post?: Record<string, never> }>)) {
      const content = (call as unknown as { requestBody: { content: Record<string, { example?: unknown }> } })
        ?.requestBody?.content;
      const example = content?.["application/json"]?.example;
      if (example) expect((await post(path, example)).status).toBe(200);
    }
  });
});
