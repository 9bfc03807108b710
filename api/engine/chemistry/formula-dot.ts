/** Where a dot in a formula joins two parts, and where it is a decimal point. @module */

const RAISED_DOTS = "·•∙⋅";
/** Elements that end a part which can stand alone, so that a dot after them can start the next one. */
const ANIONS = new Set(["O", "F", "Cl", "S"]);

/**
 * Cuts a formula at its joining dots, by the rule told in `parseFormula`.
 * @param text - a formula with plain digits
 * @returns the parts, with the blanks beside dots removed; an empty part stands where a dot has nothing beside it
 * @example dotParts("Na2B4O5(OH)4.8(H2O)") // ["Na2B4O5(OH)4", "8(H2O)"]
 */
export function dotParts(text: string): string[] {
  const parts: string[] = [];
  let from = 0;
  let depth = 0;
  for (let at = 0; at < text.length; at++) {
    const char = text[at]!;
    if (char === "(" || char === "[") depth += 1;
    else if (char === ")" || char === "]") depth -= 1;
    else if (RAISED_DOTS.includes(char) || (char === "." && depth <= 0 && joins(text, at))) {
      parts.push(text.slice(from, at).trim());
      from = at + 1;
    }
  }
  parts.push(text.slice(from).trim());
  return parts;
}

/** Whether the plain dot at `at`, outside brackets, joins two parts. */
function joins(text: string, at: number): boolean {
  if (!isDigit(text[at - 1]) || !isDigit(text[at + 1])) return true;
  let start = at;
  while (isDigit(text[start - 1])) start -= 1;
  if (Number(text.slice(start, at)) === 0 || text[start - 1] === ".") return false;
  if (text[at + 1] === "0") return text[at + 2] === ".";
  let end = at + 1;
  while (isDigit(text[end])) end += 1;
  if (text[end] === "." && isDigit(text[end + 1])) return true;
  return endsPart(text, start) && startsCompound(text, end);
}

/** Whether an atom or bracket that can end a part has its subscript at `start`; the head of a part has none. */
function endsPart(text: string, start: number): boolean {
  const last = text[start - 1] ?? "";
  if (last === ")" || last === "]") return true;
  const symbol = last >= "a" && last <= "z" ? text.slice(start - 2, start) : last;
  return ANIONS.has(symbol);
}

/** Whether a compound that holds oxygen begins at `at`: not oxygen alone, not a bracketed OH. */
function startsCompound(text: string, at: number): boolean {
  const first = text[at];
  if (first === "O") return false;
  if (first === "(" || first === "[") return !/^OH[)\]]/.test(text.slice(at + 1, at + 4));
  for (let i = at + 1; i < text.length && text[i] !== "." && !RAISED_DOTS.includes(text[i]!); i++) {
    if (text[i] === "O") return true;
  }
  return false;
}

const isDigit = (char: string | undefined) => char !== undefined && char >= "0" && char <= "9";
