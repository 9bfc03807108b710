/**
 * Every @example of the SDK, and every block of its README, run against the real service in process.
 *
 *     UPDATE_EXAMPLES=1 npx vitest run --config .config/vitest.config.ts tests/sdk
 *
 * writes anew what the README and the headers of examples/ say is printed; read the difference before committing it.
 */
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import * as sdk from "@ringtrue/sdk";
import { transform } from "esbuild";
import { describe, expect, it } from "vitest";
import { createApp } from "../../api/app.ts";
import { drawPng } from "../../api/node/draw-png.ts";
import { deprecationOf } from "../../sdk/src/deprecation.ts";
import { apiError } from "../../sdk/src/errors.ts";
import * as retry from "../../sdk/src/retry.ts";

const root = fileURLToPath(new URL("../../sdk/", import.meta.url));
const app = createApp({ drawPng });
const inProcess: sdk.FetchLike = (url, init) => app.request(url, init);

/** The client of the examples: whatever address they give, they reach the service in process. */
class Ringtrue extends sdk.Ringtrue {
  constructor(options: sdk.ClientOptions = {}) {
    super({ ...options, fetch: inProcess });
  }
}

const glaze = {
  recipe: [
    { material: "potash-feldspar", parts: 60 },
    { material: "whiting", parts: 20 },
    { material: "silica", parts: 20 },
  ],
};
const names = {
  ...sdk,
  ...retry,
  apiError,
  deprecationOf,
  Ringtrue,
  app,
  client: new Ringtrue(),
  glazes: [{ glaze }],
  questions: [{ glaze, body: { class: "red-stoneware" } }],
};

/** Runs code as the body of an async function, with what it prints; `// value` after a lone expression is checked. */
async function run(source: string): Promise<string[]> {
  const printed: string[] = [];
  const console = { log: (...words: unknown[]) => void printed.push(words.map(String).join(" ")) };
  const checked = source
    .replace(/^import .*$/gm, "")
    .replace(/^(\w.*\)(?: instanceof \w+)?) \/\/ (.+)$/gm, "expect($1).toEqual($2);");
  const { code } = await transform(`async function example() {\n${checked}\n}`, { loader: "ts", target: "es2022" });
  const scope = { ...names, console, expect };
  await new Function(...Object.keys(scope), `${code}; return example();`)(...Object.values(scope));
  return printed;
}

/** `@example` blocks of a file: the comment's lines from the tag to the next tag or the end. */
function examplesIn(file: string): string[] {
  const comments = readFileSync(file, "utf8").match(/\/\*\*[\s\S]*?\*\//g) ?? [];
  return comments.flatMap((comment) => {
    const [, example] = comment.replace(/\s*\*\/$/, "").split("@example");
    const lines = example?.split("\n").map((line) => line.replace(/^\s*\* ?/, ""));
    return lines ? [lines.join("\n").trim()] : [];
  });
}

const files = readdirSync(`${root}src`, { recursive: true, encoding: "utf8" })
  .filter((name) => name.endsWith(".ts") && !name.startsWith("generated"))
  .sort();
const cases = files.flatMap((name) => examplesIn(`${root}src/${name}`).map((code) => ({ name, code })));

describe("doc comments", () => {
  it("have examples", () => expect(cases.length).toBeGreaterThanOrEqual(14));
  it.each(cases)("$name: $code", async ({ code }) => {
    await run(code);
  });
  it("notice an example that is wrong", async () => {
    await expect(run("isRetryable(503) // false")).rejects.toThrow();
  });

  it("stand on every public method, with an example", () => {
    for (const name of files.filter((name) => name.startsWith("resources"))) {
      const text = readFileSync(`${root}src/${name}`, "utf8");
      const methods = text.match(/^ {2}(?!constructor)[a-z]\w*\(/gm) ?? [];
      const examples = text.match(/@example/g) ?? [];
      expect(`${name} ${examples.length}`).toBe(`${name} ${methods.length}`);
    }
  });
});

describe("README", () => {
  const readme = readFileSync(`${root}README.md`, "utf8");
  const blocks = [...readme.matchAll(/```ts\n([\s\S]*?)```(?:\n+prints\n+```text\n([\s\S]*?)```)?/g)];
  it("has a row for every call", () => {
    const calls = Object.entries(new Ringtrue()).flatMap(([resource, value]) => {
      const methods = Object.getOwnPropertyNames(Object.getPrototypeOf(value)).filter((one) => one !== "constructor");
      return methods.map((method) => `${resource}.${method}(`);
    });
    expect(calls.length).toBeGreaterThan(25);
    const rows = readme.split("\n").filter((line) => line.startsWith("| `"));
    for (const call of calls) expect(rows.join("\n")).toContain(call);
  });

  const shown = blocks.map(([block, code = "", output]) => ({ block, code, output }));
  it.each(shown)("$code", async ({ block, code, output }) => {
    const printed = `${(await run(code)).join("\n")}\n`;
    if (output === undefined) return;
    if (process.env.UPDATE_EXAMPLES) {
      const now = readFileSync(`${root}README.md`, "utf8");
      const fresh = block.replace(/(```text\n)[\s\S]*```$/, (_, fence) => `${fence}${printed}\`\`\``);
      writeFileSync(
        `${root}README.md`,
        now.replace(block, () => fresh),
      );
    } else expect(printed).toBe(output);
  });
});
