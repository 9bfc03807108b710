/** Lists, a page at a time. @module */
import { closest } from "../engine/errors.ts";
import { impossible } from "./problem.ts";

/** Page length where none is asked for [entries]. */
const DEFAULT_LIMIT = 100;

interface Page<T> {
  data: readonly T[];
  nextCursor: string | null;
}

/**
 * Cuts a page out of a list. A cursor names the last entry of the page before, so it stays good when entries are added.
 * @param list - the whole list, in its stable order
 * @param idOf - what names an entry
 * @param query - `limit` and `cursor` as asked for
 * @throws ProblemError (422) for a cursor that no page gave
 * @example page(["a", "b", "c"], (x) => x, { limit: 2 }) // { data: ["a", "b"], nextCursor: "after:b" }
 */
export function page<T>(
  list: readonly T[],
  idOf: (item: T) => string,
  { limit = DEFAULT_LIMIT, cursor }: { limit?: number | undefined; cursor?: string | undefined },
): Page<T> {
  const start = cursor === undefined ? 0 : list.findIndex((item) => `after:${idOf(item)}` === cursor) + 1;
  if (cursor !== undefined && start === 0) {
    const message = "No page of this list gave that cursor. Start again without one.";
    throw impossible([{ pointer: "/cursor", message }]);
  }
  const data = list.slice(start, start + limit);
  const last = data.at(-1);
  const more = start + limit < list.length && last !== undefined;
  return { data, nextCursor: more ? `after:${idOf(last)}` : null };
}

/**
 * Keeps a filter honest: a value that no entry has is refused with the nearest one.
 * @throws ProblemError (422)
 */
export function knownValue(name: string, value: string | undefined, known: readonly string[]): void {
  if (value === undefined || known.includes(value)) return;
  const suggestion = closest(value, known);
  const meant = suggestion ? ` Did you mean ${suggestion}?` : ` I know ${known.join(", ")}.`;
  throw impossible([
    {
      pointer: `/${name}`,
      message: `I don't know this ${name}.${meant}`,
      allowed: [...known],
      ...(suggestion ? { suggestion } : {}),
    },
  ]);
}
