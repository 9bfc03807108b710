/** The whole answer to the main question. @module */
import { z } from "zod";
import { answerFields, Quantity } from "./quantity.ts";

const Outcome = z
  .enum(["crazesOnCooling", "crazesLater", "sound", "shivers"])
  .meta({ id: "Outcome", description: "What happens to a piece.", examples: ["sound"] });

export const Verdict = z
  .enum(["crazes", "may-craze", "sound", "may-shiver", "shivers"])
  .meta({ id: "Verdict", description: "The answer in one word.", examples: ["may-craze"] });

const chance = (what: string) =>
  z
    .number()
    .min(0)
    .max(1)
    .meta({ description: `Chance that it ${what} [-].` });

const Probabilities = z
  .strictObject({
    crazesOnCooling: chance("crazes as it cools"),
    crazesLater: chance("crazes later, within the service time"),
    sound: chance("stays sound"),
    shivers: chance("shivers"),
  })
  .meta({
    id: "Probabilities",
    description: "Chances of each outcome; they sum to 1.",
    examples: [{ crazesOnCooling: 0.1, crazesLater: 0.2, sound: 0.65, shivers: 0.05 }],
  });

const StressCase = z
  .strictObject({
    stressMPa: z
      .number()
      .meta({ description: "Stress in the glaze at room temperature, tension positive [MPa].", examples: [-35] }),
    outcome: Outcome,
  })
  .meta({ id: "StressCase", description: "One of twenty equally likely cases." });

const Stress = Quantity.extend({
  cases: z.array(StressCase).meta({ description: "Twenty equally likely cases, from squeezed to pulled." }),
}).meta({
  id: "Stress",
  description: "Stress in the glaze after cooling, tension positive, with its equally likely cases.",
});

const Reason = z
  .strictObject({
    code: z.string().meta({ description: "Stable kebab-case identifier.", examples: ["glaze-shrinks-more"] }),
    text: z.string().meta({ description: "A sentence a student understands, numbers included." }),
    quantities: z.array(Quantity).meta({ description: "The figures behind the sentence." }),
    sources: z.array(z.string()).meta({ description: "Keys into GET /v1/sources." }),
  })
  .meta({ id: "Reason", description: "One reason for the verdict." });

const OxidePull = z
  .strictObject({
    oxide: z.string().meta({ description: "Oxide formula.", examples: ["K2O"] }),
    molePercent: z.number().meta({ description: "Share of the fired glaze [mol %].", examples: [3.4] }),
    weightPercent: z.number().meta({ description: "Share of the fired glaze [wt %].", examples: [5.1] }),
    pullMPa: z.number().meta({
      description: "Stress it adds where silica would stand in its place, tension positive [MPa].",
      examples: [18],
    }),
    perWeightPercentMPa: z.number().meta({
      description: "Stress that one more weight per cent would add, the rest scaled down [MPa].",
      examples: [4],
    }),
  })
  .meta({ id: "OxidePull", description: "What one oxide does to the stress." });

const Driver = z
  .strictObject({
    input: z.string().meta({ description: "Which input.", examples: ["bodyExpansion"] }),
    label: z.string().meta({ description: "The same in plain words.", examples: ["the clay's expansion"] }),
    share: z.number().meta({ description: "First-order share of the variance of the stress [-].", examples: [0.6] }),
  })
  .meta({ id: "Driver", description: "How much of the doubt comes from one input." });

const BandPoint = z
  .strictObject({
    c: z.number().meta({ description: "Temperature [°C].", examples: [500] }),
    strainPercent: z.number().meta({ description: "Length change from room temperature [%].", examples: [0.3] }),
    lowPercent: z.number().meta({ description: "Lower end, 90 % band [%].", examples: [0.28] }),
    highPercent: z.number().meta({ description: "Upper end, 90 % band [%].", examples: [0.32] }),
  })
  .meta({ id: "BandPoint", description: "A point of a drawn curve." });

const Thresholds = z
  .strictObject({
    cracksOnCooling: Quantity,
    mayCrackInTime: Quantity,
    edgesMayLift: Quantity,
    flakesComeOff: Quantity,
  })
  .meta({
    id: "Thresholds",
    description: "Stress at which each thing starts at this thickness, tension positive [MPa].",
  });

const FittedGlaze = z
  .strictObject({
    model: z.string().meta({ description: "Expansion model used, from GET /v1/expansion-models." }),
    expansion: Quantity,
    expansionToSetPoint: Quantity,
    transition: Quantity,
    youngs: Quantity,
    thickness: Quantity,
  })
  .meta({
    id: "FittedGlaze",
    description: "The glaze as the answer saw it: means over 20–300 °C and to the set point.",
  });

const FittedBody = z
  .strictObject({
    class: z
      .string()
      .nullable()
      .meta({ description: "Class of body, where one was given.", examples: ["red-stoneware"] }),
    expansionToSetPoint: Quantity,
    expansion: Quantity,
    youngs: Quantity,
    moistureExpansion: Quantity,
    stress: Quantity,
  })
  .meta({
    id: "FittedBody",
    description: "The clay as the answer saw it; stress is the mean in the wall, tension positive.",
  });

export const FitReport = z
  .strictObject({
    verdict: Verdict,
    headline: z.string().meta({ description: "The answer in one plain sentence." }),
    probabilities: Probabilities,
    stress: Stress,
    thresholds: Thresholds,
    mismatch: Quantity,
    setPoint: Quantity,
    glaze: FittedGlaze,
    body: FittedBody,
    pulls: z
      .array(OxidePull)
      .meta({ description: "What each oxide pulls; empty for a glaze known by expansion alone." }),
    drivers: z.array(Driver).meta({ description: "What the doubt comes from, largest first." }),
    reasons: z.array(Reason).meta({ description: "Why, most telling first." }),
    next: z.array(Reason).meta({ description: "What to fire or measure next, most telling first." }),
    curves: z
      .strictObject({ glaze: z.array(BandPoint), body: z.array(BandPoint) })
      .optional()
      .meta({ description: "Both cooling curves; only when asked for by include." }),
    ...answerFields,
  })
  .meta({
    id: "FitReport",
    description:
      "Whether the glaze fits. mismatch is the body's contraction minus the glaze's from the set point to 20 °C [%]: " +
      "above 0 the glaze is squeezed.",
  });
