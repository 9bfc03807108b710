/** How a call is taken out of service, shown on one that was made up for it. */
import { Ringtrue } from "@ringtrue/sdk";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { createApp } from "../../api/app.ts";
import { type Deprecation, deprecationNotice } from "../../api/http/deprecation.ts";
import { JSON_TYPE } from "../../api/http/media.ts";
import { answer, jsonAnswer, mount } from "../../api/http/operation.ts";

const going: Deprecation = { since: "2027-01-01", sunset: "2027-07-01", instead: "use GET /v1/bodies" };
const Kilns = z.strictObject({ kilns: z.number() }).meta({ id: "MadeUpKilns" });

/** The service with one more call, on its way out. */
function withKilns(deprecated: Deprecation) {
  const app = createApp({ settings: { perMinute: 3, origins: ["https://studio.example"] } });
  const responses = { 200: jsonAnswer(Kilns, "How many.") };
  const about = { operationId: "countKilns", tags: ["service"], summary: "Kilns", description: "Counts kilns." };
  const config = { method: "get", path: "/v1/kilns", ...about, responses, serves: JSON_TYPE, deprecated } as const;
  mount(app, config, (c) => answer(c, Kilns, { kilns: 2 }));
  return app;
}

describe("a call that goes", () => {
  // RFC 9745, section 2.1: a structured date. 2027-01-01T00:00:00Z is 1798761600: derived (arithmetic).
  const said = {
    deprecation: "@1798761600",
    // RFC 8594, section 3: an HTTP date. The first of July 2027 is a Thursday: derived (arithmetic).
    sunset: "Thu, 01 Jul 2027 00:00:00 GMT",
    link: '</reference>; rel="deprecation"; type="text/html"',
  };

  it("says so with every answer, refusals too", async () => {
    const app = withKilns(going);
    const good = await app.request("/v1/kilns");
    expect(await good.json()).toEqual({ kilns: 2 });
    expect(Object.fromEntries(good.headers)).toMatchObject(said);
    const refused = await app.request("/v1/kilns", { headers: { accept: "image/png" } });
    expect(refused.status).toBe(406);
    expect(Object.fromEntries(refused.headers)).toMatchObject(said);
  });

  it("lets pages of other origins read that", async () => {
    const answered = await withKilns(going).request("/v1/kilns", { headers: { origin: "https://studio.example" } });
    expect(answered.headers.get("access-control-expose-headers")).toMatch(/,deprecation,sunset,link$/);
  });

  it("says nothing of the sort on any other call", async () => {
    const other = await withKilns(going).request("/v1/bodies");
    expect([...other.headers.keys()].filter((name) => name in said)).toEqual([]);
  });

  it("is marked in the description, with the dates and what to do instead", async () => {
    const { paths } = await (await withKilns(going).request("/openapi.json")).json();
    const { deprecated, description, responses } = paths["/v1/kilns"].get;
    expect(deprecated).toBe(true);
    expect(description).toBe(
      "Deprecated since 2027-01-01, gone after 2027-07-01: use GET /v1/bodies.\n\nCounts kilns.",
    );
    expect(Object.keys(responses["200"].headers)).toEqual(["deprecation", "sunset", "link"]);
    expect(paths["/v1/bodies"].get.deprecated).toBeUndefined();
  });

  it("may go at a time that is not settled, and say more elsewhere", () => {
    const about = "https://studio.example/changes#kilns";
    const { sentence, headers } = deprecationNotice({ since: "2027-01-01", instead: "count them", about });
    expect(sentence).toBe("Deprecated since 2027-01-01: count them.");
    expect(headers).toEqual({ deprecation: said.deprecation, link: `<${about}>; rel="deprecation"; type="text/html"` });
  });

  it.each([
    [{ ...going, since: "2027-02-30" }, "2027-02-30 is no date."],
    [{ ...going, sunset: "soon" }, "soon is no date."],
    [{ ...going, sunset: "2026-12-31" }, "A sunset on 2026-12-31 comes before 2027-01-01."],
  ])("cannot be mounted with %j", (deprecated, message) => {
    expect(() => withKilns(deprecated)).toThrow(message);
  });

  it("reaches whoever uses the SDK", async () => {
    const app = withKilns(going);
    const told: unknown[] = [];
    const client = new Ringtrue({
      // The SDK has no call for kilns, so one that it has is answered by them.
      fetch: (_, init) => app.request("/v1/kilns", init),
      onDeprecated: (notice) => told.push(notice),
    });
    const { deprecation } = await client.health().withResponse();
    expect(deprecation).toEqual({
      call: "GET /health",
      since: new Date("2027-01-01"),
      sunset: new Date("2027-07-01"),
      about: "/reference",
    });
    expect(told).toEqual([deprecation]);
  });
});
