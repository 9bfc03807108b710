/** Faults of real connections: undici's MockAgent and a raw socket server. Every failure ends as a typed error. */
import { type AddressInfo, createServer, type Server, type Socket } from "node:net";
import { ConnectionError, RateLimitedError, Ringtrue, ServerError, TimeoutError } from "@ringtrue/sdk";
import { Agent, MockAgent, fetch as undiciFetch } from "undici";
import { afterEach, describe, expect, it } from "vitest";

const origin = "http://larch-lane.example";
const quiet = { random: () => 0, sleep: async () => {} };
const closing: (() => unknown)[] = [];
afterEach(async () => {
  for (const close of closing.splice(0)) await close();
});

function mocked(options = {}) {
  const agent = new MockAgent();
  agent.disableNetConnect();
  closing.push(() => agent.close());
  const client = new Ringtrue({
    baseUrl: origin,
    fetch: undiciFetch as never,
    dispatcher: agent,
    ...quiet,
    ...options,
  });
  return { client, pool: agent.get(origin) };
}

describe("with undici's MockAgent as dispatcher", () => {
  const health = { path: "/health", method: "GET" };

  it("passes a 503, a 429 and a reset, then answers", async () => {
    const { client, pool } = mocked({ maxRetries: 3 });
    pool.intercept(health).reply(503, "");
    pool.intercept(health).reply(429, "", { headers: { "retry-after": "0" } });
    pool.intercept(health).replyWithError(new Error("socket hang up"));
    pool.intercept(health).reply(200, { status: "ok" });
    await expect(client.health()).resolves.toEqual({ status: "ok" });
  });

  it("gives up with the class of the last failure", async () => {
    const { client, pool } = mocked({ maxRetries: 1 });
    pool.intercept(health).reply(503, "");
    pool.intercept(health).reply(429, { title: "Too many", status: 429, detail: "Ten a second." });
    await expect(client.health()).rejects.toBeInstanceOf(RateLimitedError);
  });

  it("leaves later answers alone when the first cannot be mended", async () => {
    const { client, pool } = mocked();
    pool.intercept(health).reply(500, "");
    pool.intercept(health).reply(200, { status: "ok" });
    await expect(client.health()).rejects.toBeInstanceOf(ServerError);
    await expect(client.health()).resolves.toEqual({ status: "ok" });
  });

  it("times out on a slow answer", async () => {
    const { client, pool } = mocked({ timeoutMs: 20 });
    pool.intercept(health).reply(200, { status: "ok" }).delay(500);
    await expect(client.health()).rejects.toBeInstanceOf(TimeoutError);
  });

  it("sends the body again, whole, on a retry", async () => {
    const { client, pool } = mocked();
    const bodies: unknown[] = [];
    const fit = { path: "/v1/fit", method: "POST", body: (body: string) => bodies.push(body) > 0 };
    pool.intercept(fit).reply(502, "");
    pool.intercept(fit).reply(200, { verdict: "sound" });
    await client.fit.check({ glaze: { expansion: { value: 6 } }, body: { class: "red-stoneware" } });
    // MockAgent may look at a body more than once while it matches.
    expect(new Set(bodies)).toEqual(new Set(['{"glaze":{"expansion":{"value":6}},"body":{"class":"red-stoneware"}}']));
  });
});

describe("with a server that misbehaves", () => {
  /** Listens on loopback and plays one script for each request. */
  async function rawServer(scripts: ((socket: Socket) => void)[]) {
    const sockets = new Set<Socket>();
    let requests = 0;
    const server: Server = createServer((socket) => {
      sockets.add(socket);
      socket.on("error", () => {});
      socket.on("data", () => scripts[Math.min(requests++, scripts.length - 1)]!(socket));
    });
    await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
    const dispatcher = new Agent();
    closing.push(async () => {
      await dispatcher.destroy();
      for (const socket of sockets) socket.destroy();
      await new Promise((resolve) => server.close(resolve));
    });
    const baseUrl = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
    const client = new Ringtrue({ baseUrl, fetch: undiciFetch as never, dispatcher, timeoutMs: 300, ...quiet });
    return { client, requests: () => requests };
  }

  const ok = (body: string) => (socket: Socket) =>
    socket.write(`HTTP/1.1 200 OK\r\ncontent-type: application/json\r\ncontent-length: ${body.length}\r\n\r\n${body}`);
  const truncated = (socket: Socket) => socket.end("HTTP/1.1 200 OK\r\ncontent-length: 100\r\n\r\n{");

  it("passes a reset and a body cut short", async () => {
    const { client, requests } = await rawServer([
      (socket) => socket.resetAndDestroy(),
      truncated,
      ok('{"status":"ok"}'),
    ]);
    await expect(client.health()).resolves.toEqual({ status: "ok" });
    expect(requests()).toBe(3);
  });

  it("ends in a ConnectionError when every body is cut short", async () => {
    const { client } = await rawServer([truncated]);
    await expect(client.health()).rejects.toBeInstanceOf(ConnectionError);
  });

  it("times out on a server that takes the request and says nothing", async () => {
    const { client } = await rawServer([() => {}]);
    await expect(client.health()).rejects.toBeInstanceOf(TimeoutError);
  });

  it("times out on a stream that stalls after a good line", async () => {
    const line = '{"line":1,"result":{}}\n';
    const chunk = `${line.length.toString(16)}\r\n${line}\r\n`;
    const { client } = await rawServer([
      (socket) => socket.write(`HTTP/1.1 200 OK\r\ntransfer-encoding: chunked\r\n\r\n${chunk}`),
    ]);
    const question = { glaze: { expansion: { value: 6 } }, body: { class: "red-stoneware" } };
    const answers = client.fit.stream([question, question]);
    await expect(answers.next()).resolves.toMatchObject({ value: { line: 1 } });
    await expect(answers.next()).rejects.toBeInstanceOf(TimeoutError);
  });

  it("ends in a ConnectionError when nobody listens", async () => {
    const server = createServer();
    await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
    const { port } = server.address() as AddressInfo;
    await new Promise((resolve) => server.close(resolve));
    const client = new Ringtrue({ baseUrl: `http://127.0.0.1:${port}`, ...quiet });
    await expect(client.health()).rejects.toThrow(/ECONNREFUSED/);
  });
});

describe("Node's own fetch", () => {
  it("takes an undici dispatcher too", async () => {
    const agent = new MockAgent();
    agent.disableNetConnect();
    closing.push(() => agent.close());
    agent.get(origin).intercept({ path: "/health", method: "GET" }).reply(200, { status: "ok" });
    const client = new Ringtrue({ baseUrl: origin, dispatcher: agent });
    await expect(client.health()).resolves.toEqual({ status: "ok" });
  });
});
