/** Knowing when an answer is out: at once for a whole one, at its end for a stream. @module */
import type { Context } from "hono";
import { NDJSON_TYPE } from "./media.ts";

/** How an answer ended: all sent, let go of by the caller, broken off, or told to make room for others. */
export type Ending = "answered" | "cancelled" | "failed" | "gave way";

/** Why a stream was broken off to make room for others. */
export class GaveWay extends Error {
  constructor(message: string) {
    super(message);
    // Nothing is wrong, and the server's adapter prints what it is told: one line will do.
    this.stack = message;
  }
}

/** For whoever watches a stream while it is sent. */
export interface Following {
  /** Told the bytes of every piece that is handed on. */
  sent: (bytes: number) => void;
  /** Breaks the stream off when it aborts; its reason is what the reader of the answer is told. */
  until: AbortSignal;
}

/** Whether an answer is a stream of lines, which goes out bit by bit. */
export function isStream(response: Response): boolean {
  return response.headers.get("content-type") === NDJSON_TYPE && response.body !== null;
}

/**
 * Calls back once when an answer is out, however often its stream is told to end.
 * @param response - an answer; its body is looked at only when it is a stream of lines
 * @param done - told how it ended
 * @param following - watches a stream and may end it
 * @returns the answer to send instead
 */
export function whenSent(response: Response, done: (ending: Ending) => void, following?: Following): Response {
  if (!isStream(response)) {
    done("answered");
    return response;
  }
  const reader = response.body!.getReader();
  let out = false;
  const ended = (how: Ending) => {
    if (!out) done(how);
    out = true;
  };
  const followed = new ReadableStream<Uint8Array>(
    {
      start(controller) {
        following?.until.addEventListener("abort", () => {
          if (out) return;
          ended("gave way");
          controller.error(following.until.reason);
          reader.cancel(following.until.reason).catch(() => {});
        });
      },
      async pull(controller) {
        try {
          const { done: last, value } = await reader.read();
          if (out) return;
          if (!last) {
            following?.sent(value.byteLength);
            return controller.enqueue(value);
          }
          ended("answered");
          controller.close();
        } catch (error) {
          if (out) return;
          ended(error instanceof GaveWay ? "gave way" : "failed");
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
