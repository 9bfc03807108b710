/** A stack between its bounds: separate coats and one melt. @module */

import { glassProperties } from "../glass/index.ts";
import { middle90 } from "../numeric/quantiles.ts";
import { type Estimate, type Quantity, quantileOf, quantity, UNITS } from "../quantity.ts";
import type { ReadCoat } from "./coats.ts";
import type { RunDraws } from "./draws.ts";
import { meltOf, type ReadyMelt } from "./melt.ts";
import { inMm } from "./outcome.ts";
import { simulateRun, type WallM } from "./simulate.ts";
import type { Timeline } from "./timeline.ts";
import type { LayersReport } from "./types.ts";
import { mm } from "./words.ts";

/** Expansions of two coats further apart than this pull on each other [1e-6/K] (common practice, no source). */
const UNLIKE = 1;

/**
 * What a stack does, or null for a single coat.
 * @param coats - from the clay outwards
 */
export function layersReport(
  coats: readonly ReadCoat[],
  melt: ReadyMelt,
  firing: Timeline,
  wall: WallM,
  draws: RunDraws,
): LayersReport | null {
  if (!melt.mixing) return null;
  const of = (which: ReadyMelt, bound: "separate" | "mixed") =>
    inMm(simulateRun(which, wall, draws, { bound }).advance);
  const separate = of(melt, "separate");
  const mixed = of(melt, "mixed");
  const reversed = of(meltOf([...coats].reverse(), firing, melt.solids, draws), "separate");
  const length = middle90(melt.mixing);
  const mixingLength = quantity(length.value * 1e3, length.low * 1e3, length.high * 1e3, UNITS.length, { decimals: 3 });
  return {
    mixingLength,
    separate,
    mixed,
    reversed,
    text: stackWords(mixingLength, separate, mixed, reversed),
    interfaces: coats.slice(1).map((outer, i) => interfaceOf(coats[i]!, outer, coats.length - 1 - i, firing.peakC)),
  };
}

function stackWords(length: Quantity, separate: Quantity, mixed: Quantity, reversed: Quantity): string {
  const micron = (value: number) => String(Math.max(1, Math.round(value * 1000)));
  const order =
    Math.max(separate.value, reversed.value) > 1.2 * Math.min(separate.value, reversed.value) + 0.05
      ? `Put on the other way round the coats would run ${mm(reversed.value)}: what lies on the clay carries the rest.`
      : "The other way round they would run much the same.";
  return (
    `By diffusion the coats melt into each other over some ${micron(length.value)} µm (${micron(length.low)} to ${micron(length.high)}); ` +
    `bubbles stir more. Kept apart they run ${mm(separate.value)}, melted into one ${mm(mixed.value)}; the truth lies between. ${order}`
  );
}

function interfaceOf(
  inner: ReadCoat,
  outer: ReadCoat,
  place: number,
  peakC: number,
): LayersReport["interfaces"][number] {
  const less = (a: Estimate, b: Estimate, unit: string): Quantity => {
    const [from, to] = [a, b].map((e) => quantileOf(e, 0.5)) as [number, number];
    const half = (p: number) => Math.hypot(quantileOf(a, p) - from, quantileOf(b, 1 - p) - to);
    return quantity(from - to, from - to - half(0.05), from - to + half(0.95), unit);
  };
  const viscosity = less(outer.curve.logViscosity(peakC), inner.curve.logViscosity(peakC), UNITS.logViscosity);
  const [outside, inside] = [outer, inner].map(
    ({ chemistry }) => glassProperties(chemistry.moleFractions).expansion,
  ) as [Estimate, Estimate];
  const expansion = {
    ...less(outside, inside, UNITS.expansion),
    rangeC: [20, 300] as [number, number],
  };
  const flow =
    Math.abs(viscosity.value) < 0.15
      ? "they flow alike"
      : viscosity.value > 0
        ? "the one beneath is the runnier and carries the upper down with it"
        : "the upper is the runnier and slides over the one beneath";
  const pull =
    Math.abs(expansion.value) < UNLIKE
      ? "they shrink nearly alike as they cool"
      : expansion.value > 0
        ? "the upper wants to shrink more than the one beneath, and may craze on it where they stay apart"
        : "the one beneath wants to shrink more than the upper, and squeezes it where they stay apart";
  return {
    coats: [place, place + 1],
    viscosity,
    expansion,
    text: `Coats ${place} and ${place + 1}, from the outside: ${flow}; ${pull}.`,
  };
}
