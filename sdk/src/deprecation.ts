/** Calls on their way out, as a service says it (RFC 9745, RFC 8594). @module */

/** What a service says of a call that will go. */
export interface Deprecation {
  /** Method and path. */
  call: string;
  /** From when nothing new should be built on it; null where only its end is known. */
  since: Date | null;
  /** After when it is gone; null while that is not settled. */
  sunset: Date | null;
  /** Address that says what to do instead, from the service's own where it is a path. */
  about: string | null;
}

/**
 * What an answer says of its call's end.
 * @param call - method and path, without a query
 * @param headers - headers of the answer
 * @returns null for a call that stays
 * @example deprecationOf("GET /v1/kilns", new Headers({ sunset: "Thu, 01 Jul 2027 00:00:00 GMT" }))?.sunset?.getUTCFullYear() // 2027
 */
export function deprecationOf(call: string, headers: Headers): Deprecation | null {
  const deprecation = headers.get("deprecation");
  const sunset = headers.get("sunset");
  if (!deprecation && !sunset) return null;
  const seconds = /^@(-?\d{1,12})$/.exec(deprecation ?? "")?.[1];
  return { call, since: dated(Number(seconds) * 1000), sunset: dated(Date.parse(sunset ?? "")), about: link(headers) };
}

const dated = (ms: number): Date | null => (Number.isNaN(ms) ? null : new Date(ms));

/** Taken apart by hand: an expression for it could be made slow by a long header. */
function link(headers: Headers): string | null {
  for (const part of (headers.get("link") ?? "").split("<").slice(1)) {
    const [target = "", parameters = ""] = part.split(">");
    const said = parameters.split(/[;,]/).map((one) => one.trim().toLowerCase().replaceAll('"', ""));
    if (said.includes("rel=deprecation")) return target;
  }
  return null;
}

/** One sentence for a log. */
export function deprecationSentence({ call, since, sunset, about }: Deprecation): string {
  const day = (date: Date) => date.toISOString().slice(0, 10);
  const from = since ? ` since ${day(since)}` : "";
  const until = sunset ? ` and gone after ${day(sunset)}` : "";
  return `Ringtrue: ${call} is deprecated${from}${until}.${about ? ` See ${about}` : ""}`;
}
