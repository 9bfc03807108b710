/**
 * Taking a value in: validated by its schema, or refused with every issue told.
 *
 * @module
 */
import type { z } from "zod";
import { EngineError } from "../engine/errors.ts";
import { inspect } from "./inspect.ts";
import { flattenIssues, MAX_ISSUES } from "./issues.ts";
import { type Issue, impossible } from "./problem.ts";
import { fieldsNamed, repeatedFields } from "./repeated-fields.ts";
import { unknownNames } from "./unknown-names.ts";

/**
 * @param schema - what the value must be; synchronous, so that zod's compiled parser runs
 * @param value - parsed JSON
 * @param text - the JSON itself, where fields that stand twice in it are to be refused
 * @throws ProblemError (422) with JSON Pointers into the value
 */
export function accept<S extends z.ZodType>(schema: S, value: unknown, text = ""): z.output<S> {
  const repeated = fieldsNamed(text) > inspect(value) ? repeatedFields(text, MAX_ISSUES) : [];
  const parsed = schema.safeParse(value);
  if (parsed.success && repeated.length === 0) return parsed.data;
  const issues = [...repeated, ...(parsed.error ? flattenIssues(schema, parsed.error, value) : [])].slice(
    0,
    MAX_ISSUES,
  );
  // What stands in a field that is refused as a whole needs no word of its own.
  const told = ({ pointer }: Issue) => issues.some((one) => `${pointer}/`.startsWith(`${one.pointer}/`));
  const names = unknownNames(value, MAX_ISSUES - issues.length).filter((name) => !told(name));
  throw impossible([...issues, ...names]);
}

/**
 * Runs an engine call whose pointers start inside the request.
 * @param prefix - JSON Pointer of what the engine was given, e.g. `/glaze`
 * @throws ProblemError (422) with the engine's issues, pointers prefixed
 */
export function within<T>(prefix: string, call: () => T): T {
  try {
    return call();
  } catch (error) {
    throw asProblem(error, prefix);
  }
}

/** An engine's refusal as a problem; anything else as it came. */
export function asProblem(error: unknown, prefix = ""): unknown {
  if (!(error instanceof EngineError)) return error;
  return impossible(error.issues.map((issue) => ({ ...issue, pointer: prefix + issue.pointer })));
}
