/** Where in a blend it fits: soundness over a line, a triangle, a square or more corners, with the ring of each verdict. @module */
import { Sheet } from "../marks/sheet.ts";
import type { PictureOptions } from "../types.ts";
import { drawLine, lineInWords } from "./line.ts";
import { type BlendShape, type BlendToDraw, canDrawBlend } from "./mixtures.ts";
import { drawPlane } from "./plane.ts";
import { drawStrip, stripInWords } from "./strip.ts";
import { tally } from "./verdict-rings.ts";

/**
 * A line of two: a tile a row, its stress [MPa] on the fixed scale and its chance of staying sound. A triangle of three,
 * the first corner on top, or a square of four: fields where most mixtures stay sound, and on them the ring of each. More
 * corners have no plane: every mixture is a ring over its stress, with the likeliest to hold below. A blend too fine to
 * draw is thinned evenly, and the picture says so.
 * @param blend - the whole blend, judged
 * @param shape - `simplex` for every mixture of the corners, `grid` for a square of four
 * @returns SVG text with title and description
 * @throws RangeError where {@link canDrawBlend} says no
 * @example blendPicture(judgeBlend(request), "simplex", { width: 720 })
 */
export function blendPicture(blend: BlendToDraw, shape: BlendShape, options: PictureOptions = {}): string {
  if (!canDrawBlend(blend, shape)) {
    throw new RangeError("I draw two corners or more, a square of four, with two mixtures or more.");
  }
  const sheet = new Sheet(options);
  const { height, where } = drawn(sheet, blend, shape);
  const counted = `Of ${blend.points.length} mixtures ${tally(blend.points)
    .map(({ words }) => words)
    .join(", ")}.`;
  return sheet.finish(height, "blend", { title: blend.headline, description: `${counted} ${where}` });
}

/** Draws it and says what is drawn. */
function drawn(sheet: Sheet, blend: BlendToDraw, shape: BlendShape): { height: number; where: string } {
  const { corners } = blend;
  if (corners.length === 2) return { height: drawLine(sheet, blend), where: lineInWords(blend) };
  if (shape === "simplex" && corners.length > 3) return { height: drawStrip(sheet, blend), where: stripInWords(blend) };
  const [top, ...others] = corners;
  const where =
    shape === "grid"
      ? `A square with ${corners.slice(0, 2).join(" and ")} on top, ${corners.slice(2).join(" and ")} below.`
      : `A triangle with ${top} on top, ${others.join(" on the left and ")} on the right.`;
  const fields = "Where it is tinted, more than 5 of 20 stay sound; the fuller the tint, the more.";
  return { height: drawPlane(sheet, blend, shape), where: `${where} ${fields}` };
}
