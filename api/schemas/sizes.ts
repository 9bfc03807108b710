/** Sizes: the answer. @module */
import { z } from "zod";
import { LengthUnit, RoundedLength } from "./lengths.ts";
import { answerFields, Quantity } from "./quantity.ts";

export { SizesRequest } from "./sizes-request.ts";

const sentence = z.string().meta({ description: "The same in a sentence." });

const Size = z
  .strictObject({
    name: z.string().meta({ description: "Which part.", examples: ["rim"] }),
    target: RoundedLength,
    thrown: Quantity,
    throwTo: RoundedLength,
    leatherHard: Quantity,
    boneDry: Quantity,
    lands: Quantity,
    throwBetween: z
      .union([
        z.strictObject({
          low: z.number().meta({ description: "Smallest, in `unit`.", examples: [105.3] }),
          high: z.number().meta({ description: "Largest, in `unit`.", examples: [106.7] }),
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
    perPiece: Quantity,
    wedge: z.string().meta({ description: "As said at the bench.", examples: ["640 g"] }),
    forAll: z
      .union([
        z.strictObject({
          pieces: z
            .number()
            .int()
            .meta({ description: "How many [-].", examples: [6] }),
          weight: Quantity,
          text: z.string().meta({ description: "As said at the bench.", examples: ["3.8 kg"] }),
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
    headline: z.string().meta({ description: "The answer in a sentence." }),
    shrinkage: z
      .strictObject({
        across: Quantity,
        up: Quantity,
        from: z.string().meta({ description: "What it rests on.", examples: ["12 % as stated, give or take 0.5"] }),
      })
      .meta({ id: "ShrinkageTaken", description: "The total shrinkage that was used, of plastic length." }),
    sizes: z.array(Size).meta({ description: "Part by part; for a nest, step by step." }),
    set: z
      .union([
        z.strictObject({
          pieces: z
            .number()
            .int()
            .nullable()
            .meta({ description: "How many [-].", examples: [6] }),
          message: sentence,
        }),
        z.null(),
      ])
      .meta({ description: "About the set; null without one." }),
    lid: z
      .union([
        z
          .strictObject({ seat: Quantity, lid: Size, play: Quantity, message: sentence })
          .meta({ id: "LidAnswer", description: "Fired seat, the lid to throw, and the fired play on one side." }),
        z.null(),
      ])
      .meta({ description: "The lid; null without one." }),
    capacity: z
      .union([
        z
          .strictObject({ fired: Quantity, thrown: Quantity, message: sentence })
          .meta({ id: "Capacity", description: "What it holds fired, and freshly thrown [ml]." }),
        z.null(),
      ])
      .meta({ description: "Capacity to the line; null without a profile or a capacity wanted." }),
    clay,
    slabs: z
      .array(
        z
          .strictObject({
            name: z.string().meta({ description: "Which slab.", examples: ["tile"] }),
            sizes: z.array(Size).meta({ description: "Length, width and, where given, thickness." }),
            pieces: z
              .number()
              .int()
              .meta({ description: "How many [-].", examples: [12] }),
            clay,
          })
          .meta({ id: "SlabAnswer", description: "What to cut and to roll." }),
      )
      .meta({ description: "Slab by slab; empty if none were asked for." }),
    oldNotes: z
      .array(
        z
          .strictObject({
            name: z.string().meta({ description: "What was thrown.", examples: ["mug rim"] }),
            thrownThen: RoundedLength,
            fired: Quantity,
            throwNow: Quantity,
            throwTo: RoundedLength,
          })
          .meta({ id: "NewNote", description: "What it came to fired, and what to throw now for the same." }),
      )
      .meta({ description: "Note by note; empty if none were given." }),
    ...answerFields,
  })
  .meta({ id: "SizesReport", description: "What to throw, and where it lands." });
