/** Knowing when an answer is out: at once for a whole one, at its end for a stream. @module */
import type { Context } from "hono";
import { NDJSON_TYPE } from "./media.ts";

/** How an answer ended: all sent, let go of by the caller, or broken off. */
export type Ending = "answered" | "cancelled" | "failed";

/**
 * Calls back once when an answer is out, however often its stream is told to end.
 * @param response - an answer; its body is looked at only when it is a stream of lines
 * @param done - told how it ended
 * @returns the answer to send instead
 */
export function whenSent(response: Response, done: (ending: Ending) => void): Response {
  if (response.headers.get("content-type") !== NDJSON_TYPE || !response.body) {
    done("answered");
    return response;
  }
  const reader = response.body.getReader();
  let out = false;
  const ended = (how: Ending) => {
    if (!out) done(how);
    out = true;
  };
  const followed = new ReadableStream<Uint8Array>(
    {
      async pull(controller) {
        try {
          const { done: last, value } = await reader.read();
          if (!last) return controller.enqueue(value);
          ended("answered");
          controller.close();
        } catch (error) {
          ended("failed");
          controller.error(error);
        }
      },
      async cancel(reason) {
        ended("cancelled");
        await reader.cancel(reason);
      },
    },
    { highWaterMark: 0 },
  );
  return new Response(followed, { status: response.status, headers: response.headers });
}

/** Puts another answer in the place of the one at hand: assigning over it would copy its headers once more. */
export function replaceAnswer(c: Context, response: Response): void {
  c.res = undefined;
  c.res = response;
}
