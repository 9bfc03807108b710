/** What breaks when one JSON Schema takes the place of another. @module */

export interface Schema {
  [keyword: string]: unknown;
  $ref?: string;
  type?: string | string[];
  properties?: Record<string, Schema>;
  required?: string[];
  items?: Schema;
  prefixItems?: Schema[];
  anyOf?: Schema[];
  oneOf?: Schema[];
  enum?: unknown[];
  const?: unknown;
  additionalProperties?: boolean | Schema;
}

/** Which way a value travels. */
type Way = "in" | "out";

/** Limits, and whether a request is asked for more when they rise or when they fall. */
const LIMITS = {
  minimum: "rises",
  exclusiveMinimum: "rises",
  minItems: "rises",
  minLength: "rises",
  minProperties: "rises",
  maximum: "falls",
  exclusiveMaximum: "falls",
  maxItems: "falls",
  maxLength: "falls",
  maxProperties: "falls",
} as const;

/** Where named schemas are found, what was found so far, and which pairs have been looked at. */
export interface Comparison {
  before: Record<string, Schema>;
  after: Record<string, Schema>;
  found: string[];
  seen: Set<string>;
}

/**
 * Adds every break between two schemas to what was found.
 * @param way - whether the value is sent in or comes out
 * @param at - where in the description, for the sentence
 */
export function compareSchemas(c: Comparison, way: Way, at: string, oldSchema: Schema, newSchema: Schema): void {
  const pair = `${way} ${oldSchema.$ref} ${newSchema.$ref}`;
  if (oldSchema.$ref && newSchema.$ref) {
    if (c.seen.has(pair)) return;
    c.seen.add(pair);
  }
  const place = nameOf(oldSchema) ?? at;
  const old = resolve(oldSchema, c.before);
  const now = resolve(newSchema, c.after);
  compareTypes(c, way, place, old, now);
  compareWords(c, place, old, now);
  if (way === "in") compareLimits(c, place, old, now);
  compareFields(c, way, place, old, now);
  if (old.items && now.items) compareSchemas(c, way, `${place}[]`, old.items, now.items);
  old.prefixItems?.forEach((item, i) => {
    const same = now.prefixItems?.[i];
    if (same) compareSchemas(c, way, `${place}[${i}]`, item, same);
    else c.found.push(`${place}: entry ${i + 1} is gone`);
  });
  const [oldRest, rest] = [old.additionalProperties, now.additionalProperties];
  if (typeof oldRest === "object" && typeof rest === "object") compareSchemas(c, way, `${place}{}`, oldRest, rest);
  if (way === "in" && oldRest !== false && rest === false) c.found.push(`${place} no longer takes other fields`);
  compareBranches(c, way, place, old.anyOf ?? old.oneOf ?? [], now.anyOf ?? now.oneOf ?? []);
}

const nameOf = ({ $ref }: Schema): string | undefined => $ref?.split("/").at(-1);
const resolve = (schema: Schema, named: Record<string, Schema>): Schema =>
  nullAmongTypes(schema.$ref ? (named[nameOf(schema)!] ?? {}) : schema);

/** A value that may be null has two forms, `anyOf` and a list of types; they mean the same, and are compared as the second. */
function nullAmongTypes(schema: Schema): Schema {
  const { anyOf = [], ...rest } = schema;
  const [value, none] = anyOf;
  const plain = typeof value?.type === "string" && !["object", "array", "null"].includes(value.type);
  if (anyOf.length !== 2 || !plain || none?.type !== "null" || value.enum || value.const !== undefined) return schema;
  return { ...value, ...rest, type: [value.type as string, "null"] };
}
const typesOf = ({ type }: Schema): string[] => (type === undefined ? [] : [type].flat());

/** Whether each of `some` is among `all`; every integer is a number. */
const within = (some: string[], all: string[]): boolean =>
  some.every((type) => all.includes(type) || (type === "integer" && all.includes("number")));

function compareTypes({ found }: Comparison, way: Way, at: string, old: Schema, now: Schema): void {
  const [before, after] = [typesOf(old), typesOf(now)];
  if (before.length === 0 && after.length === 0) return;
  const fits = way === "in" ? within(before, after) : within(after, before);
  if (!fits || before.length === 0 || after.length === 0) {
    found.push(`${at} was ${before.join(" or ") || "anything"} and is ${after.join(" or ") || "anything"}`);
  }
}

function compareWords({ found }: Comparison, at: string, old: Schema, now: Schema): void {
  const wordsOf = (schema: Schema) => schema.enum ?? (schema.const === undefined ? undefined : [schema.const]);
  const [before, after] = [wordsOf(old), wordsOf(now)];
  if (!after) return;
  if (!before) found.push(`${at} now takes only some words`);
  for (const word of before ?? [])
    if (!after.includes(word)) found.push(`${at} no longer knows ${JSON.stringify(word)}`);
}

function compareLimits({ found }: Comparison, at: string, old: Schema, now: Schema): void {
  for (const [limit, stricter] of Object.entries(LIMITS)) {
    const [before, after] = [old[limit] as number | undefined, now[limit] as number | undefined];
    if (after === undefined || before === after) continue;
    if (before === undefined || (stricter === "rises" ? after > before : after < before)) {
      found.push(`${at}: ${limit} was ${before ?? "open"} and is ${after}`);
    }
  }
  if (now.pattern !== undefined && now.pattern !== old.pattern) found.push(`${at}: pattern changed`);
}

function compareFields(c: Comparison, way: Way, at: string, old: Schema, now: Schema): void {
  for (const [field, schema] of Object.entries(old.properties ?? {})) {
    const same = now.properties?.[field];
    if (!same) c.found.push(`${at}.${field} is gone`);
    else compareSchemas(c, way, `${at}.${field}`, schema, same);
  }
  const [before, after] = [old.required ?? [], now.required ?? []];
  if (way === "in") {
    for (const field of after) if (!before.includes(field)) c.found.push(`${at}.${field} is now required`);
  } else {
    for (const field of before) {
      if (now.properties?.[field] && !after.includes(field)) c.found.push(`${at}.${field} may now be missing`);
    }
  }
}

/** Each way of saying a thing that clients know must still be one: the old among the new going in, the other way out. */
function compareBranches(c: Comparison, way: Way, at: string, old: Schema[], now: Schema[]): void {
  if (old.length === 0 && now.length === 0) return;
  const [needed, offered] = way === "in" ? [old, now] : [now, old];
  for (const branch of needed) {
    const same = offered.find((one) => keyOf(one) === keyOf(branch));
    if (!same) c.found.push(`${at}: ${keyOf(branch)} is ${way === "in" ? "no longer taken" : "a new kind of answer"}`);
    else if (way === "in") compareSchemas(c, way, at, branch, same);
    else compareSchemas(c, way, at, same, branch);
  }
}

/** What tells a branch from its neighbours: its name, its word, or its type and required fields. */
const keyOf = (schema: Schema): string =>
  nameOf(schema) ??
  (schema.const === undefined
    ? [typesOf(schema).join("/"), ...(schema.required ?? [])].join(" ")
    : JSON.stringify(schema.const));
