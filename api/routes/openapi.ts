/** The description of the service, served. @module */
import { describeApi } from "../http/describe.ts";
import { tagged } from "../http/etag.ts";
import { JSON_TYPE, requireAccept } from "../http/media.ts";
import type { Api } from "../http/operation.ts";

export function openapiRoutes(api: Api): void {
  let text: string | undefined;
  api.get("/openapi.json", tagged, (c) => {
    requireAccept(c, JSON_TYPE);
    text ??= JSON.stringify(describeApi(api));
    return c.body(text, 200, { "content-type": JSON_TYPE });
  });
}
