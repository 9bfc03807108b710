/** Things to print and throw by: rulers, templates, gauges. @module */
import type { Notice } from "../errors.ts";
import type { LengthInput, LengthUnit } from "../lengths/index.ts";
import type { Quantity } from "../quantity.ts";
import type { ShrinkageInput } from "../shrinkage/index.ts";
import type { SheetDrawing } from "./drawing.ts";

export type Paper = "A4" | "Letter";

/** A ruler whose printed divisions are fired ones. */
export interface RulerDraw {
  ruler: {
    /** Fired length to reach. */
    length: LengthInput;
    /** Which shrinkage it carries; across if left out. */
    reads?: "across" | "up";
  };
}

/** A rib or profile template: the outline as thrown. */
export interface TemplateDraw {
  template: {
    name?: string;
    /** Fired diameters and heights, in order along the outline. */
    points: readonly { across: LengthInput; up: LengthInput }[];
    /** Which side of the wall the card lies on; outside if left out. */
    side?: "outside" | "inside";
  };
}

/** Gauges for lid and gallery. */
export interface GaugeDraw {
  gauges: {
    /** Fired diameter inside the gallery. */
    gallery: LengthInput;
    /** Fired play all round, between one side of lid and gallery. */
    clearance: LengthInput;
  };
}

export interface RulerRequest {
  /** Unit of lengths that name none, and of the ruler's divisions; mm if left out. */
  unit?: LengthUnit;
  shrinkage: ShrinkageInput;
  draw: RulerDraw | TemplateDraw | GaugeDraw;
  /** A4 if left out. */
  page?: Paper;
}

/** One length as it is drawn. */
export interface DrawnLength {
  name: string;
  /** Fired [mm]. */
  firedMm: number;
  /** On the paper, with what the shrinkage leaves open [mm]. */
  drawn: Quantity;
}

export interface RulerReport {
  headline: string;
  shrinkage: { across: Quantity; up: Quantity; from: string };
  paper: Paper;
  lengths: DrawnLength[];
  sheets: SheetDrawing[];
  warnings: Notice[];
  cautions: Notice[];
  sources: string[];
}
