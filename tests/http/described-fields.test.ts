/** Every field, in and out, says what it is, in which unit, within which bounds, and shows one. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { createApp } from "../../api/app.ts";
import { callsOf, type Described, type Document, Judge } from "./described.ts";

interface Shape {
  $ref?: string;
  type?: string | string[];
  description?: string;
  examples?: unknown[];
  enum?: unknown[];
  const?: unknown;
  properties?: Record<string, Shape>;
  additionalProperties?: Shape | boolean;
  items?: Shape;
  prefixItems?: Shape[];
  anyOf?: Shape[];
  oneOf?: Shape[];
  [keyword: string]: unknown;
}

const document = (await (await createApp().request("/openapi.json")).json()) as Document;
const components = document.components.schemas as Record<string, Shape>;
const bare = { description: [], unit: [], range: [], example: [], element: [] } as Record<string, string[]>;
const shown: [at: string, shape: Shape, example: unknown][] = [];
const bounded: [at: string, shape: Shape][] = [];

/** Measures of anything: what they measure is said where they stand, with the unit if they carry none of their own. */
const MEASURES = ["Quantity", "BeforeAfter"];
const LENGTHS = ["Length", "Volume", "Weight", "RoundedLength"];

/** The one convention for units: in brackets in the description, or the field `unit` beside the figure or of the request. */
const UNIT = /\[[^\]]+\]|in (the request's )?`unit`/;
const LOWEST = ["minimum", "exclusiveMinimum"];
const HIGHEST = ["maximum", "exclusiveMaximum"];
/** Said of a number that can be any; the description of the service says what it means. */
const ANY = /\beither sign\b/;

/** What every whole number has for want of a bound of its own. */
const NONE = Number.MAX_SAFE_INTEGER;

const has = (shape: Shape, keys: string[]) =>
  keys.some((key) => shape[key] !== undefined && Math.abs(Number(shape[key])) !== NONE);

/** Looks at one place and all below it; what is told of a field holds for the elements of its lists, tables and unions. */
function look(shape: Shape, at: string, told: Pick<Shape, "description" | "examples"> = {}): void {
  const { description = told.description ?? "", examples = told.examples ?? [] } = shape;
  for (const example of shape.examples ?? []) shown.push([at, shape, example]);
  if (shape.$ref) return;
  const types = [shape.type].flat();
  const number = types.includes("number") || types.includes("integer");
  const listed = shape.enum !== undefined || shape.const !== undefined;
  const leaf = number || types.includes("string") || types.includes("boolean");
  if (number && !listed) {
    if (!UNIT.test(description)) bare.unit!.push(at);
    if (!has(shape, [...LOWEST, ...HIGHEST]) && !ANY.test(description)) bare.range!.push(at);
    bounded.push([at, shape]);
  }
  // A picture or a document in bytes has no example in JSON.
  const formed = ["format", "pattern", "contentEncoding"].some((key) => shape[key] !== undefined);
  if (leaf && !listed && !formed && examples.length === 0) bare.example!.push(at);
  if (types.includes("array") && !shape.items && !shape.prefixItems) bare.element!.push(at);
  const below = { description, examples };
  for (const [key, inner] of Object.entries(shape.properties ?? {})) field(inner, `${at}.${key}`);
  if (typeof shape.additionalProperties === "object") look(shape.additionalProperties, `${at}{}`, below);
  if (shape.items) look(shape.items, `${at}[]`, below);
  shape.prefixItems?.forEach((inner, i) => void look(inner, `${at}[${i}]`, below));
  for (const inner of [...(shape.anyOf ?? []), ...(shape.oneOf ?? [])]) look(inner, at, below);
}

/** Looks at a field, which is described where it stands, or by the one name it refers to. */
function field(shape: Shape, at: string): void {
  const names = [shape, ...(shape.anyOf ?? [])].map(({ $ref }) => $ref?.split("/").at(-1) ?? "");
  const own = shape.description ?? "";
  const measure = MEASURES.some((one) => names.includes(one));
  const length = LENGTHS.some((one) => names.includes(one));
  const description = own || (measure || length ? "" : (components[names[0]!]?.description ?? ""));
  if (!description) bare.description!.push(at);
  if (measure && !UNIT.test(own)) bare.unit!.push(at);
  look(shape, at);
}

for (const [name, shape] of Object.entries(components)) field(shape, name);
for (const { operation } of callsOf(document)) {
  for (const { name, schema } of operation.parameters ?? []) {
    field(schema as Shape, `${operation.operationId}?${name}`);
  }
  for (const { content = {}, headers = {} } of [
    operation.requestBody ?? {},
    ...Object.values(operation.responses),
  ] as Described[]) {
    for (const [type, { schema }] of Object.entries(content))
      field(schema as Shape, `${operation.operationId} ${type}`);
    for (const [name, header] of Object.entries(headers)) {
      const { schema, description, example } = header as { schema: Shape; description: string; example: unknown };
      field({ description, examples: [example], ...schema }, `${operation.operationId} ${name}`);
    }
  }
}

/** Figures, switches and choices that a question may leave out, with what is said of them. */
const mayBeLeftOut = new Map<string, string>();
const asked = new Set<string>();

function lookAtQuestion(shape: Shape, at: string): void {
  const name = shape.$ref?.split("/").at(-1);
  if (name) {
    if (asked.has(name)) return;
    asked.add(name);
    lookAtQuestion(components[name]!, name);
    return;
  }
  const required = (shape.required ?? []) as string[];
  for (const [key, inner] of Object.entries(shape.properties ?? {})) {
    const plain = ["number", "integer", "boolean"].includes(String(inner.type)) || inner.enum !== undefined;
    if (plain && !required.includes(key)) mayBeLeftOut.set(`${at}.${key}`, inner.description ?? "");
    lookAtQuestion(inner, `${at}.${key}`);
  }
  for (const inner of [shape.items, ...(shape.anyOf ?? [])]) if (inner) lookAtQuestion(inner, at);
}

for (const { operation } of callsOf(document)) {
  for (const { schema } of Object.values(operation.requestBody?.content ?? {})) lookAtQuestion(schema as Shape, "");
}

describe("every field", () => {
  it("is looked at", () => {
    expect(Object.keys(components).length).toBeGreaterThan(200);
    expect(bounded.length).toBeGreaterThan(200);
  });

  it.each(Object.keys(bare))("has its %s", (what) => expect(bare[what]).toEqual([]));
  it("of a question that may be left out says what is taken then", () => {
    expect(mayBeLeftOut.size).toBeGreaterThan(60);
    const silent = [...mayBeLeftOut].filter(([, said]) => !/left out|unless|Give this/.test(said));
    expect(silent).toEqual([]);
  });

  it("`type` of a problem names every kind that is shown, and those that the SDK's README tells apart", () => {
    const said = (components.Problem!.properties as Record<string, Shape>).type!.description!;
    const shown = JSON.stringify(document).matchAll(/ringtrue\.example\/problems\/([a-z-]+)/g);
    const readme = readFileSync(new URL("../../sdk/README.md", import.meta.url), "utf8");
    const [told = ""] = /Two kinds of one status[\s\S]*?\n\n/.exec(readme) ?? [];
    const kinds = [...shown, ...told.matchAll(/`([a-z]+-?[a-z]+)`/g)].map(([, kind]) => kind!);
    expect(kinds).toContain("busy");
    for (const kind of kinds) expect(said).toContain(kind);
  });

  it("has room between its bounds", () => {
    const bound = (shape: Shape, keys: string[], open: number) =>
      Number(keys.map((key) => shape[key]).find((limit) => limit !== undefined) ?? open);
    const shut = bounded.filter(([, shape]) => !(bound(shape, LOWEST, -Infinity) < bound(shape, HIGHEST, Infinity)));
    expect(shut.map(([at]) => at)).toEqual([]);
  });

  it("shows what it would itself take", () => {
    const judge = new Judge(document);
    const faults = shown.flatMap(([at, shape, example]) => judge.faults(shape, example).map((one) => `${at}: ${one}`));
    expect(shown.length).toBeGreaterThan(400);
    expect(faults).toEqual([]);
  });
});
