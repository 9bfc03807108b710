/** How the ware was fired, and what was glazed. @module */
import { z } from "zod";
import { peakC, wallMm } from "./numbers.ts";

const CoolingSegment = z
  .strictObject({
    toC: z
      .number()
      .min(-50)
      .max(1700)
      .meta({ description: "End of the segment [°C].", examples: [760] }),
    cPerHour: z
      .number()
      .min(1)
      .max(20000)
      .meta({ description: "Rate on the way [K/h].", examples: [300] }),
    holdMinutes: z
      .number()
      .min(0)
      .max(10080)
      .optional()
      .meta({ description: "Soak at the end [min]; none if left out.", examples: [30] }),
  })
  .meta({ id: "CoolingSegment", description: "Cool to a temperature at a rate, then hold." });

export const Firing = z
  .strictObject({
    peakC: peakC.optional().meta({
      description:
        "Highest temperature reached [°C]. A fit hangs on the cooling and warns of an unusual peak; remedies keep the melt as it is there, in the middle of the class's firing range if left out.",
      examples: [1240],
    }),
    coolingCPerHour: z
      .number()
      .min(1)
      .max(20000)
      .optional()
      .meta({
        description: "Cooling rate between about 700 and 500 °C [K/h]; 100 if left out. Give this or cooling.",
        examples: [100],
      }),
    cooling: z
      .array(CoolingSegment)
      .min(1)
      .max(20)
      .optional()
      .meta({
        description: "Cooling as segments from hot to cold, 1 to 20 of them. Give this or coolingCPerHour.",
        examples: [
          [
            { toC: 760, cPerHour: 300, holdMinutes: 30 },
            { toC: 20, cPerHour: 80 },
          ],
        ],
      }),
  })
  .meta({ id: "Firing", description: "How the ware was fired." });

export const Ware = z
  .strictObject({
    wallMm: wallMm.optional().meta({ description: "Wall of the fired clay [mm]; 5 if left out.", examples: [6] }),
    glazed: z
      .enum(["both-faces", "one-face", "one-face-free"])
      .optional()
      .meta({
        description:
          "Which faces carry glaze: both; one face of a closed wall, which cannot bend (a cup glazed inside only); " +
          "or one face of a flat piece, which can. Both if left out.",
        examples: ["both-faces"],
      }),
    serviceYears: z
      .number()
      .min(0.01)
      .max(200)
      .optional()
      .meta({ description: "How long it should stay sound [years]; 10 if left out.", examples: [10] }),
    edgeRadiusMm: z
      .number()
      .min(0.1)
      .max(1000)
      .optional()
      .meta({
        description: "Radius of the sharpest glazed rim, handle or sprig [mm]; half the wall if left out.",
        examples: [3],
      }),
  })
  .meta({ id: "Ware", description: "What is glazed, and how." });
