/** Those who ask: most as they should, some as no one should. @module */
import { type Agent, type IncomingMessage, request } from "node:http";
import type { Answered } from "../bench/paced.ts";
import type { Question } from "./questions.ts";
import type { Tally } from "./tally.ts";

/** How one asks. */
interface Manner {
  agent?: Agent | false;
  /** Sends half, and the rest after so long; never where it is infinite [ms]. */
  pauseMs?: number;
  /** Time taken over every 64 kB of the answer [ms]. */
  sipMs?: number;
  /** Goes away after so long [ms]. */
  leaveAfterMs?: number;
  /** Longest wait for the whole answer [ms]. */
  patienceMs?: number;
}

const wait = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

/** Sends a question; undefined for one that went away before the end. */
function send(url: string, question: Question, manner: Manner): Promise<Answered | undefined> {
  const { path, method, body } = question;
  const { agent = false, pauseMs = 0, sipMs = 0, leaveAfterMs, patienceMs = 15_000 } = manner;
  const headers = { ...question.headers, ...(body ? { "content-length": Buffer.byteLength(body) } : {}) };
  return new Promise((resolve, reject) => {
    const asked = request(url + path, { method, agent, headers });
    const tooLong = setTimeout(() => asked.destroy(new Error(`no answer in ${patienceMs} ms`)), patienceMs);
    const leaving = leaveAfterMs === undefined ? undefined : setTimeout(leave, leaveAfterMs);
    asked.once("error", (error) => end(() => reject(error)));
    asked.once("response", (response) =>
      readWhole(response, sipMs).then(
        (answer) => end(() => resolve(answer)),
        (error) => end(() => reject(error)),
      ),
    );
    if (pauseMs === 0) asked.end(body);
    else {
      asked.write(body.slice(0, body.length >> 1));
      if (Number.isFinite(pauseMs)) setTimeout(() => asked.end(body.slice(body.length >> 1)), pauseMs);
    }
    function leave() {
      end(() => resolve(undefined));
      asked.on("error", () => {}).destroy();
    }
    function end(how: () => void) {
      clearTimeout(tooLong);
      clearTimeout(leaving);
      how();
    }
  });
}

async function readWhole(response: IncomingMessage, sipMs: number): Promise<Answered> {
  const pieces: Buffer[] = [];
  for await (const piece of response) {
    pieces.push(piece);
    if (sipMs > 0) await wait((sipMs * piece.length) / 65_536);
  }
  return { status: response.statusCode!, headers: response.headers, body: Buffer.concat(pieces) };
}

async function asked(url: string, question: Question, tally: Tally, manner: Manner): Promise<void> {
  const began = performance.now();
  tally.asked += 1;
  try {
    const answer = await send(url, question, manner);
    if (answer) tally.answered(question, answer);
    else tally.left += 1;
  } catch (error) {
    tally.broke(question, began, error);
  }
}

/** Asks as one should, on a kept connection. */
export async function askRightly(url: string, question: Question, tally: Tally, agent: Agent): Promise<void> {
  const began = performance.now();
  await asked(url, question, tally, { agent });
  if (tally.asked % 20 === 0) tally.times.push(performance.now() - began);
}

/** Asks and goes away before the answer or in the middle of it, sometimes in the middle of the question. */
export const askAndLeave = (url: string, question: Question, tally: Tally, chance: number): Promise<void> =>
  asked(url, question, tally, {
    leaveAfterMs: chance * 20,
    ...(chance < 0.5 ? { pauseMs: Number.POSITIVE_INFINITY } : {}),
  });

/** Sends half, thinks for two seconds, and sends the rest. */
export const askSlowly = (url: string, question: Question, tally: Tally): Promise<void> =>
  asked(url, question, tally, { pauseMs: 2000 });

/** Reads a long answer in sips, for about ten seconds, or leaves halfway. */
export const readSlowly = (url: string, question: Question, tally: Tally, leave: boolean): Promise<void> =>
  asked(url, question, tally, {
    sipMs: 10_000 / (question.right.body.length / 65_536),
    patienceMs: 60_000,
    ...(leave ? { leaveAfterMs: 5000 } : {}),
  });
