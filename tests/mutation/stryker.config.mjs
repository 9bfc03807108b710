import { readdirSync, readFileSync } from "node:fs";

/** MUTATED is a folder of api/engine, or files of one without their endings: `fit`, `fit/stress,cracking`. */
const [folder, files] = (process.env.MUTATED ?? "").split("/");
/** SAMPLE=3 changes what lies within every third line only: a third of the work, and an estimate instead of a score. */
const every = Number(process.env.SAMPLE ?? 1);
const within = readdirSync(`api/engine/${folder}`, { recursive: true }).filter((path) => path.endsWith(".ts"));
const named = files ? files.split(",").map((file) => `${file}.ts`) : within;
const mutate = named.map((path) => `api/engine/${folder}/${path}`);

export default {
  testRunner: "vitest",
  vitest: { configFile: "tests/mutation/vitest.config.ts", related: false },
  buildCommand: "node tests/mutation/bundle.mjs",
  mutate: every > 1 ? mutate.flatMap(sampled) : mutate,
  // Words are read by eye and kept in snapshots and printed examples, which are not among these tests.
  mutator: { excludedMutations: ["StringLiteral"] },
  disableTypeChecks: false,
  coverageAnalysis: "perTest",
  // A run that takes three times as long as usual and 1.5 s more hangs.
  timeoutFactor: 3,
  timeoutMS: 1500,
  concurrency: Number(process.env.CONCURRENCY ?? 2),
  reporters: ["clear-text", "json", "progress-append-only"],
  clearTextReporter: { allowColor: false, logTests: false, reportTests: false, allowEmojis: false },
  jsonReporter: { fileName: process.env.REPORT ?? "mutation.json" },
};

function sampled(path) {
  const lines = readFileSync(path, "utf8").split("\n").length;
  return Array.from({ length: Math.floor(lines / every) }, (_, k) => `${path}:${(k + 1) * every}-${(k + 1) * every}`);
}
