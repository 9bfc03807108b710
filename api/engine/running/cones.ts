/** What a pyrometric cone says of the peak. @module */
import data from "../../../data/firing/cones.json" with { type: "json" };
import { closest, UnknownNameError } from "../errors.ts";
import { CONE_PLUS_MINUS } from "./practice.ts";

type Pair = readonly [number | null, number | null];
interface Row {
  older?: Pair;
  later?: Pair;
  selfSupporting?: Pair;
}
const ROWS = data.cones as unknown as Readonly<Record<string, Row>>;
const [SLOW, FAST] = data.ratesCPerHour as [number, number];
/** Heating rates that the tables can be carried to [K/h]: the slowest that one of them prints, and twice the fastest. */
const RATES: readonly [number, number] = [15, 300];

/** Cones by number, coolest first. */
export const CONES: readonly string[] = Object.keys(ROWS).sort((a, b) => middle(a)[1] - middle(b)[1]);

/** The end point of a cone. */
export interface ConeEnd {
  /** Middle of the printed tables [°C], and half-width of a 90 % interval [K]. */
  peakC: number;
  plusMinus: number;
  /** Rate that was reckoned with, after clamping to what the tables can carry [K/h]. */
  cPerHour: number;
}

function middle(cone: string): [number, number] {
  const row = ROWS[cone]!;
  const at = (i: 0 | 1) => {
    const prints = [row.older, row.later, row.selfSupporting].flatMap((pair) => pair?.[i] ?? []);
    return { low: Math.min(...prints), high: Math.max(...prints) };
  };
  const fast = at(1);
  const slow = at(0);
  return [(slow.low + slow.high) / 2, (fast.low + fast.high) / 2];
}

/**
 * Temperature at which a standard cone has bent.
 *
 * Between the rates of the tables, 60 and 150 K/h, and a little beyond, it is read along the logarithm of the rate.
 * @param cone - number as written on the cone, `"6"`, `"04"`
 * @param cPerHour - heating over the last 100 °C [K/h]
 * @returns middle of the printed tables [°C] and half-width [K]
 * @throws UnknownNameError for a number that no table has
 * @remarks A cone answers to time as well: a soak bends it at a lower temperature than this.
 * @example coneEnd("6", 60).peakC // 1211.5
 */
export function coneEnd(cone: string, cPerHour: number): ConeEnd {
  const row = Object.hasOwn(ROWS, cone) ? ROWS[cone]! : undefined;
  if (!row) throw unknownCone(cone);
  const rate = Math.min(Math.max(cPerHour, RATES[0]), RATES[1]);
  const [slow, fast] = middle(cone);
  const share = Math.log(rate / SLOW) / Math.log(FAST / SLOW);
  const spread = [0, 1].map((i) => {
    const prints = [row.older, row.later, row.selfSupporting].flatMap((pair) => pair?.[i as 0 | 1] ?? []);
    return (Math.max(...prints) - Math.min(...prints)) / 2;
  });
  return {
    peakC: slow + (fast - slow) * share,
    plusMinus: Math.max(...spread) + CONE_PLUS_MINUS,
    cPerHour: rate,
  };
}

function unknownCone(cone: string): UnknownNameError {
  const near = closest(cone, CONES);
  const message = `I know no cone ${cone}. Cones run from 022 (coolest) to 14; 06 and 6 are two hundred degrees apart, so mind the nought.`;
  return new UnknownNameError([
    { pointer: "/cone", message, allowed: [...CONES], ...(near === undefined ? {} : { suggestion: near }) },
  ]);
}
