/** Cutting strokes at the edge of a sheet. @module */
import type { Place, Stroke } from "./drawing.ts";

export interface Window {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

/**
 * The parts of a stroke inside a window, segment by segment (Liang and Barsky 1984, from memory).
 * A stroke wholly inside comes back as it is; others in pieces.
 */
export function clip(stroke: Stroke, window: Window): Stroke[] {
  const { points, closed, ...look } = stroke;
  if (points.every(([x, y]) => x >= window.left && x <= window.right && y >= window.top && y <= window.bottom)) {
    return [stroke];
  }
  const ends = closed ? [...points.slice(1), points[0]!] : points.slice(1);
  return ends.flatMap((end, i) => {
    const piece = clipSegment(points[i]!, end, window);
    return piece ? [{ ...look, points: piece }] : [];
  });
}

function clipSegment([x0, y0]: Place, [x1, y1]: Place, window: Window): Place[] | undefined {
  const [dx, dy] = [x1 - x0, y1 - y0];
  let [from, to] = [0, 1];
  for (const [p, q] of [
    [-dx, x0 - window.left],
    [dx, window.right - x0],
    [-dy, y0 - window.top],
    [dy, window.bottom - y0],
  ] as const) {
    if (p === 0) {
      if (q < 0) return undefined;
    } else if (p < 0) from = Math.max(from, q / p);
    else to = Math.min(to, q / p);
  }
  if (from >= to) return undefined;
  return [
    [x0 + from * dx, y0 + from * dy],
    [x0 + to * dx, y0 + to * dy],
  ];
}
