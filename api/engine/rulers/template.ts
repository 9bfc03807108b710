/** Ribs and profile templates: the outline as thrown, to be cut from card. @module */
import type { Piece, Place } from "./drawing.ts";
import { LINE, line, THIN } from "./drawing.ts";

/** Card behind the outline [mm]. */
const BACK = 25;

/**
 * A card whose edge is the outline.
 * @param points - radius and height as thrown [mm], in order along the outline
 * @param side - whether the card lies outside the wall or inside it
 * @returns the card; heights run upwards on the paper
 */
export function templateCard(
  points: readonly { r: number; y: number }[],
  side: "outside" | "inside",
  name: string,
): Piece {
  const [low, high] = ends(points.map(({ y }) => y));
  const [near, far] = ends(points.map(({ r }) => r));
  const back = side === "outside" ? far + BACK : Math.max(0, near - BACK);
  const left = Math.min(near, back);
  const place = ({ r, y }: { r: number; y: number }): Place => [r - left, high - y];
  const outline = points.map(place);
  const corners: Place[] = [
    [back - left, high - points.at(-1)!.y],
    [back - left, high - points[0]!.y],
  ];
  const widthMm = Math.max(far, back) - left;
  const heightMm = high - low;
  const middle = side === "outside" ? back - left - BACK / 2 : (back + near) / 2 - left;
  return {
    name,
    widthMm,
    heightMm: heightMm + 8,
    strokes: [
      { points: [...outline, ...corners], closed: true, width: LINE },
      line(0, heightMm + 2, widthMm, heightMm + 2, THIN),
    ],
    labels: [
      { text: side === "outside" ? "outside" : "inside", x: middle, y: heightMm / 2, size: 3, anchor: "middle" },
      { text: `${name}: wheel head at the thin line`, x: 0, y: heightMm + 6, size: 3 },
    ],
  };
}

const ends = (values: number[]): [number, number] => [Math.min(...values), Math.max(...values)];
