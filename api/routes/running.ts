/** How far a glaze runs down a wall. @module */
import { estimateRunning } from "../engine/running/index.ts";
import { within } from "../http/accept.ts";
import { JSON_TYPE } from "../http/media.ts";
import { type Api, answer, badJson, jsonAnswer, jsonRequest, mount } from "../http/operation.ts";
import { readJson } from "../http/read-json.ts";
import { CLOUDBURST_OVER_THAW } from "../schemas/larch-lane-running.ts";
import { RunningReport } from "../schemas/running.ts";
import { RunningRequest } from "../schemas/running-request.ts";

export function runningRoutes(api: Api): void {
  mount(
    api,
    {
      method: "post",
      path: "/v1/running",
      operationId: "estimateRunning",
      tags: ["running"],
      summary: "How far a glaze runs down a wall, and again when refired",
      description:
        "Viscosity along the firing, run and roll with their intervals, the bare band to leave, what slows it, stacked " +
        "coats between their bounds, a checklist for crawling, beading and pinholing, and later decal or lustre firings.",
      request: jsonRequest(RunningRequest, CLOUDBURST_OVER_THAW),
      responses: { 200: jsonAnswer(RunningReport, "How far it runs, and why."), ...badJson },
      serves: JSON_TYPE,
    },
    async (c) => {
      const request = await readJson(c, RunningRequest);
      return answer(
        c,
        RunningReport,
        within("", () => estimateRunning(request)),
      );
    },
  );
}
