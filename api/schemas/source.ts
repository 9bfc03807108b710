/** One entry of the bibliography. @module */
import { z } from "zod";
import { words } from "./figures.ts";

export const Source = z
  .strictObject({
    key: words("Key used in every answer's sources.", "ciaaw-2021"),
    citation: words(
      "Where it was published.",
      "T. Prohaska et al., Standard atomic weights of the elements 2021, Pure Appl. Chem. 94 (2022) 573–600",
    ),
    doi: words("Digital object identifier.", "10.1515/pac-2019-0603").optional(),
    took: words("What was taken from it.", "abridged standard atomic weights"),
    status: words("Whether it was read, read second-hand or is from memory.", "read"),
  })
  .meta({ id: "Source", description: "Something an answer rests on." });
