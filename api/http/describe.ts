/**
 * The OpenAPI description, built from the routes; component schemas come straight from zod.
 *
 * The generator that lists the routes drops or misplaces limits, tuples, defaults and nulls of named schemas, and no
 * linter notices. So it only writes the paths, and `components.schemas` is overwritten with zod's own JSON Schema.
 *
 * @module
 */
import { z } from "zod";
import { ENGINE_VERSION } from "../engine/version.ts";
import type { Api } from "./operation.ts";

const TAGS = [
  ["fit", "Whether a glaze fits a clay body. The main job."],
  ["expansion", "How much a glaze shrinks as it cools."],
  ["chemistry", "What a glaze is made of."],
  ["evidence", "What a glaze must be, going by its tiles."],
  ["running", "How far a glaze runs, layers, refiring, and faults of the coat."],
  ["remedies", "The least changes that make a glaze fit."],
  ["blends", "Where in a line, triangle or grid of glazes, or a mixture of many, it fits."],
  ["sizes", "What to throw for the size that is wanted fired."],
  ["shrinkage", "How much a clay shrinks, from measured bars."],
  ["rulers", "Rulers, ribs and gauges to print at true scale."],
  ["batches", "Batch sheets: weights, water, specific gravity."],
  ["materials", "Built-in materials."],
  ["bodies", "Classes of clay bodies."],
  ["expansionModels", "Ways of reckoning expansion from oxides."],
  ["sources", "What the answers rest on."],
  ["service", "The service itself."],
] as const;

const ABOUT = `Tells a maker whether a glaze will fit a clay body before a batch is mixed or a kiln is packed.

Every figure comes with its interval, unit, temperature range and source. Units are in the names (\`peakC\`, \`thicknessMm\`), beside the value, and in brackets in the description, \`[-]\` for a plain ratio. Bounds of an answer's figures are those that no answer passes; a figure said to have \`either sign\` has none and can be any finite number. Nothing is kept: a request carries all it needs. The same request gets the same answer, byte for byte. Every failure is \`application/problem+json\` (RFC 9457), with JSON Pointers to the fields at fault.

A calculation never certifies food safety; cautions beside an answer defer to local codes and licensed laboratories.`;

const KEY = {
  type: "http",
  scheme: "bearer",
  description: "A key, where whoever runs the service asks for one. A service on one's own machine does not.",
};

/** Builds the description of an app whose routes are mounted. */
export function describeApi(api: Api): Record<string, unknown> {
  const document = api.getOpenAPI31Document({
    openapi: "3.1.0",
    info: {
      title: "Ringtrue",
      version: ENGINE_VERSION,
      description: ABOUT,
    },
    servers: [{ url: "/", description: "The service this description came from." }],
    security: [{}, { key: [] }],
    tags: TAGS.map(([name, description]) => ({ name, description })),
  });
  const { components, webhooks: _, info, ...rest } = document;
  // The generator's types are of OpenAPI 3.0, which has neither summary nor SPDX identifiers.
  const about = { ...info, summary: "Will this glaze fit this clay?", license: { name: "MIT", identifier: "MIT" } };
  return {
    ...rest,
    info: about,
    components: { schemas: namedSchemas(Object.keys(components?.schemas ?? {})), securitySchemes: { key: KEY } },
  };
}

/** Where named schemas stand in the description. */
const PLACE = "#/components/schemas/";

/** Every named schema that the paths reach, by zod's own hand; and those that only these refer to. */
function namedSchemas(reached: string[]): Json {
  const { schemas } = z.toJSONSchema(z.globalRegistry, {
    io: "input",
    target: "draft-2020-12",
    unrepresentable: "any",
    uri: (id) => PLACE + id,
  });
  const named: Json = {};
  // The generator loses sight of a schema that is always referred to with words of its own beside the reference.
  const wanted = new Set(reached);
  for (const id of wanted) {
    const { $schema, $id, ...schema } = schemas[id] as Json;
    named[id] = tidied(schema);
    JSON.stringify(schema, (key, value) => {
      if (key === "$ref" && String(value).startsWith(PLACE)) wanted.add(String(value).slice(PLACE.length));
      return value;
    });
  }
  return Object.fromEntries(Object.entries(named).sort(([a], [b]) => (a < b ? -1 : 1)));
}

type Json = Record<string, unknown>;

/** Says a thing in the one form that generators of clients take best, all the way down. */
function tidied(schema: unknown): unknown {
  if (Array.isArray(schema)) return schema.map(tidied);
  if (typeof schema !== "object" || schema === null) return schema;
  const tidy = closedByLength(nullAmongTypes(schema as Json));
  return Object.fromEntries(Object.entries(tidy).map(([key, value]) => [key, tidied(value)]));
}

/**
 * Tuples closed by their length alone. `items: false` beside `prefixItems` and `maxItems` says it twice, and generators
 * of clients that know no schema but an object stumble over it.
 */
function closedByLength(schema: Json): Json {
  const { items, ...kept } = schema;
  const closed = items === false && Array.isArray(kept.prefixItems) && kept.maxItems === kept.prefixItems.length;
  return closed ? kept : schema;
}

/**
 * A value that may be null as one schema with two types. zod writes it so itself unless the value has limits, which say
 * nothing of null: `anyOf` would be a second form of the same.
 */
function nullAmongTypes(schema: Json): Json {
  const { anyOf, ...rest } = schema;
  const [value, none, more] = (anyOf ?? []) as Json[];
  const { type } = value ?? {};
  const plain = type === "number" || type === "integer" || type === "string" || type === "boolean";
  if (!plain || none?.type !== "null" || more || value?.enum || value?.const !== undefined) return schema;
  return { ...value, ...rest, type: [type, "null"] };
}
