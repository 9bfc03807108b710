/** The front page. @module */
import { requireAccept } from "../http/media.ts";
import type { Api } from "../http/operation.ts";
import { pageHeaders } from "../http/page-headers.ts";
import { frontPage } from "../pages/front.ts";
import { FRONT_CSS } from "../pages/front-css.ts";
import { sampleReport } from "../pages/sample.ts";

export function frontRoutes(api: Api, address: string): void {
  api.get("/", pageHeaders, (c) => {
    requireAccept(c, "text/html");
    return c.html(frontPage(sampleReport(), address));
  });
  api.get("/front.css", (c) => c.body(FRONT_CSS, 200, { "content-type": "text/css; charset=utf-8" }));
}
