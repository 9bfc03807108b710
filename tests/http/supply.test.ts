/** What the project is built from: pinned, permissively licensed, nothing run on install that is not allowed by name. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";

const root = fileURLToPath(new URL("../..", import.meta.url));
const read = (name: string) => JSON.parse(readFileSync(`${root}${name}`, "utf8"));

interface Locked {
  version?: string;
  license?: string;
  dev?: boolean;
  link?: boolean;
  resolved?: string;
  integrity?: string;
  hasInstallScript?: boolean;
}
const manifest = read("package.json");
const locked = Object.entries(read("package-lock.json").packages as Record<string, Locked>)
  .filter(([path, one]) => path.includes("node_modules/") && !one.link)
  .map(([path, one]) => ({ name: path.slice(path.lastIndexOf("node_modules/") + 13), ...one }));

/** Licences that ask for no more than to be named along; MPL-2.0 asks only for changes to its own files, and we make none. */
const SHIPPED = ["MIT", "ISC", "Apache-2.0", "BSD-2-Clause", "BSD-3-Clause", "0BSD", "MPL-2.0"];
/** Tools never leave the project. */
const TOOLS = [...SHIPPED, "BlueOak-1.0.0", "Python-2.0", "(MIT AND Zlib)", "MIT OR Apache-2.0"];

describe("what the service is built from", () => {
  it("is pinned to the last digit", () => {
    const wanted = { ...manifest.dependencies, ...manifest.devDependencies } as Record<string, string>;
    expect(Object.entries(wanted).filter(([, version]) => !/^\d+\.\d+\.\d+(-[\w.]+)?$/.test(version))).toEqual([]);
    for (const [name, version] of Object.entries(wanted)) {
      expect(
        locked.filter((one) => one.name === name).map((one) => one.version),
        name,
      ).toContain(version);
    }
  });

  it("may be passed on", () => {
    const strange = locked.filter(({ dev, license = "none" }) => !(dev ? TOOLS : SHIPPED).includes(license));
    expect(strange.map(({ name, license }) => `${name}: ${license}`)).toEqual([]);
  });

  it("is checked against its hash, wherever it is fetched from", () => {
    expect(
      locked.filter(({ integrity, resolved }) => !integrity && !resolved?.startsWith("file:")).map((one) => one.name),
    ).toEqual([]);
    expect(locked.filter(({ resolved }) => resolved?.startsWith("http")).map((one) => one.name)).toEqual([]);
  });

  it("runs nothing on install but what is named", () => {
    const running = [...new Set(locked.filter((one) => one.hasInstallScript).map((one) => one.name))];
    const named = Object.keys(manifest.allowScripts ?? {});
    // For another kind of machine, and installed on none here.
    expect(running.filter((name) => !named.includes(name) && name !== "fsevents")).toEqual([]);
  });
});
