/** One bar: left pushes toward shivering (waves), right pulls toward crazing (cracks). @module */
import { signed } from "../../fit/words.ts";
import { crackFill, waveFill } from "../marks/fills.ts";
import type { Sheet } from "../marks/sheet.ts";
import { textWidth } from "../marks/text-width.ts";

/** Where bars grow from, and how fast. */
export interface BarScale {
  /** Line of nought [px]. */
  zero: number;
  /** [px/MPa] */
  perMpa: number;
}

/** What stands at the end of a bar or in its place. */
export interface BarWords {
  decimals: number;
  /** In place of a bar; where left out, a bar below `least` says "next to nothing". */
  instead?: string;
  /** Least that gets a bar [MPa]. */
  least: number;
}

/** Height of a bar [px]. */
export const barTall = (sheet: Sheet) => (sheet.narrow ? 20 : 24);
/** From one bar to the next [px]. */
export const barPitch = (sheet: Sheet) => (sheet.narrow ? 34 : 38);
/** Where words on a bar stand, below its upper edge [px]. */
export const barBase = (sheet: Sheet) => barTall(sheet) / 2 + sheet.size * 0.36;

/** Room that the widest of some values takes at the end of its bar [px]. */
export function valueRoom(sheet: Sheet, values: readonly number[], decimals: number): number {
  const widths = values.map((value) => textWidth(signed(value, decimals), sheet.size + 1, true));
  return Math.max(0, ...widths) + 14;
}

/**
 * Shares the room between pulls and pushes.
 * @param from - first and `to` last pixel for bars and their values [px]
 * @param values - [MPa]
 * @param room - for a value at the end of a bar [px]
 * @param fewestMpa - least that the whole room stands for, so that small bars stay small [MPa]
 */
export function barScale(
  [from, to]: readonly [number, number],
  values: readonly number[],
  room: number,
  fewestMpa: number,
): BarScale {
  const most = Math.max(0, ...values);
  const least = Math.max(0, ...values.map((value) => -value));
  const start = from + (least > 0 ? room : 0);
  // The zero line moves right only as far as the pushes need.
  const perMpa = (to - room - start) / Math.max(most + least, fewestMpa);
  return { zero: start + least * perMpa, perMpa };
}

/** @param y - upper edge [px]; `mpa` its length [MPa] */
export function drawBar(sheet: Sheet, { zero, perMpa }: BarScale, y: number, mpa: number, words: BarWords): void {
  const { size } = sheet;
  const base = y + barBase(sheet);
  const instead = words.instead ?? (Math.abs(mpa) < words.least ? "next to nothing" : undefined);
  if (instead) {
    sheet.text(zero + 8, base, instead, { size, tint: "ink2" });
    return;
  }
  const length = Math.abs(mpa) * perMpa;
  const pulls = mpa > 0;
  const fill = pulls ? crackFill(sheet) : waveFill(sheet);
  const pen = { stroke: pulls ? ("pull" as const) : ("push" as const), width: 1.5, fill };
  sheet.rect(pulls ? zero : zero - length, y, length, barTall(sheet), pen);
  const at = pulls ? zero + length + 7 : zero - length - 7;
  const anchor = pulls ? "start" : "end";
  sheet.text(at, base, signed(mpa, words.decimals), { size: size + 1, bold: true, anchor });
}
