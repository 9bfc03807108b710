/** Which properties are fitted, on which rows, with which terms. @module */
import { MODEL_OXIDES } from "../../api/engine/glass/oxides.ts";

/** One property to fit. */
export interface Spec {
  /** File name in data/models. */
  id: string;
  title: string;
  property: string;
  /** Column of glasses.csv. */
  column: string;
  unit: string;
  rangeC: [number, number] | null;
  /** Values outside are misprints or other materials and are left out. */
  plausible: [number, number];
  /** Residual beyond which a row counts linearly, in `unit`. */
  threshold: number;
  ridge: number;
  /** Smallest size that a term counts as: see HuberOptions [-]. */
  smallest: number;
  /** Scatter of an ordinary publication, in `unit`: see trusted-fit.ts. */
  ordinaryScatter: number;
  /** Axes of the picture: range, and distance of marks. */
  axis: { range: [number, number]; tick: number };
  /** Decimals to which the report prints errors. */
  decimals: number;
  /** What the report says before the figures. */
  caution?: string;
}

/** Oxides common enough in the data for their products to be fitted. */
const COMMON = "Al2O3 B2O3 Li2O Na2O K2O MgO CaO SrO BaO ZnO PbO TiO2 ZrO2 P2O5".split(" ");

/**
 * Terms of every model: each oxide, the network's charge balance, products of the common oxides, and how the break
 * where alumina runs out of alkali depends on the oxides.
 */
export const TERMS: readonly string[] = [
  ...MODEL_OXIDES.filter((oxide) => oxide !== "SiO2"),
  "AluminaWithAlkali",
  "AluminaWithFlux",
  "BoronInFour",
  ...COMMON.flatMap((a, i) => COMMON.slice(i).map((b) => `${a}*${b}`)),
  ...COMMON.slice(0, 10)
    .filter((oxide) => oxide !== "B2O3")
    .map((oxide) => `AluminaWithAlkali*${oxide}`),
];

/** A shorter set, for figures that the data say less about: oxides, charge balance, products of the groups. */
export const GROUP_TERMS: readonly string[] = [
  ...MODEL_OXIDES.filter((oxide) => oxide !== "SiO2"),
  ...["AluminaWithAlkali", "AluminaWithFlux", "BoronInFour"],
  ...["SiO2", "Al2O3", "B2O3", "R2O", "RO"].flatMap((a, i, all) => all.slice(i).map((b) => `${a}*${b}`)),
];

/** Terms tried beside {@link TERMS}: the other breaks of charge balance as they depend on each oxide. */
export const BREAK_TERMS: readonly string[] = ["AluminaWithFlux", "BoronInFour"].flatMap((group) =>
  COMMON.map((oxide) => `${group}*${oxide}`),
);

/** The plain set of terms that sets the floor: oxides, charge balance, mixed alkalis, products of the groups. */
export const PLAIN_TERMS: readonly string[] = [
  ...MODEL_OXIDES.filter((oxide) => oxide !== "SiO2"),
  ...["AluminaWithAlkali", "AluminaWithFlux", "BoronInFour", "Na2O*K2O", "Li2O*Na2O", "Li2O*K2O"],
  ...["R2O*R2O", "RO*RO", "Al2O3*Al2O3", "B2O3*B2O3", "SiO2*SiO2", "R2O*RO", "R2O*Al2O3", "R2O*B2O3"],
  ...["RO*Al2O3", "RO*B2O3", "Al2O3*B2O3"],
];

/** The properties, in the order in which the report takes them. */
export const SPECS: readonly Spec[] = [
  {
    id: "expansion",
    title: "Mean thermal expansion of silicate glasses",
    property: "mean linear thermal expansion below the glass transition, taken as 20–300 °C",
    column: "cte",
    unit: "1e-6/K",
    rangeC: [20, 300],
    plausible: [1, 20],
    threshold: 0.3,
    ridge: 1e-4,
    smallest: 0.004,
    ordinaryScatter: 0.25,
    axis: { range: [2, 14], tick: 2 },
    decimals: 2,
  },
  {
    id: "transition",
    title: "Glass transition temperature of silicate glasses",
    property: "glass transition temperature as usually reported",
    column: "tg",
    unit: "°C",
    rangeC: null,
    plausible: [250, 1000],
    threshold: 20,
    ridge: 1e-4,
    smallest: 0.004,
    ordinaryScatter: 15,
    axis: { range: [350, 900], tick: 100 },
    decimals: 0,
  },
  {
    id: "youngs",
    title: "Young's modulus of silicate glasses",
    property: "Young's modulus at room temperature",
    column: "youngs_gpa",
    unit: "GPa",
    rangeC: null,
    plausible: [30, 160],
    threshold: 2,
    ridge: 1e-4,
    smallest: 0.004,
    ordinaryScatter: 1.5,
    axis: { range: [40, 120], tick: 20 },
    decimals: 1,
  },
  {
    id: "liquidus",
    title: "Liquidus temperature of silicate glasses",
    property: "temperature above which no crystal survives; an indication only",
    column: "liquidus",
    unit: "°C",
    rangeC: null,
    plausible: [500, 1800],
    threshold: 30,
    ridge: 1e-4,
    smallest: 0.004,
    ordinaryScatter: 25,
    axis: { range: [700, 1600], tick: 100 },
    decimals: 0,
    caution: "An indication only: a smooth sum cannot follow the valleys between one crystal's field and the next.",
  },
];
