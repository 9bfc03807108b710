/** Bulk calls: many lines in, one answer for each out, in order. @module */
import { Deadline } from "./deadline.ts";
import { ConnectionError, UnreadableAnswerError } from "./errors.ts";
import type { Problem } from "./generated/types.gen.ts";
import type { CallOptions } from "./options.ts";
import { parse, type Transport } from "./transport.ts";
import { windows } from "./windows.ts";

/** Which line an answer belongs to. */
interface LinePlace {
  /** Place in the source, from 1 [-]. */
  line: number;
  /** The line's own `id`, where it had one. */
  id?: string;
}

/** The answer to one line: a result, or what is wrong with that line. */
export type LineAnswer<T> = LinePlace & ({ result: T; error?: undefined } | { error: Problem; result?: undefined });

/**
 * Sends a source of any length and gives the answers in order.
 *
 * Lines travel in windows of text, not in one endless request body: browsers cannot send those, many proxies hold
 * them back, and a window can be sent again. The source is read one window ahead of the taker. When a connection
 * breaks, only the lines not yet answered are asked again. Leaving the loop drops the connection, which stops the
 * service's work.
 */
export async function* streamLines<T>(
  transport: Transport,
  path: string,
  source: Iterable<unknown> | AsyncIterable<unknown>,
  options: CallOptions = {},
): AsyncGenerator<LineAnswer<T>, void, undefined> {
  const whole = new Deadline(Number.POSITIVE_INFINITY, options.signal);
  let line = 0;
  try {
    for await (const window of windows(source, whole)) {
      let answered = 0;
      for (let tries = 1; answered < window.length; tries++) {
        try {
          for await (const answer of exchange<T>(transport, path, window.slice(answered), options)) {
            answered += 1;
            line += 1;
            yield { ...answer, line };
          }
        } catch (error) {
          await transport.pauseAfter(error, tries, options);
        }
      }
    }
  } finally {
    whole.close();
  }
}

/** One request and its answers, exactly one for each line. */
async function* exchange<T>(
  transport: Transport,
  path: string,
  lines: string[],
  options: CallOptions,
): AsyncGenerator<LineAnswer<T>, void, undefined> {
  const ndjson = "application/x-ndjson";
  const request = { method: "POST", path, body: lines.join(""), contentType: ndjson, accept: ndjson } as const;
  const { response, deadline } = await transport.open(request, options);
  let open = lines.length;
  try {
    for await (const text of textLines(response, deadline)) {
      const answer = parse<LineAnswer<T>>(text, response);
      if (open === 0) throw new UnreadableAnswerError("More answers came back than lines were sent.");
      open -= 1;
      yield answer;
    }
    if (open > 0) throw new ConnectionError(`The answer broke off with ${open} of ${lines.length} lines still open.`);
  } finally {
    if (open > 0)
      deadline.abort(); // Stops the service's work.
    else deadline.close();
  }
}

/** One JSON question, many lines back. Leaving the loop drops the connection, which stops the service's work. */
export async function* streamAnswers(
  transport: Transport,
  path: string,
  body: string,
  options: CallOptions,
): AsyncGenerator<{ text: string; response: Response }, void, undefined> {
  const request = { method: "POST", path, body, accept: "application/x-ndjson" } as const;
  const { response, deadline } = await transport.open(request, options);
  let ended = false;
  try {
    for await (const text of textLines(response, deadline)) yield { text, response };
    ended = true;
  } finally {
    if (ended) deadline.close();
    else deadline.abort();
  }
}

async function* textLines(response: Response, deadline: Deadline): AsyncGenerator<string, void, undefined> {
  const reader = response.body?.getReader();
  if (!reader) return;
  const decoder = new TextDecoder();
  let rest = "";
  try {
    for (;;) {
      deadline.restart();
      const { done, value } = await deadline.race(reader.read());
      deadline.pause();
      const lines = (rest + decoder.decode(value, { stream: !done })).split("\n");
      rest = done ? "" : (lines.pop() ?? "");
      for (const [at, line] of lines.entries()) {
        // Many lines arrive at once; none of them is given after the caller has had enough.
        if (deadline.signal.aborted) throw deadline.signal.reason;
        if (done && at === lines.length - 1 && isTorn(line))
          throw new ConnectionError("The answer broke off in the middle of a line.");
        if (line.trim() !== "") yield line;
      }
      if (done) return;
    }
  } finally {
    // An embedded service may not watch the signal; cancelling its stream stops it all the same.
    reader.cancel().catch(() => {});
  }
}

/** Whether a last line without its newline is the beginning of an answer: some proxies end what broke off as if it were whole. */
function isTorn(line: string): boolean {
  if (!line.startsWith("{")) return false;
  try {
    JSON.parse(line);
    return false;
  } catch {
    return true;
  }
}
