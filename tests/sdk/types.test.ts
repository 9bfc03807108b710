/** What the compiler knows about calls and answers. The assertions are the compiler's; running them costs nothing. */
import type {
  Body,
  FitLine,
  FitReport,
  FitRequest,
  Glaze,
  LineAnswer,
  Material,
  Page,
  Problem,
  Quantity,
  Verdict,
} from "@ringtrue/sdk";
import { type ApiError, Ringtrue } from "@ringtrue/sdk";
import { describe, expect, expectTypeOf, it } from "vitest";

const client = new Ringtrue({ fetch: () => Response.json({ data: [], nextCursor: null }) });
const question: FitRequest = { glaze: { expansion: { value: 6 } }, body: { class: "red-stoneware" } };

describe("types", () => {
  it("follow calls to their answers", () => {
    expectTypeOf(client.fit.check).parameter(0).toEqualTypeOf<FitRequest>();
    expectTypeOf(client.fit.check(question)).resolves.toEqualTypeOf<FitReport>();
    expectTypeOf<FitReport["verdict"]>().toEqualTypeOf<Verdict>();
    expectTypeOf<Verdict>().toEqualTypeOf<"crazes" | "may-craze" | "sound" | "may-shiver" | "shivers">();
    expectTypeOf<FitReport["setPoint"]>().toEqualTypeOf<Quantity>();
    expectTypeOf(client.materials.list()).resolves.toEqualTypeOf<Page<Material>>();
    expectTypeOf(client.materials.get("whiting")).resolves.toEqualTypeOf<Material>();
    expectTypeOf(client.fit.check(question).withResponse())
      .resolves.toHaveProperty("requestId")
      .toEqualTypeOf<string | null>();
    expectTypeOf<ApiError["problem"]>().toEqualTypeOf<Problem>();
  });

  it("tell a good line from a bad one", () => {
    const look = (answer: LineAnswer<FitReport>) => {
      if (answer.error) expectTypeOf(answer).toHaveProperty("error").toEqualTypeOf<Problem>();
      else expectTypeOf(answer).toHaveProperty("result").toEqualTypeOf<FitReport>();
    };
    expectTypeOf(look).returns.toBeVoid();
    expectTypeOf<FitLine>().toHaveProperty("id").toEqualTypeOf<string | undefined>();
  });

  it("take a glaze and a body in each of their forms, and no mixture of them", () => {
    expectTypeOf<{ recipe: [{ material: "whiting"; parts: 20 }] }>().toExtend<Glaze>();
    expectTypeOf<{ oxides: { basis: "weightPercent"; amounts: { SiO2: 60 } } }>().toExtend<Glaze>();
    expectTypeOf<{ expansion: { value: 6.1; rangeC: [20, 300] } }>().toExtend<Glaze>();
    expectTypeOf<{ colour: "blue" }>().not.toExtend<Glaze>();
    expectTypeOf<{ class: "red-stoneware" }>().toExtend<Body>();
    expectTypeOf<{ curve: [{ c: 20; strainPercent: 0 }] }>().toExtend<Body>();
    expectTypeOf<{ phases: { quartz: 20 } }>().toExtend<Body>();
  });

  it("refuse what the service would refuse", () => {
    // @ts-expect-error an unknown field
    client.fit.check({ ...question, colour: "blue" }).catch(() => {});
    // @ts-expect-error a basis that does not exist
    client.expansion.estimate({ glaze: { oxides: { basis: "percent", amounts: {} } } }).catch(() => {});
    // @ts-expect-error an address that is not text
    expect(() => new Ringtrue({ baseUrl: 4600 })).toThrow();
  });
});
