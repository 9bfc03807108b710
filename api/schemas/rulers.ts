/** Rulers, templates and gauges: the question and the answer. @module */
import { z } from "zod";
import { SHRINK_RULER } from "./larch-lane-sizes.ts";
import { Length, unit } from "./lengths.ts";
import { answerFields, Quantity } from "./quantity.ts";
import { Shrinkage } from "./shrinkage.ts";

const Draw = z
  .union([
    z
      .strictObject({
        ruler: z
          .strictObject({
            length: Length,
            reads: z
              .enum(["across", "up"])
              .optional()
              .meta({
                description: "Whether it carries the shrinkage of widths or of heights; widths if left out.",
                examples: ["across"],
              }),
          })
          .meta({ description: "A ruler up to this fired length, whose printed divisions are fired ones." }),
      })
      .meta({ id: "RulerDraw", description: "A shrink ruler." }),
    z
      .strictObject({
        template: z
          .strictObject({
            name: z
              .string()
              .max(60)
              .optional()
              .meta({ description: "What it is for.", examples: ["belly jar"] }),
            points: z
              .array(
                z
                  .strictObject({ across: Length, up: Length })
                  .meta({ id: "TemplatePoint", description: "A fired diameter and its height above the foot." }),
              )
              .min(2)
              .max(500)
              .meta({ description: "2 to 500 points in order along the outline, joined by straight lines." }),
            side: z
              .enum(["outside", "inside"])
              .optional()
              .meta({
                description: "Which side of the wall the card lies on; outside if left out.",
                examples: ["outside"],
              }),
          })
          .meta({ description: "An outline, fired; it is drawn as thrown." }),
      })
      .meta({ id: "TemplateDraw", description: "A rib or profile template." }),
    z
      .strictObject({
        gauges: z.strictObject({ gallery: Length, clearance: Length }).meta({
          description: "Fired diameter inside the gallery, and fired play between one side of lid and gallery.",
        }),
      })
      .meta({ id: "GaugeDraw", description: "A gauge for the gallery and one for the lid." }),
  ])
  .meta({ id: "Draw", description: "What to draw: a ruler, a template or gauges. All sizes are fired ones." });

export const Page = z.enum(["A4", "Letter"]).meta({
  id: "PaperSize",
  description: "Paper: A4 (210 × 297 mm) or Letter (8.5 × 11 in).",
  examples: ["A4"],
});

export const RulerRequest = z
  .strictObject({
    unit: unit.meta({
      description: "Unit of lengths that name none, and of a ruler's divisions; mm if left out.",
      examples: ["mm"],
    }),
    shrinkage: Shrinkage,
    draw: Draw,
    page: Page.optional(),
  })
  .meta({ id: "RulerRequest", description: "The shrinkage, and what to draw.", examples: [SHRINK_RULER] });

export const Sheet = z
  .strictObject({
    widthMm: z.number().meta({ description: "Width of the paper [mm].", examples: [210] }),
    heightMm: z.number().meta({ description: "Height of the paper [mm].", examples: [297] }),
    svg: z.string().meta({ description: "The sheet at true scale." }),
  })
  .meta({ id: "Sheet", description: "One sheet of paper, with a check bar of 100 mm." });

export const RulerReport = z
  .strictObject({
    headline: z.string().meta({ description: "The answer in a sentence." }),
    shrinkage: z
      .strictObject({
        across: Quantity,
        up: Quantity,
        from: z.string().meta({ description: "What it rests on.", examples: ["12 % as stated, give or take 0.5"] }),
      })
      .meta({ description: "The total shrinkage that was used, of plastic length." }),
    page: Page,
    lengths: z
      .array(
        z
          .strictObject({
            name: z.string().meta({ description: "Which length.", examples: ["100 mm fired"] }),
            firedMm: z.number().meta({ description: "Fired [mm].", examples: [100] }),
            drawn: Quantity,
          })
          .meta({ id: "DrawnLength", description: "A length fired, and on the paper." }),
      )
      .meta({ description: "Lengths to check the drawing by." }),
    checkBarMm: z.number().meta({ description: "The bar on every sheet [mm]; measure it first.", examples: [100] }),
    sheets: z
      .array(Sheet)
      .meta({ description: "Every sheet; long rulers go over several strips, large templates over several sheets." }),
    ...answerFields,
  })
  .meta({ id: "RulerReport", description: "Sheets to print at true scale." });
