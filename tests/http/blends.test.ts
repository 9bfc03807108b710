import { describe, expect, it } from "vitest";
import { THAW_TO_HAIL } from "../../api/schemas/blends.ts";
import { BlendLine, BlendReport } from "../../api/schemas/index.ts";
import { Ringtrue } from "../../sdk/src/index.ts";
import { app, faults, post, problemOf } from "./support.ts";

const issuesOf = async (body: unknown) => (await problemOf(await post("/v1/blends", body))).issues ?? [];
const as = (accept: string) => ({ accept });

describe("POST /v1/blends", () => {
  it("answers as described, the same byte for byte", async () => {
    const texts = await Promise.all([1, 2].map(async () => (await post("/v1/blends", THAW_TO_HAIL)).text()));
    expect(texts[0]).toBe(texts[1]);
    const report = BlendReport.parse(JSON.parse(texts[0]!));
    expect(report.points).toHaveLength(5);
  });

  it("streams the same points, one JSON a line, and goes on where it broke off", async () => {
    const { points } = BlendReport.parse(await (await post("/v1/blends", THAW_TO_HAIL)).json());
    const lines = async (body: unknown) => {
      const response = await post("/v1/blends", body, as("application/x-ndjson"));
      expect(response.headers.get("content-type")).toBe("application/x-ndjson");
      return (await response.text())
        .trimEnd()
        .split("\n")
        .map((line) => BlendLine.parse(JSON.parse(line)));
    };
    expect(await lines(THAW_TO_HAIL)).toEqual(points);
    expect(await lines({ ...THAW_TO_HAIL, from: 3 })).toEqual(points.slice(3));
  });

  it("takes a dozen corners: whole, streamed from any tile, as a table and as a picture", async () => {
    const corners = Array.from({ length: 12 }, (_, c) => ({
      name: `Glaze ${c + 1}`,
      glaze: {
        recipe: [
          { material: "potash-feldspar", parts: 40 },
          { material: "silica", parts: 20 + c },
          { material: "whiting", parts: 20 },
        ],
      },
    }));
    const asked = { ...THAW_TO_HAIL, corners, steps: 2 };
    const { points } = BlendReport.parse(await (await post("/v1/blends", asked)).json());
    expect(points).toHaveLength(78); // C(13, 11) (derived)
    expect(points.find(({ shares }) => shares[0] === 0.5 && shares[1] === 0.5)!.label).toBe("A1B1");
    const text = await (await post("/v1/blends", { ...asked, from: 70 }, as("application/x-ndjson"))).text();
    expect(
      text
        .trimEnd()
        .split("\n")
        .map((line) => JSON.parse(line)),
    ).toEqual(points.slice(70));
    const rows = (await (await post("/v1/blends", asked, as("text/csv"))).text()).trimEnd().split("\r\n");
    expect(rows).toHaveLength(79);
    expect(rows[0]).toContain("Glaze 12 [%]");
    const svg = await (await post("/v1/blends", asked, as("image/svg+xml"))).text();
    expect(svg).toContain("Every mixture as a ring over its stress");
    const [issue] = await issuesOf({ ...asked, steps: 7 });
    expect(issue).toMatchObject({ pointer: "/steps", allowed: [1, 6] });
    expect(issue!.message).toContain("12 corners in 7 steps make 31824 points; I answer 20000 at most.");
  });

  it("gives a table and a picture", async () => {
    const csv = await (await post("/v1/blends", THAW_TO_HAIL, as("text/csv"))).text();
    expect(csv.trimEnd().split("\r\n")).toHaveLength(6);
    const svg = await post("/v1/blends", THAW_TO_HAIL, as("image/svg+xml"));
    expect(svg.headers.get("content-type")).toBe("image/svg+xml");
    expect(await svg.text()).toContain("<title");
  });

  it("stops working when the caller leaves", async () => {
    const response = await post("/v1/blends", { ...THAW_TO_HAIL, steps: 200 }, as("application/x-ndjson"));
    const reader = response.body!.getReader();
    await reader.read();
    await reader.cancel();
    expect((await reader.read()).done).toBe(true);
  });

  it.each([
    [{ ...THAW_TO_HAIL, corners: THAW_TO_HAIL.corners.slice(0, 1) }, "/corners"],
    [{ ...THAW_TO_HAIL, shape: "grid" }, "/corners"],
    [{ ...THAW_TO_HAIL, steps: 0 }, "/steps"],
    [{ ...THAW_TO_HAIL, from: 9 }, "/from"],
    [{ ...THAW_TO_HAIL, corners: [...THAW_TO_HAIL.corners, THAW_TO_HAIL.corners[0]], steps: 100 }, "/steps"],
    [{ ...THAW_TO_HAIL, stepps: 3 }, "/stepps"],
    [{ ...THAW_TO_HAIL, body: { class: "red-stonewear" } }, "/body/class"],
  ])("refuses %#", async (request, pointer) => {
    expect((await issuesOf(request)).map((issue) => issue.pointer)).toContain(pointer);
  });

  it("does not draw a part", async () => {
    const response = await post("/v1/blends", { ...THAW_TO_HAIL, count: 2 }, as("image/svg+xml"));
    expect((await problemOf(response)).issues![0]!.message).toContain("I draw whole blends");
  });

  it("had no faults of its own", () => expect(faults).toEqual([]));
});

describe("client.blends.stream", () => {
  it("goes on from the missing point when the connection breaks", async () => {
    let calls = 0;
    const client = new Ringtrue({
      sleep: async () => {},
      fetch: async (url, init) => {
        calls += 1;
        const response = await app.request(url as string, init);
        if (calls > 1) return response;
        const whole = await response.text();
        return new Response(whole.split("\n").slice(0, 2).join("\n"), response);
      },
    });
    const labels: string[] = [];
    for await (const { label } of client.blends.stream(THAW_TO_HAIL)) labels.push(label);
    expect(labels).toEqual(["1", "2", "3", "4", "5"]);
    expect(calls).toBe(2);
  });
});
