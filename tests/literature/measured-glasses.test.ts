/** The measured-glass models against glasses with printed properties. */
import { describe, expect, it } from "vitest";
import { analyseGlaze } from "../../api/engine/chemistry/index.ts";
import { glassProperties, makishimaMackenzie } from "../../api/engine/glass/index.ts";
import { type Estimate, quantileOf } from "../../api/engine/quantity.ts";
import { close } from "../support/close.ts";

const LIST = "glass-property-list, read second-hand";
const HANDBOOK = "mclellan-shand-1984, as listed in the SciGlass data";

interface Glass {
  glass: string;
  /** Weight per cent; sulphate and arsenic of the print left out. */
  weight: Record<string, number>;
  /** Mean 20–300 °C or as near as printed [1e-6/K]. */
  expansion?: number;
  transitionC?: number;
  youngsGPa?: number;
  source: string;
}

/** Expansion over 0–300 °C and weight per cent. */
const HANDBOOK_GLASSES: readonly Pick<Glass, "expansion" | "weight">[] = [
  { expansion: 3.25, weight: { SiO2: 81.0, Al2O3: 2.0, B2O3: 13.0, Na2O: 4.0 } },
  { expansion: 4.6, weight: { SiO2: 63.99, Al2O3: 8.01, B2O3: 18.99, Li2O: 1, Na2O: 2, K2O: 3, BaO: 3.01 } },
  { expansion: 3.6, weight: { SiO2: 73.99, Al2O3: 0.99, B2O3: 15.0, Na2O: 4.0, PbO: 6.01 } },
  { expansion: 5.0, weight: { SiO2: 71.99, Al2O3: 6, B2O3: 11, Na2O: 7, K2O: 1.01, CaO: 1, BaO: 2 } },
  { expansion: 8.3, weight: { SiO2: 74.99, Al2O3: 1.5, Na2O: 14.0, CaO: 9.5 } },
  { expansion: 9.35, weight: { SiO2: 73.01, Al2O3: 1.0, Na2O: 17.0, MgO: 4.0, CaO: 5.0 } },
  { expansion: 8.0, weight: { SiO2: 69.51, B2O3: 11.5, Na2O: 9.0, K2O: 7.0, BaO: 2.99 } },
  { expansion: 9.4, weight: { SiO2: 68.0, Al2O3: 2, Na2O: 8, K2O: 9.49, CaO: 8.5, ZnO: 3.5, TiO2: 0.51 } },
  { expansion: 4.2, weight: { SiO2: 62.0, Al2O3: 17.0, B2O3: 5.0, Na2O: 1.0, MgO: 7.0, CaO: 8.0 } },
  { expansion: 9.35, weight: { SiO2: 63.0, Al2O3: 1.0, Na2O: 8.0, K2O: 6.0, PbO: 21.99 } },
  { expansion: 4.6, weight: { SiO2: 57.0, Al2O3: 16.01, B2O3: 4.0, MgO: 7.0, CaO: 10.0, PbO: 5.99 } },
  { expansion: 8.95, weight: { SiO2: 56.0, Al2O3: 2.0, Na2O: 4.0, K2O: 9.01, PbO: 28.99 } },
  {
    expansion: 9.2,
    weight: { SiO2: 50.5, B2O3: 4, Na2O: 11.5, CaO: 5, BaO: 15.99, ZnO: 7.5, TiO2: 2.5, ZrO2: 3 },
  },
  { expansion: 8.7, weight: { SiO2: 35.35, Al2O3: 2.02, K2O: 7.58, PbO: 51.51, TiO2: 3.53 } },
  { expansion: 8.7, weight: { SiO2: 32.0, Na2O: 1.0, K2O: 2.0, PbO: 65.0 } },
  { expansion: 9.85, weight: { SiO2: 55.1, Al2O3: 2.04, Na2O: 6.12, K2O: 8.16, MgO: 2.04, CaO: 3.06, PbO: 23.47 } },
  {
    expansion: 9.9,
    weight: { SiO2: 64.99, Al2O3: 2, Na2O: 7, K2O: 9, MgO: 1, CaO: 2, SrO: 10, BaO: 2.01, PbO: 1.99 },
  },
];

const glasses: readonly Glass[] = [
  {
    glass: "borosilicate 3.3",
    weight: { SiO2: 81, B2O3: 13, Na2O: 4, Al2O3: 2 },
    ...{ expansion: 3.3, transitionC: 525, youngsGPa: 63, source: "iso-3585, read second-hand" },
  },
  {
    glass: "float",
    weight: { SiO2: 72.6, Na2O: 13.9, CaO: 8.4, MgO: 3.9, Al2O3: 1.1, K2O: 0.6, Fe2O3: 0.11 },
    ...{ expansion: 8.3, youngsGPa: 72, source: "float-bulletin, read second-hand, 24–302 °C" },
  },
  {
    glass: "container",
    weight: { SiO2: 74, Na2O: 13, CaO: 10.5, Al2O3: 1.3, K2O: 0.3, MgO: 0.2, Fe2O3: 0.04, TiO2: 0.01 },
    ...{ expansion: 9.0, transitionC: 573, youngsGPa: 72, source: LIST },
  },
  {
    glass: "low-expansion borosilicate",
    weight: { SiO2: 81, B2O3: 12.5, Na2O: 4, Al2O3: 2.2, CaO: 0.02, K2O: 0.06 },
    ...{ expansion: 3.5, transitionC: 536, youngsGPa: 65, source: LIST },
  },
  {
    glass: "glass wool",
    weight: { SiO2: 63, Na2O: 16, CaO: 8, B2O3: 3.3, Al2O3: 5, MgO: 3.5, K2O: 0.8, Fe2O3: 0.3 },
    ...{ expansion: 10, transitionC: 551, youngsGPa: 75, source: LIST },
  },
  {
    glass: "lead-barium optical",
    weight: { SiO2: 41.2, PbO: 34.1, BaO: 12.4, ZnO: 6.3, K2O: 3.0, CaO: 2.5 },
    ...{ expansion: 7, transitionC: 540, youngsGPa: 67, source: LIST },
  },
  {
    glass: "E-glass",
    weight: { SiO2: 54.5, Al2O3: 14.5, CaO: 17, MgO: 4.5, B2O3: 8.5, Na2O: 0.5 },
    ...{ expansion: 5.4, youngsGPa: 72.4, source: "from memory" },
  },
  { glass: "fused silica", weight: { SiO2: 100 }, expansion: 0.55, transitionC: 1140, youngsGPa: 72, source: LIST },
  ...HANDBOOK_GLASSES.map((row, i) => ({ glass: `handbook glass ${i + 1}`, source: HANDBOOK, ...row })),
];

/** Outside the stated 90 % interval, kept in sight with the deviation, predicted minus measured, and what may explain it. */
const MISSES: Record<string, { off: number; abs: number; why: string }> = {
  "fused silica transitionC": {
    off: -520,
    abs: 60,
    why: "no flux at all: far outside the measured glasses, as the warning says; a straight sum cannot know",
  },
  "E-glass youngsGPa": {
    off: 12,
    abs: 2,
    why: "72 GPa is the figure for fibres, cooled so fast that they are less stiff than the bulk glasses of the data",
  },
};

const cases = glasses.flatMap(({ glass, weight, source, ...measured }) =>
  (["expansion", "transitionC", "youngsGPa"] as const).flatMap((property) => {
    const value = measured[property];
    return value === undefined ? [] : { glass, weight, source, property, value };
  }),
);

describe("printed properties lie inside the stated 90 % interval, or the miss is written down", () => {
  it.each(cases)("$glass, $property $value ($source)", ({ glass, weight, property, value }) => {
    const { moleFractions } = analyseGlaze({ oxides: { basis: "weightPercent", amounts: weight } });
    const estimate: Estimate = glassProperties(moleFractions)[property];
    const miss = MISSES[`${glass} ${property}`];
    if (miss) {
      close(estimate.value - value, miss.off, { abs: miss.abs, why: miss.why });
      return;
    }
    expect(quantileOf(estimate, 0.05), "low end").toBeLessThanOrEqual(value);
    expect(quantileOf(estimate, 0.95), "high end").toBeGreaterThanOrEqual(value);
  });
});

describe("Young's modulus by Makishima and Mackenzie", () => {
  it("gives 69.5 GPa for float glass with Appen's density (calculated from the published table; measured 72)", () => {
    const amounts = { SiO2: 72.6, Na2O: 13.9, CaO: 8.4, MgO: 3.9, Al2O3: 1.1, K2O: 0.6 };
    const { moleFractions } = analyseGlaze({ oxides: { basis: "weightPercent", amounts } });
    close(makishimaMackenzie(moleFractions).value, 69.5, { abs: 0.05 });
  });
  it("names the oxides it has no figure for", () => {
    expect(makishimaMackenzie({ SiO2: 0.8, Na2O: 0.15, CoO: 0.05, WO3: 0 }).missing).toEqual(["CoO"]);
  });
  it("takes a density that is given: 2 × 2.5/60.557 × (0.75 × 14 + 0.25 × 11.2) × (0.75 × 68 + 0.25 × 31.9)", () => {
    // Molar masses 60.083 and 61.979: 0.75 × 60.083 + 0.25 × 61.979 = 60.557.
    const { value } = makishimaMackenzie({ SiO2: 0.75, Na2O: 0.25 }, 2.5);
    close(value, ((2 * 2.5) / 60.557) * 13.3 * 58.975, { abs: 0.005 });
  });
  it("counts the rest as the whole: a tenth of cobalt beside it changes nothing", () => {
    const { value } = makishimaMackenzie({ SiO2: 0.75, Na2O: 0.25 });
    close(makishimaMackenzie({ SiO2: 0.675, Na2O: 0.225, CoO: 0.1 }).value, value!, { rel: 1e-12 });
  });
  it("has no figure where nothing is known, or no density", () => {
    expect(makishimaMackenzie({ CoO: 1 })).toEqual({ value: null, missing: ["CoO"] });
    expect(makishimaMackenzie({ CoO: 1 }, 3)).toEqual({ value: null, missing: ["CoO"] });
    expect(makishimaMackenzie({}).value).toBeNull();
    // Germania stands in the table of the modulus and not in that of the volumes.
    expect(makishimaMackenzie({ GeO2: 1 })).toEqual({ value: null, missing: [] });
    // 2 × 3.6/104.628 × 14.2 × 49.5, molar mass 72.630 + 2 × 15.999.
    close(makishimaMackenzie({ GeO2: 1 }, 3.6).value, ((2 * 3.6) / 104.628) * 14.2 * 49.5, { abs: 0.005 });
  });
});
