/** Every example runs as its header says, over the network and in process, and prints what the header says. */
import { execFile } from "node:child_process";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import type { AddressInfo } from "node:net";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { type ServerType, serve } from "@hono/node-server";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
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

/** What a header says is printed. */
const printedIn = (source: string) => / \* prints\n \*\n([\s\S]*?)\n \*\//.exec(source)?.[1];

describe("examples", () => {
  it("are there", () => expect(examples).toContain("01-first-fit.ts"));

  it.each(examples)("%s prints what its header says", async (example) => {
    const file = `${root}examples/${example}`;
    const source = readFileSync(file, "utf8");
    const printed = await output(example);
    if (process.env.UPDATE_EXAMPLES) {
      const fresh = ` * prints\n *\n${asComment(printed)}\n */`;
      writeFileSync(
        file,
        source.replace(/ \* prints\n[\s\S]*?\n? \*\//, () => fresh),
      );
    } else expect(asComment(printed)).toBe(printedIn(source));
  });

  describe("over the network", () => {
    let server: ServerType;
    beforeAll(async () => {
      server = serve({ fetch: app.fetch, port: 0, hostname: "127.0.0.1" });
      await new Promise((resolve) => server.once("listening", resolve));
    });
    afterAll(async () => {
      if ("closeAllConnections" in server) server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    });

    it.each(examples)("%s prints the same", async (example) => {
      const { port } = server.address() as AddressInfo;
      const printed = await output(example, { RINGTRUE_URL: `http://127.0.0.1:${port}` });
      expect(asComment(printed)).toBe(printedIn(readFileSync(`${root}examples/${example}`, "utf8")));
    });
  });
});
