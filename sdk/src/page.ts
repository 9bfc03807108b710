/** Lists: one page when awaited, everything when iterated. @module */
import { Call } from "./call.ts";
import type { CallOptions } from "./options.ts";
import type { Transport } from "./transport.ts";

/** One page of a list. */
export interface Page<T> {
  data: T[];
  /** Where the next page starts; null on the last. */
  nextCursor: string | null;
}

type Query = Readonly<Record<string, string | number | boolean | undefined>>;

/**
 * A list under way. `await` gives one page; `for await` goes through all pages, fetching each when it is needed.
 * @example
 * for await (const material of client.materials.list()) console.log(material.id);
 */
export class ListCall<T> extends Call<Page<T>> implements AsyncIterable<T> {
  readonly #transport: Transport;
  readonly #path: string;
  readonly #query: Query;
  readonly #options: CallOptions | undefined;

  constructor(transport: Transport, path: string, query: Query = {}, options?: CallOptions) {
    super(transport.json<Page<T>>({ method: "GET", path: path + search(query) }, options));
    this.#transport = transport;
    this.#path = path;
    this.#query = query;
    this.#options = options;
  }

  async *[Symbol.asyncIterator](): AsyncGenerator<T, void, undefined> {
    let { data: page } = await this.withResponse();
    yield* page.data;
    while (page.nextCursor !== null && page.nextCursor !== undefined) {
      const path = this.#path + search({ ...this.#query, cursor: page.nextCursor });
      page = (await this.#transport.json<Page<T>>({ method: "GET", path }, this.#options)).data;
      yield* page.data;
    }
  }
}

/** Query string of the given fields; fields left undefined are left out. */
function search(query: Query): string {
  const given = Object.entries(query).filter(([, value]) => value !== undefined);
  return given.length === 0 ? "" : `?${new URLSearchParams(given.map(([name, value]) => [name, String(value)]))}`;
}
