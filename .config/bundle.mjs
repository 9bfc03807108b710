/**
 * Bundles a TypeScript file of the project for Node, and keeps the bundle for as long as its sources stay as they are.
 *
 * Packages stay outside. What is only imported when asked for stays in a file of its own, so that a start does not pay
 * for it.
 *
 * @module
 */
import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const here = fileURLToPath(import.meta.url);
const root = resolve(dirname(here), "..");
/** Bundles of one file that are kept: a process that runs an older one may still start workers from it. */
const KEPT = 3;

/**
 * The bundle made last, if its sources still are what they were.
 * @param {string} entry - path of a TypeScript file
 * @returns {string | undefined} path of the module to import
 */
export function keptBundle(entry) {
  try {
    const folder = folderOf(entry);
    const { sources, hash } = JSON.parse(readFileSync(join(folder, "last.json"), "utf8"));
    const contents = new Map(sources.map((path) => [path, readFileSync(join(root, path))]));
    const module = join(folder, hash, "main.mjs");
    return hashOf(contents) === hash && existsSync(module) ? module : undefined;
  } catch {
    // No bundle yet, or a source is gone.
    return undefined;
  }
}

function folderOf(entry) {
  return join(root, "node_modules/.cache/ringtrue", relative(root, entry).replace(/[^a-z0-9]+/gi, "-"));
}

/** Sources go by what is in them, not by their dates: a checkout or an image may set those as it likes. */
function hashOf(contents) {
  const hash = createHash("sha256").update(root).update(readFileSync(here));
  for (const path of [...contents.keys()].sort()) {
    const bytes = contents.get(path);
    hash.update(`\n${path} ${bytes.length}\n`).update(bytes);
  }
  return hash.digest("hex").slice(0, 16);
}

/**
 * Bundles the file, whatever is kept.
 * @param {string} entry - path of a TypeScript file
 */
export async function makeBundle(entry) {
  // Loaded only here: with a kept bundle nothing is left to build.
  const { build } = await import("esbuild");
  const folder = folderOf(entry);
  const contents = new Map();
  // Made aside and put in place whole, for others may be making the same one.
  const aside = join(folder, `making-${process.pid}`);
  await build({
    absWorkingDir: root,
    entryPoints: { main: entry },
    outdir: aside,
    outExtension: { ".js": ".mjs" },
    bundle: true,
    splitting: true,
    packages: "external",
    platform: "node",
    target: "node20",
    // The same in a container, which has no tsconfig.json.
    tsconfigRaw: { compilerOptions: { verbatimModuleSyntax: true } },
    format: "esm",
    sourcemap: "linked",
    sourcesContent: false,
    logLevel: "warning",
    alias: { "@ringtrue/sdk": join(root, "sdk/src/index.ts") },
    plugins: [{ name: "own-address", setup: ({ onLoad }) => onLoad({ filter: /./ }, load) }],
  });
  const hash = hashOf(contents);
  const place = join(folder, hash);
  try {
    renameSync(aside, place);
  } catch {
    // Another process was quicker, with the same.
    rmSync(aside, { recursive: true, force: true });
  }
  const note = join(folder, `last-${process.pid}.json`);
  writeFileSync(note, JSON.stringify({ hash, sources: [...contents.keys()] }));
  renameSync(note, join(folder, "last.json"));
  dropOld(folder, hash);

  function load({ path }) {
    const bytes = readFileSync(path);
    contents.set(relative(root, path), bytes);
    if (!path.endsWith(".ts")) return { loader: "default", contents: bytes };
    // A bundled module must still find the files that lie beside its source.
    const address = JSON.stringify(pathToFileURL(path).href);
    return { loader: "default", contents: bytes.toString().replaceAll("import.meta.url", address) };
  }
}

function dropOld(folder, hash) {
  const age = (name) => statSync(join(folder, name)).mtimeMs;
  const bundles = readdirSync(folder).filter((name) => /^[0-9a-f]{16}$/.test(name) && name !== hash);
  const old = bundles.sort((a, b) => age(b) - age(a)).slice(KEPT - 1);
  for (const name of old) rmSync(join(folder, name), { recursive: true, force: true });
}
