/**
 * One JSON a line in, one JSON a line out, in order, holding no more than it must.
 *
 * The reader pulls: a chunk is read only when the caller of the answer wants more, so a slow caller slows the sender
 * down instead of filling memory. What waits at any time is one chunk in, one line and one chunk out.
 *
 * @module
 */

/** Longest line [bytes]. */
export const MAX_LINE_BYTES = 64 * 1024;
/** An answer is sent on once it holds this much [characters]: many lines a chunk, for speed. */
const CHUNK_CHARACTERS = 64 * 1024;
/** After this many lines others get a turn: one bulk question must not hold up every other caller. */
const LINES_A_TURN = 64;

const NEWLINE = 10;

/** What answers lines. Neither may throw. */
export interface LineHandler {
  /** Answers one line's text with one JSON text, without the newline. */
  answer(text: string, line: number): string;
  /** Answers a line over {@link MAX_LINE_BYTES}, whose text was let go. */
  tooLong(line: number): string;
}

/**
 * Answers a stream of lines. Empty lines are passed over but counted.
 * @param body - the request's bytes
 * @param handler - answers each line
 */
export function answerLines(body: ReadableStream<Uint8Array>, handler: LineHandler): ReadableStream<Uint8Array> {
  const reader = body.getReader();
  const encoder = new TextEncoder();
  const work = new LineWork(handler);
  return new ReadableStream<Uint8Array>(
    {
      async pull(controller) {
        for (;;) {
          const out = work.run();
          if (out) {
            controller.enqueue(encoder.encode(out));
            await turn();
            return;
          }
          const { done, value } = await reader.read();
          if (!done) {
            work.add(value);
            continue;
          }
          const last = work.finish();
          if (last) controller.enqueue(encoder.encode(last));
          controller.close();
          return;
        }
      },
      async cancel(reason) {
        await reader.cancel(reason).catch(() => {});
      },
    },
    { highWaterMark: 0 },
  );
}

/** Lets timers, sockets and other requests have their go. */
const turn: () => Promise<void> =
  typeof setImmediate === "function"
    ? () => new Promise((resolve) => setImmediate(resolve))
    : () => new Promise((resolve) => setTimeout(resolve));

/** Bytes in, answered lines out. */
class LineWork {
  private readonly handler: LineHandler;
  private readonly decoder = new TextDecoder();
  private chunk: Uint8Array = new Uint8Array(0);
  private at = 0;
  /** Start of a line whose end has not come yet. */
  private held: Uint8Array[] = [];
  private heldBytes = 0;
  private line = 0;

  constructor(handler: LineHandler) {
    this.handler = handler;
  }

  add(chunk: Uint8Array): void {
    this.chunk = chunk;
    this.at = 0;
  }

  /** Answers some of the lines at hand; "" when more bytes are needed. */
  run(): string {
    let out = "";
    for (let count = 0; count < LINES_A_TURN && out.length < CHUNK_CHARACTERS; count++) {
      const end = this.chunk.indexOf(NEWLINE, this.at);
      if (end < 0) {
        this.hold(this.chunk.subarray(this.at));
        this.chunk = new Uint8Array(0);
        this.at = 0;
        break;
      }
      const piece = this.chunk.subarray(this.at, end);
      this.at = end + 1;
      out += this.take(piece);
    }
    return out;
  }

  /** The last line may lack its newline. */
  finish(): string {
    return this.heldBytes ? this.take(new Uint8Array(0)) : "";
  }

  private hold(piece: Uint8Array): void {
    if (piece.length === 0) return;
    this.heldBytes += piece.length;
    if (this.heldBytes > MAX_LINE_BYTES) this.held = [];
    else this.held.push(piece);
  }

  private take(piece: Uint8Array): string {
    this.line += 1;
    const bytes = this.heldBytes + piece.length;
    const held = this.held;
    this.held = [];
    this.heldBytes = 0;
    if (bytes > MAX_LINE_BYTES) return `${this.handler.tooLong(this.line)}\n`;
    const text = this.decoder.decode(held.length ? join([...held, piece], bytes) : piece);
    return text.trim() === "" ? "" : `${this.handler.answer(text, this.line)}\n`;
  }
}

function join(pieces: Uint8Array[], length: number): Uint8Array {
  const whole = new Uint8Array(length);
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
