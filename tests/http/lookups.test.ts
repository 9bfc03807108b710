import { describe, expect, it } from "vitest";
import { listBodies } from "../../api/engine/body/classes.ts";
import { expansionModels } from "../../api/engine/glass/index.ts";
import { listMaterials } from "../../api/engine/recipe/materials.ts";
import { get, problemOf } from "./support.ts";

/** Follows cursors to the end. */
async function every(path: string, limit: number): Promise<{ id?: string; key?: string }[]> {
  const found: { id?: string; key?: string }[] = [];
  let cursor: string | null = null;
  do {
    const query: string = cursor ? `&cursor=${encodeURIComponent(cursor)}` : "";
    const page = await (await get(`${path}?limit=${limit}${query}`)).json();
    expect(page.data.length).toBeLessThanOrEqual(limit);
    found.push(...page.data);
    cursor = page.nextCursor;
  } while (cursor);
  return found;
}

describe("lists", () => {
  it("page to the end, each entry once, in order", async () => {
    const materials = await every("/v1/materials", 7);
    expect(materials.map((one) => one.id)).toEqual(listMaterials().map((one) => one.id));
    const bodies = await every("/v1/bodies", 5);
    expect(bodies.map((one) => one.id)).toEqual(listBodies().map((one) => one.id));
    const models = await every("/v1/expansion-models", 2);
    expect(models.map((one) => one.id)).toEqual(expansionModels().map((one) => one.id));
    const keys = (await every("/v1/sources", 10)).map((one) => one.key);
    expect(keys).toEqual([...new Set(keys)].sort());
  });

  it("say where the next page is, and null at the end", async () => {
    const { data, nextCursor } = await (await get("/v1/bodies?limit=1")).json();
    expect(nextCursor).toBe(`after:${data[0].id}`);
    const all = await (await get("/v1/bodies?limit=200")).json();
    expect(all.nextCursor).toBeNull();
  });

  it("serve every source that materials, bodies and models name", async () => {
    const keys = new Set((await every("/v1/sources", 200)).map((one) => one.key));
    const named = [...listMaterials(), ...listBodies(), ...expansionModels()].flatMap((one) => [...one.sources]);
    expect([...new Set(named)].filter((key) => !keys.has(key))).toEqual([]);
  });
});

describe("GET /v1/materials", () => {
  it("narrows by kind, oxide and text", async () => {
    const borates = await (await get("/v1/materials?kind=borates&limit=200")).json();
    expect(borates.data.length).toBeGreaterThan(2);
    for (const material of borates.data) expect(material.kind).toBe("borates");
    const lithia = await (await get("/v1/materials?oxide=Li2O&limit=200")).json();
    expect(lithia.data.map((one: { id: string }) => one.id)).toContain("spodumene");
    for (const material of lithia.data) expect(material.weightPercent.Li2O).toBeGreaterThan(0);
    const clay = await (await get("/v1/materials?q=china%20clay")).json();
    expect(clay.data.map((one: { id: string }) => one.id)).toContain("kaolin");
  });

  it("works out the analysis of a material known by formula", async () => {
    const wollastonite = await (await get("/v1/materials/wollastonite-theoretical")).json();
    // CaSiO3, derived (arithmetic) from CIAAW weights: CaO 56.077 and SiO2 60.083 of 116.160.
    expect(wollastonite.weightPercent).toEqual({ SiO2: 51.72, CaO: 48.28 });
    expect(wollastonite.lossOnIgnitionPercent).toBe(0);
  });

  it("answers to common names", async () => {
    expect((await (await get("/v1/materials/china%20clay")).json()).id).toBe("kaolin");
  });

  it("refuses a kind, an oxide or a cursor that there is not", async () => {
    const kind = await problemOf(await get("/v1/materials?kind=borate"));
    expect(kind).toMatchObject({ status: 422, issues: [{ pointer: "/kind", suggestion: "borates" }] });
    const oxide = await problemOf(await get("/v1/materials?oxide=K20"));
    expect(oxide).toMatchObject({ status: 422, issues: [{ pointer: "/oxide", suggestion: "K2O" }] });
    const cursor = await problemOf(await get("/v1/materials?cursor=elsewhere"));
    expect(cursor).toMatchObject({ status: 422, issues: [{ pointer: "/cursor" }] });
  });
});

describe("one by name", () => {
  it("GET /v1/bodies/{id} gives the class of the data file", async () => {
    const body = await (await get("/v1/bodies/red-stoneware")).json();
    expect(body).toEqual(JSON.parse(JSON.stringify(listBodies().find((one) => one.id === "red-stoneware"))));
  });

  it.each([
    ["/v1/materials/whitting", "whiting"],
    ["/v1/bodies/red-stonewear", "red-stoneware"],
  ])("%s is 404 and suggests %s", async (path, suggestion) => {
    expect(await problemOf(await get(path))).toMatchObject({ status: 404, suggestion });
  });
});

describe("query parameters", () => {
  it.each([
    ["limit=0", "/limit", '`limit` is "0". It must be 1 or more.'],
    ["limit=201", "/limit", '`limit` is "201". It must be 200 or less.'],
    ["limit=ten", "/limit", '`limit` is "ten". It must be a number.'],
    ["limit=1.5", "/limit", '`limit` is "1.5". It must be a whole number.'],
    ["limits=5", "/limits", "I don't know the field `limits`. Did you mean `limit`?"],
    ["limit=1&limit=2", "/limit", "`limit` is given twice. Keep one."],
    ["__proto__=1", "/__proto__", "I don't know the field `__proto__`."],
  ])("%s is refused", async (query, pointer, message) => {
    const problem = await problemOf(await get(`/v1/bodies?${query}`));
    expect(problem).toMatchObject({ status: 422, issues: [{ pointer, message }] });
  });
});

describe("ETag", () => {
  it.each([
    "/v1/materials",
    "/v1/materials/whiting",
    "/v1/bodies",
    "/v1/bodies/red-stoneware",
    "/v1/sources",
    "/openapi.json",
  ])("%s answers 304 to a caller who has it", async (path) => {
    const first = await get(path);
    const tag = first.headers.get("etag")!;
    expect(tag).toMatch(/^(W\/)?"[^"]+"$/);
    const second = await get(path, { "if-none-match": tag });
    expect(second.status).toBe(304);
    expect(await second.text()).toBe("");
  });
});

it("GET /health says which engine runs", async () => {
  const health = await (await get("/health")).json();
  expect(health).toEqual({
    status: "ok",
    version: expect.stringMatching(/^\d+\.\d+\.\d+$/),
    dataVersion: expect.stringMatching(/^\d{4}-\d\d-\d\d$/),
  });
});
