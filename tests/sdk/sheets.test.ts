/** Sheets through the SDK: SVG text, PDF bytes, and which sheet. */
import { type DrawRulerData, Ringtrue, UnprocessableError } from "@ringtrue/sdk";
import { expect, expectTypeOf, it } from "vitest";
import { app } from "../../api/app.ts";
import { failureOf } from "./failure.ts";

const client = new Ringtrue({ fetch: (url, init) => app.request(url, init) });
const long: DrawRulerData["body"] = { shrinkage: { percent: 12 }, draw: { ruler: { length: "1500 mm" } } };

it("give the sheets of the report one by one, and all as one PDF", async () => {
  const { sheets } = await client.rulers.draw(long);
  expect(sheets.length).toBeGreaterThan(1);
  expect(await client.rulers.svg(long)).toBe(sheets[0]!.svg);
  expect(await client.rulers.svg(long, { sheet: 2 })).toBe(sheets[1]!.svg);
  const { data, response } = await client.rulers.pdf(long).withResponse();
  expect(response.headers.get("content-type")).toBe("application/pdf");
  expect(new TextDecoder().decode(data).match(/\/Type \/Page /g)).toHaveLength(sheets.length);
});

it("tell a sheet that is not there, and a size that cannot be", async () => {
  const error = await failureOf(client.rulers.svg(long, { sheet: 99 }));
  expect(error).toBeInstanceOf(UnprocessableError);
  expect(error.issues).toMatchObject([{ pointer: "/sheet" }]);
  const batch = client.batches.pdf({ glaze: { recipe: [{ material: "whiting", parts: 1 }] }, amount: { dry: "2" } });
  expect((await failureOf(batch)).issues).toMatchObject([{ pointer: "/amount/dry" }]);
});

it("have the types of what they give", () => {
  expectTypeOf(client.rulers.svg).returns.resolves.toEqualTypeOf<string>();
  expectTypeOf(client.batches.pdf).returns.resolves.toEqualTypeOf<Uint8Array<ArrayBuffer>>();
});
