/** Pictures through the SDK: the same text as over HTTP, choices and failures typed. */
import { type CheckFitData, Ringtrue, UnprocessableError } from "@ringtrue/sdk";
import { expect, it } from "vitest";
import { app } from "../../api/app.ts";
import { THAW_ON_RED_STONEWARE } from "../../api/schemas/larch-lane.ts";
import { post, THAW_TEXT } from "../http/support.ts";
import { wellFormed } from "./support.ts";

const client = new Ringtrue({ fetch: async (url, init) => app.request(String(url), init) });
const question = THAW_ON_RED_STONEWARE as CheckFitData["body"];

it("draws the verdict unless told otherwise", async () => {
  const svg = await client.fit.picture(question);
  expect(wellFormed(svg)).toBe(true);
  expect(svg).toBe(await (await post("/v1/fit", THAW_TEXT, { accept: "image/svg+xml" })).text());
});

it("passes every choice on", async () => {
  const svg = await client.fit.picture(question, { picture: "stress", theme: "dark", width: 350, standalone: false });
  const query = "picture=stress&theme=dark&width=350&standalone=false";
  expect(svg).toBe(await (await post(`/v1/fit?${query}`, THAW_TEXT, { accept: "image/svg+xml" })).text());
  expect(svg).toContain('viewBox="0 0 350');
});

it("gives the response too, and throws what JSON would throw", async () => {
  const { response, requestId } = await client.fit.picture(question).withResponse();
  expect(response.headers.get("content-type")).toContain("image/svg+xml");
  expect(requestId).toBeTruthy();
  const bad = { ...question, body: { class: "no-such-clay" } } as CheckFitData["body"];
  await expect(client.fit.picture(bad)).rejects.toBeInstanceOf(UnprocessableError);
});
