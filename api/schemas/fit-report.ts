/** The whole answer to the main question. @module */
import { z } from "zod";
import { celsius, magnitude, percent, share, signed, sourceKeys, words } from "./figures.ts";
import { answerFields, Quantity, quantity } from "./quantity.ts";

const Outcome = z
  .enum(["crazesOnCooling", "crazesLater", "sound", "shivers"])
  .meta({ id: "Outcome", description: "What happens to a piece.", examples: ["sound"] });

export const Verdict = z
  .enum(["crazes", "may-craze", "sound", "may-shiver", "shivers"])
  .meta({ id: "Verdict", description: "The answer in one word.", examples: ["may-craze"] });

const chance = (what: string, example: number) => share(`Chance that it ${what} [-].`, example);
const headline = words(
  "The answer in one plain sentence.",
  "This glaze will most likely craze on this red stoneware: about 18 in 20.",
);
const tension = (what: string) => quantity(`${what}, tension positive [MPa].`);

export const Probabilities = z
  .strictObject({
    crazesOnCooling: chance("crazes as it cools", 0.1),
    crazesLater: chance("crazes later, within the service time", 0.2),
    sound: chance("stays sound", 0.65),
    shivers: chance("shivers", 0.05),
  })
  .meta({
    id: "Probabilities",
    description: "Chances of each outcome; they sum to 1.",
    examples: [{ crazesOnCooling: 0.1, crazesLater: 0.2, sound: 0.65, shivers: 0.05 }],
  });

const StressCase = z
  .strictObject({
    stressMPa: signed("Stress in the glaze at room temperature, tension positive [MPa].", -35),
    outcome: Outcome,
  })
  .meta({ id: "StressCase", description: "One of twenty equally likely cases." });

const Stress = Quantity.extend({
  cases: z.array(StressCase).meta({ description: "Twenty equally likely cases, from squeezed to pulled." }),
}).meta({
  id: "Stress",
  description: "Stress in the glaze after cooling, tension positive, with its equally likely cases [MPa].",
});

const Reason = z
  .strictObject({
    code: words("Stable kebab-case identifier.", "glaze-shrinks-more"),
    text: words(
      "A sentence a student understands, numbers included.",
      "From the point where it sets, near 685 °C, the glaze wants to shrink 0.046 % more than the clay will let it. Cold, it is left stretched at +38 MPa.",
    ),
    detail: words(
      "The same for an engineer: the formula with its numbers.",
      "δ = [ε_b(Ts) − ε_b(20)] − [ε_g(Ts) − ε_g(20)] = −0.046 %, Ts 684 °C; σ = −E_g δ/(1 − ν_g), shared with the wall: +38 MPa.",
    ),
    quantities: z.array(Quantity).meta({ description: "The figures behind the sentence, each in its own unit." }),
    sources: sourceKeys("sciglass-2019"),
  })
  .meta({ id: "Reason", description: "One reason for the verdict." });

const OxidePull = z
  .strictObject({
    oxide: words("Oxide formula.", "K2O"),
    molePercent: percent("Share of the fired glaze [mol %].", 3.4),
    weightPercent: percent("Share of the fired glaze [wt %].", 5.1),
    pullMPa: signed("Stress it adds where silica would stand in its place, tension positive [MPa].", 18),
    perWeightPercentMPa: signed("Stress that one more weight per cent would add, the rest scaled down [MPa].", 4),
  })
  .meta({ id: "OxidePull", description: "What one oxide does to the stress." });

const PartPull = z
  .strictObject({
    label: words("The line of the recipe.", "silica"),
    material: words("Built-in id; null for a line with its own analysis or formula.", "silica").nullable(),
    perPartMPa: signed("Change of the stress for one part more by weight, above 0 toward crazing [MPa].", -2.4),
  })
  .meta({ id: "PartPull", description: "What one more part of a material would do to the stress." });

const Driver = z
  .strictObject({
    input: words("Which input.", "glaze-expansion"),
    label: words("The same in plain words.", "how much the glaze shrinks"),
    share: magnitude("First-order share of the variance of the stress, as estimated from the draws [-].", 0.6),
    verdictShare: magnitude(
      "First-order share of the variance of whether it fails at all, as estimated from the draws [-].",
      0.4,
    ),
  })
  .meta({ id: "Driver", description: "How much of the doubt comes from one input." });

const BandPoint = z
  .strictObject({
    c: celsius("Temperature [°C].", 500),
    strainPercent: signed("Length change from room temperature [%].", 0.3),
    lowPercent: signed("Lower end, 90 % band [%].", 0.28),
    highPercent: signed("Upper end, 90 % band [%].", 0.32),
  })
  .meta({ id: "BandPoint", description: "A point of a drawn curve." });
const curve = (of: string) => z.array(BandPoint).meta({ description: `Cooling curve of the ${of}, point by point.` });

const Thresholds = z
  .strictObject({
    cracksOnCooling: tension("From here up it cracks as it cools"),
    mayCrackInTime: tension("From here up it may crack in time"),
    edgesMayLift: tension("From here down edges may lift"),
    flakesComeOff: tension("From here down flakes come off the face"),
  })
  .meta({
    id: "Thresholds",
    description: "Stress at which each thing starts at this thickness, tension positive [MPa].",
  });

const FittedGlaze = z
  .strictObject({
    model: words("Expansion model used, from GET /v1/expansion-models.", "measured-glasses"),
    expansion: quantity("Mean linear expansion 20–300 °C, as books quote it [1e-6/K]."),
    expansionToSetPoint: quantity("Mean linear expansion from 20 °C to the set point, as it counts here [1e-6/K]."),
    transition: quantity("Glass transition [°C]."),
    youngs: quantity("Young's modulus [GPa]."),
    thickness: quantity("Thickness of the fired glaze [mm]."),
  })
  .meta({
    id: "FittedGlaze",
    description: "The glaze as the answer saw it: means over 20–300 °C and to the set point.",
  });

const FittedBody = z
  .strictObject({
    class: words("Class of body, where one was given.", "red-stoneware").nullable(),
    expansionToSetPoint: quantity("Mean linear expansion from 20 °C to the set point [1e-6/K]."),
    expansion: quantity("Mean linear expansion as stated, else over 20–500 °C [1e-6/K]."),
    youngs: quantity("Young's modulus [GPa]."),
    moistureExpansion: quantity("Growth with moisture over the service time, of length [%]."),
    stress: tension("Mean stress in the wall, or directly under the glaze of a piece that bends"),
    rupture: quantity("Modulus of rupture [MPa]."),
    splits: chance("is split by the squeezed glaze", 0.01),
    bounds: z
      .strictObject({
        turner: signed("Grains squeezed alike [1e-6/K].", 6.1),
        linear: signed("Grains by volume alone [1e-6/K].", 6.9),
      })
      .optional()
      .meta({ description: "For a body of phases: its mean to the set point by the outer rules of mixing." }),
  })
  .meta({
    id: "FittedBody",
    description:
      "The clay as the answer saw it; stress is the mean in the wall, or directly under the glaze of a piece that bends, tension positive, rupture its modulus of rupture.",
  });

const Shivering = z
  .strictObject({
    edgeRadiusMm: magnitude("Radius of the sharpest glazed edge, as given or half the wall [mm].", 3),
    edgePull: quantity("Pull between glaze and clay at that edge, above 0 it peels [MPa]."),
    edges: chance("lifts at that edge", 0.05),
    flakes: chance("flakes off the face", 0.02),
  })
  .meta({
    id: "Shivering",
    description:
      "Lifting taken apart. edgePull is the pull between glaze and clay at the edge [MPa]: above 0 it peels.",
  });

const trial = {
  id: words("Stable identifier.", "iso-10545-11"),
  name: words("What is done.", "ISO 10545-11, 500 kPa for 2 h"),
};

const Trials = z
  .strictObject({
    quench: z
      .strictObject({
        standard: words("Whose steps these are.", "ASTM C554"),
        cracksFrom: quantity("Difference between ware and water at which cracks begin [K]."),
        steps: z
          .array(
            z
              .strictObject({
                ovenC: celsius("Oven before the plunge [°C].", 149),
                passes: chance("passes the step", 0.8),
              })
              .meta({ id: "QuenchStep", description: "One step of the quench." }),
          )
          .meta({ description: "Chance to pass each step, mildest first." }),
        text: words(
          "The same in one sentence.",
          "Expected to fail the quench from 121 °C into 20 °C water; whether it passes a milder one is open.",
        ),
      })
      .meta({
        id: "QuenchTrial",
        description: "From the oven into water of 20 °C. cracksFrom is the difference at which cracks begin [K].",
      }),
    steam: z
      .array(
        z
          .strictObject({ ...trial, passes: chance("passes", 0.9) })
          .meta({ id: "SteamTrial", description: "One autoclave test." }),
      )
      .meta({ description: "Autoclave tests, which bring moisture growth on early." }),
    use: z
      .array(
        z
          .strictObject({ ...trial, cracks: chance("cracks from that use alone", 0.1) })
          .meta({ id: "UseTrial", description: "One everyday swing." }),
      )
      .meta({ description: "Everyday swings of temperature." }),
  })
  .meta({ id: "Trials", description: "What tests and uses would show, for a fresh piece." });

const ProfilePoint = z
  .strictObject({
    depthMm: magnitude("Depth from the outer face of the glaze [mm].", 0.3),
    stressMPa: signed("Stress there, tension positive [MPa].", -46),
    layer: z.enum(["glaze", "body"]).meta({ description: "Which layer.", examples: ["glaze"] }),
  })
  .meta({ id: "ProfilePoint", description: "A point of the stress through glaze and wall." });

/** What every answer about a fit says, short or whole. */
const verdictFields = {
  verdict: Verdict,
  headline,
  probabilities: Probabilities,
  stress: Stress,
  thresholds: Thresholds,
  mismatch: quantity("The body's contraction minus the glaze's from the set point to 20 °C; above 0 squeezes [%]."),
  setPoint: quantity("Temperature below which the glaze holds stress as it cools [°C]."),
  glaze: FittedGlaze,
  body: FittedBody,
};

export const FitVerdict = z.strictObject({ ...verdictFields, ...answerFields }).meta({
  id: "FitVerdict",
  description:
    "A fit in short: the verdict and the figures it rests on, from the same draws as the whole answer, without reasons, " +
    "trials and next steps.",
});

export const FitReport = z
  .strictObject({
    ...verdictFields,
    shivering: Shivering,
    trials: Trials,
    coats: z
      .array(
        z
          .strictObject({
            thicknessMm: magnitude("Thickness of the coat [mm].", 0.3),
            stress: tension("Mean stress in the coat"),
          })
          .meta({ id: "CoatStress", description: "Mean stress in one coat, tension positive [MPa]." }),
      )
      .optional()
      .meta({ description: "Of several coats: each by itself, the outer one first; elsewhere, the skin as a whole." }),
    mixed: z
      .strictObject({
        verdict: Verdict,
        headline,
        probabilities: Probabilities,
        stress: tension("Stress in the glaze after cooling"),
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
      .strictObject({ glaze: curve("glaze"), body: curve("clay") })
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
