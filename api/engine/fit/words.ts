/** Numbers as a potter reads them: rounded to what they are worth, with unit and true minus. @module */

const MINUS = "\u2212";
const GAP = "\u00a0";

/** @example signed(-35.4) // "−35" */
export function signed(value: number, decimals = 0): string {
  const text = Math.abs(value).toFixed(decimals);
  if (Number(text) === 0) return text;
  return value < 0 ? `${MINUS}${text}` : `+${text}`;
}

/** Stress to 1 MPa, sign always on. @example megapascal(27.3e6) // "+27 MPa" */
export function megapascal(pascal: number): string {
  return `${signed(pascal / 1e6)}${GAP}MPa`;
}

/** Temperature to 5 °C. @example celsius(683) // "685 °C" */
export function celsius(c: number): string {
  return `${Math.round(c / 5) * 5}${GAP}°C`;
}

/** Unit of expansion in sentences; fields keep 1e-6/K. */
export const PER_KELVIN = `${GAP}×10⁻⁶/K`;

/** Expansion to 0.01. @example expansion(6.424) // "6.42 ×10⁻⁶/K" */
export function expansion(value: number): string {
  return `${value < 0 ? MINUS : ""}${Math.abs(value).toFixed(2)}${PER_KELVIN}`;
}

/** Strain to 0.001 %, without sign. @example percent(0.000312) // "0.031 %" */
export function percent(strain: number): string {
  return `${Math.abs(strain * 100).toFixed(3)}${GAP}%`;
}

/** @example millimetres(0.3) // "0.30 mm" */
export function millimetres(mm: number): string {
  return `${mm.toFixed(2)}${GAP}mm`;
}

const NUMBERS = [
  "none",
  "one",
  "two",
  "three",
  "four",
  "five",
  "six",
  "seven",
  "eight",
  "nine",
  "ten",
  "eleven",
  "twelve",
];

/** Small whole numbers as words. @example inWords(9) // "nine" */
export function inWords(n: number): string {
  return NUMBERS[n] ?? String(n);
}

/** Chances in twenty, ends said as what they are. @example chances(20) // "more than 19 in 20" */
export function chances(of20: number): string {
  if (of20 >= 20) return "more than 19 in 20";
  if (of20 <= 0) return "less than 1 in 20";
  return `about ${of20} in 20`;
}

/** @example years(1) // "1 year" */
export function years(n: number): string {
  return `${n} ${n === 1 ? "year" : "years"}`;
}

/** First letter large. @example sentence("nine of 20") // "Nine of 20" */
export function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
