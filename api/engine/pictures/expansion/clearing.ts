/** Where there is room for words: away from lines, bands and other words. @module */
import type { Frame } from "./frame.ts";
import { type Length, type Lengths, lengthAt } from "./lengths.ts";

/** Room on the picture [px]. */
export interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** Distance that words keep from everything [px]. */
const MARGIN = 4;

/** Keeps account of what is drawn. */
export class Clearing {
  readonly #frame: Frame;
  readonly #curves: readonly (readonly Length[])[];
  readonly #taken: Box[] = [];

  constructor(frame: Frame, { glaze, body }: Lengths) {
    this.#frame = frame;
    this.#curves = [glaze, body];
  }

  /** Highest and lowest edge of a curve's band between two abscissas [px]. */
  edge(curve: readonly Length[], from: number, to: number): { top: number; bottom: number } {
    const { x, y } = this.#frame;
    const seen = curve.filter(({ c }) => x(c) > from - 26 && x(c) < to + 26);
    const near = seen.length > 0 ? seen : curve;
    return {
      top: Math.min(...near.map(({ percent, above }) => y(percent + above))),
      bottom: Math.max(...near.map(({ percent, below }) => y(percent - below))),
    };
  }

  /** Reserves a box if nothing is there. @returns whether it was free */
  take(box: Box): boolean {
    const free = !this.#crossed(box) && !this.#taken.some((other) => meets(other, box));
    if (free) this.#taken.push(box);
    return free;
  }

  #crossed({ left, right, top, bottom }: Box): boolean {
    const { x, y, left: start, right: end, hotC } = this.#frame;
    for (const curve of this.#curves) {
      for (let at = left - MARGIN; at <= right + MARGIN + 4; at += 4) {
        const c = hotC - ((at - start) / (end - start)) * (hotC - 20);
        if (c < 20 || at < x(curve.at(-1)!.c)) continue;
        const line = y(lengthAt(curve, c));
        const near =
          curve[
            Math.min(
              Math.max(
                curve.findIndex((p) => p.c >= c),
                0,
              ),
              curve.length - 1,
            )
          ]!;
        const roof = line - (y(0) - y(near.above));
        const floor = line + (y(0) - y(near.below));
        if (floor > top - MARGIN && roof < bottom + MARGIN) return true;
      }
    }
    return false;
  }
}

function meets(a: Box, b: Box): boolean {
  return (
    a.left < b.right + MARGIN && b.left < a.right + MARGIN && a.top < b.bottom + MARGIN && b.top < a.bottom + MARGIN
  );
}
