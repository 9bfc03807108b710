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

export const Probabilities = z
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
    detail: z.string().meta({ description: "The same for an engineer: the formula with its numbers." }),
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

const PartPull = z
  .strictObject({
    label: z.string().meta({ description: "The line of the recipe.", examples: ["silica"] }),
    material: z
      .string()
      .nullable()
      .meta({ description: "Built-in id; null for a line with its own analysis or formula.", examples: ["silica"] }),
    perPartMPa: z.number().meta({
      description: "Change of the stress for one part more by weight, above 0 toward crazing [MPa].",
      examples: [-2.4],
    }),
  })
  .meta({ id: "PartPull", description: "What one more part of a material would do to the stress." });

const Driver = z
  .strictObject({
    input: z.string().meta({ description: "Which input.", examples: ["bodyExpansion"] }),
    label: z.string().meta({ description: "The same in plain words.", examples: ["the clay's expansion"] }),
    share: z.number().meta({ description: "First-order share of the variance of the stress [-].", examples: [0.6] }),
    verdictShare: z
      .number()
      .meta({ description: "First-order share of the variance of whether it fails at all [-].", examples: [0.4] }),
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
    rupture: Quantity,
    splits: chance("is split by the squeezed glaze"),
    bounds: z
      .strictObject({
        turner: z.number().meta({ description: "Grains squeezed alike [1e-6/K].", examples: [6.1] }),
        linear: z.number().meta({ description: "Grains by volume alone [1e-6/K].", examples: [6.9] }),
      })
      .optional()
      .meta({ description: "For a body of phases: its mean to the set point by the outer rules of mixing." }),
  })
  .meta({
    id: "FittedBody",
    description:
      "The clay as the answer saw it; stress is the mean in the wall, tension positive, rupture its modulus of rupture.",
  });

const Shivering = z
  .strictObject({
    edgeRadiusMm: z
      .number()
      .meta({ description: "Radius of the sharpest glazed edge, as given or half the wall [mm].", examples: [3] }),
    edgePull: Quantity,
    edges: chance("lifts at that edge"),
    flakes: chance("flakes off the face"),
  })
  .meta({
    id: "Shivering",
    description:
      "Lifting taken apart. edgePull is the pull between glaze and clay at the edge [MPa]: above 0 it peels.",
  });

const trial = {
  id: z.string().meta({ description: "Stable identifier.", examples: ["iso-10545-11"] }),
  name: z.string().meta({ description: "What is done.", examples: ["ISO 10545-11, 500 kPa for 2 h"] }),
};

const Trials = z
  .strictObject({
    quench: z
      .strictObject({
        standard: z.string().meta({ description: "Whose steps these are.", examples: ["ASTM C554"] }),
        cracksFrom: Quantity,
        steps: z
          .array(
            z
              .strictObject({
                ovenC: z.number().meta({ description: "Oven before the plunge [°C].", examples: [149] }),
                passes: chance("passes the step"),
              })
              .meta({ id: "QuenchStep", description: "One step of the quench." }),
          )
          .meta({ description: "Chance to pass each step, mildest first." }),
        text: z.string().meta({ description: "The same in one sentence." }),
      })
      .meta({
        id: "QuenchTrial",
        description: "From the oven into water of 20 °C. cracksFrom is the difference at which cracks begin [K].",
      }),
    steam: z
      .array(
        z
          .strictObject({ ...trial, passes: chance("passes") })
          .meta({ id: "SteamTrial", description: "One autoclave test." }),
      )
      .meta({ description: "Autoclave tests, which bring moisture growth on early." }),
    use: z
      .array(
        z
          .strictObject({ ...trial, cracks: chance("cracks from that use alone") })
          .meta({ id: "UseTrial", description: "One everyday swing." }),
      )
      .meta({ description: "Everyday swings of temperature." }),
  })
  .meta({ id: "Trials", description: "What tests and uses would show, for a fresh piece." });

const ProfilePoint = z
  .strictObject({
    depthMm: z.number().meta({ description: "Depth from the outer face of the glaze [mm].", examples: [0.3] }),
    stressMPa: z.number().meta({ description: "Stress there, tension positive [MPa].", examples: [-46] }),
    layer: z.enum(["glaze", "body"]).meta({ description: "Which layer.", examples: ["glaze"] }),
  })
  .meta({ id: "ProfilePoint", description: "A point of the stress through glaze and wall." });

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
    shivering: Shivering,
    trials: Trials,
    coats: z
      .array(
        z
          .strictObject({
            thicknessMm: z.number().meta({ description: "Thickness of the coat [mm].", examples: [0.3] }),
            stress: Quantity,
          })
          .meta({ id: "CoatStress", description: "Mean stress in one coat, tension positive [MPa]." }),
      )
      .optional()
      .meta({ description: "Of several coats: each by itself, the outer one first; elsewhere, the skin as a whole." }),
    mixed: z
      .strictObject({
        verdict: Verdict,
        headline: z.string().meta({ description: "The answer in one plain sentence." }),
        probabilities: Probabilities,
        stress: Quantity,
      })
      .optional()
      .meta({
        description: "Of several coats: the same if they melt into one another entirely. The truth lies between.",
      }),
    pulls: z
      .array(OxidePull)
      .meta({ description: "What each oxide pulls; empty for a glaze known by expansion alone." }),
    parts: z
      .array(PartPull)
      .optional()
      .meta({ description: "What one more part of each material would do; only when asked for by include." }),
    drivers: z.array(Driver).meta({ description: "What the doubt comes from, largest first." }),
    reasons: z.array(Reason).meta({ description: "Why, most telling first." }),
    next: z.array(Reason).meta({ description: "What to fire or measure next, most telling first." }),
    curves: z
      .strictObject({ glaze: z.array(BandPoint), body: z.array(BandPoint) })
      .optional()
      .meta({ description: "Both cooling curves; only when asked for by include." }),
    profile: z
      .array(ProfilePoint)
      .optional()
      .meta({ description: "Stress through glaze and wall; only when asked for by include." }),
    ...answerFields,
  })
  .meta({
    id: "FitReport",
    description:
      "Whether the glaze fits. mismatch is the body's contraction minus the glaze's from the set point to 20 °C [%]: " +
      "above 0 the glaze is squeezed.",
  });
