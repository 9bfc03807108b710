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
 * @param path - keys from the root of the request
 * @example nameOf(["glaze", "recipe", 2]) // "Item 3 of `recipe`"
 */
export function nameOf(path: readonly PropertyKey[]): string {
  const key = path.at(-1);
  if (key === undefined) return "The request";
  if (typeof key !== "number") return `\`${shorten(String(key))}\``;
  return path.length > 1
    ? `Item ${key + 1} of ${nameOf(path.slice(0, -1)).replace("The request", "the request")}`
    : `Item ${key + 1}`;
}
