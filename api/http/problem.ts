/**
 * Failures on their way out: what kinds there are and how one is written (RFC 9457).
 *
 * @module
 */
import type { Context } from "hono";
import type { z } from "zod";
import type { FieldIssue, Problem } from "../schemas/problem.ts";

export type Issue = z.infer<typeof FieldIssue>;
export type ProblemDocument = z.infer<typeof Problem>;

/** Where the kinds of problem are named. Stable; need not resolve. */
const TYPE_BASE = "https://ringtrue.example/problems/";

/** Every kind of problem: its status and its title. */
export const KINDS = {
  "malformed-json": { status: 400, title: "The request is not JSON I can read" },
  "malformed-request": { status: 400, title: "The request is not HTTP I can read" },
  "no-key": { status: 401, title: "This service asks for a key" },
  "unknown-path": { status: 404, title: "Nothing lives at this address" },
  "unknown-name": { status: 404, title: "There is nothing of that name here" },
  "method-not-allowed": { status: 405, title: "This address does not answer that method" },
  "not-acceptable": { status: 406, title: "I cannot answer in the form asked for" },
  "too-slow": { status: 408, title: "The request took too long to arrive" },
  "too-large": { status: 413, title: "The request is larger than I take" },
  "unsupported-media-type": { status: 415, title: "I do not read that kind of content" },
  "unmet-expectation": { status: 417, title: "I cannot do what is expected" },
  "impossible-input": { status: 422, title: "Something in the request cannot be" },
  "too-many": { status: 429, title: "You ask more often than I answer" },
  "headers-too-large": { status: 431, title: "The headers are longer than I read" },
  internal: { status: 500, title: "Something broke on my side" },
  busy: { status: 503, title: "I have my hands full" },
  "not-ready": { status: 503, title: "I am about to stop" },
  "not-here": { status: 503, title: "Not served here" },
} as const;

export type ProblemKind = keyof typeof KINDS;

interface Extra {
  issues?: Issue[];
  suggestion?: string;
  headers?: Record<string, string>;
}

/** A failure with everything that its problem document needs except the request's id. */
export class ProblemError extends Error {
  override readonly name = "ProblemError";
  readonly kind: ProblemKind;
  readonly detail: string;
  readonly extra: Extra;
  constructor(kind: ProblemKind, detail: string, extra: Extra = {}) {
    super(detail);
    this.kind = kind;
    this.detail = detail;
    this.extra = extra;
  }
}

/** 422 with its issues; the sentence counts them. */
export function impossible(issues: Issue[]): ProblemError {
  const count = issues.length === 1 ? "One thing needs" : `${issues.length} things need`;
  return new ProblemError("impossible-input", `${count} mending: ${issues[0]?.message ?? "see issues."}`, { issues });
}

/** The document of a failure. */
export function problemDocument(error: ProblemError, requestId: string): ProblemDocument {
  const { status, title } = KINDS[error.kind];
  const { issues, suggestion } = error.extra;
  return {
    type: TYPE_BASE + error.kind,
    title,
    status,
    detail: error.detail,
    requestId,
    ...(suggestion === undefined ? {} : { suggestion }),
    ...(issues === undefined ? {} : { issues }),
  };
}

/** The response of a failure. */
export function problemResponse(c: Context, error: ProblemError): Response {
  const document = problemDocument(error, c.get("requestId") ?? "");
  return c.body(JSON.stringify(document), KINDS[error.kind].status, {
    "content-type": "application/problem+json",
    "cache-control": "no-store",
    ...error.extra.headers,
  });
}
