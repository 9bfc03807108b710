/**
 * What no request may hold, whatever its shape: endless nesting, and keys that reach for the object's insides.
 *
 * @module
 */
import { toPointer } from "./pointer.ts";
import { impossible } from "./problem.ts";

/** Deepest nesting of a request [levels]. The deepest honest request has seven. */
export const MAX_DEPTH = 32;

/**
 * Walks a parsed value once.
 * @returns how many fields it has, all levels together
 * @throws ProblemError (422) where it is nested too deep or has a field called `__proto__`
 */
export function inspect(value: unknown): number {
  return typeof value === "object" && value !== null ? walk(value, 1, []) : 0;
}

function walk(value: object, depth: number, path: PropertyKey[]): number {
  let fields = 0;
  if (depth > MAX_DEPTH) {
    const message = `This is nested more than ${MAX_DEPTH} levels deep. A request needs about seven.`;
    throw impossible([{ pointer: toPointer(path.slice(0, 4)), message, allowed: [MAX_DEPTH] }]);
  }
  if (Array.isArray(value)) {
    for (let i = 0; i < value.length; i++) {
      const item = value[i];
      if (typeof item === "object" && item !== null) fields += walk(item, depth + 1, [...path, i]);
    }
    return fields;
  }
  for (const key in value) {
    if (key === "__proto__") {
      throw impossible([{ pointer: toPointer([...path, key]), message: "I don't know the field `__proto__`." }]);
    }
    fields += 1;
    const item = (value as Record<string, unknown>)[key];
    if (typeof item === "object" && item !== null) fields += walk(item, depth + 1, [...path, key]);
  }
  return fields;
}
