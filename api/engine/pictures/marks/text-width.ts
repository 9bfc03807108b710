/**
 * How wide a text will be, without a screen to measure it on.
 *
 * Advance widths are the larger of two faces for each letter: the pages' own sans and a common metric-compatible sans
 * that stands in for it, so that a picture laid out here fits wherever it is shown.
 *
 * @module
 */

/** Widths of the characters from space to tilde [1/100 em]. */
const REGULAR = [
  28, 29, 35, 65, 59, 92, 73, 19, 33, 33, 48, 61, 28, 36, 28, 39, 65, 56, 56, 58, 61, 59, 60, 56, 62, 60, 28, 28, 58,
  63, 58, 56, 102, 67, 67, 72, 72, 67, 61, 78, 72, 39, 51, 67, 56, 83, 72, 78, 67, 78, 72, 67, 61, 72, 67, 94, 67, 67,
  61, 32, 39, 34, 55, 56, 33, 56, 57, 50, 56, 56, 31, 56, 56, 25, 24, 50, 26, 84, 56, 56, 57, 57, 35, 50, 33, 56, 50,
  72, 50, 50, 50, 34, 26, 34, 58,
];
const BOLD = [
  31, 33, 47, 76, 61, 97, 72, 24, 34, 34, 48, 60, 28, 37, 28, 44, 66, 56, 58, 60, 62, 61, 63, 56, 62, 57, 33, 33, 58,
  61, 58, 61, 98, 72, 72, 72, 72, 67, 61, 78, 72, 42, 56, 72, 61, 86, 72, 78, 67, 78, 72, 67, 61, 72, 67, 94, 68, 67,
  62, 34, 44, 34, 58, 56, 33, 56, 61, 56, 61, 56, 36, 61, 61, 30, 28, 56, 32, 89, 61, 61, 61, 61, 39, 56, 38, 61, 56,
  78, 56, 56, 50, 39, 28, 39, 58,
];
/** The few others that the product's words use; anything else is taken for a wide one. */
const OTHERS: Readonly<Record<string, number>> = {
  "\u2212": 61,
  "°": 40,
  "·": 33,
  "×": 58,
  "’": 28,
  "–": 56,
  "\u00a0": 31,
  "\u2009": 20,
  "…": 100,
};
const WIDE = 105;

/**
 * Width of a line of text.
 * @param text - as shown, not escaped
 * @param size - font size [px]
 * @param bold - weight 600 and above
 * @returns width [px], rather too wide than too narrow
 * @example textWidth("+29 MPa", 14, true) // 60.2
 */
export function textWidth(text: string, size: number, bold = false): number {
  const table = bold ? BOLD : REGULAR;
  let sum = 0;
  for (const letter of text) sum += table[letter.charCodeAt(0) - 32] ?? OTHERS[letter] ?? WIDE;
  return (sum * size) / 100;
}

/**
 * Breaks words into lines no wider than a limit; a single word that is too wide is cut with an ellipsis.
 * @param text - words parted by spaces
 * @param limit - [px]
 * @param size - font size [px]
 * @example wrap("the skin is too small", 80, 14) // ["the skin is", "too small"]
 */
export function wrap(text: string, limit: number, size: number, bold = false): string[] {
  const greedy = fill(text, limit, size, bold);
  // The same number of lines, evened out: a last line of one word reads badly.
  for (let share = 0.5; share < 1 && greedy.length > 1; share += 0.05) {
    const even = fill(text, limit * share, size, bold);
    if (even.length === greedy.length && even.every((line) => textWidth(line, size, bold) <= limit)) return even;
  }
  return greedy.map((line) => shorten(line, limit, size, bold));
}

function fill(text: string, limit: number, size: number, bold: boolean): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && textWidth(longer, size, bold) > limit) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return [...lines, line];
}

/** Cuts a text to a width, with an ellipsis in place of what is lost. @example shorten("Hoarfrost", 40, 14) // "Hoa…" */
export function shorten(text: string, limit: number, size: number, bold = false): string {
  if (textWidth(text, size, bold) <= limit) return text;
  const letters = [...text];
  while (letters.length > 0 && textWidth(`${letters.join("")}…`, size, bold) > limit) letters.pop();
  return `${letters.join("").trimEnd()}…`;
}
