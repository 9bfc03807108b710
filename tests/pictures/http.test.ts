/** Pictures over HTTP: chosen by accept, refused in a potter's words, the same as the engine draws. */
import { describe, expect, it } from "vitest";
import { checkFit } from "../../api/engine/fit/index.ts";
import { contributionsPicture, expansionPicture, stressPicture } from "../../api/engine/pictures/index.ts";
import { THAW_ON_RED_STONEWARE } from "../../api/schemas/larch-lane.ts";
import { post, problemOf, THAW_TEXT } from "../http/support.ts";
import { wellFormed } from "./support.ts";

const svg = { accept: "image/svg+xml" };

describe("POST /v1/fit as a picture", () => {
  it.each(["verdict", "expansion", "stress", "contributions"])("%s", async (picture) => {
    const response = await post(`/v1/fit?picture=${picture}`, THAW_TEXT, svg);
    expect(response.status).toBe(200);
    expect(response.headers.get("content-type")).toBe("image/svg+xml");
    expect(response.headers.get("content-security-policy")).toContain("default-src 'none'");
    expect(response.headers.get("vary")).toMatch(/accept/i);
    expect(response.headers.get("x-request-id")).toBeTruthy();
    expect(wellFormed(await response.text())).toBe(true);
  });

  it("draws the verdict where nothing is named, and leaves JSON as it was", async () => {
    const drawn = await (await post("/v1/fit", THAW_TEXT, svg)).text();
    expect(drawn).toContain("most likely craze");
    const json = await post("/v1/fit", THAW_TEXT, { accept: "application/json" });
    expect(json.headers.get("content-type")).toBe("application/json");
    expect(json.headers.get("vary")).toMatch(/accept/i);
    expect(await json.json()).toMatchObject({ verdict: "crazes" });
  });

  it("draws what the engine draws: curves and parts brought along, ware as asked", async () => {
    const free = { ...THAW_ON_RED_STONEWARE, ware: { wallMm: 4, glazed: "one-face-free" as const } };
    const query = "theme=dark&width=350&standalone=false";
    const options = { theme: "dark", width: 350, standalone: false } as const;
    const expansion = await post(`/v1/fit?picture=expansion&${query}`, free, svg);
    expect(await expansion.text()).toBe(expansionPicture(checkFit({ ...free, include: ["curves"] }), options));
    const contributions = await (await post(`/v1/fit?picture=contributions&${query}`, free, svg)).text();
    expect(contributions).toBe(contributionsPicture(checkFit({ ...free, include: ["parts"] }), options));
    expect(contributions).toContain("One more part of each material");
    const stress = await post(`/v1/fit?picture=stress&${query}`, free, svg);
    expect(await stress.text()).toBe(stressPicture(checkFit(free), { ...options, ware: free.ware }));
  });

  it("gives the picture to who names one and takes anything, JSON to who asks for it", async () => {
    const kind = async (query: string, headers: Record<string, string>) =>
      (await post(`/v1/fit${query}`, THAW_TEXT, headers)).headers.get("content-type");
    expect(await kind("?picture=stress", {})).toBe("image/svg+xml");
    expect(await kind("?picture=stress", { accept: "*/*" })).toBe("image/svg+xml");
    expect(await kind("?picture=stress", { accept: "application/json" })).toBe("application/json");
    expect(await kind("", { accept: "image/*, application/json;q=0.5" })).toBe("image/svg+xml");
    expect(await kind("", {})).toBe("application/json");
  });

  it.each([
    ["picture=pie", "/picture", "verdict"],
    ["theme=sepia", "/theme", "dark"],
    ["width=400", "/width", "720"],
    ["colour=red", "/colour", "picture"],
    ["theme=dark&theme=light", "/theme", ""],
  ])("refuses ?%s", async (query, pointer, allowed) => {
    const problem = await problemOf(await post(`/v1/fit?${query}`, THAW_TEXT, svg));
    expect(problem.status).toBe(422);
    expect(problem.issues?.[0]?.pointer).toBe(pointer);
    expect(JSON.stringify(problem.issues)).toContain(allowed);
  });

  it("refuses a bad question as JSON would", async () => {
    const bad = { ...THAW_ON_RED_STONEWARE, glaze: { recipe: [{ material: "whitting", parts: 1 }] } };
    const problem = await problemOf(await post("/v1/fit?picture=stress", bad, svg));
    expect([problem.status, problem.issues?.[0]?.suggestion]).toEqual([422, "whiting"]);
    expect((await problemOf(await post("/v1/fit", "{", svg))).status).toBe(400);
  });

  it("says what it serves when it serves nothing that was asked for", async () => {
    const problem = await problemOf(await post("/v1/fit", THAW_TEXT, { accept: "text/csv" }));
    expect(problem.status).toBe(406);
    expect(problem.detail).toContain("image/svg+xml");
  });
});
