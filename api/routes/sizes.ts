/** What to throw for the size that is wanted fired. @module */
import { workOutSizes } from "../engine/sizes/index.ts";
import { within } from "../http/accept.ts";
import { JSON_TYPE } from "../http/media.ts";
import { type Api, answer, badJson, jsonAnswer, jsonRequest, mount } from "../http/operation.ts";
import { readJson } from "../http/read-json.ts";
import { JAR } from "../schemas/larch-lane-sizes.ts";
import { SizesReport, SizesRequest } from "../schemas/sizes.ts";
import { STAMP } from "./stamp.ts";

export function sizeRoutes(api: Api): void {
  mount(
    api,
    {
      method: "post",
      path: "/v1/sizes",
      operationId: "workOutSizes",
      tags: ["sizes"],
      summary: "What to throw for the size that is wanted fired",
      description:
        "Thrown, leather-hard, bone-dry and fired sizes with what the shrinkage leaves open; sets and nests, lids for a pot " +
        "that was measured at any stage, capacity to a line, clay to wedge, tiles and slabs, and notes for another clay " +
        "converted. Metric and inch sizes, mixed as they come; exact and rounded figures side by side.",
      request: jsonRequest(SizesRequest, JAR),
      responses: { 200: jsonAnswer(SizesReport, "What to throw, and where it lands."), ...badJson },
      serves: JSON_TYPE,
    },
    async (c) => {
      const request = await readJson(c, SizesRequest);
      return answer(c, SizesReport, { ...within("", () => workOutSizes(request)), engine: STAMP });
    },
  );
}
