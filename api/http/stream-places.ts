/**
 * Places held by streams: nobody keeps one by dawdling.
 *
 * A stream pays for its place with what it moves: each kilobyte of its answer buys a second, ten at most ahead. Where
 * all places are taken, one that has not paid gives way to the newcomer, the longest in arrears first.
 *
 * @module
 */
import { type Following, GaveWay } from "./when-sent.ts";

/** What buys a second [bytes]: far less than a telephone with one bar of signal moves (common practice, no source). */
const BYTES_A_SECOND = 1024;
/** How far ahead may be paid, and what a new stream is given to begin with [ms]. */
const AHEAD_MS = 10_000;

/** One stream, before and while it holds a place. */
export interface StreamPlace extends Following {
  /** @returns whether there was a place for it */
  enter(): boolean;
  /** Gives the place back, if one was held. */
  leave(): void;
}

/** The places for streams of one process. */
export class StreamPlaces {
  private readonly held = new Set<Stream>();
  private readonly most: number;
  private readonly now: () => number;

  /**
   * @param most - streams at once
   * @param now - a clock that never goes back [ms]
   */
  constructor(most: number, now: () => number) {
    this.most = most;
    this.now = now;
  }

  newcomer(): StreamPlace {
    return new Stream(this.held, this.most, this.now);
  }
}

class Stream implements StreamPlace {
  private readonly stop = new AbortController();
  private paidUntil: number;

  constructor(
    private readonly held: Set<Stream>,
    private readonly most: number,
    private readonly now: () => number,
  ) {
    this.paidUntil = now() + AHEAD_MS;
  }

  get until(): AbortSignal {
    return this.stop.signal;
  }

  sent(bytes: number): void {
    const now = this.now();
    const bought = (bytes / BYTES_A_SECOND) * 1000;
    this.paidUntil = Math.min(Math.max(this.paidUntil, now) + bought, now + AHEAD_MS);
  }

  enter(): boolean {
    if (this.held.size >= this.most) this.askForRoom();
    if (this.held.size >= this.most) return false;
    this.held.add(this);
    return true;
  }

  leave(): void {
    this.held.delete(this);
  }

  private askForRoom(): void {
    let slowest: Stream | undefined;
    for (const stream of this.held) {
      if (stream.paidUntil < (slowest?.paidUntil ?? this.now())) slowest = stream;
    }
    slowest?.stop.abort(new GaveWay("Others were waiting, and this stream hardly moved."));
  }
}
