/** Batches: the question and the answer. @module */
import { z } from "zod";
import { flag, list, loss, magnitude, signed, words } from "./figures.ts";
import { RecipeGlaze } from "./glaze.ts";
import { THAW_BUCKET } from "./larch-lane-sizes.ts";
import { volume, Weight } from "./lengths.ts";
import { answerFields, quantity, quantityOrNull } from "./quantity.ts";
import { Page, Sheet } from "./rulers.ts";

/** Described with its limits; the engine keeps them, and says what is wrong in better words than a validator. */
const figure = (description: string, example: number, limits: { minimum?: number; maximum?: number } = {}) =>
  z.number().meta({ description, examples: [example], ...limits });
const gravity = (description: string) =>
  figure(`${description}; above 1 and below 2.3 [-].`, 1.45, { minimum: 1, maximum: 2.3 });

const Amount = z
  .union([
    z
      .strictObject({ dry: Weight.meta({ description: "Dry weight of the recipe." }) })
      .meta({ id: "DryAmount", description: "Dry weight of the recipe; additions come on top." }),
    z
      .strictObject({ volume: volume("Volume of the mixed glaze.") })
      .meta({ id: "VolumeAmount", description: "Volume of the mixed glaze." }),
    z
      .strictObject({
        dips: z
          .strictObject({
            pieces: z
              .number()
              .int()
              .meta({
                description: "How many are dipped, 1 to 100 000 [-].",
                examples: [24],
                minimum: 1,
                maximum: 100_000,
              }),
            areaCm2: figure("Glazed surface of one piece [cm2].", 400, { minimum: 0.1, maximum: 1e6 }),
            thicknessMm: figure("Fired glaze wanted on it [mm].", 0.3, { minimum: 0.01, maximum: 10 }),
            keepInBucket: volume("What must stay in the bucket to dip in.").optional(),
          })
          .meta({ description: "What is dipped, and what must stay in the bucket to dip in." }),
      })
      .meta({ id: "DipAmount", description: "Enough for a number of dips." }),
  ])
  .meta({ id: "Amount", description: "How much is wanted: dry weight, volume, or a number of dips." });

export const BatchRequest = z
  .strictObject({
    name: z
      .string()
      .max(60)
      .optional()
      .meta({ description: "What the glaze is called.", examples: ["Thaw"] }),
    glaze: RecipeGlaze,
    amount: Amount,
    specificGravity: gravity("Of the mixed glaze; 1.45 if left out, with a warning").optional(),
    solidsDensityGPerCm3: figure(
      "Density of the dry solids, where it was measured [g/cm3]; worked out from the materials if left out.",
      2.65,
      { minimum: 1.5, maximum: 7 },
    ).optional(),
    bucket: z
      .strictObject({ volume: volume("How much is in it."), specificGravity: gravity("As measured") })
      .optional()
      .meta({ description: "A bucket of this glaze whose specific gravity is off." }),
    page: Page.optional(),
  })
  .meta({ id: "BatchRequest", description: "A recipe, and how much of it.", examples: [THAW_BUCKET] });

const grams = (description: string, example: number) => magnitude(`${description} [g].`, example);

const BatchLine = z
  .strictObject({
    label: words("The line in words.", "whiting"),
    material: words("Identifier of the built-in material, null for your own.", "whiting").nullable(),
    addition: flag("Whether it stands among the additions.", false),
    inHundred: magnitude("Parts in a hundred of the recipe [-].", 18),
    weighG: grams("What to weigh, to 0.01; the lines add up to the total", 360),
    runningG: grams("What the scale shows when nothing was taken off", 1640),
    lossOnIgnitionPercent: loss("What of it leaves in the kiln [wt %]; below 0 for what takes up oxygen.", 43.57),
    lossG: signed("The same [g].", 156.85),
  })
  .meta({ id: "BatchLine", description: "One line, in the order of weighing: heaviest first, additions last." });

const sentence = (example: string) => words("The same in a sentence.", example);

export const BatchReport = z
  .strictObject({
    headline: words("The answer in a sentence.", "Thaw: 2000 g dry and about 1976 g of water make 2.74 l at 1.45."),
    name: words("What the glaze is called.", "Thaw"),
    lines: z.array(BatchLine).meta({ description: "Line by line, in the order of weighing." }),
    dry: z
      .strictObject({
        recipeG: grams("Recipe", 2000),
        additionsG: grams("Additions", 0),
        totalG: grams("Both", 2000),
      })
      .meta({ id: "DryWeight", description: "Dry weight of the batch." }),
    lossOnIgnition: z
      .strictObject({
        percent: loss("Of the dry batch [wt %]; below 0 where oxygen is taken up.", 9.68),
        lostG: signed("What leaves in the kiln [g].", 193.6),
        glassG: grams("What stays as glass", 1806.4),
      })
      .meta({ id: "BatchLoss", description: "What leaves in the kiln, and what stays." }),
    solidsDensity: quantity("Density of the dry solids [g/cm3]."),
    specificGravity: gravity("Of the mixed glaze"),
    water: quantity("Water to mix it with [g]."),
    volume: quantity("What it comes to, mixed [ml]."),
    dryPerLitre: quantity("Dry glaze in a litre of it [g/l]."),
    solids: quantity("Share of dry glaze [wt %]."),
    dips: z
      .union([
        z
          .strictObject({
            dryOnWare: quantity("Dry glaze that the ware carries away [g]."),
            message: sentence(
              "24 pieces of 400 cm2 with 0.3 mm of fired glaze carry about 797 g of dry glaze; 8 l stays in the bucket to dip in.",
            ),
          })
          .meta({ id: "DipAnswer", description: "Dry glaze that the ware carries away." }),
        z.null(),
      ])
      .meta({ description: "About the dips; null unless they were asked for." }),
    bucket: z
      .union([
        z
          .strictObject({
            dry: quantity("Dry glaze in the bucket [g]."),
            addWater: quantityOrNull("Water to add [g]; null where none is."),
            pourOff: quantityOrNull("Clear water to pour off after settling [g]; null where none is."),
            addDry: quantityOrNull("Dry glaze to add instead [g]; null where none is."),
            message: sentence(
              "5 l at 1.5 is too thick: stir in about 556 g of water, a little at a time, and measure again.",
            ),
          })
          .meta({
            id: "BucketAnswer",
            description: "Dry glaze in the bucket by Brongniart's rule, and what puts it right.",
          }),
        z.null(),
      ])
      .meta({ description: "About the bucket; null without one." }),
    steps: list(
      "What to do, in order.",
      "Weigh in this order and tick each line; the running total shows a slip at once.",
      "Start with 1780 g of water, add the dry glaze to it, and let it soak.",
    ),
    sheets: z.array(Sheet).meta({ description: "The batch sheet, to print and tick." }),
    ...answerFields,
  })
  .meta({ id: "BatchReport", description: "What to weigh, how much water, and a sheet to print." });
