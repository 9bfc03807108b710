/** Shrinkage: measured bars, and the other ways of knowing it. @module */
import { z } from "zod";
import { words } from "./figures.ts";
import { SLATE_BARS } from "./larch-lane-sizes.ts";
import { Length, length, unit } from "./lengths.ts";
import { quantity } from "./quantity.ts";

const grams = (description: string, example: number) =>
  z
    .number()
    .gt(0)
    .max(100000)
    .meta({ description: `${description} [g].`, examples: [example] });

const BarWeights = z
  .strictObject({
    dryG: grams("The fired bar, dried at 110–150 °C", 41.2),
    soakedG: grams("Boiled 5 h, soaked 24 h, wiped", 42.3),
    suspendedG: grams("Soaked and hung in water; no porosity and density if left out", 24.1).optional(),
  })
  .meta({ id: "BarWeights", description: "Weighings of a fired bar for its water absorption (ASTM C373)." });

export const Direction = z.enum(["length", "diameter", "height"]).meta({
  id: "Direction",
  description: "What was measured: length of a bar, diameter of a ring or disc, height of a cylinder.",
  examples: ["length"],
});

export const Bar = z
  .strictObject({
    name: z
      .string()
      .max(60)
      .optional()
      .meta({ description: "What the bar is called; its place if left out.", examples: ["bar 3"] }),
    direction: Direction.optional(),
    plastic: length("Between the marks, plastic."),
    dry: length("Between the marks, bone dry.").optional(),
    fired: length("Between the marks, fired.").optional(),
    weights: BarWeights.optional(),
  })
  .meta({
    id: "Bar",
    description: "A bar, tile or ring, measured between the same two marks plastic, bone dry and fired.",
  });

const readTo = Length.optional().meta({
  description: "Finest division read off the ruler; 0.5 mm if left out.",
  examples: ["0.5 mm"],
});
const bars = z.array(Bar).min(1).max(200).meta({ description: "Bars, 1 to 200." });

export const ShrinkageRequest = z
  .strictObject({
    unit,
    bars,
    readTo,
    withinPercent: z
      .number()
      .min(0.01)
      .max(5)
      .optional()
      .meta({ description: "How near the mean should be known [points]; 0.3 if left out.", examples: [0.3] }),
    peakC: z
      .number()
      .min(400)
      .max(1700)
      .optional()
      .meta({ description: "Peak of the firing, repeated in the answer [°C]; none if left out.", examples: [1240] }),
  })
  .meta({ id: "ShrinkageRequest", description: "Measured bars.", examples: [SLATE_BARS] });

/** Described with its limits; the engine keeps them, and says what is wrong in better words than a validator. */
const percent = (description: string, example: number, minimum = 0) =>
  z.number().meta({ description: `${description} [%].`, examples: [example], minimum, maximum: 50 });
const plusMinus = z
  .number()
  .min(0)
  .max(10)
  .optional()
  .meta({ description: "Half-width of a 90 % interval [points]; 1 if left out, with a warning.", examples: [0.5] });
const heightPercent = percent(
  "Total shrinkage of height, where it was measured apart; as across if left out",
  13,
).optional();

/** A shrinkage, in one of the ways a maker may know it. */
export const Shrinkage = z
  .union([
    z
      .strictObject({
        percent: percent("Total shrinkage from plastic to fired, of plastic length", 12),
        plusMinus,
        dryingPercent: percent(
          "The part that drying takes, of plastic length; its usual share if left out",
          6,
        ).optional(),
        heightPercent,
      })
      .meta({ id: "StatedShrinkage", description: "A total shrinkage as stated." }),
    z
      .strictObject({
        dryingPercent: percent("Drying shrinkage, of plastic length", 6),
        firingPercent: percent("Firing shrinkage, of dry length", 7, -2),
        plusMinus,
        heightPercent,
      })
      .meta({ id: "StepwiseShrinkage", description: "Drying and firing shrinkage; they do not add up, and need not." }),
    z.strictObject({ bars, readTo }).meta({ id: "BarShrinkages", description: "Bars of one's own." }),
    z
      .strictObject({
        class: z
          .string()
          .max(60)
          .meta({ description: "Identifier from GET /v1/bodies.", examples: ["red-stoneware"] }),
      })
      .meta({ id: "ClassShrinkage", description: "The range of a class of clay." }),
  ])
  .meta({
    id: "Shrinkage",
    description: "A shrinkage: stated, in two steps, by measured bars, or by the class of clay alone.",
    examples: [{ percent: 12, plusMinus: 0.5 }],
  });

/** The total shrinkage that an answer was worked out with. */
export const shrinkageTaken = {
  across: quantity("Of widths [% of plastic length]."),
  up: quantity("Of heights [% of plastic length]."),
  from: words("What it rests on.", "12 % as stated, give or take 0.5"),
};
