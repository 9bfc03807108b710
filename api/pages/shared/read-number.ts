/** Numbers as people type them. @module */

export interface ReadNumber {
  /** The number, or null where there is none. */
  value: number | null;
  /** Nothing was typed. */
  empty?: boolean;
  /** What was probably meant. */
  fix?: string;
}

/**
 * Reads a decimal number; comma or point, true minus, spaces between thousands.
 * @example readNumber("17,5").value // 17.5
 * @example readNumber("17..0") // { value: null, fix: "17.0" }
 * @example readNumber("1.234,5") // { value: null, fix: "1234.5" }
 */
export function readNumber(text: string): ReadNumber {
  const plain = text
    .replace(/[\s\u2009\u00a0\u202f]/g, "")
    .replace("−", "-")
    .replace(",", ".");
  if (plain === "") return { value: null, empty: true };
  if (/^-?(\d+\.?\d*|\.\d+)$/.test(plain)) return { value: Number(plain) };
  // Thousands and decimals each with a mark of their own: the last is the decimal one.
  const [, thousands, , decimals] = /^(\d{1,3}(?:([.,])\d{3})+)(?!\2)[.,](\d+)$/.exec(text.trim()) ?? [];
  if (thousands) return { value: null, fix: `${thousands.replace(/[.,]/g, "")}.${decimals}` };
  const found = /\d+(?:\.\d*)?/.exec(plain.replace(/[.,]+/g, "."))?.[0];
  return found === undefined ? { value: null } : { value: null, fix: found };
}
