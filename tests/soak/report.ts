/** The table at the end, and whether the soak is passed. @module */
import { cpus } from "node:os";
import { quantile } from "../bench/paced.ts";
import type { Sample, Service } from "./service.ts";
import type { Tally } from "./tally.ts";

/** Growth that the collector's rhythm explains [MB]. Common practice, no source. */
const FLAT_MB = 20;
/** Most that may be turned away well below capacity, for moments when a worker is missing [-]. */
const MOST_SHED = 0.01;
/** A shorter soak says nothing of memory: processes still warm up [min]. */
const SHORTEST_MIN = 10;

interface Soak {
  tally: Tally;
  service: Service;
  /** Exit status of the service. */
  ended: number | null;
  minutes: number;
  perSecond: number;
}

/** Prints what came of it. */
export function report({ tally, service, ended, minutes, perSecond }: Soak): boolean {
  const whole = (value: number) => Math.round(value).toLocaleString("en");
  let passed = true;
  const row = (what: string, figure: string, aim = "", met?: boolean) => {
    if (met === false) passed = false;
    console.log(
      `${what.padEnd(52)}${figure.padStart(14)}   ${aim.padEnd(12)}${met === undefined ? "" : met ? "met" : "missed"}`,
    );
  };
  const none = (what: string, count: number) => row(what, whole(count), "aim 0", count === 0);

  console.log(`\nNode ${process.version}, ${cpus()[0]?.model ?? "unknown processor"}, ${cpus().length} cores`);
  row("asked for", `${whole(perSecond)}/s`, `${minutes} min`);
  row("asked", whole(tally.asked));
  row("answered rightly, to the last byte", whole(tally.right));
  row("left by the caller on purpose", whole(tally.left), "explained");
  const most = Math.floor(tally.asked * MOST_SHED);
  row("turned away with 503 and Retry-After", whole(tally.shed), `aim ≤ ${whole(most)}`, tally.shed <= most);
  row(`broken off within 2 s of ${service.kills.length} kills`, whole(tally.killed), "explained");
  row("not sent, too many being under way", whole(tally.heldBack));
  row(
    "half, and 99 in 100, answered within",
    [0.5, 0.99].map((q) => `${quantile(tally.times, q).toFixed(0)}`).join(", "),
    "ms",
  );
  none("wrong answers", tally.wrong);
  none("5xx that nothing explains", tally.unexplained5xx);
  none("connections broken that nothing explains", tally.unexplainedBreaks);
  none("faults told by the service", service.faults.length);
  row("the service ended when told", String(ended), "aim 0", ended === 0);

  const growth = growthOf(service.samples);
  console.log("\nresident memory of the workers [MB]\n   min  whole time    others");
  for (const line of memoryLines(service.samples, minutes)) console.log(line);
  if (minutes >= SHORTEST_MIN)
    row("\nlast quarter over second, whole time", `${growth.toFixed(1)} MB`, `aim < ${FLAT_MB}`, growth < FLAT_MB);
  else console.log(`Too short to judge memory: that takes ${SHORTEST_MIN} min.`);

  for (const line of [...tally.shown, ...service.faults.slice(0, 5)]) console.log(`\n${line}`);
  console.log(passed ? "\nPassed." : "\nNot passed.");
  return passed;
}

/** How far the middle of the last quarter lies above that of the second, for the worker that lived throughout [MB]. */
export function growthOf(samples: readonly Sample[]): number {
  const own = samples.filter(({ pid }) => pid === samples[0]?.pid);
  const quarter = Math.floor(own.length / 4);
  const middle = (from: number, to: number) =>
    quantile(
      own.slice(from, to).map((one) => one.residentMB),
      0.5,
    );
  return middle(own.length - quarter, own.length) - middle(quarter, 2 * quarter);
}

/** Ten lines, whatever the length. */
function memoryLines(samples: readonly Sample[], minutes: number): string[] {
  const first = samples[0]?.pid;
  return Array.from({ length: 10 }, (_, i) => {
    const [from, to] = [i * minutes * 6, (i + 1) * minutes * 6];
    const here = samples.filter(({ atS }) => atS >= from && atS <= to);
    const mean = (of: Sample[]) =>
      of.length === 0 ? "–" : (of.reduce((sum, one) => sum + one.residentMB, 0) / of.length).toFixed(0);
    const [whole, others] = [here.filter(({ pid }) => pid === first), here.filter(({ pid }) => pid !== first)];
    return `${(to / 60).toFixed(1).padStart(6)}${mean(whole).padStart(12)}${mean(others).padStart(10)}`;
  });
}
