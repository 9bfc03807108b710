/** The measures, one function each; every one starts what it needs and stops it again. @module */

import { setTimeout as sleep } from "node:timers/promises";
import { Ringtrue } from "@ringtrue/sdk";
import autocannon from "autocannon";
import { checkFit } from "../../api/engine/fit/index.ts";
import { type Child, output, start, untilAnswered } from "./child.ts";
import { ask, keptConnections, paced, quantile } from "./paced.ts";
import { question, questions, WORKERS_MIXTURES, workersBlend } from "./questions.ts";

const SERVICE = "api/server.ts";
const BODY = JSON.stringify(question());

/** Length of the body that both servers get [bytes]. */
export const BODY_BYTES = Buffer.byteLength(BODY);

/** What one request costs a server. */
export interface Load {
  /** Requests answered to ten connections [1/s]. */
  rate: number;
  /** Processor time of the server for each [µs]: hardly moved by what else the machine is doing. */
  processorUs: number | null;
}

/**
 * Loads a server for five seconds, after two of warming up.
 * @param child - server to ask
 * @param path - where to POST the body
 */
async function load(child: Child, path: string): Promise<Load> {
  const headers = { "content-type": "application/json" };
  const asked = { url: child.url + path, method: "POST", headers, body: BODY, connections: 10 } as const;
  await untilAnswered(() => fetch(asked.url, { method: "POST", headers, body: BODY }));
  await autocannon({ ...asked, duration: 2 });
  const usedBefore = child.processorS();
  const { requests, errors, non2xx } = await autocannon({ ...asked, duration: 5 });
  if (errors + non2xx > 0) throw new Error(`${path}: ${errors} errors and ${non2xx} refusals: the figure would lie.`);
  const used = child.processorS();
  const processorUs = used !== null && usedBefore !== null ? ((used - usedBefore) / requests.total) * 1e6 : null;
  return { rate: requests.average, processorUs };
}

async function withChild<T>(
  file: string,
  measure: (child: Child) => Promise<T>,
  settings: Record<string, string> = {},
): Promise<T> {
  const child = await start(file, settings);
  try {
    return await measure(child);
  } finally {
    child.stop();
  }
}

/** Bare Hono echo of the same body */
export const echoLoad = () => withChild("tests/bench/echo-server.ts", (child) => load(child, "/echo"));

/** Validated `POST /v1/fit` */
export const fitLoad = () => withChild(SERVICE, (child) => load(child, "/v1/fit"));

/** From starting the process to the first fit answered [ms]; the middle of three. */
export async function startUpMs(): Promise<number> {
  const times: number[] = [];
  for (let i = 0; i < 3; i++) {
    const began = performance.now();
    await withChild(SERVICE, async ({ url }) => {
      await untilAnswered(() => new Ringtrue({ baseUrl: url, maxRetries: 0 }).fit.check(question()));
      times.push(performance.now() - began);
    });
  }
  return times.sort((a, b) => a - b)[1]!;
}

/** Fits per second of the engine alone, in this process [1/s]. */
export function engineRate(seconds = 3): number {
  // So many calls it takes the runtime to settle on how to run it.
  for (let n = 0; n < 6000; n++) checkFit(question(n) as never);
  const began = performance.now();
  let fits = 0;
  while (performance.now() - began < seconds * 1000) {
    for (let i = 0; i < 50; i++) checkFit(question(fits++) as never);
  }
  return fits / ((performance.now() - began) / 1000);
}

/** What a long stream of fits costs. */
export interface Bulk {
  /** Fits with full uncertainty, every line different, through the SDK [1/s]. */
  rate: number;
  /** The same for each second of the service's own processor time: what one core can do [1/s]. */
  ratePerCore: number | null;
  fits: number;
  /** Resident memory of the service after so many fits [MB]. */
  memory: { fits: number; residentMB: number }[];
}

/**
 * Streams fits and watches rate and memory.
 * @param count - fits to ask for
 * @param marks - after how many to read the memory
 * @param limitS - stop after this long, whatever was reached [s]
 * @param answers - whole ones from `/v1/fit/stream`, or short ones from `/v1/fit/verdicts`
 */
export function bulk(
  count: number,
  marks: readonly number[],
  limitS: number,
  answers: "stream" | "verdicts" = "stream",
): Promise<Bulk> {
  return withChild(SERVICE, async (child) => {
    const client = new Ringtrue({ baseUrl: child.url });
    await untilAnswered(() => client.health({ maxRetries: 0 }));
    const memory: Bulk["memory"] = [];
    const usedBefore = child.processorS();
    const began = performance.now();
    let fits = 0;
    for await (const { error, line } of client.fit[answers](questions(count))) {
      if (error) throw new Error(`Line ${line}: ${error.detail}`);
      fits = line;
      if (marks.includes(line)) memory.push({ fits: line, residentMB: child.residentMB() });
      if (line % 1000 === 0 && performance.now() - began > limitS * 1000) break;
    }
    if (memory.at(-1)?.fits !== fits) memory.push({ fits, residentMB: child.residentMB() });
    const seconds = (performance.now() - began) / 1000;
    const used = child.processorS();
    const ratePerCore = used !== null && usedBefore !== null ? fits / (used - usedBefore) : null;
    return { rate: fits / seconds, ratePerCore, fits, memory };
  });
}

/**
 * How long single fits take at a rate that leaves the service time to breathe.
 * @param perSecond - fits asked for, evenly spread [1/s]
 * @returns time that 99 in 100 stay below, from when each was due [ms]
 */
export function p99Ms(perSecond: number, seconds = 5): Promise<number> {
  return withChild(SERVICE, async ({ url }) => {
    const agent = keptConnections(64);
    const fit = async () => {
      const { status } = await ask(`${url}/v1/fit`, BODY, { agent });
      if (status !== 200) throw new Error(`${status}: the figure would lie.`);
    };
    await untilAnswered(fit);
    await paced(perSecond, 2, fit);
    return quantile(await paced(perSecond, seconds, fit), 0.99);
  });
}

/** Blends asked for at once: more than two workers need, so that neither waits for the next. */
const BLENDS_AT_ONCE = 8;
const BEGINNING_MS = 500;

/** How fast blends are judged. */
interface BlendRate {
  /** Mixtures [1/s]. */
  rate: number;
  /** Mixtures for each second of the processor, all processes together [1/s]: what another machine's free cores would gain. */
  perProcessorS: number | null;
}

/**
 * What a second process adds: blends of 325 mixtures answered as a table, so that asking and sending cost next to nothing
 * beside the work. Both services run, and are asked in turn, so that a machine that swings from minute to minute swings
 * for both.
 */
export function workersRates(turns = 2, secondsEach = 3): Promise<{ one: BlendRate; two: BlendRate }> {
  const both = async (one: Child, two: Child) => {
    const rates: [BlendRate[], BlendRate[]] = [[], []];
    for (const child of [one, two]) await blendsFor(child, 1);
    for (let turn = 0; turn < turns; turn++) {
      rates[0].push(await blendsFor(one, secondsEach));
      rates[1].push(await blendsFor(two, secondsEach));
    }
    return { one: meanOf(rates[0]), two: meanOf(rates[1]) };
  };
  return withChild(SERVICE, (one) => withChild(SERVICE, (two) => both(one, two), { WORKERS: "2" }));
}

function meanOf(rates: readonly BlendRate[]): BlendRate {
  const mean = (key: keyof BlendRate) => rates.reduce((sum, rate) => sum + (rate[key] ?? Number.NaN), 0) / rates.length;
  const perProcessorS = mean("perProcessorS");
  return { rate: mean("rate"), perProcessorS: Number.isNaN(perProcessorS) ? null : perProcessorS };
}

/** Asks for blends, several at once; how it begins and how it ends do not count. */
async function blendsFor(child: Child, seconds: number): Promise<BlendRate> {
  const asked = Buffer.from(JSON.stringify(workersBlend()));
  const headers = { "content-type": "application/json", accept: "text/csv" };
  let judged = 0;
  // A connection of its own for each, so that the processes share them evenly.
  const blend = async () => {
    const { status } = await ask(`${child.url}/v1/blends`, asked, { headers, agent: false });
    if (status !== 200) throw new Error(`${status}: the figure would lie.`);
    judged += WORKERS_MIXTURES;
  };
  await untilAnswered(blend);
  let enough = false;
  const asking = Array.from({ length: BLENDS_AT_ONCE }, async () => {
    while (!enough) await blend();
  });
  await sleep(BEGINNING_MS);
  const [judgedBefore, usedBefore, began] = [judged, child.processorS(), performance.now()];
  await sleep(seconds * 1000);
  const used = child.processorS();
  const counted = judged - judgedBefore;
  const rate = counted / ((performance.now() - began) / 1000);
  enough = true;
  await Promise.all(asking);
  return { rate, perProcessorS: used !== null && usedBefore !== null ? counted / (used - usedBefore) : null };
}

/**
 * Mixtures judged a second by so many processes that do nothing else and know nothing of each other: no service on this
 * machine can gain more by another worker.
 */
export async function bareRate(processes: number, seconds = 3): Promise<number> {
  const rates = await Promise.all(
    Array.from({ length: processes }, async () => {
      const told = await output("tests/bench/bare-worker.ts", "1.5", String(seconds));
      return Number(told);
    }),
  );
  return rates.reduce((sum, rate) => sum + rate, 0);
}
