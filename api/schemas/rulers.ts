/** Rulers, templates and gauges: the question and the answer. @module */
import { z } from "zod";
import { magnitude, svgText, words } from "./figures.ts";
import { SHRINK_RULER } from "./larch-lane-sizes.ts";
import { length, unit } from "./lengths.ts";
import { answerFields, quantity } from "./quantity.ts";
import { Shrinkage, shrinkageTaken } from "./shrinkage.ts";

const Draw = z
  .union([
    z
      .strictObject({
        ruler: z
          .strictObject({
            length: length("How long, fired."),
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
                  .strictObject({ across: length("Fired diameter."), up: length("Fired height above the foot.") })
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
        gauges: z
          .strictObject({
            gallery: length("Fired diameter inside the gallery."),
            clearance: length("Fired play between one side of lid and gallery."),
          })
          .meta({ description: "What gallery and lid should come to." }),
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
    widthMm: magnitude("Width of the paper [mm].", 210),
    heightMm: magnitude("Height of the paper [mm].", 297),
    svg: svgText("The sheet at true scale."),
  })
  .meta({ id: "Sheet", description: "One sheet of paper, with a check bar of 100 mm." });

export const RulerReport = z
  .strictObject({
    headline: words(
      "The answer in a sentence.",
      "Fired ruler for 12 %, one sheet of A4: 100 mm fired is drawn 113.64 mm long.",
    ),
    shrinkage: z
      .strictObject(shrinkageTaken)
      .meta({ description: "The total shrinkage that was used, of plastic length." }),
    page: Page,
    lengths: z
      .array(
        z
          .strictObject({
            name: words("Which length.", "100 mm fired"),
            firedMm: magnitude("Fired [mm].", 100),
            drawn: quantity("On the paper [mm]."),
          })
          .meta({ id: "DrawnLength", description: "A length fired, and on the paper." }),
      )
      .meta({ description: "Lengths to check the drawing by." }),
    checkBarMm: magnitude("The bar on every sheet [mm]; measure it first.", 100),
    sheets: z
      .array(Sheet)
      .meta({ description: "Every sheet; long rulers go over several strips, large templates over several sheets." }),
    ...answerFields,
  })
  .meta({ id: "RulerReport", description: "Sheets to print at true scale." });
