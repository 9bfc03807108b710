import { describe, expect, it } from "vitest";
import { EvidenceReport, FitReport } from "../../api/schemas/index.ts";
import { HOARFROST } from "../../api/schemas/larch-lane-tiles.ts";
import { faults, post, problemOf } from "./support.ts";

const issuesOf = async (body: unknown) => (await problemOf(await post("/v1/evidence", body))).issues ?? [];
const body = { class: "red-stoneware" };
const tile = (seen: unknown) => ({ tiles: [{ body, seen: [seen] }] });

describe("POST /v1/evidence", () => {
  it("answers as described, the same byte for byte, and its glaze goes into a fit", async () => {
    const texts = await Promise.all([1, 2].map(async () => (await post("/v1/evidence", HOARFROST)).text()));
    expect(texts[0]).toBe(texts[1]);
    const report = EvidenceReport.parse(JSON.parse(texts[0]!));
    expect(report.lessons.map(({ pointer }) => pointer)).toEqual(["/tiles/0", "/tiles/1", "/tiles/2", "/tiles/3"]);
    const fit = FitReport.parse(await (await post("/v1/fit", { glaze: report.glaze, body })).json());
    expect(fit.glaze.model).toBe("stated");
  });

  it("sources are in the bibliography", async () => {
    const { sources } = (await (await post("/v1/evidence", HOARFROST)).json()) as { sources: string[] };
    expect(sources).toContain("timoshenko-1925");
  });

  it.each([
    [{}, "", "nothing to learn from"],
    [tile({ kind: "crased" }), "/tiles/0/seen/0/kind", "crazed"],
    [tile({ kind: "crazed", by: 3 }), "/tiles/0/seen/0/by", "by"],
    [
      tile({ kind: "crazed", radiusMm: 30 }),
      "/tiles/0/seen/0/radiusMm",
      "Here I know `kind`, `byDays` or `soundAtDays`",
    ],
    [tile({ knid: "crazed" }), "/tiles/0/seen/0/knid", "Did you mean `kind`?"],
    [tile({ byDays: 1 }), "/tiles/0/seen/0/kind", "`kind` is missing: one of crazed"],
    [tile({ kind: "ring", radiusMm: 30 }), "/tiles/0/seen/0/closesMm", "closesMm"],
    [tile({ kind: "crazed", byDays: 1, soundAtDays: 2 }), "/tiles/0/seen/0/soundAtDays", "must be the earlier"],
    [{ tiles: [{ body: { class: "red-stonewear" }, seen: [{ kind: "crazed" }] }] }, "/tiles/0/body/class", ""],
    [{ measured: [{ value: 600 }] }, "/measured/0/value", "600"],
    [{ ...HOARFROST, glaze: { recipe: [{ material: "whitting", parts: 1 }] } }, "/glaze/recipe/0/material", ""],
    [{ ...HOARFROST, tiles: Array.from({ length: 31 }, () => HOARFROST.tiles[0]) }, "/tiles", "30"],
  ])("refuses %j", async (request, pointer, words) => {
    const issues = await issuesOf(request);
    expect(issues.map((issue) => issue.pointer)).toContain(pointer);
    expect(JSON.stringify(issues)).toContain(words);
  });

  it("had no faults of its own", () => expect(faults).toEqual([]));
});
