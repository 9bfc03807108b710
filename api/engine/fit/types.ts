/** What goes into a fit and what comes out. @module */
import type { Body } from "../body/types.ts";
import type { Notice } from "../errors.ts";
import type { Quantity } from "../quantity.ts";
import type { Glaze } from "../recipe/types.ts";

/** How the ware was fired. */
export interface Firing {
  /** Highest temperature reached [°C]. Only checked against the body class; it does not move the set point. */
  peakC?: number;
  /** Cooling rate through the set point, about 700–500 °C [K/h]; 100 if left out. Give this or `cooling`. */
  coolingCPerHour?: number;
  /** Cooling as segments, from hot to cold. */
  cooling?: readonly CoolingSegment[];
}

/** Cool to a temperature at a rate, then hold. */
export interface CoolingSegment {
  /** End of the segment [°C]. */
  toC: number;
  /** Rate on the way [K/h]. */
  cPerHour: number;
  /** Soak at the end [min]. */
  holdMinutes?: number;
}

/** What is glazed, and how. */
export interface Ware {
  /** Wall thickness of the clay as fired [mm]; 5 if left out. */
  wallMm?: number;
  /** Both faces; one face of a closed wall (a cup glazed inside only: cannot bend); one face of a flat piece (free to bend). */
  glazed?: "both-faces" | "one-face" | "one-face-free";
  /** How long it should stay sound [years]; 10 if left out. */
  serviceYears?: number;
  /** Radius of the sharpest glazed rim, handle or sprig [mm]; half the wall if left out. */
  edgeRadiusMm?: number;
}

/** One question: this glaze, on this body, fired and made so. */
export interface FitRequest {
  glaze: Glaze;
  body: Body;
  firing?: Firing;
  ware?: Ware;
  /** Named doubts that can be left out to see what each does; all are counted unless switched off. */
  doubts?: Doubts;
  /** Seed of the quasi-random draws; the same seed gives the same answer to the last digit. */
  seed?: number;
  /** Extra parts of the answer. */
  include?: readonly ("curves" | "profile" | "parts")[];
}

/** Doubts about the glaze beside that of the expansion model, each on unless false. */
export interface Doubts {
  /** That laboratories differ about one and the same glass. */
  betweenPapers?: boolean | undefined;
  /** What differs from bag to bag of the materials. */
  materials?: boolean | undefined;
  /** That a thin glaze on ware takes up clay: it expands less and sets higher. */
  onWare?: boolean | undefined;
  /** That opacifiers and other crystals are not glass. */
  crystals?: boolean | undefined;
}

/** What happens to a piece. */
export type Outcome = "crazesOnCooling" | "crazesLater" | "sound" | "shivers";

/** The answer in one word. */
export type Verdict = "crazes" | "may-craze" | "sound" | "may-shiver" | "shivers";

/** One of twenty equally likely cases. */
export interface StressCase {
  /** Stress in the glaze at room temperature; tension positive [MPa]. */
  stressMPa: number;
  outcome: Outcome;
}

/** One reason for the verdict: a sentence a student understands, with its figures. */
export interface Reason {
  code: string;
  text: string;
  /** The same for an engineer: the formula with its numbers. */
  detail: string;
  quantities: Quantity[];
  sources: string[];
}

/** What one oxide does to the stress. */
export interface OxidePull {
  oxide: string;
  molePercent: number;
  weightPercent: number;
  /** Stress it adds where silica would stand in its place [MPa], tension positive. */
  pullMPa: number;
  /** Stress that one more weight per cent would add, the rest scaled down [MPa]. */
  perWeightPercentMPa: number;
}

/** What one more part of a material would do to the stress. */
export interface PartPull {
  label: string;
  /** Built-in id; null for a line with its own analysis or formula. */
  material: string | null;
  /** Change of the stress for one part more by weight, the batch as given [MPa]; above 0 toward crazing. */
  perPartMPa: number;
}

/** How much of the doubt about the stress comes from one input. */
export interface Driver {
  input: string;
  label: string;
  /** First-order share of the variance of the stress [-]. */
  share: number;
  /** First-order share of the variance of whether it fails at all [-]. */
  verdictShare: number;
}

/** A point of a drawn curve, length counted from room temperature. */
export interface BandPoint {
  c: number;
  strainPercent: number;
  lowPercent: number;
  highPercent: number;
}

/** A point of the stress through glaze and wall. */
export interface ProfilePoint {
  /** Depth from the outer face of the glaze [mm]. */
  depthMm: number;
  stressMPa: number;
  layer: "glaze" | "body";
}

/** What tests and uses would show; chances between 0 and 1. */
export interface Trials {
  quench: {
    standard: string;
    /** Difference between ware and water at which cracks begin. */
    cracksFrom: Quantity;
    steps: { ovenC: number; passes: number }[];
    text: string;
  };
  steam: { id: string; name: string; passes: number }[];
  use: { id: string; name: string; cracks: number }[];
}

/** The answer in short: the verdict and the figures that it rests on. */
export interface FitVerdict {
  verdict: Verdict;
  /** The answer in one plain sentence. */
  headline: string;
  /** Sum to 1. */
  probabilities: Record<Outcome, number>;
  /** Stress in the glaze on cooling, before any moisture: tension positive; with its twenty equally likely cases. */
  stress: Quantity & { cases: StressCase[] };
  /** Stress at which each thing starts at this thickness [MPa], tension positive. */
  thresholds: {
    cracksOnCooling: Quantity;
    mayCrackInTime: Quantity;
    edgesMayLift: Quantity;
    flakesComeOff: Quantity;
  };
  /** Body contraction minus glaze contraction from the set point to 20 °C [%]; above 0 squeezes the glaze. */
  mismatch: Quantity;
  setPoint: Quantity;
  glaze: {
    model: string;
    /** Mean 20–300 °C, for comparison with books. */
    expansion: Quantity;
    /** Mean from 20 °C to the set point, as it counts here. */
    expansionToSetPoint: Quantity;
    transition: Quantity;
    youngs: Quantity;
    thickness: Quantity;
  };
  body: {
    class: string | null;
    /** Mean from 20 °C to the set point. */
    expansionToSetPoint: Quantity;
    /** The stated mean, or the same kind of figure worked out over 20–500 °C. */
    expansion: Quantity;
    youngs: Quantity;
    moistureExpansion: Quantity;
    /** Mean stress in the clay wall, or directly under the glaze where a flat piece bends [MPa], tension positive. */
    stress: Quantity;
    /** Modulus of rupture. */
    rupture: Quantity;
    /** Chance that the squeezed glaze splits the wall [-]. */
    splits: number;
    /** For a body of phases: its mean to the set point if the grains shared strain alike or by volume alone [1e-6/K]. */
    bounds?: { turner: number; linear: number };
  };
  engine: { version: string; dataVersion: string; seed: number };
  warnings: Notice[];
  cautions: Notice[];
  sources: string[];
}

/** The whole answer. */
export interface FitReport extends FitVerdict {
  /** Lifting, taken apart: at the sharpest edge by the radial pull, and over the face. */
  shivering: {
    edgeRadiusMm: number;
    /** Pull between glaze and clay at that edge [MPa], above 0 peels. */
    edgePull: Quantity;
    edges: number;
    flakes: number;
  };
  trials: Trials;
  /** Of several coats: each by itself, the outer one first; above, the skin as a whole. */
  coats?: { thicknessMm: number; stress: Quantity }[];
  /** Of several coats: the same answer if they melt into one another entirely. The truth lies between. */
  mixed?: Pick<FitReport, "verdict" | "headline" | "probabilities"> & { stress: Quantity };
  pulls: OxidePull[];
  /** What one more part of each material of the recipe would do. */
  parts?: PartPull[];
  drivers: Driver[];
  reasons: Reason[];
  /** What to fire or measure next, the most telling first; same shape as a reason. */
  next: Reason[];
  curves?: { glaze: BandPoint[]; body: BandPoint[] };
  profile?: ProfilePoint[];
}
