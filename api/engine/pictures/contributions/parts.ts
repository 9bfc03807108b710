/** What one more part of each material would do: bars below those of the oxides. @module */
import { sentence } from "../../fit/words.ts";
import { arrow } from "../marks/fills.ts";
import { px, type Sheet } from "../marks/sheet.ts";
import { shorten, textWidth, wrap } from "../marks/text-width.ts";
import { barBase, barPitch, barScale, drawBar, valueRoom } from "./bar.ts";
import { LEAST_MPA, type PartRows, restInWords } from "./part-rows.ts";

const WORDS = { decimals: 1, least: LEAST_MPA };
/** What each side means, the longer words first; the shorter always have room. */
const SIDES = [
  ["toward lifting", "toward crazing"],
  ["lifts", "cracks"],
] as const;
/** Least that the whole room stands for [MPa a part]: a recipe that hardly stirs looks so. */
const FEWEST_MPA = 2;

/**
 * Draws a bar for each material.
 * @param top - where the block opens [px]
 * @returns where it ends [px]
 */
export function drawParts(sheet: Sheet, rows: PartRows, top: number): number {
  const { size, width, narrow } = sheet;
  const margin = narrow ? 4 : 6;
  const values = rows.bars.map(({ mpa }) => mpa);
  const names = namesOf(sheet, rows);
  const ends = [margin + names.wide + 12, width - margin] as const;
  const wordRoom = textWidth(SIDES[1][1], size, true) + 28;
  let scale = barScale(ends, values, valueRoom(sheet, values, 1), FEWEST_MPA);
  if (ends[1] - scale.zero < wordRoom) scale = barScale(ends, values, wordRoom, FEWEST_MPA);

  sheet.path(`M${margin} ${px(top)}H${width - margin}`, { stroke: "ink", width: 1.5 });
  let y = top + size + 12;
  const lead = "One more part of each material";
  const units = ["changes the pull by so many MPa, the others staying", "MPa, the others staying", "MPa"];
  const left = width - 2 * margin - 8 - textWidth(lead, size, true);
  const unit = units.find((words) => textWidth(words, size) <= left) ?? "MPa";
  sheet.text(margin, y, unit, { size, tint: "ink2", lead });

  if (rows.bars.length > 0) {
    y += size + 12;
    drawSides(sheet, scale.zero, y);
    y += 12;
    const start = y;
    for (const [i, { mpa }] of rows.bars.entries()) {
      drawName(sheet, names.lines[i]!, margin, y);
      drawBar(sheet, scale, y, mpa, WORDS);
      y += barPitch(sheet);
    }
    sheet.path(`M${px(scale.zero)} ${px(start - 4)}V${px(y)}`, { stroke: "ink", width: 1.5 });
  }
  y += size + 6;
  for (const words of restInWords(rows)) {
    for (const line of wrap(words, width - 2 * margin, size)) {
      sheet.text(margin, y, line, { size, tint: "ink2" });
      y += size + 4;
    }
  }
  return y - size + 4;
}

/** The promise above the zero line: left lifts, right cracks. */
function drawSides(sheet: Sheet, zero: number, y: number): void {
  const { size, width } = sheet;
  const middle = y - size * 0.33;
  const fits = (words: string) => textWidth(words, size, true) <= Math.min(zero, width - zero) - 22 - 6;
  const [lifts, cracks] = SIDES.find((pair) => pair.every(fits)) ?? SIDES[1];
  sheet.path(arrow(zero - 12, middle, -1), { stroke: "push", width: 1.75 });
  sheet.text(zero - 22, y, lifts, { size, bold: true, tint: "push", anchor: "end" });
  sheet.path(arrow(zero + 12, middle, 1), { stroke: "pull", width: 1.75 });
  sheet.text(zero + 22, y, cracks, { size, bold: true, tint: "pull" });
}

/** Names in one line or two, and the column they need [px]. */
function namesOf(sheet: Sheet, { bars }: PartRows): { lines: string[][]; wide: number } {
  const { size, narrow } = sheet;
  const most = narrow ? 112 : 240;
  const lines = bars.map(({ name }) => {
    const [first = "", ...rest] = wrap(sentence(name), most, size, true);
    return rest.length > 0 ? [first, shorten(rest.join(" "), most, size, true)] : [first];
  });
  const widths = lines.flat().map((line) => textWidth(line, size, true));
  // Room for the shorter words even where no bar goes left.
  return { lines, wide: Math.max(textWidth(SIDES[1][0], size, true) + 28, ...widths) };
}

function drawName(sheet: Sheet, lines: string[], x: number, y: number): void {
  const leading = sheet.size + 1.5;
  const base = y + barBase(sheet) - ((lines.length - 1) * leading) / 2;
  for (const [i, line] of lines.entries()) sheet.text(x, base + i * leading, line, { size: sheet.size, bold: true });
}
