/** Classes of clay bodies. @module */
import { z } from "zod";
import { findBody, listBodies } from "../engine/body/classes.ts";
import { tagged } from "../http/etag.ts";
import { JSON_TYPE } from "../http/media.ts";
import { named } from "../http/named.ts";
import { type Api, answer, badQuery, jsonAnswer, mount, notFound } from "../http/operation.ts";
import { page } from "../http/paging.ts";
import { readQuery } from "../http/read-query.ts";
import { BodyClass } from "../schemas/body-class.ts";
import { PageQuery, pageOf } from "../schemas/lists.ts";

const BodyPage = pageOf(BodyClass, "BodyPage", "A page of body classes.");
const id = z.string().meta({ description: "Identifier of the class.", examples: ["red-stoneware"] });

export function bodyRoutes(api: Api): void {
  mount(
    api,
    {
      method: "get",
      path: "/v1/bodies",
      operationId: "listBodies",
      tags: ["bodies"],
      summary: "Classes of clay bodies, with ranges and sources",
      request: { query: PageQuery },
      responses: { 200: jsonAnswer(BodyPage, "A page of classes."), ...badQuery },
      serves: JSON_TYPE,
      middleware: tagged,
    },
    (c) =>
      answer(
        c,
        BodyPage,
        page(listBodies(), (body) => body.id, readQuery(c, PageQuery)),
      ),
  );
  mount(
    api,
    {
      method: "get",
      path: "/v1/bodies/{id}",
      operationId: "getBody",
      tags: ["bodies"],
      summary: "One class of clay bodies",
      request: { params: z.object({ id }) },
      responses: { 200: jsonAnswer(BodyClass, "The class."), ...notFound },
      serves: JSON_TYPE,
      middleware: tagged,
    },
    (c) =>
      answer(
        c,
        BodyClass,
        named(c, "/v1/bodies", (name) => findBody(name)),
      ),
  );
}
