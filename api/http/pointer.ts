/** JSON Pointers (RFC 6901). @module */

/**
 * A path of keys as a JSON Pointer; `~` and `/` inside keys are escaped.
 * @example toPointer(["recipe", 2, "a/b"]) // "/recipe/2/a~1b"
 */
export function toPointer(path: readonly PropertyKey[]): string {
  return path.map((key) => `/${shorten(String(key), 60).replaceAll("~", "~0").replaceAll("/", "~1")}`).join("");
}

/** Cuts text from the request before it is shown back, so that an answer never grows with a hostile question. */
export function shorten(text: string, length = 40): string {
  return text.length <= length ? text : `${text.slice(0, length - 1)}…`;
}

/**
 * What a field is called in a sentence.
 * @example nameOf(2) // "Item 3"
 */
export function nameOf(key: PropertyKey | undefined): string {
  if (key === undefined) return "The request";
  return typeof key === "number" ? `Item ${key + 1}` : `\`${shorten(String(key))}\``;
}
