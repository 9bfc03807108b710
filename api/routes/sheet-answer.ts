/** Sheets as SVG or PDF, as the caller likes. @module */
import type { Context } from "hono";
import { z } from "zod";
import { type SheetDrawing, toPdf, toSvg } from "../engine/rulers/index.ts";
import { preferredType } from "../http/media.ts";
import { impossible } from "../http/problem.ts";
import { readQuery } from "../http/read-query.ts";
import { svgText } from "../schemas/figures.ts";

export const SVG_TYPE = "image/svg+xml";
export const PDF_TYPE = "application/pdf";

/** What an address with sheets serves, JSON first. */
export const SHEET_TYPES = `application/json, ${SVG_TYPE}, ${PDF_TYPE}`;

/** Which sheet is wanted as SVG. */
export const SheetQuery = z.strictObject({
  sheet: z.coerce
    .number()
    .int()
    .min(1)
    .max(100)
    .optional()
    .meta({ description: "Which sheet, where SVG is asked for [-]; the first if left out.", examples: [1] }),
});

/** The two printable answers in the description. */
export const sheetContent = {
  [SVG_TYPE]: { schema: svgText("One sheet, at true scale.") },
  [PDF_TYPE]: { schema: z.string().meta({ description: "Every sheet, at true scale.", contentEncoding: "binary" }) },
};

/**
 * The printable answer that was asked for, or undefined where JSON was.
 * @param title - of the document
 */
export function sheetAnswer(c: Context, sheets: readonly SheetDrawing[], title: string): Response | undefined {
  const type = preferredType(c, SHEET_TYPES);
  const { sheet = 1 } = readQuery(c, SheetQuery);
  if (sheet > sheets.length) {
    const message = `There ${sheets.length === 1 ? "is one sheet" : `are ${sheets.length} sheets`}; sheet ${sheet} is not among them.`;
    throw impossible([{ pointer: "/sheet", message, allowed: [sheets.length] }]);
  }
  const sent = (body: string | Uint8Array<ArrayBuffer>, more: Record<string, string> = {}) =>
    c.body(body, 200, { "content-type": type, vary: "accept", "x-sheets": String(sheets.length), ...more });
  if (type === SVG_TYPE) return sent(toSvg(sheets[sheet - 1]!));
  if (type === PDF_TYPE)
    return sent(toPdf(sheets, title), { "content-disposition": 'inline; filename="ringtrue.pdf"' });
  return undefined;
}
