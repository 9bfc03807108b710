/** Sizes: the answer. @module */
import { z } from "zod";
import { count, magnitude, signed, words } from "./figures.ts";
import { LengthUnit, rounded } from "./lengths.ts";
import { answerFields, quantity } from "./quantity.ts";
import { shrinkageTaken } from "./shrinkage.ts";

export { SizesRequest } from "./sizes-request.ts";

const sentence = (example: string) => words("The same in a sentence.", example);
const pieces = (example: number) => count("How many [-].", example, { min: 1 });
const within = (description: string) => quantity(`${description}, in \`unit\`.`);

const Size = z
  .strictObject({
    name: words("Which part.", "rim"),
    target: rounded("What is wanted fired."),
    thrown: within("Exact size to throw, with what the shrinkage leaves open"),
    throwTo: rounded("The same as callipers are set; what follows goes by it."),
    leatherHard: within("Leather hard"),
    boneDry: within("Bone dry"),
    lands: within("Where it lands fired"),
    throwBetween: z
      .union([
        z.strictObject({
          low: signed("Smallest, in `unit`; below 0 where any size is near enough.", 105.3),
          high: magnitude("Largest, in `unit`.", 106.7),
          unit: LengthUnit,
        }),
        z.null(),
      ])
      .meta({
        description: "For a set: between which sizes to throw each; null without tolerance or where none would do.",
      }),
  })
  .meta({
    id: "Size",
    description:
      "One size: what is wanted fired, the exact size to throw with what the shrinkage leaves open, the same as callipers are " +
      "set, and from there leather hard, bone dry and where it lands fired.",
  });

const Clay = z
  .strictObject({
    perPiece: quantity("Wet clay for one [g]."),
    wedge: words("As said at the bench.", "640 g"),
    forAll: z
      .union([
        z.strictObject({
          pieces: pieces(6),
          weight: quantity("Wet clay for them all [kg]."),
          text: words("As said at the bench.", "3.8 kg"),
        }),
        z.null(),
      ])
      .meta({ description: "For the set; null for one." }),
  })
  .meta({ id: "Clay", description: "Wet clay to wedge." });
const clay = z
  .union([Clay, z.null()])
  .meta({ description: "Clay to wedge; null where the clay's volume is not known." });

export const SizesReport = z
  .strictObject({
    headline: words(
      "The answer in a sentence.",
      "The clay loses 12 % from wet to fired: throw height 114 mm for 100 mm fired, rim 106 mm for 93 mm fired.",
    ),
    shrinkage: z
      .strictObject(shrinkageTaken)
      .meta({ id: "ShrinkageTaken", description: "The total shrinkage that was used, of plastic length." }),
    sizes: z.array(Size).meta({ description: "Part by part; for a nest, step by step." }),
    set: z
      .union([
        z.strictObject({
          pieces: count("How many [-]; null where the set was not counted.", 6, { min: 1 }).nullable(),
          message: sentence(
            "6 pieces of one clay in one firing shrink alike: doubt about the shrinkage moves them all together.",
          ),
        }),
        z.null(),
      ])
      .meta({ description: "About the set; null without one." }),
    lid: z
      .union([
        z
          .strictObject({
            seat: within("Diameter of the seat, fired"),
            lid: Size,
            play: within("Fired play on one side"),
            message: sentence(
              "For a seat of 84 mm fired, throw the lid 93.6 mm across its flange; it will have about 0.82 mm of play all round (0.49 mm to 1.14 mm).",
            ),
          })
          .meta({ id: "LidAnswer", description: "Fired seat, the lid to throw, and the fired play on one side." }),
        z.null(),
      ])
      .meta({ description: "The lid; null without one." }),
    capacity: z
      .union([
        z
          .strictObject({
            fired: quantity("What it holds fired [ml]."),
            thrown: quantity("What it holds freshly thrown [ml]."),
            message: sentence("It holds 505 ml fired, to the line; freshly thrown it must hold 741 ml (728 to 754)."),
          })
          .meta({ id: "Capacity", description: "What it holds fired, and freshly thrown [ml]." }),
        z.null(),
      ])
      .meta({ description: "Capacity to the line; null without a profile or a capacity wanted." }),
    clay,
    slabs: z
      .array(
        z
          .strictObject({
            name: words("Which slab.", "tile"),
            sizes: z.array(Size).meta({ description: "Length, width and, where given, thickness." }),
            pieces: pieces(12),
            clay,
          })
          .meta({ id: "SlabAnswer", description: "What to cut and to roll." }),
      )
      .meta({ description: "Slab by slab; empty if none were asked for." }),
    oldNotes: z
      .array(
        z
          .strictObject({
            name: words("What was thrown.", "mug rim"),
            thrownThen: rounded("As it was thrown then."),
            fired: within("What that came to fired"),
            throwNow: within("What to throw now for the same"),
            throwTo: rounded("The same as callipers are set."),
          })
          .meta({ id: "NewNote", description: "What it came to fired, and what to throw now for the same." }),
      )
      .meta({ description: "Note by note; empty if none were given." }),
    ...answerFields,
  })
  .meta({ id: "SizesReport", description: "What to throw, and where it lands." });
