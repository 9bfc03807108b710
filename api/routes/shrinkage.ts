/** How much a clay shrinks. @module */
import { measureShrinkage } from "../engine/shrinkage/index.ts";
import { within } from "../http/accept.ts";
import { JSON_TYPE } from "../http/media.ts";
import { type Api, answer, badJson, jsonAnswer, jsonRequest, mount } from "../http/operation.ts";
import { readJson } from "../http/read-json.ts";
import { SLATE_BARS } from "../schemas/larch-lane-sizes.ts";
import { ShrinkageRequest } from "../schemas/shrinkage.ts";
import { ShrinkageReport } from "../schemas/shrinkage-report.ts";
import { STAMP } from "./stamp.ts";

export function shrinkageRoutes(api: Api): void {
  mount(
    api,
    {
      method: "post",
      path: "/v1/shrinkage",
      operationId: "measureShrinkage",
      tags: ["shrinkage"],
      summary: "How much a clay shrinks, from measured bars",
      description:
        "Drying, firing and total shrinkage by the definitions of ASTM C326, each with its mean, spread and 90 % interval; " +
        "bars that stand apart; how many more to measure; height against width; and water absorption where bars were weighed.",
      request: jsonRequest(ShrinkageRequest, SLATE_BARS),
      responses: { 200: jsonAnswer(ShrinkageReport, "What the bars say."), ...badJson },
      serves: JSON_TYPE,
    },
    async (c) => {
      const request = await readJson(c, ShrinkageRequest);
      return answer(c, ShrinkageReport, { ...within("", () => measureShrinkage(request)), engine: STAMP });
    },
  );
}
