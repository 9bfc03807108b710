/** What a maker weighs out: the shapes of recipe, lines and materials. @module */

/** Analysis of a material or glaze as dried: weight per cent of oxides, with what leaves in the kiln. */
export interface Analysis {
  /** Oxide formula → weight per cent as dried [wt %]. */
  weightPercent: Readonly<Record<string, number>>;
  /** Loss on ignition [wt % of the dried material]. */
  lossOnIgnitionPercent?: number;
}

/** One line: exactly one of a built-in material id, an analysis or a mineral formula; and its parts by weight. */
export type RecipeLine =
  | { material: string; parts: number }
  | { name?: string; analysis: Analysis; parts: number }
  | { name?: string; formula: string; parts: number };

/** A recipe. Parts need not total 100; additions (colourants, opacifiers) count in the chemistry, apart in the batch. */
export interface Recipe {
  recipe: readonly RecipeLine[];
  additions?: readonly RecipeLine[];
}

/** A composition given directly. */
export interface OxideComposition {
  oxides: {
    basis: "weightPercent" | "molePercent" | "moles";
    amounts: Readonly<Record<string, number>>;
  };
}

/** A glaze known only by its measured (or inferred) expansion. */
export interface StatedExpansion {
  expansion: {
    /** Mean linear expansion over `rangeC` [1e-6/K]. */
    value: number;
    /** Range of the mean [°C]; 20–300 if left out, and a warning says so. */
    rangeC?: readonly [number, number];
    /** Half-width of a 90 % interval [1e-6/K]. */
    plusMinus?: number;
  };
  /** Glass transition temperature where known [°C]. */
  transitionC?: number;
}

/** One coat of glaze, in one of three ways of knowing it; thickness as fired. */
export type SingleGlaze = (Recipe | OxideComposition | StatedExpansion) & { thicknessMm?: number };

/** Coats over one another, the outer one first, the last on the clay; each with its own thickness. */
export interface LayeredGlaze {
  layers: readonly SingleGlaze[];
  thicknessMm?: undefined;
}

/** A glaze: one coat, or several. */
export type Glaze = SingleGlaze | LayeredGlaze;

/** One of the built-in, supplier-neutral materials. Exactly one of `formula` and `analysis` is given. */
export interface Material {
  /** Stable kebab-case identifier. */
  id: string;
  name: string;
  /** Other names of the trade, accepted in recipes as well. */
  aliases: readonly string[];
  kind: string;
  /** Theoretical formula, for minerals and chemicals. */
  formula?: string;
  /** Typical analysis, for what is dug. */
  analysis?: Analysis;
  /** Half-width of a 90 % interval from bag to bag, oxide → weight per cent as dried [wt %]. */
  plusMinusWeightPercent: Readonly<Record<string, number>>;
  /** Where the spread comes from: a published or remembered range, or the rule of the data file. */
  spreadFrom: "range" | "rule";
  /** How far the printed analysis may stray from 100 [wt %]. */
  totalDoubtPercent: number;
  /** Density of the grains [g/cm3], `null` where no figure was found. */
  densityGPerCm3: number | null;
  /** What happens in the kiln, where that helps. */
  inTheKiln: string | null;
  cautions: readonly { code: string; message: string }[];
  /** Keys of `data/sources.json`. */
  sources: readonly string[];
  provenance: "read" | "part read" | "from memory" | "derived";
  confidence: "good" | "fair" | "low";
  note: string | null;
}
