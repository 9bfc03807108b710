/** Where in a blend it fits: a line, a triangle or a square of mixtures, each with the ring of its verdict. @module */
import { Sheet } from "../marks/sheet.ts";
import type { PictureOptions } from "../types.ts";
import { drawLine, lineInWords } from "./line.ts";
import { type BlendShape, type BlendToDraw, canDrawBlend } from "./mixtures.ts";
import { drawPlane } from "./plane.ts";
import { tally } from "./verdict-rings.ts";

/**
 * A map of verdicts. Two corners: a tile a row, its stress [MPa] on the fixed scale. Three: a triangle, the first corner
 * on top. Four: a square. A blend too fine to draw is thinned evenly, and the picture says so.
 * @param blend - the whole blend, judged
 * @param shape - `simplex` for every mixture of two or three corners, `grid` for a square of four
 * @returns SVG text with title and description
 * @throws RangeError where {@link canDrawBlend} says no
 * @example blendPicture(judgeBlend(request), "simplex", { width: 720 })
 */
export function blendPicture(blend: BlendToDraw, shape: BlendShape, options: PictureOptions = {}): string {
  if (!canDrawBlend(blend, shape)) {
    throw new RangeError("I draw a line of two, a triangle of three or a square of four, with two mixtures or more.");
  }
  const sheet = new Sheet(options);
  const line = blend.corners.length === 2;
  const height = line ? drawLine(sheet, blend) : drawPlane(sheet, blend, shape);
  const counted = `Of ${blend.points.length} mixtures ${tally(blend.points)
    .map(({ words }) => words)
    .join(", ")}.`;
  const [top, ...others] = blend.corners;
  const where =
    shape === "grid"
      ? `A square with ${blend.corners.slice(0, 2).join(" and ")} on top, ${blend.corners.slice(2).join(" and ")} below.`
      : `A triangle with ${top} on top, ${others.join(" on the left and ")} on the right.`;
  const description = line ? lineInWords(blend) : where;
  return sheet.finish(height, "blend", { title: blend.headline, description: `${counted} ${description}` });
}
