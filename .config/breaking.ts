/**
 * What in a new description would break a client that was written for an old one.
 *
 * What goes in may be asked for less strictly, never more; what comes out may say more, never less. New words in an
 * answer's list of words are no break: clients are told to expect them.
 *
 * @module
 */

import { compareSchemas, type Schema } from "./breaking-schemas.ts";

type Content = Record<string, { schema?: Schema }>;

interface Operation {
  operationId?: string;
  parameters?: { name: string; in: string; required?: boolean; schema?: Schema }[];
  requestBody?: { content: Content };
  responses?: Record<string, { content?: Content }>;
}

/** The parts of an OpenAPI document that are compared. */
export interface Description {
  info: { version: string };
  paths: Record<string, Record<string, Operation>>;
  components: { schemas: Record<string, Schema> };
}

/**
 * Every break, in the order of the old description; none where clients of the old one keep working.
 * @param before - the description that clients were written for
 * @param after - the one that takes its place
 */
export function breakingChanges(before: Description, after: Description): string[] {
  const found: string[] = [];
  const seen = new Set<string>();
  const compare = (way: "in" | "out", at: string, old: Schema, now: Schema) =>
    compareSchemas(
      { before: before.components.schemas, after: after.components.schemas, found, seen },
      way,
      at,
      old,
      now,
    );
  for (const [path, methods] of Object.entries(before.paths)) {
    for (const [method, old] of Object.entries(methods)) {
      const name = `${method.toUpperCase()} ${path}`;
      const now = after.paths[path]?.[method];
      if (now) compareOperation(name, old, now);
      else found.push(`${name} is gone`);
    }
  }
  return [...new Set(found)];

  function compareOperation(name: string, old: Operation, now: Operation): void {
    if (old.operationId !== now.operationId) found.push(`${name} is no longer called ${old.operationId}`);
    const key = (one: { name: string; in: string }) => `${one.in} ${one.name}`;
    const parameters = new Map((now.parameters ?? []).map((one) => [key(one), one]));
    const known = new Map((old.parameters ?? []).map((one) => [key(one), one]));
    for (const [which, one] of known) {
      const same = parameters.get(which);
      if (!same) found.push(`${name}: parameter ${one.name} is gone`);
      else compare("in", `${name} ?${one.name}`, one.schema ?? {}, same.schema ?? {});
    }
    for (const [which, one] of parameters) {
      if (one.required && !known.get(which)?.required) found.push(`${name}: parameter ${one.name} is now required`);
    }
    compareContent("in", `${name} request`, old.requestBody?.content, now.requestBody?.content);
    for (const [status, { content }] of Object.entries(old.responses ?? {})) {
      compareContent("out", `${name} ${status}`, content, now.responses?.[status]?.content);
    }
  }

  function compareContent(way: "in" | "out", at: string, old?: Content, now?: Content): void {
    for (const [type, { schema }] of Object.entries(old ?? {})) {
      const same = now?.[type];
      if (!same) found.push(`${at}: ${type} is gone`);
      else compare(way, at, schema ?? {}, same.schema ?? {});
    }
  }
}

/**
 * Whether a break is owned up to: below 1.0.0 the middle number has to rise, from there on the first.
 * @example raised("0.1.4", "0.2.0") // true
 */
export function raised(before: string, after: string): boolean {
  const [oldMajor = 0, oldMinor = 0] = before.split(".").map(Number);
  const [major = 0, minor = 0] = after.split(".").map(Number);
  return major > oldMajor || (major === 0 && oldMajor === 0 && minor > oldMinor);
}
