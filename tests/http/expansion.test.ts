/** What an expansion answer tells beside the figure: one more part, glasses nearby, sources, accuracy. */
import { describe, expect, it } from "vitest";
import { analyseGlaze } from "../../api/engine/chemistry/index.ts";
import { glassProperties, nearestGlasses, propertyModels } from "../../api/engine/glass/index.ts";
import { reportExpansion, reportWithNearest } from "../../api/routes/report-expansion.ts";
import { ExpansionReport } from "../../api/schemas/expansion.ts";
import { THAW } from "../../api/schemas/larch-lane.ts";
import bibliography from "../../data/sources.json" with { type: "json" };
import { ask, oxides } from "./expansion-support.ts";
import { get, post, problemOf, stream } from "./support.ts";

describe("one more part", () => {
  it("says for each line what weighing one more does", async () => {
    const { perPart } = await ask({});
    expect(perPart.lines.map((one) => one.material)).toEqual(THAW.recipe.map((one) => one.material));
    expect(perPart.unit).toBe("1e-6/K per part");
    const recipe = THAW.recipe.map((line) => (line.material === "silica" ? { ...line, parts: line.parts + 1 } : line));
    const [before, after] = [THAW.recipe, recipe].map(
      (lines) => glassProperties(analyseGlaze({ recipe: lines }).moleFractions).expansion.value,
    );
    const silica = perPart.lines.find((one) => one.material === "silica")!;
    // First order: a whole part bends it by a few hundredths of itself.
    expect(Math.abs(silica.perPart / (after! - before!) - 1)).toBeLessThan(0.05);
    expect(silica.text).toMatch(/^One more part of silica lowers the expansion by about 0\.0\d+e-6\/K\.$/);
  });

  it("tells it of a material of which nothing has gone in yet, too", async () => {
    const glaze = { recipe: [...THAW.recipe, { material: "talc", parts: 0 }] };
    const trace = { recipe: [...THAW.recipe, { material: "talc", parts: 1e-6 }] };
    const last = async (question: object) => (await ask(question)).perPart.lines.at(-1)!.perPart;
    expect(await last({ glaze })).not.toBe(0);
    expect(await last({ glaze })).toBe(await last({ glaze: trace }));
  });

  it("has no lines for a glaze by its oxides", async () => {
    expect((await ask({ glaze: oxides({ SiO2: 70, Na2O: 18, CaO: 12 }) })).perPart.lines).toEqual([]);
  });
});

describe("measured glasses nearby", () => {
  it("come only when asked for", async () => {
    expect((await ask({})).nearest).toBeUndefined();
    const { nearest } = await ask({ include: ["nearest"] });
    expect(nearest!.available).toBe(true);
    expect(nearest!.glasses).toHaveLength(5);
    expect(nearest!.sets.map((one) => one.model)).toContain("appen-1949");
    for (const { text } of nearest!.sets) expect(text).toMatch(/ on measured glasses like yours/);
    const apart = nearest!.glasses.map((one) => one.publication);
    expect(apart.every(Number.isInteger)).toBe(true);
  });

  it("are said to be not available where the table cannot be had; the rest is answered", async () => {
    const question = { glaze: THAW, include: ["nearest" as const] };
    const answer = await reportWithNearest(question, (fractions) => nearestGlasses(fractions, 5, async () => null));
    expect(answer.nearest).toMatchObject({ available: false, glasses: [], sets: [] });
    expect(answer.best).toEqual(reportExpansion(question).best);
    ExpansionReport.parse(answer);
  });

  it("point into the glaze where it cannot be", async () => {
    const glaze = { recipe: [{ material: "whitting", parts: 1 }] };
    const problem = await problemOf(await post("/v1/expansion", { glaze, include: ["nearest"] }));
    expect(problem.issues![0]!.pointer).toBe("/glaze/recipe/0/material");
  });

  it("are not for streams, whose lines take doubts", async () => {
    const lines = [{ doubts: { onWare: false } }, { include: ["nearest"] }].map((one) => ({ glaze: THAW, ...one }));
    const { lines: answers } = await stream(
      "/v1/expansion/stream",
      lines.map((line) => JSON.stringify(line)),
    );
    expect(answers[0].result.doubt.counted.onWare).toBe(false);
    expect(answers[1].error.issues[0].pointer).toBe("/include");
  });
});

it("cites only sources that are in the bibliography", async () => {
  const { sources } = await ask({ include: ["nearest"] });
  for (const key of sources) expect(bibliography.sources).toHaveProperty(key);
  expect(sources).toEqual(expect.arrayContaining(["merritt-peters-1926", "kucuk-1999", "myega-2009"]));
});

it("GET /v1/expansion-models tells how close every fitted property comes", async () => {
  const { data } = await (await get("/v1/expansion-models")).json();
  expect(data[0].properties).toEqual(JSON.parse(JSON.stringify(propertyModels())));
  expect(data[0].properties.map((one: { id: string }) => one.id)).toEqual([
    "expansion",
    "transition",
    "youngs",
    "viscosity",
    "liquidus",
  ]);
  for (const set of data.slice(1)) expect(set.properties).toEqual([]);
});
