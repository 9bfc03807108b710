/**
 * One call of the service: described once, mounted once.
 *
 * @module
 */
import { createRoute, type OpenAPIHono, type RouteConfig } from "@hono/zod-openapi";
import type { Context } from "hono";
import type { z } from "zod";
import { Problem } from "../schemas/problem.ts";
import { JSON_TYPE, NDJSON_TYPE, requireAccept } from "./media.ts";

/** What every handler finds beside the request. */
export interface Env {
  Variables: {
    requestId: string;
    /** Whom limits count this request for: a key, or an address. */
    caller: string;
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

const problem = (description: string) => ({
  description,
  content: { "application/problem+json": { schema: Problem } },
});

/** Failures that any call may answer with. */
const failures = {
  406: problem("The accept header asks for something not served here."),
  500: problem("Something broke on the service's side."),
} as const;

/** Failures of a call that whoever runs the service may guard with keys and limits. */
const guarded = {
  401: problem("This service asks for a key, and none that it knows came along."),
  429: problem("The caller has used up its requests for this minute; retry-after says when the next may come."),
  503: problem("The service works on as many questions as it can; retry-after says when to ask again."),
} as const;

/** What `/ready` answers once the service has been told to stop. */
export const notReady = { 503: problem("It is about to stop: send work elsewhere.") } as const;

/** Failures of a call that names one thing. */
export const notFound = { 404: problem("Nothing of that name.") } as const;

/** Failures of a call with query parameters. */
export const badQuery = { 422: problem("A query parameter cannot be; see issues.") } as const;

/** Failures of a call that takes JSON. */
export const badJson = {
  400: problem("Not JSON; the detail says where."),
  408: problem("The request took too long to arrive."),
  413: problem("Larger than 256 kB."),
  415: problem("Not sent as application/json."),
  422: problem("Something in it cannot be; see issues."),
} as const;

/** Failures of a call that takes one JSON a line; bad lines are answered in their place instead. */
export const badStream = { 415: problem("Not sent as application/x-ndjson.") } as const;

/** A JSON answer in the description. */
export const jsonAnswer = (schema: z.ZodType, description: string) => ({
  description,
  content: { [JSON_TYPE]: { schema } },
});

/** A JSON request in the description, with a worked example. */
export const jsonRequest = (schema: z.ZodType, example: unknown) => ({
  body: { required: true, content: { [JSON_TYPE]: { schema, example } } },
});

/** One JSON a line in the description; the example is one line. */
export const lines = (schema: z.ZodType, example?: unknown) => ({
  [NDJSON_TYPE]: example === undefined ? { schema } : { schema, example },
});

/**
 * Describes a call and mounts its handler.
 * @param api - the app being built
 * @param config - path in braces form, operationId, tags, request and responses
 * @param handler - answers the request or throws
 */
export function mount(
  api: Api,
  config: RouteConfig & { operationId: string; serves: string },
  handler: (c: Context<Env>) => Response | Promise<Response>,
): void {
  const { serves, middleware, ...described } = config;
  const route = createRoute({
    ...described,
    responses: { ...described.responses, ...(config.path.startsWith("/v1/") ? guarded : {}), ...failures },
  });
  api.openAPIRegistry.registerPath(route);
  const path = route.getRoutingPath();
  if (middleware) api.use(path, ...[middleware].flat());
  api.on(route.method.toUpperCase(), path, (c) => {
    requireAccept(c, serves);
    return handler(c);
  });
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
