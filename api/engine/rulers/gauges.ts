/** Gauges: one to try the gallery with, one to try the lid. @module */
import { LINE, type Piece, type Place } from "./drawing.ts";

const ARM = 15;
const DEPTH = 20;
const STOCK = 18;

/**
 * A tongue as wide as the gallery should be as thrown; its arms rest on the rim.
 * @param widthMm - inside the gallery, as thrown [mm]
 */
export function galleryGauge(widthMm: number): Piece {
  const outline: Place[] = [
    [0, 0],
    [widthMm + 2 * ARM, 0],
    [widthMm + 2 * ARM, STOCK],
    [widthMm + ARM, STOCK],
    [widthMm + ARM, STOCK + DEPTH],
    [ARM, STOCK + DEPTH],
    [ARM, STOCK],
    [0, STOCK],
  ];
  return piece("gallery gauge", outline, widthMm, "Gallery: the tongue just goes in, freshly thrown");
}

/**
 * A mouth as wide as the lid should be as thrown; the lid just passes.
 * @param widthMm - of the lid's flange, as thrown [mm]
 */
export function lidGauge(widthMm: number): Piece {
  const outline: Place[] = [
    [0, 0],
    [widthMm + 2 * ARM, 0],
    [widthMm + 2 * ARM, STOCK + DEPTH],
    [widthMm + ARM, STOCK + DEPTH],
    [widthMm + ARM, STOCK],
    [ARM, STOCK],
    [ARM, STOCK + DEPTH],
    [0, STOCK + DEPTH],
  ];
  return piece("lid gauge", outline, widthMm, "Lid: the flange just passes the mouth, freshly thrown");
}

function piece(name: string, points: Place[], widthMm: number, text: string): Piece {
  return {
    name,
    widthMm: widthMm + 2 * ARM,
    heightMm: STOCK + DEPTH,
    strokes: [{ points, closed: true, width: LINE }],
    labels: [{ text, x: 4, y: STOCK / 2 + 1, size: 3 }],
  };
}
