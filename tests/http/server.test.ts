/** The service as a process: it starts, answers over a socket, and goes when told. */
import { type ChildProcess, spawn } from "node:child_process";
import { fileURLToPath } from "node:url";
import { afterEach, describe, expect, it } from "vitest";
import { THAW_TEXT } from "./support.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
const running: ChildProcess[] = [];
afterEach(() => {
  for (const child of running.splice(0)) child.kill("SIGKILL");
});

/** Starts the service on a free port and waits until it says where it listens. */
async function start(parameters: string[] = [], env: Record<string, string> = {}) {
  const child = spawn(process.execPath, ["--import", "tsx", "api/server.ts", ...parameters], {
    cwd: root,
    env: { ...process.env, PORT: "0", ...env },
  });
  running.push(child);
  let output = "";
  const ended = new Promise<number | null>((resolve) => child.once("exit", resolve));
  const address = new Promise<string>((resolve, reject) => {
    const read = (chunk: Buffer) => {
      output += chunk;
      const found = /listens at (http:\/\/localhost:\d+)\//.exec(output);
      if (found) resolve(found[1]!);
    };
    child.stdout.on("data", read);
    child.stderr.on("data", read);
    ended.then(() => reject(new Error(`ended: ${output}`)));
  });
  return { child, address, ended, output: () => output };
}

describe("api/server.ts", () => {
  it("greets with a real fit, then serves, then stops when told", async () => {
    const { child, address, ended, output } = await start(["--greet"]);
    const base = await address;
    expect(output()).toMatch(/red stoneware[\s\S]*Why[\s\S]*What next[\s\S]*Mind[\s\S]*Look/);
    const headers = { "content-type": "application/json" };
    const answer = await fetch(`${base}/v1/fit`, { method: "POST", body: THAW_TEXT, headers });
    expect(answer.status).toBe(200);
    expect((await answer.json()).stress.unit).toBe("MPa");
    expect((await fetch(`${base}/reference/swagger-ui-bundle.js`)).status).toBe(200);
    child.kill("SIGTERM");
    expect(await ended).toBe(0);
  });

  it("finishes a request under way before it stops", async () => {
    const { child, address, ended } = await start();
    let send!: ReadableStreamDefaultController<Uint8Array>;
    const body = new ReadableStream<Uint8Array>({
      start(controller) {
        send = controller;
      },
    });
    const line = new TextEncoder().encode(`${THAW_TEXT}\n`);
    const headers = { "content-type": "application/x-ndjson" };
    const asked = fetch(`${await address}/v1/fit/stream`, {
      method: "POST",
      body,
      headers,
      duplex: "half",
    } as RequestInit);
    send.enqueue(line);
    const reader = (await asked).body!.getReader();
    await reader.read();
    child.kill("SIGTERM");
    await new Promise((resolve) => setTimeout(resolve, 100));
    send.enqueue(line);
    send.close();
    let rest = "";
    for (;;) {
      const { done, value } = await reader.read();
      if (done) break;
      rest += new TextDecoder().decode(value);
    }
    expect(JSON.parse(rest).line).toBe(2);
    expect(await ended).toBe(0);
  });

  it("refuses a port that is none", async () => {
    const { ended, address, output } = await start([], { PORT: "kiln" });
    address.catch(() => {});
    expect(await ended).toBe(1);
    expect(output()).toContain("PORT is kiln. It must be a whole number from 0 to 65535.");
  });

  it("says so when the port is taken", async () => {
    const first = await start();
    const port = new URL(await first.address).port;
    const second = await start([], { PORT: port });
    second.address.catch(() => {});
    expect(await second.ended).toBe(1);
    expect(second.output()).toContain(`Port ${port} is taken.`);
  });
});
