/** Patterns: what a fill says without colour. @module */
import type { Sheet } from "./sheet.ts";

/** Stippled clay. */
export function clayFill(sheet: Sheet): { pattern: string } {
  const { clay, speck } = sheet.theme;
  const dots = [
    [3, 4, 0.9],
    [13, 2.2, 0.7],
    [18.5, 9, 1.1],
    [8, 10.5, 0.8],
    [14, 14, 0.7],
    [2, 14, 0.6],
  ].map(([x, y, r]) => `<circle cx="${x}" cy="${y}" r="${r}"/>`);
  return {
    pattern: sheet.define(
      "clay",
      () =>
        `<pattern id="%ID%" width="22" height="16" patternUnits="userSpaceOnUse"><rect width="22" height="16" fill="${clay}"/><g fill="${speck}">${dots.join("")}</g></pattern>`,
    ),
  };
}

/** Upright cracks: the crazing side. */
export function crackFill(sheet: Sheet): { pattern: string } {
  const { pull } = sheet.theme;
  return {
    pattern: sheet.define(
      "cracks",
      () =>
        `<pattern id="%ID%" width="7" height="40" patternUnits="userSpaceOnUse"><rect width="7" height="40" fill="${pull}" opacity="${sheet.print ? 0 : 0.2}"/><path d="M3.5 0l-.8 9 1.5 11-1.2 12.5.5 7.5" fill="none" stroke="${pull}" stroke-width="1.7"/></pattern>`,
    ),
  };
}

/** Low waves: the shivering side. */
export function waveFill(sheet: Sheet): { pattern: string } {
  const { push } = sheet.theme;
  return {
    pattern: sheet.define(
      "waves",
      () =>
        `<pattern id="%ID%" width="16" height="9" patternUnits="userSpaceOnUse"><rect width="16" height="9" fill="${push}" opacity="${sheet.print ? 0 : 0.16}"/><path d="M0 7q8 -8 16 0" fill="none" stroke="${push}" stroke-width="1.4"/></pattern>`,
    ),
  };
}

/** An arrowhead as a path, for fonts without arrows. @param way - −1 points left, 1 right */
export function arrow(x: number, y: number, way: -1 | 1, length = 11): string {
  const tip = x + (way * length) / 2;
  const tail = x - (way * length) / 2;
  return `M${tail} ${y}H${tip}M${tip - way * 4} ${y - 3.5}L${tip} ${y}L${tip - way * 4} ${y + 3.5}`;
}
