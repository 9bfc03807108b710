/**
 * The API reference, served whole from here: no outside requests, no inline scripts.
 *
 * @module
 */
import type { Context } from "hono";
import { requireAccept } from "../http/media.ts";
import type { Api, Env } from "../http/operation.ts";
import { pageHeaders } from "../http/page-headers.ts";
import { ProblemError } from "../http/problem.ts";

/** Files of the reference page that a runtime must lend: their names and types. */
const ASSETS = {
  "swagger-ui.css": "text/css; charset=utf-8",
  "swagger-ui-bundle.js": "text/javascript; charset=utf-8",
} as const;

/** Reads one file of the reference page. */
export type AssetLoader = (name: keyof typeof ASSETS) => Promise<Uint8Array<ArrayBuffer>>;

const PAGE = `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Ringtrue: API reference</title>
<link rel="stylesheet" href="/reference/swagger-ui.css">
</head>
<body>
<div id="reference"><p>The description itself is at <a href="/openapi.json">/openapi.json</a>.</p></div>
<script src="/reference/swagger-ui-bundle.js"></script>
<script src="/reference/start.js"></script>
</body>
</html>
`;

const START = `SwaggerUIBundle({ url: "/openapi.json", dom_id: "#reference", deepLinking: true, validatorUrl: null });
`;

/** Mounts the page and its files. */
export function referenceRoutes(api: Api, loadAsset?: AssetLoader): void {
  api.get("/reference", pageHeaders, (c) => {
    requireAccept(c, "text/html");
    if (loadAsset) return c.html(PAGE);
    throw new ProblemError("not-here", "This runtime serves no reference page. The description is at /openapi.json.");
  });
  api.get("/reference/start.js", (c) => c.body(START, 200, { "content-type": "text/javascript; charset=utf-8" }));
  for (const name of Object.keys(ASSETS) as (keyof typeof ASSETS)[]) {
    api.get(`/reference/${name}`, (c) => asset(c, name, loadAsset));
  }
}

async function asset(c: Context<Env>, name: keyof typeof ASSETS, loadAsset?: AssetLoader): Promise<Response> {
  if (!loadAsset) throw new ProblemError("not-here", "This runtime serves no reference page.");
  return c.body(await loadAsset(name), 200, { "content-type": ASSETS[name], "cache-control": "max-age=86400" });
}
