/**
 * Runs a TypeScript file of the project: bundles it and imports the result.
 *
 *     node .config/run.mjs api/server.ts --greet
 *     node .config/run.mjs --bundle api/server.ts     bundles it for later, and runs nothing
 *
 * Why not a loader that transpiles file by file: those wrap every function to keep its name, and the engine's hot loop
 * ran four times slower under one. A bundle is also quicker to start.
 */
import cluster from "node:cluster";
import { resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { bundled } from "./bundle.mjs";

const given = process.argv.slice(2);
const only = given[0] === "--bundle" && given.shift() !== undefined;
const [entry, ...args] = given;
if (!entry) {
  console.error("Name a TypeScript file: node .config/run.mjs FILE [ARGUMENTS]");
  process.exit(2);
}
const module = await bundled(resolve(entry));
if (!only) {
  // Workers that the file starts run the same bundle.
  cluster.setupPrimary({ exec: module, args, execArgv: [...process.execArgv, "--enable-source-maps"] });
  process.argv = [process.argv[0], resolve(entry), ...args];
  process.setSourceMapsEnabled?.(true);
  await import(pathToFileURL(module).href);
}
