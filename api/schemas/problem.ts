/** What every failure looks like (RFC 9457). @module */
import { z } from "zod";
import { KINDS } from "../http/problem.ts";
import { count, words } from "./figures.ts";

export const FieldIssue = z
  .strictObject({
    pointer: words("JSON Pointer to the field, empty for the whole.", "/glaze/recipe/2/parts"),
    message: words("What was read, why it cannot be, and how to mend it.", "`parts` is -3. It must be 0 or more."),
    allowed: z
      .array(z.union([z.string(), z.number()]))
      .optional()
      .meta({
        description: "Values or limits that would be accepted [unit of the field]; either sign.",
        examples: [["0 or more"]],
      }),
    suggestion: words("Closest accepted spelling.", "whiting").optional(),
  })
  .meta({ id: "FieldIssue", description: "One thing wrong with one field." });

export const Problem = z
  .strictObject({
    type: words(
      `Kind of problem, a stable URI, ending in one of ${Object.keys(KINDS).join(", ")}; more may come.`,
      "https://ringtrue.example/problems/impossible-input",
    ),
    title: words("The kind in a few words.", "Something in the request cannot be"),
    status: count("HTTP status [-].", 422, { min: 400, max: 599 }),
    detail: words("What happened this time and what to do.", "One field needs mending."),
    requestId: words("The same as the x-request-id header.", "larch-lane-1"),
    suggestion: words("What was probably meant.", "/v1/fit").optional(),
    issues: z.array(FieldIssue).optional().meta({ description: "Field by field, where fields are to blame." }),
  })
  .meta({ id: "Problem", description: "What went wrong, as application/problem+json." });
