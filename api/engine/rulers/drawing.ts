/** What lies on a sheet of paper: strokes and labels, in millimetres from its top left corner. @module */

export type Place = readonly [x: number, y: number];

/** A broken line. */
export interface Stroke {
  points: readonly Place[];
  closed?: boolean;
  /** [mm] */
  width: number;
  dashed?: boolean;
}

/** A line of text; `y` is its baseline. */
export interface Label {
  text: string;
  x: number;
  y: number;
  /** Height of the letters' body [mm]. */
  size: number;
  anchor?: "start" | "middle" | "end";
  bold?: boolean;
}

/** Something to place on paper: its own corner is 0, 0. */
export interface Piece {
  name: string;
  widthMm: number;
  heightMm: number;
  strokes: Stroke[];
  labels: Label[];
}

/** One sheet, full. */
export interface SheetDrawing {
  widthMm: number;
  heightMm: number;
  title: string;
  strokes: Stroke[];
  labels: Label[];
}

/** Line widths [mm]. */
export const THIN = 0.15;
export const LINE = 0.3;

export const line = (x1: number, y1: number, x2: number, y2: number, width = THIN): Stroke => ({
  points: [
    [x1, y1],
    [x2, y2],
  ],
  width,
});

export const box = (x: number, y: number, width: number, height: number, stroke = THIN): Stroke => ({
  points: [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ],
  closed: true,
  width: stroke,
});

/** The same, moved. */
export const shifted = ({ strokes, labels }: Pick<Piece, "strokes" | "labels">, dx: number, dy: number) => ({
  strokes: strokes.map((stroke) => ({
    ...stroke,
    points: stroke.points.map(([x, y]): Place => [x + dx, y + dy]),
  })),
  labels: labels.map((label) => ({ ...label, x: label.x + dx, y: label.y + dy })),
});
