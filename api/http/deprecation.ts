/**
 * Calls on their way out: said in the description, and with every answer (RFC 9745, RFC 8594).
 *
 * @module
 */
import type { Context } from "hono";

/** What a call that goes is marked with, where it is mounted. */
export interface Deprecation {
  /** From when nothing new should be built on it, as YYYY-MM-DD; may lie ahead. */
  since: string;
  /** After when it is gone, as YYYY-MM-DD; left out while that is not settled. */
  sunset?: string;
  /** What to do instead, as the rest of a sentence: "use POST /v1/fit". */
  instead: string;
  /** Address that says more; the reference if left out. */
  about?: string;
}

/** How it is put in words and headers. */
export interface DeprecationNotice {
  sentence: string;
  headers: Record<string, string>;
}

/**
 * Puts a deprecation in words and headers. Dates are midnight UTC; no clock is read.
 * @throws Error for a date that is none, or a sunset before its deprecation (RFC 9745, section 4)
 * @example deprecationNotice({ since: "2027-01-01", instead: "use GET /v1/bodies" }).headers.deprecation // "@1798761600"
 */
export function deprecationNotice({ since, sunset, instead, about = "/reference" }: Deprecation): DeprecationNotice {
  const from = midnight(since);
  const until = sunset === undefined ? undefined : midnight(sunset);
  if (until !== undefined && until < from) throw new Error(`A sunset on ${sunset} comes before ${since}.`);
  return {
    sentence: `Deprecated since ${since}${sunset ? `, gone after ${sunset}` : ""}: ${instead}.`,
    headers: {
      deprecation: `@${from.getTime() / 1000}`,
      ...(until ? { sunset: until.toUTCString() } : {}),
      link: `<${about}>; rel="deprecation"; type="text/html"`,
    },
  };
}

function midnight(day: string): Date {
  const date = new Date(`${day}T00:00:00Z`);
  if (Number.isNaN(date.getTime()) || date.toISOString().slice(0, 10) !== day) throw new Error(`${day} is no date.`);
  return date;
}

/** Says it on an answer, a refusal too. */
export function sayDeprecated(c: Context, { headers }: DeprecationNotice): void {
  for (const [name, value] of Object.entries(headers)) c.header(name, value, { append: name === "link" });
}

const text = (description: string) => ({ description, schema: { type: "string" } }) as const;

/** The headers as the description has them. */
export const deprecationHeaders = {
  deprecation: text("From when nothing new should be built on this call, as @ and seconds since 1970 (RFC 9745)."),
  sunset: text("After when the call is gone, as an HTTP date (RFC 8594)."),
  link: text("Where to read what to do instead: `rel=deprecation`."),
};
