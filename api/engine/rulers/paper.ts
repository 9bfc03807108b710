/** Laying pieces out on sheets, each with a bar to check the scale by. @module */
import { clip } from "./clip.ts";
import { type Label, LINE, line, type Piece, type SheetDrawing, type Stroke, shifted, THIN } from "./drawing.ts";
import { fitText, wrapText } from "./letters.ts";
import type { Paper } from "./types.ts";

/** Upright sheets [mm]: ISO 216 A4, and Letter of 8.5 by 11 in. */
export const PAPERS: Readonly<Record<Paper, { width: number; height: number }>> = {
  A4: { width: 210, height: 297 },
  Letter: { width: 215.9, height: 279.4 },
};

/** Printers leave this much blank; nothing is drawn there [mm]. */
export const MARGIN = 12;
const HEAD = 22;
const FOOT = 20;
const GAP = 8;
/** The bar every sheet carries [mm]. */
export const CHECK_BAR_MM = 100;

/** Room for pieces on a sheet [mm]. */
export interface Room {
  sheet: { width: number; height: number };
  width: number;
  height: number;
}

/** The room that a sheet leaves, upright or lying. */
export function roomOn(paper: Paper, lying: boolean): Room {
  const { width, height } = PAPERS[paper];
  const sheet = lying ? { width: height, height: width } : { width, height };
  return { sheet, width: sheet.width - 2 * MARGIN, height: sheet.height - 2 * MARGIN - HEAD - FOOT };
}

/**
 * Sheets that carry the pieces one below the other; a piece larger than a sheet is spread over several.
 * @param title - large, on every sheet
 * @param notes - small, below it
 * @param options - `checkBar: false` for sheets where nothing is measured
 */
export function layOut(
  pieces: readonly Piece[],
  paper: Paper,
  title: string,
  notes: string,
  { checkBar = true }: { checkBar?: boolean } = {},
): SheetDrawing[] {
  const widest = Math.max(...pieces.map(({ widthMm }) => widthMm));
  const upright = roomOn(paper, false);
  // A lying sheet holds less below one another: it is of use only where a piece is too wide to stand.
  const ways = widest <= upright.width ? [upright] : [roomOn(paper, true), upright];
  const tried = ways.map((room) => ({ room, contents: fill(pieces, room) }));
  const best = tried.reduce((a, b) => (b.contents.length < a.contents.length ? b : a));
  const { sheet } = best.room;
  return best.contents.map(({ strokes, labels }, i) => {
    const frame = furniture(best.room, title, notes, `Sheet ${i + 1} of ${best.contents.length}`, checkBar);
    return {
      widthMm: sheet.width,
      heightMm: sheet.height,
      title,
      strokes: [...frame.strokes, ...strokes],
      labels: [...frame.labels, ...labels],
    };
  });
}

interface Content {
  strokes: Stroke[];
  labels: Label[];
}

function fill(pieces: readonly Piece[], room: Room): Content[] {
  const sheets: Content[] = [];
  let used = Number.POSITIVE_INFINITY;
  for (const piece of pieces) {
    if (piece.widthMm > room.width || piece.heightMm > room.height) {
      sheets.push(...tiles(piece, room));
      used = Number.POSITIVE_INFINITY;
      continue;
    }
    if (used + piece.heightMm > room.height) {
      sheets.push({ strokes: [], labels: [] });
      used = 0;
    }
    const content = sheets.at(-1)!;
    const { strokes, labels } = shifted(piece, MARGIN, MARGIN + HEAD + used);
    content.strokes.push(...strokes);
    content.labels.push(...labels);
    used += piece.heightMm + GAP;
  }
  return sheets;
}

/** A large piece in windows of one sheet each, edge to edge, with marks to join them by. */
function tiles(piece: Piece, room: Room): Content[] {
  const [columns, rows] = [Math.ceil(piece.widthMm / room.width), Math.ceil(piece.heightMm / room.height)];
  const contents: Content[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const [left, top] = [column * room.width, row * room.height];
      const window = { left, top, right: left + room.width, bottom: top + room.height };
      const inside = (at: number, from: number, to: number) => at >= from && at < to;
      const content = shifted(
        {
          strokes: piece.strokes.flatMap((stroke) => clip(stroke, window)),
          labels: piece.labels.filter(({ x, y }) => inside(x, left, window.right) && inside(y, top, window.bottom)),
        },
        MARGIN - left,
        MARGIN + HEAD - top,
      );
      const corners = cutMarks(room);
      const text = `row ${row + 1} of ${rows}, column ${column + 1} of ${columns}: cut at the corners and join edge to edge`;
      const place = {
        x: room.sheet.width - MARGIN,
        y: room.sheet.height - MARGIN - 12,
        size: 3,
        anchor: "end" as const,
      };
      contents.push({
        strokes: [...content.strokes, ...corners],
        labels: [...content.labels, { text, ...place }],
      });
    }
  }
  return contents;
}

function cutMarks({ width, height }: Room): Stroke[] {
  const [left, top] = [MARGIN, MARGIN + HEAD];
  return [
    [left, top, 1, 1],
    [left + width, top, -1, 1],
    [left, top + height, 1, -1],
    [left + width, top + height, -1, -1],
  ].flatMap(([x, y, dx, dy]) => [line(x!, y!, x! + 4 * dx!, y!, THIN), line(x!, y!, x!, y! + 4 * dy!, THIN)]);
}

/** Title, notes, check bar and sheet number. */
function furniture({ sheet, width }: Room, title: string, notes: string, number: string, checkBar: boolean): Content {
  const y = sheet.height - MARGIN - 4;
  const x = MARGIN;
  const tick = (at: number) => line(x + at, y - 3, x + at, y, LINE);
  const small = wrapText(notes, 3.2, width).slice(0, 2);
  return {
    strokes: checkBar ? [line(x, y, x + CHECK_BAR_MM, y, LINE), ...[0, 50, 100].map(tick)] : [],
    labels: [
      { text: fitText(title, 5, width, true), x, y: MARGIN + 5, size: 5, bold: true },
      ...small.map((text, i) => ({ text, x, y: MARGIN + 11 + 4.4 * i, size: 3.2 })),
      ...(checkBar
        ? [{ text: "Check bar, 100 mm. Print at 100 %, not fitted to the page.", x, y: y + 4, size: 3 }]
        : []),
      { text: number, x: sheet.width - MARGIN, y: y + 4, size: 3, anchor: "end" },
    ],
  };
}
