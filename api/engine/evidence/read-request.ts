/** From what a potter wrote down to tiles that can be reckoned with. @module */
import { EngineError, ImpossibleValueError, type Issue, type Notice } from "../errors.ts";
import { drawsFor } from "../fit/draws.ts";
import { softRemarks } from "../fit/read-stated-glaze.ts";
import { type Prepared, prepare } from "../fit/situation.ts";
import { quantity, UNITS } from "../quantity.ts";
import type { SingleGlaze } from "../recipe/types.ts";
import { meanIssues, rangeRemarks } from "../stated-mean.ts";
import { seenIssues } from "./check-seen.ts";
import { canonical, tileDraws } from "./levels.ts";
import { type Answered, asked, type Ready } from "./predict.ts";
import {
  asRun,
  type Belief,
  beliefOn,
  type Density,
  densityOf,
  type Run,
  UNKNOWN_GLAZE,
  unknownDensity,
} from "./prior.ts";
import type { EvidenceRequest, Piece } from "./types.ts";

/** Half-width of a 90 % interval of a dilatometer run that tells none [1e-6/K] (common practice, no source). */
const RUN_PLUS_MINUS = 0.2;

/** A piece made ready. */
export interface ReadyPiece extends Ready {
  name: string;
  prepared: Prepared;
  piece: Piece;
  bodyKey: string;
}

/** A tile made ready: what was asked of it, and answered. */
export interface ReadyTile extends ReadyPiece {
  pointer: string;
  key: string;
  answered: readonly Answered[];
}

/** The request made ready. */
export interface Evidence {
  /** Density of the prior. */
  density: Density;
  /** The prior on a grid that holds nearly all of it. */
  before: Belief;
  /** The prior on a grid as narrow as the runs allow; the same where there is none. */
  prior: Belief;
  /** Whether the prior knows anything of this glaze. */
  known: boolean;
  runs: readonly (Run & { pointer: string; name: string })[];
  tiles: readonly ReadyTile[];
  bodies: readonly ReadyPiece[];
  glaze: SingleGlaze;
  warnings: Notice[];
  cautions: Notice[];
  sources: string[];
  /** Glass transition, where the composition tells [°C]. */
  transitionC: number | undefined;
}

/** What stands for a bought glaze in a fit. */
const UNKNOWN: SingleGlaze = {
  expansion: { value: UNKNOWN_GLAZE.value, rangeC: [20, 300], plusMinus: 2.6 },
};

/**
 * Reads the request; collects every issue before refusing.
 * @throws EngineError with all issues, pointers from the root of the request
 */
export function readEvidence(request: EvidenceRequest, seed: number): Evidence {
  const issues: Issue[] = [];
  const warnings: Notice[] = [];
  const cautions: Notice[] = [];
  const sources = new Set<string>();
  const glaze: SingleGlaze = request.glaze ?? UNKNOWN;
  const base = drawsFor(seed);
  const counts = new Map<string, number>();

  const ready = (piece: Piece, pointer: string, key: string, issuesHere: Issue[]): ReadyPiece | undefined => {
    const thicknessMm = (piece.thicknessMm ?? request.thicknessMm ?? glaze.thicknessMm ?? 0.3) * (piece.coats ?? 1);
    const { body, firing, ware } = piece;
    try {
      const prepared = prepare({ glaze: { ...glaze, thicknessMm }, body, firing, ware });
      const bodyKey = canonical(body);
      note(prepared, pointer, request.glaze === undefined);
      const draws = tileDraws(base, seed, bodyKey, key);
      return { name: nameOf(piece, pointer), prepared, piece, bodyKey, situation: prepared.situation, draws };
    } catch (error) {
      if (!(error instanceof EngineError)) throw error;
      for (const issue of error.issues) issuesHere.push({ ...issue, pointer: move(issue.pointer, pointer) });
      return undefined;
    }
  };
  const note = (prepared: Prepared, pointer: string, unknown: boolean) => {
    for (const notice of prepared.warnings) {
      const at = notice.pointer === undefined ? undefined : move(notice.pointer, pointer);
      // The stand-in for a bought glaze is nobody's; how thick it lies is the tile's.
      if (unknown && !at?.startsWith(pointer)) continue;
      if (!warnings.some((w) => w.code === notice.code && w.message === notice.message)) {
        warnings.push({ ...notice, ...(at === undefined ? {} : { pointer: at }) });
      }
    }
    for (const caution of prepared.cautions) {
      if (!cautions.some(({ code }) => code === caution.code)) cautions.push(caution);
    }
    for (const key of [...prepared.sources, ...prepared.body.sources]) sources.add(key);
  };

  const tiles = (request.tiles ?? []).flatMap((tile, t): ReadyTile[] => {
    const pointer = `/tiles/${t}`;
    issues.push(...tile.seen.flatMap((seen, k) => seenIssues(seen, `${pointer}/seen/${k}`)));
    const text = canonical(tile);
    const copies = counts.get(text) ?? 0;
    counts.set(text, copies + 1);
    const key = `${text}#${copies}`;
    const piece = ready(tile, pointer, key, issues);
    return piece ? [{ ...piece, pointer, key, answered: tile.seen.flatMap(asked) }] : [];
  });
  const bodies = (request.bodies ?? []).flatMap((piece, b): ReadyPiece[] => {
    const one = ready(piece, `/bodies/${b}`, `asked ${canonical(piece)}`, issues);
    return one ? [one] : [];
  });
  const runs = (request.measured ?? []).map(({ value, rangeC, plusMinus }, m) => {
    const at = `/measured/${m}`;
    if (!(value >= 0.1 && value <= 20)) {
      issues.push({
        pointer: `${at}/value`,
        message: `${value} cannot be the expansion of a glaze in 1e-6/K; they run from about 2 to 13.`,
        allowed: [0.1, 20],
      });
    }
    issues.push(...meanIssues("glaze", rangeC ?? [20, 300], plusMinus, at));
    warnings.push(...rangeRemarks(rangeC, at));
    if (!rangeC) {
      warnings.push({
        code: "range-assumed",
        message: `No temperature range stands beside the run of ${value} ×10⁻⁶/K. I have taken it as the mean from 20 to 300 °C.`,
        pointer: `${at}/rangeC`,
      });
    }
    return { ...asRun(value, rangeC ?? [20, 300], plusMinus ?? RUN_PLUS_MINUS), pointer: at, name: `run ${m + 1}` };
  });
  if (tiles.length + runs.length === 0 && issues.length === 0) {
    issues.push({
      pointer: "",
      message:
        "There is nothing to learn from: give at least one tile with what you saw on it, or one dilatometer run.",
    });
  }
  if (issues.length > 0) throw new ImpossibleValueError(distinct(issues));

  const some = tiles[0] ?? bodies[0];
  const glass = some?.prepared ?? prepare({ glaze: { ...glaze, thicknessMm: 0.3 }, body: { class: "buff-stoneware" } });
  if (!some) for (const key of glass.sources) sources.add(key);
  const { expansion, recipeSd, transitionC } = glass.situation;
  (request.measured ?? []).forEach(({ value, rangeC }, m) => {
    if (rangeC) warnings.push(...softRemarks(value, rangeC, transitionC.value, `/measured/${m}`));
  });
  const density = request.glaze ? densityOf(expansion, recipeSd) : unknownDensity;
  const before = beliefOn(density, []);
  return {
    density,
    before,
    prior: runs.length > 0 ? beliefOn(density, runs) : before,
    known: request.glaze !== undefined,
    runs,
    tiles,
    bodies,
    glaze,
    warnings,
    cautions,
    sources: [...sources],
    transitionC:
      glass.chemistry || (request.glaze && "expansion" in request.glaze && request.glaze.transitionC)
        ? Math.round(transitionC.value)
        : undefined,
  };
}

/** Pointers of a fit's request moved to where this request holds the same. */
function move(pointer: string, piece: string): string {
  if (pointer === "/glaze/thicknessMm") return `${piece}/thicknessMm`;
  return pointer.startsWith("/glaze") ? pointer : `${piece}${pointer}`;
}

function distinct(issues: readonly Issue[]): Issue[] {
  const told = new Set<string>();
  return issues.filter(({ pointer, message }) => {
    const text = `${pointer} ${message}`;
    if (told.has(text)) return false;
    told.add(text);
    return true;
  });
}

function nameOf(piece: Piece, pointer: string): string {
  if (piece.name) return piece.name;
  const [, list, place] = pointer.split("/");
  return `${list === "tiles" ? "tile" : "clay"} ${Number(place) + 1}`;
}

/** The expansion of a belief as a quantity. */
export function expansionQuantity(low: number, value: number, high: number) {
  return quantity(value, low, high, UNITS.expansion, { rangeC: [20, 300] });
}
