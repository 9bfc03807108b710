/** Every example runs as its header says, over the network and in process, and prints what the header says. */
import { execFile } from "node:child_process";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import type { AddressInfo } from "node:net";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { serve } from "@hono/node-server";
import { describe, expect, it } from "vitest";
import { app } from "../../api/app.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));
const examples = readdirSync(`${root}examples`).filter((name) => /^\d\d-.*\.ts$/.test(name));

async function output(example: string, env: Record<string, string> = {}): Promise<string> {
  const options = { cwd: root, env: { ...process.env, ...env } };
  const { stdout } = await promisify(execFile)(process.execPath, ["--import", "tsx", `examples/${example}`], options);
  return stdout;
}

const asComment = (text: string) =>
  text
    .trimEnd()
    .split("\n")
    .map((line) => ` *     ${line}`.trimEnd())
    .join("\n");

describe("examples", () => {
  it("are there", () => expect(examples).toContain("01-first-fit.ts"));

  it.each(examples)("%s prints what its header says", async (example) => {
    const file = `${root}examples/${example}`;
    const source = readFileSync(file, "utf8");
    const printed = await output(example);
    const header = / \* prints\n \*\n([\s\S]*?)\n \*\//.exec(source)?.[1];
    if (process.env.UPDATE_EXAMPLES) {
      const fresh = ` * prints\n *\n${asComment(printed)}\n */`;
      writeFileSync(
        file,
        source.replace(/ \* prints\n[\s\S]*?\n? \*\//, () => fresh),
      );
    } else expect(asComment(printed)).toBe(header);
  });

  it("print the same over the network", async () => {
    const server = serve({ fetch: app.fetch, port: 0, hostname: "127.0.0.1" });
    try {
      await new Promise((resolve) => server.once("listening", resolve));
      const { port } = server.address() as AddressInfo;
      for (const example of examples) {
        expect(await output(example, { RINGTRUE_URL: `http://127.0.0.1:${port}` })).toBe(await output(example));
      }
    } finally {
      if ("closeAllConnections" in server) server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    }
  });
});
