/** One line for each request, without what was asked: recipes are nobody's business. @module */
import type { MiddlewareHandler } from "hono";
import { routePath } from "hono/route";
import type { Metrics } from "./metrics.ts";
import type { Env } from "./operation.ts";
import { type Ending, replaceAnswer, whenSent } from "./when-sent.ts";

/** What is told of a request. Neither body, query, headers nor address. */
export interface RequestLine {
  /** When the request came, ISO 8601 in UTC. */
  time: string;
  requestId: string;
  method: string;
  /** The address without its query, cut to 200 characters. */
  path: string;
  status: number;
  /** From the request to the last byte handed on [ms]. */
  ms: number;
  ended: Ending;
  /** The first digits of the hash of the caller's key, where keys are asked for. */
  key?: string;
}

/** Who wants to know. */
export interface Listeners {
  log?: ((line: RequestLine) => void) | undefined;
  metrics?: Metrics | undefined;
  now: () => number;
}

/** Tells of each request once its answer is out. */
export function observe({ log, metrics, now }: Listeners): MiddlewareHandler<Env> {
  return async function observed(c, next) {
    const began = now();
    metrics?.begin();
    try {
      await next();
    } catch (error) {
      metrics?.end({ method: c.req.method, route: "unmatched", status: 500, seconds: (now() - began) / 1000 });
      throw error;
    }
    const { res, req } = c;
    const { status } = res;
    const followed = whenSent(res, (ended) => {
      const ms = Math.max(0, now() - began);
      metrics?.end({ method: req.method, route: routeOf(routePath(c, -1)), status, seconds: ms / 1000 });
      const caller = c.get("caller");
      log?.({
        time: new Date(began).toISOString(),
        requestId: c.get("requestId"),
        method: req.method.slice(0, 16),
        path: req.path.slice(0, 200),
        status,
        ms: Math.round(ms * 10) / 10,
        ended,
        ...(caller.startsWith("key ") ? { key: caller.slice(4) } : {}),
      });
    });
    if (followed !== res) replaceAnswer(c, followed);
  };
}

/** Addresses that nothing lives at share one name, or anyone could fill memory with names. */
const routeOf = (path: string): string => (path.includes("*") ? "unmatched" : path);
