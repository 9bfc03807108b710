/** Every data file is what the commit says it is, may be passed on, and rests on something named. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import written from "../../data/provenance.json" with { type: "json" };
import { type Origin, provenance } from "../../data/provenance.ts";
import bibliography from "../../data/sources.json" with { type: "json" };

const files: Record<string, Origin> = written.files;
const present = provenance();
const read = (path: string) => readFileSync(new URL(`../../data/${path}`, import.meta.url), "utf8");

/** What differs, in words that say what to do. */
function differences(before: Record<string, Origin>, now: Record<string, Origin>): string[] {
  const mend = "Run: node .config/run.mjs data/provenance.ts";
  return [...new Set([...Object.keys(before), ...Object.keys(now)])].flatMap((path) => {
    const [old, fresh] = [before[path], now[path]];
    if (!old) return [`data/${path} is not listed. ${mend}`];
    if (!fresh) return [`data/${path} is listed and not there. ${mend}`];
    return JSON.stringify(old) === JSON.stringify(fresh) ? [] : [`data/${path} is not what is listed. ${mend}`];
  });
}

describe("the list of data files", () => {
  it("is complete and true to the last byte", () => {
    expect(differences(files, present)).toEqual([]);
  });

  it("would show a file that is new, gone or changed by one bit", () => {
    const { "sources.json": one, ...rest } = present;
    expect(differences(rest, present)).toEqual([expect.stringMatching(/^data\/sources\.json is not listed/)]);
    expect(differences(present, rest)).toEqual([expect.stringMatching(/is listed and not there/)]);
    const flipped = one!.sha256.replace(/.$/, (digit) => (digit === "0" ? "1" : "0"));
    const changed = { ...present, "sources.json": { ...one!, sha256: flipped } };
    expect(differences(changed, present)).toEqual([expect.stringMatching(/is not what is listed/)]);
  });
});

describe.each(Object.entries(files))("data/%s", (path, { licence, sources }) => {
  it("may be passed on, under terms that the file itself does not gainsay", () => {
    expect(["MIT", "ODbL-1.0", "OFL-1.1"]).toContain(licence);
    if (!path.endsWith(".json")) return;
    const own: string | undefined = JSON.parse(read(path)).licence;
    if (licence === "ODbL-1.0") expect(own).toMatch(/under the Open Database License 1\.0/);
    // A produced work (ODbL 1.0, section 4.3) names the database that it was made from.
    else if (path.startsWith("models/")) expect(own).toMatch(/SciGlass, Copyright \(c\) 2019 EPAM Systems/);
    else expect(own).toBeUndefined();
  });

  it("rests on entries of the bibliography", () => {
    expect(sources.filter((key) => !(key in bibliography.sources))).toEqual([]);
    if (path !== "sources.json" && !path.startsWith("fonts/")) expect(sources).not.toEqual([]);
  });
});
