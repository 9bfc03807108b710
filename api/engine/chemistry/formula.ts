/**
 * Mineral formulas as potters and mineralogists write them, read into atoms.
 *
 * @module
 */
import { ImpossibleValueError, type Issue, UnknownNameError } from "../errors.ts";
import { ATOMIC_WEIGHTS } from "./atomic-weights.ts";
import { dotParts } from "./formula-dot.ts";

/** Atoms in one formula unit: element symbol → number of atoms [-]. */
export type Atoms = Readonly<Record<string, number>>;

/** Longest formula read [characters]. */
export const MAX_FORMULA_LENGTH = 200;
/** Deepest nesting of brackets read [-]. */
export const MAX_FORMULA_DEPTH = 8;
/** Largest subscript or multiplier read [-]. */
const MAX_COUNT = 10_000;

/**
 * Atoms of a formula: elements, subscripts (whole or decimal), brackets `( )` and `[ ]`, and parts joined by a
 * raised or plain dot with a multiplier in front (`Al2O3·2SiO2·2H2O`).
 *
 * The plain dot is both decimal point and hydrate dot. Between two digits it is a decimal point
 * - inside brackets, after a 0 (`Na0.33`), before a 0 and another digit (`Al1.05`), or where nothing follows the
 *   digits (`PrO1.83`);
 * - after the subscript of an element other than O, F, Cl, S (`Al1.67Mg0.33`);
 * - where what follows is not a compound holding oxygen (`(OH)1.75F0.25`), or is oxygen or a bracketed OH itself
 *   (`O10.5(OH)1.5`);
 * - at the head of a part, in its multiplier (`·2.5H2O`).
 *
 * Otherwise it joins parts: `Al2O3.2SiO2` is Al2O3 and 2 SiO2, `Na2B4O5(OH)4.8(H2O)` holds 8 waters, and of two dots
 * in one run of digits the first joins (`CaSO4.0.5H2O`). A raised dot (`·`, `•`, `∙`, `⋅`) always joins: use it when
 * in doubt. Lower digits (₂) count as digits; blanks count only beside a dot, where they are skipped.
 *
 * @param text - the formula, at most {@link MAX_FORMULA_LENGTH} characters
 * @param pointer - where the text stands in the input, for the error
 * @returns atoms per formula unit [-]
 * @throws ImpossibleValueError when the text is no formula; UnknownNameError when a symbol is no element here
 * Source: none needed, the rule is our own; one pass, no backtracking.
 * @example parseFormula("Al2O3.2SiO2.2H2O") // { Al: 2, O: 9, Si: 2, H: 4 }
 */
export function parseFormula(text: string, pointer = ""): Atoms {
  if (typeof text !== "string" || text.trim() === "") {
    throw impossible(pointer, "A formula is missing here. Write it with element symbols, such as CaCO3.");
  }
  if (text.length > MAX_FORMULA_LENGTH) {
    throw impossible(
      pointer,
      `This formula is ${text.length} characters long; formulas are read up to ${MAX_FORMULA_LENGTH}.`,
      [MAX_FORMULA_LENGTH],
    );
  }
  const atoms: Record<string, number> = {};
  for (const part of dotParts(plainDigits(text))) readPart(part, text, pointer, atoms);
  return atoms;
}

const LOWER_DIGITS = "₀₁₂₃₄₅₆₇₈₉";

function plainDigits(text: string): string {
  return text.replace(/[₀-₉]/g, (digit) => String(LOWER_DIGITS.indexOf(digit)));
}

/** Reads `2(H2O)` or `CaMg(CO3)2` into atoms, one symbol at a time, with a stack of open brackets. */
function readPart(part: string, whole: string, pointer: string, atoms: Record<string, number>): void {
  const head = numberAt(part, 0);
  const multiplier = head ? countOf(head, whole, pointer) : 1;
  let at = head.length;
  const open: { close: string; from: number }[] = [];
  const found: { symbol: string; count: number }[] = [];
  while (at < part.length) {
    const char = part[at]!;
    if (char === "(" || char === "[") {
      if (open.length >= MAX_FORMULA_DEPTH) {
        throw impossible(pointer, `The brackets in ${quote(whole)} are nested deeper than ${MAX_FORMULA_DEPTH}.`);
      }
      open.push({ close: char === "(" ? ")" : "]", from: found.length });
      at += 1;
      continue;
    }
    const counted = char === ")" || char === "]" ? closeBracket(char, open, found.length) : symbolAt(part, at);
    if (counted === undefined) throw impossible(pointer, unreadable(char, part, whole));
    at += typeof counted === "string" ? counted.length : 1;
    const subscript = numberAt(part, at);
    at += subscript.length;
    const count = subscript ? countOf(subscript, whole, pointer) : 1;
    if (typeof counted === "string") {
      if (!ATOMIC_WEIGHTS.has(counted)) throw unknownElement(counted, whole, pointer);
      found.push({ symbol: counted, count });
    } else {
      for (let i = counted; i < found.length; i++) found[i]!.count *= count;
    }
  }
  if (open.length > 0) throw impossible(pointer, `A bracket in ${quote(whole)} is opened and never closed.`);
  if (found.length === 0) {
    throw impossible(pointer, `${quote(whole)} has a dot or number with no elements beside it.`);
  }
  for (const { symbol, count } of found) atoms[symbol] = (atoms[symbol] ?? 0) + count * multiplier;
}

/** Index of the first atom inside the bracket being closed, or undefined when it matches none or holds nothing. */
function closeBracket(char: string, open: { close: string; from: number }[], found: number): number | undefined {
  const bracket = open.pop();
  return bracket && bracket.close === char && bracket.from < found ? bracket.from : undefined;
}

function symbolAt(text: string, at: number): string | undefined {
  if (!isBetween(text[at], "A", "Z")) return undefined;
  return isBetween(text[at + 1], "a", "z") ? text.slice(at, at + 2) : text[at];
}

function numberAt(text: string, at: number): string {
  let end = at;
  while (isDigit(text[end])) end += 1;
  if (end > at && text[end] === "." && isDigit(text[end + 1])) {
    end += 1;
    while (isDigit(text[end])) end += 1;
  }
  return text.slice(at, end);
}

function countOf(digits: string, whole: string, pointer: string): number {
  const count = Number(digits);
  if (count > 0 && count <= MAX_COUNT) return count;
  throw impossible(
    pointer,
    `${quote(whole)} counts ${quote(digits)} of something; counts lie above 0 and up to ${MAX_COUNT}.`,
  );
}

const isDigit = (char: string | undefined) => isBetween(char, "0", "9");
const isBetween = (char: string | undefined, from: string, to: string) =>
  char !== undefined && char >= from && char <= to;

/** Text of a stranger inside a message: cut short, so that a message stays a sentence. */
function quote(text: string): string {
  return `“${text.length > 40 ? `${text.slice(0, 40)}…` : text}”`;
}

function unreadable(char: string, part: string, whole: string): string {
  if (char === ")" || char === "]") return `A closing bracket in ${quote(whole)} has no matching opening one.`;
  if (isBetween(part[0], "a", "z")) {
    return `${quote(whole)} is not a formula: element symbols start with a capital, as in SiO2.`;
  }
  return `${quote(whole)} is not a formula: ${quote(char)} cannot be read there. Use symbols, numbers, ( ), [ ] and dots.`;
}

function impossible(pointer: string, message: string, allowed?: number[]): ImpossibleValueError {
  const issue: Issue = { pointer, message };
  if (allowed) issue.allowed = allowed;
  return new ImpossibleValueError([issue]);
}

function unknownElement(symbol: string, whole: string, pointer: string): UnknownNameError {
  const message = `${quote(symbol)} in ${quote(whole)} is not an element that comes into glazes here. Check capitals: Co is cobalt, CO is carbon and oxygen.`;
  return new UnknownNameError([{ pointer, message }]);
}
