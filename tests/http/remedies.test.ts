import { describe, expect, it } from "vitest";
import { RemediesReport } from "../../api/schemas/index.ts";
import { THAW_ON_RED_STONEWARE } from "../../api/schemas/larch-lane.ts";
import { faults, post, problemOf } from "./support.ts";

const issuesOf = async (body: unknown) => (await problemOf(await post("/v1/remedies", body))).issues ?? [];

describe("POST /v1/remedies", () => {
  it("answers as described, the same byte for byte", async () => {
    const request = { ...THAW_ON_RED_STONEWARE, melt: { logViscosity: 0.5 }, target: 0.6 };
    const texts = await Promise.all([1, 2].map(async () => (await post("/v1/remedies", request)).text()));
    expect(texts[0]).toBe(texts[1]);
    const { remedies, before } = RemediesReport.parse(JSON.parse(texts[0]!));
    expect(before.verdict).toBe("crazes");
    const [first] = remedies.filter(({ recipe }) => recipe);
    const fit = await (await post("/v1/fit", first!.fit)).json();
    expect((fit as { probabilities: unknown }).probabilities).toEqual(first!.after.probabilities);
  });

  it("that nothing reaches is an answer", async () => {
    const response = await post("/v1/remedies", { ...THAW_ON_RED_STONEWARE, target: 0.99, allow: [], bodies: [] });
    expect(response.status).toBe(200);
    const { remedies, headline } = RemediesReport.parse(await response.json());
    expect(remedies.every(({ reaches }) => !reaches)).toBe(true);
    expect(headline).toContain("Nothing within these limits");
  });

  it("answers where the parts are too far from each other for the solver's numbers", async () => {
    const { glaze } = THAW_ON_RED_STONEWARE;
    const clay = { name: "bucket clay", formula: "Al2O3.2SiO2.2H2O", parts: 1e6 };
    const response = await post("/v1/remedies", {
      ...THAW_ON_RED_STONEWARE,
      glaze: { ...glaze, additions: [clay] },
      parts: { silica: { max: 30 } },
      seger: { Al2O3: { min: 0.4, max: 0.6 } },
      silicaToAlumina: { min: 2, max: 4 },
      melt: { logViscosity: 0.3, surfaceTensionPercent: 8 },
      allow: ["silica"],
      keep: ["kaolin"],
      forbid: ["zinc-oxide"],
      bodies: [],
    });
    expect(response.status).toBe(200);
    const { before, remedies } = RemediesReport.parse(await response.json());
    // Nearly all of it is kaolin, which shrinks far less than the clay.
    expect(before.verdict).toBe("shivers");
    expect(remedies.filter(({ recipe }) => recipe)).toEqual([]);
  });

  it.each([
    [{ ...THAW_ON_RED_STONEWARE, target: 2 }, "/target"],
    [{ ...THAW_ON_RED_STONEWARE, allow: ["silca"] }, "/allow/0"],
    [{ ...THAW_ON_RED_STONEWARE, parts: { silica: { min: 9, max: 3 } } }, "/parts/silica"],
    [{ ...THAW_ON_RED_STONEWARE, bodies: [{ body: { class: "red-stonewear" } }] }, "/bodies/0/body/class"],
    [{ ...THAW_ON_RED_STONEWARE, seger: { Unobtainium: { max: 1 } } }, "/seger/Unobtainium"],
    [{ ...THAW_ON_RED_STONEWARE, mellt: {} }, "/mellt"],
    [{ body: THAW_ON_RED_STONEWARE.body }, "/glaze"],
  ])("refuses %#", async (request, pointer) => {
    expect((await issuesOf(request)).map((issue) => issue.pointer)).toContain(pointer);
  });

  it("had no faults of its own", () => expect(faults).toEqual([]));
});
