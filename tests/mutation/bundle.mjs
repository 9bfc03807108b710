/**
 * Builds the tests of a folder and all they reach into one module, after Stryker has put its mutants in: loading 150
 * modules anew for every mutant takes longer than testing it.
 *
 * Laws are tried on a few samples and end at the first that breaks them. A mutant that only the hundredth sample would
 * have found counts as survived.
 */
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";

const SAMPLES = 25;
const BUILT = "tests/mutation/built";
const tests = JSON.parse(readFileSync("tests/mutation/tests.json", "utf8"));
const [folder] = (process.env.MUTATED ?? "").split("/");

const entry = [
  'import fc from "fast-check";',
  `fc.configureGlobal({ ...fc.readConfigureGlobal(), numRuns: ${SAMPLES}, endOnFailure: true });`,
];
mkdirSync(BUILT, { recursive: true });
writeFileSync(`${BUILT}/samples.mjs`, `${entry.join("\n")}\n`);
writeFileSync(`${BUILT}/run.test.mjs`, 'import "./all.mjs";\n');
await build({
  stdin: {
    // In the order of the table: the first failure ends a mutant's run.
    contents: [`${BUILT}/samples.mjs`, ...tests[folder]].map((path) => `import "./${path}";`).join("\n"),
    resolveDir: ".",
  },
  outfile: `${BUILT}/all.mjs`,
  bundle: true,
  packages: "external",
  platform: "node",
  target: "node20",
  format: "esm",
  logLevel: "warning",
  alias: { "@ringtrue/sdk": resolve("sdk/src/index.ts") },
  plugins: [{ name: "as-told-above", setup: ({ onLoad }) => onLoad({ filter: /\.ts$/ }, load) }],
});

function load({ path }) {
  // A bundled module must still find the files that lie beside its source.
  const address = JSON.stringify(pathToFileURL(path).href);
  const source = readFileSync(path, "utf8").replaceAll("import.meta.url", address);
  // A mutant in what stands beside the path keeps the bundler from following it.
  const found = source.replace(
    /\bimport\("(\.[^"]+\.json)"/g,
    (_, data) => `import("${new URL(data, pathToFileURL(path)).href}"`,
  );
  const fewer = found.replace(/\bnumRuns: (\d+)/g, (_, runs) => `numRuns: ${Math.min(Number(runs), SAMPLES)}`);
  return { loader: "ts", contents: fewer };
}
