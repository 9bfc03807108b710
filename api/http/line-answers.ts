/**
 * Bulk questions: each line judged on its own, a bad one answered in its place.
 *
 * @module
 */
import type { Context } from "hono";
import type { z } from "zod";
import { accept, asProblem } from "./accept.ts";
import { describeLineFault } from "./json-fault.ts";
import { NDJSON_TYPE, requireContentType } from "./media.ts";
import { answerLines, MAX_LINE_BYTES } from "./ndjson.ts";
import type { Env } from "./operation.ts";
import { ProblemError, problemDocument } from "./problem.ts";
import { parseJson } from "./read-json.ts";

/**
 * Answers a request of one JSON a line.
 * @param schema - what a line must be
 * @param compute - answers a line's question, or throws
 * @returns one JSON a line: `{ line, id?, result }`, or `{ line, id?, error }` in the place of a bad line
 */
export function lineAnswers<S extends z.ZodType<{ id?: string | undefined }>>(
  c: Context<Env>,
  schema: S,
  compute: (question: Omit<z.output<S>, "id">) => unknown,
): Response {
  requireContentType(c, NDJSON_TYPE);
  const requestId = c.get("requestId");
  const problem = (line: number, error: unknown, id?: string): string => {
    const known = asProblem(error);
    if (known instanceof ProblemError) return JSON.stringify({ line, id, error: problemDocument(known, requestId) });
    c.get("report")(error);
    const mine = new ProblemError("internal", "This line broke something on my side.");
    return JSON.stringify({ line, id, error: problemDocument(mine, requestId) });
  };
  const body = c.req.raw.body ?? new Blob([]).stream();
  const answers = answerLines(body, {
    answer(text, line) {
      let value: unknown;
      try {
        value = parseJson(text, describeLineFault);
        const { id, ...question } = accept(schema, value, text) as { id?: string };
        const tag = id === undefined ? "" : `,"id":${JSON.stringify(id)}`;
        return `{"line":${line}${tag},"result":${JSON.stringify(compute(question as Omit<z.output<S>, "id">))}}`;
      } catch (error) {
        return problem(line, error, ownTag(value));
      }
    },
    tooLong(line) {
      const limit = `${MAX_LINE_BYTES / 1024} kB`;
      const issues = [{ pointer: "", message: `The line is over ${limit}.`, allowed: [MAX_LINE_BYTES] }];
      return problem(line, new ProblemError("too-large", `A line may hold ${limit}.`, { issues }));
    },
  });
  return c.body(answers, 200, { "content-type": NDJSON_TYPE, "cache-control": "no-store" });
}

/** The tag of a line that was refused, so that its sender can tell which it was. */
function ownTag(value: unknown): string | undefined {
  const id = typeof value === "object" && value !== null ? (value as { id?: unknown }).id : undefined;
  return typeof id === "string" && id.length <= 200 ? id : undefined;
}
