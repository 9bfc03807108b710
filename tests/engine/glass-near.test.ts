/** Nearest measured glasses, and what the published sets are worth around them. */
import { statSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { nearestGlasses } from "../../api/engine/glass/index.ts";
import { type PackedGlass, packRows, unpackRows } from "../../api/engine/glass/near/row-table.ts";
import { nearestRows } from "../../api/engine/glass/near/search.ts";
import { MODEL_OXIDES } from "../../api/engine/glass/oxides.ts";
import { packedFile } from "../../data/fitting/pack-rows.ts";
import { readGlasses } from "../../data/fitting/read-glasses.ts";
import packed from "../../data/glasses/rows.json" with { type: "json" };
import { close } from "../support/close.ts";

const glasses = readGlasses();
const table = unpackRows(packed.rows);
const N = MODEL_OXIDES.length;

type Moles = Partial<Record<(typeof MODEL_OXIDES)[number], number>>;
const vector = (moles: Moles) => Float64Array.from(MODEL_OXIDES, (oxide) => moles[oxide] ?? 0);
/** A table of invented glasses, numbered from 1 as they come. */
const tableOf = (rows: readonly (Partial<PackedGlass> & { of: Moles })[]) =>
  unpackRows(
    packRows(
      rows.map(({ of, ...row }, i) => ({
        ...{ glass: i + 1, publication: 100 + i, year: 1960 + i, x: vector(of) },
        ...{ expansion: undefined, transitionC: undefined, youngsGPa: undefined },
        ...row,
      })),
    ),
  );

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

describe("the search among invented glasses", () => {
  const SODA = { SiO2: 0.8, Na2O: 0.2 } as const;

  it.each(MODEL_OXIDES.filter((oxide) => oxide !== "SiO2"))("counts %s in the distance, by its weight", (oxide) => {
    // Five per cent of silica exchanged: silica counts 0.4, an alkali 1.5, another oxide 1.
    const found = nearestRows(tableOf([{ of: { SiO2: 0.95, [oxide]: 0.05 } }]), vector({ SiO2: 1 }), 1);
    const own = ["Li2O", "Na2O", "K2O"].includes(oxide) ? 1.5 : 1;
    close(found[0]!.distance, 5 * Math.hypot(0.4, own), { abs: 1e-5, why: "the table holds 32-bit numbers" });
  });
  it("lists the nearest first, equals as they stand in the table, and no more than asked for", () => {
    const lime = (share: number) => ({ of: { SiO2: 1 - share, CaO: share } });
    const table = tableOf([lime(0.3), lime(0.1), lime(0.2), lime(0.1), lime(0), lime(0.25)]);
    const rows = (count: number) => nearestRows(table, vector({ SiO2: 1 }), count).map((hit) => hit.row);
    expect(rows(1)).toEqual([4]);
    expect(rows(2)).toEqual([4, 1]);
    expect(rows(4)).toEqual([4, 1, 3, 2]);
    expect(rows(9)).toEqual([4, 1, 3, 2, 5, 0]);
  });
  it("passes over rows without the measurement asked for", () => {
    const table = tableOf([{ of: SODA }, { of: { SiO2: 0.7, Na2O: 0.3 }, expansion: 9 }]);
    expect(nearestRows(table, vector(SODA), 2).map((hit) => hit.row)).toEqual([0, 1]);
    expect(nearestRows(table, vector(SODA), 2, table.expansion).map((hit) => hit.row)).toEqual([1]);
  });
  it("tells of a glass what was measured and how much would have to be exchanged", async () => {
    const rows = [
      { of: { SiO2: 0.7, Na2O: 0.15, CaO: 0.15 }, expansion: 9.87, transitionC: 541, youngsGPa: 71.3 },
      { of: { SiO2: 0.9, Na2O: 0.1 } },
    ];
    const near = await nearestGlasses(SODA, 5, async () => tableOf(rows));
    expect(near.available).toBe(true);
    expect(near.sources).toEqual(["sciglass-2019"]);
    // (10 + 5 + 15)/2 and (10 + 10)/2; by weighted distance the second lies nearer: √(4² + 15²) against √(4² + 7.5² + 15²).
    expect(near.glasses).toEqual([
      {
        ...{ glass: 2, publication: 101, year: 1961, apartMolePercent: 10, molePercent: { SiO2: 90, Na2O: 10 } },
        ...{ expansion: null, transitionC: null, youngsGPa: null },
      },
      {
        ...{ glass: 1, publication: 100, year: 1960, apartMolePercent: 15 },
        ...{ molePercent: { SiO2: 70, Na2O: 15, CaO: 15 } },
        ...{ expansion: 9.87, transitionC: 541, youngsGPa: 71.3 },
      },
    ]);
  });
  it("lists five where no count is asked for", async () => {
    expect((await nearestGlasses(SODA, undefined, async () => table)).glasses).toHaveLength(5);
  });
});

describe("what a set is worth among invented glasses", () => {
  const SODA = { SiO2: 0.8, Na2O: 0.2 } as const;
  const around = (expansions: readonly number[], of: Moles = SODA) =>
    nearestGlasses(SODA, 1, async () => tableOf(expansions.map((expansion) => ({ of, expansion }))));
  const appen = async (expansions: readonly number[]) =>
    (await around(expansions)).sets.find((set) => set.model === "appen-1949");

  it("is the middle of sum less measured, and 1.4826 times the middle of the distances from it", async () => {
    // Appen gives 9.9 for 80 SiO2, 20 Na2O. Differences: −0.1, 0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.7, 4.9: middle 0.3;
    // distances 0.4, 0.3, 0.2, 0.1, 0, 0.1, 0.2, 0.4, 4.6: middle 0.2.
    const nine = await appen([10, 9.9, 9.8, 9.7, 9.6, 9.5, 9.4, 9.2, 5]);
    expect(nine).toMatchObject({ n: 9, bias: 0.3, spread: 0.3 });
    expect(nine!.text).toBe("Appen 1949 reads 0.3e-6/K high on measured glasses like yours, give or take 0.3.");
    // Without the wild one: middle of eight (0.2 + 0.3)/2; distances 0.35, 0.25, 0.15, 0.05, 0.05, 0.15, 0.25, 0.45:
    // (0.15 + 0.25)/2 = 0.2.
    expect(await appen([10, 9.9, 9.8, 9.7, 9.6, 9.5, 9.4, 9.2])).toMatchObject({ n: 8, bias: 0.25, spread: 0.3 });
  });
  it("is low where the sums lie below, and true within 0.1", async () => {
    const low = await appen(Array(8).fill(10.4));
    expect(low).toMatchObject({ bias: -0.5, spread: 0 });
    expect(low!.text).toBe("Appen 1949 reads 0.5e-6/K low on measured glasses like yours, give or take 0.0.");
    const trueTo = await appen([9.6, 9.7, 9.8, 9.85, 9.85, 9.9, 10, 10.1, 10.2]);
    expect(trueTo!.text).toBe("Appen 1949 reads true on measured glasses like yours, within 0.2e-6/K.");
  });
  it("is asked of sets by weight in weight per cent", async () => {
    // 80 mol SiO2 of 60.083 and 20 mol Na2O of 61.979: 79.50 and 20.50 wt %.
    const soda = (100 * 20 * 61.979) / (80 * 60.083 + 20 * 61.979);
    const turner = (await around(Array(8).fill(9))).sets.find((set) => set.model === "english-turner-1927");
    close(turner!.bias, ((100 - soda) * 0.05 + soda * 4.32) / 10 - 9, { abs: 0.01 });
  });
  it("is said of eight glasses and more, sixty at most", async () => {
    const seven = await around(Array(7).fill(9));
    expect(seven.sets).toEqual([]);
    expect(seven.note).toContain("Hardly any measured glass is like this one");
    expect((await around(Array(8).fill(9))).note).toContain("Measured values as published");
    expect((await appen(Array(70).fill(9)))!.n).toBe(60);
  });
  it("rests on glasses within 8 mol %, weighted", async () => {
    // Lime for silica, √(0.4² + 1²) = 1.077 for each per cent: 7.4 % lie within, 7.5 % do not.
    const lime = (share: number) => around(Array(8).fill(9), { SiO2: 0.8 - share, Na2O: 0.2, CaO: share });
    expect((await lime(0.074)).sets).not.toEqual([]);
    expect((await lime(0.075)).sets).toEqual([]);
  });
  it("is not said of a set that lacks too much of them", async () => {
    // Lithia is not in Turner's table.
    const { sets } = await nearestGlasses({ SiO2: 0.6, Li2O: 0.4 }, 1, async () =>
      tableOf(Array.from({ length: 8 }, () => ({ of: { SiO2: 0.6, Li2O: 0.4 }, expansion: 9 }))),
    );
    expect(sets.map((set) => set.model)).toEqual(["winkelmann-schott-1894", "mayer-havas-1911", "appen-1949"]);
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
