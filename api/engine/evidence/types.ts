/** What a potter brings from the kiln, and what it says about the glaze. @module */
import type { Body } from "../body/types.ts";
import type { Notice } from "../errors.ts";
import type { Firing, Outcome, Verdict, Ware } from "../fit/types.ts";
import type { Quantity } from "../quantity.ts";
import type { SingleGlaze, StatedExpansion } from "../recipe/types.ts";

/** One thing seen or measured on a piece. */
export type Seen =
  /** Cracks, seen at opening the kiln (0) or by an age; sound at an earlier look. Ages in days. */
  | { kind: "crazed"; byDays?: number; soundAtDays?: number }
  /** No crack by an age [days]; 0 is at opening. */
  | { kind: "not-crazed"; afterDays: number }
  /** Plunged into water of 20 °C from so many kelvin above it. */
  | { kind: "quench"; differenceK: number; cracked: boolean }
  /** Flakes off the face or edges that lift. */
  | { kind: "shivered" }
  | { kind: "not-shivered" }
  /** A narrow ring, cut: how far the gap closes (above 0) or opens (below 0) [mm]. */
  | { kind: "ring"; radiusMm: number; closesMm: number; plusMinusMm?: number; face?: "outside" | "inside" }
  /** A thin strip glazed on one face: how far it bows, above 0 where the glazed face bulges [mm]. */
  | { kind: "strip"; lengthMm: number; bowMm: number; plusMinusMm?: number; held?: "one-end" | "both-ends" };

/** A glaze on one clay, fired and made so. */
export interface Piece {
  name?: string;
  body: Body;
  firing?: Firing;
  ware?: Ware;
  /** Thickness of one fired coat [mm]; that of the glaze, else 0.3. */
  thicknessMm?: number;
  /** Coats, each as thick [-]; 1 if left out. */
  coats?: number;
}

/** A piece with what was seen on it. */
export interface Tile extends Piece {
  seen: readonly Seen[];
}

/** Everything known about one glaze. */
export interface EvidenceRequest {
  /** Recipe, oxides or a stated expansion; nothing for a bought glaze of unknown composition. */
  glaze?: SingleGlaze;
  /** Thickness of one fired coat where a tile does not say [mm]. */
  thicknessMm?: number;
  tiles?: readonly Tile[];
  /** Dilatometer runs of the glaze itself. */
  measured?: readonly { value: number; rangeC?: readonly [number, number]; plusMinus?: number }[];
  /** Clays to judge the glaze on. */
  bodies?: readonly Piece[];
  seed?: number;
}

/** What one tile, or one dilatometer run, did to the answer. */
export interface Lesson {
  name: string;
  pointer: string;
  /** Posterior of the expansion from this alone beside the prior [1e-6/K, 20–300 °C]. */
  alone: Quantity;
  /** Posterior from everything but this. */
  without: Quantity;
  /** Chance of what was seen, or of something as far off, going by everything else [-]. */
  expected: number;
  /** Whether it is at odds with the rest. */
  conflicts: boolean;
  text: string;
}

/** A clay as the tiles have shown it; same range as stated. */
export interface LearnedBody {
  name: string;
  before: Quantity;
  after: Quantity;
}

/** Whether the glaze suits one clay. */
export interface Suits {
  name: string;
  verdict: Verdict;
  probabilities: Record<Outcome, number>;
  text: string;
}

/** A tile worth firing. */
export interface NextTile {
  body: string;
  thicknessMm: number;
  /** Quench above water of 20 °C after a month on the shelf [K]; null for looking only. */
  quenchK: number | null;
  /** Expected information about the expansion [bit]. */
  bits: number;
  /** Expected half-width of the 90 % interval afterwards. */
  halfWidth: Quantity;
  /** What may be seen, each with its chance [-] and the expansion it would leave. */
  expects: { seen: string; chance: number; expansion: Quantity }[];
  text: string;
}

/** One point of the curve of belief; each density integrates to 1 over all expansions, shown or not [per 1e-6/K]. */
export interface BeliefPoint {
  expansion: number;
  before: number;
  after: number;
}

/** What the tiles say. */
export interface EvidenceReport {
  headline: string;
  /** Mean 20–300 °C of the glass in bulk, prior and posterior. */
  before: Quantity;
  after: Quantity;
  /** Posterior at 5, 25, 50, 75 and 95 % [1e-6/K]. */
  quantiles: { p05: number; p25: number; p50: number; p75: number; p95: number };
  /** The posterior as the glaze of a fit. */
  glaze: StatedExpansion & { thicknessMm?: number };
  belief: BeliefPoint[];
  lessons: Lesson[];
  learnedBodies: LearnedBody[];
  suits: Suits[];
  next: NextTile[];
  engine: { version: string; dataVersion: string; seed: number };
  warnings: Notice[];
  cautions: Notice[];
  sources: string[];
}
