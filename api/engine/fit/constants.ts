/** Fracture, set-point and on-ware figures of data/fit/mechanics.json, read once. @module */
import mechanics from "../../../data/fit/mechanics.json" with { type: "json" };
import { fromSpan, type Spread } from "../body/index.ts";
import type { EvenTable } from "../numeric/interpolate.ts";

type Range = readonly [number, number];

function toughness(kind: keyof typeof mechanics.toughness): Spread {
  return fromSpan(mechanics.toughness[kind].range as unknown as Range, 0.05);
}

/** Fracture toughness by kind of glaze, and the stress-corrosion floor K0 [MPa·√m]. */
export const TOUGHNESS = {
  "alkali-lime": toughness("alkali-lime"),
  borosilicate: toughness("borosilicate"),
  lead: toughness("lead"),
  floor: toughness("floor"),
} as const;

/** Channelling factor Z against Dundurs' α of glaze and body [-]. */
export const CHANNELLING: EvenTable = {
  start: mechanics.channelling.start,
  perStep: 1 / mechanics.channelling.step,
  values: Float64Array.from(mechanics.channelling.z),
};

/** Interface toughness, log-normal [J/m²]. */
export const INTERFACE = mechanics.interface;
/** What fixes the set point. */
export const SET_POINT = mechanics.setPoint;
/** How much less a thin glaze expands on ware than in bulk. */
export const ON_WARE = mechanics.onWare;
/** Speed of a crack in glass, and how far one has to run to be seen. */
export const CRACK_GROWTH = mechanics.crackGrowth;
/** Strength in even tension as a share of the modulus of rupture [-]. */
export const TENSILE_SHARE = mechanics.strength.tensileShare;
/** Share of the full thermal stress that a surface feels in a water quench [-]. */
export const QUENCH_FACTOR: Spread = fromSpan(mechanics.quench.factor as unknown as Range, 0.2);
/** Poisson's ratio of a glaze [-]. */
export const POISSON = mechanics.poisson.value;

/** Keys of every source that any fit rests on. */
export const FIT_SOURCES: readonly string[] = [
  ...new Set([
    ...mechanics.toughness["alkali-lime"].sources,
    ...mechanics.toughness.floor.sources,
    ...mechanics.channelling.sources,
    ...mechanics.interface.sources,
    ...mechanics.setPoint.sources,
    ...mechanics.onWare.sources,
  ]),
];
