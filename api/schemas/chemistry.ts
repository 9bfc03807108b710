/** Chemistry of a glaze: the question and the answer. @module */
import { z } from "zod";
import { byOxide, flag, loss, magnitude, percent, share, signed, words } from "./figures.ts";
import { MadeGlaze } from "./glaze.ts";
import { THAW } from "./larch-lane.ts";
import { answerFields } from "./quantity.ts";

export const ChemistryRequest = z.strictObject({ glaze: MadeGlaze }).meta({
  id: "ChemistryRequest",
  description: "A glaze by recipe or by oxides.",
  examples: [{ glaze: THAW }],
});

const PERCENT = { min: 0, max: 100 };

const Seger = z
  .strictObject({
    moles: byOxide("Oxide formula → moles per mole of flux [-].", { K2O: 0.25, CaO: 0.75, Al2O3: 0.35, SiO2: 3.5 }),
    fluxSum: magnitude("Sum of R2O and RO, 1 by definition [mol].", 1),
    silicaToAlumina: magnitude("Moles of silica per mole of alumina [-]; null without alumina.", 10).nullable(),
    alkaliShare: share("Share of R2O among the fluxes [-].", 0.25).nullable(),
  })
  .meta({ id: "Seger", description: "Seger formula: moles with R2O + RO = 1." });

const ChemistryLine = z
  .strictObject({
    label: words("The line in words.", "whiting"),
    material: words("Identifier of the built-in material, null for your own.", "whiting").nullable(),
    parts: magnitude("Parts by weight as given [-].", 18),
    sharePercent: percent("Share of the dry batch [wt %].", 18),
    addition: flag("Whether it stands among the additions.", false),
    lossOnIgnitionPercent: loss("What leaves in the kiln [wt %]; below 0 for what takes up oxygen.", 43.97),
    weightPercent: byOxide("Oxide formula → what the kiln leaves of 100 parts of the dry material [wt %].", {
      CaO: 56.03,
    }),
  })
  .meta({ id: "ChemistryLine", description: "One line of the recipe and what it brings." });

const MassBalance = z
  .strictObject({
    weighedG: magnitude("Dry batch [g].", 100),
    glassG: magnitude("Glass it melts to [g].", 89.1),
    lostG: loss("What leaves in the kiln [g]; below 0 where oxygen is taken up.", 10.9),
    error: signed("Weighed less glass less lost; rounding only [g].", 0),
  })
  .meta({ id: "MassBalance", description: "Where 100 g of dry batch go." });

export const Chemistry = z
  .strictObject({
    fired: z
      .strictObject({
        weightPercent: byOxide("Oxide formula → share of the fired glaze [wt %].", { SiO2: 62.1 }, PERCENT),
        weightPercentPlusMinus: byOxide(
          "Oxide formula → half-width of a 90 % interval about it, from the spread of the materials [wt %].",
          { SiO2: 0.8 },
        ),
        molePercent: byOxide("Oxide formula → share of the fired glaze [mol %].", { SiO2: 70.2 }, PERCENT),
      })
      .meta({ description: "Composition of the fired glaze." }),
    asWeighed: z
      .strictObject({
        weightPercent: byOxide("Oxide formula → what the kiln leaves of 100 parts of the dry batch [wt %].", {
          SiO2: 55.3,
        }),
        lossOnIgnitionPercent: loss("Loss on ignition of the batch [wt %]; below 0 where oxygen is taken up.", 10.9),
      })
      .meta({ description: "Composition of the dry batch, with what leaves in the kiln." }),
    molesPer100g: byOxide("Oxide formula → moles in 100 g of fired glaze [mol].", { SiO2: 1.03 }),
    seger: z
      .union([Seger, z.null()])
      .meta({ description: "Seger formula; null, with a warning, for a glaze without flux." }),
    lines: z.array(ChemistryLine).meta({ description: "Line by line; empty for a glaze given by oxides." }),
    massBalance: MassBalance,
    ...answerFields,
  })
  .meta({ id: "Chemistry", description: "What a glaze is made of, every way it is written." });
