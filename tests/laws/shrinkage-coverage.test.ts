/** Do the stated intervals hold as often as they say? Thousands of made-up sets of bars of one known clay. */
import { it } from "vitest";
import { measureShrinkage } from "../../api/engine/shrinkage/index.ts";
import { close } from "../support/close.ts";

// Bars drawn from a known clay, 12 % with 0.4 points from bar to bar: the stated 90 % must hold about nine times in ten.
it.each([2, 3, 5, 10])("intervals from %d bars hold the truth nine times in ten", (count) => {
  let seed = count;
  // Mulberry32: neighbouring draws of a plain congruential generator hang together, and Box–Muller shows it.
  const uniform = () => {
    seed = (seed + 0x6d2b79f5) | 0;
    let mixed = Math.imul(seed ^ (seed >>> 15), 1 | seed);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return (((mixed ^ (mixed >>> 14)) >>> 0) + 0.5) / 4294967296;
  };
  const draw = () => 12 + 0.4 * Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
  const tries = 2000;
  let [held, next] = [0, 0];
  for (let k = 0; k < tries; k++) {
    const bars = Array.from({ length: count }, () => ({ plastic: 1000, fired: 1000 - 10 * draw() }));
    const { mean, nextPiece } = measureShrinkage({ bars }).total!;
    if (mean.low <= 12 && 12 <= mean.high) held += 1;
    const piece = draw();
    if (nextPiece.low <= piece && piece <= nextPiece.high) next += 1;
  }
  const tolerance = {
    abs: 0.027,
    why: "three standard errors of 2000 tries, and 0.7 points for ends rounded to 0.01 %",
  };
  close(held / tries, 0.9, tolerance);
  close(next / tries, 0.9, tolerance);
});
