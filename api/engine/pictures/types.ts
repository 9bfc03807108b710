/** What a picture may be asked to look like. @module */
import type { Temperature } from "../degrees.ts";
import type { LengthUnit } from "./marks/inches.ts";

/** Light and dark follow the pages; print is black on white and leans on pattern alone. */
export type ThemeName = "light" | "dark" | "print";

/** Widths that pictures are drawn for, in units of the drawing; each has a layout of its own. */
export type PictureWidth = 980 | 720 | 350;

/** Options of every picture. */
export interface PictureOptions {
  /** Colours; light if left out. */
  theme?: ThemeName;
  /** Width drawn for [px]; 980 if left out. */
  width?: PictureWidth;
  /** Unit of temperatures; °C if left out. */
  temperature?: Temperature;
  /** Unit of lengths; mm if left out. */
  length?: LengthUnit;
  /** Start of every id inside, for a page that shows one picture twice; worked out from the content if left out. */
  id?: string;
  /**
   * Whether it travels alone: the finding stands above in words, and a style of its own keeps figures in columns. Left
   * out or false, it is ready to be set into a page, whose policy may forbid styles inside.
   */
  standalone?: boolean;
}

/** Another glaze's place on the scale, marked by a lettered pin. */
export interface Trial {
  /** One or two letters. */
  letter: string;
  /** Stress in that glaze; tension positive [MPa]. */
  stressMPa: number;
  /** The one being looked at: its pin is solid. */
  current?: boolean;
}
