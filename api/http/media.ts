/**
 * What kinds of content go in and out: 415 and 406.
 *
 * @module
 */
import type { Context } from "hono";
import { ProblemError } from "./problem.ts";

export const JSON_TYPE = "application/json";
export const NDJSON_TYPE = "application/x-ndjson";

/** Names under which one-JSON-a-line is sent about; there is no registered one. */
const NDJSON_NAMES = [NDJSON_TYPE, "application/ndjson", "application/jsonl", "application/x-jsonlines"];

/**
 * Checks the content type of a request.
 * @throws ProblemError (415) that says what is read here
 */
export function requireContentType(c: Context, wanted: typeof JSON_TYPE | typeof NDJSON_TYPE): void {
  const header = c.req.header("content-type");
  if (header === wanted) return;
  const [type = "", ...parameters] = (header ?? "")
    .toLowerCase()
    .split(";")
    .map((part) => part.trim());
  const names = wanted === JSON_TYPE ? [JSON_TYPE] : NDJSON_NAMES;
  const charset = parameters
    .find((parameter) => parameter.startsWith("charset="))
    ?.slice(8)
    .replaceAll('"', "");
  if (names.includes(type) && (charset === undefined || charset === "utf-8" || charset === "utf8")) return;
  const detail = header
    ? `Send this as ${wanted} in UTF-8.`
    : `The request does not say what it is. Set content-type: ${wanted}.`;
  throw new ProblemError("unsupported-media-type", detail, { headers: { accept: wanted } });
}

/**
 * Checks that the caller takes what is served here.
 * @throws ProblemError (406) that says what is served
 */
export function requireAccept(c: Context, served: string): void {
  const header = c.req.header("accept");
  if (header === undefined || header === served || header.includes("*/*") || header === "") return;
  const [kind] = served.split("/");
  for (const entry of header.toLowerCase().split(",")) {
    const [range = "", ...parameters] = entry.split(";").map((part) => part.trim());
    const refused = parameters.some((parameter) => /^q=0(\.0*)?$/.test(parameter));
    if (!refused && (range === served || range === `${kind}/*`)) return;
  }
  throw new ProblemError("not-acceptable", `This address answers in ${served}. Ask for that, or leave accept out.`);
}
