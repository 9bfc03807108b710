/** A built-in material as the service shows it. @module */
import { z } from "zod";
import { byOxide, list, loss, magnitude, sourceKeys, words } from "./figures.ts";
import { PageQuery } from "./lists.ts";
import { Notice } from "./quantity.ts";

export const Material = z
  .strictObject({
    id: words("Identifier.", "whiting"),
    name: words("Name in words.", "whiting"),
    aliases: list("Other names it answers to.", "chalk"),
    kind: words("What kind of material it is.", "silica-lime-magnesia"),
    formula: words("Mineral formula; null for what is known by analysis.", "CaCO3").nullable(),
    weightPercent: byOxide(
      "Oxide → what the kiln leaves of 100 parts of the dry material, from its analysis or formula [wt %].",
      { CaO: 56.03 },
    ),
    lossOnIgnitionPercent: loss(
      "What leaves in the kiln, of the dry material [wt %]; below 0 for what takes up oxygen.",
      43.97,
    ),
    plusMinusWeightPercent: byOxide("Oxide → half-width of a 90 % interval about its share, from bag to bag [wt %].", {
      CaO: 0.5,
    }),
    spreadFrom: z.enum(["range", "rule"]).meta({
      description: "Whether the spread comes from a range or from a rule of thumb.",
      examples: ["rule"],
    }),
    densityGPerCm3: magnitude("Density of the grains [g/cm3]; null where no figure was found.", 2.71).nullable(),
    inTheKiln: words("What it does in the kiln.", "gives off carbon dioxide, about 700–900 °C").nullable(),
    note: words(
      "What else to know about it.",
      "Centre after the certificate; range between suppliers from memory.",
    ).nullable(),
    cautions: z.array(Notice).meta({ description: "What could hurt someone, with the usual defence; empty if none." }),
    provenance: z
      .enum(["read", "part read", "from memory", "derived"])
      .meta({ description: "What its figures rest on.", examples: ["derived"] }),
    confidence: z.enum(["good", "fair", "low"]).meta({ description: "How far to trust them.", examples: ["good"] }),
    sources: sourceKeys("ceramic-practice"),
  })
  .meta({ id: "Material", description: "A supplier-neutral material." });

/** How the list of materials is narrowed. */
export const MaterialQuery = PageQuery.extend({
  kind: z
    .string()
    .max(60)
    .optional()
    .meta({ description: "Only this kind of material.", examples: ["feldspars"] }),
  oxide: z
    .string()
    .max(20)
    .optional()
    .meta({ description: "Only those that bring this oxide.", examples: ["B2O3"] }),
  q: z
    .string()
    .max(100)
    .optional()
    .meta({ description: "Only those with this text in a name.", examples: ["china clay"] }),
});
