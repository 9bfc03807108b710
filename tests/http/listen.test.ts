/** Patience over real sockets: nobody holds a place by being slow. */
import { once } from "node:events";
import type { Server } from "node:http";
import { type AddressInfo, connect, type Socket } from "node:net";
import { afterEach, describe, expect, it, vi } from "vitest";
import { readSettings } from "../../api/http/settings.ts";
import { listen } from "../../api/node/listen.ts";
import { THAW_TEXT } from "./support.ts";

const servers: Server[] = [];
afterEach(() => {
  for (const server of servers.splice(0)) server.closeAllConnections();
});

async function listening(env: Record<string, string> = {}): Promise<Server> {
  const settings = readSettings(env, { loopback: true, watched: true });
  const server = listen({ port: 0, hostname: "127.0.0.1", address: "http://localhost", settings }, () => {});
  servers.push(server);
  await once(server, "listening");
  return server;
}
const open = (server: Server) => connect((server.address() as AddressInfo).port, "127.0.0.1");
const wholeOf = async (socket: Socket): Promise<string> => {
  let text = "";
  for await (const piece of socket) text += piece;
  return text;
};

describe("a connection", () => {
  it("has limits for its headers, its silence and its idling, and none for a whole stream", async () => {
    const { headersTimeout, timeout, keepAliveTimeout, requestTimeout } = await listening();
    expect({ headersTimeout, timeout, keepAliveTimeout, requestTimeout }).toEqual({
      headersTimeout: 20_000,
      timeout: 120_000,
      // Longer than the 60 s for which balancers commonly keep theirs. Common practice, no source.
      keepAliveTimeout: 65_000,
      requestTimeout: 0,
    });
  });

  it("ends when its sender falls silent in the middle of a request", async () => {
    const server = await listening();
    server.setTimeout(200);
    const socket = open(server);
    socket.write(
      "POST /v1/fit/stream HTTP/1.1\r\nhost: x\r\ncontent-type: application/x-ndjson\r\ntransfer-encoding: chunked\r\n\r\n",
    );
    const began = performance.now();
    socket.resume();
    await once(socket, "close");
    expect(performance.now() - began).toBeLessThan(5000);
  });

  let server: Server | undefined;
  const long = `x-note: ${"a".repeat(20_000)}\r\n`;
  it.each([
    ["does not speak HTTP", "GLAZE / KILN\r\n\r\n", 400, "malformed-request"],
    ["uses a method that nobody knows", "GLAZE / HTTP/1.1\r\nhost: x\r\n\r\n", 400, "malformed-request"],
    ["names no host", "GET /health HTTP/1.1\r\n\r\n", 400, "malformed-request"],
    ["names a host that is none", "GET /health HTTP/1.1\r\nhost: a b/c\r\n\r\n", 400, "malformed-request"],
    ["asks for no address", "OPTIONS * HTTP/1.1\r\nhost: x\r\n\r\n", 400, "malformed-request"],
    ["has a backslash in its address", "GET /v1\\fit HTTP/1.1\r\nhost: x\r\n\r\n", 400, "malformed-request"],
    [
      "states its length in two ways",
      "POST /v1/fit HTTP/1.1\r\nhost: x\r\ncontent-length: 4\r\ntransfer-encoding: chunked\r\n\r\n0\r\n\r\n",
      400,
      "malformed-request",
    ],
    ["wants to be carried on", "CONNECT other.example:443 HTTP/1.1\r\nhost: x\r\n\r\n", 405, "method-not-allowed"],
    [
      "has endless chunk extensions",
      `POST /v1/fit HTTP/1.1\r\nhost: x\r\ntransfer-encoding: chunked\r\n\r\n4;${"a".repeat(20_000)}\r\n`,
      413,
      "too-large",
    ],
    ["expects what nobody does", "GET / HTTP/1.1\r\nhost: x\r\nexpect: tea\r\n\r\n", 417, "unmet-expectation"],
    ["has headers without end", `GET /health HTTP/1.1\r\nhost: x\r\n${long}\r\n`, 431, "headers-too-large"],
    ["has an address without end", `GET /${"a".repeat(20_000)} HTTP/1.1\r\nhost: x\r\n\r\n`, 431, "headers-too-large"],
  ])("is told in a problem document where its request %s", async (_, request, status, kind) => {
    server ??= await listening();
    const socket = open(server);
    socket.end(request);
    const [head = "", body = ""] = (await wholeOf(socket)).split("\r\n\r\n");
    expect(head).toMatch(new RegExp(`^HTTP/1\\.1 ${status} .*content-type: application/problem\\+json`, "is"));
    const requestId = /x-request-id: (.*)/i.exec(head)?.[1];
    const type = `https://ringtrue.example/problems/${kind}`;
    expect(JSON.parse(body)).toMatchObject({ type, status, requestId, detail: expect.stringMatching(/\. /) });
  });

  it("gets no refusal in the middle of another answer", async () => {
    const socket = open(await listening());
    const line = `${THAW_TEXT}\n`.repeat(200);
    const headers = `host: x\r\ncontent-type: application/x-ndjson\r\ntransfer-encoding: chunked\r\n`;
    socket.write(`POST /v1/fit/stream HTTP/1.1\r\n${headers}\r\n${line.length.toString(16)}\r\n${line}\r\n`);
    let answer = "";
    socket.on("data", (piece) => {
      if (answer === "") socket.write("not a chunk\r\n");
      answer += piece;
    });
    socket.on("error", () => {});
    await once(socket, "close");
    expect(answer.match(/HTTP\/1\.1 /g)).toHaveLength(1);
    expect(answer).toMatch(/^HTTP\/1\.1 200 /);
  });

  it("keeps nobody out by sending slowly, however many there are", async () => {
    const server = await listening({ RINGTRUE_CONCURRENCY: "3" });
    const slow = Array.from({ length: 10 }, () => open(server));
    const answers: string[] = [];
    slow.forEach((socket, i) => {
      socket.on("data", (piece) => (answers[i] = `${answers[i] ?? ""}${piece}`));
      socket.write(
        `POST /v1/fit HTTP/1.1\r\nhost: x\r\ncontent-type: application/json\r\ncontent-length: ${THAW_TEXT.length}\r\n\r\n{`,
      );
    });
    const refused = () => answers.filter((answer) => answer?.startsWith("HTTP/1.1 503 ")).length;
    while (refused() < 7) await new Promise((resolve) => setTimeout(resolve, 10));
    const { port } = server.address() as AddressInfo;
    const headers = { "content-type": "application/json" };
    for (let i = 0; i < 3; i++) {
      const quick = await fetch(`http://127.0.0.1:${port}/v1/fit`, { method: "POST", body: THAW_TEXT, headers });
      expect(quick.status).toBe(200);
    }
    // The newcomer took the room of the one that had been longest, for as long as its own body was on the way.
    expect(refused()).toBeLessThanOrEqual(10);
    for (const socket of slow) socket.destroy();
  });

  it("that breaks off in the middle of a request is no fault of the service", async () => {
    const written: string[] = [];
    const write = vi.spyOn(process.stderr, "write").mockImplementation((line) => written.push(String(line)) > 0);
    const server = await listening({ RINGTRUE_LOG: "on" });
    for (const header of ["content-length: 999", "transfer-encoding: chunked"]) {
      const socket = open(server);
      socket.write(`POST /v1/fit HTTP/1.1\r\nhost: x\r\ncontent-type: application/json\r\n${header}\r\n\r\n{`);
      setTimeout(() => socket.destroy(), 50);
    }
    while (written.length < 2) await new Promise((resolve) => setTimeout(resolve, 10));
    write.mockRestore();
    const lines = written.map((line) => JSON.parse(line));
    expect(lines).toMatchObject([{ path: "/v1/fit", status: 400 }, { status: 400 }]);
    expect(written.join("")).not.toContain("fault");
  });
});
