/** What a change of recipe has to keep: the melt, the Seger formula, the ratios of its kind. @module */
import type { State } from "./bench.ts";
import { HELD_WITHIN, type Kind } from "./kinds.ts";
import type { Bounds, RemediesRequest } from "./types.ts";

/** How far outside a limit the full model may come by rounding alone [share of its span]. */
const SLACK = 1e-3;
/** A limit stands in the way from here on [share of its span]. */
const NEAR = 0.05;
/** Changes of the melt taken where the request is silent (common practice, no source). */
export const LOG_VISCOSITY = 0.2;
export const TENSION_PERCENT = 5;

/** Marks limits that a kind of change holds by itself, not the question. */
export const KEPT = " kept";

/** What holds whatever is changed. */
export interface Terms {
  target: number;
  /** −1 where the glaze should expand less, +1 where more. */
  direction: -1 | 1;
  /** Bounds of each line's parts. */
  low: readonly number[];
  high: readonly number[];
  request: RemediesRequest;
  start: State;
}

/** One limit. */
export interface Limit {
  name: string;
  /** The figure that is limited, of the full model. */
  value: (state: State) => number | null;
  low: number;
  high: number;
}

/** Every limit on one kind of change. */
export function limitsOf(kind: Kind, { request, start }: Terms): Limit[] {
  const limits: Limit[] = [];
  const log = request.melt?.logViscosity ?? LOG_VISCOSITY;
  limits.push({
    name: "melt",
    value: (state) => state.logViscosity,
    low: start.logViscosity - log,
    high: start.logViscosity + log,
  });
  if (start.tension !== null) {
    const share = (request.melt?.surfaceTensionPercent ?? TENSION_PERCENT) / 100;
    limits.push({
      name: "surface tension",
      value: (state) => state.tension,
      low: start.tension * (1 - share),
      high: start.tension * (1 + share),
    });
  }
  const seger = (state: State, oxide: string) => state.chemistry.seger?.moles[oxide] ?? 0;
  const add = (name: string, value: (state: State) => number, { min, max }: Bounds) =>
    limits.push({ name, value, low: min ?? Number.NEGATIVE_INFINITY, high: max ?? Number.POSITIVE_INFINITY });
  for (const [oxide, bounds] of Object.entries(request.seger ?? {})) {
    add(`${oxide} in the Seger formula`, (state) => seger(state, oxide), bounds);
  }
  const ratio = (state: State) => state.chemistry.seger?.silicaToAlumina ?? 100;
  if (request.silicaToAlumina) add("silica to alumina", ratio, request.silicaToAlumina);
  const about = (value: number): Bounds => ({ min: value * (1 - HELD_WITHIN), max: value * (1 + HELD_WITHIN) });
  if (kind.holds === "silica-to-alumina") add(`silica to alumina${KEPT}`, ratio, about(ratio(start)));
  if (kind.holds === "silica-and-alumina") {
    for (const oxide of ["SiO2", "Al2O3"]) {
      add(`${oxide} in the Seger formula${KEPT}`, (state) => seger(state, oxide), about(seger(start, oxide)));
    }
  }
  return limits;
}

/** Width of a limit; 1 where an end is open. */
export const spanOf = ({ low, high }: Limit) => (Number.isFinite(high - low) ? high - low : 1);

/**
 * How far the full model is outside a limit [share of its span]; 0 within. A figure that can no longer be told (a surface
 * tension that no set gives) counts as 0, as it does for slopes: nobody could say that it was kept.
 */
export function missedBy(limit: Limit, state: State): number {
  const value = limit.value(state) ?? 0;
  const span = spanOf(limit);
  const missed = Math.max(limit.low - value, value - limit.high, 0) / span;
  return missed > SLACK ? missed : 0;
}

/** Whether a figure lies close enough to its limit to stand in the way. */
export function atLimit(limit: Limit, state: State): boolean {
  const value = limit.value(state);
  const near = NEAR * spanOf(limit);
  return value !== null && (value <= limit.low + near || value >= limit.high - near);
}
