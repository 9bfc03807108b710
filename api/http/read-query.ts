/** Reading query parameters: validated, unknown ones refused by name, repeated ones too. @module */
import type { Context } from "hono";
import type { z } from "zod";
import { accept } from "./accept.ts";
import { toPointer } from "./pointer.ts";
import { impossible } from "./problem.ts";

/**
 * @param schema - a strict object, one field a parameter
 * @throws ProblemError (422); pointers are `/name of the parameter`
 */
export function readQuery<S extends z.ZodType>(c: Context, schema: S): z.output<S> {
  const given: Record<string, string> = {};
  for (const [name, values] of Object.entries(c.req.queries())) {
    if (values.length > 1) {
      throw impossible([
        { pointer: toPointer([name]), message: `\`${name}\` is given ${values.length} times. Keep one.` },
      ]);
    }
    given[name] = values[0]!;
  }
  return accept(schema, given);
}
