/**
 * Builds the browser code of the pages in memory. Runs on Node only: `server.ts` and tests lend it to the app, which
 * itself knows nothing of files or bundlers; another runtime may lend files built beforehand.
 *
 * @module
 */
import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import type { PageFile, PageFileLoader } from "./files.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));

const ENTRIES: Partial<Record<PageFile, string>> = {
  "pages.css": "api/pages/look/index.css",
  "check.js": "api/pages/check/main.ts",
  "lesson.js": "api/pages/lesson/main.ts",
  "making.js": "api/pages/making/main.ts",
  "worker.js": "api/pages/worker/worker.ts",
};

/**
 * Lends the pages their files: scripts and style bundled and minified at first request, fonts as they lie in data/.
 * @example createApp({ loadPageFile: bundlePageFile })
 */
export const bundlePageFile: PageFileLoader = async (name) => {
  const entry = ENTRIES[name];
  if (!entry) return new Uint8Array(await readFile(`${root}data/fonts/${name}`));
  // Loaded when first asked: a service that is only called never needs it, and starts sooner.
  const { build } = await import("esbuild");
  const { outputFiles } = await build({
    entryPoints: [root + entry],
    bundle: true,
    write: false,
    minify: true,
    format: name.endsWith(".js") ? "esm" : undefined,
    target: ["es2022", "chrome115", "firefox115", "safari16.4"],
    external: ["/pages/*"],
    alias: { "@ringtrue/sdk": `${root}sdk/src/index.ts` },
    legalComments: "none",
    logLevel: "silent",
  });
  return new Uint8Array(outputFiles[0]!.contents);
};
