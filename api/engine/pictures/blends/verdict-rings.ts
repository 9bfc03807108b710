/** Rings of many mixtures, and how many there are of each, said in words beside one of them. @module */
import type { Verdict } from "../../fit/types.ts";
import { RING_TINT, RINGS, type RingState } from "../marks/rings.ts";
import { escapeText, PREFIX, type Sheet } from "../marks/sheet.ts";
import { flow } from "./flow.ts";
import type { Mixture } from "./mixtures.ts";

/** From most pulled to most squeezed, with what is not judged last. */
export const ORDER: readonly RingState[] = ["crazes", "may-craze", "sound", "may-shiver", "shivers", "unknown"];

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

/**
 * Draws rings of one size, each on a disc of paper that clears what lies behind it.
 *
 * Hundreds may stand in one picture, so a ring is one short reference and its place in whole hundredths of a ring.
 * @param side - of the square that a whole ring stands in [px]
 */
export function drawRings(sheet: Sheet, rings: readonly RingAt[], side: number): void {
  const scale = Math.round(side * 100) / 1e4;
  for (const [k, state] of ORDER.entries()) {
    const these = rings.filter((ring) => ring.state === state);
    if (these.length === 0) continue;
    // One digit, for it is written at every ring.
    const name = String(k);
    sheet.define(name, () => {
      const disc = `<circle cx="50" cy="50" r="46" fill="${sheet.theme.paper}" stroke="none"/>`;
      return `<g id="%ID%">${disc}<path d="${RINGS[state]}"/></g>`;
    });
    const dots = state === "unknown" ? ' stroke-dasharray="13 16"' : "";
    const place = (middle: number) => Math.round(middle / scale - 50);
    const uses = these.map(({ x, y }) => `<use href="#${PREFIX}-${name}" x="${place(x)}" y="${place(y)}"/>`);
    sheet.raw(
      `<g fill="none" stroke="${sheet.theme[RING_TINT[state]]}" stroke-width="13"${dots} transform="scale(${scale})">${uses.join("")}</g>`,
    );
  }
}

/** Words of one kind at many places, middle on each. */
export function drawLabels(sheet: Sheet, labels: readonly { x: number; y: number; words: string }[]): void {
  if (labels.length === 0) return;
  const tenth = (value: number) => Math.round(value * 10) / 10;
  const each = labels.map(({ x, y, words }) => `<text x="${tenth(x)}" y="${tenth(y)}">${escapeText(words)}</text>`);
  sheet.raw(
    `<g font-size="${sheet.size}" text-anchor="middle" fill="${sheet.theme.ink2}" stroke="${sheet.theme.paper}" stroke-width="3" paint-order="stroke">${each.join("")}</g>`,
  );
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
  const rings: RingAt[] = [];
  const items = tally(points).map(({ state, words }) => ({
    mark: 24,
    words,
    draw: (x: number, y: number) => rings.push({ x: x + 9, y, state }),
  }));
  const end = flow(sheet, items, top);
  drawRings(sheet, rings, 18);
  return end;
}
