/** The question: what must this glaze be, going by its tiles? @module */
import { at, Z90 } from "../body/index.ts";
import type { Notice } from "../errors.ts";
import { FIT_SOURCES } from "../fit/constants.ts";
import { TRIAL_SOURCES } from "../fit/trials.ts";
import { quantity, round, UNITS } from "../quantity.ts";
import { DATA_VERSION, DEFAULT_SEED, ENGINE_VERSION } from "../version.ts";
import { asQuantity, learnAll } from "./lessons.ts";
import { nextTiles } from "./next-tile.ts";
import { type Belief, between, quantileIn } from "./prior.ts";
import { type Evidence, type ReadyPiece, readEvidence } from "./read-request.ts";
import { suits } from "./suits.ts";
import type { BeliefPoint, EvidenceReport, EvidenceRequest, LearnedBody } from "./types.ts";
import { cellsOf, drawWeights, effectiveDraws } from "./weigh.ts";
import { expansionWords } from "./words.ts";

/** Equally likely expansions that stand for the posterior where clays are judged and tiles proposed [-]. */
const CELLS = 24;
/** Draws left below which the answer rests on too few [-] (common practice, no source). */
const FEW_DRAWS = 24;
/** Points of the curve of belief that are shown [-]. */
const SHOWN = 61;

/**
 * Learns a glaze's expansion from what its tiles did.
 *
 *     p(α | seen) ∝ p(α) Σ over draws Π over tiles p(seen | α, draw)
 *
 * The likelihoods are the fit's own: each of its thousand draws of everything uncertain is judged at every expansion.
 * Tiles of one clay share that clay's draw, so that five tiles of a doubtful clay do not count as five clays.
 * @param request - the glaze (or nothing for a bought one), tiles with what was seen, dilatometer runs, clays to judge
 * @returns prior and posterior [1e-6/K, mean 20–300 °C, glass in bulk], what each tile taught, what to fire next
 * @throws EngineError with every issue, pointers from the root of the request
 * @remarks Pure and deterministic. The order of tiles does not matter.
 * @example learnFromTiles({ tiles: [{ body: { class: "buff-stoneware" }, seen: [{ kind: "crazed" }] }] }).after.value // above 7
 */
export function learnFromTiles(request: EvidenceRequest): EvidenceReport {
  const seed = request.seed ?? DEFAULT_SEED;
  const evidence = readEvidence(request, seed);
  const { joint, lessons } = learnAll(evidence);
  const before = asQuantity(evidence.before);
  const after = asQuantity(joint.belief);
  const cells = cellsOf(joint, CELLS);
  const weights = drawWeights(joint);
  const clays = differentClays([...evidence.tiles, ...evidence.bodies]);
  const usualMm = request.thicknessMm ?? evidence.glaze.thicknessMm ?? 0.3;
  const half = (after.high - after.low) / 2;
  const [p05, p25, p50, p75, p95] = [0.05, 0.25, 0.5, 0.75, 0.95].map((p) => round(quantileIn(joint.belief, p), 3));
  const count = evidence.tiles.length + evidence.runs.length;
  const known = evidence.known ? "the recipe alone gave" : "of a glaze of unknown composition I only knew";
  return {
    headline: `Going by ${count === 1 ? "one piece of evidence" : `${count} pieces of evidence`}, the glaze expands ${expansionWords(after)} from 20 to 300\u00a0°C; before that, ${known} ${expansionWords(before)}.`,
    before,
    after,
    quantiles: { p05: p05!, p25: p25!, p50: p50!, p75: p75!, p95: p95! },
    glaze: {
      expansion: {
        value: round((after.low + after.high) / 2, 3),
        rangeC: [20, 300],
        plusMinus: round(Math.min(half, 5), 3),
      },
      // Only a transition that a fit would take is handed on.
      ...(isTransition(evidence.transitionC) ? { transitionC: evidence.transitionC } : {}),
      thicknessMm: usualMm,
    },
    belief: curve(evidence, joint.belief),
    lessons: lessons.map((lesson) => ({ ...lesson, expected: round(lesson.expected, 3) })),
    learnedBodies: differentClays(evidence.tiles).map((clay) => learnedBody(clay, weights)),
    suits: evidence.bodies.map((piece) => suits(piece, cells)),
    next: nextTiles(clays, cells, usualMm),
    engine: { version: ENGINE_VERSION, dataVersion: DATA_VERSION, seed },
    warnings: [...evidence.warnings, ...remarks(evidence, weights, before, after)],
    cautions: [...evidence.cautions, ...cautions(evidence)],
    sources: [...new Set([...evidence.sources, ...FIT_SOURCES, ...TRIAL_SOURCES, "timoshenko-1925"])].sort(),
  };
}

/** Whether a glass transition lies where those of glazes do [°C]. */
function isTransition(c: number | undefined): c is number {
  return c !== undefined && c >= 300 && c <= 900;
}

/** One piece of each clay met, in the order of the request. */
function differentClays(pieces: readonly ReadyPiece[]): ReadyPiece[] {
  const met = new Map<string, ReadyPiece>();
  for (const piece of pieces) {
    const { classId } = piece.prepared.body;
    if (!met.has(piece.bodyKey)) met.set(piece.bodyKey, { ...piece, name: clayName(piece, classId) });
  }
  return [...met.values()];
}

function clayName({ name, prepared }: ReadyPiece, classId: string | null): string {
  const { expansion, basis } = prepared.body;
  const what = classId === null ? `the clay of ${name}` : `the ${prepared.body.class.name}`;
  return basis === "stated" ? `${what} (${round(expansion.value, 2)}\u00a0×10⁻⁶/K stated)` : what;
}

/** The clay's own figure before and after: its draws, weighed by how well they explain the tiles. */
function learnedBody({ name, prepared, draws }: ReadyPiece, weights: Float64Array): LearnedBody {
  const { expansion } = prepared.body;
  const { rangeC } = expansion;
  const order = [...weights.keys()].sort((a, b) => draws.normal.bodyMean[a]! - draws.normal.bodyMean[b]!);
  const quantile = (p: number) => {
    let below = 0;
    for (const i of order) {
      below += weights[i]!;
      if (below >= p) return at(expansion, draws.normal.bodyMean[i]!);
    }
    return at(expansion, draws.normal.bodyMean[order.at(-1)!]!);
  };
  const of = (low: number, value: number, high: number) => quantity(value, low, high, UNITS.expansion, { rangeC });
  return {
    name,
    before: of(at(expansion, -Z90), at(expansion, 0), at(expansion, Z90)),
    after: of(quantile(0.05), quantile(0.5), quantile(0.95)),
  };
}

/** Both beliefs over what is left possible; before any run there may have been more on either side. */
function curve({ prior, before }: Evidence, after: Belief): BeliefPoint[] {
  const { alphas } = prior;
  const step = alphas[1]! - alphas[0]!;
  const stride = (alphas.length - 1) / (SHOWN - 1);
  const was = prior === before ? prior.weights.map((w) => w / step) : alphas.map(between(before));
  return Array.from({ length: SHOWN }, (_, k) => {
    const g = Math.round(k * stride);
    return {
      expansion: round(alphas[g]!, 3),
      before: round(was[g]!, 4),
      after: round(after.weights[g]! / step, 4),
    };
  });
}

function remarks(
  evidence: Evidence,
  weights: Float64Array,
  before: EvidenceReport["before"],
  after: EvidenceReport["after"],
): Notice[] {
  const notices: Notice[] = [];
  if (!evidence.known) {
    notices.push({
      code: "composition-unknown",
      message: `You gave no composition, so I began from what glazes can be: ${expansionWords(before)}. I took a glass transition of 630 ± 66 °C and a stiffness of 70 ± 8 GPa.`,
    });
  } else if (after.value < before.low || after.value > before.high) {
    notices.push({
      code: "tiles-against-recipe",
      message: `The tiles say ${expansionWords(after)}, the recipe ${expansionWords(before)}. Either the recipe is not what is in the bucket, or a clay is not what its sheet says.`,
      pointer: "/glaze",
    });
  }
  const left = effectiveDraws(weights);
  if (left < FEW_DRAWS) {
    notices.push({
      code: "few-cases-agree",
      message: `Only about ${Math.max(Math.round(left), 1)} of my 1024 cases agree with everything you saw. The answer is rougher than its interval says: look for a tile that does not belong.`,
    });
  }
  return notices;
}

function cautions({ tiles, known }: Evidence): Notice[] {
  const notices: Notice[] = [
    {
      code: "hot-quench",
      message:
        "A hot tile plunged into water can throw splinters and steam. Wear goggles and a face shield and heatproof gloves, and never do it with a crowd.",
    },
  ];
  if (tiles.some(({ answered }) => answered.some((a) => a.question.ask === "shivered" && a.answer === 1))) {
    notices.push({
      code: "shivering-slivers",
      message:
        "A shivering glaze sheds slivers as sharp as glass. Wear eye protection when you handle such ware and never use it for food or drink.",
    });
  }
  if (!known) {
    notices.push({
      code: "unknown-composition",
      message:
        "The composition is unknown, so nothing is known of what may leach. For food use, have a laboratory test it (ISO 6486, ASTM C738, EN 1388); limits differ by country.",
    });
  }
  notices.push({
    code: "not-a-certificate",
    message:
      "This is a calculation from tiles and compositions. It never certifies that ware is safe for food; a leach test by a licensed laboratory does.",
  });
  return notices;
}
