/**
 * How often one caller may ask. Counts by key where there are keys, by address otherwise.
 *
 * @module
 */
import type { MiddlewareHandler } from "hono";
import type { Env } from "./operation.ts";
import { ProblemError } from "./problem.ts";

const WINDOW_S = 60;
/** Callers remembered at once: what a flood of made-up addresses can cost is bounded. */
const MOST_CALLERS = 10_000;

interface Window {
  endsMs: number;
  left: number;
}

/**
 * Answers 429 once a caller has used up the minute that began with its first request.
 *
 * The headers are those of the IETF draft "RateLimit header fields for HTTP": the policy, and what is left of it.
 * @param perMinute - requests that one caller may send in a minute
 * @param now - clock [ms]
 */
export function limitRate(perMinute: number, now: () => number): MiddlewareHandler<Env> {
  const windows = new Map<string, Window>();
  return async function rateLimit(c, next) {
    const time = now();
    const window = windowOf(windows, c.get("caller"), time, perMinute);
    const seconds = Math.max(1, Math.ceil((window.endsMs - time) / 1000));
    const refused = window.left === 0;
    if (!refused) window.left -= 1;
    c.header("ratelimit-policy", `"minute";q=${perMinute};w=${WINDOW_S}`);
    c.header("ratelimit", `"minute";r=${window.left};t=${seconds}`);
    if (refused) {
      const detail = `You may send ${perMinute} requests a minute. Send the next one in ${seconds} s. For many recipes at once use a /stream address: it counts as one.`;
      throw new ProblemError("too-many", detail, { headers: { "retry-after": String(seconds) } });
    }
    await next();
  };
}

function windowOf(windows: Map<string, Window>, caller: string, time: number, perMinute: number): Window {
  const known = windows.get(caller);
  if (known && known.endsMs > time) return known;
  // The oldest stand first, so the ended ones do too; where none has ended the oldest has to go.
  windows.delete(caller);
  for (const [name, { endsMs }] of windows) {
    if (endsMs > time && windows.size < MOST_CALLERS) break;
    windows.delete(name);
  }
  const fresh = { endsMs: time + WINDOW_S * 1000, left: perMinute };
  windows.set(caller, fresh);
  return fresh;
}
