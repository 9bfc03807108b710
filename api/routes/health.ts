/** Whether the service is up. @module */
import { DATA_VERSION, ENGINE_VERSION } from "../engine/version.ts";
import { JSON_TYPE } from "../http/media.ts";
import { type Api, answer, jsonAnswer, mount } from "../http/operation.ts";
import { Health } from "../schemas/health.ts";

export function healthRoutes(api: Api): void {
  mount(
    api,
    {
      method: "get",
      path: "/health",
      operationId: "getHealth",
      tags: ["service"],
      summary: "Whether the service is up",
      responses: { 200: jsonAnswer(Health, "It is up.") },
      serves: JSON_TYPE,
    },
    (c) => answer(c, Health, { status: "ok", version: ENGINE_VERSION, dataVersion: DATA_VERSION }),
  );
}
