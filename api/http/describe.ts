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
  ["blends", "Where in a line, triangle or grid of glazes it fits."],
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

Every figure comes with its interval, unit, temperature range and source. Units are in the names (\`peakC\`, \`thicknessMm\`) or beside the value. Nothing is kept: a request carries all it needs. The same request gets the same answer, byte for byte. Every failure is \`application/problem+json\` (RFC 9457), with JSON Pointers to the fields at fault.

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

/** Every named schema that the paths reach, by zod's own hand. */
function namedSchemas(reached: string[]): Record<string, unknown> {
  const { schemas } = z.toJSONSchema(z.globalRegistry, {
    io: "input",
    target: "draft-2020-12",
    unrepresentable: "any",
    uri: (id) => `#/components/schemas/${id}`,
  });
  const named: Record<string, unknown> = {};
  for (const id of reached.sort()) {
    const { $schema, $id, ...schema } = schemas[id] as Record<string, unknown>;
    named[id] = closedByLength(schema) as Record<string, unknown>;
  }
  return named;
}

/**
 * Tuples closed by their length alone. `items: false` beside `prefixItems` and `maxItems` says it twice, and generators
 * of clients that know no schema but an object stumble over it.
 */
function closedByLength(schema: unknown): unknown {
  if (Array.isArray(schema)) return schema.map(closedByLength);
  if (typeof schema !== "object" || schema === null) return schema;
  const { prefixItems, items, maxItems } = schema as Record<string, unknown>;
  const closed = items === false && Array.isArray(prefixItems) && maxItems === prefixItems.length;
  const kept = Object.entries(schema).filter(([key]) => !(closed && key === "items"));
  return Object.fromEntries(kept.map(([key, value]) => [key, closedByLength(value)]));
}
