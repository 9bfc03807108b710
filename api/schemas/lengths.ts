/** Lengths, volumes and weights in the units of the bench. @module */
import { z } from "zod";
import { magnitude, words } from "./figures.ts";

export const LengthUnit = z.enum(["mm", "cm", "in"]).meta({
  id: "LengthUnit",
  description: "Unit of length: millimetres, centimetres or inches.",
  examples: ["mm"],
});

export const Length = z
  .union([
    z.number().meta({ minimum: 0 }),
    z.string().min(1).max(40),
    z.strictObject({
      value: z.number().meta({ description: "The length, in `unit`.", examples: [3.5], minimum: 0 }),
      unit: LengthUnit,
    }),
  ])
  .meta({
    id: "Length",
    description:
      "A length. A number is in the request's `unit`, mm if left out. A text is one number and one unit: decimal with a " +
      "point, a fraction, a whole and a fraction or a fraction sign, then mm, cm or in (`90 mm`, `3.5in`, `3 1/2 in`, `3½ in`). " +
      "Or a value with its unit.",
    examples: ["3 1/2 in", 90, { value: 3.5, unit: "in" }],
  });

export const Volume = z
  .union([
    z.string().min(1).max(40),
    z.strictObject({
      value: z.number().meta({ description: "The volume, in `unit`.", examples: [350], minimum: 0 }),
      unit: z.enum(["ml", "l", "us-fl-oz", "imp-fl-oz", "us-gal", "imp-gal", "us-pt", "imp-pt"]).meta({
        description: "Unit of volume: metric, or fluid ounces, gallons and pints of the United States or Britain.",
        examples: ["ml"],
      }),
    }),
  ])
  .meta({
    id: "Volume",
    description:
      "A volume: a text of one number and one unit (`350 ml`, `2.5 l`, `12 us fl oz`, `5 us gal`, `3 imp pints`), or a " +
      "value with its unit.",
    examples: ["350 ml"],
  });

export const Weight = z
  .union([
    z.string().min(1).max(40),
    z.strictObject({
      value: z.number().meta({ description: "The weight, in `unit`.", examples: [2], minimum: 0 }),
      unit: z.enum(["g", "kg", "lb", "oz"]).meta({ description: "Unit of weight.", examples: ["kg"] }),
    }),
  ])
  .meta({
    id: "Weight",
    description: "A weight: a text of one number and one unit (`2000 g`, `2.5 kg`, `5 lb`), or a value with its unit.",
    examples: ["2.5 kg"],
  });

export const RoundedLength = z
  .strictObject({
    value: magnitude("The length rounded as callipers are set, in `unit`.", 102),
    unit: LengthUnit,
    text: words("As said at the wheel.", "102 mm"),
  })
  .meta({ id: "RoundedLength", description: "A length rounded as it is set on callipers." });

/** A length with what it is. */
export const length = (description: string) => Length.meta({ description });
/** A length that callipers are set to, with what it is. */
export const rounded = (description: string) => RoundedLength.meta({ description });
/** A volume with what it is. */
export const volume = (description: string) => Volume.meta({ description });

/** Unit of lengths that name none. */
export const unit = LengthUnit.optional().meta({
  description: "Unit of lengths that name none; mm if left out.",
  examples: ["mm"],
});
