/** How far will it run? The question. @module */
import { z } from "zod";
import { seed } from "./figures.ts";
import { PictureQuery } from "./fit-picture.ts";
import { MadeGlaze } from "./glaze.ts";
import { CLOUDBURST_OVER_THAW } from "./larch-lane-running.ts";
import { peakC as peak } from "./numbers.ts";

const rate = (what: string, example: number) =>
  z
    .number()
    .min(1)
    .max(20000)
    .meta({ description: `${what} [K/h].`, examples: [example] });
const minutes = z
  .number()
  .min(0)
  .max(10080)
  .meta({ description: "Soak at the end [min]; none if left out.", examples: [15] });
const peakC = peak.meta({ description: "Highest temperature reached [°C].", examples: [1240] });

export const Coat = z
  .strictObject({
    glaze: MadeGlaze,
    application: z
      .enum(["dip", "pour", "spray", "brush"])
      .optional()
      .meta({
        description:
          "How it was put on, where the thickness is not known (common practice, no source). Give this or thicknessMm.",
        examples: ["brush"],
      }),
    coats: z
      .number()
      .int()
      .min(1)
      .max(20)
      .optional()
      .meta({ description: "How many times over; 1 if left out [-].", examples: [2] }),
  })
  .meta({ id: "Coat", description: "One coat: a glaze with its fired thickness, or with how it was put on." });

export const FiringSegment = z
  .strictObject({
    toC: z
      .number()
      .min(-50)
      .max(1700)
      .meta({ description: "End of the segment, up or down [°C].", examples: [1140] }),
    cPerHour: rate("Rate on the way", 150),
    holdMinutes: minutes.optional(),
  })
  .meta({ id: "FiringSegment", description: "Heat or cool to a temperature at a rate, then soak." });

export const RunningFiring = z
  .strictObject({
    peakC: peakC.optional().meta({
      description: "Highest temperature reached [°C]. Give this, cone or segments.",
      examples: [1240],
    }),
    cone: z
      .string()
      .min(1)
      .max(10)
      .optional()
      .meta({
        description: "Number of a standard pyrometric cone; read as a peak from printed tables, with their doubt.",
        examples: ["6"],
      }),
    heatingCPerHour: rate("Heating over the last 100 °C; 100 if left out", 60).optional(),
    holdMinutes: minutes.optional(),
    coolingCPerHour: rate("Cooling from the peak; 100 if left out", 150).optional(),
    segments: z
      .array(FiringSegment)
      .min(1)
      .max(40)
      .optional()
      .meta({
        description: "The whole firing from 20 °C, 1 to 40 segments, in place of the rest.",
        examples: [
          [
            { toC: 1140, cPerHour: 150 },
            { toC: 1240, cPerHour: 60, holdMinutes: 20 },
            { toC: 20, cPerHour: 150 },
          ],
        ],
      }),
  })
  .meta({ id: "RunningFiring", description: "A firing: exactly one of peakC, cone and segments." });

export const RunningWall = z
  .strictObject({
    slopeDeg: z
      .number()
      .min(0)
      .max(90)
      .optional()
      .meta({ description: "Slope from level; 90 if left out [°].", examples: [90] }),
    glazedMm: z
      .number()
      .min(1)
      .max(3000)
      .optional()
      .meta({ description: "Height of the glazed band along the wall; 100 if left out [mm].", examples: [120] }),
    clearanceMm: z
      .number()
      .min(0.1)
      .max(1000)
      .optional()
      .meta({ description: "Bare clay between the glaze and the shelf; 3 if left out [mm].", examples: [6] }),
  })
  .meta({ id: "RunningWall", description: "The wall that the glaze hangs on." });

export const LaterHeat = z
  .strictObject({
    kind: z.enum(["decal", "lustre", "enamel", "other"]).meta({ description: "What it is for.", examples: ["decal"] }),
    peakC,
    heatingCPerHour: rate("Heating; 100 if left out", 100).optional(),
    holdMinutes: minutes.optional(),
    coolingCPerHour: rate("Cooling; 100 if left out", 100).optional(),
  })
  .meta({ id: "LaterHeat", description: "A later, cooler firing of the same piece." });

const stack = (least: number, description: string) => z.array(Coat).min(least).max(6).meta({ description });

export const RunningRequest = z
  .strictObject({
    glaze: MadeGlaze.optional(),
    coats: stack(1, "The coats, the outer one first, the last on the clay; 1 to 6. Give these or glaze.").optional(),
    firing: RunningFiring,
    wall: RunningWall.optional(),
    refiring: z
      .strictObject({
        firing: RunningFiring.optional(),
        coats: stack(0, "Coats put over the fired glaze first, the outer one first, up to 6.").optional(),
      })
      .optional()
      .meta({ description: "The second firing, where it is not the first again." }),
    laterHeat: z.array(LaterHeat).max(5).optional().meta({ description: "Later, cooler firings, up to 5." }),
    bisque: z
      .boolean()
      .optional()
      .meta({ description: "Whether the clay was fired before glazing; true if left out.", examples: [true] }),
    seed: seed.optional(),
  })
  .meta({
    id: "RunningRequest",
    description: "How far a glaze, or a stack of coats, runs down a wall over a firing.",
    examples: [CLOUDBURST_OVER_THAW],
  });

/** How the picture of a run should look. */
export const RunningPictureQuery = PictureQuery.omit({ picture: true });
