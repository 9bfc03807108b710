/** What the project is built from: pinned, permissively licensed, nothing run on install that is not allowed by name. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { judgeReport } from "../../.config/advisories.ts";
import { lockedPackages, unfit } from "../../.config/licences.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
const read = (name: string) => JSON.parse(readFileSync(`${root}${name}`, "utf8"));

const manifest = read("package.json");
const locked = lockedPackages();

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
    expect(unfit(locked)).toEqual([]);
    const odd = [
      { name: "shipped", license: "BlueOak-1.0.0" },
      { name: "tool", license: "BlueOak-1.0.0", dev: true },
      { name: "copyleft", license: "GPL-3.0-only", dev: true },
      { name: "silent" },
    ];
    expect(unfit(odd)).toEqual(["shipped: BlueOak-1.0.0", "copyleft: GPL-3.0-only", "silent: none"]);
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

describe("what is known against it", () => {
  // The shape is that of npm 11's `npm audit --json`; the finding is made up.
  const report = (vulnerabilities: object) => JSON.stringify({ auditReportVersion: 2, vulnerabilities });
  const hole = { severity: "high", range: "<1.2.3", via: [{ title: "Lets the kiln be lit from afar" }] };

  it("is told and fails, where it is grave", () => {
    const user = { severity: "critical", range: "*", via: ["kiln"] };
    const { fault } = judgeReport(report({ kiln: hole, studio: user, brush: { ...hole, severity: "moderate" } }));
    expect(fault).toMatch(
      /^kiln <1\.2\.3 \(high\): Lets the kiln be lit from afar\nstudio \* \(critical\): by way of kiln/,
    );
    expect(fault).not.toContain("brush");
  });

  it("cannot be asked without a list of packages", () => {
    const error = { code: "ENOLOCK", summary: "This command requires an existing lockfile." };
    expect(judgeReport(JSON.stringify({ error })).fault).toContain("existing lockfile");
  });

  it("is nothing, where the registry says so", () => {
    expect(judgeReport(report({}))).toEqual({});
    expect(judgeReport(report({ kiln: { ...hole, severity: "low" } }))).toEqual({});
  });

  it.each([
    JSON.stringify({ message: "405 Method Not Allowed", method: "POST", statusCode: 405, error: { summary: "" } }),
    JSON.stringify({ message: "request failed, reason: connect ECONNREFUSED", error: { summary: "", detail: "" } }),
    "null",
    "",
    "<html>",
  ])("is said to be unknown, where the registry does not answer: %s", (text) => {
    expect(judgeReport(text)).toEqual({ note: "not asked: the registry gives no advisories" });
  });
});
