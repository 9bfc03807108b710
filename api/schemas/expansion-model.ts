/** What an expansion model is, covers and is worth. @module */
import { z } from "zod";
import { modelBasis, modelKind, modelRange } from "./expansion.ts";
import { count, list, magnitude, share, signed, sourceKeys, words } from "./figures.ts";

const Accuracy = z
  .strictObject({
    n: count("Measured glasses compared [-].", 1200),
    medianAbsoluteError: magnitude("Median of the absolute error [unit of the model].", 0.18),
    bias: signed("Mean of predicted less measured; above 0 reads high [unit of the model].", 0.02),
    p90: magnitude("90th percentile of the absolute error [unit of the model].", 0.7),
    rmse: magnitude("Root mean square error [unit of the model].", 0.44),
  })
  .meta({ id: "Accuracy", description: "How close a model came to measured glasses." });

const Held = z
  .strictObject({
    domain: words("Kind of glass.", "glaze"),
    quarter: words("All of them, or by stated width the narrowest, second, third or widest quarter.", "all"),
    n: count("Measured glasses compared [-].", 3637),
    held: share("Share that lay inside the stated interval of nine in ten [-].", 0.9),
    medianHalfWidth: magnitude(
      "Median half-width of the interval [unit of the property; of viscosity the scatter of one point].",
      0.62,
    ),
  })
  .meta({ id: "HeldIntervals", description: "How often stated intervals held, on publications unseen in fitting." });

const METHOD =
  "Huber regression on mole fractions, charge-balance terms and products of oxides, careful publications trusted more.";

const Property = z
  .strictObject({
    id: words("Which property: expansion, transition, youngs, viscosity or liquidus.", "transition"),
    title: words("The property in words.", "Glass transition of silicate glasses"),
    property: words("What was fitted.", "glass transition temperature"),
    unit: words("Unit of its errors; of a viscosity K where the key is a temperature, log10(Pa·s) where not.", "°C"),
    method: words("How it was fitted.", METHOD),
    rows: count("Measured glasses that it was fitted to [-].", 9000),
    publications: count("Publications that they come from [-].", 1000),
    accuracy: z.record(z.string(), Accuracy).meta({
      description:
        "Kind of glass → how close it came on publications left out of the fit. Of viscosity, among glazes: `t_log4` is the temperature of 10^4 Pa·s, `log_visc_1200` the logarithm at 1200 °C.",
    }),
    intervals: z.array(Held).meta({ description: "How often its stated intervals held." }),
    licence: words(
      "What the measured glasses are under.",
      "Fitted to glasses from SciGlass, Copyright (c) 2019 EPAM Systems, Open Database License 1.0.",
    ),
    sources: sourceKeys("sciglass-2019"),
  })
  .meta({ id: "PropertyAccuracy", description: "A property fitted to measured glasses, and how close it comes." });

/** Per cent of composition [%]. */
const percent = z.number().min(0).max(100);

export const ExpansionModel = z
  .strictObject({
    id: words("Identifier.", "appen-1949"),
    name: words("The model in words.", "Appen 1949"),
    kind: modelKind,
    basis: modelBasis,
    rangeC: modelRange,
    unit: words("Unit of its figures.", "1e-6/K"),
    oxides: list("Oxides it has figures for.", "SiO2", "Na2O"),
    validity: z.record(z.string(), z.tuple([percent, percent])).meta({
      description: "Oxide → limits of composition [% of the basis]; absent where the publication does not say.",
      examples: [{ SiO2: [45, 80] }],
    }),
    accuracy: z.record(z.string(), Accuracy).meta({ description: "Kind of glass → how close the model came." }),
    accuracyNote: words(
      "How the figures were scored.",
      "On publications left out of the fit, each in its turn; errors are predicted minus measured.",
    ),
    properties: z.array(Property).meta({
      description: "Every property that is fitted to the same measured glasses; empty for a published set.",
    }),
    sources: sourceKeys("appen-1949"),
    provenance: words(
      "Where its figures come from.",
      "SiO2, B2O3 and MgO read in an abstract of 1920; the rest and the temperature range from memory.",
    ),
  })
  .meta({ id: "ExpansionModel", description: "A way of reckoning expansion from oxides." });
