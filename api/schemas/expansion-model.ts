/** What an expansion model is, covers and is worth. @module */
import { z } from "zod";
import { modelBasis, modelKind, modelRange } from "./expansion.ts";

const Accuracy = z
  .strictObject({
    n: z
      .number()
      .int()
      .meta({ description: "Measured glasses compared [-].", examples: [1200] }),
    medianAbsoluteError: z
      .number()
      .meta({ description: "Median of the absolute error [unit of the model].", examples: [0.18] }),
    bias: z.number().meta({
      description: "Mean of predicted less measured; above 0 reads high [unit of the model].",
      examples: [0.02],
    }),
    p90: z
      .number()
      .meta({ description: "90th percentile of the absolute error [unit of the model].", examples: [0.7] }),
    rmse: z.number().meta({ description: "Root mean square error [unit of the model].", examples: [0.44] }),
  })
  .meta({ id: "Accuracy", description: "How close a model came to measured glasses." });

export const ExpansionModel = z
  .strictObject({
    id: z.string().meta({ description: "Identifier.", examples: ["appen-1949"] }),
    name: z.string().meta({ description: "The model in words.", examples: ["Appen 1949"] }),
    kind: modelKind,
    basis: modelBasis,
    rangeC: modelRange,
    unit: z.string().meta({ description: "Unit of its figures.", examples: ["1e-6/K"] }),
    oxides: z.array(z.string()).meta({ description: "Oxides it has figures for.", examples: [["SiO2", "Na2O"]] }),
    validity: z.record(z.string(), z.tuple([z.number(), z.number()])).meta({
      description:
        "Oxide → limits of composition, in per cent of the basis; absent where the publication does not say.",
      examples: [{ SiO2: [45, 80] }],
    }),
    accuracy: z.record(z.string(), Accuracy).meta({ description: "Kind of glass → how close the model came." }),
    accuracyNote: z.string().meta({ description: "How the figures were scored." }),
    sources: z.array(z.string()).meta({ description: "Keys into GET /v1/sources." }),
    provenance: z.string().meta({ description: "Where its figures come from." }),
  })
  .meta({ id: "ExpansionModel", description: "A way of reckoning expansion from oxides." });
