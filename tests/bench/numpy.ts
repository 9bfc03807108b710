/** The same computation by a vectorised numpy version, as a yardstick that is not ours alone. @module */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { checkFit } from "../../api/engine/fit/index.ts";
import { costUs } from "./parts.ts";
import { question, questions } from "./questions.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));
const SECONDS = 6;

/** Runs python3 (or what `PYTHON` names) on one core. */
function python(...parameters: string[]) {
  const env = { ...process.env, OPENBLAS_NUM_THREADS: "1", PYTHONDONTWRITEBYTECODE: "1" };
  return spawnSync(process.env.PYTHON ?? "python3", parameters, { cwd: root, env, encoding: "utf8", timeout: 30_000 });
}

/** Processor time that a fit costs numpy [µs], as many at once as suit it best; null where there is no numpy. */
function numpyCostUs(): number | null {
  if (python("-c", "import numpy").status !== 0) return null;
  const folder = mkdtempSync(join(tmpdir(), "ringtrue-bench-"));
  try {
    const file = join(folder, "questions.json");
    writeFileSync(file, JSON.stringify([...questions(256)]));
    const { status, stdout, stderr } = python("tests/independent/engine/bench.py", file, String(SECONDS));
    if (status !== 0) throw new Error(`The numpy version failed: ${stderr}`);
    return (JSON.parse(stdout) as { us: number }).us;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/**
 * How many fits of ours go into one of numpy's, by processor time, each fit another question.
 * @returns e.g. `1 : 1.8`, above 1 where ours is quicker; or why it was not measured
 */
export function oursToNumpy(): string {
  const numpy = numpyCostUs();
  if (numpy === null) return "not measured: no numpy";
  let n = 0;
  const ours = costUs(() => checkFit(question(n++)), 500);
  return `1 : ${(numpy / ours).toFixed(1)}`;
}
