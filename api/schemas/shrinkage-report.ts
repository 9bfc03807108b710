/** What measured bars say. @module */
import { z } from "zod";
import { answerFields, Quantity } from "./quantity.ts";
import { Direction } from "./shrinkage.ts";

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
