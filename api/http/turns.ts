/**
 * Questions take turns with everything else that a process has to do. Those that arrive together would otherwise be
 * worked out one after the other, and some take a third of a second: `/health` and everyone else would wait for the last.
 *
 * @module
 */

/**
 * How long questions may follow each other without a look at the rest [ms]. As many short ones as are let in at once
 * take less, so that they never wait for each other.
 */
const SPELL_MS = 100;
/** Rounds of the event loop for the rest after that [-]. Each takes in one new connection, and none takes long. */
const ROUNDS = 64;

/** Turns in one event loop. */
export class Turns {
  private readonly now: () => number;
  private readonly later: (work: () => void) => void;
  private readonly waiting: (() => void)[] = [];
  /** When the round under way began, if a question was begun in it [ms]. */
  private began: number | undefined;
  /** Rounds that the rest has yet to get [-]. */
  private owed = 0;

  /**
   * @param now - a clock that never goes back [ms]
   * @param later - does a thing in the event loop's next round
   */
  constructor(now = () => performance.now(), later = (work: () => void) => void setImmediate(work)) {
    this.now = now;
    this.later = later;
  }

  /**
   * Asked before a question is worked out.
   * @returns nothing where it may be at once; else a promise of its turn, in the order of asking
   */
  ask(): Promise<void> | undefined {
    if (this.owed === 0) {
      if (this.began === undefined) this.begin();
      if (this.waiting.length === 0 && this.now() - this.began! < SPELL_MS) return undefined;
    }
    return new Promise((resolve) => void this.waiting.push(resolve));
  }

  private begin(): void {
    this.began = this.now();
    this.later(() => this.end());
  }

  private end(): void {
    if (this.now() - this.began! >= SPELL_MS) this.owed = ROUNDS;
    this.began = undefined;
    this.rest();
  }

  private rest(): void {
    if (this.owed > 0) {
      this.owed -= 1;
      this.later(() => this.rest());
      return;
    }
    const next = this.waiting.shift();
    if (!next) return;
    this.begin();
    next();
  }
}
