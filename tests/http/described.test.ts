/** What the service really sends, judged by the description it serves: every example and every documented failure. */
import { afterEach, describe, expect, it, vi } from "vitest";
import { type AppOptions, createApp } from "../../api/app.ts";
import { type Call, callsOf, type Document, Judge } from "./described.ts";

const document = (await (await createApp().request("/openapi.json")).json()) as Document;
const judge = new Judge(document);
const calls = callsOf(document);
const named = calls.map((call) => [`${call.method} ${call.path}`, call] as const);
const JSON_TYPE = "application/json";
const NDJSON_TYPE = "application/x-ndjson";
const PROBLEM_TYPE = "application/problem+json";

afterEach(() => void vi.useRealTimers());

/** The address of a call with the examples of its parameters filled in. */
function addressOf({ path, operation: { parameters = [] } }: Call, extra: Record<string, string> = {}): string {
  const query = new URLSearchParams(extra);
  let address = path;
  for (const { name, in: place, schema } of parameters) {
    const example = schema.examples?.[0];
    if (place === "path") address = address.replace(`{${name}}`, encodeURIComponent(String(example)));
  }
  return query.size > 0 ? `${address}?${query}` : address;
}

/** The request that a call's own example makes. */
function requestOf({ method, operation }: Call, changes: RequestInit = {}): RequestInit {
  const [type, media] = Object.entries(operation.requestBody?.content ?? {})[0] ?? [];
  if (!type) return { method, ...changes };
  return { method, body: JSON.stringify(media?.example), headers: { "content-type": type }, ...changes };
}

/** Judges an answer: its status and type must be described, its content must fit. Lines are judged one by one. */
async function judged(call: Call, response: Response): Promise<string[]> {
  const type = response.headers.get("content-type")?.split(";")[0] ?? "";
  const told = call.operation.responses[String(response.status)];
  const media = told?.content?.[type];
  if (!media) return [`${response.status} as ${type} is not described`];
  const text = await response.text();
  if (type === NDJSON_TYPE)
    return text
      .trimEnd()
      .split("\n")
      .flatMap((line) => judge.faults(media.schema, JSON.parse(line)));
  if (!type.endsWith("json")) return text === "" ? ["empty"] : [];
  return judge.faults(media.schema, JSON.parse(text));
}

describe("the judge", () => {
  const problem = { $ref: "#/components/schemas/Problem" };
  const good = { type: "a", title: "b", status: 422, detail: "c", requestId: "d" };
  it("passes what fits and tells what does not", () => {
    expect(judge.faults(problem, good)).toEqual([]);
    expect(judge.faults(problem, { ...good, status: 200 })).toEqual([
      '/status must be >= 400 {"comparison":">=","limit":400}',
    ]);
    expect(judge.faults(problem, { ...good, mood: "sad" })[0]).toContain("must NOT have additional properties");
    expect(judge.faults(problem, { ...good, title: undefined })[0]).toContain("must have required property 'title'");
    expect(judge.faults(problem, { ...good, issues: [{ pointer: 1 }] }).length).toBeGreaterThan(1);
  });
});

describe("examples", () => {
  it.each(named)("%s: its own example is what it says it takes, and is answered as described", async (_, call) => {
    for (const { schema, example } of Object.values(call.operation.requestBody?.content ?? {})) {
      expect(example).toBeDefined();
      expect(judge.faults(schema, example)).toEqual([]);
    }
    const response = await createApp().request(addressOf(call), requestOf(call));
    expect(response.status).toBe(200);
    expect(await judged(call, response)).toEqual([]);
  });

  it.each(named)("%s: examples of failures fit their own schema", (_, { operation }) => {
    const failures = Object.entries(operation.responses).filter(([status]) => Number(status) >= 400);
    expect(failures.length).toBeGreaterThan(1);
    for (const [status, { content }] of failures) {
      const { schema, example } = content![PROBLEM_TYPE]!;
      expect(judge.faults(schema, example)).toEqual([]);
      expect((example as { status: number }).status).toBe(Number(status));
    }
  });

  it.each(named.filter(([, { operation }]) => operation.parameters?.some((one) => one.in === "query")))(
    "%s: examples of query parameters are taken",
    async (_, call) => {
      for (const { name, in: place, schema } of call.operation.parameters ?? []) {
        if (place !== "query" || name === "cursor") continue;
        expect(schema.examples?.length, name).toBeGreaterThan(0);
        for (const example of schema.examples ?? []) {
          const response = await createApp().request(addressOf(call, { [name]: String(example) }), requestOf(call));
          expect([name, response.status]).toEqual([name, 200]);
          expect(await judged(call, response)).toEqual([]);
        }
      }
    },
  );
});

type Provoke = (call: Call) => Response | Promise<Response>;
const asked = (call: Call, options: AppOptions = {}, changes: RequestInit = {}) =>
  createApp(options).request(addressOf(call), requestOf(call, changes));
const typeOf = (call: Call) => Object.keys(call.operation.requestBody?.content ?? {})[0] ?? JSON_TYPE;
const endless = () => new ReadableStream({ pull: (controller) => controller.enqueue(new Uint8Array(65_536)) });

/** How to be answered with each status that the description knows. */
const provoke: Record<string, Provoke> = {
  400: (call) => asked(call, {}, { body: "{" }),
  401: (call) => asked(call, { settings: { keyHashes: ["0".repeat(64)] } }),
  404: (call) => createApp().request(addressOf(call).replace(/[^/]+$/, "no-such-name")),
  406: (call) => asked(call, {}, { headers: { "content-type": typeOf(call), accept: "audio/ogg" } }),
  408: async (call) => {
    vi.useFakeTimers();
    const response = asked(call, {}, { body: new ReadableStream(), duplex: "half" } as RequestInit);
    await vi.advanceTimersByTimeAsync(30_000);
    return response;
  },
  413: (call) => asked(call, {}, { body: endless(), duplex: "half" } as RequestInit),
  415: (call) => asked(call, {}, { headers: { "content-type": "text/plain" } }),
  422: (call) => {
    if (call.method === "GET") return Promise.resolve(createApp().request(addressOf(call, { nonsense: "1" })));
    return asked(call, {}, { body: "{}" });
  },
  429: async (call) => {
    const app = createApp({ settings: { perMinute: 1 } });
    await app.request(addressOf(call), requestOf(call));
    return app.request(addressOf(call), requestOf(call));
  },
  500: (call) => {
    const broken = () => {
      throw new Error("a fault of the service's own");
    };
    return asked(call, { addressOf: broken });
  },
  503: (call) =>
    call.path === "/ready" ? asked(call, { ready: () => false }) : asked(call, { settings: { mostAtOnce: 0 } }),
};

describe("every documented failure", () => {
  const cases = calls.flatMap((call) =>
    Object.keys(call.operation.responses)
      .filter((status) => Number(status) >= 400)
      .map((status) => [call.method, call.path, status, call] as const),
  );
  it("is provoked below", () => {
    expect(cases.length).toBeGreaterThan(80);
    expect([...new Set(cases.map(([, , status]) => status))].filter((status) => !provoke[status])).toEqual([]);
  });

  it.each(cases)("%s %s answers %s as described", async (_, __, status, call) => {
    const response = await provoke[status]!(call);
    expect(response.status).toBe(Number(status));
    const told = call.operation.responses[status]!;
    for (const header of Object.keys(told.headers ?? {})) expect(response.headers.get(header), header).toBeTruthy();
    const { type, title } = await response.clone().json();
    expect(await judged(call, response)).toEqual([]);
    expect({ type, title }).toMatchObject(
      (({ type, title }) => ({ type, title }))(told.content![PROBLEM_TYPE]!.example as { type: string; title: string }),
    );
  });
});
