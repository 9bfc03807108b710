/** Measured bars: the question and the answer; and the ways of knowing a shrinkage. @module */
import { z } from "zod";
import { SLATE_BARS } from "./larch-lane-sizes.ts";
import { Length, unit } from "./lengths.ts";
import { answerFields, Quantity } from "./quantity.ts";

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
    suspendedG: grams("Soaked and hung in water; gives porosity and density", 24.1).optional(),
  })
  .meta({ id: "BarWeights", description: "Weighings of a fired bar for its water absorption (ASTM C373)." });

const Direction = z.enum(["length", "diameter", "height"]).meta({
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
    plastic: Length,
    dry: Length.optional(),
    fired: Length.optional(),
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
      .meta({ description: "Peak of the firing, repeated in the answer [°C].", examples: [1240] }),
  })
  .meta({ id: "ShrinkageRequest", description: "Measured bars.", examples: [SLATE_BARS] });

const Outlier = z
  .strictObject({
    name: z.string().meta({ description: "Which bar.", examples: ["bar 4"] }),
    percent: z.number().meta({ description: "Its shrinkage [%].", examples: [14.1] }),
    message: z.string().meta({ description: "What to look at." }),
  })
  .meta({ id: "Outlier", description: "A bar that stands apart from the others; it stays in the mean." });

const ShrinkageFigure = z
  .strictObject({
    basis: z
      .enum(["plastic length", "dry length"])
      .meta({ description: "What it is a share of.", examples: ["plastic length"] }),
    bars: z
      .number()
      .int()
      .meta({ description: "Bars it comes from [-].", examples: [5] }),
    mean: Quantity,
    spread: z
      .union([Quantity, z.null()])
      .meta({ description: "Standard deviation from bar to bar [points]; null from a single bar." }),
    nextPiece: Quantity,
    outliers: z.array(Outlier).meta({ description: "Bars that stand apart (Grubbs, 5 %); empty if none." }),
    withoutOutliers: z.union([Quantity, z.null()]).meta({ description: "Mean without them [%]; null if none." }),
    moreBars: z
      .number()
      .int()
      .meta({ description: "Bars still to measure until the mean is known as near as asked [-].", examples: [2] }),
    message: z.string().meta({ description: "The same in a sentence." }),
  })
  .meta({
    id: "ShrinkageFigure",
    description: "One shrinkage: mean with the interval that holds the clay's own figure, spread, and the next piece.",
  });

const figure = (description: string) => z.union([ShrinkageFigure, z.null()]).meta({ description });
const three = {
  drying: figure("Drying shrinkage, of plastic length; null without dry lengths."),
  firing: figure("Firing shrinkage, of dry length; null without dry and fired lengths."),
  total: figure("Total shrinkage, of plastic length; null without fired lengths."),
};
const percentOrNull = (description: string) =>
  z
    .number()
    .nullable()
    .meta({ description: `${description} [%]; null where not measured.`, examples: [12.1] });

export const ShrinkageReport = z
  .strictObject({
    headline: z.string().meta({ description: "The answer in a sentence." }),
    ...three,
    byDirection: z
      .array(
        z
          .strictObject({ direction: Direction, ...three })
          .meta({ id: "DirectionShrinkage", description: "Shrinkages of one direction." }),
      )
      .meta({ description: "Each direction that was measured." }),
    heightLessWidth: z
      .union([
        z
          .strictObject({ difference: Quantity, message: z.string().meta({ description: "The same in a sentence." }) })
          .meta({ id: "HeightLessWidth", description: "Total shrinkage of height less that of width." }),
        z.null(),
      ])
      .meta({ description: "Height against width; null unless two of each were measured." }),
    absorption: z
      .union([
        z
          .strictObject({
            bars: z
              .number()
              .int()
              .meta({ description: "Bars weighed [-].", examples: [5] }),
            waterAbsorption: Quantity,
            apparentPorosity: z.union([Quantity, z.null()]).meta({ description: "Open pores [% of volume]." }),
            bulkDensity: z.union([Quantity, z.null()]).meta({ description: "Bulk density [g/cm3]." }),
            message: z.string().meta({ description: "The same in a sentence." }),
          })
          .meta({ id: "Absorption", description: "Water absorption of the fired bars (ASTM C373)." }),
        z.null(),
      ])
      .meta({ description: "From the weighings; null without any." }),
    bars: z
      .array(
        z
          .strictObject({
            name: z.string().meta({ description: "Which bar.", examples: ["bar 1"] }),
            direction: Direction,
            plasticMm: z.number().meta({ description: "Plastic length [mm].", examples: [100] }),
            dryingPercent: percentOrNull("Drying shrinkage of plastic length"),
            firingPercent: percentOrNull("Firing shrinkage of dry length"),
            totalPercent: percentOrNull("Total shrinkage of plastic length"),
            absorptionPercent: percentOrNull("Water absorption of dry weight"),
          })
          .meta({ id: "BarShrinkage", description: "One bar's figures." }),
      )
      .meta({ description: "Bar by bar, as given." }),
    ...answerFields,
  })
  .meta({ id: "ShrinkageReport", description: "What the bars say, by the definitions of ASTM C326." });

const percent = (description: string, example: number) =>
  z.number().meta({ description: `${description} [%].`, examples: [example] });
const plusMinus = z
  .number()
  .min(0)
  .max(10)
  .optional()
  .meta({ description: "Half-width of a 90 % interval [points]; 1 if left out, with a warning.", examples: [0.5] });
const heightPercent = percent("Total shrinkage of height, where it was measured apart", 13).optional();

/** A shrinkage, in one of the ways a maker may know it. */
export const Shrinkage = z
  .union([
    z
      .strictObject({
        percent: percent("Total shrinkage from plastic to fired, of plastic length", 12),
        plusMinus,
        dryingPercent: percent("The part that drying takes, of plastic length", 6).optional(),
        heightPercent,
      })
      .meta({ id: "StatedShrinkage", description: "A total shrinkage as stated." }),
    z
      .strictObject({
        dryingPercent: percent("Drying shrinkage, of plastic length", 6),
        firingPercent: percent("Firing shrinkage, of dry length", 7),
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
