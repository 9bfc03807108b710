/** Lengths, volumes and weights as a maker writes them. @module */

/** Units of length that are read and answered in. */
export type LengthUnit = "mm" | "cm" | "in";

/**
 * A length: a bare number in the request's own unit, a text such as `"3 1/2 in"`, or a value with its unit.
 *
 * The text form: one number, a blank or none, one unit. The number is decimal with a point (`3.5`), a fraction
 * (`7/8`), a whole and a fraction (`3 1/2`, `3-1/2`) or has a fraction sign (`3½`). The unit is mm, cm or in, written
 * out or as ″. Two units in one text are refused.
 */
export type LengthInput = number | string | { value: number; unit: LengthUnit };

/** Units of volume. Fluid ounces differ between countries, so they carry one. */
export type VolumeUnit = "ml" | "l" | "us-fl-oz" | "imp-fl-oz" | "us-gal" | "imp-gal" | "us-pt" | "imp-pt";
/** A volume: a text such as `"350 ml"`, or a value with its unit. */
export type VolumeInput = string | { value: number; unit: VolumeUnit };

/** Units of weight. */
export type WeightUnit = "g" | "kg" | "lb" | "oz";
/** A weight: a text such as `"2.5 kg"`, or a value with its unit. */
export type WeightInput = string | { value: number; unit: WeightUnit };

/** A length rounded as it is set on callipers, beside the exact one. */
export interface RoundedLength {
  /** Rounded, in `unit`. */
  value: number;
  unit: LengthUnit;
  /** As said at the wheel: `102 mm`, `4 1/16 in`. */
  text: string;
}
