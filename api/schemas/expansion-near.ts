/** Measured glasses near a glaze, what published sets are worth there, and what one more part would do. @module */
import { z } from "zod";
import { byOxide, celsius, count, flag, magnitude, percent, signed, sourceKeys, spanC, words } from "./figures.ts";

const NearGlass = z
  .strictObject({
    glass: count("Number of the glass in the data set [-].", 134201),
    publication: count("Number of its publication [-].", 16243),
    year: count("Year of publication [year].", 1987, { min: 1800, max: 2100 }),
    molePercent: byOxide("Oxide formula → share [mol %].", { SiO2: 66.2, CaO: 14 }, { min: 0, max: 100 }),
    apartMolePercent: percent(
      "How much of the glaze would have to be exchanged to make this glass of it [mol %].",
      2.4,
    ),
    expansion: signed("Measured mean expansion, mostly 20–300 °C, null where not measured [1e-6/K].", 6.5).nullable(),
    transitionC: celsius("Measured glass transition [°C]; null where not measured.", 640).nullable(),
    youngsGPa: magnitude("Measured Young's modulus [GPa]; null where not measured.", 74.2).nullable(),
  })
  .meta({ id: "NearGlass", description: "One measured glass near the glaze." });

const LocalAccuracy = z
  .strictObject({
    model: words("Identifier from GET /v1/expansion-models.", "appen-1949"),
    bias: signed("Middle of the set's sum less measured; above 0 reads high [1e-6/K].", 0.2),
    spread: magnitude("How far those differences scatter, as one standard deviation, from their median [1e-6/K].", 0.4),
    n: count("Measured glasses that it rests on [-].", 60),
    text: words(
      "The same in words, to translate a figure from a book.",
      "Hall 1930 reads 0.9e-6/K high on measured glasses like yours, give or take 0.5.",
    ),
  })
  .meta({ id: "LocalAccuracy", description: "What a published set is worth on measured glasses near the glaze." });

export const Neighbourhood = z
  .strictObject({
    available: flag("False where the table of measured glasses cannot be had, as on some small runtimes.", true),
    unit: words("Unit of the expansions here.", "1e-6/K"),
    glasses: z.array(NearGlass).meta({ description: "The closest first; empty where the table cannot be had." }),
    sets: z.array(LocalAccuracy).meta({ description: "Each published set that can answer for enough of them." }),
    note: words(
      "What to know before leaning on them.",
      "Measured values as published; the range of a mean is mostly 20–300 °C but not recorded.",
    ),
    sources: sourceKeys("sciglass-2019"),
  })
  .meta({ id: "Neighbourhood", description: "Measured glasses near the glaze, and the sets' errors there." });

const PartEffect = z
  .strictObject({
    label: words("What the line is called.", "Silica"),
    material: words("Built-in material; null for a line of your own.", "silica").nullable(),
    perPart: signed("Change of the expansion for one more part, the other parts staying [1e-6/K per part].", -0.031),
    text: words("The same in words.", "One more part of silica lowers the expansion by about 0.031e-6/K."),
  })
  .meta({ id: "ExpansionPerPart", description: "What one more part of a material would do to the expansion." });

export const PartEffects = z
  .strictObject({
    unit: words("Unit of `perPart`.", "1e-6/K per part"),
    rangeC: spanC("Range of the mean [°C].", [20, 300]),
    lines: z
      .array(PartEffect)
      .meta({ description: "One a line of the recipe, in its order; empty for a glaze by its oxides." }),
  })
  .meta({
    id: "ExpansionPerParts",
    description: "What one more part of each material would do: good for a few parts in a hundred.",
  });
