/** Pictures through the SDK: the same text as over HTTP, choices and failures typed. */
import { ApiError, type CheckFitData, Ringtrue, UnprocessableError } from "@ringtrue/sdk";
import { expect, expectTypeOf, it } from "vitest";
import { app, createApp } from "../../api/app.ts";
import { drawPng } from "../../api/node/draw-png.ts";
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

it("gives bytes of a PNG where the service draws them, as its picture drawn by hand", async () => {
  const drawing = createApp({ drawPng });
  const lent = new Ringtrue({ fetch: async (url, init) => drawing.request(String(url), init) });
  const choice = { picture: "contributions", theme: "print", width: 350 } as const;
  const { data, response } = await lent.fit.png(question, choice).withResponse();
  expect(response.headers.get("content-type")).toBe("image/png");
  expect([...data.slice(1, 4)]).toEqual([..."PNG"].map((letter) => letter.charCodeAt(0)));
  expect(Buffer.from(data).equals(Buffer.from(await drawPng(await lent.fit.picture(question, choice))))).toBe(true);
  expectTypeOf(lent.fit.png).returns.resolves.toEqualTypeOf<Uint8Array<ArrayBuffer>>();
});

it("says so where the service cannot draw PNG, and does not try again", async () => {
  let calls = 0;
  const counted = async (url: string, init: RequestInit) => {
    calls++;
    return app.request(url, init);
  };
  const bare = new Ringtrue({ fetch: counted });
  const error: unknown = await bare.fit.png(question).catch((caught: unknown) => caught);
  expect(error).toBeInstanceOf(ApiError);
  expect([(error as ApiError).status, calls]).toEqual([406, 1]);
});
