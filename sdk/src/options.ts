/** What a client and a call can be told. @module */

import type { Deprecation } from "./deprecation.ts";

/** A `fetch`, or anything that answers like one: the app of an embedded service, for example. */
export type FetchLike = (url: string, init: RequestInit) => Promise<Response> | Response;

/** How one client reaches the service. */
export interface ClientOptions {
  /**
   * Address of the service, with any path in front of `/v1`.
   * @default "http://localhost:4600"
   */
  baseUrl?: string | undefined;
  /**
   * Stands in for the runtime's `fetch`; see "In process" in the README.
   * @default globalThis.fetch
   */
  fetch?: FetchLike | undefined;
  /** Node only: an undici `Agent`, `Pool` or `ProxyAgent` that carries the connections. Others ignore it. */
  dispatcher?: object | undefined;
  /**
   * How long each try may take to answer; for streams, how long the next answer may take.
   * @unit milliseconds
   * @default 30000
   */
  timeoutMs?: number | undefined;
  /**
   * Tries after the first, on 408, 429, 502, 503, 504 and failed connections.
   * @default 2
   */
  maxRetries?: number | undefined;
  /** Sent as `Authorization: Bearer …`, for services that ask for a key. */
  apiKey?: string | undefined;
  /** Sent with every request. */
  headers?: Readonly<Record<string, string>> | undefined;
  /**
   * Told of every answer from a call that is on its way out, streams included.
   * @default one `console.warn` for each such call
   */
  onDeprecated?: ((deprecation: Deprecation) => void) | undefined;
  /**
   * Source of numbers in [0, 1) for the spread of retries.
   * @default Math.random
   */
  random?: (() => number) | undefined;
  /** Waits between tries [ms]; tests put a clock of their own here. */
  sleep?: ((ms: number) => Promise<void>) | undefined;
}

/** What one call can be told; each wins over the client's own. */
export interface CallOptions {
  /** Ends the call, its retries and its stream: the call throws `AbortedError`. */
  signal?: AbortSignal | undefined;
  /**
   * How long each try may take to answer; for streams, how long the next answer may take.
   * @unit milliseconds
   */
  timeoutMs?: number | undefined;
  /** Tries after the first. */
  maxRetries?: number | undefined;
  /** Sent with this request. */
  headers?: Readonly<Record<string, string>> | undefined;
}
