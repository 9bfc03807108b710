/** Batches: what is wanted, and what to weigh. @module */
import type { Notice } from "../errors.ts";
import type { VolumeInput, WeightInput } from "../lengths/index.ts";
import type { Quantity } from "../quantity.ts";
import type { Recipe } from "../recipe/types.ts";
import type { Paper, SheetDrawing } from "../rulers/index.ts";

/** How much is wanted. */
export type Amount =
  /** Of the recipe; additions come on top. */
  | { dry: WeightInput }
  /** Of the bucket, mixed. */
  | { volume: VolumeInput }
  | { dips: Dips };

export interface Dips {
  pieces: number;
  /** Glazed surface of one piece [cm2]. */
  areaCm2: number;
  /** Fired glaze that is wanted on it [mm]. */
  thicknessMm: number;
  /** What must be left to dip in. */
  keepInBucket?: VolumeInput;
}

export interface BatchRequest {
  name?: string;
  glaze: Recipe;
  amount: Amount;
  /** Of the mixed glaze [-]. */
  specificGravity?: number;
  /** Of the dry solids, where it was measured [g/cm3]. */
  solidsDensityGPerCm3?: number;
  /** A bucket of this glaze whose gravity is off. */
  bucket?: { volume: VolumeInput; specificGravity: number };
  page?: Paper;
}

/** One line, in the order of weighing. */
export interface BatchLine {
  label: string;
  material: string | null;
  addition: boolean;
  /** Of 100 of the recipe [-]. */
  inHundred: number;
  weighG: number;
  runningG: number;
  lossOnIgnitionPercent: number;
  /** What of it leaves in the kiln [g]. */
  lossG: number;
}

export interface BucketAnswer {
  /** Dry glaze in it as it stands. */
  dry: Quantity;
  addWater: Quantity | null;
  pourOff: Quantity | null;
  addDry: Quantity | null;
  message: string;
}

export interface BatchReport {
  headline: string;
  name: string;
  lines: BatchLine[];
  /** [g] */
  dry: { recipeG: number; additionsG: number; totalG: number };
  lossOnIgnition: { percent: number; lostG: number; glassG: number };
  solidsDensity: Quantity;
  specificGravity: number;
  water: Quantity;
  volume: Quantity;
  dryPerLitre: Quantity;
  solids: Quantity;
  dips: { dryOnWare: Quantity; message: string } | null;
  bucket: BucketAnswer | null;
  steps: string[];
  sheets: SheetDrawing[];
  warnings: Notice[];
  cautions: Notice[];
  sources: string[];
}
