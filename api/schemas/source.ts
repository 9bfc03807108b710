/** One entry of the bibliography. @module */
import { z } from "zod";

export const Source = z
  .strictObject({
    key: z.string().meta({ description: "Key used in every answer's sources.", examples: ["ciaaw-2021"] }),
    citation: z.string().meta({ description: "Where it was published." }),
    doi: z
      .string()
      .optional()
      .meta({ description: "Digital object identifier.", examples: ["10.1515/pac-2019-0603"] }),
    took: z.string().meta({ description: "What was taken from it." }),
    status: z
      .string()
      .meta({ description: "Whether it was read, read second-hand or is from memory.", examples: ["read"] }),
  })
  .meta({ id: "Source", description: "Something an answer rests on." });
