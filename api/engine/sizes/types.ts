/** Sizes: what is wanted fired, and what to throw for it. @module */
import type { Notice } from "../errors.ts";
import type { LengthInput, LengthUnit, RoundedLength, VolumeInput } from "../lengths/index.ts";
import type { Quantity } from "../quantity.ts";
import type { ShrinkageInput } from "../shrinkage/index.ts";

/** Parts of a pot that have a size. Heights shrink as height does, all others as width. */
export const PARTS = [
  "height",
  "depth",
  "diameter",
  "rim",
  "belly",
  "neck",
  "foot",
  "gallery",
  "flange",
  "length",
  "width",
  "wall",
  "floor",
] as const;
export type Part = (typeof PARTS)[number];
/** Parts measured upwards. */
export const UPRIGHT: ReadonlySet<string> = new Set(["height", "depth", "floor"]);

/** When a pot was measured. */
export type Stage = "thrown" | "leather-hard" | "bone-dry" | "fired";

/** Shape of a pot, by its outline from the foot up. Widths are diameters. */
export type Form =
  | { form: "straight"; diameter: LengthInput; height: LengthInput }
  | { form: "tapered"; foot: LengthInput; rim: LengthInput; height: LengthInput }
  | { form: "rounded"; foot?: LengthInput; rim: LengthInput; height: LengthInput }
  | { form: "points"; points: readonly { across: LengthInput; up: LengthInput }[] };

export type Profile = Form & {
  /** Which side of the wall was measured. */
  dimensions: "outside" | "inside";
  wall: LengthInput;
  /** Thickness of the floor; the wall's if left out. */
  floor?: LengthInput;
  /** How far below the rim it is filled; to the rim if left out. */
  belowRim?: LengthInput;
  /** Scales the outline until it holds this much, fired, to the line. */
  holds?: VolumeInput;
};

export interface SizesRequest {
  /** Unit of lengths that name none; mm if left out. */
  unit?: LengthUnit;
  /** Unit of the answer; `unit` if left out. */
  answerIn?: LengthUnit;
  shrinkage: ShrinkageInput;
  fired?: Partial<Record<Part, LengthInput>> & { capacity?: VolumeInput };
  set?: { pieces?: number; tolerance?: LengthInput; scales?: readonly number[] };
  lid?: LidRequest;
  profile?: Profile;
  slabs?: readonly SlabRequest[];
  oldNotes?: { shrinkage: ShrinkageInput; thrown: readonly { name: string; size: LengthInput; upright?: boolean }[] };
  clay?: { plasticDensityGPerCm3?: number; trimmingPercent?: number; throwingLossPercent?: number };
}

export interface LidRequest {
  /** Diameter of the pot where the lid sits: inside the gallery, or outside the neck for a lid that goes over it. */
  seat: LengthInput;
  stage: Stage;
  sits?: "inside" | "over";
  /** Fired play all round, between one side of lid and pot. */
  clearance: LengthInput;
  /** Fired thickness of glaze on seat and flange together, one side; none if left out. */
  glaze?: LengthInput;
  /** Fired lid size wished for, to be checked. */
  flange?: LengthInput;
  firedTogether?: boolean;
  /** Of the lid's clay, where it is another. */
  shrinkage?: ShrinkageInput;
}

export interface SlabRequest {
  name?: string;
  length: LengthInput;
  width: LengthInput;
  thickness?: LengthInput;
  pieces?: number;
  wastePercent?: number;
}

/** One size on its way through the kiln. */
export interface Size {
  name: string;
  /** What it should measure fired. */
  target: RoundedLength;
  /** Exact size to throw; the interval comes from the shrinkage. */
  thrown: Quantity;
  /** The same as it is set on callipers; the stages below follow from it. */
  throwTo: RoundedLength;
  leatherHard: Quantity;
  boneDry: Quantity;
  /** Where it lands fired. */
  lands: Quantity;
  /** For a set: throw each piece between these; null without a tolerance, or where the clay varies more. */
  throwBetween: { low: number; high: number; unit: LengthUnit } | null;
}

export interface Volumes {
  fired: Quantity;
  thrown: Quantity;
  message: string;
}

export interface Clay {
  /** Wet clay to wedge for one [g]. */
  perPiece: Quantity;
  wedge: string;
  forAll: { pieces: number; weight: Quantity; text: string } | null;
}

export interface LidAnswer {
  /** Fired diameter of the seat. */
  seat: Quantity;
  lid: Size;
  /** Fired play, one side. */
  play: Quantity;
  message: string;
}

export interface SizesReport {
  headline: string;
  shrinkage: { across: Quantity; up: Quantity; from: string };
  sizes: Size[];
  set: { pieces: number | null; message: string } | null;
  lid: LidAnswer | null;
  /** To the line. */
  capacity: Volumes | null;
  clay: Clay | null;
  slabs: { name: string; sizes: Size[]; pieces: number; clay: Clay | null }[];
  oldNotes: { name: string; thrownThen: RoundedLength; fired: Quantity; throwNow: Quantity; throwTo: RoundedLength }[];
  warnings: Notice[];
  cautions: Notice[];
  sources: string[];
}
