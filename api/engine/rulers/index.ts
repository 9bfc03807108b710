/** Rulers, templates and gauges at true scale, and the sheets they are printed on. @module */

// The front door
export { drawRuler } from "./draw-ruler.ts";
// Sheets
export { box, type Label, LINE, line, type Piece, type SheetDrawing, type Stroke, THIN } from "./drawing.ts";
export { fitText, textWidth, wrapText } from "./letters.ts";
export { CHECK_BAR_MM, layOut, MARGIN, PAPERS, roomOn } from "./paper.ts";
// On paper
export { toPdf } from "./pdf.ts";
export { toSvg } from "./svg.ts";
export type { DrawnLength, Paper, RulerReport, RulerRequest } from "./types.ts";
