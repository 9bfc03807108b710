/** Lengths in the reader's unit. @module */

import { MM } from "../../lengths/index.ts";

export type LengthUnit = "mm" | "in";

const NUMBER = "(\\d+(?:\\.\\d+)?)";
const SPAN = new RegExp(`${NUMBER} and ${NUMBER}([ \u00a0])mm\\b`, "g");
const ONE = new RegExp(`${NUMBER}([ \u00a0])mm\\b`, "g");
const turned = (mm: string) => (Number(mm) / MM.in).toFixed(3);

/**
 * Turns lengths within words, after rounding, so that they agree with sentences turned from mm.
 * @example inInches("runs 0.4 mm, 9 in 10 between 0.1 and 1.7 mm") // "runs 0.016 in, 9 in 10 between 0.004 and 0.067 in"
 */
export function inInches(words: string): string {
  return words
    .replace(SPAN, (_, a: string, b: string, gap: string) => `${turned(a)} and ${turned(b)}${gap}in`)
    .replace(ONE, (_, mm: string, gap: string) => `${turned(mm)}${gap}in`);
}
