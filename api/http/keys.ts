/**
 * Who may ask: callers with a key, where whoever runs the service has set any.
 *
 * Only hashes of keys are kept, so a look into the settings gives no key away. A key is long and random, so one round
 * of SHA-256 is enough: there is nothing to guess.
 *
 * @module
 */
import type { MiddlewareHandler } from "hono";
import type { Env } from "./operation.ts";
import { ProblemError } from "./problem.ts";

/** Longest key that is looked at [characters]. */
const MAX_KEY = 512;

/**
 * Lets nobody in without a key whose hash is known.
 * @param hashes - SHA-256 of each key, as 64 lower-case hexadecimal digits
 */
export function requireKey(hashes: readonly string[]): MiddlewareHandler<Env> {
  const known = hashes.map((hash) => Uint8Array.from(hash.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16)));
  return async function keys(c, next) {
    const [scheme = "", key = ""] = (c.req.header("authorization") ?? "").split(" ");
    const given = scheme.toLowerCase() === "bearer" && key.length <= MAX_KEY ? key : "";
    const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", new TextEncoder().encode(given)));
    // Every hash is compared to its end, so that the time taken tells nothing of which or how far.
    const found = known.map((one) => sameBytes(one, hash)).lastIndexOf(true);
    if (given === "" || found < 0) {
      const detail = "Send the key that you were given with each request, as authorization: Bearer YOUR-KEY.";
      throw new ProblemError("no-key", detail, { headers: { "www-authenticate": 'Bearer realm="ringtrue"' } });
    }
    c.set("caller", `key ${hashes[found]!.slice(0, 8)}`);
    await next();
  };
}

/** Whether two hashes are the same, in a time that does not depend on where they differ. */
function sameBytes(a: Uint8Array, b: Uint8Array): boolean {
  let difference = a.length ^ b.length;
  for (let i = 0; i < a.length; i++) difference |= a[i]! ^ (b[i] ?? 0);
  return difference === 0;
}
