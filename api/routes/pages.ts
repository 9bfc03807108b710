/**
 * The pages and the files behind them.
 *
 * Pages are the same for everyone and every time: what a person enters lives in the browser, answers come from `/v1`.
 *
 * @module
 */
import type { Context } from "hono";
import { compress } from "hono/compress";
import { etag } from "hono/etag";
import { requireAccept } from "../http/media.ts";
import type { Api, Env } from "../http/operation.ts";
import { pageHeaders } from "../http/page-headers.ts";
import { ProblemError } from "../http/problem.ts";
import { checkPage } from "../pages/check/page.ts";
import workSchema from "../pages/check/work.schema.json" with { type: "json" };
import { PAGE_FILES, type PageFile, type PageFileLoader } from "../pages/files.ts";
import { lessonPage } from "../pages/lesson/page.ts";
import { makingPage } from "../pages/making/page.ts";
import { FAVICON } from "../pages/mark.ts";
import { sampleReport } from "../pages/sample.ts";

/** Browsers ask again each time, and are told in a word that nothing changed. */
const FRESH = { "cache-control": "no-cache" };

/**
 * @param address - where callers reach the service, for the command line shown without scripts
 * @param loadFile - lends scripts, style and fonts; where left out, pages show a worked answer and no more
 */
export function pageRoutes(api: Api, address: string, loadFile?: PageFileLoader): void {
  const small = [compress(), etag()] as const;
  const page = (path: string, body: () => unknown) =>
    api.get(path, pageHeaders, ...small, async (c) => {
      requireAccept(c, "text/html");
      return c.html(`${await body()}`, 200, FRESH);
    });
  page("/", () => checkPage(sampleReport(), address));
  page("/lesson", lessonPage);
  page("/making", makingPage);

  const files = new Map<PageFile, Promise<Uint8Array<ArrayBuffer>>>();
  const file = (c: Context<Env>, name: PageFile) => answerFile(c, name, files, loadFile);
  for (const name of Object.keys(PAGE_FILES) as PageFile[]) {
    if (name !== "worker.js") api.get(`/pages/${name}`, ...small, (c) => file(c, name));
  }
  // At the root, since a worker serves only what lies below it.
  api.get("/worker.js", ...small, (c) => file(c, "worker.js"));
  api.get("/favicon.svg", ...small, (c) => c.body(FAVICON, 200, { ...FRESH, "content-type": "image/svg+xml" }));
  api.get("/ringtrue-work.schema.json", ...small, (c) => {
    return c.body(JSON.stringify(workSchema, null, 2), 200, { ...FRESH, "content-type": "application/schema+json" });
  });
}

async function answerFile(
  c: Context<Env>,
  name: PageFile,
  kept: Map<PageFile, Promise<Uint8Array<ArrayBuffer>>>,
  load?: PageFileLoader,
): Promise<Response> {
  if (!load) throw new ProblemError("not-here", "This runtime serves no files for the pages.");
  const loading = kept.get(name) ?? load(name);
  kept.set(name, loading);
  loading.catch(() => kept.delete(name));
  return c.body(await loading, 200, { ...FRESH, "content-type": PAGE_FILES[name] });
}
