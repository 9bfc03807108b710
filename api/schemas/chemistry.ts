/** Chemistry of a glaze: the question and the answer. @module */
import { z } from "zod";
import { MadeGlaze } from "./glaze.ts";
import { THAW } from "./larch-lane.ts";
import { answerFields } from "./quantity.ts";

export const ChemistryRequest = z.strictObject({ glaze: MadeGlaze }).meta({
  id: "ChemistryRequest",
  description: "A glaze by recipe or by oxides.",
  examples: [{ glaze: THAW }],
});

const byOxide = (what: string, example: Record<string, number>) =>
  z.record(z.string(), z.number()).meta({ description: `Oxide formula → ${what}.`, examples: [example] });

const Seger = z
  .strictObject({
    moles: byOxide("moles per mole of flux [-]", { K2O: 0.25, CaO: 0.75, Al2O3: 0.35, SiO2: 3.5 }),
    fluxSum: z.number().meta({ description: "Sum of R2O and RO, 1 by definition [mol].", examples: [1] }),
    silicaToAlumina: z
      .number()
      .nullable()
      .meta({ description: "Moles of silica per mole of alumina [-]; null without alumina.", examples: [10] }),
    alkaliShare: z
      .number()
      .nullable()
      .meta({ description: "Share of R2O among the fluxes [-].", examples: [0.25] }),
  })
  .meta({ id: "Seger", description: "Seger formula: moles with R2O + RO = 1." });

const ChemistryLine = z
  .strictObject({
    label: z.string().meta({ description: "The line in words.", examples: ["whiting"] }),
    material: z
      .string()
      .nullable()
      .meta({ description: "Identifier of the built-in material, null for your own.", examples: ["whiting"] }),
    parts: z.number().meta({ description: "Parts by weight as given [-].", examples: [18] }),
    sharePercent: z.number().meta({ description: "Share of the dry batch [wt %].", examples: [18] }),
    addition: z.boolean().meta({ description: "Whether it stands among the additions." }),
    lossOnIgnitionPercent: z.number().meta({ description: "What leaves in the kiln [wt %].", examples: [43.97] }),
    weightPercent: byOxide("share of the dry material [wt %]", { CaO: 56.03 }),
  })
  .meta({ id: "ChemistryLine", description: "One line of the recipe and what it brings." });

const MassBalance = z
  .strictObject({
    weighedG: z.number().meta({ description: "Dry batch [g].", examples: [100] }),
    glassG: z.number().meta({ description: "Glass it melts to [g].", examples: [89.1] }),
    lostG: z.number().meta({ description: "What leaves in the kiln [g].", examples: [10.9] }),
    error: z
      .number()
      .meta({ description: "Weighed less glass less lost, relative; rounding only [-].", examples: [0] }),
  })
  .meta({ id: "MassBalance", description: "Where 100 g of dry batch go." });

export const Chemistry = z
  .strictObject({
    fired: z
      .strictObject({
        weightPercent: byOxide("share of the fired glaze [wt %]", { SiO2: 62.1 }),
        weightPercentPlusMinus: byOxide(
          "half-width of a 90 % interval about it, from the spread of the materials [wt %]",
          { SiO2: 0.8 },
        ),
        molePercent: byOxide("share of the fired glaze [mol %]", { SiO2: 70.2 }),
      })
      .meta({ description: "Composition of the fired glaze." }),
    asWeighed: z
      .strictObject({
        weightPercent: byOxide("share of the dry batch [wt %]", { SiO2: 55.3 }),
        lossOnIgnitionPercent: z
          .number()
          .meta({ description: "Loss on ignition of the batch [wt %].", examples: [10.9] }),
      })
      .meta({ description: "Composition of the dry batch, with what leaves in the kiln." }),
    molesPer100g: byOxide("moles in 100 g of fired glaze [mol]", { SiO2: 1.03 }),
    seger: z
      .union([Seger, z.null()])
      .meta({ description: "Seger formula; null, with a warning, for a glaze without flux." }),
    lines: z.array(ChemistryLine).meta({ description: "Line by line; empty for a glaze given by oxides." }),
    massBalance: MassBalance,
    ...answerFields,
  })
  .meta({ id: "Chemistry", description: "What a glaze is made of, every way it is written." });
