/** The SDK against the real service: in process, and over a real connection. */
import type { AddressInfo } from "node:net";
import { type ServerType, serve } from "@hono/node-server";
import {
  type FitLine,
  type FitRequest,
  type MadeGlaze,
  NotFoundError,
  Ringtrue,
  UnprocessableError,
} from "@ringtrue/sdk";
import { Agent } from "undici";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { app } from "../../api/app.ts";
import { failureOf } from "./failure.ts";

const glaze: MadeGlaze = {
  recipe: [
    { material: "potash-feldspar", parts: 42 },
    { material: "silica", parts: 22 },
    { material: "whiting", parts: 18 },
    { material: "kaolin", parts: 12 },
    { material: "frit-soda-borosilicate", parts: 6 },
  ],
  thicknessMm: 0.3,
};
const thaw: FitRequest = {
  glaze,
  body: { class: "red-stoneware", expansion: { value: 6.2, rangeC: [20, 500], plusMinus: 0.3 } },
};
const whitting = { ...thaw, glaze: { recipe: [{ material: "whitting", parts: 100 }] } };

let server: ServerType;
const dispatcher = new Agent();
const reached: Record<string, () => Ringtrue> = {
  "in process": () =>
    new Ringtrue({
      fetch: (url, init) => {
        init.signal?.throwIfAborted();
        return app.request(url, init);
      },
    }),
  "over the network, through an undici Agent": () =>
    new Ringtrue({ baseUrl: `http://127.0.0.1:${(server.address() as AddressInfo).port}`, dispatcher }),
};

beforeAll(async () => {
  await new Promise<void>((resolve) => {
    server = serve({ fetch: app.fetch, port: 0, hostname: "127.0.0.1" }, () => resolve());
  });
});
afterAll(async () => {
  await dispatcher.close();
  if ("closeAllConnections" in server) server.closeAllConnections();
  await new Promise((resolve) => server.close(resolve));
});

describe.each(Object.keys(reached))("%s", (how) => {
  const client = () => reached[how]!();

  it("answers whether it is up", async () => {
    await expect(client().health()).resolves.toMatchObject({ status: "ok" });
  });

  it("judges a fit, with request id", async () => {
    const { data, requestId } = await client().fit.check(thaw).withResponse();
    expect(["crazes", "may-craze", "sound", "may-shiver", "shivers"]).toContain(data.verdict);
    expect(data.stress.cases).toHaveLength(20);
    expect(data.stress.unit).toBe("MPa");
    const { crazesOnCooling, crazesLater, sound, shivers } = data.probabilities;
    expect(crazesOnCooling + crazesLater + sound + shivers).toBeCloseTo(1, 6);
    expect(requestId).toMatch(/\S+/);
  });

  it("computes expansion and chemistry", async () => {
    const expansion = await client().expansion.estimate({ glaze });
    expect(expansion.best.expansion).toMatchObject({ unit: "1e-6/K" });
    const chemistry = await client().chemistry.analyse({ glaze });
    const total = Object.values(chemistry.fired.weightPercent).reduce((sum, share) => sum + share, 0);
    expect(total).toBeCloseTo(100, 1);
  });

  it("finds materials, bodies, models and sources, a page at a time or all at once", async () => {
    const c = client();
    const page = await c.materials.list({ limit: 3 });
    expect(page.data).toHaveLength(3);
    const ids = new Set<string>();
    for await (const { id } of c.materials.list({ limit: 20 })) ids.add(id);
    expect(ids.size).toBeGreaterThanOrEqual(45);
    expect(ids).toContain("whiting");
    expect(await c.materials.get("whiting")).toMatchObject({ id: "whiting" });
    expect(await c.bodies.get("red-stoneware")).toMatchObject({ id: "red-stoneware" });
    for await (const body of c.bodies.list()) expect(body.id).toMatch(/^[a-z-]+$/);
    for await (const model of c.expansionModels.list()) expect(model.id).toMatch(/^[a-z0-9-]+$/);
    let sources = 0;
    for await (const _ of c.sources.list()) sources += 1;
    expect(sources).toBeGreaterThan(5);
  });

  it("says which field is wrong and what was probably meant", async () => {
    const error = await failureOf(client().fit.check(whitting));
    expect(error).toBeInstanceOf(UnprocessableError);
    expect(error.issues).toMatchObject([{ pointer: "/glaze/recipe/0/material", suggestion: "whiting" }]);
    expect(error.requestId).toBe(error.problem.requestId);
    await expect(client().materials.get("whitting")).rejects.toBeInstanceOf(NotFoundError);
  });

  it("streams fits in order, a bad line answered in its place", async () => {
    const lines = Array.from({ length: 300 }, (_, i) => (i === 100 ? whitting : thaw)).map((line, i) => ({
      ...line,
      id: `n${i}`,
    }));
    const one = await client().fit.check(thaw);
    let at = 0;
    for await (const { line, id, result, error } of client().fit.stream(lines)) {
      expect([line, id]).toEqual([at + 1, `n${at}`]);
      if (at === 100) expect(error).toMatchObject({ status: 422 });
      else expect(result).toEqual(one);
      at += 1;
    }
    expect(at).toBe(300);
  });

  it("goes on after lines that are too long, no JSON, or nothing at all", async () => {
    const lines = [thaw, { ...thaw, id: "é".repeat(70_000) }, undefined, null, { ...thaw, id: "雪\u2028\n" }];
    const got: unknown[] = [];
    for await (const { id, error } of client().fit.stream(lines as FitLine[])) got.push(error?.status ?? id ?? "fit");
    expect(got).toEqual(["fit", 413, 400, 422, "雪\u2028\n"]);
  });

  it("streams expansions", async () => {
    const glazes = [1, 2, 3].map((n) => ({
      glaze: {
        recipe: [
          { material: "potash-feldspar", parts: 60 },
          { material: "whiting", parts: 10 + n },
        ],
      },
    }));
    const values: number[] = [];
    for await (const { result } of client().expansion.stream(glazes)) values.push(result!.best.expansion!.value);
    expect(values).toHaveLength(3);
  });

  it("reads no further than needed when a stream is left early", async () => {
    let read = 0;
    const endless = (function* () {
      for (;;) {
        read += 1;
        yield thaw;
      }
    })();
    for await (const { line } of client().fit.stream(endless)) if (line === 20) break;
    expect(read).toBe(80); // derived (arithmetic): windows of 16 and 64 lines
  });
});
