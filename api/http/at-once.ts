/** How much is under way at once: more is turned away early, while there is memory left to say so. @module */
import type { MiddlewareHandler } from "hono";
import type { Env } from "./operation.ts";
import { ProblemError } from "./problem.ts";
import { replaceAnswer, whenSent } from "./when-sent.ts";

/** What to wait before asking again [s]. Most questions take milliseconds. */
const RETRY_S = 1;

/**
 * Answers 503 where as many questions are under way as may be. A stream counts until its last line is out.
 * @param most - questions under way at once
 */
export function limitAtOnce(most: number): MiddlewareHandler<Env> {
  let underWay = 0;
  return async function atOnce(c, next) {
    if (underWay >= most) {
      const detail = `I am already working on ${most} questions, which is all I take at once. Ask again in ${RETRY_S} s.`;
      throw new ProblemError("busy", detail, { headers: { "retry-after": String(RETRY_S) } });
    }
    underWay += 1;
    await next();
    const response = c.res;
    const followed = whenSent(response, () => {
      underWay -= 1;
    });
    if (followed !== response) replaceAnswer(c, followed);
  };
}
