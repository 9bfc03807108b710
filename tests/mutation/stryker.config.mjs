/** MUTATED is a folder of api/engine, or files of one without their endings: `fit`, `fit/stress,cracking`. */
const [folder, files = "**/*"] = (process.env.MUTATED ?? "").split("/");

export default {
  testRunner: "vitest",
  vitest: { configFile: "tests/mutation/vitest.config.ts", related: false },
  buildCommand: "node tests/mutation/bundle.mjs",
  mutate: files.split(",").map((file) => `api/engine/${folder}/${file}.ts`),
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
