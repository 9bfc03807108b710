/** A built-in material as the service shows it. @module */
import { z } from "zod";
import { PageQuery } from "./lists.ts";
import { Notice } from "./quantity.ts";

export const Material = z
  .strictObject({
    id: z.string().meta({ description: "Identifier.", examples: ["whiting"] }),
    name: z.string().meta({ description: "Name in words.", examples: ["whiting"] }),
    aliases: z.array(z.string()).meta({ description: "Other names it answers to.", examples: [["chalk"]] }),
    kind: z.string().meta({ description: "What kind of material it is.", examples: ["silica-lime-magnesia"] }),
    formula: z
      .string()
      .nullable()
      .meta({ description: "Mineral formula; null for what is known by analysis.", examples: ["CaCO3"] }),
    weightPercent: z.record(z.string(), z.number()).meta({
      description: "Oxide → share of the dry material, from its analysis or formula [wt %].",
      examples: [{ CaO: 56.03 }],
    }),
    lossOnIgnitionPercent: z
      .number()
      .meta({ description: "What leaves in the kiln, of the dry material [wt %].", examples: [43.97] }),
    plusMinusWeightPercent: z.record(z.string(), z.number()).meta({
      description: "Oxide → half-width of a 90 % interval about its share, from bag to bag [wt %].",
      examples: [{ CaO: 0.5 }],
    }),
    spreadFrom: z.enum(["range", "rule"]).meta({
      description: "Whether the spread comes from a range or from a rule of thumb.",
      examples: ["rule"],
    }),
    densityGPerCm3: z
      .number()
      .nullable()
      .meta({ description: "Density of the grains [g/cm3]; null where no figure was found.", examples: [2.71] }),
    inTheKiln: z
      .string()
      .nullable()
      .meta({ description: "What it does in the kiln.", examples: ["gives off carbon dioxide, about 700–900 °C"] }),
    note: z.string().nullable().meta({ description: "What else to know about it." }),
    cautions: z.array(Notice).meta({ description: "What could hurt someone, with the usual defence; empty if none." }),
    provenance: z
      .enum(["read", "part read", "from memory", "derived"])
      .meta({ description: "What its figures rest on.", examples: ["derived"] }),
    confidence: z.enum(["good", "fair", "low"]).meta({ description: "How far to trust them.", examples: ["good"] }),
    sources: z.array(z.string()).meta({ description: "Keys into GET /v1/sources." }),
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
