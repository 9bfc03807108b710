/** What every failure looks like (RFC 9457). @module */
import { z } from "zod";

export const FieldIssue = z
  .strictObject({
    pointer: z
      .string()
      .meta({ description: "JSON Pointer to the field, empty for the whole.", examples: ["/glaze/recipe/2/parts"] }),
    message: z.string().meta({
      description: "What was read, why it cannot be, and how to mend it.",
      examples: ["`parts` is -3. It must be 0 or more."],
    }),
    allowed: z
      .array(z.union([z.string(), z.number()]))
      .optional()
      .meta({ description: "Values or limits that would be accepted.", examples: [["0 or more"]] }),
    suggestion: z
      .string()
      .optional()
      .meta({ description: "Closest accepted spelling.", examples: ["whiting"] }),
  })
  .meta({ id: "FieldIssue", description: "One thing wrong with one field." });

export const Problem = z
  .strictObject({
    type: z.string().meta({
      description: "Kind of problem, a stable URI.",
      examples: ["https://ringtrue.example/problems/impossible-input"],
    }),
    title: z
      .string()
      .meta({ description: "The kind in a few words.", examples: ["Something in the request cannot be"] }),
    status: z
      .number()
      .int()
      .min(400)
      .max(599)
      .meta({ description: "HTTP status [-].", examples: [422] }),
    detail: z
      .string()
      .meta({ description: "What happened this time and what to do.", examples: ["One field needs mending."] }),
    requestId: z.string().meta({ description: "The same as the x-request-id header.", examples: ["larch-lane-1"] }),
    suggestion: z
      .string()
      .optional()
      .meta({ description: "What was probably meant.", examples: ["/v1/fit"] }),
    issues: z.array(FieldIssue).optional().meta({ description: "Field by field, where fields are to blame." }),
  })
  .meta({ id: "Problem", description: "What went wrong, as application/problem+json." });
