/** One abort signal out of the caller's signal and a clock, and one typed error for each. @module */
import { AbortedError, ConnectionError, RingtrueError, TimeoutError } from "./errors.ts";

/**
 * Ends one try when the caller aborts or the time is up. `race` gives up at once even where a custom `fetch`
 * ignores its signal. The caller's signal is listened to and let go of by hand: a long-lived signal shared by
 * thousands of calls must not gather listeners.
 */
export class Deadline {
  readonly #controller = new AbortController();
  readonly #outer: AbortSignal | undefined;
  readonly #timeoutMs: number;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(timeoutMs: number, outer?: AbortSignal) {
    this.#timeoutMs = timeoutMs;
    this.#outer = outer;
    if (outer?.aborted) this.#onOuterAbort();
    else outer?.addEventListener("abort", this.#onOuterAbort, { once: true });
    this.restart();
  }

  /** Signal to hand to `fetch`. */
  get signal(): AbortSignal {
    return this.#controller.signal;
  }

  /** Starts the clock anew: the answer is alive. */
  restart(): void {
    this.pause();
    if (this.signal.aborted || !Number.isFinite(this.#timeoutMs)) return;
    this.#timer = setTimeout(() => {
      this.#controller.abort(new TimeoutError(`No answer within ${this.#timeoutMs} ms.`));
    }, this.#timeoutMs);
  }

  /** Stops the clock: from here on nothing is waited for. */
  pause(): void {
    clearTimeout(this.#timer);
  }

  /** Lets go of timer and listener; call it when the try is over. */
  close(): void {
    this.pause();
    this.#outer?.removeEventListener("abort", this.#onOuterAbort);
  }

  /** Ends the try now and drops its connection. */
  abort(): void {
    this.close();
    this.#controller.abort(new AbortedError("The call was ended."));
  }

  /** The outcome of network `work`, or the reason why it was not waited for. Every failure comes out typed. */
  async race<T>(work: Promise<T> | T): Promise<T> {
    try {
      return await this.until(work);
    } catch (error) {
      if (this.signal.aborted) throw this.signal.reason;
      if (error instanceof RingtrueError) throw error;
      throw new ConnectionError(`The connection failed: ${reasonOf(error)}.`, { cause: error });
    }
  }

  /** The outcome of `work` as it is, unless the deadline comes first. Leaves nothing behind on the signal. */
  until<T>(work: Promise<T> | T): Promise<T> {
    const { signal } = this;
    return new Promise<T>((resolve, reject) => {
      const stop = () => reject(signal.reason);
      if (signal.aborted) stop();
      signal.addEventListener("abort", stop, { once: true });
      const settled = () => signal.removeEventListener("abort", stop);
      Promise.resolve(work).then(resolve, reject).then(settled);
    });
  }

  readonly #onOuterAbort = (): void => {
    this.#controller.abort(new AbortedError("The caller ended the call.", { cause: this.#outer?.reason }));
    this.close();
  };
}

/** Runtimes hide the telling part ("ECONNREFUSED") one or two causes down. */
function reasonOf(error: unknown): string {
  let deepest = error;
  while (deepest instanceof Error && deepest.cause instanceof Error) deepest = deepest.cause;
  const text = deepest instanceof Error ? deepest.message || deepest.name : String(deepest);
  return text.replace(/\.$/, "");
}
