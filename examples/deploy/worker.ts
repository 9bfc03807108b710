/**
 * The service for runtimes that call a `fetch` handler: edge workers, `deno serve`, Bun.
 *
 *     npx esbuild examples/deploy/worker.ts --bundle --minify --format=esm --platform=browser --outfile=worker.mjs
 *
 * Settings come as bindings of the names in api/http/settings.ts, where the runtime has bindings. Each isolate counts
 * for its own rate limit; keep a shared one in front if that matters.
 */
import { createApp } from "../../api/app.ts";
import { readSettings } from "../../api/http/settings.ts";

let app: ReturnType<typeof createApp> | undefined;

export default {
  fetch(request: Request, bindings: object = {}): Response | Promise<Response> {
    // Made with the first request: only then are the bindings known.
    app ??= createApp({ settings: readSettings(namedIn(bindings), { loopback: true, watched: true }) });
    return app.fetch(request);
  },
};

/** Runtimes hand over other things in the same place; only what is ours and a text is a setting. */
function namedIn(bindings: object): Record<string, string> {
  const ours = Object.entries(bindings).filter(([name, value]) => /^RINGTRUE_/.test(name) && typeof value === "string");
  return Object.fromEntries(ours);
}
