/** Seeded choices. @module */
import { seededRandom } from "../../../api/engine/numeric/lattice.ts";

/** A stream of seeded choices. */
export class Chance {
  private readonly next: () => number;
  constructor(seed: number) {
    this.next = seededRandom(seed);
  }
  /** Evenly between two ends, to four figures so that the questions read well. */
  between(low: number, high: number): number {
    return Number((low + (high - low) * this.next()).toPrecision(4));
  }
  /** Evenly in the logarithm. */
  scale(low: number, high: number): number {
    return Number(Math.exp(this.between(Math.log(low), Math.log(high))).toPrecision(4));
  }
  pick<T>(from: readonly T[]): T {
    return from[Math.floor(this.next() * from.length)]!;
  }
  happens(share: number): boolean {
    return this.next() < share;
  }
  some<T>(from: readonly T[], count: number): T[] {
    const left = [...from];
    return Array.from({ length: count }, () => left.splice(Math.floor(this.next() * left.length), 1)[0]!);
  }
}
