/** Which tile a tap on the picture means. @module */
import { blendPlaces } from "../../../engine/pictures/blends/blend-picture.ts";
import type { PictureWidth } from "../../../engine/pictures/types.ts";
import type { BlendTold } from "./blend-told.ts";

/** How far beside a tile a finger may land [px]. */
const REACH = 22;

/** @returns the label of the nearest tile, or undefined where none is near */
export function tappedTile(svg: Element, { clientX, clientY }: MouseEvent, told: BlendTold): string | undefined {
  const box = svg.getBoundingClientRect();
  const width = Number(svg.getAttribute("width")) as PictureWidth;
  const scale = width / box.width;
  const [x, y] = [(clientX - box.left) * scale, (clientY - box.top) * scale];
  const away = blendPlaces(told.blend, told.shape, { width }).map(({ label, left, top, width: wide, height }) => ({
    label,
    // From the box first, and among boxes that overlap from the middle.
    edge: Math.hypot(Math.max(left - x, 0, x - left - wide), Math.max(top - y, 0, y - top - height)),
    middle: Math.hypot(left + wide / 2 - x, top + height / 2 - y),
  }));
  const [nearest] = away.sort((a, b) => a.edge - b.edge || a.middle - b.middle);
  return nearest && nearest.edge <= REACH * scale ? nearest.label : undefined;
}
