/** A class of clay bodies as the service shows it. @module */
import { z } from "zod";
import { type Bounds, figure, magnitude, sourceKeys, span, spanC, spanOrNull, words } from "./figures.ts";
import { BODY_EXPANSION } from "./numbers.ts";

const lowHigh = (what: string, example: [number, number], bounds: Bounds = { min: 0 }) =>
  span(`${what}, low and high.`, example, bounds);
const lowHighOrNull = (what: string, example: [number, number], bounds: Bounds) =>
  spanOrNull(`${what}, low and high; null where no figure was found.`, example, bounds);
const PERCENT = { min: 0, max: 100 };
const FRACTION = { min: 0, max: 1 };

const ExpansionSpan = z
  .strictObject({
    low: figure("Lower end [1e-6/K].", 5, BODY_EXPANSION),
    high: figure("Upper end [1e-6/K].", 7, BODY_EXPANSION),
    rangeC: spanC("Temperature range of the mean [°C], low and high.", [20, 500]),
  })
  .meta({ id: "ExpansionSpan", description: "Mean linear expansion of nine bodies of the class in ten." });

export const BodyClass = z
  .strictObject({
    id: words("Identifier.", "red-stoneware"),
    name: words("Name in words.", "red stoneware"),
    firingC: lowHigh("Usual peak of firing [°C]", [1160, 1260]),
    expansion: ExpansionSpan,
    alsoPrinted: z.array(ExpansionSpan).meta({ description: "The same, as printed over other ranges." }),
    quartzFraction: lowHigh("Effective quartz in the fired body [volume fraction]", [0.1, 0.25], FRACTION),
    quartzFactor: magnitude("Share of its own strain that this quartz adds [-].", 0.68),
    cristobaliteFraction: lowHigh("Cristobalite in the fired body [volume fraction]", [0, 0.02], FRACTION),
    absorptionPercent: lowHighOrNull("Water absorption [% of dry weight]", [1, 4], PERCENT),
    moistureExpansionPercent: lowHighOrNull("Long-term moisture expansion [% of length]", [0, 0.03], PERCENT),
    youngsGPa: lowHigh("Young's modulus [GPa]", [40, 60]),
    ruptureMPa: lowHigh("Modulus of rupture of an unglazed bar [MPa]", [30, 60]),
    totalShrinkagePercent: lowHighOrNull("Total shrinkage [% of plastic length]", [9, 13], PERCENT),
    poisson: lowHigh("Poisson's ratio [-]", [0.17, 0.23], { min: 0, max: 0.5 }),
    confidence: words("What the figures rest on.", "medium"),
    note: words(
      "What to know about the class.",
      "Shivering and dunting near 220–270 °C; quartz and the 20–500 °C figures of ordinary stoneware do not apply.",
    ).optional(),
    sources: sourceKeys("from-memory-handbooks"),
  })
  .meta({ id: "BodyClass", description: "A supplier-neutral class of clay bodies; spans hold nine bodies in ten." });
