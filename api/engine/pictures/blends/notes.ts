/** What stands below a picture of a blend in words. @module */
import type { Sheet } from "../marks/sheet.ts";
import { wrap } from "../marks/text-width.ts";
import type { BlendToDraw, Mixture } from "./mixtures.ts";

/** That not all mixtures are drawn, or nothing. */
export function leftOut({ points }: BlendToDraw, drawn: readonly Mixture[]): string | undefined {
  if (drawn.length === points.length) return undefined;
  return `${drawn.length} of ${points.length} mixtures have room here; the count above is of all.`;
}

/** @param y - last line before them [px] @returns where they end [px] */
export function drawNotes(sheet: Sheet, notes: readonly (string | undefined)[], y: number): number {
  const { size, width, narrow } = sheet;
  const margin = narrow ? 4 : 6;
  let base = y;
  for (const words of notes) {
    for (const line of words ? wrap(words, width - 2 * margin, size) : []) {
      base += size + 4;
      sheet.text(margin, base, line, { size, tint: "ink2" });
    }
  }
  return base > y ? base + 8 : y;
}
