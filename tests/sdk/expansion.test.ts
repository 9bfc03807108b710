/** What the SDK gives of an expansion answer, from the real service in process. */
import type { ExpansionReport, Quantity } from "@ringtrue/sdk";
import { Ringtrue, UnprocessableError } from "@ringtrue/sdk";
import { describe, expect, expectTypeOf, it } from "vitest";
import { app } from "../../api/app.ts";

const client = new Ringtrue({ baseUrl: "http://larch.lane", fetch: (url, init) => app.request(url, init) });
const glaze = {
  recipe: [
    { material: "nepheline-syenite", parts: 50 },
    { material: "silica", parts: 30 },
    { material: "whiting", parts: 20 },
  ],
};

describe("client.expansion.estimate", () => {
  it("tells properties, doubts and one more part, each typed", async () => {
    const answer = await client.expansion.estimate({ glaze, doubts: { onWare: false } });
    expectTypeOf(answer).toEqualTypeOf<ExpansionReport>();
    expectTypeOf(answer.doubt.together).toEqualTypeOf<Quantity>();
    expect(answer.doubt.counted.onWare).toBe(false);
    expect(answer.perPart.lines).toHaveLength(3);
    const { viscosity, transition } = answer.properties!;
    expect(transition.value.unit).toBe("°C");
    // Runny is hotter than stiff.
    const temperatures = viscosity.atViscosities.map((one) => one.temperature.value);
    expect(temperatures).toEqual(temperatures.toSorted((a, b) => b - a));
    expect(answer.nearest).toBeUndefined();
  });

  it("finds measured glasses when asked", async () => {
    const { nearest } = await client.expansion.estimate({ glaze, include: ["nearest"] });
    expect(nearest!.glasses.length).toBeGreaterThan(0);
    expect(nearest!.sources).toEqual(["sciglass-2019"]);
  });

  it("refuses what it cannot include", async () => {
    // @ts-expect-error no such part
    const call = client.expansion.estimate({ glaze, include: ["horoscope"] });
    await expect(call).rejects.toBeInstanceOf(UnprocessableError);
  });

  it("streams with doubts, a line at a time", async () => {
    const lines = [{ glaze }, { glaze, doubts: { materials: false } }];
    const widths: number[] = [];
    for await (const { result } of client.expansion.stream(lines)) {
      const { low, high } = result!.doubt.together;
      widths.push(high - low);
    }
    expect(widths[1]).toBeLessThan(widths[0]!);
  });
});

it("client.expansionModels.list tells how close every property comes", async () => {
  const [first] = (await client.expansionModels.list()).data;
  const youngs = first!.properties.find((one) => one.id === "youngs")!;
  expect(youngs.unit).toBe("GPa");
  expect(youngs.accuracy.glaze!.medianAbsoluteError).toBeLessThan(1.6);
});
