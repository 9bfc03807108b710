/** The soak itself can fail: every kind of harm is counted as what it is. */
import { describe, expect, it } from "vitest";
import type { Question } from "./questions.ts";
import { growthOf } from "./report.ts";
import { Tally } from "./tally.ts";

const question: Question = {
  ...{ what: "fit", method: "POST", path: "/v1/fit", body: "{}", weight: 1 },
  headers: { "x-request-id": "soak-1" },
  right: { status: 200, type: "application/json", body: Buffer.from('{"verdict":"sound"}') },
};
const good = {
  status: 200,
  headers: { "content-type": "application/json", "x-request-id": "soak-1" },
  body: Buffer.from('{"verdict":"sound"}'),
};
const counted = (answer: object) => {
  const tally = new Tally([]);
  tally.answered(question, { ...good, ...answer } as never);
  const { right, shed, wrong, unexplained5xx } = tally;
  return { right, shed, wrong, unexplained5xx };
};
const none = { right: 0, shed: 0, wrong: 0, unexplained5xx: 0 };

describe("the tally of a soak", () => {
  it.each([
    ["a right answer", {}, { right: 1 }],
    ["another byte", { body: Buffer.from('{"verdict":"soune"}') }, { wrong: 1 }],
    ["a byte more", { body: Buffer.from('{"verdict":"sound"}\n') }, { wrong: 1 }],
    ["another caller's answer", { headers: { ...good.headers, "x-request-id": "soak-2" } }, { wrong: 1 }],
    ["another type", { headers: { ...good.headers, "content-type": "text/plain" } }, { wrong: 1 }],
    ["a refusal of what is right", { status: 422 }, { wrong: 1 }],
    ["a turning away", { status: 503, headers: { "retry-after": "1" } }, { shed: 1 }],
    ["a turning away that does not say for how long", { status: 503 }, { unexplained5xx: 1 }],
    ["a fault", { status: 500, headers: { "retry-after": "1" } }, { shed: 0, unexplained5xx: 1 }],
  ])("knows %s", (_, answer, count) => {
    expect(counted(answer)).toEqual({ ...none, ...count });
  });

  it("explains a broken connection by a kill while it was open or just before, and by nothing else", () => {
    const now = performance.now();
    const broke = (began: number, kills: number[]) => {
      const tally = new Tally(kills);
      tally.broke(question, began, new Error("socket hang up"));
      return tally.killed;
    };
    expect(broke(now - 100, [now - 50])).toBe(1);
    expect(broke(now - 100, [now - 1000])).toBe(1);
    expect(broke(now - 100, [now - 5000])).toBe(0);
    expect(broke(now - 100, [now + 60_000])).toBe(0);
    expect(broke(now - 100, [])).toBe(0);
  });

  it("tells growth from the collector's rhythm, by the worker that lived throughout", () => {
    const samples = (memory: (i: number) => number) =>
      Array.from({ length: 40 }, (_, i) => ({ atS: i, pid: 1, residentMB: memory(i) }));
    expect(growthOf(samples((i) => 100 + (i % 4) * 5))).toBe(0);
    // A MB a sample, from the middle of the second quarter to that of the last: derived (arithmetic).
    expect(growthOf(samples((i) => 100 + i))).toBe(20);
    expect(growthOf([...samples(() => 100), { atS: 39, pid: 2, residentMB: 900 }])).toBe(0);
  });
});
