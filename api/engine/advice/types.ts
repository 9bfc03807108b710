/** What is asked about a misfit, and what would mend it. @module */
import type { Body } from "../body/types.ts";
import type { Notice } from "../errors.ts";
import type { FitRequest, Outcome, Verdict } from "../fit/types.ts";
import type { Quantity } from "../quantity.ts";
import type { RecipeLine } from "../recipe/types.ts";

/** Bounds, either end open. */
export interface Bounds {
  min?: number;
  max?: number;
}

/** A misfit, and what may be done about it. */
export interface RemediesRequest extends Omit<FitRequest, "include"> {
  /** Chance of staying sound to reach [-]; 0.85 if left out, where a fit says "sound". */
  target?: number;
  /** Materials that may come in; the usual ones if left out. */
  allow?: readonly string[];
  /** Materials that may not come in, nor become more. */
  forbid?: readonly string[];
  /** Materials of the recipe that keep their parts. */
  keep?: readonly string[];
  /** Material → parts, for each 100 parts of the recipe as it stands. */
  parts?: Readonly<Record<string, Bounds>>;
  /** Oxide → moles in the Seger formula. */
  seger?: Readonly<Record<string, Bounds>>;
  /** Moles of silica to one of alumina. */
  silicaToAlumina?: Bounds;
  /** How far the melt may change. */
  melt?: {
    /** log10 of the viscosity at the peak, up or down; 0.2 if left out. */
    logViscosity?: number;
    /** Surface tension, up or down [%]; 5 if left out. */
    surfaceTensionPercent?: number;
  };
  /** Other clays at hand; the built-in classes fired to this peak if left out. */
  bodies?: readonly { name?: string; body: Body }[];
}

/** Which kind of answer it is. */
export type RemedyKind =
  | "silica"
  | "alumina-with-silica"
  | "flux-swap"
  | "boron"
  | "least-change"
  | "thickness"
  | "cooling"
  | "body";

/** How a glaze stands on its clay. */
export interface Standing {
  verdict: Verdict;
  probabilities: Record<Outcome, number>;
  /** Mean 20–300 °C of the glass in bulk [1e-6/K]. */
  expansion: Quantity;
  stress: Quantity;
}

/** One line of a new recipe. */
export interface NewLine {
  name: string;
  line: RecipeLine;
  before: number;
  after: number;
  change: number;
}

/** A limit that stands in the way. */
export interface Block {
  limit: string;
  /** Field of the question that sets it, as a JSON Pointer; absent where none does. */
  pointer?: string;
  /** Chance of staying sound that a change of recipe gets to without it [-]; absent where that was not searched. */
  soundWithout?: number;
  text: string;
}

/** Another cooling where the glaze sets. */
export interface OtherCooling {
  fromC: number;
  toC: number;
  /** Rates there, as changed and as it stands [K/h]. */
  cPerHour: number;
  insteadOfCPerHour: number;
  /** How much longer the firing takes [h]; negative if shorter. */
  hours: number;
  setPoint: { before: Quantity; after: Quantity };
}

/** One way to mend it. */
export interface Remedy {
  kind: RemedyKind;
  title: string;
  /** Whether the full model says that the target is reached. */
  reaches: boolean;
  /** Parts moved for each 100 parts of the recipe; 0 where the recipe stays. */
  partsMoved: number;
  /** Materials whose parts change. */
  materialsMoved: number;
  before: Standing;
  after: Standing;
  /** The new recipe, for each 100 parts of the old one; null where the recipe stays. */
  recipe: { lines: NewLine[]; additions: NewLine[]; text: string } | null;
  /** The new cooling; null for any other way. */
  cooling: OtherCooling | null;
  /** The whole question as it would then be asked of a fit. */
  fit: FitRequest;
  melt: {
    logViscosity: { before: Quantity; after: Quantity };
    surfaceTension: { before: Quantity; after: Quantity } | null;
  } | null;
  /** What it may cost. */
  costs: string[];
  /** What keeps it from going further, where it does not reach. */
  blocks: Block[];
  text: string;
}

/** Every way, the reaching ones first, by parts and materials moved. */
export interface RemediesReport {
  headline: string;
  target: number;
  before: Standing;
  remedies: Remedy[];
  /** Where nothing reaches: what stands in the way, and how far it gets. */
  blocked: Block[];
  engine: { version: string; dataVersion: string; seed: number };
  warnings: Notice[];
  cautions: Notice[];
  sources: string[];
}
