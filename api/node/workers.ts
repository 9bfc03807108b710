/** Several processes that share one port: started, started again when one dies, stopped together. @module */
import cluster, { type Worker } from "node:cluster";

/** Wait before the first restart of a worker that died young; doubled each time, up to the longest [ms]. */
const FIRST_WAIT_MS = 500;
const LONGEST_WAIT_MS = 30_000;
/** A worker that lived this long died of something new [ms]. */
const GROWN_UP_MS = 60_000;

/**
 * Runs `count` workers of this same program until told to stop.
 * @param count - processes
 * @param onListening - told the port once the first worker listens
 */
export function runWorkers(count: number, onListening: (port: number) => void): void {
  let stopping = false;
  let heard = false;
  let waitMs = FIRST_WAIT_MS;
  const start = () => {
    if (stopping) return;
    const worker = cluster.fork();
    const born = Date.now();
    worker.once("exit", (code, signal) => buried(worker, born, code, signal));
  };
  function buried(worker: Worker, born: number, code: number | null, signal: string | null): void {
    const left = Object.keys(cluster.workers ?? {}).length;
    if (stopping) {
      if (left === 0) process.exit();
      return;
    }
    // One that never got as far as listening has said why, and another would say the same.
    if (!heard) {
      stop(1);
      return;
    }
    if (Date.now() - born > GROWN_UP_MS) waitMs = FIRST_WAIT_MS;
    console.error(`Worker ${worker.id} ended (${signal ?? code}). Another starts in ${waitMs / 1000} s.`);
    setTimeout(start, waitMs);
    waitMs = Math.min(LONGEST_WAIT_MS, waitMs * 2);
  }
  function stop(code = 0): void {
    if (stopping) return;
    stopping = true;
    process.exitCode = code;
    for (const worker of Object.values(cluster.workers ?? {})) worker?.process.kill("SIGTERM");
    if (Object.keys(cluster.workers ?? {}).length === 0) process.exit(code);
  }
  cluster.on("listening", (_, { port }) => {
    if (!heard) onListening(port);
    heard = true;
  });
  for (const signal of ["SIGINT", "SIGTERM"] as const) process.on(signal, () => stop());
  for (let i = 0; i < count; i++) start();
}
