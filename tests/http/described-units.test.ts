/** What a description says of figures holds in answers: the unit it names is the one they carry, its bounds are kept. */
import { describe, expect, it } from "vitest";
import { createApp } from "../../api/app.ts";
import { THAW, THAW_ON_RED_STONEWARE } from "../../api/schemas/larch-lane.ts";
import { CLOUDBURST } from "../../api/schemas/larch-lane-running.ts";
import { SLATE_BARS, THAW_BUCKET } from "../../api/schemas/larch-lane-sizes.ts";
import { callsOf, type Document, Judge } from "./described.ts";
import { post } from "./support.ts";

interface Shape {
  $ref?: string;
  description?: string;
  properties?: Record<string, Shape>;
  additionalProperties?: Shape | boolean;
  items?: Shape;
  anyOf?: Shape[];
}

const document = (await (await createApp().request("/openapi.json")).json()) as Document;
const components = document.components.schemas as Record<string, Shape>;
const nameOf = ({ $ref }: Shape) => $ref?.split("/").at(-1) ?? "";

/** Fields that hold a quantity, with the unit they say; those in a `unit` of the caller's choice have none to say. */
const told = new Map<Shape, { at: string; unit: string }>();
const collected = new Set<string>();
function collect(shape: Shape, at: string): void {
  for (const name of [shape, ...(shape.anyOf ?? [])].map(nameOf)) {
    if (!name || collected.has(name)) continue;
    collected.add(name);
    collect(components[name]!, name);
  }
  const [unit] = /(?<=\[)[^\]]+/.exec(shape.description ?? "") ?? [];
  const quantity = [shape, ...(shape.anyOf ?? [])].some((one) => ["Quantity", "Stress"].includes(nameOf(one)));
  if (quantity && unit) told.set(shape, { at, unit });
  for (const [key, inner] of Object.entries(shape.properties ?? {})) collect(inner, `${at}.${key}`);
  for (const inner of [shape.items, shape.additionalProperties, ...(shape.anyOf ?? [])]) {
    if (typeof inner === "object") collect(inner, at);
  }
}

const judge = new Judge(document);
const met = new Set<Shape>();
const wrong: string[] = [];

/** Goes through an answer beside its schema. */
function compare(shape: Shape, value: unknown): void {
  const field = told.get(shape);
  if (typeof value !== "object" || value === null) return;
  if (field) {
    met.add(shape);
    const { unit } = value as { unit: string };
    if (field.unit !== unit && !field.unit.startsWith(`${unit} `))
      wrong.push(`${field.at}: ${field.unit}, not ${unit}`);
  }
  if (Array.isArray(value)) {
    for (const one of value) if (shape.items) compare(shape.items, one);
    return;
  }
  const { $ref, properties = {}, additionalProperties: rest, anyOf = [] } = shape;
  if ($ref) compare(components[nameOf(shape)]!, value);
  for (const inner of anyOf) compare(inner, value);
  for (const [key, inner] of Object.entries(value)) {
    const of = properties[key] ?? (typeof rest === "object" ? rest : undefined);
    if (of) compare(of, inner);
  }
}

const bar = (fired: string, direction: string) => ({ plastic: "100 mm", fired, direction });
const bucket = (specificGravity: number) => ({ ...THAW_BUCKET, bucket: { volume: "5 l", specificGravity } });
const metals = { recipe: ["Si", "Al", "Be", "SiC"].map((formula) => ({ formula, parts: 1 })) };
/** Questions that bring out what no example of a call does: other fields, and figures at the ends of their bounds. */
const besides: [string, unknown][] = [
  ["/v1/fit", { ...THAW_ON_RED_STONEWARE, glaze: { layers: [{ ...THAW, thicknessMm: 0.2 }, CLOUDBURST] } }],
  ["/v1/fit", { glaze: { expansion: { value: 0.1 } }, body: { expansion: { value: 20, plusMinus: 5 } } }],
  ["/v1/fit", { glaze: { expansion: { value: 20 } }, body: { expansion: { value: -2 } }, ware: { wallMm: 0.5 } }],
  ["/v1/chemistry", { glaze: metals }],
  ["/v1/expansion", { glaze: metals }],
  ["/v1/expansion", { glaze: { oxides: { basis: "moles", amounts: { K2O: 1 } } }, include: ["nearest"] }],
  ["/v1/sizes", { shrinkage: { percent: 12 }, fired: { wall: 0.1 }, set: { pieces: 2, tolerance: 2 } }],
  ["/v1/batches", { glaze: metals, amount: { dry: "1 kg" } }],
  ["/v1/batches", bucket(1.5)],
  ["/v1/batches", bucket(1.4)],
  ["/v1/batches", { ...THAW_BUCKET, amount: { dips: { pieces: 24, areaCm2: 400, thicknessMm: 0.3 } } }],
  [
    "/v1/shrinkage",
    {
      bars: [
        { ...SLATE_BARS.bars[0], weights: { dryG: 41.2, soakedG: 42.3, suspendedG: 24.1 } },
        ...["88.1 mm", "88 mm", "87.9 mm", "84 mm"].map((fired) => bar(fired, "length")),
        ...["87 mm", "87.1 mm"].map((fired) => bar(fired, "height")),
      ],
    },
  ],
];

describe("figures", () => {
  it("have the unit and keep the bounds that are told of them", async () => {
    const asked = callsOf(document).flatMap(({ method, path, operation }) => {
      const { example } = operation.requestBody?.content["application/json"] ?? {};
      const { schema } = operation.responses["200"]?.content?.["application/json"] ?? {};
      if (method !== "POST" || !example || !schema) return [];
      const more = besides.filter(([to]) => to === path).map(([, question]) => question);
      return [example, ...more].map((question) => ({ path, schema: schema as Shape, question }));
    });
    for (const { path, schema, question } of asked) {
      collect(schema, path);
      const response = await post(path, question);
      expect(response.status, `${path} ${await response.clone().text()}`).toBe(200);
      const answer = await response.json();
      compare(schema, answer);
      expect(judge.faults(schema, answer), `${path} ${JSON.stringify(question)}`).toEqual([]);
    }
    expect(told.size).toBeGreaterThan(80);
    expect(wrong).toEqual([]);
    expect([...told].filter(([shape]) => !met.has(shape)).map(([, { at }]) => at)).toEqual([]);
  });
});
