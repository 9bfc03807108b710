/**
 * Judges the blends that the service is asked for, with nothing around them, and tells how many mixtures a second.
 * What several of these get done at once is what this machine's cores can bear. See measures.ts.
 */
import { openBlend } from "../../api/engine/blends/index.ts";
import { workersBlend } from "./questions.ts";

const [warmS, seconds] = process.argv.slice(2).map(Number) as [number, number];

function judge(forS: number): number {
  const end = performance.now() + forS * 1000;
  let judged = 0;
  while (performance.now() < end) for (const _ of openBlend(workersBlend()).points()) judged++;
  return judged / forS;
}

judge(warmS);
process.stdout.write(`${judge(seconds)}\n`);
