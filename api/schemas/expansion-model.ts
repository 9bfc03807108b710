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

const Held = z
  .strictObject({
    domain: z.string().meta({ description: "Kind of glass.", examples: ["glaze"] }),
    quarter: z.string().meta({
      description: "All of them, or by stated width the narrowest, second, third or widest quarter.",
      examples: ["all"],
    }),
    n: z
      .number()
      .int()
      .meta({ description: "Measured glasses compared [-].", examples: [3637] }),
    held: z
      .number()
      .meta({ description: "Share that lay inside the stated interval of nine in ten [-].", examples: [0.9] }),
    medianHalfWidth: z.number().meta({
      description: "Median half-width of the interval [unit of the property; of viscosity the scatter of one point].",
      examples: [0.62],
    }),
  })
  .meta({ id: "HeldIntervals", description: "How often stated intervals held, on publications unseen in fitting." });

const Property = z
  .strictObject({
    id: z.string().meta({
      description: "Which property: expansion, transition, youngs, viscosity or liquidus.",
      examples: ["transition"],
    }),
    title: z
      .string()
      .meta({ description: "The property in words.", examples: ["Glass transition of silicate glasses"] }),
    property: z.string().meta({ description: "What was fitted.", examples: ["glass transition temperature"] }),
    unit: z.string().meta({
      description: "Unit of its errors; of a viscosity K where the key is a temperature, log10(Pa·s) where not.",
      examples: ["°C"],
    }),
    method: z.string().meta({ description: "How it was fitted." }),
    rows: z
      .number()
      .int()
      .meta({ description: "Measured glasses that it was fitted to [-].", examples: [9000] }),
    publications: z
      .number()
      .int()
      .meta({ description: "Publications that they come from [-].", examples: [1000] }),
    accuracy: z.record(z.string(), Accuracy).meta({
      description:
        "Kind of glass → how close it came on publications left out of the fit. Of viscosity, among glazes: `t_log4` is the temperature of 10^4 Pa·s, `log_visc_1200` the logarithm at 1200 °C.",
    }),
    intervals: z.array(Held).meta({ description: "How often its stated intervals held." }),
    licence: z.string().meta({ description: "What the measured glasses are under." }),
    sources: z.array(z.string()).meta({ description: "Keys into GET /v1/sources." }),
  })
  .meta({ id: "PropertyAccuracy", description: "A property fitted to measured glasses, and how close it comes." });

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
    properties: z.array(Property).meta({
      description: "Every property that is fitted to the same measured glasses; empty for a published set.",
    }),
    sources: z.array(z.string()).meta({ description: "Keys into GET /v1/sources." }),
    provenance: z.string().meta({ description: "Where its figures come from." }),
  })
  .meta({ id: "ExpansionModel", description: "A way of reckoning expansion from oxides." });
