/** Rings of many mixtures, and how many there are of each, said in words beside one of them. @module */
import type { Verdict } from "../../fit/types.ts";
import { RING_TINT, RINGS, type RingState } from "../marks/rings.ts";
import { PREFIX, px, type Sheet } from "../marks/sheet.ts";
import { textWidth } from "../marks/text-width.ts";
import type { Mixture } from "./mixtures.ts";

/** From most pulled to most squeezed, with what is not judged last. */
const ORDER: readonly RingState[] = ["crazes", "may-craze", "sound", "may-shiver", "shivers", "unknown"];

const SAYS: Readonly<Record<Verdict | "unknown", string>> = {
  crazes: "will most likely craze",
  "may-craze": "may craze",
  sound: "should hold",
  "may-shiver": "may shiver",
  shivers: "will most likely shiver",
  unknown: "not judged",
};

/** A ring and its middle [px]. */
export interface RingAt {
  x: number;
  y: number;
  state: RingState;
}

export const stateOf = ({ verdict }: Mixture): RingState => verdict ?? "unknown";

/** Draws rings of one size. @param side - of the square that a whole ring stands in [px] */
export function drawRings(sheet: Sheet, rings: readonly RingAt[], side: number): void {
  const scale = Math.round(side * 100) / 1e4;
  for (const state of ORDER) {
    const these = rings.filter((ring) => ring.state === state);
    if (these.length === 0) continue;
    sheet.define(state, () => `<path id="%ID%" d="${RINGS[state]}"/>`);
    const dots = state === "unknown" ? ' stroke-dasharray="13 16"' : "";
    const uses = these.map(
      ({ x, y }) => `<use href="#${PREFIX}-${state}" x="${px(x / scale - 50)}" y="${px(y / scale - 50)}"/>`,
    );
    sheet.raw(
      `<g fill="none" stroke="${sheet.theme[RING_TINT[state]]}" stroke-width="13"${dots} transform="scale(${scale})">${uses.join("")}</g>`,
    );
  }
}

/** How many there are of each verdict, most pulled first. */
export function tally(points: readonly Mixture[]): { state: RingState; words: string }[] {
  return ORDER.flatMap((state) => {
    const count = points.filter((mixture) => stateOf(mixture) === state).length;
    return count > 0 ? [{ state, words: `${count} ${SAYS[state]}` }] : [];
  });
}

/** The tally as a line of rings with words. @param top - where it begins [px] @returns where it ends [px] */
export function drawTally(sheet: Sheet, points: readonly Mixture[], top: number): number {
  const { size, width, narrow } = sheet;
  const margin = narrow ? 4 : 6;
  const rings: RingAt[] = [];
  let x = margin;
  let base = top + size + 4;
  for (const { state, words } of tally(points)) {
    const wide = 24 + textWidth(words, size);
    if (x > margin && x + wide > width - margin) {
      x = margin;
      base += size + 12;
    }
    rings.push({ x: x + 9, y: base - size * 0.36, state });
    sheet.text(x + 24, base, words, { size });
    x += wide + 22;
  }
  drawRings(sheet, rings, 18);
  return base + 10;
}
