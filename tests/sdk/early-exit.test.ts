/** Leaving a stream early, over a real connection: the server must learn of it and stop working. */
import type { AddressInfo } from "node:net";
import { type ServerType, serve } from "@hono/node-server";
import { Ringtrue } from "@ringtrue/sdk";
import { Agent, fetch as undiciFetch } from "undici";
import { afterEach, describe, expect, it } from "vitest";

const question = { glaze: { expansion: { value: 6 } }, body: { class: "red-stoneware" } };
const closing: (() => unknown)[] = [];
afterEach(async () => {
  for (const close of closing.splice(0)) await close();
});

/** A server that answers one line and works on, without end, until it is told to stop. */
async function endlessWork() {
  let stop = () => {};
  const stopped = new Promise<void>((resolve) => {
    stop = resolve;
  });
  const fetch = () =>
    new Response(
      new ReadableStream({
        start: (controller) => controller.enqueue(new TextEncoder().encode('{"line":1,"result":{}}\n')),
        cancel: () => stop(),
      }),
    );
  const server: ServerType = serve({ fetch, port: 0, hostname: "127.0.0.1" });
  await new Promise((resolve) => server.once("listening", resolve));
  closing.push(async () => {
    if ("closeAllConnections" in server) server.closeAllConnections();
    await new Promise((resolve) => server.close(resolve));
  });
  return { baseUrl: `http://127.0.0.1:${(server.address() as AddressInfo).port}`, stopped };
}

function clients(baseUrl: string): Record<string, () => Ringtrue> {
  return {
    "Node's fetch": () => new Ringtrue({ baseUrl }),
    "undici's fetch and Agent": () => {
      const dispatcher = new Agent();
      closing.push(() => dispatcher.destroy());
      return new Ringtrue({ baseUrl, fetch: undiciFetch as never, dispatcher });
    },
  };
}

describe.each(["Node's fetch", "undici's fetch and Agent"])("with %s", (how) => {
  it("leaving the loop stops the server", async () => {
    const { baseUrl, stopped } = await endlessWork();
    for await (const { line } of clients(baseUrl)[how]!().fit.stream([question, question])) if (line === 1) break;
    await stopped;
  });

  it("aborting the signal stops the server and ends the loop", async () => {
    const { baseUrl, stopped } = await endlessWork();
    const controller = new AbortController();
    const answers = clients(baseUrl)[how]!().fit.stream([question, question], { signal: controller.signal });
    await answers.next();
    const next = answers.next();
    controller.abort();
    await expect(next).rejects.toMatchObject({ name: "AbortedError" });
    await stopped;
  });
});
