/**
 * Reading a JSON request: its type, its size, its syntax, its shape.
 *
 * @module
 */
import type { Context } from "hono";
import type { z } from "zod";
import { accept } from "./accept.ts";
import type { Place } from "./at-once.ts";
import { describeFault } from "./json-fault.ts";
import { JSON_TYPE, requireContentType } from "./media.ts";
import { ProblemError } from "./problem.ts";

/** Largest JSON request [bytes]. */
export const MAX_BODY_BYTES = 256 * 1024;
/** Longest wait for a whole JSON request [ms]. */
const MAX_WAIT_MS = 30_000;

/**
 * Reads, parses and validates the request's JSON.
 * @throws ProblemError 400, 408, 413, 415 or 422
 */
export async function readJson<S extends z.ZodType>(c: Context, schema: S): Promise<z.output<S>> {
  requireContentType(c, JSON_TYPE);
  const text = await inTime(whole(readText(c)), c.get("place"));
  await ownTurn(c);
  return accept(schema, parseJson(text), text);
}

/** Waits while others are worked out. Whoever has gone meanwhile is asked nothing more. */
async function ownTurn(c: Context): Promise<void> {
  const turn = c.get("turns")?.ask();
  if (!turn) return;
  const { signal } = c.req.raw;
  await turn;
  if (signal.aborted) throw new ProblemError("too-slow", "You left before your turn came. Ask again.");
}

/**
 * @param describe - says where the text stops being JSON
 * @throws ProblemError (400) with that
 */
export function parseJson(text: string, describe = describeFault): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw new ProblemError("malformed-json", describe(text));
  }
}

/** A sender that goes away in the middle is no fault of ours, and must not look like one in the log. */
async function whole(text: Promise<string>): Promise<string> {
  try {
    return await text;
  } catch (error) {
    if (error instanceof ProblemError) throw error;
    throw new ProblemError("malformed-json", "The request broke off before it was whole. Send it again.");
  }
}

async function readText(c: Context): Promise<string> {
  const length = c.req.header("content-length");
  if (length !== undefined && c.req.header("transfer-encoding") === undefined) {
    if (Number(length) > MAX_BODY_BYTES) throw tooLarge();
    return c.req.text();
  }
  const body = c.req.raw.body;
  if (!body) return "";
  const reader = body.getReader();
  const decoder = new TextDecoder();
  let text = "";
  let bytes = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return text + decoder.decode();
    bytes += value.byteLength;
    if (bytes > MAX_BODY_BYTES) {
      await reader.cancel().catch(() => {});
      throw tooLarge();
    }
    text += decoder.decode(value, { stream: true });
  }
}

function tooLarge(): ProblemError {
  const limit = `${MAX_BODY_BYTES / 1024} kB`;
  return new ProblemError(
    "too-large",
    `A request may hold ${limit}. For many recipes at once send them line by line to a /stream address.`,
    {
      issues: [{ pointer: "", message: `The request is over ${limit}.`, allowed: [MAX_BODY_BYTES] }],
    },
  );
}

/** Waits for the body, its place among those under way left to others. */
async function inTime<T>(work: Promise<T>, place: Place | undefined): Promise<T> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<never>((_, reject) => {
    const detail = `The whole request must arrive within ${MAX_WAIT_MS / 1000} s. Send it again.`;
    timer = setTimeout(() => reject(new ProblemError("too-slow", detail)), MAX_WAIT_MS);
    place?.leave(reject);
  });
  try {
    return await Promise.race([work, late]);
  } finally {
    clearTimeout(timer);
    place?.takeUp();
  }
}
