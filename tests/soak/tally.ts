/** What came of every request: right, explained, or neither. @module */
import type { Answered } from "../bench/paced.ts";
import type { Question } from "./questions.ts";

/** After a worker is killed, connections that it held or was being handed may break for so long [ms]. */
const KILL_WINDOW_MS = 2000;
/** Wrong answers that are shown in full. */
const SHOWN = 5;

export class Tally {
  asked = 0;
  right = 0;
  /** Turned away with 503 and Retry-After. */
  shed = 0;
  /** Broken by a killed worker. */
  killed = 0;
  /** Ended by the caller, on purpose. */
  left = 0;
  /** Not sent: too many were under way. */
  heldBack = 0;
  wrong = 0;
  unexplained5xx = 0;
  unexplainedBreaks = 0;
  /** One in twenty [ms]. */
  readonly times: number[] = [];
  readonly shown: string[] = [];
  private readonly kills: readonly number[];

  /** @param kills - when workers were killed [ms of performance.now()]; grows during the soak */
  constructor(kills: readonly number[]) {
    this.kills = kills;
  }

  answered(question: Question, { status, headers, body }: Answered): void {
    const { right } = question;
    if (status === 503 && headers["retry-after"] !== undefined) this.shed += 1;
    else if (status >= 500) {
      this.unexplained5xx += 1;
      this.show(`${question.what}: ${status} ${body.subarray(0, 500)}`);
    } else if (
      status === right.status &&
      (headers["content-type"] ?? null) === right.type &&
      headers["x-request-id"] === question.headers["x-request-id"] &&
      body.equals(right.body)
    ) {
      this.right += 1;
    } else {
      this.wrong += 1;
      const want = `${right.status}, ${right.body.length} bytes`;
      this.show(
        `${question.what} ${question.path}: ${status}, ${body.length} bytes, not ${want}: ${first(body, right.body)}`,
      );
    }
  }

  /** @param began - when it was sent [ms of performance.now()] */
  broke(question: Question, began: number, error: unknown): void {
    const now = performance.now();
    if (this.kills.some((kill) => began < kill + KILL_WINDOW_MS && now > kill)) this.killed += 1;
    else {
      this.unexplainedBreaks += 1;
      this.show(`${question.what} ${question.path}: ${error}`);
    }
  }

  /** Where things stand, in one line. */
  line(minute: number): string {
    const bad = this.wrong + this.unexplained5xx + this.unexplainedBreaks;
    return `${minute.toFixed(0)} min: ${this.right} right, ${this.shed} turned away, ${this.killed} killed, ${bad} bad`;
  }

  private show(line: string): void {
    if (this.shown.length < SHOWN) this.shown.push(line);
  }
}

/** What stands where two answers part. */
function first(got: Buffer, right: Buffer): string {
  let at = 0;
  while (at < got.length && got[at] === right[at]) at += 1;
  const around = (bytes: Buffer) => JSON.stringify(bytes.subarray(Math.max(0, at - 40), at + 40).toString());
  return `from byte ${at} ${around(got)}, not ${around(right)}`;
}
