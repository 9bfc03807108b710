/** What would make a misfit fit. @module */
import { z } from "zod";
import { Body } from "./body.ts";
import { Firing, Ware } from "./firing.ts";
import { Probabilities, Verdict } from "./fit-report.ts";
import { FitRequest } from "./fit-request.ts";
import { Glaze, RecipeLine } from "./glaze.ts";
import { THAW_ON_RED_STONEWARE } from "./larch-lane.ts";
import { answerFields, Quantity } from "./quantity.ts";

const bounds = (id: string, unit: string, highest: number, example: number) =>
  z
    .strictObject({
      min: z
        .number()
        .min(0)
        .max(highest)
        .optional()
        .meta({ description: `The least [${unit}].`, examples: [example / 2] }),
      max: z
        .number()
        .min(0)
        .max(highest)
        .optional()
        .meta({ description: `The most [${unit}].`, examples: [example] }),
    })
    .refine(({ min = 0, max = highest }) => min <= max, { error: "The least is more than the most." })
    .meta({ id, description: "Bounds; either end may be left open." });

const PartsBounds = bounds("PartsBounds", "parts in 100", 1000, 30);
const MoleBounds = bounds("MoleBounds", "mol", 1000, 4);

const materials = (what: string, example: string) =>
  z
    .array(z.string().min(1).max(100))
    .max(60)
    .optional()
    .meta({ description: `${what}, by identifier or common name.`, examples: [[example]] });

export const RemediesRequest = z
  .strictObject({
    glaze: Glaze,
    body: Body,
    firing: Firing.optional(),
    ware: Ware.optional(),
    seed: z
      .number()
      .int()
      .min(0)
      .max(4294967295)
      .optional()
      .meta({ description: "Seed of the quasi-random draws [-]; the same seed gives the same answer.", examples: [1] }),
    target: z
      .number()
      .min(0.05)
      .max(0.99)
      .optional()
      .meta({ description: "Chance of staying sound to reach [-]; 0.85 if left out.", examples: [0.85] }),
    allow: materials("Materials that may come in or grow; the usual ones may come in if left out", "silica"),
    forbid: materials("Materials that may not come in nor grow", "zinc-oxide"),
    keep: materials("Materials of the recipe that keep their parts", "kaolin"),
    parts: z
      .record(z.string().min(1).max(100), PartsBounds)
      .optional()
      .meta({
        description: "Material → parts, for each 100 parts of the recipe as it stands.",
        examples: [{ silica: { max: 30 } }],
      }),
    seger: z
      .record(z.string().min(1).max(20), MoleBounds)
      .optional()
      .meta({
        description: "Oxide → moles in the Seger formula [mol].",
        examples: [{ Al2O3: { min: 0.4, max: 0.6 } }],
      }),
    silicaToAlumina: MoleBounds.optional(),
    melt: z
      .strictObject({
        logViscosity: z
          .number()
          .min(0.01)
          .max(3)
          .optional()
          .meta({
            description: "Change of the viscosity at the peak, up or down; 0.2 if left out [log10(Pa·s)].",
            examples: [0.3],
          }),
        surfaceTensionPercent: z
          .number()
          .min(0.5)
          .max(50)
          .optional()
          .meta({ description: "Change of the surface tension, up or down [%]; 5 if left out.", examples: [8] }),
      })
      .optional()
      .meta({ description: "How far the melt may change." }),
    bodies: z
      .array(
        z
          .strictObject({
            name: z
              .string()
              .min(1)
              .max(100)
              .optional()
              .meta({ description: "What you call it.", examples: ["the white clay"] }),
            body: Body,
          })
          .meta({ id: "ClayAtHand", description: "A clay at hand." }),
      )
      .max(20)
      .optional()
      .meta({ description: "Other clays at hand, up to 20; the classes fired to this peak if left out." }),
  })
  .meta({
    id: "RemediesRequest",
    description: "A misfit, and what may be done about it.",
    examples: [THAW_ON_RED_STONEWARE],
  });

const Standing = z
  .strictObject({ verdict: Verdict, probabilities: Probabilities, expansion: Quantity, stress: Quantity })
  .meta({
    id: "Standing",
    description: "How a glaze stands on its clay: expansion 20–300 °C, stress tension positive.",
  });

const parts = (what: string) => z.number().meta({ description: `${what} [parts].`, examples: [22] });

const NewLine = z
  .strictObject({
    name: z.string().meta({ description: "What to weigh.", examples: ["silica"] }),
    line: RecipeLine,
    before: parts("Parts as it stands"),
    after: parts("Parts as changed"),
    change: parts("The difference"),
  })
  .meta({ id: "NewLine", description: "One line of a changed recipe." });

const Block = z
  .strictObject({
    limit: z.string().meta({ description: "Which limit.", examples: ["melt"] }),
    text: z.string().meta({ description: "The same in plain words." }),
  })
  .meta({ id: "Block", description: "A limit that stands in the way." });

const change = z
  .strictObject({ before: Quantity, after: Quantity })
  .meta({ id: "BeforeAfter", description: "A figure as it stands and as changed." });

const Remedy = z
  .strictObject({
    kind: z
      .enum(["silica", "alumina-with-silica", "flux-swap", "boron", "least-change", "thickness", "cooling", "body"])
      .meta({ description: "Which kind of answer.", examples: ["flux-swap"] }),
    title: z.string().meta({ description: "The kind in plain words." }),
    reaches: z.boolean().meta({ description: "Whether a fit says that the target is reached." }),
    partsMoved: z.number().meta({
      description: "Parts moved for each 100 of the recipe [parts]; 0 where the recipe stays.",
      examples: [8.5],
    }),
    before: Standing,
    after: Standing,
    recipe: z
      .strictObject({
        lines: z.array(NewLine).meta({ description: "The recipe, for each 100 parts of the old one." }),
        additions: z.array(NewLine).meta({ description: "What goes over the batch; it keeps its share." }),
        text: z.string().meta({ description: "The new recipe as one would write it on a card." }),
      })
      .nullable()
      .meta({ description: "The new recipe; null where the recipe stays." }),
    fit: FitRequest,
    melt: z
      .strictObject({
        logViscosity: change,
        surfaceTension: z.union([change, z.null()]).meta({ description: "Null where no set covers the glaze." }),
      })
      .nullable()
      .meta({ description: "How the melt changes; null where the recipe stays." }),
    costs: z.array(z.string()).meta({ description: "What it may cost." }),
    blocks: z.array(Block).meta({ description: "What keeps it from going further, where it does not reach." }),
    text: z.string().meta({ description: "The same in one sentence." }),
  })
  .meta({ id: "Remedy", description: "One way to mend it. `fit` is the question as it would then be asked of a fit." });

export const RemediesReport = z
  .strictObject({
    headline: z.string().meta({ description: "The answer in plain words." }),
    target: z.number().meta({ description: "Chance of staying sound that was wanted [-].", examples: [0.85] }),
    before: Standing,
    remedies: z
      .array(Remedy)
      .meta({ description: "Those that reach the target first, recipes by parts moved; then how far others get." }),
    blocked: z.array(Block).meta({ description: "Where nothing reaches: what stands in the way." }),
    ...answerFields,
  })
  .meta({ id: "RemediesReport", description: "What would make it fit. Nothing that reaches is an answer too." });
