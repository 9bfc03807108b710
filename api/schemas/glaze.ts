/** A glaze as a maker may know it: by recipe, by analysis, or by its measured expansion alone. @module */
import { z } from "zod";
import { THAW } from "./larch-lane.ts";
import { thicknessMm as coatMm, glazeExpansion, oxideAmounts, plusMinus, rangeC } from "./numbers.ts";

const parts = z
  .number()
  .min(0)
  .max(1e6)
  .meta({ description: "Parts by weight; a recipe need not total 100 [-].", examples: [42] });
const lineName = z
  .string()
  .max(100)
  .optional()
  .meta({ description: "What you call the material.", examples: ["bucket clay"] });

export const Analysis = z
  .strictObject({
    weightPercent: oxideAmounts("weight per cent of the dry material [wt %]", 105, {
      SiO2: 58.2,
      Al2O3: 24.1,
      Fe2O3: 6.4,
      K2O: 2.6,
    }),
    lossOnIgnitionPercent: z
      .number()
      .min(0)
      .max(100)
      .optional()
      .meta({
        description: "What leaves in the kiln, of the dry material [wt %]; what is missing to 100 if left out.",
        examples: [8.7],
      }),
  })
  .meta({
    id: "Analysis",
    description:
      "Oxide analysis of a material, with its loss on ignition. Oxides that are not counted (Nd2O3, WO3) are left out, " +
      "with a warning, up to 1 % of the weight of the fired glaze together.",
  });

export const MaterialLine = z
  .strictObject({
    material: z
      .string()
      .min(1)
      .max(100)
      .meta({ description: "Identifier or common name from GET /v1/materials.", examples: ["potash-feldspar"] }),
    parts,
  })
  .meta({ id: "MaterialLine", description: "A built-in material and its parts." });

export const AnalysisLine = z
  .strictObject({ name: lineName, analysis: Analysis, parts })
  .meta({ id: "AnalysisLine", description: "A material given by its own analysis, and its parts." });

export const FormulaLine = z
  .strictObject({
    name: lineName,
    formula: z
      .string()
      .min(1)
      .max(200)
      .meta({ description: "Mineral formula; hydrate dots are read.", examples: ["Al2O3.2SiO2.2H2O"] }),
    parts,
  })
  .meta({ id: "FormulaLine", description: "A mineral given by its formula, and its parts." });

export const RecipeLine = z.union([MaterialLine, AnalysisLine, FormulaLine]).meta({
  id: "RecipeLine",
  description: "One line of a recipe: a material, an analysis or a formula, and its parts.",
});

const thicknessMm = coatMm
  .optional()
  .meta({ description: "Thickness of the fired glaze [mm]; 0.3 if left out.", examples: [0.3] });

export const RecipeGlaze = z
  .strictObject({
    recipe: z.array(RecipeLine).min(1).max(100).meta({ description: "What is weighed out, 1 to 100 lines." }),
    additions: z
      .array(RecipeLine)
      .max(100)
      .optional()
      .meta({ description: "Colourants and opacifiers over the batch, up to 100 lines, in the same parts." }),
    thicknessMm,
  })
  .meta({ id: "RecipeGlaze", description: "A glaze known by its recipe.", examples: [THAW] });

export const OxideGlaze = z
  .strictObject({
    oxides: z
      .strictObject({
        basis: z
          .enum(["weightPercent", "molePercent", "moles"])
          .meta({ description: "What the amounts are: wt %, mol % or moles.", examples: ["weightPercent"] }),
        amounts: oxideAmounts("amount on the stated basis [wt %, mol % or mol]", 1e6, {
          SiO2: 62.1,
          Al2O3: 12.4,
          CaO: 14.2,
          K2O: 11.3,
        }),
      })
      .meta({
        description:
          "Composition of the fired glaze. Oxides that are not counted (Nd2O3, WO3) are left out, with a warning, up to " +
          "1 % of its weight together.",
      }),
    thicknessMm,
  })
  .meta({ id: "OxideGlaze", description: "A glaze known by its analysis or Seger formula." });

export const StatedGlaze = z
  .strictObject({
    expansion: z
      .strictObject({
        value: glazeExpansion.meta({
          description: "Mean linear expansion over rangeC [1e-6/K].",
          examples: [6.8],
        }),
        rangeC: rangeC(900, [20, 300]).optional(),
        plusMinus: plusMinus.optional(),
      })
      .meta({ description: "Measured or inferred expansion; 20–300 °C where no range is given, with a warning." }),
    transitionC: z
      .number()
      .min(300)
      .max(900)
      .optional()
      .meta({
        description: "Glass transition temperature, where known [°C]; 630 if left out, with a warning.",
        examples: [600],
      }),
    thicknessMm,
  })
  .meta({ id: "StatedGlaze", description: "A glaze known only by its expansion." });

/** A glaze that chemistry can be worked out for. */
export const MadeGlaze = z
  .union([RecipeGlaze, OxideGlaze])
  .meta({ id: "MadeGlaze", description: "A glaze known by recipe or by oxides." });

/** Coats over one another. */
export const LayeredGlaze = z
  .strictObject({
    layers: z
      .array(z.union([RecipeGlaze, OxideGlaze, StatedGlaze]))
      .min(1)
      .max(6)
      .meta({ description: "The coats, the outer one first, the last on the clay; 1 to 6, each with its thickness." }),
  })
  .meta({
    id: "LayeredGlaze",
    description: "Coats of glaze over one another.",
    examples: [
      {
        layers: [
          { ...THAW, thicknessMm: 0.2 },
          { expansion: { value: 6.2, rangeC: [20, 300] }, thicknessMm: 0.3 },
        ],
      },
    ],
  });

export const Glaze = z
  .union([RecipeGlaze, OxideGlaze, StatedGlaze, LayeredGlaze])
  .meta({ id: "Glaze", description: "A glaze: by recipe, by oxides, by its expansion alone, or in coats." });
