/** The SDK as it would be published: packed, inspected, and installed into a project that knows nothing of this one. */
import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import {
  chmodSync,
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { checkPackage, createPackageFromTarballData } from "@arethetypeswrong/core";
import { publint } from "publint";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { build, plainModes } from "../../sdk/generate.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
const scratch = mkdtempSync(join(tmpdir(), "ringtrue-packed-"));
let tarball: string;

/**
 * Packs a fresh build, away from the working copy.
 * @param odd - as another person's machine might: files of long ago that only their owner may read, another time zone
 */
function pack(folder: string, odd = false): string {
  const copy = join(scratch, folder);
  mkdirSync(copy, { recursive: true });
  build(join(copy, "dist"));
  for (const name of ["package.json", "README.md"]) copyFileSync(join(root, "sdk", name), join(copy, name));
  if (odd) {
    for (const entry of readdirSync(copy, { recursive: true, withFileTypes: true })) {
      const path = join(entry.parentPath, entry.name);
      utimesSync(path, 1, 1);
      chmodSync(path, entry.isDirectory() ? 0o700 : 0o600);
    }
  }
  plainModes(copy);
  const env = odd ? { ...process.env, TZ: "Pacific/Chatham", LANG: "tr_TR.UTF-8" } : process.env;
  const options = { cwd: copy, env, encoding: "utf8" } as const;
  const [packed] = JSON.parse(execFileSync("npm", ["pack", "--json", "--ignore-scripts"], options));
  return join(copy, packed.filename);
}

beforeAll(() => {
  tarball = pack("one");
}, 60_000);
afterAll(() => rmSync(scratch, { recursive: true }));

describe("the packed SDK", () => {
  it("is the same to the last byte when packed again, elsewhere and from files of another date", () => {
    const hash = (file: string) => createHash("sha256").update(readFileSync(file)).digest("hex");
    expect(hash(pack("a studio/two", true))).toBe(hash(tarball));
  });

  it("passes publint, suggestions included", async () => {
    const data = readFileSync(tarball);
    const copy = data.buffer.slice(data.byteOffset, data.byteOffset + data.byteLength) as ArrayBuffer;
    const { messages } = await publint({ pack: { tarball: copy }, strict: true, level: "suggestion" });
    expect(messages).toEqual([]);
  });

  it("resolves with its types however an ES module is looked for", async () => {
    const result = await checkPackage(createPackageFromTarballData(new Uint8Array(readFileSync(tarball))));
    if (!result.types) throw new Error("The package has no types.");
    const { problems, entrypoints } = result;
    for (const how of ["node10", "node16-esm", "bundler"] as const) {
      expect(entrypoints["."]?.resolutions[how].resolution?.fileName, how).toMatch(/dist\/index\.d\.ts$/);
    }
    // A module of the old kind reaches it by `await import`, or by `require` from Node 20.19 on; there is no second build.
    expect(problems.filter((problem) => problem.kind !== "CJSResolvesToESM")).toEqual([]);
  });
});

describe("a fresh project", () => {
  const home = join(scratch, "studio");
  const code = `import { type FitRequest, Ringtrue, UnprocessableError } from "@ringtrue/sdk";

const question: FitRequest = { glaze: { expansion: { value: 6 } }, body: { class: "red-stoneware" } };
// What is not set comes as undefined out of most surroundings.
const apiKey: string | undefined = undefined;
const client = new Ringtrue({ apiKey, fetch: () => new Response('{ "verdict": "sound" }') });
const { verdict } = await client.fit.check(question, { signal: undefined });
// @ts-expect-error the types are there and refuse a field that no question has
client.fit.check({ ...question, colour: "blue" }).catch(() => {});
console.log(verdict, new UnprocessableError({ type: "", title: "", status: 422, detail: "", requestId: "" }).status);
`;

  it.each(["NodeNext", "Bundler"])(
    "installs it, compiles strictly without skipping its types (%s), and runs",
    (how) => {
      rmSync(home, { recursive: true, force: true });
      mkdirSync(home);
      writeFileSync(join(home, "package.json"), JSON.stringify({ name: "studio", private: true, type: "module" }));
      writeFileSync(join(home, "main.ts"), code);
      const module = how === "Bundler" ? "ESNext" : how;
      const lib = ["ES2022", "DOM", "DOM.Iterable"];
      const strictest = { strict: true, noUncheckedIndexedAccess: true, exactOptionalPropertyTypes: true };
      const strictness = { ...strictest, skipLibCheck: false, types: [], lib };
      const compilerOptions = { ...strictness, target: "ES2022", module, moduleResolution: how, rootDir: "." };
      writeFileSync(join(home, "tsconfig.json"), JSON.stringify({ compilerOptions }));
      const options = { cwd: home, encoding: "utf8" } as const;
      execFileSync("npm", ["install", "--offline", "--no-audit", "--no-fund", tarball], options);
      expect(execFileSync(process.execPath, [join(root, "node_modules/typescript/bin/tsc"), "-p", "."], options)).toBe(
        "",
      );
      expect(execFileSync(process.execPath, ["main.js"], options)).toBe("sound 422\n");
    },
  );
});
