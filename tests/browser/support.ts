/** A real service on a loopback port, and a real browser that looks at it. @module */
import { mkdir } from "node:fs/promises";
import type { Server } from "node:http";
import type { AddressInfo } from "node:net";
import { serve } from "@hono/node-server";
import chromium from "@sparticuz/chromium";
import axe from "axe-core";
import {
  type Browser,
  type BrowserContextOptions,
  type Locator,
  type Page,
  chromium as playwright,
} from "playwright-core";
import { afterAll, afterEach, beforeAll, expect } from "vitest";
import { createApp } from "../../api/app.ts";
import { bundlePageFile } from "../../api/pages/bundle.ts";

const OUTPUT = new URL("../output/", import.meta.url).pathname;

/** Lets a test hold, change or refuse a request before the app sees it. */
export type Gate = (request: Request) => Promise<Response | undefined> | Response | undefined;

/** The service under test. */
export class Service {
  gate: Gate = () => undefined;
  readonly #app = createApp({ loadPageFile: bundlePageFile });
  #server: Server | null = null;
  #port = 0;

  get url(): string {
    return `http://127.0.0.1:${this.#port}`;
  }

  async start(): Promise<void> {
    const fetch = async (request: Request) => (await this.gate(request)) ?? this.#app.fetch(request);
    await new Promise<void>((listening) => {
      this.#server = serve({ fetch, port: this.#port, hostname: "127.0.0.1" }, (address: AddressInfo) => {
        this.#port = address.port;
        listening();
      }) as Server;
    });
  }

  async stop(): Promise<void> {
    this.#server?.closeAllConnections();
    await new Promise((closed) => this.#server?.close(closed) ?? closed(undefined));
    this.#server = null;
  }
}

/** What a page did that it must not. */
interface Watch {
  errors: string[];
  outside: string[];
}

/** Starts a service and a browser for one test file; checks after each test that no page broke or looked outside. */
export function pages() {
  const service = new Service();
  const watches: Watch[] = [];
  let browser: Browser;
  beforeAll(async () => {
    await mkdir(OUTPUT, { recursive: true });
    await service.start();
    // One process for all pages, which the package asks for where memory is short, ends with the first page closed.
    const args = chromium.args.filter((arg) => arg !== "--single-process" && arg !== "--no-zygote");
    browser = await playwright.launch({ executablePath: await chromium.executablePath(), args });
  }, 60_000);
  afterEach(async () => {
    service.gate = () => undefined;
    const seen = watches.splice(0);
    for (const context of browser.contexts()) await context.close();
    for (const { errors, outside } of seen) expect({ errors, outside }).toEqual({ errors: [], outside: [] });
  });
  afterAll(async () => {
    await browser?.close();
    await service.stop();
  });

  /** Opens a page in a context of its own. Failed requests are noise only where a test breaks the line itself. */
  async function open(path: string, options: BrowserContextOptions & { mayFail?: boolean } = {}): Promise<Page> {
    const { mayFail = false, ...context } = options;
    const made = await browser.newContext({ viewport: { width: 1280, height: 900 }, ...context });
    await made.grantPermissions(["clipboard-read", "clipboard-write"]);
    const page = await made.newPage();
    page.setDefaultTimeout(8000);
    const watch: Watch = { errors: [], outside: [] };
    watches.push(watch);
    page.on("pageerror", (error) => watch.errors.push(String(error)));
    page.on("console", (message) => {
      // The browser notes every refusal; a 422 is an answer like any other.
      const refused = /Failed to load resource.*422/.test(message.text());
      const failed = mayFail && /Failed to load resource/.test(message.text());
      if (message.type() === "error" && !refused && !failed) watch.errors.push(message.text());
    });
    page.on("request", (request) => {
      const url = new URL(request.url());
      if (url.protocol.startsWith("http") && url.origin !== service.url) watch.outside.push(request.url());
    });
    await page.goto(service.url + path);
    return page;
  }
  return { service, open };
}

/** Words as a reader sees them: only what shows, every gap one blank. */
export async function shown(what: Locator): Promise<string> {
  // biome-ignore lint/performance/useDomNodeTextContent: hidden words must not count.
  return (await what.innerText()).replace(/\s+/g, " ").trim();
}

/** The sentence of the Check page once the answer of now is there. */
export async function verdict(page: Page): Promise<string> {
  await page.locator("#answer h1").waitFor();
  return shown(page.locator("#answer h1"));
}

/** Waits until what is read is as expected. */
export const soon = <T>(read: () => Promise<T> | T) => expect.poll(read, { timeout: 8000, interval: 50 });

/** Waits for the page's own status line, which follows every answer. */
export const status = (page: Page, text: RegExp) => soon(() => page.locator("#status").textContent()).toMatch(text);

export async function shot(page: Page, name: string): Promise<void> {
  await page.screenshot({ path: `${OUTPUT}${name}.png`, fullPage: true });
}
export const output = (name: string) => OUTPUT + name;

/** What axe finds against WCAG 2.2 A and AA. Scripts of tests may run on the page; its own policy is not loosened. */
export async function faultsOf(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  return page.evaluate(async () => {
    const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];
    const run = (globalThis as unknown as { axe: typeof axe }).axe.run;
    const { violations } = await run(document, { runOnly: { type: "tag", values: tags } });
    return violations.flatMap(({ id, nodes }) =>
      nodes.map((node) => `${id}: ${node.target.join(" ")} ${node.failureSummary}`),
    );
  });
}

/** How far the page is wider than its window [px]. */
export const overflow = (page: Page) =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
