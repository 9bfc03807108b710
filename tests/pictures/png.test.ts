/** Pictures as PNG, where the runtime lends a renderer. */
import { Worker } from "node:worker_threads";
import { afterEach, describe, expect, it, vi } from "vitest";
import { createApp } from "../../api/app.ts";
import { drawPng } from "../../api/node/draw-png.ts";
import { post as postBare, problemOf, THAW_TEXT } from "../http/support.ts";

const app = createApp({ drawPng });
const png = { accept: "image/png", "content-type": "application/json" };
const post = (query: string) => app.request(`/v1/fit${query}`, { method: "POST", body: THAW_TEXT, headers: png });

/** Width and height from the header chunk (PNG specification, 11.2.2). */
function sizeOf(bytes: Uint8Array): [number, number] {
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  return [view.getUint32(16), view.getUint32(20)];
}

describe("image/png", () => {
  it.each(["verdict", "expansion", "stress", "contributions"])("draws the %s, two pixels a unit", async (picture) => {
    const response = await post(`?picture=${picture}&width=350&theme=print`);
    expect([response.status, response.headers.get("content-type")]).toEqual([200, "image/png"]);
    const bytes = new Uint8Array(await response.arrayBuffer());
    // The signature of every PNG (PNG specification, 5.2).
    expect([...bytes.slice(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
    const [width, height] = sizeOf(bytes);
    expect(width).toBe(700);
    expect(height).toBeGreaterThan(300);
  });

  it("sets the words: without fonts the picture would weigh less", async () => {
    const words = '<text x="5" y="60" font-family="Atkinson Hyperlegible Next" font-size="40">craze</text>';
    const sheet = (inner: string) => `<svg xmlns="http://www.w3.org/2000/svg" width="200" height="80">${inner}</svg>`;
    const [blank, set, bold] = await Promise.all([
      drawPng(sheet("")),
      drawPng(sheet(words)),
      drawPng(sheet(words.replace("<text", '<text font-weight="700"'))),
    ]);
    expect(set.length).toBeGreaterThan(blank.length + 500);
    expect(Buffer.from(bold).equals(Buffer.from(set))).toBe(false);
  });

  it("is the same twice", async () => {
    const [a, b] = [await (await post("")).arrayBuffer(), await (await post("")).arrayBuffer()];
    expect(Buffer.from(a).equals(Buffer.from(b))).toBe(true);
  });

  it("gives each caller the picture asked for, however many ask at once", async () => {
    const widths = [40, 10, 30, 20];
    const drawn = await Promise.all(
      widths.map((w) => drawPng(`<svg xmlns="http://www.w3.org/2000/svg" width="${w}" height="9"></svg>`)),
    );
    expect(drawn.map(sizeOf)).toEqual(widths.map((w) => [2 * w, 18]));
  });

  it("lets others be answered while it is drawn", async () => {
    await post("");
    const order: string[] = [];
    const picture = Promise.resolve(post("?width=720")).then(() => order.push("picture"));
    await app.request("/health");
    order.push("health");
    // Several turns of the loop, all of them before the picture is there.
    for (let turn = 0; turn < 5; turn++) await new Promise((resolve) => setImmediate(resolve));
    order.push("turns");
    await picture;
    expect(order).toEqual(["health", "turns", "picture"]);
  });

  it("says so where a drawing is none, and draws the next", async () => {
    await expect(drawPng("<svg")).rejects.toThrow();
    expect(sizeOf(await drawPng('<svg xmlns="http://www.w3.org/2000/svg" width="5" height="5"></svg>'))[0]).toBe(10);
  });

  it("is refused where the runtime cannot", async () => {
    expect((await problemOf(await postBare("/v1/fit", THAW_TEXT, { accept: "image/png" }))).status).toBe(406);
  });
});

describe("the thread that draws", () => {
  afterEach(() => {
    vi.useRealTimers();
    vi.restoreAllMocks();
  });

  it("ends after twenty seconds without a picture, and another draws the next", async () => {
    vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
    const ended = vi.spyOn(Worker.prototype, "terminate");
    const dot = '<svg xmlns="http://www.w3.org/2000/svg" width="1" height="1"></svg>';
    await drawPng(dot);
    vi.advanceTimersByTime(15_000);
    await drawPng(dot);
    vi.advanceTimersByTime(19_000);
    expect(ended).not.toHaveBeenCalled();
    vi.advanceTimersByTime(1_000);
    expect(ended).toHaveBeenCalledOnce();
    expect(sizeOf(await drawPng(dot))).toEqual([2, 2]);
    await ended.mock.results[0]!.value;
    expect(sizeOf(await drawPng(dot))).toEqual([2, 2]);
    expect(ended).toHaveBeenCalledOnce();
  });
});
