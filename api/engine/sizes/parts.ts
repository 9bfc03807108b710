/** Fired sizes as wanted, checked against one another. @module */
import { type Faults, type LengthReader, type LengthUnit, sayLength } from "../lengths/index.ts";
import { PARTS, type Part, type SizesRequest } from "./types.ts";

/** Parts that must lie inside others. */
const WITHIN: readonly (readonly [Part, Part, string])[] = [
  ["gallery", "diameter", "The gallery lies inside the pot"],
  ["gallery", "rim", "The gallery lies inside the rim"],
  ["flange", "gallery", "The lid's flange lies inside the gallery, and a lid larger than its pot will not go in"],
  ["depth", "height", "The depth is measured inside, down to the floor"],
];

/** Reads the fired sizes; what cannot stand together is kept in `faults`. */
export function readParts(
  fired: NonNullable<SizesRequest["fired"]>,
  read: LengthReader,
  unit: LengthUnit,
  faults: Faults,
): Map<Part, number> {
  const parts = new Map<Part, number>();
  for (const part of PARTS) {
    if (fired[part] === undefined) continue;
    const mm = read(fired[part], `/fired/${part}`, `The ${part}`);
    if (mm > 0) parts.set(part, mm);
  }
  const say = (mm: number) => sayLength(mm, unit);
  for (const [inner, outer, why] of WITHIN) {
    const [a, b] = [parts.get(inner), parts.get(outer)];
    if (a !== undefined && b !== undefined && a >= b) {
      faults.add(`/fired/${inner}`, `${why}: ${say(a)} is not less than ${say(b)}.`);
    }
  }
  const wall = parts.get("wall");
  for (const outer of ["diameter", "rim", "belly", "neck", "foot"] as const) {
    const width = parts.get(outer);
    if (wall === undefined || width === undefined || 2 * wall < width) continue;
    faults.add("/fired/wall", `Two walls of ${say(wall)} fill a ${outer} of ${say(width)}. Check their units.`);
    break;
  }
  const [floor, height] = [parts.get("floor"), parts.get("height")];
  if (floor !== undefined && height !== undefined && floor >= height) {
    faults.add("/fired/floor", `A floor of ${say(floor)} fills a pot ${say(height)} tall. Check their units.`);
  }
  return parts;
}
