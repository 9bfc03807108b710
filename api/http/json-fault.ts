/**
 * Where a text stops being JSON, in line and column, the same on every runtime. Only run once parsing has failed.
 *
 * @module
 */
import { MAX_DEPTH } from "./inspect.ts";

const SPACE = /[ \t\n\r]*/y;
const LITERAL = /true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
// biome-ignore lint/suspicious/noControlCharactersInRegex: JSON forbids bare control characters in strings.
const STRING = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y;

const END = "the end";

/** What is wrong and where. */
interface Fault {
  at: number;
  wanted: string;
}

/**
 * A sentence that says where the text stops being JSON.
 * @param text - a text that `JSON.parse` refused
 * @example describeFault('{"parts": 4,5}') // "Line 1, column 13: I wanted a field name in double quotes and found `5`…"
 */
export function describeFault(text: string): string {
  if (text.trim() === "") return "The request has no content. Send a JSON object.";
  const fault = findFault(text);
  const before = text.slice(0, fault.at);
  const line = before.split("\n").length;
  const column = fault.at - before.lastIndexOf("\n");
  return `Line ${line}, column ${column}: ${say(text, fault)}${hint(text, fault.at)}`;
}

/**
 * The same for one line of many, which knows its column only: the answer beside it says which line it was.
 * @param text - a line that `JSON.parse` refused
 * @example describeLineFault('{"glaze": {') // "Column 12: I wanted a field name in double quotes, and the text ended. Each …"
 */
export function describeLineFault(text: string): string {
  const fault = findFault(text);
  const torn = fault.at >= text.trimEnd().length || fault.wanted === END;
  const slip = hint(text, fault.at) || (torn ? " Each question stands whole on a line of its own." : "");
  return `Column ${fault.at + 1}: ${say(text, fault)}${slip}`;
}

function say(text: string, { at, wanted }: Fault): string {
  const near = text.slice(at, at + 8).split(/[\r\n]/)[0] ?? "";
  const found = at >= text.length ? "the text ended" : `found ${JSON.stringify(near)}`;
  return `I wanted ${wanted}, and ${found}.`;
}

/** The usual slips. */
function hint(text: string, at: number): string {
  const rest = text.slice(at, at + 8);
  const before = text.slice(Math.max(0, at - 20), at).trimEnd();
  if (/^(NaN|-?Infinity)/.test(rest)) return " A number must be a number: leave the field out if you don't know it.";
  if (rest.startsWith("'")) return " JSON takes double quotes.";
  if (rest.startsWith("//") || rest.startsWith("/*")) return " JSON has no comments.";
  if (before.endsWith(",") && /^[}\]]/.test(rest)) return " Take out the comma before it.";
  if (/\d,$/.test(before) && /^\d/.test(rest)) return " A decimal comma? Write a point.";
  if (/(^|[^\d.])0$/.test(before) && /^\d/.test(rest))
    return " No number begins with 0. For a cone, give the peak in °C.";
  return "";
}

function findFault(text: string): Fault {
  let at = 0;
  const eat = (pattern: RegExp): boolean => {
    pattern.lastIndex = at;
    const found = pattern.test(text);
    if (found) at = pattern.lastIndex;
    return found;
  };
  const skip = () => eat(SPACE);
  const take = (character: string): boolean => {
    skip();
    if (text[at] !== character) return false;
    at += 1;
    return true;
  };
  const pairOrItem = (close: string): void => {
    if (close === "]") return;
    skip();
    if (!eat(STRING)) fail("a field name in double quotes");
    if (!take(":")) fail("a colon");
  };
  const fail = (wanted: string): never => {
    throw { at, wanted } satisfies Fault;
  };
  const value = (depth: number): void => {
    skip();
    const close = text[at] === "{" ? "}" : text[at] === "[" ? "]" : undefined;
    if (close === undefined) {
      if (!eat(STRING) && !eat(LITERAL)) fail("a value");
      return;
    }
    // Deeper text is refused for its depth anyway; the limit keeps this walk off the end of the stack.
    if (depth > MAX_DEPTH * 4) fail("less nesting");
    at += 1;
    if (take(close)) return;
    do {
      pairOrItem(close);
      value(depth + 1);
    } while (take(","));
    if (!take(close)) fail(`a comma or ${close}`);
  };
  try {
    value(0);
    skip();
    return { at, wanted: END };
  } catch (fault) {
    skip();
    return { at, wanted: (fault as Fault).wanted };
  }
}
