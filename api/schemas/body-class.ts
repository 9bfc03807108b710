/** A class of clay bodies as the service shows it. @module */
import { z } from "zod";

const span = (description: string, example: [number, number]) =>
  z.tuple([z.number(), z.number()]).meta({ description: `${description}, low and high.`, examples: [example] });
const spanOrNull = (description: string, example: [number, number]) =>
  z
    .tuple([z.number(), z.number()])
    .nullable()
    .meta({ description: `${description}, low and high; null where no figure was found.`, examples: [example] });

const ExpansionSpan = z
  .strictObject({
    low: z.number().meta({ description: "Lower end [1e-6/K].", examples: [5] }),
    high: z.number().meta({ description: "Upper end [1e-6/K].", examples: [7] }),
    rangeC: span("Temperature range of the mean [°C]", [20, 500]),
  })
  .meta({ id: "ExpansionSpan", description: "Mean linear expansion of nine bodies of the class in ten." });

export const BodyClass = z
  .strictObject({
    id: z.string().meta({ description: "Identifier.", examples: ["red-stoneware"] }),
    name: z.string().meta({ description: "Name in words.", examples: ["red stoneware"] }),
    firingC: span("Usual peak of firing [°C]", [1160, 1260]),
    expansion: ExpansionSpan,
    alsoPrinted: z.array(ExpansionSpan).meta({ description: "The same, as printed over other ranges." }),
    quartzFraction: span("Effective quartz in the fired body [volume fraction]", [0.1, 0.25]),
    quartzFactor: z
      .number()
      .meta({ description: "Share of its own strain that this quartz adds [-].", examples: [0.68] }),
    cristobaliteFraction: span("Cristobalite in the fired body [volume fraction]", [0, 0.02]),
    absorptionPercent: spanOrNull("Water absorption [% of dry weight]", [1, 4]),
    moistureExpansionPercent: spanOrNull("Long-term moisture expansion [% of length]", [0, 0.03]),
    youngsGPa: span("Young's modulus [GPa]", [40, 60]),
    ruptureMPa: span("Modulus of rupture of an unglazed bar [MPa]", [30, 60]),
    totalShrinkagePercent: spanOrNull("Total shrinkage [% of plastic length]", [9, 13]),
    poisson: span("Poisson's ratio [-]", [0.17, 0.23]),
    confidence: z.string().meta({ description: "What the figures rest on." }),
    note: z.string().optional().meta({ description: "What to know about the class." }),
    sources: z.array(z.string()).meta({ description: "Keys into GET /v1/sources." }),
  })
  .meta({ id: "BodyClass", description: "A supplier-neutral class of clay bodies; spans hold nine bodies in ten." });
