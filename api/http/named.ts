/** One thing by its name in the address: found, or 404 with the nearest name. @module */
import type { Context } from "hono";
import { EngineError } from "../engine/errors.ts";
import { ProblemError } from "./problem.ts";

/**
 * @param c - a request whose route has an `:id`
 * @param list - address of the list it stands in
 * @param find - looks it up, throwing an EngineError where there is none
 * @throws ProblemError (404)
 */
export function named<T>(c: Context, list: string, find: (id: string) => T): T {
  const id = c.req.param("id") ?? "";
  try {
    return find(id);
  } catch (error) {
    if (!(error instanceof EngineError)) throw error;
    const suggestion = error.issues[0]?.suggestion;
    const meant = suggestion ? ` Did you mean ${suggestion}?` : "";
    throw new ProblemError("unknown-name", `There is none of that name.${meant} ${list} has them all.`, {
      ...(suggestion ? { suggestion } : {}),
    });
  }
}
