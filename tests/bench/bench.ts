/**
 * How fast and how lean the service is, in one run on loopback.
 *
 *     npm run bench
 *
 * Stops by itself within 120 s. Ratios on one machine mean more than rates: the bare echo is the yardstick.
 *
 * @module
 */
import { cpus } from "node:os";
import {
  BODY_BYTES,
  bareRate,
  bulk,
  echoLoad,
  engineRate,
  fitLoad,
  p99Ms,
  startUpMs,
  workersRates,
} from "./measures.ts";
import { oursToNumpy } from "./numpy.ts";
import { BLEND_POINTS, blendS, partCosts } from "./parts.ts";

const LIMIT_S = 120;
/** Growth that the collector's rhythm explains; a leak of 0.5 kB a fit would show twice this. Common practice, no source. */
const FLAT_MB = 20;
setTimeout(() => {
  console.error(`Stopped: the bench took longer than ${LIMIT_S} s.`);
  process.exit(1);
}, LIMIT_S * 1000).unref();

const whole = (value: number) => Math.round(value).toLocaleString("en");
const row = (what: string, figure: string, aim: string, met: boolean | null) =>
  console.log(
    `${what.padEnd(46)}${figure.padStart(16)}   ${aim.padEnd(14)}${met === null ? "" : met ? "met" : "missed"}`,
  );

console.log(`Node ${process.version}, ${cpus()[0]?.model ?? "unknown processor"}, ${cpus().length} cores\n`);

// The engine first: a process that has talked to servers runs it a tenth slower.
const engine = engineRate();
row("engine alone, in process", `${whole(engine)} fits/s`, "", null);

for (const { what, us, aimUs } of await partCosts()) {
  row(what, `${whole(us)} µs`, `aim ≤ ${whole(aimUs)}`, us <= aimUs);
}

const blend = blendS();
row(`${whole(BLEND_POINTS)} points of a blend, one core`, `${blend.toFixed(2)} s`, "aim ≤ 3", blend <= 3);
row("processor time of a fit, ours : numpy", oursToNumpy(), "", null);

const start = await startUpMs();
row("start to first fit answered", `${whole(start)} ms`, "aim ≤ 400", start <= 400);

const echo = await echoLoad();
row(`bare JSON echo, ${BODY_BYTES}-byte body`, `${whole(echo.rate)} req/s`, "yardstick", null);
const fit = await fitLoad();
row("POST /v1/fit, same body, validated", `${whole(fit.rate)} req/s`, "", null);
row("fit ÷ echo", (fit.rate / echo.rate).toFixed(2), "aim ≥ 0.5", fit.rate / echo.rate >= 0.5);
if (fit.processorUs !== null && echo.processorUs !== null) {
  const times = `${whole(echo.processorUs)}, ${whole(fit.processorUs)} µs`;
  row("processor time a request, echo and fit", times, "", null);
  row("echo ÷ fit by processor time", (echo.processorUs / fit.processorUs).toFixed(2), "", null);
}

const p99 = await p99Ms(fit.rate / 2);
row("99 in 100 fits at half that rate take", `${p99.toFixed(1)} ms`, "aim < 20", p99 < 20);

const { one, two } = await workersRates();
row("blends, WORKERS=1 and WORKERS=2", `${whole(one.rate)}, ${whole(two.rate)}`, "mixtures/s", null);
row("WORKERS=2 ÷ WORKERS=1", (two.rate / one.rate).toFixed(2), "aim ≥ 1.8", two.rate / one.rate >= 1.8);
if (one.perProcessorS !== null && two.perProcessorS !== null) {
  row(
    "the same by processor time, each worker a core",
    ((2 * two.perProcessorS) / one.perProcessorS).toFixed(2),
    "",
    null,
  );
}
const bare = (await bareRate(2)) / (await bareRate(1));
row("two bare processes ÷ one: all there is to gain", bare.toFixed(2), "yardstick", null);

const short = await bulk(20_000, [], 8, "verdicts");
row(
  `POST /v1/fit/verdicts, ${whole(short.fits)} fits`,
  `${whole(short.rate)} fits/s`,
  "aim ≥ 10,000",
  short.rate >= 10_000,
);
const { rate, ratePerCore, fits, memory } = await bulk(100_000, [20_000, 60_000, 100_000], 40);
row(`POST /v1/fit/stream, ${whole(fits)} fits`, `${whole(rate)} fits/s`, "aim ≥ 10,000", rate >= 10_000);
if (ratePerCore !== null) row("the same for each second of its processor", `${whole(ratePerCore)} fits/s`, "", null);
for (const { fits, residentMB } of memory) {
  row(`resident memory after ${whole(fits)} fits`, `${whole(residentMB)} MB`, "aim ≤ 150", residentMB <= 150);
}
const growth = memory.at(-1)!.residentMB - memory[0]!.residentMB;
row("growth from first to last mark", `${whole(growth)} MB`, "aim: flat", growth < FLAT_MB);
process.exit(0);
