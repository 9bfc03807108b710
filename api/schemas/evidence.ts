/** What tiles have shown, and what that says about the glaze. @module */
import { z } from "zod";
import { Body } from "./body.ts";
import { flag, magnitude, seed, share, signed, words } from "./figures.ts";
import { Firing, Ware } from "./firing.ts";
import { Probabilities, Verdict } from "./fit-report.ts";
import { OxideGlaze, RecipeGlaze, StatedGlaze } from "./glaze.ts";
import { HOARFROST } from "./larch-lane-tiles.ts";
import { glazeExpansion, plusMinus, rangeC, thicknessMm } from "./numbers.ts";
import { answerFields, quantity } from "./quantity.ts";

const days = (what: string, example: number) =>
  z
    .number()
    .min(0)
    .max(36500)
    .meta({ description: `${what} [days]; 0 is at opening the kiln.`, examples: [example] });

const readingDoubt = z
  .number()
  .min(0)
  .max(20)
  .optional()
  .meta({ description: "Half-width of a 90 % interval of the reading [mm]; 0.1 if left out.", examples: [0.05] });

const Crazed = z
  .strictObject({
    kind: z.literal("crazed").meta({ description: "Which kind of sight.", examples: ["crazed"] }),
    byDays: days("Age at which cracks were seen; 0 if left out", 14).optional(),
    soundAtDays: days("Last age at which it was still whole, unknown if left out", 1).optional(),
  })
  .meta({ id: "SeenCrazed", description: "Cracks in the glaze." });
const NotCrazed = z
  .strictObject({
    kind: z.literal("not-crazed").meta({ description: "Which kind of sight.", examples: ["not-crazed"] }),
    afterDays: days("Age at the last look", 90),
  })
  .meta({ id: "SeenNotCrazed", description: "No cracks by that age." });
const Quench = z
  .strictObject({
    kind: z.literal("quench").meta({ description: "Which kind of sight.", examples: ["quench"] }),
    differenceK: z
      .number()
      .min(1)
      .max(600)
      .meta({ description: "Oven less water, water at 20 °C [K].", examples: [130] }),
    cracked: z.boolean().meta({ description: "Whether the plunge cracked it.", examples: [false] }),
  })
  .meta({ id: "SeenQuench", description: "A plunge from the oven into water of 20 °C." });
const Shivered = z
  .strictObject({ kind: z.literal("shivered").meta({ description: "Which kind of sight.", examples: ["shivered"] }) })
  .meta({ id: "SeenShivered", description: "Flakes came off, or edges lifted." });
const NotShivered = z
  .strictObject({
    kind: z.literal("not-shivered").meta({ description: "Which kind of sight.", examples: ["not-shivered"] }),
  })
  .meta({ id: "SeenNotShivered", description: "Nothing lifted." });
const Ring = z
  .strictObject({
    kind: z.literal("ring").meta({ description: "Which kind of sight.", examples: ["ring"] }),
    radiusMm: z
      .number()
      .min(5)
      .max(500)
      .meta({ description: "Mean radius of the ring [mm]; its wall is ware.wallMm.", examples: [30] }),
    closesMm: z
      .number()
      .min(-20)
      .max(20)
      .meta({ description: "How far the gap closes when the ring is cut; below 0 it opens [mm].", examples: [0.3] }),
    plusMinusMm: readingDoubt,
    face: z
      .enum(["outside", "inside"])
      .optional()
      .meta({ description: "Which face carries the glaze; outside if left out.", examples: ["outside"] }),
  })
  .meta({ id: "SeenRing", description: "A narrow ring, cut through." });
const Strip = z
  .strictObject({
    kind: z.literal("strip").meta({ description: "Which kind of sight.", examples: ["strip"] }),
    lengthMm: z
      .number()
      .min(10)
      .max(2000)
      .meta({ description: "Free length or span [mm]; its thickness is ware.wallMm.", examples: [200] }),
    bowMm: z
      .number()
      .min(-50)
      .max(50)
      .meta({ description: "How far it bows; above 0 where the glazed face bulges [mm].", examples: [0.5] }),
    plusMinusMm: readingDoubt,
    held: z
      .enum(["one-end", "both-ends"])
      .optional()
      .meta({
        description: "Clamped at one end (its tip is read) or lying on both (its middle is read); one-end if left out.",
        examples: ["one-end"],
      }),
  })
  .meta({ id: "SeenStrip", description: "A thin strip glazed on one face." });

const Seen = z
  .discriminatedUnion("kind", [Crazed, NotCrazed, Quench, Shivered, NotShivered, Ring, Strip])
  .meta({ id: "Seen", description: "One thing seen or measured on a tile." });

const coatMm = thicknessMm.optional();

const pieceFields = {
  name: z
    .string()
    .min(1)
    .max(100)
    .optional()
    .meta({ description: "What you call it.", examples: ["tile 4"] }),
  body: Body,
  firing: Firing.optional(),
  ware: Ware.optional(),
  thicknessMm: coatMm.meta({ description: "Thickness of one fired coat [mm]; 0.3 if left out.", examples: [0.3] }),
  coats: z
    .number()
    .int()
    .min(1)
    .max(10)
    .optional()
    .meta({ description: "Coats of this glaze, each as thick [-]; 1 if left out.", examples: [2] }),
};

const EvidencePiece = z
  .strictObject(pieceFields)
  .meta({ id: "EvidencePiece", description: "The glaze on one clay, fired and made so." });

const Tile = z
  .strictObject({
    ...pieceFields,
    seen: z
      .array(Seen)
      .min(1)
      .max(12)
      .meta({ description: "Everything seen on this one tile, 1 to 12 things, in any order." }),
  })
  .meta({ id: "Tile", description: "A tile with what was seen on it." });

export const EvidenceRequest = z
  .strictObject({
    glaze: z
      .union([RecipeGlaze, OxideGlaze, StatedGlaze])
      .optional()
      .meta({ description: "What is known of the glaze; left out for a bought glaze of unknown composition." }),
    thicknessMm: coatMm.meta({
      description: "Thickness of one fired coat where a tile does not say [mm]; 0.3 if left out.",
      examples: [0.3],
    }),
    tiles: z.array(Tile).max(30).optional().meta({ description: "What the tiles did, up to 30; order is no matter." }),
    measured: z
      .array(
        z
          .strictObject({
            value: glazeExpansion.meta({ description: "Mean linear expansion over rangeC [1e-6/K].", examples: [7.1] }),
            rangeC: rangeC(900, [20, 300]).optional(),
            plusMinus: plusMinus.optional().meta({
              description: "Half-width of a 90 % interval about the value [1e-6/K]; 0.2 if left out.",
              examples: [0.2],
            }),
          })
          .meta({ id: "DilatometerRun", description: "A dilatometer run of the glaze itself." }),
      )
      .max(10)
      .optional()
      .meta({ description: "Dilatometer runs of the glaze, up to 10; ±0.2 where none is told." }),
    bodies: z.array(EvidencePiece).max(20).optional().meta({ description: "Clays to judge the glaze on, up to 20." }),
    seed: seed.optional(),
  })
  .meta({
    id: "EvidenceRequest",
    description: "One glaze with the tiles and runs it has been through. At least one tile or run is wanted.",
    examples: [HOARFROST],
  });

const chance = (what: string) => share(`${what} [-].`, 0.4);
const text = (example: string) => words("The same in plain words.", example);
/** The mean expansion of the glass in bulk that everything here is told in. */
const glassMean = (what: string) => quantity(`${what}, mean expansion 20–300 °C [1e-6/K].`);

const Lesson = z
  .strictObject({
    name: words("Which tile or run.", "tile 4"),
    pointer: words("JSON Pointer to it in the request.", "/tiles/3"),
    alone: glassMean("Going by it and the prior alone"),
    without: glassMean("Going by everything but it"),
    expected: chance("Chance of what was seen there, or of a reading as far off, going by everything else"),
    conflicts: flag("Whether it is at odds with the rest (chance below 0.05).", false),
    text: text("It moved the answer down, from 6.1 (5.4 to 6.7) ×10⁻⁶/K to 6.0 (5.5 to 6.6) ×10⁻⁶/K, and narrowed it."),
  })
  .meta({
    id: "Lesson",
    description:
      "What one tile or run taught: the expansion from it alone beside the prior, and from everything but it [1e-6/K, 20–300 °C].",
  });

const LearnedBody = z
  .strictObject({
    name: words("Which clay.", "red stoneware"),
    before: quantity("Mean expansion as told [1e-6/K]."),
    after: quantity("Mean expansion as its tiles have shown it [1e-6/K]."),
  })
  .meta({ id: "LearnedBody", description: "The mean expansion of a clay, as told and as its tiles have shown it." });

const Suits = z
  .strictObject({
    name: words("Which clay.", "porcelain"),
    verdict: Verdict,
    probabilities: Probabilities,
    text: text(
      "On porcelain it stays sound about 5 in 20, crazes sooner or later about 15 in 20, shivers less than 1 in 20.",
    ),
  })
  .meta({ id: "Suits", description: "Whether the glaze, as the tiles have shown it, suits one clay." });

const NextTile = z
  .strictObject({
    body: words("Which clay.", "red stoneware"),
    thicknessMm: magnitude("Thickness of the fired glaze [mm].", 0.6),
    quenchK: magnitude("Quench after a month, oven less water [K]; null for looking only.", 130).nullable(),
    bits: magnitude("Expected information about the expansion [bit].", 0.6),
    halfWidth: quantity("Half-width of the 90 % interval after it, on average; its high is the present one [1e-6/K]."),
    expects: z
      .array(
        z
          .strictObject({
            seen: words("What may be seen.", "it crazes at opening"),
            chance: chance("Its chance"),
            expansion: glassMean("What that would leave"),
          })
          .meta({ id: "NextTileOutcome", description: "What may be seen, and the expansion it would leave." }),
      )
      .meta({ description: "What may be seen; the chances sum to 1." }),
    text: text(
      "Fire a tile of the studio porcelain with the glaze 0.60 mm thick and look at opening and after a month. I expect that it crazes at opening about 13 in 20, it crazes within a month about 3 in 20, it holds about 4 in 20.",
    ),
  })
  .meta({
    id: "NextTile",
    description:
      "A tile worth firing. halfWidth is the mean half-width of the 90 % interval after it; its high is the present one.",
  });

export const EvidenceReport = z
  .strictObject({
    headline: words(
      "The answer in one plain sentence.",
      "Going by 4 pieces of evidence, the glaze expands 6.0 (5.5 to 6.6) ×10⁻⁶/K from 20 to 300 °C; before that, of a glaze of unknown composition I only knew 7.0 (4.4 to 9.6) ×10⁻⁶/K.",
    ),
    before: glassMean("Before the tiles"),
    after: glassMean("After them"),
    quantiles: z
      .strictObject({
        p05: signed("5 % point [1e-6/K].", 5.46),
        p25: signed("25 % point [1e-6/K].", 5.78),
        p50: signed("Median [1e-6/K].", 6),
        p75: signed("75 % point [1e-6/K].", 6.22),
        p95: signed("95 % point [1e-6/K].", 6.57),
      })
      .meta({ id: "ExpansionQuantiles", description: "Points of the posterior, mean 20–300 °C [1e-6/K]." }),
    glaze: StatedGlaze,
    belief: z
      .array(
        z
          .strictObject({
            expansion: signed("Mean expansion 20–300 °C [1e-6/K].", 6),
            before: magnitude("Density before the tiles [per 1e-6/K].", 0.2),
            after: magnitude("Density after them [per 1e-6/K].", 1.1),
          })
          .meta({ id: "BeliefPoint", description: "A point of the curve of belief." }),
      )
      .meta({ description: "The curve of belief before and after, for drawing." }),
    lessons: z.array(Lesson).meta({ description: "What each tile and run taught, runs first, as given." }),
    learnedBodies: z.array(LearnedBody).meta({ description: "The clays met, as told and as shown." }),
    suits: z.array(Suits).meta({ description: "The clays asked about, in order." }),
    next: z.array(NextTile).meta({ description: "Tiles worth firing, the most telling first." }),
    ...answerFields,
  })
  .meta({
    id: "EvidenceReport",
    description:
      "What the glaze's expansion must be: before and after the tiles, mean 20–300 °C of the glass in bulk. " +
      "`glaze` is the posterior as the glaze of a fit.",
  });
