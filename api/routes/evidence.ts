/** What tiles say about a glaze. @module */
import { learnFromTiles } from "../engine/evidence/index.ts";
import { within } from "../http/accept.ts";
import { JSON_TYPE } from "../http/media.ts";
import { type Api, answer, badJson, jsonAnswer, jsonRequest, mount } from "../http/operation.ts";
import { readJson } from "../http/read-json.ts";
import { EvidenceReport, EvidenceRequest } from "../schemas/evidence.ts";
import { HOARFROST } from "../schemas/larch-lane-tiles.ts";

export function evidenceRoutes(api: Api): void {
  mount(
    api,
    {
      method: "post",
      path: "/v1/evidence",
      operationId: "learnFromTiles",
      tags: ["evidence"],
      summary: "What a glaze must be, going by its tiles",
      description:
        "Most jars do not say what is in them; tiles do. Takes what was seen on tiles of known clays (crazed at once or " +
        "later, held, quenched, shivered, a cut ring, a bent strip, one coat against two) and dilatometer runs, and gives " +
        "the glaze's expansion before and after, what each tile taught, which are at odds, whether the glaze suits other " +
        "clays, and which tile to fire next. `glaze` of the answer can be asked about in a fit as it stands.",
      request: jsonRequest(EvidenceRequest, HOARFROST),
      responses: { 200: jsonAnswer(EvidenceReport, "What the tiles say."), ...badJson },
      serves: JSON_TYPE,
    },
    async (c) => {
      const request = await readJson(c, EvidenceRequest);
      return answer(
        c,
        EvidenceReport,
        within("", () => learnFromTiles(request)),
      );
    },
  );
}
