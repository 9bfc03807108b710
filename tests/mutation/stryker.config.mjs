/** MUTATED is a folder of api/engine, or files of one without their endings: `fit`, `fit/stress,cracking`. */
const [folder, files = "**/*"] = (process.env.MUTATED ?? "").split("/");

export default {
  testRunner: "vitest",
  vitest: { configFile: "tests/mutation/vitest.config.ts", related: false },
  mutate: files.split(",").map((file) => `api/engine/${folder}/${file}.ts`),
  // Words are read by eye and kept in snapshots and printed examples, which are not among these tests.
  mutator: { excludedMutations: ["StringLiteral"] },
  disableTypeChecks: false,
  coverageAnalysis: "perTest",
  // A run that takes twice as long as usual and five seconds more hangs.
  timeoutFactor: 2,
  timeoutMS: 5000,
  concurrency: Number(process.env.CONCURRENCY ?? 2),
  reporters: ["clear-text", "json", "progress-append-only"],
  clearTextReporter: { allowColor: false, logTests: false, reportTests: false, allowEmojis: false },
  jsonReporter: { fileName: process.env.REPORT ?? "mutation.json" },
};
