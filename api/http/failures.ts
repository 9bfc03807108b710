/**
 * How failures are described: which a call may answer with, and one of each as it is really sent.
 *
 * @module
 */
import { Problem } from "../schemas/problem.ts";
import { type Issue, ProblemError, type ProblemKind, problemDocument } from "./problem.ts";

interface Told {
  /** What is wrong in the example, and the nearest right name. */
  issues?: Issue[];
  suggestion?: string;
  /** Headers that come with it, in the description. */
  headers?: Record<
    string,
    { description: string; schema: { type: "string" | "integer"; minimum?: number }; example: string | number }
  >;
}

/** A failure in the description, with an example made as the service makes it. */
function failure(kind: ProblemKind, description: string, detail: string, { headers, ...extra }: Told = {}) {
  const example = problemDocument(new ProblemError(kind, detail, extra), "larch-lane-1");
  const content = { "application/problem+json": { schema: Problem, example } };
  return { description, content, ...(headers ? { headers } : {}) };
}

const retryAfter = {
  "retry-after": { description: "When to ask again [s].", schema: { type: "integer", minimum: 0 }, example: 12 },
} as const;

const negative: Issue = {
  pointer: "/glaze/recipe/2/parts",
  message: "`parts` is -3. It must be 0 or more.",
  allowed: ["0 or more"],
};
const unknownOrder: Issue = {
  pointer: "/sort",
  message: "I don't know the field `sort`. Here I know `limit` or `cursor`.",
  allowed: ["limit", "cursor"],
};
const overSize: Issue = { pointer: "", message: "The request is over 256 kB.", allowed: [256 * 1024] };

/** Failures that any call may answer with. */
export const anyCall = {
  406: failure(
    "not-acceptable",
    "The accept header asks for something not served here.",
    "This address answers in application/json. Ask for that, or leave accept out.",
  ),
  500: failure(
    "internal",
    "Something broke on the service's side.",
    "The request may well be fine. Send it again; if it breaks again, report the request id.",
  ),
} as const;

/** Failures of a call that whoever runs the service may guard with keys and limits. */
export const guardedCall = {
  401: failure(
    "no-key",
    "This service asks for a key, and none that it knows came along.",
    "Send the key that you were given with each request, as authorization: Bearer YOUR-KEY.",
    {
      headers: {
        "www-authenticate": {
          description: "How to send a key.",
          schema: { type: "string" },
          example: 'Bearer realm="ringtrue"',
        },
      },
    },
  ),
  429: failure(
    "too-many",
    "The caller has used up its requests for this minute.",
    "You may send 600 requests a minute. Send the next one in 12 s. For many recipes at once use a /stream address: it counts as one.",
    { headers: retryAfter },
  ),
  503: failure(
    "busy",
    "The service works on as many questions as it takes at once.",
    "I am already working on 256 questions, which is all I take at once. Ask again in 1 s.",
    { headers: retryAfter },
  ),
} as const;

/** What `/ready` answers once the service has been told to stop. */
export const notReady = {
  503: failure(
    "not-ready",
    "It is about to stop: send work elsewhere.",
    "I have been told to stop and am finishing what I have. Ask another of us.",
    { headers: retryAfter },
  ),
} as const;

/** Failures of a call that names one thing. */
export const notFound = {
  404: failure("unknown-name", "Nothing of that name.", "There is none of that name. Did you mean whiting?", {
    suggestion: "whiting",
  }),
} as const;

/** Failures of a call with query parameters. */
export const badQuery = {
  422: failure(
    "impossible-input",
    "A query parameter cannot be; see issues.",
    `One thing needs mending: ${unknownOrder.message}`,
    { issues: [unknownOrder] },
  ),
} as const;

/** Failures of a call that takes JSON. */
export const badJson = {
  400: failure(
    "malformed-json",
    "Not JSON; the detail says where.",
    'Line 1, column 13: I wanted a field name in double quotes, and found "5}". A decimal comma? Write a point.',
  ),
  408: failure(
    "too-slow",
    "The request took too long to arrive.",
    "The whole request must arrive within 30 s. Send it again.",
  ),
  413: failure(
    "too-large",
    "Larger than 256 kB.",
    "A request may hold 256 kB. For many recipes at once send them line by line to a /stream address.",
    { issues: [overSize] },
  ),
  415: failure(
    "unsupported-media-type",
    "Not sent as application/json, or packed.",
    "The request does not say what it is. Set content-type: application/json.",
  ),
  422: failure(
    "impossible-input",
    "Something in it cannot be; see issues.",
    `One thing needs mending: ${negative.message}`,
    { issues: [negative] },
  ),
} as const;

/** Failures of a call that takes one JSON a line; bad lines are answered in their place instead. */
export const badStream = {
  415: failure(
    "unsupported-media-type",
    "Not sent as application/x-ndjson, or packed.",
    "The request does not say what it is. Set content-type: application/x-ndjson.",
  ),
} as const;
