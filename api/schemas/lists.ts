/** How lists are asked for and answered. @module */
import { z } from "zod";

export const nextCursor = z
  .string()
  .nullable()
  .meta({ description: "Give it back as `cursor` for the next page; null at the end.", examples: [null] });

/** Query parameters of every list. */
export const PageQuery = z.strictObject({
  limit: z.coerce
    .number()
    .int()
    .min(1)
    .max(200)
    .optional()
    .meta({ description: "How many to a page, 1 to 200; 100 if left out [entries].", examples: [50] }),
  cursor: z
    .string()
    .max(100)
    .optional()
    .meta({ description: "Where to go on: nextCursor of the page before.", examples: ["after:kaolin"] }),
});

/** A page of a list of something. */
export const pageOf = <T extends z.ZodType>(item: T, id: string, description: string) =>
  z.strictObject({ data: z.array(item).meta({ description: "This page." }), nextCursor }).meta({ id, description });
