/** Bulk calls against a small service that answers each line with what it read. */
import { AbortedError, ConnectionError, type FetchLike, Ringtrue, TimeoutError } from "@ringtrue/sdk";
import { describe, expect, it } from "vitest";

const question = (n: number) => ({ glaze: { expansion: { value: n } }, body: { class: "red-stoneware" } });
function* questions(count: number, taken: number[] = []) {
  for (let n = 1; n <= count; n++) {
    taken.push(n);
    yield question(n);
  }
}

/** Lines of a request body. */
const linesOf = (init: RequestInit): string[] => String(init.body).trimEnd().split("\n");
const valueIn = (line: string): number => JSON.parse(line).glaze.expansion.value;
const answerTo = (line: string, at: number) =>
  `${JSON.stringify({ line: at + 1, result: { value: valueIn(line) } })}\n`;

/** Answers line by line, in pieces that cut through lines and through characters of more than one byte. */
function echo(pieceBytes = 7): FetchLike & { windows: number[] } {
  const windows: number[] = [];
  const fetch: FetchLike = (_url, init) => {
    const lines = linesOf(init);
    windows.push(lines.length);
    const bytes = new TextEncoder().encode(lines.map(answerTo).join(""));
    let at = 0;
    return new Response(
      new ReadableStream({
        pull(controller) {
          if (at >= bytes.length) return controller.close();
          controller.enqueue(bytes.slice(at, at + pieceBytes));
          at += pieceBytes;
        },
      }),
    );
  };
  return Object.assign(fetch, { windows });
}

const quiet = { random: () => 0, sleep: async () => {} };

describe("streams", () => {
  it("answer every line in order, whatever the size of the pieces", async () => {
    const fetch = echo();
    const client = new Ringtrue({ fetch });
    const got: unknown[] = [];
    for await (const answer of client.fit.stream(questions(1000))) got.push([answer.line, answer.result]);
    expect(got).toEqual(Array.from({ length: 1000 }, (_, i) => [i + 1, { value: i + 1 }]));
    expect(fetch.windows).toEqual([16, 64, 256, 256, 256, 152]);
  });

  it("take async sources, and an empty source asks nothing", async () => {
    const fetch = echo();
    const client = new Ringtrue({ fetch });
    for await (const _ of client.fit.stream([])) throw new Error("nothing was asked");
    expect(fetch.windows).toEqual([]);
    const source = (async function* () {
      yield* questions(3);
    })();
    const got: number[] = [];
    for await (const { line } of client.expansion.stream(source as never)) got.push(line);
    expect(got).toEqual([1, 2, 3]);
  });

  it("give a bad line's problem in its place and go on", async () => {
    const problem = { type: "about:blank", title: "No", status: 422, detail: "No.", requestId: "r" };
    const client = new Ringtrue({
      fetch: () =>
        new Response(
          `{"line":1,"result":{"a":1}}\n{"line":2,"error":${JSON.stringify(problem)}}\n{"line":3,"result":{"a":3}}`,
        ),
    });
    const got = [];
    for await (const answer of client.fit.stream(questions(3))) got.push(answer);
    expect(got).toEqual([
      { line: 1, result: { a: 1 } },
      { line: 2, error: problem },
      { line: 3, result: { a: 3 } },
    ]);
  });

  it("read the source no further than the window at hand", async () => {
    const taken: number[] = [];
    const answers = new Ringtrue({ fetch: echo() }).fit.stream(questions(100_000, taken));
    expect(taken).toHaveLength(0);
    await answers.next();
    expect(taken).toHaveLength(16);
    for (let i = 0; i < 16; i++) await answers.next();
    expect(taken).toHaveLength(80);
    await answers.return();
    expect(taken).toHaveLength(80);
  });

  it("do not make the first answer of a slow source wait for a full window", async () => {
    const fetch = echo();
    let release = () => {};
    const source = (async function* () {
      yield question(1);
      await new Promise<void>((resolve) => (release = resolve));
      yield question(2);
    })();
    const answers = new Ringtrue({ fetch }).fit.stream(source);
    expect((await answers.next()).value).toMatchObject({ line: 1 });
    release();
    expect((await answers.next()).value).toMatchObject({ line: 2 });
    expect(fetch.windows).toEqual([1, 1]);
  });
});

describe("leaving a stream early", () => {
  it("aborts the request, stops the service's work and closes the source", async () => {
    let signal: AbortSignal | null | undefined;
    let cancelled = false;
    let closed = false;
    const client = new Ringtrue({
      fetch: (_url, init) => {
        signal = init.signal;
        const [first] = linesOf(init);
        return new Response(
          new ReadableStream({
            start: (controller) => controller.enqueue(new TextEncoder().encode(answerTo(first!, 0))),
            cancel: () => {
              cancelled = true;
            },
          }),
        );
      },
    });
    const source = (function* () {
      try {
        yield* questions(1000);
      } finally {
        closed = true;
      }
    })();
    for await (const { line } of client.fit.stream(source)) if (line === 1) break;
    await new Promise((resolve) => setTimeout(resolve));
    expect([signal?.aborted, cancelled, closed]).toEqual([true, true, true]);
  });

  it("is what the caller's signal does too, even while the source keeps everyone waiting", async () => {
    const controller = new AbortController();
    const never = (async function* () {
      await new Promise(() => {});
      yield question(1);
    })();
    const next = new Ringtrue({ fetch: echo() }).fit.stream(never, { signal: controller.signal }).next();
    controller.abort();
    await expect(next).rejects.toBeInstanceOf(AbortedError);
  });

  it("gives no answer after the signal, though more have arrived", async () => {
    const controller = new AbortController();
    const got: number[] = [];
    const all = async () => {
      // Every answer of a window arrives in one piece.
      const answers = new Ringtrue({ fetch: echo(1e6) }).fit.stream(questions(500), { signal: controller.signal });
      for await (const { line } of answers) {
        got.push(line);
        if (line === 20) controller.abort(new Error("enough"));
      }
    };
    await expect(all()).rejects.toMatchObject({ name: "AbortedError", cause: new Error("enough") });
    expect(got).toEqual(Array.from({ length: 20 }, (_, i) => i + 1));
  });

  it("passes a fault of the source on as it is", async () => {
    const source = (function* () {
      yield question(1);
      throw new RangeError("row 2 has no parts");
    })();
    const all = async () => {
      for await (const _ of new Ringtrue({ fetch: echo() }).fit.stream(source));
    };
    await expect(all()).rejects.toThrow(RangeError);
  });
});

describe("streams over bad connections", () => {
  /** Breaks after `good` answers of each of the first `breaks` requests. */
  function breaking(good: number, breaks: number, how: "error" | "close" | "torn line") {
    const windows: number[] = [];
    const fetch: FetchLike = (_url, init) => {
      const lines = linesOf(init);
      windows.push(lines.length);
      const cut = windows.length <= breaks;
      const torn = cut && how === "torn line" ? answerTo(lines[good]!, good).slice(0, -5) : "";
      const text = (cut ? lines.slice(0, good) : lines).map(answerTo).join("") + torn;
      let told = false;
      return new Response(
        new ReadableStream({
          pull(controller) {
            if (!told) controller.enqueue(new TextEncoder().encode(text));
            else if (cut && how === "error") controller.error(new TypeError("terminated"));
            else controller.close();
            told = true;
          },
        }),
      );
    };
    return { fetch, windows };
  }

  it.each(["error", "close", "torn line"] as const)("ask again only for the lines still open (%s)", async (how) => {
    const { fetch, windows } = breaking(5, 2, how);
    const got: number[] = [];
    for await (const { line, result } of new Ringtrue({ fetch, ...quiet }).fit.stream(questions(16))) {
      expect(result).toEqual({ value: line });
      got.push(line);
    }
    expect(got).toEqual(Array.from({ length: 16 }, (_, i) => i + 1));
    expect(windows).toEqual([16, 11, 6]);
  });

  it("end in a ConnectionError when it keeps breaking, after what was answered", async () => {
    const { fetch, windows } = breaking(1, 99, "close");
    const got: number[] = [];
    const all = async () => {
      for await (const { line } of new Ringtrue({ fetch, ...quiet }).fit.stream(questions(16))) got.push(line);
    };
    await expect(all()).rejects.toBeInstanceOf(ConnectionError);
    expect([got, windows]).toEqual([
      [1, 2, 3],
      [16, 15, 14],
    ]);
  });

  it("do not hang on a service that falls silent", async () => {
    const client = new Ringtrue({ fetch: () => new Response(new ReadableStream({})), timeoutMs: 20 });
    await expect(client.fit.stream(questions(2)).next()).rejects.toBeInstanceOf(TimeoutError);
  });

  it("refuse answers that are not JSON, and more answers than lines", async () => {
    const html = new Ringtrue({ fetch: () => new Response("<h1>Hello</h1>\n") });
    await expect(html.fit.stream(questions(1)).next()).rejects.toMatchObject({ name: "UnreadableAnswerError" });
    const chatty = new Ringtrue({ fetch: () => new Response('{"line":1,"result":{}}\n{"line":2,"result":{}}\n') });
    const all = async () => {
      for await (const _ of chatty.fit.stream(questions(1)));
    };
    await expect(all()).rejects.toMatchObject({ name: "UnreadableAnswerError" });
  });
});
