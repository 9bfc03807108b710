/** Marks with words beside them, as many on a line as find room. @module */
import type { Sheet } from "../marks/sheet.ts";
import { textWidth } from "../marks/text-width.ts";

/** One mark with its words. */
export interface Flowing {
  /** Room for the mark [px]. */
  mark: number;
  words: string;
  /** Draws the mark from here, middle at this height [px]. */
  draw(x: number, y: number): void;
}

/** @param top - where they begin [px] @returns where they end [px]; `top` where there are none */
export function flow(sheet: Sheet, items: readonly Flowing[], top: number): number {
  const { size, width, narrow } = sheet;
  const margin = narrow ? 4 : 6;
  let x = margin;
  let base = top + size + 4;
  for (const { mark, words, draw } of items) {
    const wide = mark + textWidth(words, size);
    if (x > margin && x + wide > width - margin) {
      x = margin;
      base += size + 12;
    }
    draw(x, base - size * 0.36);
    sheet.text(x + mark, base, words, { size });
    x += wide + 22;
  }
  return items.length > 0 ? base + 10 : top;
}
