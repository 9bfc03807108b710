/** When to try again, and how long to wait first. @module */

/** Longest pause between two tries that the client will sit through [ms]. */
const LONGEST_WAIT_MS = 60_000;
const FIRST_BACKOFF_MS = 500;
const LARGEST_BACKOFF_MS = 8_000;

/** Statuses that may pass on another try. Every call only computes, so POSTs are as safe to repeat as GETs. */
const RETRYABLE = new Set([408, 429, 502, 503, 504]);

/**
 * Whether an answer with this status is worth another try.
 * @param status - HTTP status code [-]
 * @example isRetryable(503) // true
 */
export function isRetryable(status: number): boolean {
  return RETRYABLE.has(status);
}

/**
 * Pause before the next try: full jitter, a random share of 0.5 s doubling to 8 s, and never less than the
 * service asked for. Full jitter spreads clients that failed together.
 * @param attempt - tries made so far, from 1 [-]
 * @param retryAfterMs - wait that the service asks for [ms]
 * @param random - source of a number in [0, 1)
 * @returns pause [ms], or null when the service asks for more than a minute: better to tell the caller
 * @example backoffMs(3, null, () => 0.5) // 1000
 */
export function backoffMs(attempt: number, retryAfterMs: number | null, random: () => number): number | null {
  if (retryAfterMs !== null && retryAfterMs > LONGEST_WAIT_MS) return null;
  const ceiling = Math.min(LARGEST_BACKOFF_MS, FIRST_BACKOFF_MS * 2 ** (attempt - 1));
  return Math.max(random() * ceiling, retryAfterMs ?? 0);
}

/**
 * The wait that an answer asks for, from `Retry-After` in seconds or as a date (RFC 9110, 10.2.3).
 * A date is read against the answer's own `Date`, so a client whose clock is off waits the right time.
 * @param headers - headers of the answer
 * @returns wait [ms], never negative; null when the header is missing or unreadable
 * @example retryAfterMs(new Headers({ "retry-after": "2" })) // 2000
 */
export function retryAfterMs(headers: Headers): number | null {
  const given = headers.get("retry-after")?.trim();
  if (!given) return null;
  if (/^\d+(\.\d+)?$/.test(given)) return Number(given) * 1000;
  // Every HTTP date begins with the name of a day (RFC 9110, 5.6.7); Date.parse alone would read "-3" as a date.
  const until = /^[A-Z][a-z]{2}/.test(given) ? Date.parse(given) : Number.NaN;
  if (Number.isNaN(until)) return null;
  const served = Date.parse(headers.get("date") ?? "");
  return Math.max(0, until - (Number.isNaN(served) ? Date.now() : served));
}
