/**
 * Writes the SDK's types from the API description, and builds the package.
 *
 *     npm run sdk              api/openapi.json → sdk/src/generated
 *     npm run sdk -- --build   the same, then sdk/dist for `npm pack`
 *
 * @module
 */
import { execFileSync } from "node:child_process";
import { rmSync } from "node:fs";
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

/** Compiles the package to `sdk/dist`: plain ES modules with declarations, no bundler. */
export function build(): void {
  rmSync(join(here, "dist"), { recursive: true, force: true });
  const tsc = fileURLToPath(new URL("../node_modules/typescript/bin/tsc", import.meta.url));
  execFileSync(process.execPath, [tsc, "-p", join(here, "tsconfig.json")], { stdio: "inherit" });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await generateTypes();
  if (process.argv.includes("--build")) build();
}
