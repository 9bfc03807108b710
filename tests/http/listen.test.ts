/** Patience over real sockets: nobody holds a place by being slow. */
import { once } from "node:events";
import type { Server } from "node:http";
import { type AddressInfo, connect } from "node:net";
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

  it("is refused when it does not speak HTTP", async () => {
    const socket = open(await listening());
    socket.write("GLAZE / KILN\r\n\r\n");
    let answer = "";
    for await (const piece of socket) answer += piece;
    expect(answer).toMatch(/^HTTP\/1\.1 400 /);
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
