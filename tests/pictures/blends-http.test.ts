/** Pictures of a blend over HTTP and through the SDK: contours unless rings are asked for. */
import { type MapBlendData, Ringtrue, UnprocessableError } from "@ringtrue/sdk";
import { describe, expect, it } from "vitest";
import { app } from "../../api/app.ts";
import { judgeBlend, blendPicture as soundness } from "../../api/engine/blends/index.ts";
import { blendPicture } from "../../api/engine/pictures/index.ts";
import { THAW_TO_HAIL } from "../../api/schemas/blends.ts";
import { post, problemOf } from "../http/support.ts";

const svg = { accept: "image/svg+xml" };
const report = judgeBlend(THAW_TO_HAIL);
const client = new Ringtrue({ fetch: async (url, init) => app.request(url, init) });

describe("POST /v1/blends as a picture", () => {
  it("draws rings where verdicts are asked for, as the engine does", async () => {
    const response = await post("/v1/blends?picture=verdicts&theme=dark&width=350&standalone=false", THAW_TO_HAIL, svg);
    expect([response.status, response.headers.get("content-type")]).toEqual([200, "image/svg+xml"]);
    expect(await response.text()).toBe(
      blendPicture(report, "simplex", { theme: "dark", width: 350, standalone: false }),
    );
  });

  it("draws contours of soundness unless told otherwise", async () => {
    const drawn = await (await post("/v1/blends", THAW_TO_HAIL, svg)).text();
    expect(drawn).toBe(soundness(report, "simplex", { standalone: true }));
  });

  it.each([
    ["picture=contours", "/picture", "verdicts"],
    ["width=400", "/width", "720"],
  ])("refuses ?%s", async (query, pointer, allowed) => {
    const problem = await problemOf(await post(`/v1/blends?${query}`, THAW_TO_HAIL, svg));
    expect([problem.status, problem.issues?.[0]?.pointer]).toEqual([422, pointer]);
    expect(JSON.stringify(problem.issues)).toContain(allowed);
  });

  it("comes through the SDK, and refuses what has no place on paper", async () => {
    const question = THAW_TO_HAIL as MapBlendData["body"];
    expect(await client.blends.picture(question, { picture: "verdicts", width: 720 })).toBe(
      blendPicture(report, "simplex", { width: 720, standalone: true }),
    );
    await expect(client.blends.picture({ ...question, count: 2 })).rejects.toBeInstanceOf(UnprocessableError);
  });
});
