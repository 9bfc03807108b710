/** Measured glasses near a glaze, what published sets are worth there, and what one more part would do. @module */
import { z } from "zod";

const unit = z.string().meta({ description: "Unit of the expansions here.", examples: ["1e-6/K"] });

const NearGlass = z
  .strictObject({
    glass: z
      .number()
      .int()
      .meta({ description: "Number of the glass in the data set [-].", examples: [134201] }),
    publication: z
      .number()
      .int()
      .meta({ description: "Number of its publication [-].", examples: [16243] }),
    year: z
      .number()
      .int()
      .meta({ description: "Year of publication.", examples: [1987] }),
    molePercent: z
      .record(z.string(), z.number())
      .meta({ description: "Oxide formula → share [mol %].", examples: [{ SiO2: 66.2, CaO: 14 }] }),
    apartMolePercent: z.number().meta({
      description: "How much of the glaze would have to be exchanged to make this glass of it [mol %].",
      examples: [2.4],
    }),
    expansion: z
      .number()
      .nullable()
      .meta({
        description: "Measured mean expansion, mostly 20–300 °C [1e-6/K]; null where not measured.",
        examples: [6.5],
      }),
    transitionC: z
      .number()
      .nullable()
      .meta({ description: "Measured glass transition [°C]; null where not measured.", examples: [640] }),
    youngsGPa: z
      .number()
      .nullable()
      .meta({ description: "Measured Young's modulus [GPa]; null where not measured.", examples: [74.2] }),
  })
  .meta({ id: "NearGlass", description: "One measured glass near the glaze." });

const LocalAccuracy = z
  .strictObject({
    model: z.string().meta({ description: "Identifier from GET /v1/expansion-models.", examples: ["appen-1949"] }),
    bias: z.number().meta({
      description: "Middle of the set's sum less measured; above 0 reads high [1e-6/K].",
      examples: [0.2],
    }),
    spread: z.number().meta({
      description: "How far those differences scatter, as one standard deviation, from their median [1e-6/K].",
      examples: [0.4],
    }),
    n: z
      .number()
      .int()
      .meta({ description: "Measured glasses that it rests on [-].", examples: [60] }),
    text: z.string().meta({
      description: "The same in words, to translate a figure from a book.",
      examples: ["Hall 1930 reads 0.9e-6/K high on measured glasses like yours, give or take 0.5."],
    }),
  })
  .meta({ id: "LocalAccuracy", description: "What a published set is worth on measured glasses near the glaze." });

export const Neighbourhood = z
  .strictObject({
    available: z.boolean().meta({
      description: "False where the table of measured glasses cannot be had, as on some small runtimes.",
      examples: [true],
    }),
    unit,
    glasses: z.array(NearGlass).meta({ description: "The closest first; empty where the table cannot be had." }),
    sets: z.array(LocalAccuracy).meta({ description: "Each published set that can answer for enough of them." }),
    note: z.string().meta({ description: "What to know before leaning on them." }),
    sources: z.array(z.string()).meta({ description: "Keys into GET /v1/sources.", examples: [["sciglass-2019"]] }),
  })
  .meta({ id: "Neighbourhood", description: "Measured glasses near the glaze, and the sets' errors there." });

const PartEffect = z
  .strictObject({
    label: z.string().meta({ description: "What the line is called.", examples: ["Silica"] }),
    material: z
      .string()
      .nullable()
      .meta({ description: "Built-in material; null for a line of your own.", examples: ["silica"] }),
    perPart: z.number().meta({
      description: "Change of the expansion for one more part, the other parts staying [1e-6/K per part].",
      examples: [-0.031],
    }),
    text: z.string().meta({
      description: "The same in words.",
      examples: ["One more part of silica lowers the expansion by about 0.031e-6/K."],
    }),
  })
  .meta({ id: "ExpansionPerPart", description: "What one more part of a material would do to the expansion." });

export const PartEffects = z
  .strictObject({
    unit: z.string().meta({ description: "Unit of `perPart`.", examples: ["1e-6/K per part"] }),
    rangeC: z.tuple([z.number(), z.number()]).meta({ description: "Range of the mean [°C].", examples: [[20, 300]] }),
    lines: z
      .array(PartEffect)
      .meta({ description: "One a line of the recipe, in its order; empty for a glaze by its oxides." }),
  })
  .meta({
    id: "ExpansionPerParts",
    description: "What one more part of each material would do: good for a few parts in a hundred.",
  });
