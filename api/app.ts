/**
 * The service as one web-standard app: everything the contract promises, and nothing tied to a runtime.
 *
 * @module
 */
import { OpenAPIHono } from "@hono/zod-openapi";
import type { Context } from "hono";
import { cors } from "hono/cors";
import { requestId } from "hono/request-id";
import { secureHeaders } from "hono/secure-headers";
import { asProblem } from "./http/accept.ts";
import { limitAtOnce } from "./http/at-once.ts";
import { requireKey } from "./http/keys.ts";
import { Metrics } from "./http/metrics.ts";
import type { Api, Env } from "./http/operation.ts";
import { ProblemError, problemResponse } from "./http/problem.ts";
import { limitRate } from "./http/rate-limit.ts";
import { observe, type RequestLine } from "./http/request-log.ts";
import type { Settings } from "./http/settings.ts";
import type { Turns } from "./http/turns.ts";
import { unmatched } from "./http/unmatched.ts";
import { type Lent, mountRoutes } from "./routes/index.ts";
import { operationRoutes } from "./routes/operations.ts";

export interface AppOptions extends Lent {
  /** How it is run; open to everyone and unlimited where left out. */
  settings?: Partial<Settings>;
  /** Told of every fault that is the service's own, with the request's id. */
  report?: (error: unknown, requestId: string) => void;
  /** Told of every request once it is answered; only where `settings.log` is on. */
  log?: (line: RequestLine) => void;
  /** Address of whoever asks, where the runtime knows it; limits count by it. */
  addressOf?: (c: Context) => string | undefined;
  /** Says no once the service has been told to stop. */
  ready?: () => boolean;
  /** Tells this process from others that share its port. */
  process?: string;
  /**
   * Lets questions take turns with the rest of the event loop. Left out, each is worked out as it comes: runtimes that keep
   * requests apart let none wait for another.
   */
  turns?: Turns;
  /** Clock for limits and logs [ms]. */
  now?: () => number;
}

/** What pages of other origins may read of an answer, beside its content. */
const EXPOSED = [
  ...["x-request-id", "etag", "allow", "x-sheets", "retry-after", "ratelimit", "ratelimit-policy"],
  ...["deprecation", "sunset", "link"],
];

/** Time since 1970 [ms] that never runs backward, whatever is done to the machine's clock. */
const steadyClock = () => performance.timeOrigin + performance.now();

/** A random UUID (RFC 9562, version 4), also in pages that did not come by HTTPS, whose `crypto` lacks the short way. */
function freshId(): string {
  if (typeof crypto.randomUUID === "function") return crypto.randomUUID();
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = (bytes[6]! & 0x0f) | 0x40;
  bytes[8] = (bytes[8]! & 0x3f) | 0x80;
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})/, "$1-$2-$3-$4-");
}

/**
 * Builds the app.
 * @param options - what the runtime can lend, and how the service is run
 * @example (await createApp().request("/health")).status // 200
 */
export function createApp(options: AppOptions = {}): Api {
  const { settings = {}, report, addressOf, turns, now = steadyClock } = options;
  const { origins = [], mostAtOnce = Number.POSITIVE_INFINITY } = settings;
  const metrics = settings.metrics ? new Metrics(options.process) : undefined;
  const log = settings.log ? options.log : undefined;
  const app: Api = new OpenAPIHono<Env>();
  app.use(requestId({ limitLength: 100, generator: freshId }));
  app.use((c, next) => {
    c.set("report", (error) => report?.(error, c.get("requestId")));
    c.set("caller", addressOf?.(c) ?? "unknown");
    if (turns) c.set("turns", turns);
    return next();
  });
  if (log || metrics) app.use(observe({ log, metrics, now }));
  // Whether a host is HTTPS only is for whoever runs it to say.
  const crossOriginResourcePolicy = origins.length > 0 ? "cross-origin" : "same-origin";
  app.use(secureHeaders({ crossOriginResourcePolicy, strictTransportSecurity: false }));
  if (origins.length > 0) {
    const origin = origins.includes("*") ? "*" : origins;
    const allowMethods = ["GET", "HEAD", "POST", "OPTIONS"];
    app.use(cors({ origin, allowMethods, exposeHeaders: EXPOSED, maxAge: 86400 }));
  }
  for (const path of ["/v1/*", "/metrics"]) {
    if (settings.keyHashes?.length) app.use(path, requireKey(settings.keyHashes));
    if (settings.perMinute) app.use(path, limitRate(settings.perMinute, now));
  }
  if (Number.isFinite(mostAtOnce)) app.use("/v1/*", limitAtOnce(mostAtOnce, now));
  mountRoutes(app, options);
  operationRoutes(app, options.ready ?? (() => true), metrics);
  app.notFound(unmatched(app));
  app.onError((error, c) => {
    const known = asProblem(error);
    if (known instanceof ProblemError) return problemResponse(c, known);
    c.get("report")(error);
    const detail = "The request may well be fine. Send it again; if it breaks again, report the request id.";
    return problemResponse(c, new ProblemError("internal", detail));
  });
  return app;
}

/** The app with nothing lent to it, as edge runtimes serve it. */
export const app: Api = createApp();

export default app;
