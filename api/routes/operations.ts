/** What whoever runs the service looks at: whether to send it work, and what it has done. @module */
import { DATA_VERSION, ENGINE_VERSION } from "../engine/version.ts";
import { JSON_TYPE } from "../http/media.ts";
import type { Metrics } from "../http/metrics.ts";
import { type Api, answer, jsonAnswer, mount, notReady } from "../http/operation.ts";
import { ProblemError } from "../http/problem.ts";
import { Ready } from "../schemas/health.ts";

/**
 * Mounts `/ready`, and `/metrics` where counts are kept.
 * @param ready - says no once the service has been told to stop
 * @param metrics - the counts
 */
export function operationRoutes(api: Api, ready: () => boolean, metrics?: Metrics): void {
  mount(
    api,
    {
      method: "get",
      path: "/ready",
      operationId: "getReady",
      tags: ["service"],
      summary: "Whether to send the service work",
      description:
        "Says no while the service finishes what it has before stopping; `/health` still says that it is up.",
      responses: { 200: jsonAnswer(Ready, "Send it work."), ...notReady },
      serves: JSON_TYPE,
    },
    (c) => {
      if (ready()) return answer(c, Ready, { status: "ready", version: ENGINE_VERSION, dataVersion: DATA_VERSION });
      const detail = "I have been told to stop and am finishing what I have. Ask another of us.";
      throw new ProblemError("not-ready", detail, { headers: { "retry-after": "5" } });
    },
  );
  if (!metrics) return;
  api.get("/metrics", (c) =>
    c.body(metrics.text(), 200, { "content-type": "text/plain; version=0.0.4; charset=utf-8" }),
  );
}
