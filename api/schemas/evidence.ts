/** What tiles have shown, and what that says about the glaze. @module */
import { z } from "zod";
import { Body } from "./body.ts";
import { Firing, Ware } from "./firing.ts";
import { Probabilities, Verdict } from "./fit-report.ts";
import { OxideGlaze, RecipeGlaze, StatedGlaze } from "./glaze.ts";
import { HOARFROST } from "./larch-lane-tiles.ts";
import { glazeExpansion, plusMinus, rangeC } from "./numbers.ts";
import { answerFields, Quantity } from "./quantity.ts";

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
    soundAtDays: days("Last age at which it was still whole", 1).optional(),
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

const coatMm = z.number().min(0.01).max(5).optional();

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
            plusMinus: plusMinus.optional(),
          })
          .meta({ id: "DilatometerRun", description: "A dilatometer run of the glaze itself." }),
      )
      .max(10)
      .optional()
      .meta({ description: "Dilatometer runs of the glaze, up to 10; ±0.2 where none is told." }),
    bodies: z.array(EvidencePiece).max(20).optional().meta({ description: "Clays to judge the glaze on, up to 20." }),
    seed: z
      .number()
      .int()
      .min(0)
      .max(4294967295)
      .optional()
      .meta({ description: "Seed of the quasi-random draws [-]; the same seed gives the same answer.", examples: [1] }),
  })
  .meta({
    id: "EvidenceRequest",
    description: "One glaze with the tiles and runs it has been through. At least one tile or run is wanted.",
    examples: [HOARFROST],
  });

const chance = (what: string) =>
  z
    .number()
    .min(0)
    .max(1)
    .meta({ description: `${what} [-].`, examples: [0.4] });
const text = z.string().meta({ description: "The same in plain words." });

const Lesson = z
  .strictObject({
    name: z.string().meta({ description: "Which tile or run.", examples: ["tile 4"] }),
    pointer: z.string().meta({ description: "JSON Pointer to it in the request.", examples: ["/tiles/3"] }),
    alone: Quantity,
    without: Quantity,
    expected: chance("Chance of what was seen there, or of a reading as far off, going by everything else"),
    conflicts: z.boolean().meta({ description: "Whether it is at odds with the rest (chance below 0.05)." }),
    text,
  })
  .meta({
    id: "Lesson",
    description:
      "What one tile or run taught: the expansion from it alone beside the prior, and from everything but it [1e-6/K, 20–300 °C].",
  });

const LearnedBody = z
  .strictObject({
    name: z.string().meta({ description: "Which clay.", examples: ["red stoneware"] }),
    before: Quantity,
    after: Quantity,
  })
  .meta({ id: "LearnedBody", description: "The mean expansion of a clay, as told and as its tiles have shown it." });

const Suits = z
  .strictObject({
    name: z.string().meta({ description: "Which clay.", examples: ["porcelain"] }),
    verdict: Verdict,
    probabilities: Probabilities,
    text,
  })
  .meta({ id: "Suits", description: "Whether the glaze, as the tiles have shown it, suits one clay." });

const NextTile = z
  .strictObject({
    body: z.string().meta({ description: "Which clay.", examples: ["red stoneware"] }),
    thicknessMm: z.number().meta({ description: "Thickness of the fired glaze [mm].", examples: [0.6] }),
    quenchK: z
      .number()
      .nullable()
      .meta({ description: "Quench after a month, oven less water [K]; null for looking only.", examples: [130] }),
    bits: z
      .number()
      .min(0)
      .meta({ description: "Expected information about the expansion [bit].", examples: [0.6] }),
    halfWidth: Quantity,
    expects: z
      .array(
        z
          .strictObject({
            seen: z.string().meta({ description: "What may be seen.", examples: ["it crazes at opening"] }),
            chance: chance("Its chance"),
            expansion: Quantity,
          })
          .meta({ id: "NextTileOutcome", description: "What may be seen, and the expansion it would leave." }),
      )
      .meta({ description: "What may be seen; the chances sum to 1." }),
    text,
  })
  .meta({
    id: "NextTile",
    description:
      "A tile worth firing. halfWidth is the mean half-width of the 90 % interval after it; its high is the present one.",
  });

const point = (what: string) => z.number().meta({ description: what });

export const EvidenceReport = z
  .strictObject({
    headline: z.string().meta({ description: "The answer in one plain sentence." }),
    before: Quantity,
    after: Quantity,
    quantiles: z
      .strictObject({
        p05: point("5 % point [1e-6/K]."),
        p25: point("25 % point [1e-6/K]."),
        p50: point("Median [1e-6/K]."),
        p75: point("75 % point [1e-6/K]."),
        p95: point("95 % point [1e-6/K]."),
      })
      .meta({ id: "ExpansionQuantiles", description: "Points of the posterior, mean 20–300 °C [1e-6/K]." }),
    glaze: StatedGlaze,
    belief: z
      .array(
        z
          .strictObject({
            expansion: point("Mean expansion 20–300 °C [1e-6/K]."),
            before: point("Density before the tiles [per 1e-6/K]."),
            after: point("Density after them [per 1e-6/K]."),
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
