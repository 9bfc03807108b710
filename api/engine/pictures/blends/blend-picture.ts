/** Where in a blend it fits: soundness over a line, a triangle, a square or more corners, with the ring of each verdict. @module */
import { Sheet } from "../marks/sheet.ts";
import type { PictureOptions } from "../types.ts";
import { drawLine, lineInWords } from "./line.ts";
import { type BlendShape, type BlendToDraw, canDrawBlend } from "./mixtures.ts";
import type { Drawn, TilePlace } from "./places.ts";
import { drawPlane } from "./plane.ts";
import { drawStrip, stripInWords } from "./strip.ts";
import { tally } from "./verdict-rings.ts";

/** Options of a blend's picture. */
export interface BlendPictureOptions extends PictureOptions {
  /** Label of a tile to be framed. */
  chosen?: string;
}

/**
 * A line of two: a tile a row, its stress [MPa] on the fixed scale and its chance of staying sound. A triangle of three,
 * the first corner on top, or a square of four: fields where most mixtures stay sound, and on them the ring of each. More
 * corners have no plane: every mixture is a ring over its stress, with the likeliest to hold below. A blend too fine to
 * draw is thinned evenly, and the picture says so.
 * @param blend - the whole blend, judged
 * @param shape - `simplex` for every mixture of the corners, `grid` for a square of four
 * @param options - `chosen` is the label of a tile to be framed
 * @returns SVG text with title and description
 * @throws RangeError where {@link canDrawBlend} says no
 * @example blendPicture(judgeBlend(request), "simplex", { width: 720 })
 */
export function blendPicture(blend: BlendToDraw, shape: BlendShape, options: BlendPictureOptions = {}): string {
  if (!canDrawBlend(blend, shape)) {
    throw new RangeError("I draw two corners or more, a square of four, with two mixtures or more.");
  }
  const sheet = new Sheet(options);
  const { height, where, places } = drawn(sheet, blend, shape);
  const chosen = places.find(({ label }) => label === options.chosen);
  if (chosen) {
    const { left, top, width, height } = chosen;
    sheet.rect(left - 2, top - 2, width + 4, height + 4, { stroke: "ink", width: 3 });
  }
  const counted = `Of ${blend.points.length} mixtures ${tally(blend.points)
    .map(({ words }) => words)
    .join(", ")}.`;
  return sheet.finish(height, "blend", { title: blend.headline, description: `${counted} ${where}` });
}

/**
 * Where each tile stands in the picture of a blend, for a page that lets it be tapped.
 * @param options - as the picture was drawn, set into a page: without its heading
 * @returns a box for each tile that is drawn by itself [px]
 */
export function blendPlaces(blend: BlendToDraw, shape: BlendShape, options: BlendPictureOptions = {}): TilePlace[] {
  return drawn(new Sheet(options), blend, shape).places;
}

/** Draws it and says what is drawn. */
function drawn(sheet: Sheet, blend: BlendToDraw, shape: BlendShape): Drawn & { where: string } {
  const { corners } = blend;
  if (corners.length === 2) return { ...drawLine(sheet, blend), where: lineInWords(blend) };
  if (shape === "simplex" && corners.length > 3) return { ...drawStrip(sheet, blend), where: stripInWords(blend) };
  const [top, ...others] = corners;
  const where =
    shape === "grid"
      ? `A square with ${corners.slice(0, 2).join(" and ")} on top, ${corners.slice(2).join(" and ")} below.`
      : `A triangle with ${top} on top, ${others.join(" on the left and ")} on the right.`;
  const fields = "Where it is tinted, more than 5 of 20 stay sound; the fuller the tint, the more.";
  return { ...drawPlane(sheet, blend, shape), where: `${where} ${fields}` };
}
