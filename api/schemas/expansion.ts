/** Expansion of a glaze by every model: the question and the answer. @module */
import { z } from "zod";
import { Doubts, ExpansionDoubtReport } from "./expansion-doubts.ts";
import { Neighbourhood, PartEffects } from "./expansion-near.ts";
import { GlassPropertyReport } from "./expansion-properties.ts";
import { list, percent, signed, sourceKeys, spanC, spanCOrNull, words } from "./figures.ts";
import { MadeGlaze } from "./glaze.ts";
import { THAW } from "./larch-lane.ts";
import { answerFields, quantityOrNull } from "./quantity.ts";

const requestFields = { glaze: MadeGlaze, doubts: Doubts.optional() };

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
export const modelRange = spanCOrNull("Range of the mean [°C]; null where the publication does not say.", [20, 300]);

export const ModelEstimate = z
  .strictObject({
    model: words("Identifier from GET /v1/expansion-models.", "appen-1949"),
    name: words("The model in words.", "Appen 1949"),
    kind: modelKind,
    expansion: quantityOrNull("Mean linear expansion [1e-6/K]; null where the set lacks too much of the glass."),
    basis: modelBasis,
    rangeC: modelRange,
    missingOxides: list("Oxides of the glaze that the model has no figure for.", "SrO"),
    outside: list("Oxides outside the range the model was made for.", "B2O3"),
    sources: sourceKeys("sciglass-2019"),
    note: words(
      "What to know before leaning on it.",
      "A cubic set over 0–100 °C, divided by three. Lithia and magnesia stand far too low in it, alumina too high.",
    ),
  })
  .meta({ id: "ModelEstimate", description: "One model's answer about one glaze." });

const OxideContribution = z
  .strictObject({
    oxide: words("Oxide formula.", "K2O"),
    molePercent: percent("Share of the fired glaze [mol %].", 3.4),
    weightPercent: percent("Share of the fired glaze [wt %].", 5.1),
    contribution: signed("What it adds where silica would stand in its place [1e-6/K].", 1.42),
    perMolePercent: signed(
      "Change when one more mole per cent comes in and the rest is scaled down [1e-6/K per mol %].",
      0.41,
    ),
    perWeightPercent: signed(
      "Change when one more weight per cent comes in and the rest is scaled down [1e-6/K per wt %].",
      0.27,
    ),
  })
  .meta({ id: "OxideContribution", description: "What one oxide does to the expansion." });

const Contributions = z
  .strictObject({
    unit: words("Unit of reference and contributions.", "1e-6/K"),
    rangeC: spanC("Range of the mean [°C].", [20, 300]),
    referenceOxide: words("The yardstick.", "SiO2"),
    reference: signed("What the model's formula gives for the yardstick alone, no measured value [1e-6/K].", 1.1),
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
