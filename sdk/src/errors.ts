/**
 * What can go wrong between an app and the service, one class per kind, so that `instanceof` decides.
 *
 * @module
 */

import type { FieldIssue, Problem } from "./generated/types.gen.ts";

/** Any failure of a call. */
export class RingtrueError extends Error {
  override readonly name: string = "RingtrueError";
}

/** The service answered that it cannot or will not do this. */
export class ApiError extends RingtrueError {
  override readonly name: string = "ApiError";
  /** HTTP status code [-]. */
  readonly status: number;
  /** The problem document as received; put together from the status when a proxy answered with something else. */
  readonly problem: Problem;
  /** Every field at fault; empty when no field is. */
  readonly issues: readonly FieldIssue[];
  /** `x-request-id` of the answer. */
  readonly requestId: string | null;
  /** How long the service asks to wait before the next try [ms]. */
  readonly retryAfterMs: number | null;

  constructor(problem: Problem, requestId: string | null = null, retryAfterMs: number | null = null) {
    super(sentence(problem));
    this.status = problem.status;
    this.problem = problem;
    this.issues = problem.issues ?? [];
    this.requestId = requestId ?? (problem.requestId || null);
    this.retryAfterMs = retryAfterMs;
  }
}

/** 400: the request could not be read, for example malformed JSON. */
export class BadRequestError extends ApiError {
  override readonly name = "BadRequestError";
}

/** 401: the service asks for a key; give it as `apiKey`. */
export class UnauthorizedError extends ApiError {
  override readonly name = "UnauthorizedError";
}

/** 404: no such material, body class or route. */
export class NotFoundError extends ApiError {
  override readonly name = "NotFoundError";
}

/** 405: the route is there, the method is not. */
export class MethodNotAllowedError extends ApiError {
  override readonly name = "MethodNotAllowedError";
}

/** 413: the body is larger than the service takes; the message says the limit. */
export class PayloadTooLargeError extends ApiError {
  override readonly name = "PayloadTooLargeError";
}

/** 415: the body is not of a type that the service reads. */
export class UnsupportedMediaTypeError extends ApiError {
  override readonly name = "UnsupportedMediaTypeError";
}

/** 422: read, but a field cannot be; `issues` says which, why, and what would do. */
export class UnprocessableError extends ApiError {
  override readonly name = "UnprocessableError";
}

/** 429: too many requests; `retryAfterMs` says how long to wait. */
export class RateLimitedError extends ApiError {
  override readonly name = "RateLimitedError";
}

/** 5xx: the fault lies with the service or something in front of it. */
export class ServerError extends ApiError {
  override readonly name = "ServerError";
}

/** No usable answer arrived: refused, reset or cut short. `cause` holds the reason. */
export class ConnectionError extends RingtrueError {
  override readonly name = "ConnectionError";
}

/** Something answered, but not in the words of this service: most often `baseUrl` points elsewhere. */
export class UnreadableAnswerError extends RingtrueError {
  override readonly name = "UnreadableAnswerError";
}

/** No answer within `timeoutMs`. */
export class TimeoutError extends RingtrueError {
  override readonly name = "TimeoutError";
}

/** The caller's own `signal` ended the call; `cause` holds the signal's reason. */
export class AbortedError extends RingtrueError {
  override readonly name = "AbortedError";
}

const BY_STATUS: Readonly<Record<number, typeof ApiError>> = {
  400: BadRequestError,
  401: UnauthorizedError,
  404: NotFoundError,
  405: MethodNotAllowedError,
  413: PayloadTooLargeError,
  415: UnsupportedMediaTypeError,
  422: UnprocessableError,
  429: RateLimitedError,
};

/**
 * The error class that belongs to a failed answer.
 * @param problem - problem document
 * @param requestId - `x-request-id` of the answer
 * @param retryAfterMs - wait that the service asks for [ms]
 * @example apiError({ type: "about:blank", title: "Not found", status: 404, detail: "", requestId: "" }) instanceof NotFoundError // true
 */
export function apiError(problem: Problem, requestId?: string | null, retryAfterMs?: number | null): ApiError {
  const Class = BY_STATUS[problem.status] ?? (problem.status >= 500 ? ServerError : ApiError);
  return new Class(problem, requestId, retryAfterMs);
}

function sentence({ status, title, detail, issues = [] }: Problem): string {
  const what = `${status} ${detail || title}`;
  // The detail often repeats the issues already; add only what it leaves out.
  const fields = issues.filter((issue) => !what.includes(issue.message));
  return [what, ...fields.map((issue) => `${issue.pointer}: ${issue.message}`)].join("\n  ");
}
