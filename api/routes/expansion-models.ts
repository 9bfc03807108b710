/** Ways of reckoning expansion from oxides. @module */
import { expansionModels, propertyModels } from "../engine/glass/index.ts";
import { tagged } from "../http/etag.ts";
import { JSON_TYPE } from "../http/media.ts";
import { type Api, answer, badQuery, jsonAnswer, mount } from "../http/operation.ts";
import { page } from "../http/paging.ts";
import { readQuery } from "../http/read-query.ts";
import { ExpansionModel } from "../schemas/expansion-model.ts";
import { PageQuery, pageOf } from "../schemas/lists.ts";

const ModelPage = pageOf(ExpansionModel, "ExpansionModelPage", "A page of expansion models.");

export function expansionModelRoutes(api: Api): void {
  mount(
    api,
    {
      method: "get",
      path: "/v1/expansion-models",
      operationId: "listExpansionModels",
      tags: ["expansionModels"],
      summary: "Ways of reckoning expansion, with their measured accuracy",
      request: { query: PageQuery },
      responses: { 200: jsonAnswer(ModelPage, "A page of models."), ...badQuery },
      serves: JSON_TYPE,
      middleware: tagged,
    },
    (c) =>
      answer(
        c,
        ModelPage,
        page(models(), (model) => model.id, readQuery(c, PageQuery)),
      ),
  );
}

/** Every model; under the one that is fitted to measured glasses, what else is fitted to them. */
function models() {
  return expansionModels().map((model) => ({
    ...model,
    properties: model.kind === "measured-glass" ? propertyModels() : [],
  }));
}
