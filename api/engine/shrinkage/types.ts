/** Measured bars, stated shrinkages, and what they say. @module */
import type { Notice } from "../errors.ts";
import type { LengthInput, LengthUnit } from "../lengths/index.ts";
import type { Quantity } from "../quantity.ts";

/** What was measured: a bar's length, a ring's or disc's diameter, a cylinder's height. */
export type Direction = "length" | "diameter" | "height";

/** One bar, tile or ring, measured between the same two marks each time. */
export interface Bar {
  name?: string;
  /** `length` if left out. */
  direction?: Direction;
  /** As formed. */
  plastic: LengthInput;
  /** Bone dry. */
  dry?: LengthInput;
  fired?: LengthInput;
  /** Of the fired bar, for its absorption. */
  weights?: Weights;
}

/** Weighings of ASTM C373 [g]. */
export interface Weights {
  dryG: number;
  /** Soaked, surface dried. */
  soakedG: number;
  /** Soaked, hung in water. */
  suspendedG?: number;
}

/** Bars to be worked out. */
export interface ShrinkageRequest {
  /** Unit of lengths that name none; mm if left out. */
  unit?: LengthUnit;
  bars: readonly Bar[];
  /** Finest division of the ruler; 0.5 mm if left out. */
  readTo?: LengthInput;
  /** How near the mean should be known [points]; 0.3 if left out. */
  withinPercent?: number;
  /** Peak of the firing [°C], repeated in the answer. */
  peakC?: number;
}

/** A bar whose shrinkage stands apart from the others. */
export interface Outlier {
  name: string;
  percent: number;
  message: string;
}

/** One shrinkage from several bars. */
export interface ShrinkageFigure {
  /** What it is a share of. */
  basis: "plastic length" | "dry length";
  bars: number;
  /** Mean with the interval that holds the true mean. */
  mean: Quantity;
  /** Standard deviation from bar to bar; null from a single bar. */
  spread: Quantity | null;
  /** Where the next piece of the same clay and firing should fall. */
  nextPiece: Quantity;
  outliers: Outlier[];
  /** Mean without them; null where there are none. */
  withoutOutliers: Quantity | null;
  /** Bars still to measure until the mean is known as near as asked. */
  moreBars: number;
  message: string;
}

/** The three shrinkages of one direction; null where the lengths for it were not given. */
export interface Shrinkages {
  drying: ShrinkageFigure | null;
  firing: ShrinkageFigure | null;
  total: ShrinkageFigure | null;
}

/** Absorption and what hangs on it, from the weighings. */
export interface Absorption {
  bars: number;
  waterAbsorption: Quantity;
  /** Null where no bar was weighed hung in water. */
  apparentPorosity: Quantity | null;
  bulkDensity: Quantity | null;
  message: string;
}

/** What the bars say. */
export interface ShrinkageReport extends Shrinkages {
  headline: string;
  /** Each direction measured, apart. */
  byDirection: (Shrinkages & { direction: Direction })[];
  /** Height less width, total shrinkage; null unless both were measured. */
  heightLessWidth: { difference: Quantity; message: string } | null;
  absorption: Absorption | null;
  bars: {
    name: string;
    direction: Direction;
    plasticMm: number;
    dryingPercent: number | null;
    firingPercent: number | null;
    totalPercent: number | null;
    absorptionPercent: number | null;
  }[];
  warnings: Notice[];
  cautions: Notice[];
  sources: string[];
}

/** A total shrinkage as stated, of plastic length [%]. */
export interface StatedShrinkage {
  percent: number;
  /** Half-width of a 90 % interval [points]. */
  plusMinus?: number;
  dryingPercent?: number;
  /** Of height, where it was measured apart. */
  heightPercent?: number;
}

/** Drying of plastic length and firing of dry length [%]. */
export interface StepwiseShrinkage {
  dryingPercent: number;
  firingPercent: number;
  plusMinus?: number;
  heightPercent?: number;
}

/** A shrinkage as a maker may know it: stated, in two steps, measured, or by the class of clay alone. */
export type ShrinkageInput =
  | StatedShrinkage
  | StepwiseShrinkage
  | { bars: readonly Bar[]; readTo?: LengthInput }
  | { class: string };

/** A share of length with its 90 % interval [-]. */
export interface Share {
  value: number;
  low: number;
  high: number;
}

/** A shrinkage ready to compute with; every share is of plastic length [-]. */
export interface KnownShrinkage {
  across: Share;
  up: Share;
  drying: Share;
  /** Standard deviation from piece to piece [-]. */
  pieceSd: number;
  /** What it rests on, in words. */
  from: string;
  warnings: Notice[];
  sources: string[];
}
