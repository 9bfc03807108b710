/** Reading query parameters: validated, unknown ones refused by name, repeated ones too. @module */
import type { Context } from "hono";
import type { z } from "zod";
import { accept } from "./accept.ts";
import { shorten, toPointer } from "./pointer.ts";
import { impossible } from "./problem.ts";

/**
 * @param schema - a strict object, one field a parameter
 * @throws ProblemError (422); pointers are `/name of the parameter`
 */
export function readQuery<S extends z.ZodType>(c: Context, schema: S): z.output<S> {
  const given: Record<string, string> = Object.create(null);
  for (const [name, value] of new URL(c.req.url).searchParams) {
    if (name in given) {
      throw impossible([{ pointer: toPointer([name]), message: `\`${shorten(name)}\` is given twice. Keep one.` }]);
    }
    given[name] = value;
  }
  return accept(schema, given);
}
