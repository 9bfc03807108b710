/** The SDK as a package: small, without dependencies, at home in a browser, fresh from the API description. */
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";
import { describe, expect, it } from "vitest";
import { build as buildPackage, GENERATED, generateTypes } from "../../sdk/generate.ts";

const sdk = fileURLToPath(new URL("../../sdk/", import.meta.url));

async function bundle(code: string) {
  const built = await build({
    stdin: { contents: code, resolveDir: `${sdk}src`, loader: "ts" },
    bundle: true,
    minify: true,
    format: "esm",
    platform: "browser",
    target: "es2022",
    write: false,
    metafile: true,
  });
  return { text: built.outputFiles[0]!.text, inputs: Object.keys(built.metafile!.inputs) };
}

describe("the package", () => {
  it("bundles for a browser, everything in, within 15 kB gzipped, and imports nothing", async () => {
    const { text, inputs } = await bundle('export * from "./index.ts";');
    const { length } = gzipSync(text);
    expect(length).toBeLessThanOrEqual(15 * 1024);
    expect(readFileSync(`${sdk}README.md`, "utf8")).toContain(`about ${Math.round(length / 1000)} kB gzipped`);
    expect(inputs.filter((input) => /node_modules|node:/.test(input))).toEqual([]);
    expect(text).not.toMatch(/\bfrom"|\bimport\(|\brequire\(|\bprocess\.|\bBuffer\b/);
  });

  it("leaves out what is not used", async () => {
    const all = await bundle('export * from "./index.ts";');
    const errors = await bundle('export { NotFoundError } from "./index.ts";');
    expect(errors.text.length).toBeLessThan(all.text.length / 4);
  });

  it("has no dependencies and ships only dist and the README", () => {
    const manifest = JSON.parse(readFileSync(join(sdk, "package.json"), "utf8"));
    expect(manifest.dependencies ?? {}).toEqual({});
    expect(manifest.peerDependencies ?? {}).toEqual({});
    expect(manifest.files).toEqual(["dist", "README.md"]);
    expect(manifest.type).toBe("module");
  });

  it("compiles to modules that import nothing but each other, by names that exist", async () => {
    const out = mkdtempSync(join(tmpdir(), "ringtrue-sdk-"));
    try {
      buildPackage(out);
      const files = readdirSync(out, { recursive: true, encoding: "utf8" }).filter((name) =>
        /\.(js|d\.ts)$/.test(name),
      );
      expect(files).toContain("index.d.ts");
      for (const name of files) {
        for (const [, path] of readFileSync(join(out, name), "utf8").matchAll(/ from "([^"]+)"/g)) {
          if (path!.startsWith("@")) continue; // the README's line inside a doc comment
          expect(existsSync(join(out, dirname(name), path!)), `${name} imports ${path}`).toBe(true);
        }
      }
      const { Ringtrue } = await import(join(out, "index.js"));
      await expect(new Ringtrue({ fetch: () => Response.json({ status: "ok" }) }).health()).resolves.toEqual({
        status: "ok",
      });
    } finally {
      rmSync(out, { recursive: true });
    }
  });

  it("carries types as fresh as the API description", async () => {
    const fresh = mkdtempSync(join(tmpdir(), "ringtrue-types-"));
    try {
      await generateTypes(undefined, fresh);
      expect(readdirSync(fresh)).toEqual(readdirSync(GENERATED));
      for (const name of readdirSync(fresh)) {
        expect(readFileSync(join(fresh, name), "utf8")).toBe(readFileSync(join(GENERATED, name), "utf8"));
      }
    } finally {
      rmSync(fresh, { recursive: true });
    }
  });
});
