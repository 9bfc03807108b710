import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Problem, SizesReport } from "../../api/schemas/index.ts";
import { JAR } from "../../api/schemas/larch-lane-sizes.ts";
import { faults, post, problemOf } from "./support.ts";

const shrinkage = { percent: 12, plusMinus: 0.5 };
const ask = async (body: unknown) => {
  const response = await post("/v1/sizes", body);
  expect(await response.clone().text()).toContain("headline");
  return SizesReport.parse(await response.json());
};

describe("POST /v1/sizes", () => {
  it("answers the jar whole, byte for byte the same", async () => {
    const jar = await ask(JAR);
    expect(jar.sizes.map(({ name }) => name)).toEqual([
      "height",
      "diameter",
      "rim",
      "foot",
      "gallery",
      "wall",
      "belly",
    ]);
    expect(jar.headline).toContain("throw height 114 mm for 100 mm fired");
    expect(jar.clay?.forAll?.pieces).toBe(6);
    expect(await (await post("/v1/sizes", JAR)).text()).toBe(await (await post("/v1/sizes", JAR)).text());
  });

  it("takes a shrinkage in each of its forms", async () => {
    const of = async (one: unknown) => (await ask({ shrinkage: one, fired: { rim: 90 } })).shrinkage;
    expect((await of({ dryingPercent: 6, firingPercent: 7, plusMinus: 0.3 })).across.value).toBe(12.58);
    expect((await of({ class: "red-stoneware" })).across).toMatchObject({ value: 12, low: 10, high: 14 });
    const bars = [88, 87.5, 88, 88.5, 88].map((fired) => ({ plastic: 100, fired }));
    expect((await of({ bars })).across).toMatchObject({ value: 12, low: 11.17, high: 12.83 });
  });

  it("mixes inches and millimetres field by field, and answers in either", async () => {
    const body = { shrinkage, answerIn: "in", fired: { rim: "90 mm", height: "3½ in" } };
    const { sizes } = await ask(body);
    expect(sizes.map(({ name, throwTo }) => [name, throwTo.text])).toEqual([
      ["height", "4 in"],
      ["rim", "4 in"],
    ]);
  });

  it("warns where a lid may stick, and where a set cannot be held", async () => {
    const lid = await ask({ shrinkage, lid: { seat: 84, stage: "fired", clearance: 0.1 } });
    expect(lid.warnings.map(({ code }) => code)).toEqual(["lid-may-stick"]);
    const set = await ask({ shrinkage, fired: { diameter: 300 }, set: { tolerance: 1 } });
    expect(set.warnings).toMatchObject([{ code: "tolerance-below-clay", pointer: "/set/tolerance" }]);
  });

  it("a lid that goes over the neck is larger than it, one that sits inside smaller", async () => {
    const of = async (sits: string, flange?: string) =>
      ask({
        shrinkage,
        lid: { seat: "88 mm", stage: "fired", sits, clearance: "1 mm", ...(flange ? { flange } : {}) },
      });
    expect((await of("over")).lid?.lid.target.text).toBe("90 mm");
    expect((await of("inside")).lid?.lid.target.text).toBe("86 mm");
    for (const sits of ["over", "inside"]) expect((await of(sits)).lid!.play.value).toBeCloseTo(1, 1);
    const small = await problemOf(
      await post("/v1/sizes", {
        shrinkage,
        lid: { seat: "88 mm", stage: "fired", sits: "over", clearance: "1 mm", flange: "80 mm" },
      }),
    );
    expect(small.issues?.[0]?.message).toContain("smaller than the neck it goes over");
  });

  it("a lid of another clay carries that clay's doubt", async () => {
    const lid = { seat: 84, stage: "bone-dry", clearance: 1, shrinkage: { class: "studio-porcelain" } };
    const { warnings } = await ask({ shrinkage, lid });
    expect(warnings).toMatchObject([{ pointer: "/lid/shrinkage/class" }, { code: "lid-may-stick" }]);
  });

  it("a nest has its steps, and says whose capacity it tells", async () => {
    const answer = await ask({ shrinkage, fired: { rim: 100 }, set: { scales: [1, 0.8] }, profile: box });
    expect(answer.sizes.map(({ name }) => name)).toContain("rim × 0.8");
    expect(answer.warnings.map(({ code }) => code)).toEqual(["full-size-only"]);
  });

  it("a lid fired on its pot is known better than one made for a fired pot", async () => {
    const width = async (lid: object) => {
      const { play } = (await ask({ shrinkage: { percent: 12, plusMinus: 1.5 }, lid: { clearance: 1, ...lid } })).lid!;
      return play.high - play.low;
    };
    expect(await width({ seat: 95, stage: "thrown" })).toBeLessThan(await width({ seat: 84, stage: "fired" }));
    expect(await width({ seat: 95, stage: "thrown" })).toBeLessThan(
      await width({ seat: 95, stage: "thrown", firedTogether: false }),
    );
  });
});

const box = { form: "straight", diameter: 80, height: 90, dimensions: "outside", wall: 5 };
const outline = (...points: [number, number][]) => ({
  form: "points",
  dimensions: "outside",
  wall: 5,
  points: points.map(([across, up]) => ({ across, up })),
});

describe("what cannot be", () => {
  it.each([
    [{ shrinkage: { percent: 0.12 }, fired: { rim: 90 } }, "/shrinkage/percent", "Did you mean 12 %? Write 12"],
    [{ shrinkage: { percent: 100 }, fired: { rim: 90 } }, "/shrinkage/percent", "leave nothing of the pot"],
    [{ shrinkage: { percent: -3 }, fired: { rim: 90 } }, "/shrinkage/percent", "Leave the minus out"],
    [{ shrinkage: { percent: 12, dryingPercent: 20 }, fired: { rim: 90 } }, "/shrinkage/dryingPercent", "swapped"],
    [
      { shrinkage: { percent: 12, firingPercent: 6, dryingPercent: 6 }, fired: { rim: 90 } },
      "/shrinkage",
      "two ways of saying one thing",
    ],
    [{ shrinkage: { class: "red-stonware" }, fired: { rim: 90 } }, "/shrinkage/class", "Did you mean red-stoneware"],
    [{ shrinkage: { class: "cordierite-ware" }, fired: { rim: 90 } }, "/shrinkage/class", "no shrinkage for"],
    [{ shrinkage: 12, fired: { rim: 90 } }, "/shrinkage", 'such as {"percent":12,"plusMinus":0.5}'],
    [{ shrinkage }, "", "Ask for something"],
    [{ shrinkage, fired: { wall: "-4 mm" } }, "/fired/wall", "less than nothing"],
    [{ shrinkage, fired: { rim: "3 in 5 mm" } }, "/fired/rim", "81.2 mm or 3.197 in"],
    [{ shrinkage, fired: { gallery: 84, flange: 86 } }, "/fired/flange", "a lid larger than its pot will not go in"],
    [{ shrinkage, fired: { diameter: 80, gallery: 84 } }, "/fired/gallery", "inside the pot"],
    [{ shrinkage, fired: { diameter: 8, wall: 5 } }, "/fired/wall", "fill a diameter"],
    [{ shrinkage, lid: { seat: 84, stage: "fired", clearance: 1, flange: 86 } }, "/lid/flange", "larger than its pot"],
    [{ shrinkage, lid: { seat: 84, stage: "fired", clearance: 60 } }, "/lid/clearance", "leave nothing of a lid"],
    [{ shrinkage, lid: { seat: 84, stage: "wet", clearance: 1 } }, "/lid/stage", "Use `thrown`"],
    [{ shrinkage, profile: { ...box, wall: 50 } }, "/profile", "Nothing is left inside"],
    [{ shrinkage, profile: { ...box, form: "square" } }, "/profile/form", "Use `straight`"],
    [{ shrinkage, profile: { wall: 5 } }, "/profile/form", "missing"],
    [{ shrinkage, profile: { ...box, holds: "12 fl oz" } }, "/profile/holds", "us fl oz or imp fl oz"],
    [{ shrinkage, profile: outline([70, 0], [120, 60], [120, 20], [70, 70]) }, "/profile/points/2", "crosses itself"],
    [{ shrinkage, profile: outline([70, 0], [100, 60], [110, 40]) }, "/profile/points/2/up", "lies below point 2"],
    [{ shrinkage, profile: outline([70, 0], [100, 0]) }, "/profile/points", "one height"],
    [{ shrinkage, fired: { capacity: "350 ml" }, profile: box }, "/fired/capacity", "`holds` in the profile"],
    [{ shrinkage, set: { pieces: 0 }, fired: { rim: 90 } }, "/set/pieces", "between 1 and 10000"],
    [{ shrinkage, fired: { rim: 90 }, clay: { trimmingPercent: 100 } }, "/clay/trimmingPercent", "between 0 and 90"],
    [{ shrinkage, fired: { rimm: 90 } }, "/fired/rimm", "Did you mean `rim`"],
  ])("%j", async (body, pointer, words) => {
    const { issues = [] } = await problemOf(await post("/v1/sizes", body));
    expect(issues.find((issue) => issue.pointer === pointer)?.message).toContain(words);
  });

  it("all is told at once", async () => {
    const body = { shrinkage: { percent: 0.12 }, fired: { wall: "-4 mm", rim: "9,5 cm" }, set: { pieces: 0 } };
    const { issues } = await problemOf(await post("/v1/sizes", body));
    expect(issues?.map(({ pointer }) => pointer)).toEqual([
      "/shrinkage/percent",
      "/set/pieces",
      "/fired/rim",
      "/fired/wall",
    ]);
  });
});

it("whatever comes in, something sane goes out", async () => {
  const odd = fc.oneof(
    fc.double(),
    fc.string({ maxLength: 9 }),
    fc.constantFrom(null, [], {}, "3½ in", 1e300, 5, 80, "points"),
  );
  const some = (keys: string[]) => fc.record(Object.fromEntries(keys.map((key) => [key, odd])), { requiredKeys: [] });
  const body = fc.record(
    {
      shrinkage: fc.oneof(fc.constant(shrinkage), some(["percent", "class", "bars", "dryingPercent", "firingPercent"])),
      fired: some(["rim", "wall", "height", "capacity"]),
      lid: some(["seat", "stage", "clearance", "flange"]).map((lid) => ({
        seat: 84,
        stage: "fired",
        clearance: 1,
        ...lid,
      })),
      profile: some(["form", "wall", "height", "rim", "points", "holds"]).map((one) => ({ ...box, ...one })),
      set: some(["pieces", "tolerance", "scales"]),
      slabs: fc.array(some(["length", "width", "thickness", "pieces"]), { maxLength: 2 }),
      clay: some(["plasticDensityGPerCm3", "trimmingPercent"]),
    },
    { requiredKeys: ["shrinkage"] },
  );
  await fc.assert(
    fc.asyncProperty(body, async (request) => {
      const response = await post("/v1/sizes", request);
      const answer = await response.json();
      if (response.status === 200) SizesReport.parse(answer);
      else {
        expect(response.status).toBe(422);
        Problem.parse(answer);
      }
    }),
    { numRuns: 1000, seed: 8 },
  );
  expect(faults).toEqual([]);
});
