/** What a glaze is made of. @module */
import { analyseGlaze } from "../engine/chemistry/index.ts";
import { within } from "../http/accept.ts";
import { JSON_TYPE } from "../http/media.ts";
import { type Api, answer, badJson, jsonAnswer, jsonRequest, mount } from "../http/operation.ts";
import { readJson } from "../http/read-json.ts";
import { Chemistry, ChemistryRequest } from "../schemas/chemistry.ts";
import { THAW } from "../schemas/larch-lane.ts";
import { showChemistry } from "./show-chemistry.ts";

export function chemistryRoutes(api: Api): void {
  mount(
    api,
    {
      method: "post",
      path: "/v1/chemistry",
      operationId: "analyseChemistry",
      tags: ["chemistry"],
      summary: "What a glaze is made of",
      description:
        "From a recipe or an analysis: weight and mole per cent as fired, as weighed with loss on ignition, the Seger " +
        "formula, what each line brings, and where the mass goes.",
      request: jsonRequest(ChemistryRequest, { glaze: THAW }),
      responses: { 200: jsonAnswer(Chemistry, "The glaze's chemistry."), ...badJson },
      serves: JSON_TYPE,
    },
    async (c) => {
      const { glaze } = await readJson(c, ChemistryRequest);
      return answer(c, Chemistry, showChemistry(within("/glaze", () => analyseGlaze(glaze))));
    },
  );
}
