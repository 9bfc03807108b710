/** What would make a misfit fit. @module */
import { z } from "zod";
import { Body } from "./body.ts";
import { celsius, count, flag, list, magnitude, seed, share, signed, words } from "./figures.ts";
import { Firing, Ware } from "./firing.ts";
import { Probabilities, Verdict } from "./fit-report.ts";
import { FitRequest } from "./fit-request.ts";
import { Glaze, RecipeLine } from "./glaze.ts";
import { THAW_ON_RED_STONEWARE } from "./larch-lane.ts";
import { answerFields, quantity } from "./quantity.ts";

const bounds = (id: string, unit: string, highest: number, example: number) =>
  z
    .strictObject({
      min: z
        .number()
        .min(0)
        .max(highest)
        .optional()
        .meta({ description: `The least [${unit}]; no bound if left out.`, examples: [example / 2] }),
      max: z
        .number()
        .min(0)
        .max(highest)
        .optional()
        .meta({ description: `The most [${unit}]; no bound if left out.`, examples: [example] }),
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
    seed: seed.optional(),
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
  .strictObject({
    verdict: Verdict,
    probabilities: Probabilities,
    expansion: quantity("Mean linear expansion 20–300 °C [1e-6/K]."),
    stress: quantity("Stress in the glaze after cooling, tension positive [MPa]."),
  })
  .meta({
    id: "Standing",
    description: "How a glaze stands on its clay: expansion 20–300 °C, stress tension positive.",
  });

const NewLine = z
  .strictObject({
    name: words("What to weigh.", "silica"),
    line: RecipeLine,
    before: magnitude("Parts as it stands [parts].", 22),
    after: magnitude("Parts as changed [parts].", 29.1),
    change: signed("The difference [parts].", 7.1),
  })
  .meta({ id: "NewLine", description: "One line of a changed recipe." });

const Block = z
  .strictObject({
    limit: words("Which limit.", "melt"),
    pointer: words(
      "Field of the question that sets it, as a JSON Pointer; left out where none does.",
      "/melt/logViscosity",
    ).optional(),
    soundWithout: share(
      "Chance of staying sound that a change of recipe gets to without it, looked for up to the target [-]; left out where not looked for.",
      0.71,
    ).optional(),
    text: words("The same in plain words.", "The melt would become too stiff or too runny at the peak."),
  })
  .meta({ id: "Block", description: "A limit that stands in the way." });

const BeforeAfter = z
  .strictObject({
    before: quantity("As it stands, in `unit`."),
    after: quantity("As changed, in `unit`."),
  })
  .meta({ id: "BeforeAfter", description: "A figure as it stands and as changed." });
const change = (description: string) => BeforeAfter.meta({ description });

const OtherCooling = z
  .strictObject({
    fromC: celsius("Where it begins [°C].", 740),
    toC: celsius("Where it ends [°C].", 600),
    cPerHour: magnitude("Rate there, as changed [K/h].", 30),
    insteadOfCPerHour: magnitude("Rate there, as it stands [K/h].", 100),
    hours: signed("How much longer the firing takes [h].", 3.3),
    setPoint: change("Where it sets [°C]."),
  })
  .meta({
    id: "OtherCooling",
    description:
      "Another rate where the glaze may set; elsewhere the cooling stays. `setPoint` says where it sets, as it stands and as changed.",
  });

const Remedy = z
  .strictObject({
    kind: z
      .enum(["silica", "alumina-with-silica", "flux-swap", "boron", "least-change", "thickness", "cooling", "body"])
      .meta({ description: "Which kind of answer.", examples: ["flux-swap"] }),
    title: words("The kind in plain words.", "other fluxes, silica and alumina kept"),
    reaches: flag("Whether a fit says that the target is reached.", true),
    partsMoved: magnitude("Parts moved for each 100 of the recipe [parts]; 0 where the recipe stays.", 8.5),
    materialsMoved: count("Materials whose parts change [-]; 0 where the recipe stays.", 2),
    before: Standing,
    after: Standing,
    recipe: z
      .strictObject({
        lines: z.array(NewLine).meta({ description: "The recipe, for each 100 parts of the old one." }),
        additions: z.array(NewLine).meta({ description: "What goes over the batch; it keeps its share." }),
        text: words(
          "The new recipe as one would write it on a card.",
          "potash feldspar 34.3; silica 29.1; whiting 36.6",
        ),
      })
      .nullable()
      .meta({ description: "The new recipe; null where the recipe stays." }),
    cooling: z
      .union([OtherCooling, z.null()])
      .meta({ description: "The new cooling; null for any other way. `fit` carries the whole schedule." }),
    fit: FitRequest,
    melt: z
      .strictObject({
        logViscosity: change("Viscosity at the peak [log10(Pa·s)]."),
        surfaceTension: z
          .union([BeforeAfter, z.null()])
          .meta({ description: "Surface tension at the peak [mN/m]; null where no set gives one for the glaze." }),
      })
      .nullable()
      .meta({ description: "How the melt changes; null where the recipe stays." }),
    costs: list("What it may cost.", "More magnesia makes a stiffer, silkier surface; too much goes matt."),
    blocks: z.array(Block).meta({ description: "What keeps it from going further, where it does not reach." }),
    text: words(
      "The same in one sentence.",
      "silica 22 → 29.1 (+7.1), whiting 18 → 10.9 (−7.1): it then stays sound about 17 in 20.",
    ),
  })
  .meta({ id: "Remedy", description: "One way to mend it. `fit` is the question as it would then be asked of a fit." });

export const RemediesReport = z
  .strictObject({
    headline: words(
      "The answer in plain words.",
      "It stays sound about 2 in 20 as it is. One way brings it to about 17 in 20.",
    ),
    target: share("Chance of staying sound that was wanted [-].", 0.85),
    before: Standing,
    remedies: z.array(Remedy).meta({
      description:
        "Those that reach the target first, recipes by parts moved, each material counting as two parts more; then how far others get.",
    }),
    blocked: z.array(Block).meta({
      description: "Where nothing reaches: what stands in the way of the recipe, what holds back most first.",
    }),
    ...answerFields,
  })
  .meta({ id: "RemediesReport", description: "What would make it fit. Nothing that reaches is an answer too." });
