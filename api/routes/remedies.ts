/** What would make a misfit fit. @module */
import { findRemedies } from "../engine/advice/index.ts";
import { within } from "../http/accept.ts";
import { JSON_TYPE } from "../http/media.ts";
import { type Api, answer, badJson, jsonAnswer, jsonRequest, mount } from "../http/operation.ts";
import { readJson } from "../http/read-json.ts";
import { THAW_ON_RED_STONEWARE } from "../schemas/larch-lane.ts";
import { RemediesReport, RemediesRequest } from "../schemas/remedies.ts";

/** Mounts `/v1/remedies`. */
export function remedyRoutes(api: Api): void {
  mount(
    api,
    {
      method: "post",
      path: "/v1/remedies",
      operationId: "findRemedies",
      tags: ["remedies"],
      summary: "The least changes that make a glaze fit",
      description:
        "Changes of several kinds (silica, clay with silica, other fluxes, boron, the least of all, a thinner coat, other " +
        "cooling, another clay), each with the printed new recipe, how it stands before and after by a fit of its own, and " +
        "what it may cost. Few materials move, each by half a part in 100 or more: a material counts as two parts moved. The " +
        "melt's viscosity at the peak and its surface tension stay within tolerance, colourants keep their share, and bounds " +
        "on parts and on the Seger formula hold. Another cooling is a schedule that differs where the glaze sets; what it " +
        "does is to move the set point, and neither crystals nor dunting are calculated. Where nothing reaches the target " +
        "the answer says how far it gets and which limits stand in the way, each found by lifting it and searching again.",
      request: jsonRequest(RemediesRequest, THAW_ON_RED_STONEWARE),
      responses: { 200: jsonAnswer(RemediesReport, "What would make it fit."), ...badJson },
      serves: JSON_TYPE,
    },
    async (c) => {
      const request = await readJson(c, RemediesRequest);
      return answer(
        c,
        RemediesReport,
        within("", () => findRemedies(request)),
      );
    },
  );
}
