/** How wide text is in Helvetica, one of the fonts that every PDF reader carries. @module */

/** Widths of the characters from blank to ~, in thousandths of the size (Adobe font metrics, from memory). */
const WIDTHS = [
  278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556,
  556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833,
  722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556, 333, 556, 556, 500, 556,
  556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334,
  260, 334, 584,
];

/**
 * Width of a line of text [mm]; bold is taken a tenth wider.
 * @param size - height of the letters' body [mm]
 * @example textWidth("mm", 10) // 16.66
 */
export function textWidth(text: string, size: number, bold = false): number {
  let sum = 0;
  for (const letter of text) sum += WIDTHS[letter.codePointAt(0)! - 32] ?? 600;
  return (sum * size * (bold ? 1.1 : 1)) / 1000;
}

/** Cuts a line of text to a width, with … where something is missing. */
export function fitText(text: string, size: number, widthMm: number, bold = false): string {
  if (textWidth(text, size, bold) <= widthMm) return text;
  let cut = [...text];
  while (cut.length > 0 && textWidth(`${cut.join("")}…`, size, bold) > widthMm) cut = cut.slice(0, -1);
  return `${cut.join("").trimEnd()}…`;
}

/** Breaks text into lines of at most a width. */
export function wrapText(text: string, size: number, widthMm: number): string[] {
  const lines: string[] = [];
  let current = "";
  for (const word of text.split(" ")) {
    const longer = current === "" ? word : `${current} ${word}`;
    if (current !== "" && textWidth(longer, size) > widthMm) {
      lines.push(current);
      current = word;
    } else current = longer;
  }
  return [...lines, current].map((each) => fitText(each, size, widthMm));
}
