/**
 * Writes `data/provenance.json`: every data file with its hash, its licence and what it rests on.
 *
 *     node .config/run.mjs data/provenance.ts
 *
 * Run it after changing a data file; the difference then shows in the commit that nothing else has changed.
 *
 * @module
 */
import { createHash } from "node:crypto";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import bibliography from "./sources.json" with { type: "json" };

const folder = fileURLToPath(new URL(".", import.meta.url));
const target = join(folder, "provenance.json");

/** What is told of a file. */
export interface Origin {
  /** SHA-256 of its bytes [hex]. */
  sha256: string;
  /** SPDX name of the licence under which it is passed on. */
  licence: string;
  /** Where its content comes from, in words. */
  from: string;
  /** Keys of `sources.json`. */
  sources: string[];
}

const known = new Set(Object.keys(bibliography.sources));
const SCIGLASS = ["sciglass-2019"];

/** Terms and origin by path; the first that fits counts. `sources` are added to those that a file itself names. */
const KINDS: { of: RegExp; licence: string; from: string; sources?: string[] }[] = [
  {
    of: /^glasses\//,
    licence: "ODbL-1.0",
    from: "SciGlass, Copyright (c) 2019 EPAM Systems; rows chosen as README.md says",
    sources: SCIGLASS,
  },
  {
    of: /^(models|fitting)\//,
    licence: "MIT",
    from: "made by `npm run fit-models` from glasses/: a produced work that names SciGlass, Copyright (c) 2019 EPAM Systems",
    sources: SCIGLASS,
  },
  {
    of: /^fonts\/(OFL-)?atkinson/,
    licence: "OFL-1.1",
    from: "Atkinson Hyperlegible Next, cut down to the letters used",
  },
  { of: /^fonts\/(OFL-)?brygada/, licence: "OFL-1.1", from: "Brygada 1918, cut down to the letters used" },
  { of: /^sources\.json$/, licence: "MIT", from: "the bibliography itself" },
  {
    of: /\.json$/,
    licence: "MIT",
    from: "facts of the sources named, each row with its own; arranged for this project",
  },
];

/** Programs and notes are no data. */
const isData = (path: string) => !/\.(ts|py|md)$/.test(path) && path !== "provenance.json";

/** Every data file's origin, by its path inside `data`. */
export function provenance(): Record<string, Origin> {
  const paths = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(folder.length))
    .filter(isData);
  return Object.fromEntries(paths.sort().map((path) => [path, originOf(path)]));
}

function originOf(path: string): Origin {
  const bytes = readFileSync(join(folder, path));
  const kind = KINDS.find(({ of }) => of.test(path));
  if (!kind) throw new Error(`data/${path} is of no kind that data/provenance.ts knows: say there what it is.`);
  const named = path.endsWith(".json") && path !== "sources.json" ? sourcesIn(JSON.parse(bytes.toString())) : [];
  const sources = [...new Set([...(kind.sources ?? []), ...named])].sort();
  const sha256 = createHash("sha256").update(bytes).digest("hex");
  return { sha256, licence: kind.licence, from: kind.from, sources };
}

/** Keys of the bibliography that a file names, under `source` or `sources`, or as a heading of a table. */
function sourcesIn(value: unknown, heading = ""): string[] {
  if (typeof value === "string") return /^sources?$/.test(heading) ? [value] : [];
  if (Array.isArray(value)) return value.flatMap((one) => sourcesIn(one, heading));
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, one]) => [...(known.has(key) ? [key] : []), ...sourcesIn(one, key)]);
}

/** What the file must hold. */
export function provenanceText(): string {
  const title = "Where every data file comes from";
  const notes = ["Written by data/provenance.ts; do not edit."];
  return `${JSON.stringify({ title, notes, files: provenance() }, null, 1)}\n`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) writeFileSync(target, provenanceText());
