/** Glazes mixed with each other in steps. @module */
import { z } from "zod";
import { Body } from "./body.ts";
import { byOxideOrNull, count, list, seed, words } from "./figures.ts";
import { Firing, Ware } from "./firing.ts";
import { Probabilities, Verdict } from "./fit-report.ts";
import { RecipeGlaze, RecipeLine } from "./glaze.ts";
import { RED_STONEWARE, THAW } from "./larch-lane.ts";
import { thicknessMm } from "./numbers.ts";
import { answerFields, Notice, quantity } from "./quantity.ts";

/** Larch Lane's Thaw toward Hail, a magnesia glaze, on the red stoneware. */
export const THAW_TO_HAIL = {
  corners: [
    { name: "Thaw", glaze: THAW },
    {
      name: "Hail",
      glaze: {
        recipe: [
          { material: "nepheline-syenite", parts: 40 },
          { material: "silica", parts: 30 },
          { material: "talc", parts: 15 },
          { material: "kaolin", parts: 15 },
        ],
      },
    },
  ],
  steps: 4,
  body: RED_STONEWARE,
};

const Corner = z
  .strictObject({
    name: z
      .string()
      .min(1)
      .max(60)
      .optional()
      .meta({ description: "What you call the glaze.", examples: ["Thaw"] }),
    glaze: RecipeGlaze,
  })
  .meta({ id: "BlendCorner", description: "One corner of a blend: a recipe with a name." });

const steps = (what: string) =>
  z
    .number()
    .int()
    .min(1)
    .max(200)
    .optional()
    .meta({ description: `${what} [-].`, examples: [10] });

export const BlendRequest = z
  .strictObject({
    corners: z.array(Corner).min(2).meta({
      description:
        "Two for a line, three for a triangle, four for a grid, as many as you like for every mixture of them.",
    }),
    steps: steps(
      "Steps along an edge; 10 if left out, or as many as make 2500 points or fewer. At most 20000 points in all",
    ),
    stepsDown: steps("Steps down the side of a grid; as many as across if left out"),
    shape: z
      .enum(["simplex", "grid"])
      .optional()
      .meta({
        description:
          "Every mixture of all corners, or a square with a glaze at each of four corners; simplex if left out.",
        examples: ["simplex"],
      }),
    body: Body,
    firing: Firing.optional(),
    ware: Ware.optional(),
    thicknessMm: thicknessMm
      .optional()
      .meta({ description: "Thickness as fired [mm]; the first corner's, else 0.3, if left out.", examples: [0.3] }),
    from: z
      .number()
      .int()
      .min(0)
      .max(20000)
      .optional()
      .meta({
        description: "First point wanted, from 0 [-], to go on where a stream broke off; 0 if left out.",
        examples: [0],
      }),
    count: z
      .number()
      .int()
      .min(1)
      .max(20000)
      .optional()
      .meta({ description: "How many points from there [-]; all if left out.", examples: [100] }),
    seed: seed.optional(),
  })
  .meta({
    id: "BlendRequest",
    description: "What is to be mixed, how finely, and for which clay.",
    examples: [THAW_TO_HAIL],
  });

const place = {
  index: count("Place in the order of weighing, from 0 [-].", 3),
  of: count("Points of the whole blend [-].", 66, { min: 1 }),
  label: words(
    "What to scratch into the back of the tile: a number along a line, a row's letter and a number in a triangle or grid. " +
      "With more corners a letter for each that is in it, first A, and its steps: A3C1.",
    "B2",
  ),
  shares: z
    .array(z.number().min(0).max(1))
    .meta({ description: "Share of each corner by dry weight; sums to 1 [-].", examples: [[0.8, 0.2]] }),
  move: words("What changes from the tile before; null for the first.", "10 % less Thaw, 10 % more Hail").nullable(),
};

export const BlendPoint = z
  .strictObject({
    ...place,
    recipe: z.array(RecipeLine).meta({ description: "The mixture for 100 parts." }),
    additions: z.array(RecipeLine).meta({ description: "What goes over it, in the same parts." }),
    seger: byOxideOrNull("Oxide formula → moles in the Seger formula [mol]; null without flux.", {
      SiO2: 4.1,
      Al2O3: 0.5,
      CaO: 0.7,
      K2O: 0.3,
    }),
    expansion: quantity("Mean linear expansion 20–300 °C [1e-6/K]."),
    verdict: Verdict,
    probabilities: Probabilities,
    stress: quantity("Stress in the glaze after cooling, tension positive [MPa]."),
    warnings: z.array(Notice).meta({ description: "What is unusual about this mixture; empty if nothing." }),
  })
  .meta({
    id: "BlendPoint",
    description: "One tile of a blend: expansion 20–300 °C, stress in the glaze with tension positive.",
  });

export const BlendGap = z
  .strictObject({
    ...place,
    problem: words(
      "Why it cannot be judged.",
      "Nothing of this stays in the glaze once it is fired. Leave the line out.",
    ),
  })
  .meta({ id: "BlendGap", description: "A mixture that cannot be judged; the rest still is." });

export const BlendLine = z
  .union([BlendPoint, BlendGap])
  .meta({ id: "BlendLine", description: "One line of a streamed blend." });

export const BlendReport = z
  .strictObject({
    headline: words("The answer in plain words.", "Of 5 mixtures none is sound; 5 most of all (16 in 20 stay sound)."),
    corners: list("Names of the corners.", "Thaw", "Hail"),
    points: z.array(BlendLine).meta({ description: "The tiles, each one step from the one before." }),
    ...answerFields,
  })
  .meta({ id: "BlendReport", description: "Where in a blend it fits." });
