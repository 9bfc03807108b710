/** The bibliography. @module */
import bibliography from "../../data/sources.json" with { type: "json" };
import { tagged } from "../http/etag.ts";
import { JSON_TYPE } from "../http/media.ts";
import { type Api, answer, badQuery, jsonAnswer, mount } from "../http/operation.ts";
import { page } from "../http/paging.ts";
import { readQuery } from "../http/read-query.ts";
import { PageQuery, pageOf } from "../schemas/lists.ts";
import { Source } from "../schemas/source.ts";

interface Entry {
  citation: string;
  doi?: string;
  took: string;
  status: string;
}

const SourcePage = pageOf(Source, "SourcePage", "A page of sources.");
const SOURCES = Object.entries(bibliography.sources as Record<string, Entry>)
  .map(([key, { citation, doi, took, status }]) => ({ key, citation, ...(doi ? { doi } : {}), took, status }))
  .sort((a, b) => (a.key < b.key ? -1 : 1));

export function sourceRoutes(api: Api): void {
  mount(
    api,
    {
      method: "get",
      path: "/v1/sources",
      operationId: "listSources",
      tags: ["sources"],
      summary: "What the answers rest on",
      description: "Every key in an answer's `sources` stands here, with what was taken and how it was read.",
      request: { query: PageQuery },
      responses: { 200: jsonAnswer(SourcePage, "A page of sources."), ...badQuery },
      serves: JSON_TYPE,
      middleware: tagged,
    },
    (c) =>
      answer(
        c,
        SourcePage,
        page(SOURCES, (source) => source.key, readQuery(c, PageQuery)),
      ),
  );
}
