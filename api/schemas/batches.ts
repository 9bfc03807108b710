/** Batches: the question and the answer. @module */
import { z } from "zod";
import { RecipeGlaze } from "./glaze.ts";
import { THAW_BUCKET } from "./larch-lane-sizes.ts";
import { Volume, Weight } from "./lengths.ts";
import { answerFields, Quantity } from "./quantity.ts";
import { Page, Sheet } from "./rulers.ts";

/** Described with its limits; the engine keeps them, and says what is wrong in better words than a validator. */
const figure = (description: string, example: number, limits: { minimum?: number; maximum?: number } = {}) =>
  z.number().meta({ description, examples: [example], ...limits });
const gravity = (description: string) => figure(`${description} [-].`, 1.45, { minimum: 1, maximum: 2.3 });

const Amount = z
  .union([
    z
      .strictObject({ dry: Weight })
      .meta({ id: "DryAmount", description: "Dry weight of the recipe; additions come on top." }),
    z.strictObject({ volume: Volume }).meta({ id: "VolumeAmount", description: "Volume of the mixed glaze." }),
    z
      .strictObject({
        dips: z
          .strictObject({
            pieces: z
              .number()
              .int()
              .meta({ description: "How many are dipped, 1 to 100 000 [-].", examples: [24] }),
            areaCm2: figure("Glazed surface of one piece [cm2].", 400, { minimum: 0.1, maximum: 1e6 }),
            thicknessMm: figure("Fired glaze wanted on it [mm].", 0.3, { minimum: 0.01, maximum: 10 }),
            keepInBucket: Volume.optional(),
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
      .strictObject({ volume: Volume, specificGravity: gravity("As measured") })
      .optional()
      .meta({ description: "A bucket of this glaze whose specific gravity is off." }),
    page: Page.optional(),
  })
  .meta({ id: "BatchRequest", description: "A recipe, and how much of it.", examples: [THAW_BUCKET] });

const grams = (description: string, example: number) => figure(`${description} [g].`, example);

const BatchLine = z
  .strictObject({
    label: z.string().meta({ description: "The line in words.", examples: ["whiting"] }),
    material: z.string().nullable().meta({ description: "Identifier of the built-in material, null for your own." }),
    addition: z.boolean().meta({ description: "Whether it stands among the additions." }),
    inHundred: figure("Parts in a hundred of the recipe [-].", 18),
    weighG: grams("What to weigh, to 0.01; the lines add up to the total", 360),
    runningG: grams("What the scale shows when nothing was taken off", 1640),
    lossOnIgnitionPercent: figure("What of it leaves in the kiln [wt %].", 43.57),
    lossG: grams("The same", 156.85),
  })
  .meta({ id: "BatchLine", description: "One line, in the order of weighing: heaviest first, additions last." });

const sentence = z.string().meta({ description: "The same in a sentence." });
const orNull = (description: string) => z.union([Quantity, z.null()]).meta({ description });

export const BatchReport = z
  .strictObject({
    headline: z.string().meta({ description: "The answer in a sentence." }),
    name: z.string().meta({ description: "What the glaze is called.", examples: ["Thaw"] }),
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
        percent: figure("Of the dry batch [wt %].", 9.68),
        lostG: grams("What leaves in the kiln", 193.6),
        glassG: grams("What stays as glass", 1806.4),
      })
      .meta({ id: "BatchLoss", description: "What leaves in the kiln, and what stays." }),
    solidsDensity: Quantity,
    specificGravity: gravity("Of the mixed glaze"),
    water: Quantity,
    volume: Quantity,
    dryPerLitre: Quantity,
    solids: Quantity,
    dips: z
      .union([
        z
          .strictObject({ dryOnWare: Quantity, message: sentence })
          .meta({ id: "DipAnswer", description: "Dry glaze that the ware carries away." }),
        z.null(),
      ])
      .meta({ description: "About the dips; null unless they were asked for." }),
    bucket: z
      .union([
        z
          .strictObject({
            dry: Quantity,
            addWater: orNull("Water to add [g]; null where none is."),
            pourOff: orNull("Clear water to pour off after settling [g]; null where none is."),
            addDry: orNull("Dry glaze to add instead [g]; null where none is."),
            message: sentence,
          })
          .meta({
            id: "BucketAnswer",
            description: "Dry glaze in the bucket by Brongniart's rule, and what puts it right.",
          }),
        z.null(),
      ])
      .meta({ description: "About the bucket; null without one." }),
    steps: z.array(z.string()).meta({ description: "What to do, in order." }),
    sheets: z.array(Sheet).meta({ description: "The batch sheet, to print and tick." }),
    ...answerFields,
  })
  .meta({ id: "BatchReport", description: "What to weigh, how much water, and a sheet to print." });
