/** Glazes mixed with each other in steps, and how each mixture turns out. @module */
import type { Body } from "../body/types.ts";
import type { Notice } from "../errors.ts";
import type { Firing, Outcome, Verdict, Ware } from "../fit/types.ts";
import type { Quantity } from "../quantity.ts";
import type { Recipe, RecipeLine } from "../recipe/types.ts";

/** One corner: a recipe with a name. */
export interface Corner {
  name?: string;
  glaze: Recipe & { thicknessMm?: number };
}

/** What is to be mixed, how finely, and what for. */
export interface BlendRequest {
  /** Two for a line, three for a triangle, four for a grid, as many as you like for every mixture of them. */
  corners: readonly Corner[];
  /** Steps along an edge [-]; 10 if left out, or as many as make 2500 points or fewer. */
  steps?: number;
  /** Steps down a grid's side [-]; as many as across if left out. */
  stepsDown?: number;
  /** Every mixture of all corners, or a square with a corner at each corner; every mixture if left out. */
  shape?: "simplex" | "grid";
  body: Body;
  firing?: Firing;
  ware?: Ware;
  /** Thickness as fired [mm]; that of the first corner, else 0.3. */
  thicknessMm?: number;
  /** Index of the first point wanted, from 0: to go on where a stream broke off. */
  from?: number;
  /** How many points, from there. */
  count?: number;
  seed?: number;
}

/** One tile of a blend. */
export interface BlendPoint {
  /** Place in the order of weighing, from 0. */
  index: number;
  /** Points of the whole blend. */
  of: number;
  /** What to scratch into the back of the tile. */
  label: string;
  /** Share of each corner by dry weight; sums to 1 [-]. */
  shares: number[];
  /** What changes from the tile before, in words; null for the first. */
  move: string | null;
  /** The mixture for 100 parts. */
  recipe: RecipeLine[];
  additions: RecipeLine[];
  /** Moles with the fluxes at one; null without flux. */
  seger: Record<string, number> | null;
  expansion: Quantity;
  verdict: Verdict;
  probabilities: Record<Outcome, number>;
  stress: Quantity;
  warnings: Notice[];
}

/** A point that the engine cannot judge. */
export interface BlendGap {
  index: number;
  of: number;
  label: string;
  shares: number[];
  move: string | null;
  problem: string;
}

/** The whole blend. */
export interface BlendReport {
  headline: string;
  corners: string[];
  points: (BlendPoint | BlendGap)[];
  engine: { version: string; dataVersion: string; seed: number };
  warnings: Notice[];
  cautions: Notice[];
  sources: string[];
}
