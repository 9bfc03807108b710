/** How far it runs, again when refired, and what else may go wrong on the wall. @module */
import { z } from "zod";
import { celsius, figure, flag, magnitude, share, signed, words } from "./figures.ts";
import { answerFields, quantity, quantityOrNull } from "./quantity.ts";

const sentences = (example: string) => words("The same in sentences.", example);
const sourceKey = words("Key into GET /v1/sources; `common-practice` where no source was found.", "common-practice");

const runFields = {
  run: quantity("Advance of the glaze's lower edge [mm]."),
  flow: quantity("What the film itself flows, mean velocity times time [mm]."),
  roll: quantity("Thickness at the top of the roll at the lower edge [mm]."),
  reachesShelf: share("Chance that it crosses the clearance [-].", 0.2),
  reachingThickness: quantityOrNull(
    "Thickness of coat that would just cross it [mm]; null where none up to 20 mm does.",
  ),
  bareBandMm: magnitude("Bare band to leave at the foot [mm].", 6),
  catchPlate: flag("Whether a catch plate is advised: above 1 chance in 10 to cross.", true),
  text: sentences(
    "Its lower edge runs 10 mm, nine times in ten 2 to 30 mm. It crosses 6 mm of bare clay about 15 in 20 times.",
  ),
};

const Advice = z
  .strictObject({
    text: words("What to do.", "Heat slowly to 600 °C: the old glaze holds water and air shut in."),
    source: sourceKey,
  })
  .meta({ id: "Advice", description: "A piece of advice, with where it comes from." });

const MeltPoint = z
  .strictObject({
    minutes: magnitude("Since the kiln was lit [min].", 612),
    c: celsius("Temperature [°C].", 1200),
    logViscosity: signed("Viscosity [log10(Pa·s)].", 3.4),
    low: signed("Lower end, 90 % band [log10(Pa·s)].", 3.2),
    high: signed("Upper end, 90 % band [log10(Pa·s)].", 3.6),
  })
  .meta({ id: "MeltPoint", description: "A point of the firing where the glaze is softer than 10^12 Pa·s." });

const Slowing = z
  .strictObject({
    id: words("Stable identifier.", "thinner-coat"),
    change: words("What is changed, and by how much.", "A fifth less glaze"),
    factor: magnitude("Run after the change over run before [-].", 0.6),
    run: quantity("What is left of the run [mm]."),
    text: words("The same in a sentence.", "A fifth less glaze: 6.0 mm in place of 10 mm, 60 % of it."),
  })
  .meta({ id: "Slowing", description: "One way to slow it; run is what is left [mm]." });

/** Which coat, counted from the outer one. */
const coat = z.number().int().min(1);

const Interface = z
  .strictObject({
    coats: z.tuple([coat, coat]).meta({
      description: "Coats that meet, counted from the outer one [-].",
      examples: [[1, 2]],
    }),
    viscosity: quantity("The outer's less the inner's, at the peak [log10(Pa·s)]."),
    expansion: quantity("The outer's less the inner's, mean 20–300 °C [1e-6/K]."),
    text: words(
      "What that means.",
      "Coats 1 and 2, from the outside: the upper is the runnier and slides over the one beneath.",
    ),
  })
  .meta({
    id: "CoatInterface",
    description: "Two coats that meet; the outer's figure less the inner's, viscosity at the peak and expansion.",
  });

const Layers = z
  .strictObject({
    mixingLength: quantity("How far two coats melt into each other by diffusion [mm]."),
    separate: quantity("Run with the coats kept apart [mm]."),
    mixed: quantity("Run with the coats melted into one [mm]."),
    reversed: quantity("Run with the coats apart, put on the other way round [mm]."),
    text: sentences(
      "By diffusion the coats melt into each other over some 35 µm (19 to 64); bubbles stir more. Kept apart they run 11 mm, melted into one 13 mm; the truth lies between.",
    ),
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
    thickness: quantity("Thickness of all the coats, as fired [mm]."),
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
    id: words("Stable identifier of the cause.", "dust-and-grease"),
    likelihood: z
      .enum(["likely", "possible", "unlikely"])
      .meta({ description: "How likely it matters here; nobody has a number for it.", examples: ["possible"] }),
    cause: words(
      "Why it is on the list, with the figure that put it there.",
      "Dust, finger grease or wet bisque keep glaze from wetting the clay; no sum sees them.",
    ),
    check: words("How to tell.", "Breathe on the bisque: a patch that stays dark unevenly is greasy."),
    remedy: words("What to change.", "Wipe the ware with a barely damp sponge and glaze it the same day."),
    source: sourceKey,
  })
  .meta({ id: "CoatFault", description: "One line of the checklist." });

const LaterHeatReport = z
  .strictObject({
    kind: z.enum(["decal", "lustre", "enamel", "other"]).meta({ description: "What it is for.", examples: ["decal"] }),
    peakC: celsius("Its peak [°C].", 780),
    stress: z
      .enum(["kept", "partly-relaxed", "set-anew"])
      .meta({ description: "What becomes of the stress of the glaze firing.", examples: ["set-anew"] }),
    relaxed: quantity("Share of the stress that flows away [-]."),
    run: quantity("How far the glaze runs in it [mm]."),
    text: sentences(
      "At 780 °C the glaze softens enough to lose its old stress: it is set anew as this firing cools, so judge the fit with this cooling.",
    ),
    advice: z.array(Advice).meta({ description: "How to fire it." }),
  })
  .meta({
    id: "LaterHeatReport",
    description: "What a later firing does: relaxed is the share of the stress that flows away [-], run its run [mm].",
  });

const MeltFiring = z
  .strictObject({
    peak: quantity("Highest temperature [°C]."),
    from: words("Where the peak comes from.", "cone 6 heated at 60 °C an hour at the end, ± 21 °C"),
    meltMinutes: quantity("Time that the glaze is runny enough to flow, below 10^4 Pa·s [min]."),
    path: z.array(MeltPoint).meta({ description: "Viscosity along the firing." }),
  })
  .meta({ id: "MeltFiring", description: "The firing as reckoned with; meltMinutes are those below 10^4 Pa·s [min]." });

export const RunningReport = z
  .strictObject({
    headline: words(
      "The answer in a sentence or two.",
      "This stack of coats is runny at the peak and runs about 10 mm. It crosses 6 mm of bare clay about 15 in 20 times.",
    ),
    ...runFields,
    thickness: quantity("Thickness of all the coats, as fired [mm]."),
    firing: MeltFiring,
    viscosityAtPeak: quantity("Viscosity of the melt at the peak [log10(Pa·s)]."),
    surfaceTension: quantity("Surface tension of the melt [mN/m]."),
    wall: z
      .strictObject({
        slopeDeg: figure("Slope from level [°].", 90, { min: 0, max: 90 }),
        glazedMm: magnitude("Height of the glazed band [mm].", 120),
        clearanceMm: magnitude("Bare clay under it [mm].", 6),
      })
      .meta({ id: "WallReckoned", description: "The wall as reckoned with." }),
    profile: z
      .array(
        z
          .strictObject({
            mm: magnitude("Down from the upper edge [mm].", 60),
            thicknessMm: magnitude("Thickness there [mm].", 0.3),
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
