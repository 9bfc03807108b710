/** The served description, as a reader of it sees it: its calls, and a judge of what it promises. @module */
import { Ajv2020, type AnySchema, type ValidateFunction } from "ajv/dist/2020.js";

export interface Media {
  schema: AnySchema;
  example?: unknown;
}
export interface Described {
  description: string;
  content?: Record<string, Media>;
  headers?: Record<string, unknown>;
}
export interface Operation {
  operationId: string;
  parameters?: { name: string; in: "path" | "query"; schema: { examples?: unknown[] } }[];
  requestBody?: { content: Record<string, Media> };
  responses: Record<string, Described>;
}
export interface Document {
  info: { version: string };
  paths: Record<string, Record<string, Operation>>;
  components: { schemas: Record<string, Record<string, unknown>> };
}

/** One call of the description. */
export interface Call {
  method: string;
  path: string;
  operation: Operation;
}

export function callsOf({ paths }: Document): Call[] {
  return Object.entries(paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, operation]) => ({ method: method.toUpperCase(), path, operation })),
  );
}

/** Judges values by the description's own JSON Schemas (draft 2020-12), and by nothing else. */
export class Judge {
  private readonly ajv = new Ajv2020({ strict: true, allowUnionTypes: true, strictTuples: false, allErrors: true });
  private readonly compiled = new Map<AnySchema, ValidateFunction>();

  constructor(document: Document) {
    this.ajv.addSchema({ $id: "api", $defs: absolute(document.components.schemas) });
  }

  /** What the schema finds wrong with a value; nothing where it fits. */
  faults(schema: AnySchema, value: unknown): string[] {
    let validate = this.compiled.get(schema);
    if (!validate) {
      validate = this.ajv.compile(absolute(schema) as AnySchema);
      this.compiled.set(schema, validate);
    }
    if (validate(value)) return [];
    return (validate.errors ?? []).map(
      (error) => `${error.instancePath} ${error.message} ${JSON.stringify(error.params)}`,
    );
  }
}

/** Named schemas are kept under `$defs`, the only place where JSON Schema itself knows of them. */
function absolute(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(absolute);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]) => [
      key,
      key === "$ref" && typeof inner === "string"
        ? inner.replace("#/components/schemas/", "api#/$defs/")
        : absolute(inner),
    ]),
  );
}
