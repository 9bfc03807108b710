/** A batch sheet to print, tick and sign. @module */
import { round } from "../quantity.ts";
import {
  box,
  fitText,
  type Label,
  layOut,
  line,
  type Paper,
  type Piece,
  type SheetDrawing,
  type Stroke,
  wrapText,
} from "../rulers/index.ts";
import type { BatchLine, BatchReport } from "./types.ts";

const WIDTH = 186;
const ROW = 7;
const TEXT = 3.6;
/** Rows of one table on a sheet; longer recipes go on [-]. */
const ROWS = 24;
/** Right edges of the columns of figures [mm]. */
const COLUMNS = { inHundred: 112, weigh: 148, running: WIDTH };

/** The sheets of a batch, one for most recipes. */
export function batchSheets(report: Omit<BatchReport, "sheets">, paper: Paper): SheetDrawing[] {
  const { lines, dry, name, headline } = report;
  const pieces: Piece[] = [];
  for (let from = 0; from < lines.length; from += ROWS) {
    const last = from + ROWS >= lines.length;
    pieces.push(table(lines.slice(from, from + ROWS), last ? dry.totalG : null));
  }
  const { lossOnIgnition, water, steps, bucket, dips, cautions } = report;
  const facts = [
    ...steps,
    `Water in all: about ${water.value} g (${water.low} to ${water.high}).`,
    `In the kiln ${lossOnIgnition.lostG} g (${lossOnIgnition.percent} %) leave; ${lossOnIgnition.glassG} g of glass stay.`,
    ...(dips ? [dips.message] : []),
    ...(bucket ? [bucket.message] : []),
  ];
  pieces.push(paragraphs("How", facts));
  if (cautions.length > 0)
    pieces.push(
      paragraphs(
        "Mind",
        cautions.map(({ message }) => message),
      ),
    );
  pieces.push(signature());
  return layOut(pieces, paper, `Batch sheet: ${name}`, headline, { checkBar: false });
}

function table(lines: readonly BatchLine[], total: number | null): Piece {
  const strokes: Stroke[] = [line(0, ROW, WIDTH, ROW, 0.3)];
  const labels: Label[] = [];
  const write = (y: number, texts: [string, string, string, string], bold = false) => {
    const [material, ...figures] = texts;
    const style = { y: y + ROW - 2.2, size: TEXT, bold };
    labels.push({ text: fitText(material, TEXT, 76, bold), x: 9, ...style });
    for (const [i, x] of Object.values(COLUMNS).entries())
      labels.push({ text: figures[i]!, x, anchor: "end", ...style });
  };
  write(0, ["Material", "in 100", "weigh, g", "running, g"], true);
  let y = ROW;
  for (const [i, { label, material, addition, inHundred, weighG, runningG }] of lines.entries()) {
    if (addition && !lines[i - 1]?.addition) {
      labels.push({ text: "Additions, over the hundred", x: 9, y: y + ROW - 2.2, size: TEXT, bold: true });
      y += ROW;
    }
    // Identifiers carry hyphens; on paper they are names.
    const said = material === null ? label : label.replaceAll("-", " ");
    write(y, [said, inHundred.toFixed(2), weighG.toFixed(2), runningG.toFixed(2)]);
    strokes.push(box(1, y + 1.6, 3.8, 3.8), line(0, y + ROW, WIDTH, y + ROW));
    y += ROW;
  }
  if (total !== null) {
    write(y, ["Dry in all", "", total.toFixed(2), ""], true);
    y += ROW;
  }
  return { name: "table", widthMm: WIDTH, heightMm: y, strokes, labels };
}

function paragraphs(heading: string, texts: readonly string[]): Piece {
  const labels: Label[] = [{ text: heading, x: 0, y: 4, size: TEXT, bold: true }];
  let y = 4;
  for (const text of texts) {
    for (const [i, part] of wrapText(text, 3.2, WIDTH - 4).entries()) {
      y += 4.6;
      if (i === 0) labels.push({ text: "·", x: 0, y, size: 3.2 });
      labels.push({ text: part, x: 3, y, size: 3.2 });
    }
  }
  return { name: heading, widthMm: WIDTH, heightMm: round(y + 1, 2), strokes: [], labels };
}

function signature(): Piece {
  const fields = ["Weighed by", "Date", "Specific gravity", "Fired glaze, mm"];
  const each = WIDTH / fields.length;
  return {
    name: "signature",
    widthMm: WIDTH,
    heightMm: 14,
    strokes: fields.map((_, i) => line(i * each, 9, (i + 1) * each - 6, 9)),
    labels: fields.map((text, i) => ({ text, x: i * each, y: 13, size: 3 })),
  };
}
