/** How far a glaze runs down a wall. @module */
import type { Context } from "hono";
import type { z } from "zod";
import { type PictureWidth, runningPicture } from "../engine/pictures/index.ts";
import { estimateRunning, type RunningReport as Report } from "../engine/running/index.ts";
import { within } from "../http/accept.ts";
import { JSON_TYPE, preferredType } from "../http/media.ts";
import { type Api, answer, badJson, jsonAnswer, jsonRequest, mount } from "../http/operation.ts";
import { readJson } from "../http/read-json.ts";
import { readQuery } from "../http/read-query.ts";
import { svgText } from "../schemas/figures.ts";
import { CLOUDBURST_OVER_THAW } from "../schemas/larch-lane-running.ts";
import { RunningReport } from "../schemas/running.ts";
import { RunningPictureQuery, RunningRequest } from "../schemas/running-request.ts";
import { SVG_TYPE } from "./sheet-answer.ts";

const TYPES = `${JSON_TYPE}, ${SVG_TYPE}`;
/** An SVG opened by itself may style itself and do nothing else. */
const SVG_POLICY = "default-src 'none'; style-src 'unsafe-inline'; sandbox";

export function runningRoutes(api: Api): void {
  const told = jsonAnswer(RunningReport, "How far it runs, and why; in JSON, or a picture of it as SVG.");
  const picture = {
    [SVG_TYPE]: { schema: svgText("A picture with a title and a description in words.") },
  };
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
        "coats between their bounds, a checklist for crawling, beading and pinholing, and later decal or lustre firings. " +
        "`accept: image/svg+xml` draws the wall before and after, and viscosity along the firing.",
      request: { ...jsonRequest(RunningRequest, CLOUDBURST_OVER_THAW), query: RunningPictureQuery },
      responses: { 200: { ...told, content: { ...told.content, ...picture } }, ...badJson },
      serves: TYPES,
    },
    async (c) => {
      const type = preferredType(c, TYPES);
      const query = readQuery(c, RunningPictureQuery);
      const request = await readJson(c, RunningRequest);
      const report = within("", () => estimateRunning(request));
      if (type === SVG_TYPE) return drawn(c, report, query);
      c.header("vary", "accept");
      return answer(c, RunningReport, report);
    },
  );
}

function drawn(
  c: Context,
  report: Report,
  { theme, width, standalone }: z.output<typeof RunningPictureQuery>,
): Response {
  const svg = runningPicture(report, {
    theme,
    width: Number(width) as PictureWidth,
    standalone: standalone === "true",
  });
  return c.body(svg, 200, { "content-type": SVG_TYPE, "content-security-policy": SVG_POLICY, vary: "accept" });
}
