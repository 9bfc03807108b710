/** Named doubts about an expansion: switched in the question, told one by one in the answer. @module */
import { z } from "zod";
import { flag, list, magnitude, words } from "./figures.ts";
import { quantity } from "./quantity.ts";

const SWITCHES = {
  betweenPapers: "That laboratories differ about one and the same glass",
  onWare: "That a glaze on ware takes up clay, so expands less than the glass in bulk, the more the thinner it is",
  crystals: "That opacifiers stay as crystals, which are not glass",
  materials: "What differs from bag to bag of the materials",
} as const;

export const Doubts = z
  .strictObject({
    betweenPapers: flag(`${SWITCHES.betweenPapers}; counted unless false.`, true).optional(),
    onWare: flag(`${SWITCHES.onWare}; counted unless false.`, true).optional(),
    crystals: flag(`${SWITCHES.crystals}; counted unless false.`, true).optional(),
    materials: flag(`${SWITCHES.materials}; counted unless false.`, true).optional(),
  })
  .meta({
    id: "Doubts",
    description: "Named doubts to leave out, to see what each does.",
    examples: [{ onWare: false }],
  });

const Term = z
  .strictObject({
    term: z.enum(["model", "betweenPapers", "materials", "onWare", "crystals"]).meta({
      description: "Which doubt; `model` is what reckoning from oxides adds, and is always counted.",
      examples: ["onWare"],
    }),
    counted: flag("Whether it is in `together`.", true),
    effect: quantity("What it does to the expansion by itself: its shift, and the interval about that [1e-6/K]."),
    text: words("The same in words.", "Materials differ from bag to bag: ±0.12e-6/K for this recipe."),
    sources: list("Keys into GET /v1/sources; empty where it is common practice.", "sciglass-2019"),
  })
  .meta({ id: "ExpansionDoubt", description: "One named doubt about an expansion." });

export const ExpansionDoubtReport = z
  .strictObject({
    counted: z
      .strictObject({
        betweenPapers: flag(`${SWITCHES.betweenPapers}.`, true),
        onWare: flag(`${SWITCHES.onWare}.`, true),
        crystals: flag(`${SWITCHES.crystals}.`, true),
        materials: flag(`${SWITCHES.materials}.`, true),
      })
      .meta({ id: "CountedDoubts", description: "Which doubts were counted, as asked." }),
    thicknessMm: magnitude("Thickness of the glaze that was taken [mm].", 0.3),
    terms: z.array(Term).meta({ description: "Every doubt by name, counted or not." }),
    together: quantity("Mean expansion of the glaze on ware with the doubts that are counted [1e-6/K]."),
    text: words(
      "The same in words.",
      "On the pot I expect 5.9e-6/K, likely 5.2 to 6.6, against 6.2 for the glass in bulk.",
    ),
  })
  .meta({ id: "ExpansionDoubtReport", description: "What the doubt about the expansion is made of." });
