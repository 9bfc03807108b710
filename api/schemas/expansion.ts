/** Expansion of a glaze by every model: the question and the answer. @module */
import { z } from "zod";
import { ExpansionDoubtReport, ExpansionDoubts } from "./expansion-doubts.ts";
import { Neighbourhood, PartEffects } from "./expansion-near.ts";
import { GlassPropertyReport } from "./expansion-properties.ts";
import { MadeGlaze } from "./glaze.ts";
import { THAW } from "./larch-lane.ts";
import { answerFields, Quantity } from "./quantity.ts";

const requestFields = { glaze: MadeGlaze, doubts: ExpansionDoubts.optional() };

export const ExpansionRequest = z
  .strictObject({
    ...requestFields,
    include: z
      .array(z.enum(["nearest"]))
      .max(10)
      .optional()
      .meta({
        description: "Extra parts of the answer: measured glasses near this one, and the sets' errors there.",
        examples: [["nearest"]],
      }),
  })
  .meta({
    id: "ExpansionRequest",
    description: "A glaze by recipe or by oxides, and which doubts to count.",
    examples: [{ glaze: THAW }],
  });

export const ExpansionLine = z
  .strictObject({
    id: z
      .string()
      .max(200)
      .optional()
      .meta({ description: "Your own tag for the line, given back with its answer.", examples: ["thaw-7"] }),
    ...requestFields,
  })
  .meta({ id: "ExpansionLine", description: "One line of a bulk question about expansion." });

export const modelKind = z
  .enum(["measured-glass", "published-set"])
  .meta({ description: "Fitted to measured glasses, or a published set of factors.", examples: ["published-set"] });
export const modelBasis = z
  .enum(["weight", "mole"])
  .meta({ description: "What its factors multiply: wt % or mol %.", examples: ["mole"] });
export const modelRange = z
  .tuple([z.number(), z.number()])
  .nullable()
  .meta({ description: "Range of the mean [°C]; null where the publication does not say.", examples: [[20, 300]] });

export const ModelEstimate = z
  .strictObject({
    model: z.string().meta({ description: "Identifier from GET /v1/expansion-models.", examples: ["appen-1949"] }),
    name: z.string().meta({ description: "The model in words.", examples: ["Appen 1949"] }),
    kind: modelKind,
    expansion: z
      .union([Quantity, z.null()])
      .meta({ description: "Mean linear expansion [1e-6/K]; null where the set lacks too much of the glass." }),
    basis: modelBasis,
    rangeC: modelRange,
    missingOxides: z
      .array(z.string())
      .meta({ description: "Oxides of the glaze that the model has no figure for.", examples: [["SrO"]] }),
    outside: z
      .array(z.string())
      .meta({ description: "Oxides outside the range the model was made for.", examples: [["B2O3"]] }),
    sources: z.array(z.string()).meta({ description: "Keys into GET /v1/sources." }),
    note: z.string().meta({ description: "What to know before leaning on it." }),
  })
  .meta({ id: "ModelEstimate", description: "One model's answer about one glaze." });

const OxideContribution = z
  .strictObject({
    oxide: z.string().meta({ description: "Oxide formula.", examples: ["K2O"] }),
    molePercent: z.number().meta({ description: "Share of the fired glaze [mol %].", examples: [3.4] }),
    weightPercent: z.number().meta({ description: "Share of the fired glaze [wt %].", examples: [5.1] }),
    contribution: z
      .number()
      .meta({ description: "What it adds where silica would stand in its place [1e-6/K].", examples: [1.42] }),
    perMolePercent: z.number().meta({
      description: "Change when one more mole per cent comes in and the rest is scaled down [1e-6/K per mol %].",
      examples: [0.41],
    }),
    perWeightPercent: z.number().meta({
      description: "Change when one more weight per cent comes in and the rest is scaled down [1e-6/K per wt %].",
      examples: [0.27],
    }),
  })
  .meta({ id: "OxideContribution", description: "What one oxide does to the expansion." });

const Contributions = z
  .strictObject({
    unit: z.string().meta({ description: "Unit of reference and contributions.", examples: ["1e-6/K"] }),
    rangeC: z.tuple([z.number(), z.number()]).meta({ description: "Range of the mean [°C].", examples: [[20, 300]] }),
    referenceOxide: z.string().meta({ description: "The yardstick.", examples: ["SiO2"] }),
    reference: z.number().meta({
      description: "What the model's formula gives for the yardstick alone, no measured value [1e-6/K].",
      examples: [1.1],
    }),
    oxides: z.array(OxideContribution).meta({ description: "They and the reference add up to the best figure." }),
  })
  .meta({ id: "Contributions", description: "The best figure taken apart, oxide by oxide." });

export const ExpansionReport = z
  .strictObject({
    best: ModelEstimate,
    all: z.array(ModelEstimate).meta({ description: "Every model beside each other, the best first." }),
    contributions: Contributions,
    perPart: PartEffects,
    doubt: ExpansionDoubtReport,
    properties: z.union([GlassPropertyReport, z.null()]).meta({
      description: "What the glass is like besides; null where nothing like it was ever measured.",
    }),
    nearest: Neighbourhood.optional(),
    ...answerFields,
  })
  .meta({
    id: "ExpansionReport",
    description: "What the glaze's expansion is, by every model, where it comes from, and what else its glass is like.",
  });
