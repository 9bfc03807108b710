/**
 * One call of the service: described once, mounted once.
 *
 * @module
 */
import { createRoute, type OpenAPIHono, type RouteConfig } from "@hono/zod-openapi";
import type { Context } from "hono";
import type { z } from "zod";
import type { Place } from "./at-once.ts";
import { type Deprecation, deprecationHeaders, deprecationNotice, sayDeprecated } from "./deprecation.ts";
import { anyCall, guardedCall } from "./failures.ts";
import { JSON_TYPE, NDJSON_TYPE, requireAccept } from "./media.ts";
import type { Turns } from "./turns.ts";

export { badJson, badQuery, badStream, notFound, notReady } from "./failures.ts";

/** What every handler finds beside the request. */
export interface Env {
  Variables: {
    requestId: string;
    /** Whom limits count this request for: a key, or an address. */
    caller: string;
    /** The request's place among those under way, where places are counted. */
    place?: Place;
    /** Whose turn it is, where questions take turns. */
    turns?: Turns;
    /** Told of every fault that is the service's own. */
    report: (error: unknown) => void;
  };
}
export type Api = OpenAPIHono<Env>;

/** Read-only all the way down: engines hand out frozen data, and answers are only read. */
export type Shown<T> = T extends (infer I)[]
  ? readonly Shown<I>[]
  : T extends object
    ? { readonly [K in keyof T]: Shown<T[K]> }
    : T;

/** A JSON answer in the description. */
export const jsonAnswer = (schema: z.ZodType, description: string) => ({
  description,
  content: { [JSON_TYPE]: { schema } },
});

/** A JSON request in the description, with a worked example. */
export const jsonRequest = (schema: z.ZodType, example: unknown) => ({
  body: { required: true, content: { [JSON_TYPE]: { schema, example } } },
});

/** A call as it is described: path in braces form, operationId, tags, request and responses. */
export type Operation = Omit<RouteConfig, "deprecated"> & {
  operationId: string;
  /** Types it answers in, the usual one first. */
  serves: string;
  /** Set on a call that is on its way out. */
  deprecated?: Deprecation;
};

/** One JSON a line in the description; the example is one line. */
export const lines = (schema: z.ZodType, example?: unknown) => ({
  [NDJSON_TYPE]: example === undefined ? { schema } : { schema, example },
});

/**
 * Describes a call and mounts its handler.
 * @param api - the app being built
 * @param config - what it is
 * @param handler - answers the request or throws
 */
export function mount(api: Api, config: Operation, handler: (c: Context<Env>) => Response | Promise<Response>): void {
  const { serves, middleware, deprecated, ...described } = config;
  const notice = deprecated && deprecationNotice(deprecated);
  const open = !config.path.startsWith("/v1/");
  const route = createRoute({
    ...described,
    ...(open ? { security: [] } : {}),
    ...(notice
      ? { deprecated: true, description: [notice.sentence, config.description].filter(Boolean).join("\n\n") }
      : {}),
    responses: {
      ...(notice ? withHeaders(described.responses) : described.responses),
      ...(open ? {} : guardedCall),
      ...anyCall,
    },
  });
  api.openAPIRegistry.registerPath(route);
  const path = route.getRoutingPath();
  if (middleware) api.use(path, ...[middleware].flat());
  api.on(route.method.toUpperCase(), path, (c) => {
    if (notice) sayDeprecated(c, notice);
    requireAccept(c, serves);
    return handler(c);
  });
}

/** The call's own answers, with what is said of its end. */
function withHeaders(responses: RouteConfig["responses"]): RouteConfig["responses"] {
  const told = Object.entries(responses).map(([status, response]) => [
    status,
    "$ref" in response ? response : { ...response, headers: { ...response.headers, ...deprecationHeaders } },
  ]);
  return Object.fromEntries(told);
}

// Encoded once here: a text would be measured and then encoded again on its way into the socket.
const encoder = new TextEncoder();

/**
 * A JSON answer whose shape the compiler has checked against its schema.
 * @param value - what the engine gave, shaped
 */
export function answer<S extends z.ZodType>(c: Context, _schema: S, value: Shown<z.output<S>>): Response {
  return c.body(encoder.encode(JSON.stringify(value)), 200, { "content-type": JSON_TYPE });
}
