/** Sizes: the question. @module */
import { z } from "zod";
import { PARTS } from "../engine/sizes/index.ts";
import { JAR } from "./larch-lane-sizes.ts";
import { type Length, LengthUnit, length, unit, volume } from "./lengths.ts";
import { Shrinkage } from "./shrinkage.ts";

/** Described with its limits; the engine keeps them, and says what is wrong in better words than a validator. */
const number = (description: string, example: number, minimum: number, maximum: number) =>
  z.number().meta({ description, examples: [example], minimum, maximum });

/** Where each part is measured. */
const MEASURED: Record<(typeof PARTS)[number], string> = {
  height: "Height over all",
  depth: "Depth inside, rim to floor",
  diameter: "Diameter outside",
  rim: "Diameter of the rim outside",
  belly: "Diameter outside at the widest",
  neck: "Diameter of the neck outside",
  foot: "Diameter of the foot outside",
  gallery: "Diameter inside the gallery, where a lid sits",
  flange: "Diameter of the part of a lid that goes in",
  length: "Length outside",
  width: "Width outside",
  wall: "Thickness of the wall",
  floor: "Thickness of the floor",
};

export const FiredSizes = z
  .strictObject({
    ...(Object.fromEntries(PARTS.map((part) => [part, length(`${MEASURED[part]}.`).optional()])) as Record<
      (typeof PARTS)[number],
      z.ZodOptional<typeof Length>
    >),
    capacity: volume("What it should hold, filled to the line.").optional(),
  })
  .meta({
    id: "FiredSizes",
    description: "What the pot should measure fired. Height, depth and floor shrink as heights do, the rest as widths.",
    examples: [JAR.fired],
  });

const form = <F extends string>(name: F) =>
  z.literal(name).meta({ description: "Which kind of outline this is.", examples: [name] });
const walls = {
  dimensions: z
    .enum(["outside", "inside"])
    .meta({ description: "Which side of the wall the outline was measured on.", examples: ["outside"] }),
  wall: length("Thickness of the wall."),
  floor: length("Thickness of the floor; the wall's if left out.").optional(),
  belowRim: length("How far below the rim it is filled; to the rim if left out.").optional(),
  holds: volume("Scales the outline until it holds that much to the line.").optional(),
};
const height = length("Height over all.");
const rim = length("Diameter at the rim.");
const foot = length("Diameter at the foot.");
const ABOUT = "Fired sizes.";

export const Profile = z
  .discriminatedUnion("form", [
    z
      .strictObject({ form: form("straight"), diameter: length("Diameter from foot to rim."), height, ...walls })
      .meta({ id: "StraightProfile", description: `A cylinder. ${ABOUT}` }),
    z
      .strictObject({ form: form("tapered"), foot, rim, height, ...walls })
      .meta({ id: "TaperedProfile", description: `A cone cut off at the foot. ${ABOUT}` }),
    z
      .strictObject({ form: form("rounded"), foot: foot.optional(), rim, height, ...walls })
      .meta({ id: "RoundedProfile", description: `Part of a sphere, from foot to rim. ${ABOUT}` }),
    z
      .strictObject({
        form: form("points"),
        points: z
          .array(
            z
              .strictObject({ across: length("Diameter there."), up: length("Height above the foot.") })
              .meta({ id: "OutlinePoint", description: "A diameter, and its height above the foot." }),
          )
          .min(2)
          .max(200)
          .meta({ description: "2 to 200 points from the foot up, joined by straight lines." }),
        ...walls,
      })
      .meta({ id: "PointProfile", description: `Any outline. ${ABOUT}` }),
  ])
  .meta({ id: "Profile", description: "The shape of a pot turned about its axis, fired." });

const Lid = z
  .strictObject({
    seat: length("Diameter of the pot where the lid sits: inside the gallery, or outside the neck."),
    stage: z.enum(["thrown", "leather-hard", "bone-dry", "fired"]).meta({
      description: "When the seat was measured.",
      examples: ["fired"],
    }),
    sits: z
      .enum(["inside", "over"])
      .optional()
      .meta({ description: "Whether the lid goes into the gallery or over the neck; inside if left out." }),
    clearance: length("Fired play between lid and pot, on one side."),
    glaze: length("Fired glaze on one side of the joint, seat and flange together; none if left out.").optional(),
    flange: length("A fired lid size to be checked.").optional(),
    firedTogether: z
      .boolean()
      .optional()
      .meta({
        description: "Whether the lid is fired on its pot; true if left out, except for a fired pot.",
        examples: [true],
      }),
    shrinkage: Shrinkage.optional().meta({ description: "Of the lid's clay, where it is another." }),
  })
  .meta({
    id: "Lid",
    description: "A lid for a pot that was measured.",
  });

const Slab = z
  .strictObject({
    name: z
      .string()
      .max(60)
      .optional()
      .meta({ description: "What it is called.", examples: ["tile"] }),
    length: length("Length."),
    width: length("Width."),
    thickness: length("Thickness; how much clay it takes is not told without.").optional(),
    pieces: z
      .number()
      .int()
      .min(1)
      .max(100000)
      .optional()
      .meta({ description: "How many [-]; 1 if left out.", examples: [6] }),
    wastePercent: number("Clay trimmed off the sheet, of the clay rolled [%]; 0 if left out.", 15, 0, 90).optional(),
  })
  .meta({ id: "Slab", description: "A tile or slab: fired sizes." });

export const SizesRequest = z
  .strictObject({
    unit,
    answerIn: LengthUnit.optional().meta({
      description: "Unit of the answer; `unit` if left out.",
      examples: ["in"],
    }),
    shrinkage: Shrinkage,
    fired: FiredSizes.optional(),
    set: z
      .strictObject({
        pieces: z
          .number()
          .int()
          .optional()
          .meta({
            description: "How many alike, up to 10 000 [-]; one if left out.",
            examples: [6],
            minimum: 1,
            maximum: 10_000,
          }),
        tolerance: length("How far one piece may be off fired, either way.").optional(),
        scales: z
          .array(number("A step against full size [-].", 0.8, 0.05, 20))
          .min(1)
          .max(50)
          .optional()
          .meta({
            description: "Steps of a nest against the sizes given, 1 for full size [-].",
            examples: [[1, 0.8, 0.64]],
          }),
      })
      .optional()
      .meta({ description: "A set: pieces, the fired tolerance of one piece either way, or the steps of a nest." }),
    lid: Lid.optional(),
    profile: Profile.optional(),
    slabs: z.array(Slab).min(1).max(50).optional().meta({ description: "Tiles and slabs, 1 to 50 kinds." }),
    oldNotes: z
      .strictObject({
        shrinkage: Shrinkage,
        thrown: z
          .array(
            z
              .strictObject({
                name: z
                  .string()
                  .max(60)
                  .meta({ description: "What was thrown.", examples: ["mug rim"] }),
                size: length("As it was thrown."),
                upright: z
                  .boolean()
                  .optional()
                  .meta({ description: "Whether it is a height; no if left out.", examples: [false] }),
              })
              .meta({ id: "OldNote", description: "A size as it used to be thrown." }),
          )
          .min(1)
          .max(200)
          .meta({ description: "Sizes as they used to be thrown, 1 to 200." }),
      })
      .optional()
      .meta({ description: "Notes for another clay or firing: its shrinkage, and what was thrown then." }),
    clay: z
      .strictObject({
        plasticDensityGPerCm3: number("Clay as wedged [g/cm3]; 1.85 to 2.05 if left out.", 1.95, 1, 3).optional(),
        trimmingPercent: number("Turned away, of the clay thrown [%]; 10 to 30 if left out.", 20, 0, 90).optional(),
        throwingLossPercent: number(
          "Left on the wheel, of the clay wedged [%]; 2 to 7 if left out.",
          4,
          0,
          90,
        ).optional(),
      })
      .optional()
      .meta({ description: "What lies between the fired pot and the lump on the scale." }),
  })
  .meta({
    id: "SizesRequest",
    description: "The shrinkage, and at least one of fired sizes, a lid, a profile, slabs or old notes.",
    examples: [JAR],
  });
