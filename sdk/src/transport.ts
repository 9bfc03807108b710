/** One request, tried until it is answered: address, headers, timeout, retries, problem documents. @module */
import { Deadline } from "./deadline.ts";
import { type Deprecation, deprecationOf, deprecationSentence } from "./deprecation.ts";
import { ApiError, apiError, ConnectionError, UnreadableAnswerError } from "./errors.ts";
import type { Problem } from "./generated/types.gen.ts";
import type { CallOptions, ClientOptions } from "./options.ts";
import { backoffMs, isRetryable, retryAfterMs } from "./retry.ts";

/** What to ask for. The body is text, never a stream: it can be sent again, and every runtime can send it. */
export interface ApiRequest {
  method: "GET" | "POST";
  /** Path and query, from `/v1` on. */
  path: string;
  body?: string;
  contentType?: string;
  accept?: string;
}

/** An answer whose headers have arrived. Whoever takes it closes the deadline. */
export interface Opened {
  response: Response;
  deadline: Deadline;
  deprecation: Deprecation | null;
}

/** A decoded answer with what came along. */
export interface WithResponse<T> {
  /** The decoded answer. */
  data: T;
  /** Status and headers; the body has been read. */
  response: Response;
  /** `x-request-id`, to quote when asking for help. */
  requestId: string | null;
  /** What the service says of the call's end; null for a call that stays. */
  deprecation: Deprecation | null;
}

/** Calls that this process has been warned of: once is enough, however many clients it makes. */
const warned = new Set<string>();

/** Sends requests. Shared by all resources of one client. */
export class Transport {
  readonly #options: ClientOptions;
  readonly #base: string;
  readonly #headers = new Headers({ accept: "application/json" });

  constructor(options: ClientOptions) {
    this.#options = options;
    this.#base = (options.baseUrl ?? "http://localhost:4600").replace(/\/$/, "");
    if (options.apiKey) this.#headers.set("authorization", `Bearer ${options.apiKey}`);
    setAll(this.#headers, options.headers);
  }

  /** Asks, and decodes a JSON answer. */
  json<T>(request: ApiRequest, options: CallOptions = {}): Promise<WithResponse<T>> {
    return this.retrying(options, async () => {
      const { response, deadline, deprecation } = await this.open(request, options);
      try {
        const text = await deadline.race(response.text());
        return withResponse(parse<T>(text, response), response, deprecation);
      } finally {
        deadline.close();
      }
    });
  }

  /** One try, up to the headers of a good answer. Anything else is thrown, typed. */
  async open(request: ApiRequest, options: CallOptions): Promise<Opened> {
    const deadline = new Deadline(options.timeoutMs ?? this.#options.timeoutMs ?? 30_000, options.signal);
    try {
      const response = await deadline.race(this.#fetch(request, options, deadline.signal));
      if (response.ok) return { response, deadline, deprecation: this.#deprecation(request, response) };
      // Read whole, so that the connection is free again before any retry.
      throw problemError(response, await deadline.race(response.text()));
    } catch (error) {
      deadline.close();
      throw error;
    }
  }

  /** Runs `attempt` until it succeeds, fails for good, or the retries are used up. */
  async retrying<T>(options: CallOptions, attempt: () => Promise<T>): Promise<T> {
    for (let tries = 1; ; tries++) {
      try {
        return await attempt();
      } catch (error) {
        await this.pauseAfter(error, tries, options);
      }
    }
  }

  /** Waits before the next try; throws `error` on when there must be none. */
  async pauseAfter(error: unknown, tries: number, options: CallOptions): Promise<void> {
    const { random = Math.random, sleep = sleepFor } = this.#options;
    const most = options.maxRetries ?? this.#options.maxRetries ?? 2;
    const wait = tries > most || !mayPass(error) ? null : backoffMs(tries, waitAskedBy(error), random);
    if (wait === null) throw error;
    const patience = new Deadline(Number.POSITIVE_INFINITY, options.signal);
    try {
      await patience.until(sleep(wait));
    } finally {
      patience.close();
    }
  }

  /** Reads what is said of the call's end, and tells whoever wants to know; once on the console where nobody does. */
  #deprecation({ method, path }: ApiRequest, { headers }: Response): Deprecation | null {
    const deprecation = deprecationOf(`${method} ${path.split("?")[0]}`, headers);
    if (!deprecation) return null;
    const { onDeprecated } = this.#options;
    const place = path.split(/[/?]/, 3).join("/");
    if (onDeprecated) onDeprecated(deprecation);
    else if (!warned.has(place)) {
      warned.add(place);
      console.warn(deprecationSentence(deprecation));
    }
    return deprecation;
  }

  async #fetch(request: ApiRequest, options: CallOptions, signal: AbortSignal): Promise<Response> {
    signal.throwIfAborted();
    const headers = new Headers(this.#headers);
    if (request.body !== undefined) headers.set("content-type", request.contentType ?? "application/json");
    if (request.accept) headers.set("accept", request.accept);
    setAll(headers, options.headers);
    const init: RequestInit & { dispatcher?: unknown } = { method: request.method, signal };
    // A plain object, and address and init rather than a Request: a custom fetch may come from another copy of
    // the platform's classes and refuse the global ones.
    init.headers = Object.fromEntries(headers);
    if (request.body !== undefined) init.body = request.body;
    if (this.#options.dispatcher) init.dispatcher = this.#options.dispatcher;
    const fetch = this.#options.fetch ?? globalThis.fetch;
    return fetch(this.#base + request.path, init);
  }
}

/** An answer with what came along. */
export function withResponse<T>(data: T, response: Response, deprecation: Deprecation | null): WithResponse<T> {
  return { data, response, requestId: response.headers.get("x-request-id"), deprecation };
}

function setAll(headers: Headers, given: Readonly<Record<string, string>> = {}): void {
  for (const [name, value] of Object.entries(given)) headers.set(name, value);
}

function mayPass(error: unknown): boolean {
  return error instanceof ConnectionError || (error instanceof ApiError && isRetryable(error.status));
}

function waitAskedBy(error: unknown): number | null {
  return error instanceof ApiError ? error.retryAfterMs : null;
}

function sleepFor(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}

/** JSON of a good answer. */
export function parse<T>(text: string, response: Response): T {
  try {
    return JSON.parse(text) as T;
  } catch (cause) {
    const message = `The answer (status ${response.status}) is not JSON: is baseUrl the address of a Ringtrue service?`;
    throw new UnreadableAnswerError(message, { cause });
  }
}

function problemError(response: Response, text: string): ApiError {
  const { status, headers } = response;
  const requestId = headers.get("x-request-id");
  let problem: Problem = {
    type: "about:blank",
    title: response.statusText || "The request failed",
    status,
    detail: `The service, or something in front of it, answered with status ${status} and gave no reason.`,
    requestId: requestId ?? "",
  };
  try {
    const read = JSON.parse(text) as Partial<Problem> | null;
    if (typeof read?.title === "string") problem = { ...problem, ...read, status };
    if (!Array.isArray(problem.issues)) delete problem.issues;
  } catch {
    // A proxy's page or nothing at all: the status alone has to do.
  }
  return apiError(problem, requestId, retryAfterMs(headers));
}
