/**
 * Writes the SDK's types from the API description, and builds the package.
 *
 *     npm run sdk              api/openapi.json → sdk/src/generated
 *     npm run sdk -- --build   the same, then sdk/dist for `npm pack`
 *
 * @module
 */
import { execFileSync } from "node:child_process";
import { chmodSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { createClient } from "@hey-api/openapi-ts";

const here = fileURLToPath(new URL(".", import.meta.url));

/** The description that the types come from. */
export const DESCRIPTION = fileURLToPath(new URL("../api/openapi.json", import.meta.url));

/** Where the committed types live. */
export const GENERATED = join(here, "src/generated");

/**
 * Writes the types of a description into a folder. The same description gives the same files, byte for byte.
 * @param input - path of an OpenAPI 3.1 document
 * @param output - folder to write, emptied first
 */
export async function generateTypes(input: string = DESCRIPTION, output: string = GENERATED): Promise<void> {
  await createClient({
    input,
    output: { path: output, clean: true, entryFile: false, postProcess: [] },
    // Types alone: the calls are short enough to write by hand, and then say what they do in a potter's words.
    plugins: [{ name: "@hey-api/typescript", topType: "unknown" }],
    logs: { level: "silent", file: false },
  });
}

/**
 * Compiles the package: plain ES modules with declarations, no bundler.
 * @param output - folder to write, emptied first
 */
export function build(output: string = join(here, "dist")): void {
  rmSync(output, { recursive: true, force: true });
  const tsc = fileURLToPath(new URL("../node_modules/typescript/bin/tsc", import.meta.url));
  execFileSync(process.execPath, [tsc, "-p", join(here, "tsconfig.json"), "--outDir", output], { stdio: "inherit" });
  // The compiler rewrites the paths of imports in code but leaves those in declarations as they were.
  for (const name of readdirSync(output, { recursive: true, encoding: "utf8" })) {
    if (!name.endsWith(".d.ts")) continue;
    const file = join(output, name);
    writeFileSync(file, readFileSync(file, "utf8").replace(/(["']\.{1,2}\/[^"']*)\.ts(["'])/g, "$1.js$2"));
  }
}

/**
 * Gives every file that is packed the mode 644: modes go into the tarball, and a checkout has those of its owner's
 * habits.
 * @param folder - the package, built
 */
export function plainModes(folder: string = here): void {
  const packed = readdirSync(join(folder, "dist"), { recursive: true, withFileTypes: true });
  for (const file of packed) if (file.isFile()) chmodSync(join(file.parentPath, file.name), 0o644);
  for (const name of ["package.json", "README.md"]) chmodSync(join(folder, name), 0o644);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await generateTypes();
  if (process.argv.includes("--build")) {
    build();
    plainModes();
  }
}
