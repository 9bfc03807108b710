/** Published expansion sets against sums worked by hand from their tables. */
import { describe, expect, it } from "vitest";
import { analyseGlaze } from "../../api/engine/chemistry/index.ts";
import { askSet, PUBLISHED_SETS } from "../../api/engine/glass/index.ts";
import { close } from "../support/close.ts";

const set = (id: string) => PUBLISHED_SETS.find((candidate) => candidate.id === id)!;

/** Composition of ISO 3585 borosilicate 3.3, weight per cent. */
const BOROSILICATE = { SiO2: 81, B2O3: 13, Na2O: 4, Al2O3: 2 };
/** A maker's bulletin on float glass, weight per cent without its traces: adds up to 100.5 as printed. */
const FLOAT = { SiO2: 72.6, Na2O: 13.9, CaO: 8.4, MgO: 3.9, Al2O3: 1.1, K2O: 0.6 };

const moles = (weight: Record<string, number>) =>
  analyseGlaze({ oxides: { basis: "weightPercent", amounts: weight } }).fired.molePercent;

// Each row: the sum written out from the set's printed factors, in 1e-7/K (cubic sums divided by 3).
const byHand = [
  {
    id: "winkelmann-schott-1894",
    glass: BOROSILICATE,
    sum: (81 * 0.8 + 13 * 0.1 + 4 * 10 + 2 * 5) / 3,
    printed: 3.87,
  },
  { id: "english-turner-1927", glass: BOROSILICATE, sum: 81 * 0.05 - 13 * 0.653 + 4 * 4.32 + 2 * 0.14, printed: 1.31 },
  {
    id: "winkelmann-schott-1894",
    glass: FLOAT,
    sum: (72.6 * 0.8 + 13.9 * 10 + 8.4 * 5 + 3.9 * 0.1 + 1.1 * 5 + 0.6 * 8.5) / 3,
    printed: 8.34,
  },
  {
    id: "english-turner-1927",
    glass: FLOAT,
    sum: 72.6 * 0.05 + 13.9 * 4.32 + 8.4 * 1.63 + 3.9 * 0.45 + 1.1 * 0.14 + 0.6 * 3.9,
    printed: 8.16,
  },
  { id: "mayer-havas-1911", glass: BOROSILICATE, sum: (81 * 0.8 + 13 * 0.1 + 4 * 10 + 2 * 5) / 3, printed: 3.87 },
  { id: "hall-1930", glass: BOROSILICATE, sum: 81 * 0.4 + 13 * 0.2 + 4 * 3.8 + 2 * 0.5, printed: 5.12 },
  {
    id: "gilard-dubrul-1937",
    glass: BOROSILICATE,
    sum: 81 * 0.04 + 13 * (-0.4 + 0.01 * 13) + 4 * (5.1 - 0.0333 * 4) + 2 * 0.2,
    printed: 2.0,
  },
];

describe("sums worked by hand, derived (arithmetic) from each set's table", () => {
  it.each(byHand)("$id gives $printed", ({ id, glass, sum, printed }) => {
    close(set(id).expansion(glass), sum / 10, { rel: 1e-12 });
    close(set(id).expansion(glass), printed, { abs: 0.005 });
  });

  it("Appen gives 3.31 for borosilicate 3.3", () => {
    // Moles in 100 g: 81/60.083, 13/69.617, 4/61.979, 2/101.961; together 1.61902.
    const [si, b, na, al] = [81 / 60.083, 13 / 69.617, 4 / 61.979, 2 / 101.961].map((n) => (100 * n) / 1.61902);
    const boron = -12.5 * ((na! - al!) / b!);
    const silica = 38 - (si! - 67);
    const sum = si! * silica + b! * boron + na! * 395 - al! * 30;
    close(set("appen-1949").expansion(moles(BOROSILICATE)), sum / 1000, { abs: 0.002 });
    close(set("appen-1949").expansion(moles(BOROSILICATE)), 3.31, { abs: 0.005 });
  });

  it("Appen gives 9.27 for float glass", () => {
    close(set("appen-1949").expansion(moles(FLOAT)), 9.27, { abs: 0.005 });
  });
});

describe("Appen's partial values that depend on the glass, from memory", () => {
  const appen = set("appen-1949");
  it("lets silica fall from 38 to 5 above 67 mol %", () => {
    close(appen.expansion({ SiO2: 100 }), 0.5, { abs: 1e-12 });
    close(appen.expansion({ SiO2: 60, CaO: 40 }), (60 * 38 + 40 * 130) / 1000, { abs: 1e-12 });
  });
  it("counts lead 130 with little alkali and at most 190 with much", () => {
    close(appen.expansion({ SiO2: 60, PbO: 40 }), (60 * 38 + 40 * 130) / 1000, { abs: 1e-12 });
    close(appen.expansion({ SiO2: 60, PbO: 20, Na2O: 20 }), (60 * 38 + 20 * 190 + 20 * 395) / 1000, { abs: 1e-12 });
  });
  it("counts potash 425 without soda and 465 with it", () => {
    close(appen.expansion({ SiO2: 60, K2O: 20, CaO: 20 }), (60 * 38 + 20 * 425 + 20 * 130) / 1000, { abs: 1e-12 });
    close(appen.expansion({ SiO2: 60, K2O: 20, Na2O: 20 }), (60 * 38 + 20 * 465 + 20 * 395) / 1000, { abs: 1e-12 });
  });
  it("counts boron at least at −50", () => {
    close(appen.expansion({ SiO2: 60, B2O3: 2, Na2O: 38 }), (60 * 38 - 2 * 50 + 38 * 395) / 1000, { abs: 1e-12 });
  });
  it("lets titania fall from 30 to −15 as silica rises from 50 to 80 mol %", () => {
    close(appen.expansion({ SiO2: 40, CaO: 50, TiO2: 10 }), (40 * 38 + 50 * 130 + 10 * 30) / 1000, { abs: 1e-12 });
    close(appen.expansion({ SiO2: 85, TiO2: 15 }), (85 * 20 + 15 * -15) / 1000, { abs: 1e-12 });
  });
  it("takes each of them at a point in between", () => {
    // Silica 38 − (69 − 67); lead 130 + 5 × (3 + 2 + 4 − 3); potash halfway between 425 and 465; titania 30 − 1.5 × 15.
    close(appen.expansion({ SiO2: 69, CaO: 31 }), (69 * 36 + 31 * 130) / 1000, { abs: 1e-12 });
    close(
      appen.expansion({ SiO2: 51, PbO: 40, Li2O: 3, Na2O: 2, K2O: 4 }),
      (51 * 38 + 40 * 160 + 3 * 270 + 2 * 395 + 4 * 465) / 1000,
      { abs: 1e-12 },
    );
    close(appen.expansion({ SiO2: 60, K2O: 20, Na2O: 0.5 }), (60 * 38 + 20 * 445 + 0.5 * 395) / 1000, { abs: 1e-12 });
    close(appen.expansion({ SiO2: 65, CaO: 25, TiO2: 10 }), (65 * 38 + 25 * 130 + 10 * 7.5) / 1000, { abs: 1e-12 });
  });
  // ψ = (strong + 0.7 middling + 0.3 weak − alumina)/boron, boron counting −12.5 ψ. Factors of the rest as in the table.
  it.each([
    { flux: "Na2O", counts: 1, factor: 395 },
    { flux: "K2O", counts: 1, factor: 425 },
    { flux: "BaO", counts: 1, factor: 200 },
    { flux: "CaO", counts: 0.7, factor: 130 },
    { flux: "SrO", counts: 0.7, factor: 160 },
    { flux: "CdO", counts: 0.7, factor: 115 },
    { flux: "PbO", counts: 0.7, factor: 130 },
    { flux: "Li2O", counts: 0.3, factor: 270 },
    { flux: "MgO", counts: 0.3, factor: 60 },
    { flux: "ZnO", counts: 0.3, factor: 50 },
  ])("lets $flux count $counts where boron turns four-fold", ({ flux, counts, factor }) => {
    const boron = -12.5 * ((20 * counts - 2) / 10);
    const sum = 60 * 38 + 10 * boron + 20 * factor - 2 * 30;
    close(appen.expansion({ SiO2: 60, B2O3: 10, [flux]: 20, Al2O3: 2 }), sum / 1000, { abs: 1e-12 });
  });
  it("lets boron count nothing where alumina takes all the flux", () => {
    const sum = 60 * 38 + 10 * 395 - 20 * 30;
    close(appen.expansion({ SiO2: 60, B2O3: 10, Na2O: 10, Al2O3: 20 }), sum / 1000, { abs: 1e-12 });
  });
});

/** Basis and range of the mean as in each set's file. */
it.each([
  { id: "winkelmann-schott-1894", basis: "weight", rangeC: [0, 100] },
  { id: "mayer-havas-1911", basis: "weight", rangeC: [0, 100] },
  { id: "english-turner-1927", basis: "weight", rangeC: [25, 90] },
  { id: "hall-1930", basis: "weight", rangeC: null },
  { id: "gilard-dubrul-1937", basis: "weight", rangeC: null },
  { id: "appen-1949", basis: "mole", rangeC: [20, 400] },
])("$id is by $basis, a mean over $rangeC °C", ({ id, basis, rangeC }) => {
  expect(PUBLISHED_SETS.filter((candidate) => candidate.id === id)).toMatchObject([{ basis, rangeC, source: id }]);
});

describe("an oxide that a set has no figure for", () => {
  it.each(PUBLISHED_SETS.map(({ id }) => id))("counts nothing in the sum of %s", (id) => {
    close(set(id).expansion({ SiO2: 60, Na2O: 20, WO3: 20 }), set(id).expansion({ SiO2: 60, Na2O: 20 }));
  });
});

/**
 * Measured glasses beside the sets' sums. The tolerance is the set's own: Appen's 20–400 °C means come close; the sets
 * by weight are means over other ranges and were never meant to match a 20–300 °C figure.
 */
const measured: { glass: string; weight: Record<string, number>; value: number; source: string }[] = [
  { glass: "borosilicate 3.3", weight: BOROSILICATE, value: 3.3, source: "iso-3585, read second-hand" },
  { glass: "float", weight: FLOAT, value: 8.3, source: "float-bulletin, read second-hand, 24–302 °C" },
  {
    glass: "container",
    weight: { SiO2: 74, Na2O: 13, CaO: 10.5, Al2O3: 1.3, K2O: 0.3, MgO: 0.2, Fe2O3: 0.04, TiO2: 0.01 },
    value: 9.0,
    source: "glass-property-list, read second-hand, 100–300 °C",
  },
  {
    glass: "E-glass",
    weight: { SiO2: 54.5, Al2O3: 14.5, CaO: 17, MgO: 4.5, B2O3: 8.5, Na2O: 0.5 },
    value: 5.4,
    source: "from memory",
  },
  {
    glass: "handbook soda-lime",
    weight: { SiO2: 73.01, Al2O3: 1.0, Na2O: 17.0, MgO: 4.0, CaO: 5.0 },
    value: 9.35,
    source: "mclellan-shand-1984, as listed in the SciGlass data",
  },
  {
    glass: "handbook aluminosilicate",
    weight: { SiO2: 62.0, Al2O3: 17.0, B2O3: 5.0, Na2O: 1.0, MgO: 7.0, CaO: 8.0 },
    value: 4.2,
    source: "mclellan-shand-1984, as listed in the SciGlass data",
  },
];

const TOLERANCE: Record<string, { abs: number; why: string }> = {
  "appen-1949": { abs: 1.05, why: "a 20–400 °C mean; 90 % of measured glazes lie within this" },
  "winkelmann-schott-1894": {
    abs: 2.8,
    why: "a 0–100 °C mean, alumina too high in it; 90 % of glazes lie within this",
  },
  "mayer-havas-1911": { abs: 2.9, why: "made for enamels; 90 % of measured glazes lie within this" },
  "english-turner-1927": { abs: 2.75, why: "a 25–90 °C mean; 90 % of measured glazes lie within this" },
  "hall-1930": { abs: 1.7, why: "figures from memory; 90 % of measured glazes lie within this" },
  "gilard-dubrul-1937": { abs: 2.8, why: "reads as a low-temperature mean; 90 % of measured glazes lie within this" },
};

/** Misses beyond the set's own tolerance, kept in sight: sum minus measured, 1e-6/K. */
const MISSES: Record<string, number> = { "borosilicate 3.3 by hall-1930": 1.8 };

describe("measured glasses", () => {
  for (const { glass, weight, value, source } of measured) {
    it.each(Object.keys(TOLERANCE))(`${glass} (${source}) by %s`, (id) => {
      const { basis } = set(id);
      const answer = askSet(set(id), basis === "mole" ? moles(weight) : weight);
      expect(answer.value).not.toBeNull();
      const miss = MISSES[`${glass} by ${id}`];
      if (miss === undefined) close(answer.value, value, { ...TOLERANCE[id]!, label: glass });
      else close(answer.value! - value, miss, { abs: 0.05, why: "a known miss, stated to its first decimal" });
    });
  }
});
