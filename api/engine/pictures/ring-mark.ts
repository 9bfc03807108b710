/** The ring mark of a verdict. @module */
import type { Verdict } from "../fit/types.ts";
import { RING_TINT, RINGS } from "./marks/rings.ts";
import { THEMES } from "./marks/theme.ts";
import type { ThemeName } from "./types.ts";

const SAYS: Readonly<Record<Verdict | "unknown", string>> = {
  crazes: "A ring broken in three places: it crazes.",
  "may-craze": "A ring with one gap: it may craze.",
  sound: "A whole ring: it fits.",
  "may-shiver": "A ring with one end lifting: it may shiver.",
  shivers: "A ring with three ends lifting: it shivers.",
  unknown: "A dotted ring: no verdict yet.",
};

/**
 * The ring that stands for a verdict: whole, broken or lifting; dotted where there is none yet. From 24 px up the clay
 * shows as a dotted circle inside; below, the stroke is heavier.
 * @param verdict - the answer in one word, or `unknown`
 * @param options - `theme` (light), `size` [px] (48), `decorative` where words beside it say the same
 * @returns SVG text
 * @example ringMark("sound", { size: 20 }) // <svg …><title>A whole ring: it fits.</title>…
 */
export function ringMark(
  verdict: Verdict | "unknown",
  options: { theme?: ThemeName; size?: number; decorative?: boolean } = {},
): string {
  const { theme = "light", decorative = false } = options;
  const size = Number.isFinite(options.size) ? Math.min(Math.max(options.size!, 8), 2000) : 48;
  const small = size < 24;
  const colour = THEMES[theme][RING_TINT[verdict]];
  const dots = verdict === "unknown" ? ` stroke-dasharray="3 6"` : "";
  const weight = verdict === "unknown" ? 4 : small ? 15 : 11;
  const ring = `<path d="${RINGS[verdict]}" stroke-width="${weight}"${dots}/>`;
  const clay =
    small || verdict === "unknown"
      ? ""
      : `<circle cx="50" cy="50" r="25" stroke-width="2.5" stroke-dasharray="2.5 4" opacity=".75"/>`;
  const told = decorative ? ` aria-hidden="true">` : ` role="img"><title>${SAYS[verdict]}</title>`;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="-6 -6 112 112" width="${size}" height="${size}" fill="none" stroke="${colour}"${told}${ring}${clay}</svg>`;
}
