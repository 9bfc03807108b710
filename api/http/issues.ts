/**
 * From what the validator found to what a potter can mend.
 *
 * @module
 */
import { z } from "zod";
import { chooseBranch, type Def, defOf } from "./branch.ts";
import { sayConflict, sayIssue, sayMissing, sayNoWay, sayUnknownField } from "./issue-words.ts";
import { meantField } from "./meant-field.ts";
import { nameOf, toPointer } from "./pointer.ts";
import type { Issue } from "./problem.ts";

/** Most issues told at once; the rest repeat them more often than not. */
export const MAX_ISSUES = 50;

/** How the kinds of value that a union takes are called. */
const KINDS: Readonly<Record<string, string>> = {
  number: "a number",
  string: "a text in double quotes",
  object: "an object in braces",
};

/** What the schema says and what the request holds at one place. */
interface Place {
  schema: z.ZodType | undefined;
  value: unknown;
}

type ZodIssue = z.core.$ZodIssue;

/**
 * Flattens a failed parse to issues, following the branch of each union that the person meant.
 * @param schema - the schema that refused
 * @param error - what it said
 * @param input - what it was given
 */
export function flattenIssues(schema: z.ZodType, error: z.core.$ZodError, input: unknown): Issue[] {
  const found: Issue[] = [];
  for (const issue of error.issues) collect(found, schema, issue, [], input);
  return found.slice(0, MAX_ISSUES);
}

function collect(found: Issue[], root: z.ZodType, issue: ZodIssue, above: PropertyKey[], input: unknown): void {
  if (found.length >= MAX_ISSUES) return;
  const path = [...above, ...issue.path];
  const place = follow(root, path, input);
  if (issue.code === "unrecognized_keys") {
    collectUnknown(found, root, issue.keys, path, place, input);
  } else if (issue.code === "invalid_union") {
    collectUnion(found, root, issue, path, place, input);
  } else {
    found.push({ pointer: toPointer(path), ...sayIssue(issue, path, place.value, describe(place.schema)) });
  }
}

function collectUnion(
  found: Issue[],
  root: z.ZodType,
  issue: z.core.$ZodIssueInvalidUnion,
  path: PropertyKey[],
  { schema, value }: Place,
  input: unknown,
): void {
  const pointer = toPointer(path);
  const name = nameOf(path);
  if (issue.errors.length === 0) {
    const above = follow(root, path.slice(0, -1), input);
    const tag = String(path.at(-1));
    const misspelt = value === undefined && misspeltIn(above, tag);
    if (misspelt)
      found.push({ pointer: toPointer([...path.slice(0, -1), misspelt]), ...sayUnknownField(misspelt, [tag], tag) });
    else found.push({ pointer, ...sayTag(path, above.schema, value) });
    return;
  }
  if (value === undefined) {
    found.push({ pointer, message: sayMissing(name, describe(schema)) });
    return;
  }
  const options = optionsOf(schema);
  const plain = options.findIndex((option) => defOf(unwrap(option)).type === typeof value);
  if (plain >= 0 && typeof value !== "object") {
    for (const inner of issue.errors[plain] ?? []) collect(found, root, inner, path, input);
    return;
  }
  if (typeof value !== "object" || value === null || Array.isArray(value)) {
    const kinds = [...new Set(options.map((option) => KINDS[defOf(unwrap(option)).type] ?? KINDS.object!))];
    found.push({ pointer, message: `${name} must be ${kinds.join(" or ")}, such as ${exampleOf(schema)}.` });
    return;
  }
  const choice = chooseBranch(optionsOf(schema), value);
  if ("index" in choice) {
    for (const inner of issue.errors[choice.index] ?? []) collect(found, root, inner, path, input);
  } else if ("misspelt" in choice) {
    const { key, suggestion, allowed } = choice.misspelt;
    found.push({ pointer: toPointer([...path, key]), ...sayUnknownField(key, allowed, suggestion) });
  } else if ("conflict" in choice) {
    found.push({ pointer, ...sayConflict(choice.conflict) });
  } else {
    found.push({ pointer, ...sayNoWay(name, choice.missing, value) });
  }
}

/** Words for the field that says which of several shapes is meant, where it holds none of their words. */
function sayTag(path: PropertyKey[], schema: z.ZodType | undefined, value: unknown): Omit<Issue, "pointer"> {
  const tags = optionsOf(schema).map((option) => defOf(option).shape?.[String(path.at(-1))]);
  const values = tags.flatMap((tag) => ((tag && defOf(tag).values) ?? []) as string[]);
  const issue = { code: "invalid_value", values, message: "Invalid", path: [], input: value } as z.core.$ZodIssue;
  return sayIssue(issue, path, value, `one of ${values.join(", ")}.`);
}

/** The field that no branch knows and whose name is nearly the wanted one. */
function misspeltIn({ schema, value }: Place, wanted: string): string | undefined {
  const known = optionsOf(schema).flatMap(fieldsOf);
  return Object.keys(value as object).find((key) => !known.includes(key) && meantField(key, [wanted]));
}

/**
 * Fields that a branch does not know. Where the branch that was meant does know one of them, the validator has looked at
 * another, because what is wrong in the meant one put it off: then that one is asked.
 */
function collectUnknown(
  found: Issue[],
  root: z.ZodType,
  keys: string[],
  path: PropertyKey[],
  { schema, value }: Place,
  input: unknown,
): void {
  const options = optionsOf(schema);
  const choice = options.length > 0 ? chooseBranch(options, value as object) : undefined;
  if (choice && "conflict" in choice) {
    found.push({ pointer: toPointer(path), ...sayConflict(choice.conflict) });
    return;
  }
  const branch = choice && "index" in choice ? options[choice.index] : schema;
  const known = fieldsOf(branch);
  if (branch && keys.some((key) => known.includes(key))) {
    for (const inner of branch.safeParse(value).error?.issues ?? []) collect(found, root, inner, path, input);
    return;
  }
  const beside = Object.keys(value as object).filter((key) => known.includes(key));
  const others = options.filter((option) => mayHold(option, beside, value as Record<string, unknown>));
  const names = [...new Set([known, ...others.map(fieldsOf)].flat())];
  const here = value as Record<string, unknown>;
  for (const key of keys) {
    const words = sayUnknownField(key, names, meantField(key, names, here), here[key]);
    found.push({ pointer: toPointer([...path, key]), ...words });
  }
}

/** Whether the fields present, as far as they are known, could stand in this branch as well: a class beside an expansion. */
function mayHold(option: z.ZodType, keys: string[], value: Record<string, unknown>): boolean {
  const shape = defOf(unwrap(option)).shape ?? {};
  return keys.every((key) => {
    const { type, values = [] } = shape[key] ? defOf(shape[key]) : { type: "never" };
    return type !== "never" && (type !== "literal" || values.includes(value[key]));
  });
}

const fieldsOf = (schema: z.ZodType | undefined): string[] =>
  Object.keys((schema && defOf(unwrap(schema)).shape) ?? {});

/** The schema and the value at the end of a path; unions on the way are followed along the branch that was meant. */
function follow(root: z.ZodType, path: PropertyKey[], input: unknown): Place {
  let schema: z.ZodType | undefined = root;
  let value = input;
  for (const key of path) {
    const def: Def | undefined = schema && defOf(unwrap(choose(schema, value)));
    schema = def && (def.shape?.[String(key)] ?? def.element ?? def.valueType ?? def.items?.[Number(key)]);
    value = typeof value === "object" && value !== null ? (value as Record<PropertyKey, unknown>)[key] : undefined;
  }
  return { schema, value };
}

/** Steps into a union where the value says which branch; stays otherwise. */
function choose(schema: z.ZodType, value: unknown): z.ZodType {
  const options = optionsOf(schema);
  if (options.length === 0 || typeof value !== "object" || value === null) return schema;
  const choice = chooseBranch(options, value);
  return "index" in choice && options[choice.index] ? options[choice.index]! : schema;
}

const optionsOf = (schema: z.ZodType | undefined): z.ZodType[] => (schema && defOf(unwrap(schema)).options) ?? [];

function unwrap(schema: z.ZodType): z.ZodType {
  const { type, innerType } = defOf(schema);
  return innerType && (type === "optional" || type === "nullable" || type === "default") ? unwrap(innerType) : schema;
}

/** A short example of a field, as it would be written; a stand-in where there is none. */
function exampleOf(schema: z.ZodType | undefined): string {
  const named = schema && (z.globalRegistry.get(schema) ?? z.globalRegistry.get(unwrap(schema)));
  const [example] = (named?.examples ?? []) as unknown[];
  const written = example === undefined ? "" : JSON.stringify(example);
  return written !== "" && written.length <= 60 ? written : '{ "…": … }';
}

function describe(schema: z.ZodType | undefined): string | undefined {
  if (!schema) return undefined;
  return z.globalRegistry.get(schema)?.description ?? z.globalRegistry.get(unwrap(schema))?.description;
}
