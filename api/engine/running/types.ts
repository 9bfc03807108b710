/** What is asked about running, and what is answered. @module */
import type { Notice } from "../errors.ts";
import type { Quantity } from "../quantity.ts";
import type { OxideComposition, Recipe } from "../recipe/types.ts";
import type { Application } from "./practice.ts";

/** A glaze that can be melted on paper: known by recipe or by oxides; thickness as fired [mm]. */
export type MadeGlaze = (Recipe | OxideComposition) & { thicknessMm?: number };

/** One coat: its glaze, and its thickness either in the glaze or by how it was put on. */
export interface Coat {
  glaze: MadeGlaze;
  /** How it was put on, where the thickness is not known. */
  application?: Application;
  /** How many times over; 1 if left out [-]. */
  coats?: number;
}

/** A stretch of a firing: up or down to a temperature at a rate, then a soak. */
export interface FiringSegment {
  /** [°C] */
  toC: number;
  /** [K/h] */
  cPerHour: number;
  /** [min] */
  holdMinutes?: number;
}

/** A firing: exactly one of peakC, cone and segments. */
export interface RunningFiring {
  /** [°C] */
  peakC?: number;
  /** Number of a standard pyrometric cone, as `"6"` or `"04"`. */
  cone?: string;
  /** Over the last 100 °C before the peak [K/h]. */
  heatingCPerHour?: number;
  /** Soak at the peak [min]. */
  holdMinutes?: number;
  /** From the peak down [K/h]. */
  coolingCPerHour?: number;
  segments?: readonly FiringSegment[];
}

/** The wall. */
export interface Wall {
  /** From level; 90 if left out [°]. */
  slopeDeg?: number;
  /** Height of the glazed band along the wall; 100 if left out [mm]. */
  glazedMm?: number;
  /** Bare clay between its lower edge and the shelf; 3 if left out [mm]. */
  clearanceMm?: number;
}

/** A later, cooler firing of the same piece. */
export interface LaterHeat {
  kind: "decal" | "lustre" | "enamel" | "other";
  /** [°C] */
  peakC: number;
  /** [K/h] */
  heatingCPerHour?: number;
  /** [min] */
  holdMinutes?: number;
  /** [K/h] */
  coolingCPerHour?: number;
}

/** The question. Exactly one of glaze and coats; coats run from the outer one to the one on the clay, as in a fit. */
export interface RunningRequest {
  glaze?: MadeGlaze;
  coats?: readonly Coat[];
  firing: RunningFiring;
  wall?: Wall;
  /** The firing again, if another; and coats put over the fired glaze first. */
  refiring?: { firing?: RunningFiring; coats?: readonly Coat[] };
  laterHeat?: readonly LaterHeat[];
  /** Whether the clay was fired before glazing; true if left out. */
  bisque?: boolean;
  seed?: number;
}

/** A point of the firing. */
export interface MeltPoint {
  /** Since the kiln was lit [min]. */
  minutes: number;
  c: number;
  /** log10 of the viscosity [Pa·s], with its 90 % band. */
  logViscosity: number;
  low: number;
  high: number;
}

/** How far it runs, and what that means at the foot. */
export interface Run {
  /** Advance of the glaze's lower edge [mm]. */
  run: Quantity;
  /** What the film itself flows, mean velocity times time [mm]; more than the edge comes forward, for the roll fills first. */
  flow: Quantity;
  /** Thickness at the top of the roll there [mm]. */
  roll: Quantity;
  /** Chance that it reaches the shelf [-]. */
  reachesShelf: number;
  /** Thickness of coat that would just reach it [mm]; null where none up to 20 mm does. */
  reachingThickness: Quantity | null;
  /** Bare band to leave at the foot [mm]. */
  bareBandMm: number;
  catchPlate: boolean;
  text: string;
}

/** One way to slow it. */
export interface Slowing {
  id: string;
  change: string;
  /** Run after the change over run before [-]. */
  factor: number;
  run: Quantity;
  text: string;
}

/** What a stack does between its bounds. */
export interface LayersReport {
  /** How far two coats melt into each other by diffusion [mm]. */
  mixingLength: Quantity;
  separate: Quantity;
  mixed: Quantity;
  /** Separate, with the coats put on the other way round. */
  reversed: Quantity;
  text: string;
  interfaces: {
    /** Coats that meet, counted from the outer one. */
    coats: [number, number];
    /** Outer less inner: log10 of the viscosity at the peak [log10 Pa·s], mean expansion 20–300 °C [1e-6/K]. */
    viscosity: Quantity;
    expansion: Quantity;
    text: string;
  }[];
}

/** How likely, in words and no finer. */
export type Likelihood = "likely" | "possible" | "unlikely";

/** One line of the checklist. */
export interface Fault {
  fault: "crawling" | "beading" | "pinholing";
  id: string;
  likelihood: Likelihood;
  /** Why it is on the list, with the figure that put it there. */
  cause: string;
  check: string;
  remedy: string;
  /** `common-practice` where no source was found. */
  source: string;
}

/** What a later firing does to the fired glaze. */
export interface LaterHeatReport {
  kind: LaterHeat["kind"];
  peakC: number;
  stress: "kept" | "partly-relaxed" | "set-anew";
  /** Share of the stress that flows away [-]. */
  relaxed: Quantity;
  /** Run in this firing [mm]. */
  run: Quantity;
  text: string;
  advice: { text: string; source: string }[];
}

/** The answer. */
export interface RunningReport extends Run {
  headline: string;
  /** As reckoned with [mm]. */
  thickness: Quantity;
  firing: { peak: Quantity; from: string; meltMinutes: Quantity; path: MeltPoint[] };
  /** log10 of the viscosity at the peak [log10 Pa·s]. */
  viscosityAtPeak: Quantity;
  /** [mN/m] */
  surfaceTension: Quantity;
  wall: Required<Wall>;
  /** Thickness down the wall after the firing, before the roll is drawn [mm]. */
  profile: { mm: number; thicknessMm: number }[];
  refiring: Run & {
    thickness: Quantity;
    /** The stack in the second firing alone; null for a single coat. */
    layers: LayersReport | null;
    advice: { text: string; source: string }[];
  };
  slows: Slowing[];
  /** Null for a single coat. */
  layers: LayersReport | null;
  faults: Fault[];
  laterHeat: LaterHeatReport[];
  engine: { version: string; dataVersion: string; seed: number };
  warnings: Notice[];
  cautions: Notice[];
  sources: string[];
}
