/** Gathers the lines of a stream into windows, each small enough to send and to send again. @module */
import type { Deadline } from "./deadline.ts";

/** First window, so that the first answer comes soon; each next one is four times as long, up to the most. */
const FIRST_LINES = 16;
const MOST_LINES = 256;
const MOST_CHARACTERS = 128 * 1024;
/** A source that pauses this long has its lines sent as they are [ms]. */
const LULL_MS = 20;

const LULL = Symbol("lull");

/**
 * Windows of NDJSON lines. Reads the source only as far as the window at hand, so a slow taker slows the source.
 * @param source - things to send, each one line of JSON
 * @param deadline - ends the wait for the source
 */
export async function* windows(
  source: Iterable<unknown> | AsyncIterable<unknown>,
  deadline: Deadline,
): AsyncGenerator<string[], void, undefined> {
  const iterator = iteratorOf(source);
  let coming: Promise<IteratorResult<unknown>> | undefined;
  let most = FIRST_LINES;
  let ended = false;
  try {
    while (!ended) {
      const lines: string[] = [];
      for (let characters = 0; lines.length < most && characters < MOST_CHARACTERS; ) {
        coming ??= ask(iterator);
        const next: IteratorResult<unknown> | typeof LULL = await deadline.until(
          lines.length === 0 ? coming : orLull(coming),
        );
        if (next === LULL) break;
        coming = undefined;
        ended = next.done === true;
        if (ended) break;
        const line = `${JSON.stringify(next.value)}\n`;
        characters += line.length;
        lines.push(line);
      }
      if (lines.length > 0) yield lines;
      most = Math.min(MOST_LINES, most * 4);
    }
  } finally {
    // Not waited for: a source that hangs in next() would hang in return() too.
    if (!ended) Promise.resolve(iterator.return?.()).catch(() => {});
  }
}

function iteratorOf(source: Iterable<unknown> | AsyncIterable<unknown>): AsyncIterator<unknown> | Iterator<unknown> {
  return Symbol.asyncIterator in source ? source[Symbol.asyncIterator]() : source[Symbol.iterator]();
}

async function ask(iterator: AsyncIterator<unknown> | Iterator<unknown>): Promise<IteratorResult<unknown>> {
  return iterator.next();
}

function orLull<T>(coming: Promise<T>): Promise<T | typeof LULL> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(resolve, LULL_MS, LULL);
    coming.then(resolve, reject).finally(() => clearTimeout(timer));
  });
}
