/**
 * Every package that the project is built from, with its licence.
 *
 *     node .config/run.mjs .config/licences.ts          what is shipped
 *     node .config/run.mjs .config/licences.ts --all    tools as well
 *
 * @module
 */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

/** Licences that ask for no more than to be named along; MPL-2.0 asks only for changes to its own files, and we make none. */
export const SHIPPED = ["MIT", "ISC", "Apache-2.0", "BSD-2-Clause", "BSD-3-Clause", "0BSD", "MPL-2.0"];
/** Tools never leave the project. */
export const TOOLS = [...SHIPPED, "BlueOak-1.0.0", "Python-2.0", "(MIT AND Zlib)", "MIT OR Apache-2.0"];

/** One package as `package-lock.json` has it. */
export interface Locked {
  name: string;
  version?: string;
  license?: string;
  /** Whether it is a tool, and no part of the service. */
  dev?: boolean;
  resolved?: string;
  integrity?: string;
  hasInstallScript?: boolean;
}

/** Every package, this project's own left out, by name. */
export function lockedPackages(): Locked[] {
  const text = readFileSync(new URL("../package-lock.json", import.meta.url), "utf8");
  const packages = JSON.parse(text).packages as Record<string, Omit<Locked, "name"> & { link?: boolean }>;
  return Object.entries(packages)
    .filter(([path, { link }]) => path.includes("node_modules/") && !link)
    .map(([path, one]) => ({ name: path.slice(path.lastIndexOf("node_modules/") + 13), ...one }))
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

/** Packages whose licence is not among those that are let in, as `name: licence`. */
export const unfit = (packages: readonly Locked[]): string[] =>
  packages
    .filter(({ dev, license = "none" }) => !(dev ? TOOLS : SHIPPED).includes(license))
    .map(({ name, license = "none" }) => `${name}: ${license}`);

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const packages = lockedPackages().filter(({ dev }) => !dev || process.argv.includes("--all"));
  for (const { name, version = "", license = "none" } of packages) {
    console.log(`${name.padEnd(40)} ${version.padEnd(12)} ${license}`);
  }
  const refused = unfit(packages);
  if (refused.length > 0) console.error(`May not be passed on: ${refused.join(", ")}`);
  process.exitCode = refused.length > 0 ? 1 : 0;
}
