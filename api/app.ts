/**
 * The service as one web-standard app: everything the contract promises, and nothing tied to a runtime.
 *
 * @module
 */
import { OpenAPIHono } from "@hono/zod-openapi";
import { cors } from "hono/cors";
import { requestId } from "hono/request-id";
import { secureHeaders } from "hono/secure-headers";
import { asProblem } from "./http/accept.ts";
import type { Api, Env } from "./http/operation.ts";
import { ProblemError, problemResponse } from "./http/problem.ts";
import { unmatched } from "./http/unmatched.ts";
import { type Lent, mountRoutes } from "./routes/index.ts";

export interface AppOptions extends Lent {
  /** Told of every fault that is the service's own, with the request's id. */
  report?: (error: unknown, requestId: string) => void;
}

/**
 * Builds the app.
 * @param options - what the runtime can lend: files of the reference page, somewhere to report faults
 * @example (await createApp().request("/health")).status // 200
 */
export function createApp(options: AppOptions = {}): Api {
  const app: Api = new OpenAPIHono<Env>();
  app.use(requestId({ limitLength: 100 }));
  app.use((c, next) => {
    c.set("report", (error) => options.report?.(error, c.get("requestId")));
    return next();
  });
  // Answers hold nothing private, so any page may read them. Whether a host is HTTPS only is for whoever runs it to say.
  app.use(secureHeaders({ crossOriginResourcePolicy: "cross-origin", strictTransportSecurity: false }));
  app.use(
    cors({
      origin: "*",
      allowMethods: ["GET", "HEAD", "POST", "OPTIONS"],
      exposeHeaders: ["x-request-id", "etag", "allow", "retry-after"],
      maxAge: 86400,
    }),
  );
  mountRoutes(app, options);
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
