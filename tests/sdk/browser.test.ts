/** The example page, bundled and opened in a real browser that has no network. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { Ringtrue } from "@ringtrue/sdk";
import chromium from "@sparticuz/chromium";
import { build } from "esbuild";
import { type Browser, chromium as playwright } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { app } from "../../api/app.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));
let browser: Browser;
let script: string;

beforeAll(async () => {
  const { outputFiles, metafile } = await build({
    entryPoints: [`${root}examples/browser/page.ts`],
    bundle: true,
    minify: true,
    format: "esm",
    platform: "browser",
    target: "es2022",
    alias: { "@ringtrue/sdk": `${root}sdk/src/index.ts` },
    write: false,
    metafile: true,
  });
  script = outputFiles[0]!.text;
  const imports = Object.values(metafile.outputs).flatMap((output) => output.imports);
  expect(imports).toEqual([]);
  const args = chromium.args.filter((one) => one !== "--single-process" && one !== "--no-zygote");
  browser = await playwright.launch({ executablePath: await chromium.executablePath(), args });
}, 60_000);
afterAll(() => browser?.close());

describe("examples/browser", () => {
  it("works out in the page what the service would answer, and asks nobody", async () => {
    const asked: string[] = [];
    const errors: string[] = [];
    // Not HTTPS and not this machine: what browsers keep for safe places must not be needed.
    const page = await browser.newPage();
    page.on("pageerror", (error) => errors.push(error.message));
    await page.route("**/*", (route) => {
      const { pathname } = new URL(route.request().url());
      if (pathname === "/") {
        const body = readFileSync(`${root}examples/browser/index.html`, "utf8");
        return route.fulfill({ body, contentType: "text/html; charset=utf-8" });
      }
      if (pathname === "/page.js")
        return route.fulfill({ body: script, contentType: "text/javascript; charset=utf-8" });
      if (pathname !== "/favicon.ico") asked.push(route.request().url());
      return route.abort();
    });
    await page.goto("http://studio.example/");
    const answer = page.locator("#answer");
    await answer.filter({ hasText: "MPa" }).waitFor({ timeout: 10_000 });
    const shown = await answer.textContent();
    const client = new Ringtrue({ fetch: (url, init) => app.request(url, init) });
    const { headline, stress } = await client.fit.check({
      glaze: {
        recipe: [
          { material: "potash-feldspar", parts: 42 },
          { material: "silica", parts: 22 },
          { material: "whiting", parts: 18 },
          { material: "kaolin", parts: 12 },
          { material: "frit-soda-borosilicate", parts: 6 },
        ],
        thicknessMm: 0.3,
      },
      body: { expansion: { value: 6.2, rangeC: [20, 500], plusMinus: 0.3 } },
    });
    // Another engine, another processor's mathematics: the same answer to the last digit shown.
    expect(shown).toBe(`${headline} Stress ${stress.value} MPa, likely ${stress.low} to ${stress.high}.`);
    expect(await page.locator("#picture svg title").first().textContent()).toBeTruthy();

    await page.fill("#clay", "620");
    await answer.filter({ hasText: "looks like 6.2" }).waitFor();
    expect([asked, errors]).toEqual([[], []]);
  }, 60_000);

  it("comes in one script small enough for a phone", () => {
    // Engine, data, service and SDK together; 1 MB gzipped is a photograph or two. Common practice, no source.
    expect(gzipSync(script).length).toBeLessThan(1024 * 1024);
  });
});
