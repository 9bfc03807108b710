/** Which picture of a fit, and how it should look. @module */
import { z } from "zod";

export const PictureQuery = z.strictObject({
  picture: z
    .enum(["verdict", "expansion", "stress", "contributions"])
    .optional()
    .meta({
      description:
        "Answer with this picture as SVG; verdict if SVG is asked for and none is named. verdict: where the stress lies between lifting and cracking; expansion: how " +
        "glaze and clay shrink as they cool; stress: stress through glaze and wall; contributions: what each oxide pulls, and what one more part of each material would do.",
      examples: ["verdict"],
    }),
  theme: z
    .enum(["light", "dark", "print"])
    .default("light")
    .meta({ description: "Colours of the picture.", examples: ["light"] }),
  width: z
    .enum(["980", "720", "350"])
    .default("980")
    .meta({ description: "Width the picture is laid out for [px].", examples: ["980"] }),
  standalone: z
    .enum(["true", "false"])
    .default("true")
    .meta({
      description: "Whether the finding stands above the picture in words; `false` for one set into a page.",
      examples: ["true"],
    }),
});
