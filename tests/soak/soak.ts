/**
 * Asks a service of two workers for a long time at most of what it can bear, while callers misbehave and workers die,
 * and holds every answer against the right one.
 *
 *     node .config/run.mjs tests/soak/soak.ts --minutes 30
 *
 * Ends with a table, and with status 1 after any wrong answer, any failure that nothing explains, or growing memory.
 *
 * @module
 */
import { keptConnections, paced } from "../bench/paced.ts";
import { askAndLeave, askRightly, askSlowly, readSlowly } from "./callers.ts";
import { answeredQuestions, drawer, longStream, randomFrom } from "./questions.ts";
import { report } from "./report.ts";
import { Service } from "./service.ts";
import { Tally } from "./tally.ts";

const given = process.argv.indexOf("--minutes");
const minutes = given < 0 ? 30 : Number(process.argv[given + 1]);
if (!(minutes > 0)) throw new Error("Say for how long: --minutes 30");
const seconds = minutes * 60;

/** Share of capacity that is asked for [-]. */
const LOAD = 0.8;
/** Shares of those who go away, and of those who send slowly [-]. */
const LEAVING = 0.02;
const SLOW_SENDING = 0.002;
const SLOW_READERS = 2;
/** Between two kills of a worker; in a short soak one comes all the same [s]. */
const KILL_EVERY_S = Math.min(180, seconds / 2.5);
const SAMPLE_EVERY_S = Math.min(5, seconds / 20);
/** Most questions under way: where the machine is busy with other things, the asking must not run away [-]. */
const MOST_UNDER_WAY = 400;

console.log("Working out the right answers.");
const [questions, long] = [await answeredQuestions(), await longStream()];
const service = await Service.start(2);
const { url } = service;
const draw = drawer(questions);
const random = randomFrom(2);
const agent = keptConnections(64);

/** What sixteen callers who ask as fast as they are answered get through [1/s]; once to warm up, once to count. */
async function capacity(forS: number): Promise<number> {
  const tally = new Tally([]);
  const end = performance.now() + forS * 1000;
  const caller = async () => {
    while (performance.now() < end) await askRightly(url, draw(), tally, agent);
  };
  await Promise.all(Array.from({ length: 16 }, caller));
  if (tally.right < tally.asked) throw new Error(`Not even at ease: ${JSON.stringify(tally)}`);
  return tally.asked / forS;
}

const trialS = Math.min(10, seconds / 6);
await capacity(trialS);
const most = await capacity(trialS);
console.log(`Capacity ${most.toFixed(0)} requests/s. Asking for ${LOAD * 100} % of it for ${minutes} min.`);

const began = performance.now();
const tally = new Tally(service.kills);
const sampling = setInterval(() => service.sample((performance.now() - began) / 1000), SAMPLE_EVERY_S * 1000);
const killing = setInterval(() => service.killOne(), KILL_EVERY_S * 1000);
const telling = setInterval(() => console.log(tally.line((performance.now() - began) / 60_000)), 60_000);

let underWay = 0;
async function one(): Promise<void> {
  if (underWay >= MOST_UNDER_WAY) {
    tally.heldBack += 1;
    return;
  }
  underWay += 1;
  const question = draw();
  const chance = random();
  if (chance < LEAVING) await askAndLeave(url, question, tally, random());
  else if (chance < LEAVING + SLOW_SENDING && question.body) await askSlowly(url, question, tally);
  else await askRightly(url, question, tally, agent);
  underWay -= 1;
}
async function slowReader(n: number): Promise<void> {
  for (let turn = n; performance.now() < began + seconds * 1000; turn++) {
    await readSlowly(url, long, tally, turn % 2 === 1);
  }
}
await Promise.all([paced(LOAD * most, seconds, one), ...Array.from({ length: SLOW_READERS }, (_, n) => slowReader(n))]);

for (const timer of [sampling, killing, telling]) clearInterval(timer);
service.sample(seconds);
const ended = await service.stop();
const passed = report({ tally, service, ended, minutes, perSecond: LOAD * most });
process.exit(passed ? 0 : 1);
