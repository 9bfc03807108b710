/**
 * Runs a TypeScript file of the project: bundles it and imports the result.
 *
 *     node .config/run.mjs api/server.ts --greet
 *     node .config/run.mjs --bundle api/server.ts     bundles it for later, and runs nothing
 *
 * Why not a loader that transpiles file by file: those wrap every function to keep its name, and the engine's hot loop
 * ran four times slower under one. A bundle is also quicker to start.
 */
import { spawnSync } from "node:child_process";
import cluster from "node:cluster";
import { resolve } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { keptBundle, makeBundle } from "./bundle.mjs";

const given = process.argv.slice(2);
const only = given[0] === "--bundle" && given.shift() !== undefined;
const [entry, ...args] = given;
if (!entry) {
  console.error("Name a TypeScript file: node .config/run.mjs FILE [ARGUMENTS]");
  process.exit(2);
}
let module = keptBundle(resolve(entry));
if (only) {
  if (!module) await makeBundle(resolve(entry));
} else {
  if (!module) {
    // In a process of its own: a service that bundles itself holds 40 MB more for as long as it runs.
    const { status } = spawnSync(process.execPath, [fileURLToPath(import.meta.url), "--bundle", entry], {
      stdio: "inherit",
    });
    if (status !== 0) process.exit(status ?? 1);
    module = keptBundle(resolve(entry));
  }
  // Workers that the file starts run the same bundle.
  cluster.setupPrimary({ exec: module, args, execArgv: [...process.execArgv, "--enable-source-maps"] });
  process.argv = [process.argv[0], resolve(entry), ...args];
  process.setSourceMapsEnabled?.(true);
  await import(pathToFileURL(module).href);
}
