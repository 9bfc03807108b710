/** Nobody waits for all questions that came before, and nobody who has left is worked for. */
import { once } from "node:events";
import type { AddressInfo } from "node:net";
import { afterEach, describe, expect, it, vi } from "vitest";
import { createApp } from "../../api/app.ts";
import { readSettings } from "../../api/http/settings.ts";
import { Turns } from "../../api/http/turns.ts";
import { listen } from "../../api/node/listen.ts";
import { problemOf, THAW_TEXT } from "./support.ts";

const question = { method: "POST", body: THAW_TEXT, headers: { "content-type": "application/json" } };

/** Turns by a clock and an event loop that move when told. */
function byHand() {
  let clock = 0;
  const due: (() => void)[] = [];
  const turns = new Turns(
    () => clock,
    (work) => void due.push(work),
  );
  const round = async () => {
    for (const work of due.splice(0)) work();
    await Promise.resolve();
  };
  const pass = (ms: number) => {
    clock += ms;
  };
  return { turns, due, round, pass };
}

describe("turns", () => {
  it("let short questions follow each other at once, round for round", async () => {
    const { turns, round, pass } = byHand();
    for (let n = 0; n < 100; n++) {
      expect(turns.ask()).toBeUndefined();
      pass(5);
      if (n % 10 === 9) await round();
    }
  });

  it("give the rest its rounds after a long one, then go on in the order of asking, one a round", async () => {
    const { turns, due, round, pass } = byHand();
    const done: string[] = [];
    const long = (name: string) => {
      done.push(name);
      pass(300);
    };
    expect(turns.ask()).toBeUndefined();
    long("first");
    for (const name of ["second", "third"]) void turns.ask()!.then(() => long(name));
    let rounds = 0;
    const before = [];
    for (; due.length > 0; rounds++) {
      const so = done.length;
      await round();
      if (done.length > so) before.push(rounds);
    }
    expect(done).toEqual(["first", "second", "third"]);
    // One round ends the first; the 64 that the rest is owed follow, and the last of them brings the next question.
    expect(before).toEqual([64, 64 + 65]);
    expect(turns.ask()).toBeUndefined();
  });
});

describe("a service that is asked much at once", () => {
  afterEach(() => void vi.restoreAllMocks());

  it("works out nothing for a caller who left while waiting", async () => {
    // Every look at the clock finds a second gone: no question may go at once.
    let seconds = 0;
    vi.spyOn(performance, "now").mockImplementation(() => ++seconds * 1000);
    const app = createApp({ turns: new Turns() });
    const controller = new AbortController();
    const asked = app.request("/v1/fit", { ...question, signal: controller.signal });
    controller.abort();
    expect(await problemOf(await asked)).toMatchObject({ status: 408, detail: expect.stringContaining("You left") });
    expect((await app.request("/v1/fit", question)).status).toBe(200);
  });

  it("answers a newcomer before the last of those who came first", async () => {
    const settings = readSettings({}, { loopback: true, watched: true });
    const server = listen({ port: 0, hostname: "127.0.0.1", address: "http://localhost", settings }, () => {});
    await once(server, "listening");
    const at = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
    const order: string[] = [];
    const ask = (name: string, path: string, init?: RequestInit) =>
      fetch(at + path, init).then(async (response) => {
        await response.text();
        order.push(name);
      });
    const long = Array.from({ length: 3 }, () => ask("remedies", "/v1/remedies", question));
    await new Promise((resolve) => setTimeout(resolve, 50));
    await Promise.all([...long, ask("health", "/health")]);
    server.close();
    server.closeAllConnections();
    expect(order).toHaveLength(4);
    expect(order.slice(0, -1)).toContain("health");
  });
});
