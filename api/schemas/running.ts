/** How far it runs, again when refired, and what else may go wrong on the wall. @module */
import { z } from "zod";
import { answerFields, Quantity } from "./quantity.ts";

const words = (description: string) => z.string().meta({ description });
const orNull = (description: string) => z.union([Quantity, z.null()]).meta({ description });

const runFields = {
  run: Quantity,
  flow: Quantity,
  roll: Quantity,
  reachesShelf: z
    .number()
    .min(0)
    .max(1)
    .meta({ description: "Chance that it crosses the clearance [-].", examples: [0.2] }),
  reachingThickness: orNull("Thickness of coat that would just cross it [mm]; null where none up to 20 mm does."),
  bareBandMm: z.number().meta({ description: "Bare band to leave at the foot [mm].", examples: [6] }),
  catchPlate: z
    .boolean()
    .meta({ description: "Whether a catch plate is advised: above 1 chance in 10 to cross.", examples: [true] }),
  text: words("The same in sentences."),
};

const Advice = z
  .strictObject({ text: words("What to do."), source: words("Key into GET /v1/sources.") })
  .meta({ id: "Advice", description: "A piece of advice, with where it comes from." });

const MeltPoint = z
  .strictObject({
    minutes: z.number().meta({ description: "Since the kiln was lit [min].", examples: [612] }),
    c: z.number().meta({ description: "Temperature [°C].", examples: [1200] }),
    logViscosity: z.number().meta({ description: "Viscosity [log10(Pa·s)].", examples: [3.4] }),
    low: z.number().meta({ description: "Lower end, 90 % band [log10(Pa·s)].", examples: [3.2] }),
    high: z.number().meta({ description: "Upper end, 90 % band [log10(Pa·s)].", examples: [3.6] }),
  })
  .meta({ id: "MeltPoint", description: "A point of the firing where the glaze is softer than 10^12 Pa·s." });

const Slowing = z
  .strictObject({
    id: z.string().meta({ description: "Stable identifier.", examples: ["thinner-coat"] }),
    change: words("What is changed, and by how much."),
    factor: z.number().meta({ description: "Run after the change over run before [-].", examples: [0.6] }),
    run: Quantity,
    text: words("The same in a sentence."),
  })
  .meta({ id: "Slowing", description: "One way to slow it; run is what is left [mm]." });

const Interface = z
  .strictObject({
    coats: z.tuple([z.number().int(), z.number().int()]).meta({
      description: "Coats that meet, counted from the outer one.",
      examples: [[1, 2]],
    }),
    viscosity: Quantity,
    expansion: Quantity,
    text: words("What that means."),
  })
  .meta({
    id: "CoatInterface",
    description: "Two coats that meet; the outer's figure less the inner's, viscosity at the peak and expansion.",
  });

const Layers = z
  .strictObject({
    mixingLength: Quantity,
    separate: Quantity,
    mixed: Quantity,
    reversed: Quantity,
    text: words("The same in sentences."),
    interfaces: z.array(Interface).meta({ description: "Each pair that meets." }),
  })
  .meta({
    id: "CoatLayers",
    description:
      "A stack between its bounds: run with the coats apart, melted into one, and apart the other way round [mm]; " +
      "mixingLength is how far two coats melt into each other by diffusion [mm].",
  });

const Refiring = z
  .strictObject({
    ...runFields,
    thickness: Quantity,
    layers: z
      .union([Layers, z.null()])
      .meta({ description: "The stack in the second firing alone; null for a single coat." }),
    advice: z.array(Advice).meta({ description: "Mind this when firing again." }),
  })
  .meta({
    id: "Refiring",
    description:
      "By the end of a second firing, the first included: run and roll from where the glaze was put on [mm].",
  });

const Fault = z
  .strictObject({
    fault: z
      .enum(["crawling", "beading", "pinholing"])
      .meta({ description: "What would be seen.", examples: ["crawling"] }),
    id: z.string().meta({ description: "Stable identifier of the cause.", examples: ["thick-coat"] }),
    likelihood: z
      .enum(["likely", "possible", "unlikely"])
      .meta({ description: "How likely it matters here; nobody has a number for it.", examples: ["possible"] }),
    cause: words("Why it is on the list, with the figure that put it there."),
    check: words("How to tell."),
    remedy: words("What to change."),
    source: words("Key into GET /v1/sources; `common-practice` where no source was found."),
  })
  .meta({ id: "CoatFault", description: "One line of the checklist." });

const LaterHeatReport = z
  .strictObject({
    kind: z.enum(["decal", "lustre", "enamel", "other"]).meta({ description: "What it is for.", examples: ["decal"] }),
    peakC: z.number().meta({ description: "Its peak [°C].", examples: [780] }),
    stress: z
      .enum(["kept", "partly-relaxed", "set-anew"])
      .meta({ description: "What becomes of the stress of the glaze firing.", examples: ["set-anew"] }),
    relaxed: Quantity,
    run: Quantity,
    text: words("The same in sentences."),
    advice: z.array(Advice).meta({ description: "How to fire it." }),
  })
  .meta({
    id: "LaterHeatReport",
    description: "What a later firing does: relaxed is the share of the stress that flows away [-], run its run [mm].",
  });

const MeltFiring = z
  .strictObject({
    peak: Quantity,
    from: words("Where the peak comes from."),
    meltMinutes: Quantity,
    path: z.array(MeltPoint).meta({ description: "Viscosity along the firing." }),
  })
  .meta({ id: "MeltFiring", description: "The firing as reckoned with; meltMinutes are those below 10^4 Pa·s [min]." });

export const RunningReport = z
  .strictObject({
    headline: words("The answer in a sentence or two."),
    ...runFields,
    thickness: Quantity,
    firing: MeltFiring,
    viscosityAtPeak: Quantity,
    surfaceTension: Quantity,
    wall: z
      .strictObject({
        slopeDeg: z.number().meta({ description: "Slope from level [°].", examples: [90] }),
        glazedMm: z.number().meta({ description: "Height of the glazed band [mm].", examples: [120] }),
        clearanceMm: z.number().meta({ description: "Bare clay under it [mm].", examples: [6] }),
      })
      .meta({ id: "WallReckoned", description: "The wall as reckoned with." }),
    profile: z
      .array(
        z
          .strictObject({
            mm: z.number().meta({ description: "Down from the upper edge [mm].", examples: [60] }),
            thicknessMm: z.number().meta({ description: "Thickness there [mm].", examples: [0.3] }),
          })
          .meta({ id: "CoatPoint", description: "A point of the coat down the wall." }),
      )
      .meta({ description: "Coat down the wall after the firing, roll left out." }),
    refiring: Refiring,
    slows: z.array(Slowing).meta({ description: "What slows it, strongest first." }),
    layers: z.union([Layers, z.null()]).meta({ description: "What a stack does; null for a single coat." }),
    faults: z
      .array(Fault)
      .meta({ description: "Crawling, beading and pinholing: causes to look at, likeliest first." }),
    laterHeat: z.array(LaterHeatReport).meta({ description: "Later firings, as asked." }),
    ...answerFields,
  })
  .meta({
    id: "RunningReport",
    description:
      "How far a glaze runs: run is the advance of its lower edge, roll the thickness at the top of the roll there [mm]; " +
      "flow is what the film itself flows, mean velocity times time [mm]: the edge comes less far, for the roll fills first.",
  });
