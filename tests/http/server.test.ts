/** The service as a process: it starts, answers over a socket, and goes when told. */
import { type ChildProcess, execFileSync, spawn } from "node:child_process";
import { get } from "node:http";
import { fileURLToPath } from "node:url";
import { afterEach, describe, expect, it } from "vitest";
import { THAW_TEXT } from "./support.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
const running: ChildProcess[] = [];
afterEach(() => {
  for (const child of running.splice(0)) child.kill("SIGKILL");
});

/** Asks on a connection of its own, so that any worker may take it; "" when none answers. */
function getOnce(url: string): Promise<string> {
  return new Promise((resolve) => {
    // A question handed to a worker in the moment it is killed is never answered: it gives up, and the next is asked.
    const asked = get(url, { agent: false, signal: AbortSignal.timeout(3000) }, async (response) => {
      let text = "";
      try {
        for await (const piece of response) text += piece;
      } catch {
        text = "";
      }
      resolve(text);
    });
    asked.once("error", () => resolve(""));
  });
}

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

  it("goes on answering for a while when told to stop, saying that it is about to", async () => {
    const { child, address, ended } = await start([], { RINGTRUE_DRAIN: "2" });
    const base = await address;
    expect((await fetch(`${base}/ready`)).status).toBe(200);
    child.kill("SIGTERM");
    await new Promise((resolve) => setTimeout(resolve, 200));
    expect((await fetch(`${base}/ready`)).status).toBe(503);
    expect((await fetch(`${base}/health`)).status).toBe(200);
    expect(await ended).toBe(0);
  });

  it("writes one JSON line a request, or none when told", async () => {
    const loud = await start();
    await fetch(`${await loud.address}/health`);
    const quiet = await start([], { RINGTRUE_LOG: "off" });
    await fetch(`${await quiet.address}/health`);
    for (const { child, ended } of [loud, quiet]) {
      child.kill("SIGTERM");
      await ended;
    }
    const lines = (output: string) => output.split("\n").filter((line) => line.startsWith("{"));
    expect(lines(loud.output()).map((line) => JSON.parse(line))).toMatchObject([{ path: "/health", status: 200 }]);
    expect(lines(quiet.output())).toEqual([]);
  });

  it("limits callers by their address, as the proxy in front tells it", async () => {
    const { address } = await start([], { RINGTRUE_RATE: "1", RINGTRUE_PROXIES: "1" });
    const base = await address;
    const ask = async (from: string) => {
      const headers = { "x-forwarded-for": `192.0.2.77, ${from}` };
      return (await fetch(`${base}/v1/bodies/red-stoneware`, { headers })).status;
    };
    expect([await ask("192.0.2.1"), await ask("192.0.2.1"), await ask("192.0.2.2")]).toEqual([200, 429, 200]);
  });

  it("shares its port among workers, and starts another when one dies", async () => {
    const { child, address, ended, output } = await start([], { WORKERS: "2", RINGTRUE_METRICS: "on" });
    const base = await address;
    const processes = new Set<string>();
    const askUntil = async (wanted: number) => {
      for (let tries = 0; processes.size < wanted && tries < 800; tries++) {
        const text = await getOnce(`${base}/metrics`);
        const found = /under_way\{process="(\d+)"\}/.exec(text)?.[1];
        if (found) processes.add(found);
        await new Promise((resolve) => setTimeout(resolve, 25));
      }
      return processes.size;
    };
    expect(await askUntil(2)).toBe(2);
    const children = execFileSync("ps", ["-o", "pid=,args=", "--ppid", String(child.pid)], { encoding: "utf8" });
    const worker = children.split("\n").find((line) => line.includes("api/server.ts"));
    process.kill(Number(worker?.trim().split(" ")[0]), "SIGKILL");
    expect(await askUntil(3)).toBe(3);
    expect(output()).toMatch(/Worker \d ended \(SIGKILL\)\. Another starts in 0\.5 s\./);
    child.kill("SIGTERM");
    expect(await ended).toBe(0);
  }, 120_000);

  it("says once why no worker can start", async () => {
    const first = await start();
    const second = await start([], { PORT: new URL(await first.address).port, WORKERS: "2" });
    second.address.catch(() => {});
    expect(await second.ended).toBe(1);
    expect(second.output()).toContain("is taken.");
  });

  it("refuses a setting it does not know: a door meant to be shut would stand open", async () => {
    const { ended, address, output } = await start([], { RINGTRUE_KEY: "larch" });
    address.catch(() => {});
    expect(await ended).toBe(1);
    expect(output()).toContain("I don't know the setting RINGTRUE_KEY. Did you mean RINGTRUE_KEYS?");
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
