/** Keys, limits, other origins, readiness, logs and counts: what whoever runs the service can set. */
import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { type AppOptions, createApp } from "../../api/app.ts";
import type { RequestLine } from "../../api/http/request-log.ts";
import { problemOf, THAW_TEXT } from "./support.ts";

const sha256 = (key: string) => createHash("sha256").update(key).digest("hex");
const NDJSON = { "content-type": "application/x-ndjson" };
const asking = (headers: Record<string, string> = {}): RequestInit => ({
  method: "POST",
  body: THAW_TEXT,
  headers: { "content-type": "application/json", ...headers },
});

/** Lines that come only when told, so that a stream stays under way. */
function slowLines() {
  let controller!: ReadableStreamDefaultController<Uint8Array>;
  const body = new ReadableStream<Uint8Array>({
    start(given) {
      controller = given;
    },
  });
  return {
    init: { method: "POST", body, headers: NDJSON, duplex: "half" } as RequestInit,
    send: () => controller.enqueue(new TextEncoder().encode(`${THAW_TEXT}\n`)),
    end: () => controller.close(),
  };
}

/** An app with a clock of its own that keeps its log. */
function logged(settings: AppOptions["settings"] = {}) {
  const lines: RequestLine[] = [];
  const clock = { ms: Date.UTC(2026, 10, 25, 9, 30) };
  const app = createApp({
    settings: { log: true, ...settings },
    log: (line) => lines.push(line),
    now: () => clock.ms,
  });
  return { app, lines, clock };
}

describe("keys", () => {
  const app = createApp({ settings: { keyHashes: [sha256("old"), sha256("new")], metrics: true } });
  const ask = (path: string, authorization?: string) =>
    app.request(path, authorization === undefined ? {} : { headers: { authorization } });

  it("let every current key in, so that an old one can be changed for a new one", async () => {
    for (const key of ["Bearer old", "Bearer new", "bearer new"]) {
      expect((await ask("/v1/bodies/red-stoneware", key)).status).toBe(200);
    }
  });

  it.each([
    undefined,
    "",
    "Bearer",
    "Bearer ",
    "Bearer older",
    "Bearer OLD",
    "Basic old",
    "old",
    `Bearer ${sha256("old")}`,
    `Bearer ${"x".repeat(100_000)}`,
  ])("keep out %s", async (authorization) => {
    const response = await ask("/v1/bodies/red-stoneware", authorization);
    expect(response.headers.get("www-authenticate")).toBe('Bearer realm="ringtrue"');
    expect(await problemOf(response)).toMatchObject({ status: 401, type: "https://ringtrue.example/problems/no-key" });
  });

  it("guard every call and the counts, and leave health, description and pages open", async () => {
    for (const path of ["/v1/fit", "/v1/nowhere", "/metrics"]) expect((await ask(path)).status).toBe(401);
    for (const path of ["/health", "/ready", "/openapi.json", "/"]) expect((await ask(path)).status).toBe(200);
  });
});

describe("the rate limit", () => {
  const limited = (addressOf?: AppOptions["addressOf"]) => {
    const clock = { ms: 1e12 };
    const app = createApp({ settings: { perMinute: 3 }, now: () => clock.ms, ...(addressOf ? { addressOf } : {}) });
    const ask = (headers = {}) => app.request("/v1/bodies/red-stoneware", { headers });
    return { app, ask, clock };
  };

  it("says what is left, refuses the fourth, and starts anew after the minute", async () => {
    const { ask, clock } = limited();
    for (const left of [2, 1, 0]) {
      const response = await ask();
      expect(response.status).toBe(200);
      // Header fields and their grammar: IETF draft-ietf-httpapi-ratelimit-headers.
      expect(response.headers.get("ratelimit-policy")).toBe('"minute";q=3;w=60');
      expect(response.headers.get("ratelimit")).toBe(`"minute";r=${left};t=60`);
    }
    clock.ms += 15_500;
    const refused = await ask();
    expect(refused.headers.get("retry-after")).toBe("45");
    expect(refused.headers.get("ratelimit")).toBe('"minute";r=0;t=45');
    expect(await problemOf(refused)).toMatchObject({
      status: 429,
      detail: expect.stringContaining("3 requests a minute. Send the next one in 45 s."),
    });
    clock.ms += 44_500;
    expect((await ask()).status).toBe(200);
  });

  it("counts callers apart, by address or key", async () => {
    const { ask } = limited((c) => c.req.header("x-from"));
    for (let i = 0; i < 3; i++) expect((await ask({ "x-from": "a" })).status).toBe(200);
    expect((await ask({ "x-from": "a" })).status).toBe(429);
    expect((await ask({ "x-from": "b" })).status).toBe(200);
    const app = createApp({ settings: { perMinute: 1, keyHashes: [sha256("a"), sha256("b")] } });
    const statuses = ["a", "a", "b"].map(async (key) => {
      const headers = { authorization: `Bearer ${key}` };
      return (await app.request("/v1/bodies/red-stoneware", { headers })).status;
    });
    expect((await Promise.all(statuses)).sort()).toEqual([200, 200, 429]);
  });

  it("leaves health and pages alone", async () => {
    const { app } = limited();
    for (let i = 0; i < 5; i++) expect((await app.request("/health")).status).toBe(200);
  });

  it("remembers ten thousand callers and no more, whatever addresses are made up", async () => {
    const app = createApp({ settings: { perMinute: 1 }, now: () => 1e12, addressOf: (c) => c.req.header("x-from") });
    const ask = async (from: string) => (await app.request("/v1/x", { headers: { "x-from": from } })).status;
    expect([await ask("first"), await ask("first")]).toEqual([404, 429]);
    for (let i = 1; i < 10_000; i++) await ask(`made up ${i}`);
    expect(await ask("first")).toBe(429);
    await ask("one more");
    expect(await ask("first")).toBe(404);
  }, 60_000);
});

describe("how much is under way at once", () => {
  /** A question whose body comes only when told. */
  function slowQuestion() {
    const slow = slowLines();
    return { ...slow, init: { ...slow.init, headers: { "content-type": "application/json" } } };
  }
  const settled = (answer: Promise<Response>) =>
    Promise.race([answer.then(({ status }) => status), new Promise((resolve) => setTimeout(resolve, 20, "waiting"))]);

  it("is not filled by slow senders: of too many, the one that takes longest goes", async () => {
    const app = createApp({ settings: { mostAtOnce: 2 } });
    const slow = [slowQuestion(), slowQuestion(), slowQuestion()];
    const answers = slow.slice(0, 2).map(({ init }) => app.request("/v1/fit", init) as Promise<Response>);
    expect(await Promise.all(answers.map(settled))).toEqual(["waiting", "waiting"]);
    // Whoever sends at once is let in past them.
    expect(await settled(app.request("/v1/bodies/red-stoneware") as Promise<Response>)).toBe(200);

    answers.push(app.request("/v1/fit", slow[2]!.init) as Promise<Response>);
    expect(await Promise.all(answers.map(settled))).toEqual([503, "waiting", "waiting"]);
    const refused = await answers[0]!;
    expect(refused.headers.get("retry-after")).toBe("1");
    expect((await problemOf(refused)).detail).toContain("this one has taken longest");

    for (const { send, end } of slow.slice(1)) {
      send();
      end();
    }
    expect((await Promise.all(answers.slice(1))).map(({ status }) => status)).toEqual([200, 200]);
    // Nothing was counted twice or forgotten.
    for (let i = 0; i < 5; i++) expect((await app.request("/v1/fit", asking())).status).toBe(200);
  });

  it("is not filled by what no route takes, nor by streams that end more than once", async () => {
    const app = createApp({ settings: { mostAtOnce: 2 } });
    for (let i = 0; i < 5; i++) {
      expect((await app.request("/v1/fitt")).status).toBe(404);
      expect((await app.request("/v1/fit", { method: "PUT" })).status).toBe(405);
    }
    // A caller who goes while a line is being awaited: the stream is cancelled, and what was awaited ends as well.
    for (let i = 0; i < 5; i++) {
      const reader = (await app.request("/v1/fit/stream", slowLines().init)).body!.getReader();
      const read = reader.read();
      await reader.cancel();
      await read;
    }
    // Neither more places are taken nor more given back than there are.
    const [first, second] = [slowLines(), slowLines()];
    expect((await app.request("/v1/fit/stream", first.init)).status).toBe(200);
    expect((await app.request("/v1/fit", asking())).status).toBe(200);
    expect((await app.request("/v1/fit/stream", second.init)).status).toBe(503);
  });

  it("is filled to the half by streams and no more, so that single questions are still answered", async () => {
    const app = createApp({ settings: { mostAtOnce: 3 } });
    const streams = [slowLines(), slowLines(), slowLines()];
    const answers = [];
    for (const { init } of streams) answers.push(await app.request("/v1/fit/stream", init));
    expect(answers.map(({ status }) => status)).toEqual([200, 200, 503]);
    expect((await problemOf(answers[2]!)).detail).toContain("2 streams");
    expect((await app.request("/v1/fit", asking())).status).toBe(200);
    await answers[0]!.body!.cancel();
    expect((await app.request("/v1/fit/stream", slowLines().init)).status).toBe(200);
    expect((await app.request("/v1/fit/stream", slowLines().init)).status).toBe(503);
  });

  it("is not held by streams that stand still: after ten seconds the one longest in arrears gives way", async () => {
    const { app, lines, clock } = logged({ mostAtOnce: 4 });
    const ask = async () => {
      const { send, init } = slowLines();
      const answer = await app.request("/v1/fit/stream", init);
      const reader = answer.body!.getReader();
      return { status: answer.status, read: () => reader.read(), send };
    };
    const [still, moving] = [await ask(), await ask()];
    clock.ms += 9_900;
    expect((await ask()).status).toBe(503);
    clock.ms += 50;
    moving.send();
    // An answer of some 13 kB, of which ten seconds can be paid.
    expect((await moving.read()).value!.byteLength).toBeGreaterThan(10_240);
    clock.ms += 100;
    const third = await ask();
    expect(third.status).toBe(200);
    await expect(still.read()).rejects.toThrow("Others were waiting");
    expect(lines.at(-1)).toMatchObject({ path: "/v1/fit/stream", status: 200, ended: "gave way" });

    // Nobody is let in past streams that move.
    clock.ms += 9_800;
    expect((await ask()).status).toBe(503);
    third.send();
    await third.read();
    // Ten seconds and no more, however much was sent before.
    clock.ms += 200;
    const fourth = await ask();
    expect(fourth.status).toBe(200);
    await expect(moving.read()).rejects.toThrow("Others were waiting");
    third.send();
    expect((await third.read()).done).toBe(false);
    expect((await app.request("/v1/fit", asking())).status).toBe(200);
  });

  it("turns away what is too much, a stream counting until its last line is out", async () => {
    // Only drawings and searches wait for something beside their body; here a picture waits for its drawer.
    let drawn!: (png: Uint8Array<ArrayBuffer>) => void;
    const drawPng = () => new Promise<Uint8Array<ArrayBuffer>>((resolve) => (drawn = resolve));
    const app = createApp({ settings: { mostAtOnce: 2 }, drawPng });
    const slow = slowLines();
    const reader = (await app.request("/v1/fit/stream", slow.init)).body!.getReader();
    slow.send();
    await reader.read();
    const picture = app.request("/v1/fit", asking({ accept: "image/png" })) as Promise<Response>;
    expect(await settled(picture)).toBe("waiting");

    const refused = await app.request("/v1/fit", asking());
    expect(refused.headers.get("retry-after")).toBe("1");
    expect(await problemOf(refused)).toMatchObject({ status: 503, detail: expect.stringContaining("2 questions") });
    expect((await app.request("/health")).status).toBe(200);

    slow.end();
    expect((await reader.read()).done).toBe(true);
    expect((await app.request("/v1/fit", asking())).status).toBe(200);
    // One place is free: a question, refused or not, gives its own back.
    for (let i = 0; i < 5; i++) expect((await app.request("/v1/fit", asking({ accept: "x/y" }))).status).toBe(406);
    drawn(new Uint8Array(1));
    expect((await picture).status).toBe(200);
  });

  it("gives the place of a stream that broke off to the next", async () => {
    const app = createApp({ settings: { mostAtOnce: 1 } });
    const body = new ReadableStream({ pull: (controller) => controller.error(new Error("gone")) });
    const broken = await app.request("/v1/fit/stream", {
      method: "POST",
      body,
      headers: NDJSON,
      duplex: "half",
    } as never);
    await expect(broken.text()).rejects.toThrow("gone");
    expect((await app.request("/v1/fit", asking())).status).toBe(200);
  });
});

describe("pages of other origins", () => {
  const preflight = {
    method: "OPTIONS",
    headers: { origin: "https://studio.example", "access-control-request-method": "POST" },
  };

  it("may not read answers unless told", async () => {
    const app = createApp();
    const answers = [await app.request("/v1/fit", preflight), await app.request("/v1/fit", asking(preflight.headers))];
    for (const { headers } of answers) {
      expect([...headers.keys()].filter((name) => name.startsWith("access-control"))).toEqual([]);
      expect(headers.get("cross-origin-resource-policy")).toBe("same-origin");
    }
    expect(answers[0]!.status).toBe(204);
    expect(answers[0]!.headers.get("allow")).toBe("OPTIONS, POST");
  });

  it("may where their origin is named, and only those", async () => {
    const app = createApp({ settings: { origins: ["https://studio.example"], keyHashes: [sha256("k")] } });
    const named = await app.request("/v1/fit", preflight);
    expect(named.status).toBe(204);
    expect(named.headers.get("access-control-allow-origin")).toBe("https://studio.example");
    const headers = { ...preflight.headers, origin: "https://other.example" };
    const other = await app.request("/v1/fit", { ...preflight, headers });
    expect(other.headers.get("access-control-allow-origin")).toBeNull();
  });

  it("may all where all are let, and see what they need", async () => {
    const app = createApp({ settings: { origins: ["*"], perMinute: 10 } });
    const answer = await app.request("/v1/fit", asking(preflight.headers));
    expect(answer.headers.get("access-control-allow-origin")).toBe("*");
    expect(answer.headers.get("access-control-expose-headers")).toBe(
      "x-request-id,etag,allow,x-sheets,retry-after,ratelimit,ratelimit-policy,deprecation,sunset,link",
    );
    expect(answer.headers.get("ratelimit")).toBe('"minute";r=9;t=60');
    expect((await app.request("/v1/fit", preflight)).headers.get("access-control-allow-methods")).toBe(
      "GET,HEAD,POST,OPTIONS",
    );
  });
});

describe("GET /ready", () => {
  it("says no once the service is told to stop, while health still says yes", async () => {
    let ready = true;
    const app = createApp({ ready: () => ready });
    expect(await (await app.request("/ready")).json()).toMatchObject({ status: "ready" });
    ready = false;
    const refused = await app.request("/ready");
    expect(refused.headers.get("retry-after")).toBe("5");
    expect(await problemOf(refused)).toMatchObject({ status: 503 });
    expect((await app.request("/health")).status).toBe(200);
  });
});

describe("the log", () => {
  it("has one line a request, with neither body, query, headers nor key in it", async () => {
    const { app, lines } = logged({ keyHashes: [sha256("secret")] });
    const secrets = { authorization: "Bearer secret", cookie: "secret=1", "x-request-id": "larch-1" };
    const question = { ...asking(secrets), body: THAW_TEXT.replace("{", '{"secret":1,') };
    await app.request("/v1/fit?secret=1", question);
    expect(lines).toEqual([
      {
        time: "2026-11-25T09:30:00.000Z",
        requestId: "larch-1",
        method: "POST",
        path: "/v1/fit",
        status: 422,
        ms: 0,
        ended: "answered",
        key: sha256("secret").slice(0, 8),
      },
    ]);
    expect(JSON.stringify(lines)).not.toContain("secret");
  });

  it("tells of a stream at its end, and how it ended", async () => {
    const { app, lines, clock } = logged();
    const slow = slowLines();
    const reader = (await app.request("/v1/fit/stream", slow.init)).body!.getReader();
    slow.send();
    await reader.read();
    expect(lines).toEqual([]);
    clock.ms += 1234;
    slow.end();
    await reader.read();
    expect(lines).toMatchObject([{ path: "/v1/fit/stream", status: 200, ms: 1234, ended: "answered" }]);
    await (await app.request("/v1/fit/stream", slowLines().init)).body!.cancel();
    expect(lines[1]).toMatchObject({ ended: "cancelled" });
  });

  it("keeps to one line whatever the address holds", async () => {
    const { app, lines } = logged();
    await app.request(`/v1/%0A{"status":200}%0D${"x".repeat(5000)}`);
    expect(lines[0]!.path.length).toBe(200);
    expect(JSON.stringify(lines[0])).not.toMatch(/[\r\n]/);
  });

  it("is written only where it is on", async () => {
    const { app, lines } = logged({ log: false });
    await app.request("/health");
    expect(lines).toEqual([]);
  });
});

describe("GET /metrics", () => {
  it("is there only where it is on", async () => {
    expect((await createApp().request("/metrics")).status).toBe(404);
  });

  it("counts by route, method and status, never by what was asked for", async () => {
    const app = createApp({ settings: { metrics: true }, process: "2" });
    await app.request("/v1/fit", asking());
    await app.request("/v1/fit", asking({ accept: "image/png" }));
    for (const id of ["whiting", 'no"thing\n', "kaolin"]) await app.request(`/v1/materials/${encodeURIComponent(id)}`);
    for (const path of ["/a", "/b", "/c%22%0Ad"]) await app.request(path);
    await app.request("/health", { method: "BREW" });
    const response = await app.request("/metrics");
    expect(response.headers.get("content-type")).toBe("text/plain; version=0.0.4; charset=utf-8");
    const text = await response.text();
    const counts = [...text.matchAll(/^ringtrue_requests_total(.*)$/gm)].map(([, one]) => one);
    expect(counts.sort()).toEqual([
      '{method="GET",route="/v1/materials/:id",status="200",process="2"} 2',
      '{method="GET",route="/v1/materials/:id",status="404",process="2"} 1',
      '{method="GET",route="unmatched",status="404",process="2"} 3',
      '{method="POST",route="/v1/fit",status="200",process="2"} 1',
      '{method="POST",route="/v1/fit",status="406",process="2"} 1',
      '{method="other",route="unmatched",status="405",process="2"} 1',
    ]);
    expect(text).toContain('ringtrue_requests_under_way{process="2"} 1');
    // Text exposition format 0.0.4: a comment, or a name, labels and a number, and nothing else.
    for (const line of text.trimEnd().split("\n")) {
      expect(line).toMatch(/^(# (HELP|TYPE) ringtrue_\w+ .+|ringtrue_\w+(\{(\w+="[^"\n]*",?)+\})? [\d.e+-]+)$/);
    }
  });

  it("adds up its time classes", async () => {
    let ms = 0;
    const app = createApp({ settings: { metrics: true }, now: () => (ms += 3) });
    for (let i = 0; i < 4; i++) await app.request("/health");
    const text = await (await app.request("/metrics")).text();
    const bucket = (le: string) => Number(new RegExp(`le="${le.replace("+", "\\+")}"} (\\d+)`).exec(text)?.[1]);
    expect([bucket("0.0025"), bucket("0.005"), bucket("10"), bucket("+Inf")]).toEqual([0, 4, 4, 4]);
    expect(text).toContain('ringtrue_request_seconds_sum{route="/health"} 0.012');
  });
});
