/** How well each fitted property does, for apps to show beside its figures. @module */
import liquidus from "../../../data/models/liquidus.json" with { type: "json" };
import type { IntervalFigures } from "./model-file.ts";
import { EXPANSION, TRANSITION, YOUNGS } from "./models.ts";
import type { AccuracyFigures } from "./types.ts";
import { VISCOSITY } from "./viscosity.ts";

/** A fitted property with its scores on publications left out of the fit. */
export interface PropertyModel {
  /** `expansion`, `transition`, `youngs`, `viscosity`, `liquidus`. */
  id: string;
  title: string;
  property: string;
  unit: string;
  method: string;
  rows: number;
  publications: number;
  /** By domain; for viscosity by column: K for temperatures (`t_log4`), log10 for viscosities (`log_visc_1200`). */
  accuracy: Readonly<Record<string, AccuracyFigures>>;
  /** How often stated 90 % intervals held, overall and by quarter of stated width. */
  intervals: readonly IntervalFigures[];
  licence: string;
  sources: readonly string[];
}

/** Every fitted property, in the order in which a maker meets them. */
export function propertyModels(): PropertyModel[] {
  const files = {
    expansion: EXPANSION.file,
    transition: TRANSITION.file,
    youngs: YOUNGS.file,
    viscosity: VISCOSITY,
    liquidus,
  };
  return Object.entries(files).map(([id, file]) => ({
    id,
    title: file.title,
    property: file.property,
    unit: file.unit,
    method: file.method,
    rows: file.training.rows,
    publications: file.training.publications,
    accuracy: file.heldOut,
    intervals: file.intervals,
    licence: file.licence,
    sources: file.sources,
  }));
}
