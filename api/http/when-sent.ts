/** Knowing when an answer is out: at once for a whole one, at its end for a stream. @module */
import type { Context } from "hono";
import { NDJSON_TYPE } from "./media.ts";

/** How an answer ended: all sent, let go of by the caller, or broken off. */
export type Ending = "answered" | "cancelled" | "failed";

/**
 * Calls back once when an answer is out.
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
  const followed = new ReadableStream<Uint8Array>(
    {
      async pull(controller) {
        try {
          const { done: ended, value } = await reader.read();
          if (!ended) return controller.enqueue(value);
          done("answered");
          controller.close();
        } catch (error) {
          done("failed");
          controller.error(error);
        }
      },
      async cancel(reason) {
        done("cancelled");
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
