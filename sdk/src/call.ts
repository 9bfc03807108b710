/** What a method gives back: a promise of the answer, with the response on request. @module */
import type { WithResponse } from "./transport.ts";

/**
 * A call under way. `await` it for the answer; `withResponse()` gives status, headers and request id too.
 * @example
 * const { data, requestId } = await client.health().withResponse();
 */
export class Call<T> implements Promise<T> {
  readonly [Symbol.toStringTag] = "Call";
  readonly #answer: Promise<WithResponse<T>>;

  constructor(answer: Promise<WithResponse<T>>) {
    this.#answer = answer;
  }

  /** The answer together with its response and request id. */
  withResponse(): Promise<WithResponse<T>> {
    return this.#answer;
  }

  // biome-ignore lint/suspicious/noThenProperty: a call is awaited like any promise.
  then<A = T, B = never>(
    onAnswer?: ((data: T) => A | PromiseLike<A>) | null,
    onError?: ((error: unknown) => B | PromiseLike<B>) | null,
  ): Promise<A | B> {
    return this.#answer.then(({ data }) => data).then(onAnswer, onError);
  }

  catch<B = never>(onError?: ((error: unknown) => B | PromiseLike<B>) | null): Promise<T | B> {
    return this.then(null, onError);
  }

  finally(onSettled?: (() => void) | null): Promise<T> {
    return this.then().finally(onSettled);
  }
}
