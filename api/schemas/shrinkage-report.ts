/** What measured bars say. @module */
import { z } from "zod";
import { count, figure, magnitude, percent, words } from "./figures.ts";
import { answerFields, quantity, quantityOrNull } from "./quantity.ts";
import { Direction } from "./shrinkage.ts";

const sentence = (example: string) => words("The same in a sentence.", example);
const bars = (what: string) => count(`${what} [-].`, 5, { min: 1 });

const Outlier = z
  .strictObject({
    name: words("Which bar.", "bar 4"),
    percent: figure("Its shrinkage [%].", 14.1, { min: -100, max: 100 }),
    message: words(
      "What to look at.",
      "bar 4 gives 14.1 %, the others 12 % on average. Measure it again, and look for a crack or a bend.",
    ),
  })
  .meta({ id: "Outlier", description: "A bar that stands apart from the others; it stays in the mean." });

const ShrinkageFigure = z
  .strictObject({
    basis: z
      .enum(["plastic length", "dry length"])
      .meta({ description: "What it is a share of.", examples: ["plastic length"] }),
    bars: bars("Bars it comes from"),
    mean: quantity("Mean, with the interval that holds the clay's own figure [%]."),
    spread: quantityOrNull("Standard deviation from bar to bar [points]; null from a single bar."),
    nextPiece: quantity("What the next piece will shrink [%]."),
    outliers: z.array(Outlier).meta({ description: "Bars that stand apart (Grubbs, 5 %); empty if none." }),
    withoutOutliers: quantityOrNull("Mean without them [%]; null if none."),
    moreBars: count("Bars still to measure until the mean is known as near as asked [-].", 2),
    message: sentence(
      "Total shrinkage is 12 % of plastic length; nine times in ten the clay's own figure lies between 11.7 and 12.3 %, from 5 bars.",
    ),
  })
  .meta({
    id: "ShrinkageFigure",
    description: "One shrinkage: mean with the interval that holds the clay's own figure, spread, and the next piece.",
  });

const shrinkageOrNull = (description: string) => z.union([ShrinkageFigure, z.null()]).meta({ description });
const three = {
  drying: shrinkageOrNull("Drying shrinkage, of plastic length; null without dry lengths."),
  firing: shrinkageOrNull("Firing shrinkage, of dry length; null without dry and fired lengths."),
  total: shrinkageOrNull("Total shrinkage, of plastic length; null without fired lengths."),
};
const NOT_MEASURED = "null where not measured.";

export const ShrinkageReport = z
  .strictObject({
    headline: words(
      "The answer in a sentence.",
      "This clay loses 12 % from wet to fired at 1240 °C (11.7 to 12.3 %, nine times in ten): throw 113.6 mm for 100 mm fired.",
    ),
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
          .strictObject({
            difference: quantity("Of height less of width [points]."),
            message: sentence("Height shrinks 0.8 points more than width. Give both when you ask for sizes."),
          })
          .meta({ id: "HeightLessWidth", description: "Total shrinkage of height less that of width." }),
        z.null(),
      ])
      .meta({ description: "Height against width; null unless two of each were measured." }),
    absorption: z
      .union([
        z
          .strictObject({
            bars: bars("Bars weighed"),
            waterAbsorption: quantity("Water taken up [% of dry weight]."),
            apparentPorosity: quantityOrNull("Open pores [% of volume]; null where none was hung in water."),
            bulkDensity: quantityOrNull("Bulk density [g/cm3]; null where none was hung in water."),
            message: sentence(
              "The fired clay takes up 2.5 % of its weight in water (2.1 to 2.9 %): nearly tight; it weeps little.",
            ),
          })
          .meta({ id: "Absorption", description: "Water absorption of the fired bars (ASTM C373)." }),
        z.null(),
      ])
      .meta({ description: "From the weighings; null without any." }),
    bars: z
      .array(
        z
          .strictObject({
            name: words("Which bar.", "bar 1"),
            direction: Direction,
            plasticMm: magnitude("Plastic length [mm].", 100),
            dryingPercent: percent(`Drying shrinkage of plastic length [%]; ${NOT_MEASURED}`, 6).nullable(),
            firingPercent: figure(`Firing shrinkage of dry length, below 0 where it grew [%]; ${NOT_MEASURED}`, 6.5, {
              min: -100,
              max: 100,
            }).nullable(),
            totalPercent: percent(`Total shrinkage of plastic length [%]; ${NOT_MEASURED}`, 12.1).nullable(),
            absorptionPercent: percent(`Water absorption [% of dry weight]; ${NOT_MEASURED}`, 2.5).nullable(),
          })
          .meta({ id: "BarShrinkage", description: "One bar's figures." }),
      )
      .meta({ description: "Bar by bar, as given." }),
    ...answerFields,
  })
  .meta({ id: "ShrinkageReport", description: "What the bars say, by the definitions of ASTM C326." });
