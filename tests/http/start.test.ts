/** How a file of the project is run: bundled once, and again when anything it is made of has changed. */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, rmSync, utimesSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, expect, it } from "vitest";

const root = fileURLToPath(new URL("../..", import.meta.url));
const scratch = mkdtempSync(join(tmpdir(), "ringtrue-run-"));
const entry = join(scratch, "main.ts");
const kept = join(root, "node_modules/.cache/ringtrue", relative(root, entry).replace(/[^a-z0-9]+/gi, "-"));

const write = (name: string, text: string) => {
  writeFileSync(join(scratch, name), text);
  // Dates tell nothing: a change within the same second, or under a date of long ago, must show.
  utimesSync(join(scratch, name), 0, 0);
};
const run = (...args: string[]) =>
  execFileSync(process.execPath, [".config/run.mjs", entry, ...args], { cwd: root, encoding: "utf8" });
const bundles = () => readdirSync(kept).filter((name) => name !== "last.json");

beforeAll(() => {
  write(
    "glaze.ts",
    'import cone from "./cone.json" with { type: "json" };\nexport const glaze = "Thaw at " + cone.name;',
  );
  write("cone.json", '{ "name": "cone 6" }');
  write("rare.ts", 'export const rare = "rarely asked";');
  write(
    "main.ts",
    'import { glaze } from "./glaze.ts";\nconsole.log(glaze, process.argv[2] ?? "", import.meta.url);\n' +
      'if (process.argv[2]) console.log((await import("./rare.ts")).rare);',
  );
});
afterAll(() => {
  rmSync(scratch, { recursive: true });
  rmSync(kept, { recursive: true, force: true });
});

it("runs, with its arguments and its own address, and keeps the bundle for the next time", () => {
  expect(run()).toBe(`Thaw at cone 6  file://${entry}\n`);
  const made = bundles();
  expect(made).toHaveLength(1);
  expect(run("now")).toBe(`Thaw at cone 6 now file://${entry}\nrarely asked\n`);
  expect(bundles()).toEqual(made);
});

it("leaves what is only asked for at times in a file of its own", () => {
  const files = readdirSync(join(kept, bundles()[0]!)).filter((name) => name.endsWith(".mjs"));
  expect(files.map((name) => name.replace(/-\w+\.mjs$/, ".mjs")).sort()).toEqual(["main.mjs", "rare.mjs"]);
});

it("bundles anew when a source has changed, in code or figures, and keeps three", () => {
  write("cone.json", '{ "name": "cone 7" }');
  expect(run()).toMatch(/^Thaw at cone 7 /);
  write("cone.json", '{ "name": "cone 6" }');
  expect(run()).toMatch(/^Thaw at cone 6 /);
  expect(bundles()).toHaveLength(2);
  for (const name of ["Dusk", "Hail", "Mist"]) {
    write("glaze.ts", `export const glaze = "${name}";`);
    expect(run()).toMatch(new RegExp(`^${name} `));
  }
  expect(bundles()).toHaveLength(3);
});

it("says what to give when it is given nothing", () => {
  const bare = () => execFileSync(process.execPath, [".config/run.mjs"], { cwd: root, stdio: "pipe" });
  expect(bare).toThrow("Name a TypeScript file");
});
