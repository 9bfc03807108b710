/**
 * Which of several ways of saying a thing was meant, judged by the fields present.
 *
 * @module
 */
import type { z } from "zod";
import { meantField } from "./meant-field.ts";

/** The parts of a zod schema that a walk needs. */
export interface Def {
  type: string;
  shape?: Record<string, z.ZodType>;
  element?: z.ZodType;
  valueType?: z.ZodType;
  innerType?: z.ZodType;
  items?: z.ZodType[];
  options?: z.ZodType[];
  values?: unknown[];
}

export const defOf = (schema: z.ZodType): Def => schema._zod.def as unknown as Def;

/** The branch that was meant; or what is wrong when none or several could be. */
export type Choice =
  | { index: number }
  | { missing: string[] }
  | { misspelt: { key: string; suggestion: string; allowed: string[] } }
  | { conflict: string[] };

/**
 * Chooses a branch of a union of objects.
 * @param options - the branches; each has a required field that the others lack or leave optional
 * @param value - the object that was read
 */
export function chooseBranch(options: readonly z.ZodType[], value: object): Choice {
  const objects = options.flatMap((option, index) => (isObject(option) ? [index] : []));
  if (objects.length === 1) return { index: objects[0]! };
  const shapes = options.map((option) => defOf(option).shape ?? {});
  const tagged = shapes.findIndex((shape) => Object.entries(shape).some(([key, one]) => isTag(one, value, key)));
  if (tagged >= 0) return { index: tagged };
  const required = shapes.map((shape) => Object.keys(shape).filter((key) => !isOptional(shape[key]!)));
  const telling = required.map((keys) => keys.filter((key) => !required.every((other) => other.includes(key))));
  const keys = Object.keys(value);
  const strangers = shapes.map((shape) => keys.filter((key) => !Object.hasOwn(shape, key)).length);
  const candidates = telling.flatMap((wanted, index) =>
    isObject(options[index]!) && wanted.every((key) => Object.hasOwn(value, key)) ? [index] : [],
  );
  const fewest = Math.min(...candidates.map((index) => strangers[index]!));
  const best = candidates.filter((index) => strangers[index] === fewest);
  if (best.length === 1) return { index: best[0]! };
  if (best.length > 1) return { conflict: best.map((index) => telling[index]![0]!) };
  const ways = telling.flatMap((wanted, index) => (isObject(options[index]!) ? (wanted[0] ?? []) : []));
  for (const key of keys) {
    if (shapes.some((shape) => Object.hasOwn(shape, key))) continue;
    const suggestion = meantField(key, ways);
    if (suggestion) return { misspelt: { key, suggestion, allowed: ways } };
  }
  return { missing: ways };
}

/** Whether a field that can hold one word alone holds it. */
const isTag = (schema: z.ZodType, value: object, key: string): boolean =>
  defOf(schema).type === "literal" && (defOf(schema).values ?? []).includes((value as Record<string, unknown>)[key]);

/** Numbers and texts may stand beside objects in a union; no field tells of them. */
const isObject = (schema: z.ZodType): boolean => defOf(schema).shape !== undefined;

function isOptional(schema: z.ZodType): boolean {
  const { type } = defOf(schema);
  return type === "optional" || type === "default";
}
