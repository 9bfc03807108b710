/** The question: where in this blend does it fit? @module */
import { EngineError, type Notice } from "../errors.ts";
import { verdictOf } from "../evidence/suits.ts";
import { FIT_SOURCES } from "../fit/constants.ts";
import { drawsFor } from "../fit/draws.ts";
import { probabilitiesOf, simulate } from "../fit/simulate.ts";
import { prepare } from "../fit/situation.ts";
import { middle90 } from "../numeric/quantiles.ts";
import { quantileOf, quantity, round, UNITS } from "../quantity.ts";
import type { Recipe, RecipeLine } from "../recipe/types.ts";
import { DATA_VERSION, DEFAULT_SEED, ENGINE_VERSION } from "../version.ts";
import { headline } from "./headline.ts";
import type { LatticePoint } from "./lattice.ts";
import { type ReadyBlend, readBlend } from "./read-request.ts";
import type { BlendGap, BlendPoint, BlendReport, BlendRequest } from "./types.ts";

/** A blend that can be judged point by point. */
export interface Blend {
  ready: ReadyBlend;
  /** Points from `from` on, each judged when it is asked for. */
  points(): Generator<BlendPoint | BlendGap>;
  /** What goes beside the points, once they are known. */
  report(points: (BlendPoint | BlendGap)[]): BlendReport;
}

/**
 * Lays out a blend by dry weight and judges each point as a fit does, without its reasons.
 * @param request - corners, steps, clay, firing, ware; where to begin
 * @returns points one after another, in an order in which each is one step from the one before
 * @throws EngineError with every issue, pointers from the root of the request
 * @remarks A point that cannot be judged is a gap with its reason, and the rest goes on.
 * @example [...openBlend({ corners: [{ glaze: thaw }, { glaze: hail }], steps: 4, body }).points()].length // 5
 */
export function openBlend(request: BlendRequest): Blend {
  const ready = readBlend(request);
  const seed = request.seed ?? DEFAULT_SEED;
  return {
    ready,
    *points() {
      const { lattice, from, to } = ready;
      let before = from > 0 ? lattice.at(from - 1) : undefined;
      for (let index = from; index < to; index++) {
        const point = lattice.at(index);
        yield judgePoint(request, ready, seed, index, point, before);
        before = point;
      }
    },
    report: (points) => ({
      headline: headline(ready.names, points),
      corners: ready.names,
      points,
      engine: { version: ENGINE_VERSION, dataVersion: DATA_VERSION, seed },
      warnings: ready.warnings,
      cautions: [...ready.cautions, NOT_A_CERTIFICATE],
      sources: [...new Set([...ready.sources, ...FIT_SOURCES])].sort(),
    }),
  };
}

/** Warnings that come and go with the mixture. */
const OF_A_POINT: ReadonlySet<string> = new Set(["outside-training-range", "under-fired", "feldspar-glass"]);

const NOT_A_CERTIFICATE: Notice = {
  code: "not-a-certificate",
  message:
    "This is a calculation from compositions. It never certifies that ware is safe for food; a leach test by a licensed laboratory does.",
};

/** Judges the whole blend. */
export function judgeBlend(request: BlendRequest): BlendReport {
  const blend = openBlend(request);
  return blend.report([...blend.points()]);
}

function judgePoint(
  request: BlendRequest,
  ready: ReadyBlend,
  seed: number,
  index: number,
  { shares, label }: LatticePoint,
  before: LatticePoint | undefined,
): BlendPoint | BlendGap {
  const place = {
    index,
    of: ready.lattice.size,
    label,
    shares: shares.map((share) => round(share, 6)),
    move: before ? moveWords(ready.names, before.shares, shares) : null,
  };
  const glaze = mixture(ready, shares);
  try {
    const { situation, chemistry, warnings } = prepare({
      glaze,
      body: request.body,
      firing: request.firing,
      ware: request.ware,
    });
    const simulation = simulate(situation, drawsFor(seed));
    const probabilities = probabilitiesOf(simulation);
    const stress = middle90(simulation.stress);
    const { expansion, recipeSd } = situation;
    const middle = quantileOf(expansion, 0.5);
    const half = (p: number) => Math.hypot(quantileOf(expansion, p) - middle, recipeSd * 1.645);
    return {
      ...place,
      recipe: rounded(glaze.recipe),
      additions: rounded(glaze.additions ?? []),
      seger: chemistry?.seger ? shown(chemistry.seger.moles) : null,
      expansion: quantity(middle, middle - half(0.05), middle + half(0.95), UNITS.expansion, { rangeC: [20, 300] }),
      verdict: verdictOf(probabilities).verdict,
      probabilities,
      stress: quantity(stress.value / 1e6, stress.low / 1e6, stress.high / 1e6, UNITS.stress, { decimals: 1 }),
      // What holds for every point is said once, beside them.
      warnings: warnings.filter(({ code }) => OF_A_POINT.has(code)),
    };
  } catch (error) {
    if (!(error instanceof EngineError)) throw error;
    return { ...place, problem: error.issues.map(({ message }) => message).join(" ") };
  }
}

/** The mixture for 100 parts of base recipe, additions over it. */
export function mixture(
  { lines, takes, thicknessMm }: ReadyBlend,
  shares: readonly number[],
): Recipe & { thicknessMm?: number } {
  const parts = new Map<number, number>();
  shares.forEach((share, c) => {
    if (share > 0) for (const take of takes[c]!) parts.set(take.at, (parts.get(take.at) ?? 0) + share * take.parts);
  });
  const recipe: RecipeLine[] = [];
  const additions: RecipeLine[] = [];
  for (const at of [...parts.keys()].sort((a, b) => a - b)) {
    const { line, addition } = lines[at]!;
    if (parts.get(at)! > 0) (addition ? additions : recipe).push({ ...line, parts: parts.get(at)! });
  }
  return additions.length > 0 ? { recipe, additions, thicknessMm } : { recipe, thicknessMm };
}

const rounded = (lines: readonly RecipeLine[]) => lines.map((line) => ({ ...line, parts: round(line.parts, 3) }));

function shown(moles: Readonly<Record<string, number>>): Record<string, number> {
  const out: Record<string, number> = {};
  for (const oxide in moles) out[oxide] = round(moles[oxide]!, 3);
  return out;
}

/** @example moveWords(["Thaw", "Hail"], [1, 0], [0.9, 0.1]) // "10 % less Thaw, 10 % more Hail" */
function moveWords(names: readonly string[], before: readonly number[], after: readonly number[]): string {
  const changes = names.map((name, c) => ({ name, by: round((after[c]! - before[c]!) * 100, 1) }));
  const less = changes.filter(({ by }) => by < 0).map(({ name, by }) => `${-by} % less ${name}`);
  const more = changes.filter(({ by }) => by > 0).map(({ name, by }) => `${by} % more ${name}`);
  return [...less, ...more].join(", ");
}
