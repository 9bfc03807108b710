/** The layout of `data/models/*.json`: one fitted property, its spread and how well it did on unseen publications. @module */
import type { TermSumFile } from "./term-sum.ts";
import type { AccuracyFigures } from "./types.ts";

/** A property as fitted to measured glasses. */
export interface ModelFile extends TermSumFile {
  title: string;
  property: string;
  unit: string;
  /** Range of a mean value [°C], or null. */
  rangeC: [number, number] | null;
  licence: string;
  method: string;
  /** How the doubt depends on the glass: see spread.ts. */
  spread: SpreadFile;
  /** Standardised residuals of unseen publications: quantiles at (i + 0.5)/length. */
  shape: number[];
  training: {
    rows: number;
    publications: number;
    /** Oxide → [lowest, highest] of the central 99.8 % of training rows [mol %]. */
    rangesMolePercent: Record<string, [number, number]>;
    settings: Record<string, number | string>;
  };
  /** Scored on publications left out of the fit, by domain. */
  heldOut: Record<string, AccuracyFigures>;
  /** The same for glazes, fold by fold: what a test fits again to see that these figures have not drifted. */
  glazeFolds: AccuracyFigures[];
  intervals: IntervalFigures[];
  betweenPapers: PapersFigures;
  sources: string[];
}

/**
 * How far publications disagree about one glass, in the property's unit. The truth lies between the two: among the
 * pairs with equal values (to half a per cent) some are reprints and some are laboratories that agree.
 */
export interface PapersFigures {
  all: PairFigures;
  unequal: PairFigures;
}

/** Differences between pairs of publications. */
export interface PairFigures {
  pairs: number;
  median: number;
  rms: number;
  p90: number;
}

/** The scale of the residuals as a function of the glass: see spread.ts. */
export interface SpreadFile {
  base: number;
  /** Oxide → change of ln scale per mole fraction. */
  slopes: Record<string, number>;
  /** Change of ln scale per ln leverage. */
  leverageSlope: number;
  /** Inverse Cholesky factor of the training rows' moments, lower triangle row by row. */
  leverageFactor: number[];
  /** ln scale never leaves these limits inside the training range. */
  limits: [number, number];
}

/** How often a stated 90 % interval held, in one quarter of stated width. */
export interface IntervalFigures {
  domain: string;
  /** `all`, or `narrowest`, `second`, `third`, `widest` quarter. */
  quarter: string;
  n: number;
  /** Share of unseen rows inside the interval [-]. */
  held: number;
  /** Median half-width in the property's unit. */
  medianHalfWidth: number;
}

/** A viscosity curve whose parameters are sums of terms: see myega.ts. */
export interface ViscosityFile {
  title: string;
  property: string;
  unit: string;
  form: string;
  licence: string;
  method: string;
  /** A, one for all glasses [log10 Pa·s]. */
  limit: number;
  /** Temperature of 10^12 Pa·s [K]; never outside `range`. */
  t12K: TermSumFile & { range: [number, number] };
  /** Natural logarithm of the fragility; never outside `range`. */
  lnFragility: TermSumFile & { range: [number, number] };
  /** Scatter of a point: logSd, and temperatureSdK times the slope of the curve, as a root of squares. */
  noise: { logSd: number; temperatureSdK: number };
  /** Scale of the errors in units of that scatter. */
  spread: SpreadFile;
  shape: number[];
  training: {
    points: number;
    rows: number;
    publications: number;
    rangesMolePercent: Record<string, [number, number]>;
  };
  /** Column → errors among glazes on publications left out: K for temperatures, log10 for viscosities. */
  heldOut: Record<string, AccuracyFigures>;
  intervals: IntervalFigures[];
  sources: string[];
}
