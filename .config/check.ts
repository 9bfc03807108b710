/**
 * What has to hold beside the tests: types, lint and format, the description's lint, generated files fresh, licences,
 * nothing known against the packages that are shipped.
 *
 * Every step runs even when one before it fails, so that one run tells all.
 *
 * @module
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { openapiText } from "../api/openapi.ts";
import { GENERATED, generateTypes } from "../sdk/generate.ts";
import { askForAdvisories } from "./advisories.ts";
import { breakingChanges, type Description, raised } from "./breaking.ts";
import { lockedPackages, unfit } from "./licences.ts";

const root = fileURLToPath(new URL("..", import.meta.url));
const description = join(root, "api/openapi.json");

/** Runs a tool of this project; its own words are shown when it fails. */
function tool(name: string, ...parameters: string[]): string | undefined {
  const binary = join(root, "node_modules/.bin", name);
  const env = { ...process.env, REDOCLY_TELEMETRY: "off", REDOCLY_SUPPRESS_UPDATE_NOTICE: "true" };
  const { status, stdout, stderr, error } = spawnSync(binary, parameters, { cwd: root, encoding: "utf8", env });
  return status === 0 ? undefined : `${stdout ?? ""}${stderr ?? ""}${error?.message ?? ""}`;
}

/** The committed description must be what the service serves. */
async function descriptionFresh(): Promise<string | undefined> {
  const fresh = await openapiText();
  if (fresh === readFileSync(description, "utf8")) return undefined;
  return "api/openapi.json is not what the service serves. Run: npm run openapi && npm run sdk";
}

/**
 * A description that breaks clients needs a version that says so. Compared with the last committed one; where nothing
 * is uncommitted, with the one before that.
 */
function descriptionKeeps(): string | undefined {
  const git = (...parameters: string[]) =>
    spawnSync("git", parameters, { cwd: root, encoding: "utf8", maxBuffer: 2 ** 26 });
  const at = (commit: string) => git("show", `${commit}:api/openapi.json`).stdout;
  const now = readFileSync(description, "utf8");
  const before =
    at("HEAD") === now ? at(`${git("log", "-1", "--format=%H", "--", "api/openapi.json").stdout.trim()}^`) : at("HEAD");
  // A first commit, or a copy without history.
  if (before === "") return undefined;
  const [old, fresh] = [JSON.parse(before) as Description, JSON.parse(now) as Description];
  const breaks = breakingChanges(old, fresh);
  if (breaks.length === 0 || raised(old.info.version, fresh.info.version)) return undefined;
  return `Clients of ${old.info.version} would break: ${breaks.join("; ")}. Keep what they use, or raise the version in api/engine/version.ts.`;
}

/** The committed SDK types must be what the description gives. */
async function typesFresh(): Promise<string | undefined> {
  const folder = mkdtempSync(join(tmpdir(), "ringtrue-"));
  try {
    const input = join(folder, "openapi.json");
    writeFileSync(input, await openapiText());
    const output = join(folder, "generated");
    await generateTypes(input, output);
    const stale = [...new Set([...readdirSync(output), ...readdirSync(GENERATED)])].filter(
      (name) => contents(join(output, name)) !== contents(join(GENERATED, name)),
    );
    return stale.length === 0 ? undefined : `sdk/src/generated is stale: ${stale.join(", ")}. Run: npm run sdk`;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function contents(path: string): string | undefined {
  try {
    return readFileSync(path, "utf8");
  } catch {
    return undefined;
  }
}

/** Every licence must be one that is let in. */
function licences(): string | undefined {
  const refused = unfit(lockedPackages());
  return refused.length === 0 ? undefined : `May not be passed on: ${refused.join(", ")}`;
}

type Outcome = string | undefined | { fault?: string; note?: string };
const steps: [string, () => Outcome | Promise<Outcome>][] = [
  ["types", () => tool("tsc", "-p", ".")],
  ["lint and format", () => tool("biome", "check", "--config-path", ".config/biome.json", ".")],
  ["description fresh", descriptionFresh],
  ["description lint", () => tool("redocly", "lint", "--config", ".config/redocly.yaml", description)],
  ["description keeps its word", descriptionKeeps],
  ["SDK types fresh", typesFresh],
  ["licences", licences],
  ["advisories", () => askForAdvisories(root)],
];

let failed = 0;
for (const [name, step] of steps) {
  const outcome = await step();
  const { fault, note } = typeof outcome === "string" ? { fault: outcome, note: undefined } : (outcome ?? {});
  console.log(
    `${fault !== undefined ? "FAILS" : note !== undefined ? "--   " : "ok   "} ${name}${note ? `, ${note}` : ""}`,
  );
  if (fault === undefined) continue;
  failed += 1;
  console.log(fault);
}
process.exitCode = failed === 0 ? 0 : 1;
