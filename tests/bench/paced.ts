/** Asking at an even pace, whatever comes back. @module */
import { Agent, type IncomingMessage, request } from "node:http";

/** One answer over the wire. */
export interface Answered {
  status: number;
  headers: IncomingMessage["headers"];
  body: Buffer;
}

/** How a request differs from a plain POST of JSON. */
export interface Asking {
  method?: string;
  headers?: Record<string, string>;
  agent?: Agent | false;
}

/** POSTs and reads the answer whole. */
export function ask(url: string, body: string | Buffer, { method = "POST", headers, agent }: Asking = {}) {
  return new Promise<Answered>((resolve, reject) => {
    const type = { "content-type": "application/json" };
    const asked = request(url, { method, agent, headers: { ...type, ...headers } }, (response) => {
      const pieces: Buffer[] = [];
      response.on("data", (piece) => pieces.push(piece));
      response.once("end", () => {
        resolve({ status: response.statusCode!, headers: response.headers, body: Buffer.concat(pieces) });
      });
      response.once("error", reject);
    });
    asked.once("error", reject);
    asked.end(body);
  });
}

/** Connections kept for the next question. */
export const keptConnections = (most: number) => new Agent({ keepAlive: true, maxSockets: most });

/**
 * Calls at an even pace without waiting for what was called before, as many callers who know nothing of each other do.
 * @param perSecond - calls [1/s]
 * @param seconds - for how long [s]
 * @param call - one call
 * @returns time of each from when it was due to when it was done [ms], so that a held-up call counts its wait
 */
export async function paced(perSecond: number, seconds: number, call: () => Promise<unknown>): Promise<number[]> {
  const began = performance.now();
  const times: number[] = [];
  const open: Promise<void>[] = [];
  for (let n = 0; n < perSecond * seconds; n++) {
    const due = began + (n / perSecond) * 1000;
    while (performance.now() < due) await new Promise((resolve) => setTimeout(resolve, due - performance.now()));
    open.push(call().then(() => void times.push(performance.now() - due)));
  }
  await Promise.all(open);
  return times;
}

/** The value that a share of all stay below; 0.99 for the 99th of a hundred. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}
