/** What drives it: the pull of each oxide, set against silica in its place; and one more part of each material. @module */
import type { FitReport, OxidePull } from "../../fit/types.ts";
import { signed } from "../../fit/words.ts";
import { px, Sheet } from "../marks/sheet.ts";
import { textWidth, wrap } from "../marks/text-width.ts";
import type { PictureOptions } from "../types.ts";
import { type BarScale, barBase, barPitch, barScale, drawBar, valueRoom } from "./bar.ts";
import { bestPart, partRowsOf, partsInWords } from "./part-rows.ts";
import { drawParts } from "./parts.ts";
import { bestSwap, type Rows, rowsOf } from "./rows.ts";

/** Heading of the last column: what one more weight per cent would do. */
const per = (sheet: Sheet) => (sheet.narrow ? "+1 %" : "1 % more");

interface Place extends BarScale {
  /** Right end of the share column [px]. */
  share: number;
}

/**
 * A bar for each oxide: the stress it adds where silica would stand in its place. Right pulls toward crazing (cracks),
 * left pushes toward shivering (waves). Beside it the share in the glaze and what one more per cent would do. Below, if
 * the answer holds them, what one more part of each material would do.
 * @param report - an answer whose glaze was given by recipe or oxides; `include: ["parts"]` brings the materials
 * @returns SVG text with title and description; for a glaze known by its expansion alone, a picture that says so
 * @example contributionsPicture(checkFit(question), { width: 720 })
 */
export function contributionsPicture(report: FitReport, options: PictureOptions = {}): string {
  const sheet = new Sheet(options);
  const rows = rowsOf(report);
  const parts = partRowsOf(report);
  if (report.pulls.length === 0) return unknown(sheet);
  const { size, width, narrow } = sheet;
  const pitch = barPitch(sheet);
  const place = placeOf(sheet, rows);
  const top = size * 2 + 10;
  const margin = narrow ? 4 : 6;

  sheet.text(margin, size + 2, "in the glaze", { size, tint: "ink2" });
  const perHeader = per(sheet);
  const room = width - margin - textWidth(perHeader, size) - 14 - place.zero;
  const header = ["pull toward crazing, MPa", "pull, MPa"].find((words) => textWidth(words, size) < room) ?? "MPa";
  sheet.text(place.zero, size + 2, header, { size, tint: "ink2" });
  sheet.text(width - margin, size + 2, perHeader, { size, tint: "ink2", anchor: "end" });

  for (const [i, pull] of rows.bars.entries()) drawRow(sheet, pull, place, top + i * pitch);
  let y = top + rows.bars.length * pitch;
  if (rows.yardstick) {
    drawRow(sheet, rows.yardstick, place, y, "the yardstick");
    y += pitch;
  }
  sheet.path(`M${px(place.zero)} ${top - 4}V${y}`, { stroke: "ink", width: 1.5 });
  y += size + 6;
  if (rows.rest.length > 0) {
    const words = `Next to nothing: ${rows.rest.map(({ oxide }) => oxide).join(", ")}.`;
    for (const line of wrap(words, width - 2 * margin, size)) {
      sheet.text(margin, y, line, { size, tint: "ink2", formula: true });
      y += size + 4;
    }
  }
  y = y - size + 4;
  const { title, description } = told(report, rows);
  if ((report.parts ?? []).length === 0) return sheet.finish(y, "contributions", { title, description });
  y = drawParts(sheet, parts, y + (narrow ? 10 : 14));
  const finding = bestPart(report);
  return sheet.finish(y, "contributions", {
    title: finding ? `${title} ${finding}` : title,
    description: `${description} ${partsInWords(parts)}`,
  });
}

function placeOf(sheet: Sheet, { bars }: Rows): Place {
  const { size, width, narrow } = sheet;
  const margin = narrow ? 4 : 6;
  const share = margin + textWidth("Al2O3", size + 1, true) + (narrow ? 6 : 16) + textWidth("88.8 %", size);
  const values = bars.map(({ pullMPa }) => pullMPa);
  const end = width - margin - textWidth(per(sheet), size) - 12;
  return { share, ...barScale([share + 14, end], values, valueRoom(sheet, [888, ...values], 0), 20) };
}

function drawRow(sheet: Sheet, pull: OxidePull, place: Place, y: number, instead?: string): void {
  const { size, width, narrow } = sheet;
  const margin = narrow ? 4 : 6;
  const base = y + barBase(sheet);
  sheet.text(margin, base, pull.oxide, { size: size + 1, bold: true, formula: true });
  sheet.text(place.share, base, `${pull.weightPercent.toFixed(1)} %`, { size, tint: "ink2", anchor: "end" });
  drawBar(sheet, place, y, pull.pullMPa, { decimals: 0, least: 1, instead });
  sheet.text(width - margin, base, signed(pull.perWeightPercentMPa), { size, anchor: "end" });
}

function unknown(sheet: Sheet): string {
  const { size, width } = sheet;
  const title = "This glaze is known by its expansion alone, so its oxides cannot be told apart.";
  const description = "Give a recipe or an analysis to see what each oxide pulls.";
  sheet.circle(30, 32, 18, { stroke: "ink2", width: 2, dash: "2 4" });
  let y = size + 12;
  // A heading above says it already.
  for (const line of sheet.headed ? [] : wrap(title, width - 76, size, true)) {
    sheet.text(64, y, line, { size, bold: true });
    y += size + 5;
  }
  for (const line of wrap(description, width - 76, size)) {
    sheet.text(64, y, line, { size, tint: "ink2" });
    y += size + 5;
  }
  return sheet.finish(Math.max(y, 64), "contributions", { title, description });
}

function told(report: FitReport, { bars, rest }: Rows): { title: string; description: string } {
  const first = bars[0];
  const swap = bestSwap(report);
  const drop = swap
    ? ` Swap 1\u00a0% of ${swap.oxide} for silica and the stress drops about ${Math.round(swap.dropMPa)}\u00a0MPa.`
    : "";
  const title =
    first && first.pullMPa >= 1
      ? `${first.oxide} pulls hardest toward crazing: ${signed(first.pullMPa)}\u00a0MPa.${drop}`
      : `No oxide pulls harder toward crazing than silica in its place.${drop}`;
  const each = bars.map(
    ({ oxide, weightPercent, pullMPa, perWeightPercentMPa }) =>
      `${oxide} ${weightPercent.toFixed(1)} %: ${signed(pullMPa)} MPa, one more per cent ${signed(perWeightPercentMPa)} MPa`,
  );
  const description = [
    "Pull of each oxide compared with silica in its place, in megapascal; right pulls toward crazing, left pushes toward shivering.",
    `${each.join("; ")}.`,
    ...(rest.length > 0 ? [`Next to nothing: ${rest.map(({ oxide }) => oxide).join(", ")}.`] : []),
  ].join(" ");
  return { title, description };
}
