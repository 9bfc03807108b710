/** Nearest measured glasses, and what the published sets are worth around them. */
import { statSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { nearestGlasses } from "../../api/engine/glass/index.ts";
import { packRows, unpackRows } from "../../api/engine/glass/near/row-table.ts";
import { nearestRows } from "../../api/engine/glass/near/search.ts";
import { MODEL_OXIDES } from "../../api/engine/glass/oxides.ts";
import { packedFile } from "../../data/fitting/pack-rows.ts";
import { readGlasses } from "../../data/fitting/read-glasses.ts";
import packed from "../../data/glasses/rows.json" with { type: "json" };
import { close } from "../support/close.ts";

const glasses = readGlasses();
const table = unpackRows(packed.rows);
const N = MODEL_OXIDES.length;

describe("the compact table", () => {
  it("is what the fitting script packs from the measured glasses, under 1.5 MB", () => {
    expect(packedFile(glasses)).toEqual(packed);
    expect(statSync(new URL("../../data/glasses/rows.json", import.meta.url)).size).toBeLessThan(1_500_000);
  });
  it("unpacks to the measured glasses", () => {
    const byNumber = new Map(glasses.map((glass) => [glass.glass, glass]));
    for (let row = 0; row < table.count; row += 97) {
      const glass = byNumber.get(table.glass[row]!)!;
      expect(table.publication[row]).toBe(glass.publication);
      expect(table.year[row]).toBe(glass.year);
      // Silica is what is left of 100, so the roundings of the others gather there.
      for (let i = 0; i < N; i++)
        close(table.molePercent[row * N + i], 100 * glass.x[i]!, { abs: i === 0 ? 0.06 : 0.0051 });
      if (!Number.isNaN(table.expansion[row]!)) close(table.expansion[row], glass.measured.cte!, { abs: 0.0051 });
    }
  });
  it("packs an oxide, a gap and a zero", () => {
    const x = new Float64Array(N);
    x[0] = 0.8;
    x[4] = 0.2;
    const one = { glass: 7, publication: 8, year: 1999, x, expansion: 9.5, transitionC: undefined, youngsGPa: 70 };
    const text = packRows([one]);
    expect(text).toBe("7,8,45,E1jk,qe,,jg");
    const back = unpackRows(text);
    expect([...back.molePercent].slice(0, 5)).toEqual([80, 0, 0, 0, 20]);
    expect(back.transitionC[0]).toBeNaN();
    close(back.expansion[0], 9.5, { abs: 1e-5 });
  });
});

describe("the search", () => {
  const x = Float64Array.from(MODEL_OXIDES, () => 0);
  Object.assign(x, { 0: 0.66, 1: 0.09, 2: 0.02, 4: 0.05, 5: 0.04, 7: 0.14 });

  it("finds the same rows as looking at every one", () => {
    const weight = (i: number) => (i === 0 ? 0.4 : i >= 3 && i <= 5 ? 1.5 : 1);
    const all = Array.from({ length: table.count }, (_, row) => {
      let d2 = 0;
      for (let i = 0; i < N; i++) d2 += (weight(i) * (table.molePercent[row * N + i]! - 100 * x[i]!)) ** 2;
      return { row, distance: Math.sqrt(d2) };
    }).sort((a, b) => a.distance - b.distance);
    const found = nearestRows(table, x, 20);
    found.forEach((hit, k) => {
      close(hit.distance, all[k]!.distance, { abs: 1e-9 });
    });
  });
});

describe("nearest glasses", () => {
  it("finds a measured glass by its own composition", async () => {
    const glass = glasses.find((row) => row.measured.cte !== undefined && row.x[7]! > 0.1)!;
    const moleFractions = Object.fromEntries(MODEL_OXIDES.map((oxide, i) => [oxide, glass.x[i]!]));
    const near = await nearestGlasses(moleFractions, 3);
    expect(near.available).toBe(true);
    expect(near.glasses).toHaveLength(3);
    expect(near.glasses[0]!.apartMolePercent).toBeLessThanOrEqual(0.1);
    expect(near.glasses[0]!.apartMolePercent).toBeLessThanOrEqual(near.glasses[1]!.apartMolePercent);
  });
  it("says which way each set is off around a stoneware glaze", async () => {
    const near = await nearestGlasses({ SiO2: 0.66, Al2O3: 0.09, B2O3: 0.02, Na2O: 0.05, K2O: 0.04, CaO: 0.14 });
    const of = (id: string) => near.sets.find((set) => set.model === id)!;
    // The signs that the sets' ranges demand: a 25–90 °C mean reads low, too high an alumina factor reads high.
    expect(of("english-turner-1927").bias).toBeLessThan(-0.5);
    expect(of("english-turner-1927").text).toContain("low on measured glasses like yours");
    expect(of("winkelmann-schott-1894").bias).toBeGreaterThan(0.5);
    expect(Math.abs(of("appen-1949").bias)).toBeLessThan(0.5);
  });
  it("says when hardly anything is near", async () => {
    const near = await nearestGlasses({ CoO: 1 });
    expect(near.sets).toEqual([]);
    expect(near.note).toContain("test tile");
  });
  it("says when the table cannot be had", async () => {
    const near = await nearestGlasses({ SiO2: 1 }, 5, async () => null);
    expect(near).toMatchObject({ available: false, glasses: [], sets: [] });
    expect(near.note).toContain("not available here");
  });
});
