/** A server in a process of its own, on loopback, so that the load generator takes none of its core. @module */
import { execFile, execFileSync, spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import { createServer } from "node:net";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";

const root = fileURLToPath(new URL("../../", import.meta.url));

/** A running server. */
export interface Child {
  url: string;
  /** Resident memory [MB]. */
  residentMB(): number;
  /** Processor time used so far, by its workers too [s]; null where the system does not tell. */
  processorS(): number | null;
  stop(): void;
}

/**
 * Starts a TypeScript file that listens on `PORT`.
 * @param file - path from the top of the project
 * @param settings - variables of its environment beside the port
 */
export async function start(file: string, settings: Record<string, string> = {}): Promise<Child> {
  const port = await freePort();
  const child = spawn(process.execPath, [".config/run.mjs", file], {
    cwd: root,
    env: { ...process.env, PORT: String(port), HOST: "127.0.0.1", RINGTRUE_LOG: "off", ...settings },
    stdio: ["ignore", "ignore", "inherit"],
  });
  const kill = () => void child.kill("SIGKILL");
  process.once("exit", kill);
  const stop = () => {
    process.off("exit", kill);
    kill();
  };
  const pid = child.pid!;
  const url = `http://127.0.0.1:${port}`;
  return { url, residentMB: () => residentKB(pid) / 1024, processorS: () => processorS(pid), stop };
}

/** Runs a TypeScript file to its end and gives what it printed. */
export async function output(file: string, ...parameters: string[]): Promise<string> {
  const run = promisify(execFile);
  const { stdout } = await run(process.execPath, [".config/run.mjs", file, ...parameters], { cwd: root });
  return stdout;
}

/**
 * Asks until something answers.
 * @param ask - one try
 * @param limitMs - patience [ms]
 */
export async function untilAnswered<T>(ask: () => Promise<T>, limitMs = 20_000): Promise<T> {
  for (const began = performance.now(); ; ) {
    try {
      return await ask();
    } catch (error) {
      if (performance.now() - began > limitMs) throw error;
      await new Promise((resolve) => setTimeout(resolve, 5));
    }
  }
}

function residentKB(pid: number): number {
  try {
    return Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, "utf8"))?.[1]);
  } catch {
    return Number(execFileSync("ps", ["-o", "rss=", "-p", String(pid)], { encoding: "utf8" }));
  }
}

/** User and system time, fields 14 and 15 of proc_pid_stat(5), in ticks of 1/100 s; its workers' added. */
function processorS(pid: number): number | null {
  try {
    const [, fields = ""] = readFileSync(`/proc/${pid}/stat`, "utf8").split(") ");
    const [user, system] = fields.split(" ").slice(11, 13);
    const workers = readFileSync(`/proc/${pid}/task/${pid}/children`, "utf8").split(" ").filter(Boolean);
    const theirs = workers.map((worker) => processorS(Number(worker)) ?? 0);
    return theirs.reduce((sum, one) => sum + one, (Number(user) + Number(system)) / 100);
  } catch {
    return null;
  }
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer().once("error", reject);
    server.listen(0, "127.0.0.1", () => {
      const address = server.address();
      server.close(() => resolve(typeof address === "object" && address ? address.port : 0));
    });
  });
}
