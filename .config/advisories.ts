/** What the registry knows against the packages of the service. @module */
import { spawnSync } from "node:child_process";

/** What came of asking. */
export interface Asked {
  /** What is wrong; none where nothing is. */
  fault?: string;
  /** Why nothing is known. */
  note?: string;
}

interface Report {
  /** What npm itself stumbled over; without a code it is the registry that did not answer. */
  error?: { code?: string; summary?: string };
  auditReportVersion?: number;
  vulnerabilities?: Record<string, { severity: string; range?: string; via: (string | { title?: string })[] }>;
}

/** Asks npm about what is shipped; tools are left out. */
export function askForAdvisories(root: string): Asked {
  // Told to stay offline, npm would ask nobody and find nothing.
  const parameters = ["audit", "--omit", "dev", "--json", "--offline=false"];
  const { stdout } = spawnSync("npm", parameters, { cwd: root, encoding: "utf8" });
  return judgeReport(stdout ?? "");
}

/**
 * Reads what `npm audit --json` has written. Its exit status does not tell a finding from a registry that gives no
 * answer, so it is not asked.
 */
export function judgeReport(text: string): Asked {
  const report = parse(text);
  if (report?.error?.code) return { fault: `npm audit: ${report.error.summary}` };
  if (!report?.vulnerabilities || report.auditReportVersion === undefined) {
    return { note: "not asked: the registry gives no advisories" };
  }
  const found = Object.entries(report.vulnerabilities).filter(([, { severity }]) => /^(high|critical)$/.test(severity));
  if (found.length === 0) return {};
  const lines = found.map(([name, { severity, range = "", via }]) => {
    const why = via.map((one) => (typeof one === "string" ? `by way of ${one}` : (one.title ?? "no reason given")));
    return `${name} ${range} (${severity}): ${why.join("; ")}`;
  });
  return { fault: `${lines.join("\n")}\nTake a version without it, or none: npm audit --omit dev` };
}

function parse(text: string): Report | undefined {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
