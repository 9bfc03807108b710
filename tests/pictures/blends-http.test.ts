/** Pictures of a blend over HTTP and through the SDK, as the engine draws it. */
import { type MapBlendData, Ringtrue, UnprocessableError } from "@ringtrue/sdk";
import { describe, expect, it } from "vitest";
import { app } from "../../api/app.ts";
import { judgeBlend } from "../../api/engine/blends/index.ts";
import { blendPicture } from "../../api/engine/pictures/index.ts";
import { THAW_TO_HAIL } from "../../api/schemas/blends.ts";
import { post, problemOf } from "../http/support.ts";

const svg = { accept: "image/svg+xml" };
const report = judgeBlend(THAW_TO_HAIL);
const client = new Ringtrue({ fetch: async (url, init) => app.request(url, init) });

describe("POST /v1/blends as a picture", () => {
  it("draws it as the engine does, in the look that is asked for", async () => {
    const response = await post("/v1/blends?theme=dark&width=350&standalone=false", THAW_TO_HAIL, svg);
    expect([response.status, response.headers.get("content-type")]).toEqual([200, "image/svg+xml"]);
    expect(await response.text()).toBe(
      blendPicture(report, "simplex", { theme: "dark", width: 350, standalone: false }),
    );
    const drawn = await (await post("/v1/blends", THAW_TO_HAIL, svg)).text();
    expect(drawn).toBe(blendPicture(report, "simplex", { standalone: true }));
  });

  it("draws a blend of five corners too", async () => {
    const five = { ...THAW_TO_HAIL, corners: [0, 1, 0, 1, 0].map((c) => THAW_TO_HAIL.corners[c]!), steps: 2 };
    const drawn = await (await post("/v1/blends", five, svg)).text();
    expect(drawn).toContain("Likeliest to stay sound");
  });

  it.each([
    ["theme=sepia", "/theme", "print"],
    ["width=400", "/width", "720"],
  ])("refuses ?%s", async (query, pointer, allowed) => {
    const problem = await problemOf(await post(`/v1/blends?${query}`, THAW_TO_HAIL, svg));
    expect([problem.status, problem.issues?.[0]?.pointer]).toEqual([422, pointer]);
    expect(JSON.stringify(problem.issues)).toContain(allowed);
  });

  it("comes through the SDK, and refuses what has no place on paper", async () => {
    const question = THAW_TO_HAIL as MapBlendData["body"];
    expect(await client.blends.picture(question, { width: 720 })).toBe(
      blendPicture(report, "simplex", { width: 720, standalone: true }),
    );
    await expect(client.blends.picture({ ...question, count: 2 })).rejects.toBeInstanceOf(UnprocessableError);
  });
});
