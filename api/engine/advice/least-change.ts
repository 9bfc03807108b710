/** The least change of a recipe that reaches a target: linear programme, full model, and again. @module */
import type { Bench, BenchLine, State } from "./bench.ts";
import { HELD_WITHIN, type Kind } from "./kinds.ts";
import type { LinearProgram, LinearSolver } from "./solver.ts";
import type { Bounds, RemediesRequest } from "./types.ts";

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

/** Where a search ended. */
export interface Found {
  x: number[];
  state: State;
  moved: number;
  reaches: boolean;
  /** Names of limits that stood in the way. */
  tight: string[];
}

/** How far from the middle of its span a limit may be missed by the full model (rounding alone). */
const SLACK = 1e-3;
/** Programmes aim this far inside each limit, so that the curve of the full model stays within [share of the span]. */
const INSIDE = 0.01;
const ROUNDS = 16;
/** Tries of one round, each allowing for the bend that the one before showed. */
const CORRECTIONS = 4;
/** A part more or less in 100, for slopes. */
const STEP = 0.5;
/** Farthest a line may go in one round, at first and at last [parts in 100]. */
const FIRST_REACH = 25;
const LAST_REACH = 0.1;
/** A round that moves less has settled [parts in 100]. */
const SETTLED = 0.02;
const LOG_VISCOSITY = 0.2;
const TENSION_PERCENT = 5;

interface Limit {
  name: string;
  /** The figure that is limited, of the full model. */
  value: (state: State) => number | null;
  low: number;
  high: number;
}

/**
 * Searches one kind of change.
 *
 *     least Σ |Δ|  with  σ + Σ ∂σ/∂x Δ ≤ σ*,  every limit linearised likewise, bounds of parts
 *
 * σ* is the mean stress at which the chance of staying sound is the target, found by shifting the expansion of the glass
 * at hand; slopes and σ* are taken anew at each round, and only recipes that the full model approves are kept.
 * @param bench - the recipe
 * @param kind - which lines may move
 * @param terms - target, bounds, limits
 * @param solve - solver of linear programmes
 */
export function leastChange(bench: Bench, kind: Kind, terms: Terms, solve: LinearSolver): Found | null {
  const now = bench.lines.map((line) => line.now);
  const may = movable(bench.lines, kind, terms);
  if (may.every(({ up, down }) => !up && !down)) return null;
  const limits = limitsOf(kind, terms);
  const judged = (x: number[], state: State): Found & { missed: number } => ({
    x,
    state,
    moved: movedOf(now, x),
    reaches: state.sound >= terms.target,
    tight: limits.filter((limit) => atLimit(limit, state)).map(({ name }) => name),
    missed: limits.reduce((sum, limit) => sum + missedBy(limit, state), 0),
  });
  let here = judged(now, terms.start);
  let reach = FIRST_REACH;
  for (let round = 0; round < ROUNDS && reach >= LAST_REACH; round++) {
    const { x, state } = here;
    const slopes = slopesAt(bench, x, state, may, limits);
    const aim = stressFor(bench, state, terms);
    let bent: Bent = { stress: 0, limits: limits.map(() => 0) };
    let better: typeof here | undefined;
    for (let tries = 0; tries < CORRECTIONS && !better; tries++) {
      const at = { x, state, slopes, aim, reach, kind, bent };
      const columns =
        solve(program(bench, terms, may, limits, { ...at, tight: true })) ??
        solve(program(bench, terms, may, limits, { ...at, tight: false }));
      if (!columns) break;
      const n = now.length;
      const next = now.map((parts, j) => Math.max(parts + columns[j]! - columns[n + j]!, 0));
      const there = bench.at(next);
      if (!there) break;
      const found = judged(next, there);
      if (improves(found, here)) better = found;
      // How far the full model bends away from the straight line on the way there; the next try allows for it.
      else bent = bentAt(limits, here, found, slopes);
    }
    if (!better) reach /= 4;
    else {
      const settled = movedOf(x, better.x) < SETTLED;
      here = better;
      if (settled) break;
    }
  }
  return here.missed === 0 && here.moved > 0 ? here : null;
}

/** What the straight lines of a programme miss [MPa; units of each limit]. */
interface Bent {
  stress: number;
  limits: number[];
}

function bentAt(limits: readonly Limit[], here: Found, there: Found, slopes: Slopes): Bent {
  const straight = (weights: readonly number[]) =>
    weights.reduce((sum, slope, j) => sum + slope * (there.x[j]! - here.x[j]!), 0);
  return {
    stress: (there.state.stress - here.state.stress - straight(slopes.stress)) / 1e6,
    limits: limits.map(
      (limit, k) => (limit.value(there.state) ?? 0) - (limit.value(here.state) ?? 0) - straight(slopes.limits[k]!),
    ),
  };
}

/** Whether a recipe is better: nearer to the limits, then reaching the target, then with less moved or more sound. */
function improves(a: Found & { missed: number }, b: Found & { missed: number }): boolean {
  if (a.missed > 0 || b.missed > 0) return a.missed < b.missed - 1e-9;
  if (a.reaches !== b.reaches) return a.reaches;
  return a.reaches ? a.moved < b.moved - 1e-3 : a.state.sound > b.state.sound + 1e-9;
}

/** Σ |Δ| [parts in 100]. */
export function movedOf(before: readonly number[], after: readonly number[]): number {
  return before.reduce((sum, parts, j) => sum + Math.abs(after[j]! - parts), 0);
}

interface May {
  up: boolean;
  down: boolean;
}

function movable(lines: readonly BenchLine[], kind: Kind, { direction, low, high }: Terms): May[] {
  return lines.map((line, j) => {
    const [more, less] = direction < 0 ? [kind.up, kind.down] : [kind.down, kind.up];
    const swaps = kind.holds === "silica-and-alumina" || kind.kind === "least-change";
    const up = swaps ? kind.up(line) : more(line);
    const down = swaps ? kind.down(line) : less(line);
    return {
      up: !line.colours && up && high[j]! > line.now + 1e-9,
      down: !line.colours && down && low[j]! < line.now - 1e-9,
    };
  });
}

/** Mean stress to aim at: the nearest at which the target is reached, else where most stay sound [Pa]. */
function stressFor(bench: Bench, state: State, { target, direction }: Terms): number {
  const goal = target + 0.002;
  let inside = 0;
  let outside = 0;
  let best = { sound: state.sound, stress: state.stress };
  if (state.sound >= goal) {
    // Already there: walk back towards the start as far as it holds.
    for (let by = 0.25; by <= 3; by += 0.25) {
      const there = bench.shifted(state, -direction * by);
      if (there.sound < goal) {
        outside = -direction * by;
        break;
      }
      inside = -direction * by;
    }
    if (outside === 0) return bench.shifted(state, inside).stress;
  } else {
    for (let by = 0.25; by <= 5; by += 0.25) {
      const there = bench.shifted(state, direction * by);
      if (there.sound > best.sound) best = there;
      if (there.sound >= goal) {
        inside = direction * by;
        break;
      }
      outside = direction * by;
    }
    if (inside === 0) return best.stress;
  }
  for (let i = 0; i < 7; i++) {
    const middle = (inside + outside) / 2;
    if (bench.shifted(state, middle).sound >= goal) inside = middle;
    else outside = middle;
  }
  return bench.shifted(state, inside).stress;
}

interface Slopes {
  stress: number[];
  limits: number[][];
}

/** Slope of the stress and of every limited figure with each line that may move, by a small step. */
function slopesAt(
  bench: Bench,
  x: readonly number[],
  state: State,
  may: readonly May[],
  limits: readonly Limit[],
): Slopes {
  const slopes: Slopes = { stress: x.map(() => 0), limits: limits.map(() => x.map(() => 0)) };
  x.forEach((parts, j) => {
    if (!may[j]!.up && !may[j]!.down) return;
    const step = may[j]!.up || parts < STEP ? STEP : -STEP;
    const beside = [...x];
    beside[j] = parts + step;
    const there = bench.at(beside);
    if (!there) return;
    slopes.stress[j] = (there.stress - state.stress) / step;
    limits.forEach((limit, k) => {
      slopes.limits[k]![j] = ((limit.value(there) ?? 0) - (limit.value(state) ?? 0)) / step;
    });
  });
  return slopes;
}

interface Here {
  x: readonly number[];
  state: State;
  slopes: Slopes;
  aim: number;
  reach: number;
  /** Whether the target has to be met; if not, as near as the limits let it. */
  tight: boolean;
  kind: Kind;
  bent: Bent;
}

/** Columns: parts more, parts less, and what is missing from the stress aimed at [MPa]. */
function program(bench: Bench, terms: Terms, may: readonly May[], limits: readonly Limit[], here: Here): LinearProgram {
  const { lines } = bench;
  const n = lines.length;
  const { x, state, slopes, aim, reach, tight, kind, bent } = here;
  const signed = (weights: readonly number[], short = 0) => [...weights, ...weights.map((w) => -w), short];
  const room = (j: number, way: 1 | -1) => (way > 0 ? terms.high[j]! - lines[j]!.now : lines[j]!.now - terms.low[j]!);
  const shift = (weights: readonly number[]) => weights.reduce((sum, w, j) => sum + w * (x[j]! - lines[j]!.now), 0);
  const stress = slopes.stress.map((slope) => slope / 1e6);
  const gap = (aim - state.stress) / 1e6 + shift(stress) - bent.stress;
  const open = Number.POSITIVE_INFINITY;
  const rows: LinearProgram["rows"] = [
    terms.direction < 0
      ? { weights: signed(stress, -1), low: -open, high: gap }
      : { weights: signed(stress, 1), low: gap, high: open },
  ];
  limits.forEach((limit, k) => {
    const value = limit.value(state);
    const weights = slopes.limits[k]!;
    if (value === null) return;
    const base = value - shift(weights) + bent.limits[k]!;
    const inside = INSIDE * spanOf(limit);
    rows.push({ weights: signed(weights), low: limit.low + inside - base, high: limit.high - inside - base });
  });
  x.forEach((parts, j) => {
    if (!may[j]!.up && !may[j]!.down) return;
    const weights = x.map((_, k) => (k === j ? 1 : 0));
    const from = parts - lines[j]!.now;
    rows.push({ weights: signed(weights), low: from - reach, high: from + reach });
  });
  if (kind.with) {
    const { follows, leads } = kind.with;
    rows.push({
      weights: signed(lines.map((line) => (follows(line) ? 1 : leads(line) ? -1 : 0))),
      low: terms.direction < 0 ? -open : 0,
      high: terms.direction < 0 ? 0 : open,
    });
  }
  return {
    cost: [...x.map(() => 1), ...x.map(() => 1), tight ? 0 : 1e4],
    low: Array(2 * n + 1).fill(0),
    high: [
      ...lines.map((_, j) => (may[j]!.up ? Math.max(room(j, 1), 0) : 0)),
      ...lines.map((_, j) => (may[j]!.down ? Math.max(room(j, -1), 0) : 0)),
      tight ? 0 : 1e4,
    ],
    rows,
  };
}

function limitsOf(kind: Kind, { request, start }: Terms): Limit[] {
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
  if (kind.holds === "silica-to-alumina") add("silica to alumina kept", ratio, about(ratio(start)));
  if (kind.holds === "silica-and-alumina") {
    for (const oxide of ["SiO2", "Al2O3"]) {
      add(`${oxide} in the Seger formula kept`, (state) => seger(state, oxide), about(seger(start, oxide)));
    }
  }
  return limits;
}

const spanOf = ({ low, high }: Limit) => (Number.isFinite(high - low) ? high - low : 1);

/** How far the full model is outside a limit [share of its span]; 0 within. */
function missedBy(limit: Limit, state: State): number {
  const value = limit.value(state);
  if (value === null) return 0;
  const span = spanOf(limit);
  const missed = Math.max(limit.low - value, value - limit.high, 0) / span;
  return missed > SLACK ? missed : 0;
}

function atLimit(limit: Limit, state: State): boolean {
  const value = limit.value(state);
  const near = 0.05 * spanOf(limit);
  return value !== null && (value <= limit.low + near || value >= limit.high - near);
}
