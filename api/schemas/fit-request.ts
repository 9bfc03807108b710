/** The main question: this glaze, on this body, fired and made so. @module */
import { z } from "zod";
import { Body } from "./body.ts";
import { Doubts } from "./expansion-doubts.ts";
import { seed } from "./figures.ts";
import { Firing, Ware } from "./firing.ts";
import { Glaze } from "./glaze.ts";
import { THAW_ON_RED_STONEWARE } from "./larch-lane.ts";

const requestFields = {
  glaze: Glaze,
  body: Body,
  firing: Firing.optional(),
  ware: Ware.optional(),
  doubts: Doubts.optional(),
  seed: seed.optional(),
  include: z
    .array(z.enum(["curves", "profile", "parts"]))
    .max(10)
    .optional()
    .meta({
      description:
        "Extra parts of the answer: the two cooling curves, the stress through glaze and wall, what one more part of each material would do.",
      examples: [["curves"]],
    }),
};

export const FitRequest = z.strictObject(requestFields).meta({
  id: "FitRequest",
  description: "One question: this glaze, on this body, fired and made so.",
  examples: [THAW_ON_RED_STONEWARE],
});

/** One line of a bulk question: a fit request with an optional tag of your own. */
export const FitLine = z
  .strictObject({
    id: z
      .string()
      .max(200)
      .optional()
      .meta({ description: "Your own tag for the line, given back with its answer.", examples: ["thaw-7"] }),
    ...requestFields,
  })
  .meta({ id: "FitLine", description: "One line of a bulk fit." });
