/** A ruler that has already shrunk: what it reads is what comes out of the kiln. @module */
import { type LengthUnit, MM } from "../lengths/index.ts";
import { thrownLength } from "../shrinkage/index.ts";
import { box, type Label, line, type Piece, type Stroke, THIN } from "./drawing.ts";

/** Height of a strip [mm]. */
const STRIP = 30;
/** Divisions of one unit's scale: smallest step [mm], how many to a numbered mark, and to a middle one. */
const SCALES = {
  mm: { step: 1, numbered: 10, middle: 5, factor: 1 },
  cm: { step: 1, numbered: 10, middle: 5, factor: 10 },
  in: { step: MM.in / 16, numbered: 16, middle: 8, factor: MM.in },
} as const;

/**
 * Strips of a shrink ruler: fired divisions along the top, true ones along the bottom.
 *
 *     a mark reading x fired stands at x/(1 − S) on the paper
 *
 * Strips are parted at a numbered fired mark, so that the next one goes on where the last ended.
 * @param firedMm - length to reach [mm], rounded up to a numbered mark
 * @param total - shrinkage, share of plastic length [-]
 * @param unit - what the divisions are
 * @param widthMm - longest strip [mm]
 */
export function rulerStrips(firedMm: number, total: number, unit: LengthUnit, widthMm: number): Piece[] {
  const { step, numbered } = SCALES[unit];
  const major = step * numbered;
  const majors = Math.ceil(firedMm / major - 1e-9);
  const stretched = thrownLength(major, total);
  const perStrip = Math.max(1, Math.floor(widthMm / stretched));
  const count = Math.ceil(majors / perStrip);
  return Array.from({ length: count }, (_, i) => {
    const from = i * perStrip;
    const to = Math.min(majors, from + perStrip);
    return strip(from * major, to * major, total, unit, count > 1 ? ` · strip ${i + 1} of ${count}` : "");
  });
}

function strip(from: number, to: number, total: number, unit: LengthUnit, which: string): Piece {
  const scale = SCALES[unit];
  const start = thrownLength(from, total);
  const width = thrownLength(to, total) - start;
  const strokes: Stroke[] = [box(0, 0, width, STRIP)];
  const labels: Label[] = [];
  const first = Math.round(from / scale.step);
  for (let k = 0; first + k <= Math.round(to / scale.step); k++) {
    const x = thrownLength((first + k) * scale.step, total) - start;
    tick(x, first + k, 0, 1, width);
  }
  const trueFirst = Math.ceil(start / scale.step - 1e-9);
  for (let k = trueFirst; k * scale.step <= start + width + 1e-9; k++)
    tick(k * scale.step - start, k, STRIP, -1, width);
  labels.push(
    { text: `fired ${unit}: throw to this edge${which}`, x: 3, y: STRIP / 2 - 0.6, size: 2.8 },
    { text: `true ${unit}`, x: 3, y: STRIP / 2 + 3, size: 2.8 },
  );
  return { name: `ruler from ${from} mm`, widthMm: width, heightMm: STRIP, strokes, labels };

  function tick(x: number, k: number, edge: number, down: 1 | -1, end: number): void {
    const length = k % scale.numbered === 0 ? 6 : k % scale.middle === 0 ? 4.5 : 3;
    strokes.push(line(x, edge, x, edge + down * length, THIN));
    // A number at the very end would hang over the strip.
    if (k % scale.numbered !== 0 || x < 2 || x > end - 2) return;
    const text = String(Math.round((k * scale.step) / scale.factor));
    labels.push({ text, x, y: edge + down * 6 + (down > 0 ? 3 : -0.8), size: 3, anchor: "middle" });
  }
}
