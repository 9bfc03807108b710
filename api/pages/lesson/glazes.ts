/** The lesson's glazes and the question that they put. Invented, of the studio Larch Lane. @module */
import type { FitRequest } from "@ringtrue/sdk";

export type Oxides = Record<string, number>;

/** Analyses [wt %] of one that crazes, one that fits and one that shivers on the same clay. */
export const GLAZES: Readonly<Record<string, Oxides>> = {
  "Sea Fret": { SiO2: 66, Al2O3: 13, B2O3: 2, CaO: 11, Na2O: 4, K2O: 4 },
  "Low Sun": { SiO2: 69, Al2O3: 14, B2O3: 3, CaO: 9, Na2O: 2, K2O: 3 },
  Hoarfrost: { SiO2: 73, Al2O3: 14, B2O3: 3, CaO: 5, MgO: 3, Na2O: 0.5, K2O: 1.5 },
};

/** What the sliders set; null leaves the glaze as it is. */
export interface Setting {
  glaze: string;
  /** [wt %] */
  silica: number | null;
  soda: number | null;
  boron: number | null;
  /** Mean expansion of the clay, 20–500 °C [1e-6/K]. */
  body: number;
  thicknessMm: number;
  coolingCPerHour: number;
}

export const START: Setting = {
  glaze: "Sea Fret",
  silica: null,
  soda: null,
  boron: null,
  body: 6.2,
  thicknessMm: 0.3,
  coolingCPerHour: 100,
};
export const WALL_MM = 5;
export const PEAK_C = 1240;

/** The analysis with the sliders' oxides set and the others scaled to make up 100. */
export function oxidesOf({ glaze, silica, soda, boron }: Setting): Oxides {
  const base = GLAZES[glaze]!;
  const set = { SiO2: silica, Na2O: soda, B2O3: boron };
  const fixed = Object.entries(set).filter((entry): entry is [string, number] => entry[1] !== null);
  const taken = fixed.reduce((sum, [, value]) => sum + value, 0);
  const names = Object.keys(base).filter((oxide) => !fixed.some(([name]) => name === oxide));
  const left = names.reduce((sum, oxide) => sum + base[oxide]!, 0);
  const scaled = names.map((oxide) => [oxide, (base[oxide]! * Math.max(100 - taken, 1)) / left] as const);
  return Object.fromEntries([...fixed, ...scaled].map(([oxide, value]) => [oxide, Number(value.toFixed(3))]));
}

export function questionOf(setting: Setting): FitRequest {
  return {
    glaze: { oxides: { basis: "weightPercent", amounts: oxidesOf(setting) }, thicknessMm: setting.thicknessMm },
    body: { class: "red-stoneware", expansion: { value: setting.body, rangeC: [20, 500], plusMinus: 0.3 } },
    firing: { peakC: PEAK_C, coolingCPerHour: setting.coolingCPerHour },
    ware: { wallMm: WALL_MM, glazed: "both-faces" },
    include: ["curves"],
  };
}
