import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { describe, expect, it } from "vitest";
import { createApp } from "../../api/app.ts";
import { checkFit } from "../../api/engine/fit/index.ts";
import { bundlePageFile } from "../../api/pages/bundle.ts";
import { greeting } from "../../api/pages/greeting.ts";
import { sayExpansion, sayStress } from "../../api/pages/say.ts";
import { THAW_ON_RED_STONEWARE } from "../../api/schemas/larch-lane.ts";
import { get, problemOf } from "./support.ts";

const report = checkFit(THAW_ON_RED_STONEWARE);
const folder = dirname(createRequire(import.meta.url).resolve("swagger-ui-dist/package.json"));
const lending = createApp({ loadAsset: async (name) => new Uint8Array(await readFile(join(folder, name))) });

const paged = createApp({ loadPageFile: bundlePageFile });

const escaped = (text: string) => text.replaceAll("&", "&amp;").replaceAll("'", "&#39;").replaceAll('"', "&quot;");

describe("GET /", () => {
  it("opens with the live verdict, and tells chances, reasons, cautions and a command", async () => {
    const response = await get("/");
    expect(response.headers.get("content-type")).toBe("text/html; charset=UTF-8");
    const page = await response.text();
    expect(page).toContain(`<h1>${escaped(report.headline)}</h1>`);
    expect(page).toContain("Of 20 equally likely cases, ");
    expect(page).toContain(escaped(sayStress(report.stress)));
    for (const reason of report.reasons.filter((one) => one.code !== "cases").slice(0, 3)) {
      expect(page).toContain(escaped(reason.text));
    }
    for (const caution of report.cautions) expect(page).toContain(escaped(caution.message));
    expect(page).toContain("curl http://localhost:4600/v1/fit");
    expect(page).toContain('href="/reference"');
  });

  it("lets nothing in from outside and shows nothing of the request", async () => {
    const response = await get("/?q=<script>alert(1)</script>", { host: "evil<b>.example", "user-agent": "<i>x</i>" });
    const policy = response.headers.get("content-security-policy")!;
    expect(policy).toContain("default-src 'none'");
    expect(policy).not.toMatch(/unsafe|https?:|\*/);
    const page = await response.text();
    expect(page).not.toMatch(/alert|evil|<i>|<script>|style=|<style/);
    expect(page).not.toMatch(/(src|href)="(https?:)?\/\//);
    expect(response.headers.get("x-content-type-options")).toBe("nosniff");
  });

  it("says so where no files are lent, and still tells the worked answer", async () => {
    expect((await problemOf(await get("/pages/check.js"))).status).toBe(503);
    expect((await get("/")).status).toBe(200);
  });
});

describe("the files behind the pages", () => {
  it.each(["/", "/lesson", "/making"])("%s loads nothing that is not served here", async (path) => {
    const page = await (await paged.request(path)).text();
    const files = [...page.matchAll(/<(?:script|link)[^>]* (?:src|href)="([^"]+)"/g)].map((found) => found[1]!);
    expect(files.length).toBeGreaterThan(3);
    for (const file of files) expect([file, (await paged.request(file)).status]).toEqual([file, 200]);
  });

  it("are sent small, and not again when nothing changed", async () => {
    const first = await paged.request("/pages/check.js", { headers: { "accept-encoding": "gzip" } });
    expect(first.headers.get("content-encoding")).toBe("gzip");
    const tag = first.headers.get("etag")!;
    const again = await paged.request("/pages/check.js", { headers: { "if-none-match": tag } });
    expect(again.status).toBe(304);
  });

  it("weigh at most 120 kB a page, gzipped, fonts and all", async () => {
    for (const name of ["check", "lesson", "making"]) {
      const files = [`/pages/${name}.js`, "/pages/pages.css", name === "check" ? "/" : `/${name}`];
      let total = 0;
      for (const file of [...files, "/pages/brygada.woff2", "/pages/atkinson.woff2"]) {
        const response = await paged.request(file, { headers: { "accept-encoding": "gzip" } });
        total += (await response.arrayBuffer()).byteLength;
      }
      expect([name, total < 120_000, total]).toEqual([name, true, total]);
    }
  });
});

describe("GET /reference", () => {
  it("is served whole from here", async () => {
    const page = await (await lending.request("/reference")).text();
    const files = [...page.matchAll(/(?:src|href)="([^"]+)"/g)].map((found) => found[1]!);
    expect(files).toEqual([
      "/reference/swagger-ui.css",
      "/openapi.json",
      "/reference/swagger-ui-bundle.js",
      "/reference/start.js",
    ]);
    for (const file of files) {
      const response = await lending.request(file);
      expect([file, response.status]).toEqual([file, 200]);
      expect((await response.text()).length).toBeGreaterThan(50);
    }
    expect(page).not.toMatch(/<script>|<style>|style=/);
  });

  it("says where the description is where no files are lent", async () => {
    expect(await problemOf(await get("/reference"))).toMatchObject({
      status: 503,
      detail: "This runtime serves no reference page. The description is at /openapi.json.",
    });
  });

  it("serves no other file", async () => {
    for (const path of ["/reference/package.json", "/reference/..%2f..%2fpackage.json", "/reference/%2e%2e/app.ts"]) {
      expect((await problemOf(await lending.request(path))).status).toBe(404);
    }
  });
});

describe("the greeting", () => {
  const text = greeting(report, "http://localhost:4600");

  it("says the verdict, the chances, why, what next, what to mind and where to look", () => {
    const flatten = (one: string) => one.replace(/\s+/g, " ");
    const flat = flatten(text);
    expect(flat).toContain(report.headline);
    expect(flat).toContain("Of 20 equally likely cases, ");
    for (const title of ["Why", "What next", "Mind", "Look"]) expect(text).toContain(`\n${title}\n`);
    for (const step of report.next) expect(flat).toContain(flatten(step.text));
    for (const caution of report.cautions) expect(flat).toContain(caution.message);
    expect(text).toContain("http://localhost:4600/reference");
  });

  it("keeps lines short and numbers with their units", () => {
    for (const line of text.split("\n")) {
      expect(line.length).toBeLessThanOrEqual(90);
      expect(line.trim()).not.toMatch(/^(°C|MPa|mm|%)/);
    }
  });
});

describe("figures in words", () => {
  it("have a true minus, a sign, a unit and an interval", () => {
    const stress = { value: -35.2, low: -62, high: -8, coverage: 0.9, unit: "MPa" };
    expect(sayStress(stress)).toBe("−35 MPa, likely −62 to −8 (9 in 10)");
    const expansion = {
      value: 6.2,
      low: 5.9,
      high: 6.5,
      coverage: 0.9,
      unit: "1e-6/K",
      rangeC: [20, 500] as [number, number],
    };
    expect(sayExpansion(expansion)).toBe("6.2 ×10⁻⁶/K from 20 to 500 °C, likely 5.9 to 6.5 (9 in 10)");
  });
});
