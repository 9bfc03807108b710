/** The service under soak: a primary with two workers, watched from outside. @module */
import { type ChildProcess, execFileSync, spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("../../", import.meta.url));

/** Memory of one worker at one time. */
export interface Sample {
  /** Since the soak began [s]. */
  atS: number;
  pid: number;
  residentMB: number;
}

export class Service {
  readonly url: string;
  /** What the service has told of faults of its own. */
  readonly faults: string[] = [];
  /** When a worker was killed [ms of performance.now()]. */
  readonly kills: number[] = [];
  readonly samples: Sample[] = [];
  private readonly child: ChildProcess;

  private constructor(child: ChildProcess, url: string) {
    this.child = child;
    this.url = url;
    let rest = "";
    child.stderr!.on("data", (piece) => {
      const told = (rest + piece).split("\n");
      rest = told.pop() ?? "";
      // That a worker was killed is ours; everything else is told by the service of itself.
      this.faults.push(...told.filter((line) => line !== "" && !/^Worker \d+ ended \(SIGKILL\)/.test(line)));
    });
  }

  /** Starts it on loopback and waits until it listens. */
  static start(workers: number): Promise<Service> {
    const env = { ...process.env, PORT: "0", HOST: "127.0.0.1", WORKERS: String(workers), RINGTRUE_LOG: "off" };
    const child = spawn(process.execPath, [".config/run.mjs", "api/server.ts"], { cwd: root, env });
    process.once("exit", () => child.kill("SIGKILL"));
    return new Promise((resolve, reject) => {
      child.once("exit", (code) => reject(new Error(`The service ended with ${code}.`)));
      child.stdout.on("data", (piece) => {
        const port = /:(\d+)\/ /.exec(String(piece))?.[1];
        if (port) resolve(new Service(child, `http://127.0.0.1:${port}`));
      });
    });
  }

  /** Processes that answer, oldest first. */
  workers(): number[] {
    const listed = execFileSync("ps", ["-o", "pid=,args=", "--sort=start_time", "--ppid", String(this.child.pid)]);
    const ours = String(listed)
      .split("\n")
      .filter((line) => line.includes("main.mjs"));
    return ours.map((line) => Number.parseInt(line, 10));
  }

  /** Kills the youngest worker, so that the oldest lives throughout and its memory can be judged. */
  killOne(): void {
    const pids = this.workers();
    if (pids.length < 2) return;
    this.kills.push(performance.now());
    process.kill(pids.at(-1)!, "SIGKILL");
  }

  sample(atS: number): void {
    for (const pid of this.workers()) {
      try {
        const status = readFileSync(`/proc/${pid}/status`, "utf8");
        this.samples.push({ atS, pid, residentMB: Number(/VmRSS:\s+(\d+)/.exec(status)?.[1]) / 1024 });
      } catch {
        // Killed in between.
      }
    }
  }

  /** Tells it to stop and waits; null when it had to be killed. */
  stop(): Promise<number | null> {
    return new Promise((resolve) => {
      this.child.removeAllListeners("exit");
      this.child.once("exit", (code) => resolve(code));
      this.child.kill("SIGTERM");
      setTimeout(() => this.child.kill("SIGKILL"), 20_000).unref();
    });
  }
}
