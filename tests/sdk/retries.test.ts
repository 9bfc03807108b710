/** What is tried again, after how long, and what is not. Rules: README of the SDK; RFC 9110, 10.2.3 (Retry-After). */
import { AbortedError, ConnectionError, RateLimitedError, Ringtrue, ServerError, TimeoutError } from "@ringtrue/sdk";
import { describe, expect, it } from "vitest";
import { backoffMs, retryAfterMs } from "../../sdk/src/retry.ts";
import { failureOf } from "./failure.ts";

/** A client whose fetch plays the given answers in turn, and which notes its pauses instead of making them. */
function playing(answers: (() => Response | Promise<Response>)[], random = 0.5) {
  const pauses: number[] = [];
  let calls = 0;
  const client = new Ringtrue({
    fetch: () => {
      const answer = answers[Math.min(calls, answers.length - 1)]!;
      calls += 1;
      return answer();
    },
    random: () => random,
    sleep: async (ms) => void pauses.push(ms),
  });
  return { client, pauses, calls: () => calls };
}

const good = () => Response.json({ status: "ok" });
const status =
  (code: number, headers: Record<string, string> = {}) =>
  () =>
    Response.json(
      { type: "about:blank", title: "No", status: code, detail: "No.", requestId: "r" },
      { status: code, headers },
    );
const reset = () => Promise.reject(new TypeError("fetch failed", { cause: new Error("read ECONNRESET") }));

describe("what is tried again", () => {
  it.each([408, 429, 502, 503, 504])("tries again after %i", async (code) => {
    const { client, calls } = playing([status(code), good]);
    await client.health();
    expect(calls()).toBe(2);
  });

  it.each([400, 401, 404, 405, 409, 413, 415, 422, 500, 501])("does not try again after %i", async (code) => {
    const { client, calls } = playing([status(code), good]);
    await expect(client.health()).rejects.toMatchObject({ status: code });
    expect(calls()).toBe(1);
  });

  it("tries again when the connection fails, for POST as for GET", async () => {
    const { client, calls } = playing([reset, reset, () => Response.json({ verdict: "sound" })]);
    await client.fit.check({ glaze: { expansion: { value: 6 } }, body: { class: "red-stoneware" } });
    expect(calls()).toBe(3);
  });

  it("tries again when the body breaks off", async () => {
    const broken = () =>
      new Response(
        new ReadableStream({
          start(controller) {
            controller.enqueue(new TextEncoder().encode('{"status":'));
            controller.error(new TypeError("terminated"));
          },
        }),
      );
    const { client, calls } = playing([broken, good]);
    await expect(client.health()).resolves.toEqual({ status: "ok" });
    expect(calls()).toBe(2);
  });

  it("gives up after two more tries, or as many as it is told", async () => {
    const three = playing([status(503)]);
    await expect(three.client.health()).rejects.toBeInstanceOf(ServerError);
    expect(three.calls()).toBe(3);
    const one = playing([reset]);
    await expect(one.client.health({ maxRetries: 0 })).rejects.toBeInstanceOf(ConnectionError);
    expect(one.calls()).toBe(1);
  });

  it("says what lay under a failed connection", async () => {
    const { client } = playing([reset]);
    await expect(client.health({ maxRetries: 0 })).rejects.toThrow("read ECONNRESET");
  });

  it("does not try an answer again that is not JSON", async () => {
    const { client, calls } = playing([() => new Response("<h1>Hello</h1>")]);
    await expect(client.health()).rejects.toMatchObject({ name: "UnreadableAnswerError" });
    expect(calls()).toBe(1);
  });
});

describe("how long it waits", () => {
  it("takes a random share of 0.5 s doubling to 8 s", async () => {
    const { client, pauses } = playing([status(503)], 0.5);
    await expect(client.health({ maxRetries: 6 })).rejects.toThrow();
    // derived (arithmetic): half of 0.5, 1, 2, 4, 8, 8 s
    expect(pauses).toEqual([250, 500, 1000, 2000, 4000, 4000]);
    expect(backoffMs(3, null, () => 0.5)).toBe(1000);
  });

  it("obeys Retry-After in seconds", async () => {
    const { client, pauses } = playing([status(429, { "retry-after": "7" }), good]);
    await client.health();
    expect(pauses).toEqual([7000]);
    expect(retryAfterMs(new Headers({ "retry-after": "2" }))).toBe(2000);
  });

  it("obeys Retry-After as a date, read against the answer's own clock", async () => {
    // Date format: RFC 9110, 5.6.7
    const headers = { date: "Wed, 21 Oct 2015 07:28:00 GMT", "retry-after": "Wed, 21 Oct 2015 07:28:05 GMT" };
    const { client, pauses } = playing([status(503, headers), good]);
    await client.health();
    expect(pauses).toEqual([5000]);
  });

  it.each(["soon", "", "-3"])("falls back on its own pause when Retry-After is %j", async (given) => {
    expect(retryAfterMs(new Headers({ "retry-after": given }))).toBeNull();
  });

  it("does not sit through more than a minute: it says how long was asked for", async () => {
    const { client, calls } = playing([status(429, { "retry-after": "3600" })]);
    const error = await failureOf(client.health());
    expect(error).toBeInstanceOf(RateLimitedError);
    expect(error.retryAfterMs).toBe(3_600_000);
    expect(calls()).toBe(1);
  });
});

describe("how it ends early", () => {
  const deaf = () => new Promise<Response>(() => {});

  it("times out even when fetch ignores its signal, and does not make a slow service slower", async () => {
    const { client, calls } = playing([deaf]);
    await expect(client.health({ timeoutMs: 20 })).rejects.toBeInstanceOf(TimeoutError);
    expect(calls()).toBe(1);
  });

  it("times out on a body that stalls", async () => {
    const { client } = playing([() => new Response(new ReadableStream({}))]);
    await expect(client.health({ timeoutMs: 20 })).rejects.toBeInstanceOf(TimeoutError);
  });

  it("stops when the caller aborts, and keeps the reason", async () => {
    const { client } = playing([deaf]);
    const controller = new AbortController();
    const call = client.health({ signal: controller.signal });
    controller.abort("lunch");
    await expect(call).rejects.toBeInstanceOf(AbortedError);
    await expect(call).rejects.toMatchObject({ cause: "lunch" });
  });

  it("does not even ask when the signal was aborted before", async () => {
    const { client, calls } = playing([good]);
    await expect(client.health({ signal: AbortSignal.abort() })).rejects.toBeInstanceOf(AbortedError);
    expect(calls()).toBe(0);
  });

  it("stops while it waits to try again", async () => {
    const controller = new AbortController();
    const client = new Ringtrue({
      fetch: status(503),
      sleep: () => {
        controller.abort();
        return new Promise(() => {});
      },
    });
    await expect(client.health({ signal: controller.signal })).rejects.toBeInstanceOf(AbortedError);
  });

  it("ends a long pause when the signal's own time is up, and says so in the cause", async () => {
    const busy = () => new Response("", { status: 503, headers: { "retry-after": "60" } });
    const call = new Ringtrue({ fetch: busy }).health({ signal: AbortSignal.timeout(20) });
    await expect(call).rejects.toMatchObject({ name: "AbortedError", cause: { name: "TimeoutError" } });
  });

  it("leaves no listener behind on the caller's signal", async () => {
    const { client } = playing([good]);
    const signal = new AbortController().signal;
    let listening = 0;
    const { addEventListener: add, removeEventListener: remove } = signal;
    signal.addEventListener = (...given: unknown[]) => {
      listening += 1;
      add.apply(signal, given as never);
    };
    signal.removeEventListener = (...given: unknown[]) => {
      listening -= 1;
      remove.apply(signal, given as never);
    };
    for (let i = 0; i < 3; i++) await client.health({ signal });
    expect(listening).toBe(0);
  });
});
