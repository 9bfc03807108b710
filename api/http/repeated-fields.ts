/**
 * Fields that an object names twice. JSON.parse keeps the last of them and says nothing, and a recipe loses a line's parts
 * unnoticed. Counting costs under a microsecond for a request; looking for the place only happens where the counts differ.
 *
 * @module
 */
import { nameOf, toPointer } from "./pointer.ts";
import type { Issue } from "./problem.ts";

const QUOTE = 34;
const COLON = 58;
const BACKSLASH = 92;

/** Where the string that begins at `start` ends. */
function endOfString(text: string, start: number): number {
  let end = text.indexOf('"', start + 1);
  for (;;) {
    let slashes = 0;
    while (text.charCodeAt(end - 1 - slashes) === BACKSLASH) slashes += 1;
    if (slashes % 2 === 0) return end;
    end = text.indexOf('"', end + 1);
  }
}

/** How many fields a text of JSON names, all levels together: its colons outside strings. */
export function fieldsNamed(text: string): number {
  let count = 0;
  for (let at = 0; at < text.length; at++) {
    const character = text.charCodeAt(at);
    if (character === QUOTE) at = endOfString(text, at);
    else if (character === COLON) count += 1;
  }
  return count;
}

/** An object or a list on the way down: what it has named, and where in it we are. */
interface Level {
  named: Set<string>;
  at: string | number;
}

/**
 * An issue for each field that stands twice in its object.
 * @param text - a text that JSON.parse took, no deeper than requests may be
 * @param most - when to stop [-]
 */
export function repeatedFields(text: string, most: number): Issue[] {
  const found = new Map<string, Issue>();
  const levels: Level[] = [];
  let string = "";
  for (let at = 0; at < text.length && found.size < most; at++) {
    const character = text[at];
    const level = levels.at(-1)!;
    if (character === "{" || character === "[") levels.push({ named: new Set(), at: 0 });
    else if (character === "}" || character === "]") levels.pop();
    else if (character === "," && typeof level.at === "number") level.at += 1;
    else if (character === '"') {
      const end = endOfString(text, at);
      string = text.slice(at, end + 1);
      at = end;
    } else if (character === ":") {
      level.at = JSON.parse(string) as string;
      if (level.named.has(level.at)) {
        const path = levels.map((one) => one.at);
        const pointer = toPointer(path);
        found.set(pointer, { pointer, message: `${nameOf(path)} is given twice. Keep one.` });
      }
      level.named.add(level.at);
    }
  }
  return [...found.values()];
}
