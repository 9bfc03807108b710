/** The lens: the only magnifier, over the gap at 20 °C. @module */
import { PREFIX, px, type Sheet } from "../marks/sheet.ts";
import { textWidth } from "../marks/text-width.ts";
import type { Tint } from "../marks/theme.ts";

/** What the lens looks at, in pixels of the picture. */
export interface Gap {
  /** Cold end of the curves. */
  x: number;
  clay: number;
  glaze: number;
}

/** A lens as placed. */
export interface Lens {
  x: number;
  y: number;
  r: number;
  /** How many times larger. */
  power: number;
}

/**
 * Largest lens that fits between the top right corner and the curves.
 * @param top - highest place for its rim; `right` its rightmost [px]
 * @param free - lowest free place at an abscissa [px]
 * @returns undefined where the gap is plain to see or the room too small
 */
export function placeLens(
  gap: Gap,
  top: number,
  right: number,
  largest: number,
  free: (x: number) => number,
): Lens | undefined {
  const tall = Math.abs(gap.clay - gap.glaze);
  for (let r = largest; r >= 36; r -= 4) {
    const power = Math.min(8, (0.9 * r) / Math.max(tall, 1));
    if (power < 2.5) return undefined;
    const lens: Lens = { x: right - r - 2, y: top + r, r, power: Math.floor(power * 2) / 2 };
    if (fits(lens, free)) return lens;
  }
  return undefined;
}

function fits({ x, y, r }: Lens, free: (x: number) => number): boolean {
  for (let i = -8; i <= 8; i++) {
    const dx = (r * i) / 8;
    if (y + Math.sqrt(r * r - dx * dx) + 6 > free(x + dx)) return false;
  }
  return true;
}

/**
 * Draws the lens and what is seen in it.
 * @param draw - draws the curves at a magnification, from an abscissa on
 */
export function drawLens(
  sheet: Sheet,
  lens: Lens,
  gap: Gap,
  tint: Tint,
  draw: (power: number, dx: number, dy: number, from: number) => void,
): void {
  const { x, y, r, power } = lens;
  const middle = (gap.clay + gap.glaze) / 2;
  const small = Math.max((r / power) * 0.72, Math.abs(gap.clay - gap.glaze) / 2 + 4);
  const { size } = sheet;
  // Room for the words within the rim, at the height where they stand.
  const reach = Math.sqrt(Math.max(0, r * r - ((Math.abs(gap.clay - gap.glaze) * power) / 2 + size) ** 2));
  const offset = Math.min(r * 0.1, reach - 22 - textWidth("glaze", size, true));
  const angle = Math.atan2(y - middle, x - gap.x);
  const from = [gap.x + small * Math.cos(angle), middle + small * Math.sin(angle)];
  const to = [x - r * Math.cos(angle), y - r * Math.sin(angle)];
  sheet.circle(gap.x, middle, small, { stroke: "ink", width: 1.25 });
  sheet.path(`M${px(from[0]!)} ${px(from[1]!)}L${px(to[0]!)} ${px(to[1]!)}`, { stroke: "ink", width: 1.25 });
  const clip = sheet.define(
    "lens",
    () => `<clipPath id="%ID%"><circle cx="${px(x)}" cy="${px(y)}" r="${px(r)}"/></clipPath>`,
  );
  sheet.circle(x, y, r, { fill: "sheet" });
  sheet.raw(`<g clip-path="url(#${PREFIX}-${clip})">`);
  draw(power, x + offset - 2 - power * gap.x, y - power * middle, x - r);
  sheet.raw("</g>");
  sheet.circle(x, y, r, { stroke: "ink", width: 2 });

  const [clay, glaze] = [y + (gap.clay - middle) * power, y + (gap.glaze - middle) * power];
  const at = x + offset + 4;
  sheet.path(`M${px(at)} ${px(clay)}h10M${px(at + 5)} ${px(clay)}V${px(glaze)}M${px(at)} ${px(glaze)}h10`, {
    stroke: tint,
    width: 2,
  });
  // Words keep a line apart even where the gap is next to nothing.
  const spread = Math.max(0, (size + 3 - Math.abs(clay - glaze)) / 2) * (clay <= glaze ? 1 : -1);
  sheet.text(at + 14, clay - spread + size * 0.34, "clay", { size, bold: true });
  sheet.text(at + 14, glaze + spread + size * 0.34, "glaze", { size, bold: true });
}
