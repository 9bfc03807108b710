/** Surface tension by published sets: sums worked by hand, what little was measured, and what the interval rests on. */
import { describe, expect, it } from "vitest";
import { analyseGlaze } from "../../api/engine/chemistry/index.ts";
import { surfaceTension, unroundedTension } from "../../api/engine/glass/index.ts";
import { surfaceSums } from "../../api/engine/glass/surface-sums.ts";
import dietzel from "../../data/factor-sets/dietzel-1942.json" with { type: "json" };
import agreement from "../../data/models/surface-tension.json" with { type: "json" };
import { close } from "../support/close.ts";

const MOLES = { SiO2: 0.7, Na2O: 0.15, CaO: 0.15 };
const WEIGHT = { SiO2: 70.4, Na2O: 15.6, CaO: 14 };
const by = (id: string, ...glass: Parameters<typeof surfaceTension>) =>
  surfaceTension(...glass).find((answer) => answer.model === id)!;

describe("sums worked by hand, derived (arithmetic) from each set's table", () => {
  it("Kucuk: 271.2 + 15 × 3.34, soda and silica counting 0", () => {
    close(by("kucuk-1999", MOLES, WEIGHT).value?.value, 271.2 + 15 * 3.34, { abs: 0.5 });
  });
  it("Dietzel: 70.4 × 3.4 + 15.6 × 1.5 + 14 × 4.8 at 900 °C, 4 less for each 100 K", () => {
    const at900 = 70.4 * 3.4 + 15.6 * 1.5 + 14 * 4.8;
    close(by("dietzel-1942", MOLES, WEIGHT).value?.value, at900, { abs: 0.5 });
    close(by("dietzel-1942", MOLES, WEIGHT, 1200).value?.value, at900 - 12, { abs: 0.5 });
  });
  it("Appen: 0.7 × 290 + 0.15 × 295 + 0.15 × 510", () => {
    close(by("appen-1949", MOLES, WEIGHT).value?.value, 0.7 * 290 + 0.15 * 295 + 0.15 * 510, { abs: 0.5 });
  });
});

describe("sums without intervals", () => {
  const sums = (moles: Record<string, number>, weight: Record<string, number>, temperatureC?: number) =>
    Object.fromEntries(surfaceSums(moles, weight, temperatureC).map((sum) => [sum.model, sum]));

  it("are for each set's own temperature; only Dietzel's moves with the one asked for", () => {
    const temperatures = (temperatureC?: number) =>
      surfaceSums(MOLES, WEIGHT, temperatureC).map((sum) => [sum.model, sum.temperatureC, sum.sources]);
    expect(temperatures()).toEqual([
      ["kucuk-1999", 1400, ["kucuk-1999"]],
      ["dietzel-1942", 900, ["dietzel-1942"]],
      ["appen-1949", 1300, ["appen-1949"]],
    ]);
    expect(temperatures(1200).map((row) => row[1])).toEqual([1400, 1200, 1300]);
    const [own, asked] = [sums(MOLES, WEIGHT), sums(MOLES, WEIGHT, 1200)];
    for (const id of ["kucuk-1999", "appen-1949"]) expect(asked[id]!.value).toBe(own[id]!.value);
    close(asked["dietzel-1942"]!.value! - own["dietzel-1942"]!.value!, -0.04 * 300, { abs: 1e-9 });
  });
  it("scale up what is left where a little is missing, each on its own basis", () => {
    const moles = { SiO2: 0.8, CaO: 0.15, TiO2: 0.05, P2O5: 0 };
    const weight = { SiO2: 80, Na2O: 12, P2O5: 8 };
    const { "kucuk-1999": kucuk, "dietzel-1942": enamel, "appen-1949": appen } = sums(moles, weight);
    // Titania is not in Kucuk's table, phosphate not in Dietzel's; Appen's has them all here.
    expect([kucuk!.missingOxides, enamel!.missingOxides, appen!.missingOxides]).toEqual([["TiO2"], ["P2O5"], []]);
    close(kucuk!.value, 271.2 + (15 * 3.34) / 0.95, { abs: 1e-9 });
    close(enamel!.value, (80 * 3.4 + 12 * 1.5) / 0.92, { abs: 1e-9 });
    close(appen!.value, 0.8 * 290 + 0.15 * 510 + 0.05 * 250, { abs: 1e-9 });
  });
  it("are given with a tenth missing and not with more", () => {
    close(sums({ SiO2: 0.9, K2O: 0.1 }, {})["appen-1949"]!.value, 290, { abs: 1e-9 });
    expect(sums({ SiO2: 0.89, K2O: 0.11 }, {})["appen-1949"]!.value).toBeNull();
  });
});

describe("the sum that searches follow", () => {
  it("is Kucuk's, unrounded", () => {
    close(unroundedTension(MOLES, WEIGHT), 271.2 + 15 * 3.34, { abs: 1e-9 });
    // A twentieth of titania is not in its table: the rest is scaled up.
    close(unroundedTension({ SiO2: 0.8, CaO: 0.15, TiO2: 0.05 }, {}), 271.2 + (15 * 3.34) / 0.95, { abs: 1e-9 });
  });
  it("is Dietzel's at 900 °C where Kucuk's lacks too much, then Appen's, then none", () => {
    const zinc = { SiO2: 0.8, ZnO: 0.2 };
    close(unroundedTension(zinc, { SiO2: 75, ZnO: 25 }), 75 * 3.4 + 25 * 4.7, { abs: 1e-9 });
    close(unroundedTension(zinc, { SiO2: 75, P2O5: 25 }), 0.8 * 290 + 0.2 * 450, { abs: 1e-9 });
    close(unroundedTension({ SiO2: 0.9, ZnO: 0.1 }, {}), 271.2, { abs: 1e-9 });
    expect(unroundedTension({ P2O5: 1 }, { P2O5: 100 })).toBeNull();
  });
  it("passes over a sum that is no melt's", () => {
    // Kucuk: 271.2 − 70 × 2.86 = 71; Dietzel: 26.5 × 3.4 + 73.5 × 0.8 = 148.9; Appen lacks boron oxide.
    const boron = { SiO2: 0.3, B2O3: 0.7 };
    close(unroundedTension(boron, { SiO2: 26.5, B2O3: 73.5 }), 26.5 * 3.4 + 73.5 * 0.8, { abs: 1e-9 });
    expect(unroundedTension(boron, { SiO2: 50, V2O5: 50 })).toBeNull();
  });
});

describe("a sum below 80 mN/m is no surface tension of a melt (molten V2O5 and B2O3 have about 80: from memory)", () => {
  it.each([
    // 50 × 3.4 − 50 × 6.1 = −135
    ["half vanadium", "dietzel-1942", {}, { SiO2: 50, V2O5: 50 }, null],
    // 73 × 3.4 − 27 × 6.1 = 83.5
    ["a quarter", "dietzel-1942", {}, { SiO2: 73, V2O5: 27 }, 83.5],
    // 72 × 3.4 − 28 × 6.1 = 74
    ["a little more", "dietzel-1942", {}, { SiO2: 72, V2O5: 28 }, null],
    ["boron oxide, 100 × 0.8", "dietzel-1942", {}, { B2O3: 100 }, 80],
    // 271.2 − 66 × 2.86 = 82.44; with 67, 79.58
    ["much boron, Kucuk", "kucuk-1999", { SiO2: 0.34, B2O3: 0.66 }, {}, 82.44],
    ["more boron, Kucuk", "kucuk-1999", { SiO2: 0.33, B2O3: 0.67 }, {}, null],
  ])("%s", (_what, id, moles, weight, expected) => {
    const sum = surfaceSums(moles, weight).find(({ model }) => model === id)!;
    const { value } = by(id, moles, weight);
    if (expected === null) return expect([sum.value, value]).toEqual([null, null]);
    close(sum.value, expected, { abs: 1e-9 });
    // The ends of the interval stand in their order.
    expect(value!.low).toBeLessThan(value!.value);
    expect(value!.high).toBeGreaterThan(value!.value);
  });
  it("counts at the temperature asked for: 100 × 0.8 at 900 °C, 4 less at 1000 °C", () => {
    expect(by("dietzel-1942", {}, { B2O3: 100 }, 1000).value).toBeNull();
  });
});

/**
 * Measured values. None with an analysis could be read, so nothing here is a calibration: the frits' analyses are
 * ordinary ones (from memory), the rest is from memory throughout. Figures are carried to the temperature of the
 * measurement with Dietzel's 4 mN/m for 100 K.
 */
const MEASURED: readonly {
  melt: string;
  basis: "weightPercent" | "molePercent";
  amounts: Record<string, number>;
  temperatureC: number;
  measured: number;
  source: string;
}[] = [
  {
    melt: "enamel frits without much lead, near 250",
    ...{ basis: "weightPercent", temperatureC: 850, measured: 250 },
    amounts: { SiO2: 50, B2O3: 16, Na2O: 16, K2O: 4, Al2O3: 6, CaO: 6 },
    source: "harrison-moore-1938, read; the analysis is an ordinary one, from memory",
  },
  {
    melt: "enamel frits with much lead, near 200",
    ...{ basis: "weightPercent", temperatureC: 850, measured: 200 },
    amounts: { PbO: 50, SiO2: 35, Na2O: 5, K2O: 3, B2O3: 4, Al2O3: 3 },
    source: "harrison-moore-1938, read; the analysis is an ordinary one, from memory",
  },
  {
    melt: "float glass on its way over the tin",
    ...{ basis: "weightPercent", temperatureC: 1000, measured: 350 },
    amounts: { SiO2: 72.6, Na2O: 13.9, CaO: 8.4, MgO: 3.9, Al2O3: 1.1, K2O: 0.6 },
    source: "from memory: Pilkington, Proc. R. Soc. Lond. A 314 (1969) 1–25",
  },
  {
    melt: "0.13 Na2O 0.13 CaO 0.74 SiO2",
    ...{ basis: "molePercent", temperatureC: 1350, measured: 350 },
    amounts: { Na2O: 13, CaO: 13, SiO2: 74 },
    source: "from memory: Kingery, Introduction to Ceramics",
  },
  {
    melt: "0.20 Na2O 0.80 SiO2",
    ...{ basis: "molePercent", temperatureC: 1350, measured: 380 },
    amounts: { Na2O: 20, SiO2: 80 },
    source: "from memory: Kingery, Introduction to Ceramics",
  },
];

/** Outside the stated interval, reckoned less measured [mN/m]: kept in sight. */
const MISSES: Record<string, { off: number; why: string }> = {
  "kucuk-1999 enamel frits with much lead, near 200": {
    off: 49,
    why: "a set for 1400 °C carried down 550 K, with more lead than an ordinary glass has; Dietzel's, made for enamels, holds it",
  },
  "kucuk-1999 0.20 Na2O 0.80 SiO2": { off: -107, why: "all three sets say 270 to 290: the print stands alone" },
  "dietzel-1942 0.20 Na2O 0.80 SiO2": { off: -97, why: "the same print" },
  "appen-1949 0.20 Na2O 0.80 SiO2": { off: -91, why: "the same print" },
  "appen-1949 0.13 Na2O 0.13 CaO 0.74 SiO2": { off: -33, why: "1 mN/m beyond the interval; the other two hold it" },
};

describe("measured values lie inside the stated 90 % interval, or the miss is written down", () => {
  const cases = MEASURED.flatMap((row) =>
    ["kucuk-1999", "dietzel-1942", "appen-1949"].map((model) => ({ ...row, model, name: `${model} ${row.melt}` })),
  );
  it.each(cases)("$name: $measured mN/m ($source)", ({ name, model, basis, amounts, temperatureC, measured }) => {
    const { moleFractions, fired } = analyseGlaze({ oxides: { basis, amounts } });
    const set = by(model, moleFractions, fired.weightPercent, temperatureC);
    const carried = dietzel.perKelvin * (temperatureC - set.temperatureC);
    // Appen's has nothing for boron, lead and potash.
    if (set.value === null) return expect(set.missingOxides).toContain("B2O3");
    const { value, low, high } = set.value;
    const miss = MISSES[name];
    if (miss) return close(value + carried - measured, miss.off, { abs: 1, why: miss.why });
    expect(low + carried).toBeLessThanOrEqual(measured);
    expect(high + carried).toBeGreaterThanOrEqual(measured);
  });
});

describe("the interval", () => {
  it.each(Object.entries(agreement.sets))(
    "of %s is its own share of the value to either side",
    (id, { halfWidthShare }) => {
      const { value } = by(id, MOLES, WEIGHT);
      const exact = surfaceSums(MOLES, WEIGHT).find((sum) => sum.model === id)!.value!;
      expect(value).toMatchObject({ unit: "mN/m", coverage: 0.9, value: Math.round(exact) });
      expect(value!.low).toBe(Math.round(exact * (1 - halfWidthShare)));
      expect(value!.high).toBe(Math.round(exact * (1 + halfWidthShare)));
    },
  );
  it("is stated in the answer together with what it rests on", () => {
    const { value, note } = by("kucuk-1999", MOLES, WEIGHT);
    close(value!.high / value!.value - 1, agreement.sets["kucuk-1999"].halfWidthShare, { abs: 0.003, why: "rounded" });
    expect(note).toMatch(/how far the three sets differ/);
    expect(note).toMatch(/No measured surface tension/);
  });
});

it("names what a set lacks, and gives no figure when that is too much", () => {
  const answer = by("appen-1949", { SiO2: 0.6, K2O: 0.2, B2O3: 0.2 }, { SiO2: 52, K2O: 27, B2O3: 21 });
  expect(answer.missingOxides).toEqual(["K2O", "B2O3"]);
  expect(answer.value).toBeNull();
});
