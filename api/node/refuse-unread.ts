/**
 * Failures of what never reaches the app, because it is no request that the app could be given: told in the same form
 * as the others (RFC 9457).
 *
 * @module
 */
import { type IncomingMessage, type Server, type ServerResponse, STATUS_CODES } from "node:http";
import type { Duplex } from "node:stream";
import { RequestError } from "@hono/node-server";
import { KINDS, ProblemError, type ProblemKind, problemDocument } from "../http/problem.ts";

const DETAILS = {
  "malformed-request":
    "I cannot read this as HTTP/1.1. Look at the method, the address and the headers, above all host and content-length.",
  "headers-too-large": "Address and headers may hold 16 kB together. Questions belong into the body of a POST.",
  "too-large": "The chunks of this request carry more extensions than I read. Leave those out.",
  "too-slow": "The headers must arrive within 20 s. Send the request again.",
  "method-not-allowed":
    "I carry nothing on to others: there is no CONNECT here. Send questions to the addresses in /openapi.json.",
  "unmet-expectation": "Of what a request may expect I know `100-continue` alone. Leave the others out.",
  internal: "The request may well be fine. Send it again; if it breaks again, report the request id.",
} satisfies Partial<Record<ProblemKind, string>>;
type Kind = keyof typeof DETAILS;

/** What the runtime's parser calls its refusals; any other means that it could not read the request. */
const BY_CODE: Readonly<Record<string, Kind>> = {
  HPE_HEADER_OVERFLOW: "headers-too-large",
  HPE_CHUNK_EXTENSIONS_OVERFLOW: "too-large",
  ERR_HTTP_REQUEST_TIMEOUT: "too-slow",
};

/**
 * Refuses in words what the runtime would refuse without: what is no HTTP, headers too long or too slow, CONNECT, and
 * expectations other than `100-continue`.
 */
export function refuseUnread(server: Server): void {
  const latest = new WeakMap<Duplex, ServerResponse>();
  server.on("request", ({ socket }, response) => latest.set(socket, response));
  server.on("clientError", ({ code = "" }: NodeJS.ErrnoException, socket: Duplex) => {
    const answer = latest.get(socket);
    // Half an answer has gone out: what is sent now would be read as the rest of it.
    const halfway = answer?.headersSent && !answer.writableFinished;
    if (halfway || code === "ECONNRESET" || !socket.writable) socket.destroy();
    else end(socket, BY_CODE[code] ?? "malformed-request");
  });
  server.on("connect", (_: IncomingMessage, socket: Duplex) => end(socket, "method-not-allowed"));
  server.on("checkExpectation", (_: IncomingMessage, response: ServerResponse) =>
    refuse(response, "unmet-expectation"),
  );
}

/** Refuses a request that was read as HTTP. Nothing more is read from its connection. */
export function refuse(response: ServerResponse, kind: Kind): void {
  const { status, headers, body } = written(kind);
  response.writeHead(status, { ...headers, connection: "close" }).end(body);
}

/**
 * The answer to what could not be made a request of: an address or host that is none.
 * @param report - told of anything else, which is a fault of the service
 */
export function answerUnreadable(error: unknown, report: (error: unknown, requestId: string) => void): Response {
  const { status, headers, body } = written(error instanceof RequestError ? "malformed-request" : "internal");
  if (status === 500) report(error, headers["x-request-id"]);
  return new Response(body, { status, headers });
}

function written(kind: Kind) {
  const requestId = crypto.randomUUID();
  const body = JSON.stringify(problemDocument(new ProblemError(kind, DETAILS[kind]), requestId));
  const headers = {
    "cache-control": "no-store",
    "content-length": String(new TextEncoder().encode(body).length),
    "content-type": "application/problem+json",
    "x-content-type-options": "nosniff",
    "x-request-id": requestId,
  };
  return { status: KINDS[kind].status, headers, body };
}

function end(socket: Duplex, kind: Kind): void {
  const { status, headers, body } = written(kind);
  const lines = Object.entries({ ...headers, connection: "close" }).map(([name, value]) => `${name}: ${value}\r\n`);
  socket.end(`HTTP/1.1 ${status} ${STATUS_CODES[status]}\r\n${lines.join("")}\r\n${body}`, () => socket.destroy());
}
