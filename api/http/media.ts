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

/** Ways of packing a body that are common elsewhere. Other words there are slips, and nothing is packed. */
const PACKED = /\b(gzip|deflate|br|zstd|compress)\b/i;

/**
 * Checks the content type of a request, and that it is not packed.
 * @throws ProblemError (415) that says what is read here
 */
export function requireContentType(c: Context, wanted: typeof JSON_TYPE | typeof NDJSON_TYPE): void {
  const packed = PACKED.exec(c.req.header("content-encoding") ?? "")?.[1];
  if (packed) {
    const detail = `This is packed with ${packed.toLowerCase()}, which I do not unpack. Send it plain, without content-encoding.`;
    throw new ProblemError("unsupported-media-type", detail, { headers: { "accept-encoding": "identity" } });
  }
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
 * @param served - one type, or several parted by ", " with the usual one first
 * @throws ProblemError (406) that says what is served
 */
export function requireAccept(c: Context, served: string): void {
  preferredType(c, served);
}

/**
 * The type that the caller likes best of those served (RFC 9110, 12.5.1); the first where it does not mind.
 * @param served - one type, or several parted by ", " with the usual one first
 * @throws ProblemError (406) that says what is served
 */
export function preferredType(c: Context, served: string): string {
  const header = c.req.header("accept");
  const types = served.split(", ");
  if (header === undefined || header === served || header === "" || header === "*/*") return types[0]!;
  // Empty members of a list count for nothing (RFC 9110, 5.6.1).
  const ranges = header
    .toLowerCase()
    .split(",")
    .filter((entry) => entry.trim() !== "")
    .map(readRange);
  if (ranges.length === 0) return types[0]!;
  let best: { type: string; weight: number } | undefined;
  for (const type of types) {
    const weight = weightOf(type, ranges);
    if (weight > (best?.weight ?? 0)) best = { type, weight };
  }
  if (best) return best.type;
  const list = [types.slice(0, -1).join(", "), types.at(-1)].filter(Boolean).join(" or ");
  throw new ProblemError("not-acceptable", `This address answers in ${list}. Ask for that, or leave accept out.`);
}

interface Range {
  range: string;
  weight: number;
}

function readRange(entry: string): Range {
  const [range = "", ...parameters] = entry.split(";").map((part) => part.trim());
  const q = parameters.find((parameter) => /^q=/.test(parameter))?.slice(2);
  const weight = q === undefined ? 1 : Number(q);
  return { range, weight: weight >= 0 && weight <= 1 ? weight : 1 };
}

/** The weight of the range that names a type most closely. */
function weightOf(type: string, ranges: Range[]): number {
  const [kind] = type.split("/");
  for (const wanted of [type, `${kind}/*`, "*/*"]) {
    const found = ranges.find(({ range }) => range === wanted);
    if (found) return found.weight;
  }
  return 0;
}
