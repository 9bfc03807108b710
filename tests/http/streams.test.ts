import { describe, expect, it } from "vitest";
import { checkFit, judgeFit } from "../../api/engine/fit/index.ts";
import { answerLines, MAX_LINE_BYTES } from "../../api/http/ndjson.ts";
import { THAW, THAW_ON_RED_STONEWARE } from "../../api/schemas/larch-lane.ts";
import { FitVerdictLineAnswer } from "../../api/schemas/stream.ts";
import { app, stream, THAW_TEXT } from "./support.ts";

const NDJSON = { "content-type": "application/x-ndjson" };
const report = JSON.parse(JSON.stringify(checkFit(THAW_ON_RED_STONEWARE)));
const question = (extra: object) => JSON.stringify({ ...THAW_ON_RED_STONEWARE, ...extra });

describe("POST /v1/fit/verdicts", () => {
  it("answers each line in short, with what the service promises", async () => {
    const { lines } = await stream("/v1/fit/verdicts", [question({ id: "a" }), "{bad", THAW_TEXT]);
    const short = JSON.parse(JSON.stringify(judgeFit(THAW_ON_RED_STONEWARE)));
    expect(lines).toMatchObject([
      { line: 1, id: "a", result: short },
      { line: 2, error: { status: 400 } },
      { line: 3 },
    ]);
    for (const line of lines) FitVerdictLineAnswer.parse(line);
    // A third of the whole answer is what its description says.
    expect(JSON.stringify(short).length * 3).toBeLessThan(JSON.stringify(report).length * 1.1);
  });
});

describe("POST /v1/fit/stream", () => {
  it("answers line by line, in order, with the tags given", async () => {
    const { response, lines } = await stream("/v1/fit/stream", [
      question({ id: "a" }),
      question({ id: "b" }),
      THAW_TEXT,
    ]);
    expect(response.headers.get("content-type")).toBe("application/x-ndjson");
    expect(response.headers.get("etag")).toBeNull();
    expect(lines).toEqual([
      { line: 1, id: "a", result: report },
      { line: 2, id: "b", result: report },
      { line: 3, result: report },
    ]);
  });

  it("answers a bad line in its place and goes on", async () => {
    const bad = [
      "{bad",
      question({ id: "cold", seed: -1 }),
      question({ id: "lost", body: { class: "red-stonewear" } }),
      "null",
      `{"__proto__":1}`,
      `{"pad":"${"x".repeat(MAX_LINE_BYTES)}"}`,
    ];
    const { response, lines } = await stream("/v1/fit/stream", [THAW_TEXT, ...bad, THAW_TEXT], {
      "x-request-id": "larch-7",
    });
    expect(response.status).toBe(200);
    expect(lines.map((one) => [one.line, one.id, one.error?.status, one.error?.issues?.[0]?.pointer])).toEqual([
      [1, undefined, undefined, undefined],
      [2, undefined, 400, undefined],
      [3, "cold", 422, "/seed"],
      [4, "lost", 422, "/body/class"],
      [5, undefined, 422, ""],
      [6, undefined, 422, "/__proto__"],
      [7, undefined, 413, ""],
      [8, undefined, undefined, undefined],
    ]);
    for (const one of lines.slice(1, -1)) expect(one.error.requestId).toBe("larch-7");
    expect(lines[6].error.detail).toContain("64 kB");
    expect(lines[7].result).toEqual(report);
  });

  it("says in which column a line breaks off, and leaves which line to the answer's own `line`", async () => {
    const { lines } = await stream("/v1/fit/stream", ["", "", '{"glaze": {']);
    expect(lines).toMatchObject([
      { line: 3, error: { status: 400, detail: expect.stringMatching(/^Column 12: .*ended/) } },
    ]);
  });

  it("passes over empty lines but counts them, and takes CR LF", async () => {
    const { lines } = await stream("/v1/fit/stream", ["", `${THAW_TEXT}\r`, "  ", "", THAW_TEXT, ""]);
    expect(lines.map((one) => one.line)).toEqual([2, 5]);
  });

  it("answers nothing with nothing", async () => {
    const response = await app.request("/v1/fit/stream", { method: "POST", headers: NDJSON });
    expect([response.status, await response.text()]).toEqual([200, ""]);
    expect((await stream("/v1/fit/stream", ["", "\n"])).lines).toEqual([]);
  });

  it("does not mind where the bytes are cut, even inside a letter", async () => {
    const bytes = new TextEncoder().encode(`${question({ id: "Tauwetter, früh" })}\n${question({ id: "雪解け" })}`);
    for (const size of [1, 7, 1000]) {
      const body = new ReadableStream({
        start(controller) {
          for (let at = 0; at < bytes.length; at += size) controller.enqueue(bytes.subarray(at, at + size));
          controller.close();
        },
      });
      const init = { method: "POST", body, headers: NDJSON, duplex: "half" } as RequestInit;
      const text = await (await app.request("/v1/fit/stream", init)).text();
      const ids = text
        .trimEnd()
        .split("\n")
        .map((line) => JSON.parse(line).id);
      expect(ids).toEqual(["Tauwetter, früh", "雪解け"]);
    }
  });

  it("gives the same bytes twice", async () => {
    const ask = async () => {
      const { lines } = await stream("/v1/fit/stream", [THAW_TEXT, "{", THAW_TEXT], { "x-request-id": "twice" });
      return JSON.stringify(lines);
    };
    expect(await ask()).toBe(await ask());
  });
});

describe("POST /v1/expansion/stream", () => {
  it("answers line by line", async () => {
    const { lines } = await stream("/v1/expansion/stream", [JSON.stringify({ id: "thaw", glaze: THAW }), "{}"]);
    expect(lines[0]).toMatchObject({ line: 1, id: "thaw", result: { best: { expansion: { unit: "1e-6/K" } } } });
    expect(lines[1]).toMatchObject({ line: 2, error: { status: 422, issues: [{ pointer: "/glaze" }] } });
  });
});

/** Lines without end, counting what is taken; told when the reader lets go. */
function endless() {
  const state = { sent: 0, cancelled: false };
  const line = new TextEncoder().encode("x\n");
  const body = new ReadableStream<Uint8Array>({
    pull(controller) {
      state.sent += 1;
      controller.enqueue(line);
    },
    cancel() {
      state.cancelled = true;
    },
  });
  return { body, state };
}

const echo = { answer: (text: string) => text.repeat(1000), tooLong: () => "long" };
const soon = () => new Promise((resolve) => setTimeout(resolve, 30));

describe("answerLines", () => {
  it("reads no more than is asked for", async () => {
    const { body, state } = endless();
    const reader = answerLines(body, echo).getReader();
    await soon();
    expect(state.sent).toBeLessThanOrEqual(1);
    for (let i = 0; i < 5; i++) await reader.read();
    await soon();
    expect(state.sent).toBeLessThanOrEqual(7);
    await reader.cancel();
  });

  it("lets go of the sender when the caller goes", async () => {
    const { body, state } = endless();
    const reader = answerLines(body, echo).getReader();
    await reader.read();
    await reader.cancel();
    expect(state.cancelled).toBe(true);
    const { sent } = state;
    await soon();
    expect(state.sent).toBe(sent);
  });

  it("fails when the sender fails, after answering what came", async () => {
    let turn = 0;
    const body = new ReadableStream<Uint8Array>({
      pull(controller) {
        turn += 1;
        if (turn === 1) controller.enqueue(new TextEncoder().encode("a\nb"));
        else controller.error(new Error("gone"));
      },
    });
    const reader = answerLines(body, { ...echo, answer: (text) => text }).getReader();
    expect(new TextDecoder().decode((await reader.read()).value)).toBe("a\n");
    await expect(reader.read()).rejects.toThrow("gone");
  });

  it("keeps nothing of a line that is too long", async () => {
    const piece = new Uint8Array(1 << 20).fill(120);
    let left = 64;
    const body = new ReadableStream<Uint8Array>({
      pull(controller) {
        left -= 1;
        if (left > 0) controller.enqueue(piece);
        else {
          controller.enqueue(new TextEncoder().encode("\nshort\n"));
          controller.close();
        }
      },
    });
    const before = process.memoryUsage().rss;
    const answers = answerLines(body, { answer: (text, line) => `${line}:${text}`, tooLong: (line) => `${line}:long` });
    expect(await new Response(answers).text()).toBe("1:long\n2:short\n");
    expect(process.memoryUsage().rss - before).toBeLessThan(48 * 2 ** 20);
  });

  it("lets others have their turn", async () => {
    const lines = new TextEncoder().encode("x\n".repeat(5000));
    let ticks = 0;
    const clock = setInterval(() => {
      ticks += 1;
    }, 1);
    const slow = {
      answer: () => {
        const end = performance.now() + 0.05;
        while (performance.now() < end);
        return "y";
      },
      tooLong: () => "",
    };
    await new Response(answerLines(new Blob([lines]).stream(), slow)).text();
    clearInterval(clock);
    expect(ticks).toBeGreaterThan(10);
  });
});
