/** Numbers with fractions, as they stand on a tape measure. @module */

const SIGNS: Readonly<Record<string, number>> = {
  "½": 1 / 2,
  "⅓": 1 / 3,
  "⅔": 2 / 3,
  "¼": 1 / 4,
  "¾": 3 / 4,
  "⅛": 1 / 8,
  "⅜": 3 / 8,
  "⅝": 5 / 8,
  "⅞": 7 / 8,
};
const SIGN = Object.keys(SIGNS).join("");
const DECIMAL = /^(?:\d+(?:\.\d*)?|\.\d+)$/;
const FRACTION = /^(\d+) ?[/⁄] ?(\d+)$/;
const MIXED = /^(\d+)(?: |-| - )(\d+) ?[/⁄] ?(\d+)$/;
const SIGNED = new RegExp(`^(\\d*) ?([${SIGN}])$`);

/**
 * Reads a number of 0 or more: decimal, fraction, whole and fraction, or with a fraction sign.
 * @param text - without a unit; single blanks
 * @returns the number [-], or undefined where it is none
 * @example readNumber("3 1/2") // 3.5
 */
export function readNumber(text: string): number | undefined {
  if (DECIMAL.test(text)) return Number(text);
  const mixed = MIXED.exec(text);
  if (mixed) return over(Number(mixed[2]), Number(mixed[3]), Number(mixed[1]));
  const fraction = FRACTION.exec(text);
  if (fraction) return over(Number(fraction[1]), Number(fraction[2]), 0);
  const signed = SIGNED.exec(text);
  return signed ? Number(signed[1]) + SIGNS[signed[2]!]! : undefined;
}

function over(top: number, bottom: number, whole: number): number | undefined {
  return bottom > 0 ? whole + top / bottom : undefined;
}

/** Whether a text has a fraction in it, rather than a plain decimal. */
export const hasFraction = (text: string): boolean => /[/⁄]/.test(text) || [...text].some((sign) => sign in SIGNS);

/** The number and what follows it, parted; blanks made single. */
export function partNumber(text: string): { number: string; rest: string } {
  const plain = text.replace(/\s+/g, " ");
  let end = 0;
  while (end < plain.length && (/[\d.,/⁄ \-−+]/.test(plain[end]!) || plain[end]! in SIGNS)) end += 1;
  return { number: plain.slice(0, end).trim(), rest: plain.slice(end).trim().toLowerCase() };
}
