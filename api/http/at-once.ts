/**
 * How much is under way at once: more is turned away early, while there is memory left to say so.
 *
 * Nobody fills the places by being slow. A question holds none while its body arrives; as many may arrive as may be
 * under way, and one too many sends away the one that has been arriving longest, not the newcomer. Streams, which
 * may take as long as they like, hold no more than half of the places, and of them the slow give way (stream-places.ts).
 *
 * @module
 */
import type { MiddlewareHandler } from "hono";
import type { Env } from "./operation.ts";
import { ProblemError, problemResponse } from "./problem.ts";
import { StreamPlaces } from "./stream-places.ts";
import { isStream, replaceAnswer, whenSent } from "./when-sent.ts";

/** What to wait before asking again [s]. Most questions take milliseconds. */
const RETRY_S = 1;

/** A question's place among those under way. */
export interface Place {
  /**
   * Gives the place back while the body arrives.
   * @param sendAway - called if others need the room
   */
  leave(sendAway: (reason: ProblemError) => void): void;
  /** Takes it up again; the body is there, or never will be. */
  takeUp(): void;
}

/**
 * Answers 503 where as many questions are under way as may be. A stream counts until its last line is out.
 * @param most - questions under way at once
 * @param now - a clock that never goes back [ms]
 */
export function limitAtOnce(most: number, now: () => number): MiddlewareHandler<Env> {
  const mostStreams = Math.ceil(most / 2);
  const streams = new StreamPlaces(mostStreams, now);
  /** Oldest first. */
  const arriving = new Set<Arrival>();
  let underWay = 0;

  class Arrival implements Place {
    private sendAway: (reason: ProblemError) => void = () => {};
    leave(sendAway: (reason: ProblemError) => void): void {
      this.sendAway = sendAway;
      underWay -= 1;
      arriving.add(this);
      if (arriving.size <= most) return;
      const [oldest] = arriving;
      arriving.delete(oldest!);
      oldest!.sendAway(busy(`More than ${most} questions are arriving, and this one has taken longest.`));
    }
    takeUp(): void {
      arriving.delete(this);
      underWay += 1;
    }
  }

  return async function atOnce(c, next) {
    if (underWay >= most) throw busy(`I am already working on ${most} questions, which is all I take at once.`);
    underWay += 1;
    c.set("place", new Arrival());
    try {
      await next();
    } catch (error) {
      underWay -= 1;
      throw error;
    }
    const response = c.res;
    const stream = isStream(response) ? streams.newcomer() : undefined;
    const done = () => {
      underWay -= 1;
      stream?.leave();
    };
    const followed = whenSent(response, done, stream);
    if (!stream) return;
    if (stream.enter()) return replaceAnswer(c, followed);
    await followed.body?.cancel();
    const detail = `I am already answering ${mostStreams} streams, which is all I take beside single questions.`;
    replaceAnswer(c, problemResponse(c, busy(detail)));
  };
}

function busy(why: string): ProblemError {
  return new ProblemError("busy", `${why} Ask again in ${RETRY_S} s.`, { headers: { "retry-after": String(RETRY_S) } });
}
