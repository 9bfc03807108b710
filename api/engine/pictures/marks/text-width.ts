/**
 * How wide a text will be, without a screen to measure it on.
 *
 * Advance widths are the largest of three faces for each letter: the pages' own sans, a common one that stands in for it,
 * and the widest that a bare machine may fall back on, so that a picture laid out here fits wherever it is shown.
 *
 * @module
 */

/** Widths of the characters from space to tilde [1/100 em]. */
const REGULAR = [
  32, 41, 46, 84, 64, 96, 78, 28, 40, 40, 50, 84, 32, 37, 32, 39, 65, 64, 64, 64, 64, 64, 64, 64, 64, 64, 34, 34, 84,
  84, 84, 56, 102, 69, 69, 73, 78, 67, 62, 78, 76, 40, 52, 67, 56, 87, 75, 79, 67, 79, 73, 67, 62, 74, 69, 99, 69, 67,
  69, 40, 39, 40, 84, 56, 50, 62, 64, 55, 64, 62, 36, 64, 64, 28, 28, 58, 28, 98, 64, 62, 64, 64, 42, 53, 40, 64, 60,
  82, 60, 60, 53, 64, 34, 64, 84,
];
const BOLD = [
  35, 46, 53, 84, 70, 101, 88, 31, 46, 46, 53, 84, 38, 42, 38, 44, 70, 70, 70, 70, 70, 70, 70, 70, 70, 70, 40, 40, 84,
  84, 84, 62, 100, 78, 77, 74, 84, 69, 69, 83, 84, 43, 57, 78, 64, 100, 84, 86, 74, 86, 78, 73, 69, 82, 78, 111, 78, 73,
  73, 46, 44, 46, 84, 56, 50, 68, 72, 60, 72, 68, 44, 72, 72, 35, 35, 67, 35, 105, 72, 69, 72, 72, 50, 60, 48, 72, 66,
  93, 65, 66, 59, 72, 37, 72, 84,
];
/** The few others that the product's words use; anything else is taken for a wide one. */
const OTHERS: Readonly<Record<string, number>> = {
  "\u2212": 84,
  "°": 50,
  "·": 38,
  "×": 84,
  "’": 38,
  "–": 56,
  "\u00a0": 35,
  "\u2009": 21,
  "…": 100,
};
const WIDE = 105;

/**
 * Width of a line of text.
 * @param text - as shown, not escaped
 * @param size - font size [px]
 * @param bold - weight 600 and above
 * @returns width [px], rather too wide than too narrow
 * @example textWidth("+29 MPa", 14, true) // 70.14
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

/** Cuts a text to a width, with an ellipsis in place of what is lost. @example shorten("Hoarfrost", 40, 14) // "Ho…" */
export function shorten(text: string, limit: number, size: number, bold = false): string {
  if (textWidth(text, size, bold) <= limit) return text;
  const letters = [...text];
  while (letters.length > 0 && textWidth(`${letters.join("")}…`, size, bold) > limit) letters.pop();
  return `${letters.join("").trimEnd()}…`;
}
