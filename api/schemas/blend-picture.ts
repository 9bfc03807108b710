/** Which picture of a blend, and how it should look. @module */
import { z } from "zod";
import { PictureQuery } from "./fit-picture.ts";

const { theme, width, standalone } = PictureQuery.shape;

export const BlendPictureQuery = z.strictObject({
  picture: z
    .enum(["soundness", "verdicts"])
    .default("soundness")
    .meta({
      description:
        "Which picture, where SVG is asked for. soundness: contours of the chance of staying sound, or its curve along a " +
        "line; verdicts: the ring of its verdict at every mixture, or the stress of every tile along a line.",
      examples: ["verdicts"],
    }),
  theme,
  width,
  standalone,
});
