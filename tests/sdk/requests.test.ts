/** What goes over the wire, and how failures come back. */
import * as sdk from "@ringtrue/sdk";
import { describe, expect, it, vi } from "vitest";
import { failureOf } from "./failure.ts";

type Sent = { url: string; init: RequestInit };

function recording(answer: (sent: Sent) => Response, options: sdk.ClientOptions = {}) {
  const sent: Sent[] = [];
  const client = new sdk.Ringtrue({
    ...options,
    fetch: (url, init) => {
      sent.push({ url, init });
      return answer({ url, init });
    },
  });
  return { client, sent };
}

const page = (data: unknown[], nextCursor: string | null) => Response.json({ data, nextCursor });

describe("requests", () => {
  it("hand fetch an address and plain init, never a Request", async () => {
    const { client, sent } = recording(() => Response.json({}), {
      baseUrl: "https://larch-lane.example/kiln/",
      apiKey: "k",
      headers: { "X-Studio": "Larch Lane" },
    });
    await client.fit.check(
      { glaze: { expansion: { value: 6 } }, body: { class: "red-stoneware" } },
      { headers: { "x-studio": "Thaw" } },
    );
    expect(sent[0]!.url).toBe("https://larch-lane.example/kiln/v1/fit");
    expect(sent[0]!.init).toMatchObject({
      method: "POST",
      body: '{"glaze":{"expansion":{"value":6}},"body":{"class":"red-stoneware"}}',
      headers: {
        accept: "application/json",
        authorization: "Bearer k",
        "content-type": "application/json",
        "x-studio": "Thaw",
      },
    });
    expect(Object.getPrototypeOf(sent[0]!.init.headers)).toBe(Object.prototype);
  });

  it("let a header given for a call win over the client's, whatever its capitals", async () => {
    const { client, sent } = recording(() => Response.json({}), { apiKey: "k", headers: { Accept: "text/plain" } });
    await client.health({ headers: { Authorization: "Bearer other" } });
    expect(sent[0]!.init.headers).toEqual({ accept: "text/plain", authorization: "Bearer other" });
  });

  it("ask the port that the service listens on when no address is given", async () => {
    const { client, sent } = recording(() => Response.json({}));
    await client.health();
    expect(sent[0]!.url).toBe("http://localhost:4600/health");
    expect(sent[0]!.init.body).toBeUndefined();
  });

  it("escape ids, and refuse ids that would ask for something else", async () => {
    const { client, sent } = recording(() => Response.json({}));
    await client.materials.get("a/b?c");
    expect(sent[0]!.url).toBe("http://localhost:4600/v1/materials/a%2Fb%3Fc");
    for (const id of ["", ".", ".."]) expect(() => client.bodies.get(id)).toThrow(sdk.RingtrueError);
  });

  it("give status, headers and request id on demand", async () => {
    const { client } = recording(() => Response.json({ status: "ok" }, { headers: { "x-request-id": "thaw-1" } }));
    const { data, response, requestId } = await client.health().withResponse();
    expect([data, response.status, requestId]).toEqual([{ status: "ok" }, 200, "thaw-1"]);
  });
});

describe("a call that is on its way out", () => {
  // Headers as in RFC 9745, sections 2.1 and 3, and RFC 8594, section 3.
  const going = {
    deprecation: "@1688169599",
    sunset: "Sun, 30 Jun 2024 23:59:59 GMT",
    link: '</reference>; rel="service-doc", <https://studio.example/why>; type="text/html"; rel="deprecation"',
  };
  const answered = (headers: Record<string, string>) => () => Response.json({}, { headers });
  const read = {
    call: "GET /v1/materials",
    since: new Date("2023-06-30T23:59:59Z"),
    sunset: new Date("2024-06-30T23:59:59Z"),
    about: "https://studio.example/why",
  };

  it("is told with the response, and to whoever asked to be told, streams included", async () => {
    const told: sdk.Deprecation[] = [];
    const onDeprecated = (one: sdk.Deprecation) => told.push(one);
    const { client } = recording(answered(going), { onDeprecated });
    expect((await client.materials.list({ limit: 3 }).withResponse()).deprecation).toEqual(read);
    const lines = recording(() => new Response('{"line":1,"result":{}}\n', { headers: going }), { onDeprecated });
    for await (const _ of lines.client.fit.stream([{} as sdk.FitLine]));
    expect(told).toEqual([read, { ...read, call: "POST /v1/fit/stream" }]);
  });

  it("is put on the console once where nobody asked, whatever is named", async () => {
    const warn = vi.spyOn(console, "warn").mockImplementation(() => {});
    const { client } = recording(answered(going));
    await client.bodies.get("red-stoneware");
    await client.bodies.get("porcelain");
    expect(warn.mock.calls).toEqual([
      [
        "Ringtrue: GET /v1/bodies/red-stoneware is deprecated since 2023-06-30 and gone after 2024-06-30. See https://studio.example/why",
      ],
    ]);
    warn.mockRestore();
  });

  it.each([
    [{ sunset: going.sunset }, { since: null, sunset: read.sunset, about: null }],
    [{ deprecation: going.deprecation }, { since: read.since, sunset: null, about: null }],
    [
      { deprecation: "?1", sunset: "soon", link: "</x>; rel=next" },
      { since: null, sunset: null, about: null },
    ],
    [
      { deprecation: going.deprecation, link: "</x>; rel=deprecation" },
      { ...read, sunset: null, about: "/x" },
    ],
  ])("may be said in part: %j", async (headers, expected) => {
    const { client } = recording(answered(headers as Record<string, string>), { onDeprecated: () => {} });
    const { deprecation } = await client.health().withResponse();
    expect(deprecation).toEqual({ ...expected, call: "GET /health" });
  });

  it("is null for all others", async () => {
    const { client } = recording(answered({ link: "</x>; rel=next" }));
    expect((await client.health().withResponse()).deprecation).toBeNull();
  });
});

describe("lists", () => {
  const three = ({ url }: Sent) => {
    const cursor = new URL(url).searchParams.get("cursor");
    return cursor === null ? page([1, 2], "c 2") : page([3], null);
  };

  it("give one page when awaited", async () => {
    const { client, sent } = recording(three);
    expect(await client.materials.list({ limit: 2 })).toEqual({ data: [1, 2], nextCursor: "c 2" });
    expect(sent.map(({ url }) => url)).toEqual(["http://localhost:4600/v1/materials?limit=2"]);
  });

  it("give everything when iterated, keeping the filters", async () => {
    const { client, sent } = recording(three);
    const all: unknown[] = [];
    for await (const item of client.materials.list({ limit: 2, q: undefined })) all.push(item);
    expect(all).toEqual([1, 2, 3]);
    expect(sent[1]!.url).toBe("http://localhost:4600/v1/materials?limit=2&cursor=c+2");
  });

  it("fetch no page that nobody came for", async () => {
    const { client, sent } = recording(three);
    for await (const item of client.materials.list()) if (item) break;
    expect(sent).toHaveLength(1);
  });
});

describe("failures", () => {
  it.each([
    [400, sdk.BadRequestError],
    [404, sdk.NotFoundError],
    [401, sdk.UnauthorizedError],
    [405, sdk.MethodNotAllowedError],
    [413, sdk.PayloadTooLargeError],
    [415, sdk.UnsupportedMediaTypeError],
    [422, sdk.UnprocessableError],
    [429, sdk.RateLimitedError],
    [500, sdk.ServerError],
    [503, sdk.ServerError],
    [418, sdk.ApiError],
  ] as const)("%i comes back as its own class", async (status, Class) => {
    const issues = [{ pointer: "/glaze/recipe/0/parts", message: "`parts` is -3. It must be 0 or more." }];
    const { client } = recording(() =>
      Response.json(
        {
          type: "https://ringtrue.example/problems/x",
          title: "No",
          status,
          detail: "One field needs mending.",
          requestId: "r-1",
          issues,
        },
        { status, headers: { "content-type": "application/problem+json", "x-request-id": "r-1" } },
      ),
    );
    const error = await failureOf(client.health({ maxRetries: 0 }));
    expect(error.constructor).toBe(Class);
    expect(error).toBeInstanceOf(sdk.RingtrueError);
    expect(error).toMatchObject({ status, issues, requestId: "r-1" });
    expect(error.message).toContain("/glaze/recipe/0/parts: `parts` is -3.");
  });

  it("survives a problem document that is not quite one", async () => {
    const { client } = recording(() => Response.json({ title: "No", issues: "none", status: "x" }, { status: 400 }));
    await expect(client.health()).rejects.toMatchObject({ status: 400, issues: [], requestId: null });
  });

  it("keeps the status when something in front of the service answers with a page", async () => {
    const { client } = recording(
      () => new Response("<h1>Bad gateway</h1>", { status: 502, statusText: "Bad Gateway" }),
    );
    const error = await failureOf(client.health({ maxRetries: 0 }));
    expect(error).toBeInstanceOf(sdk.ServerError);
    expect(error).toMatchObject({ status: 502, issues: [], requestId: null, problem: { title: "Bad Gateway" } });
  });
});
