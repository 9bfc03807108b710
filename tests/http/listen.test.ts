/** Patience over real sockets: nobody holds a place by being slow. */
import { once } from "node:events";
import type { Server } from "node:http";
import { type AddressInfo, connect } from "node:net";
import { afterEach, describe, expect, it } from "vitest";
import { readSettings } from "../../api/http/settings.ts";
import { listen } from "../../api/node/listen.ts";

const servers: Server[] = [];
afterEach(() => {
  for (const server of servers.splice(0)) server.closeAllConnections();
});

async function listening(): Promise<Server> {
  const settings = readSettings({}, { loopback: true, watched: true });
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
});
