/** A fired clay body, in one of the ways a maker may know it. @module */

/** Mean linear expansion as a data sheet states it. */
export interface StatedBodyExpansion {
  /** Mean linear expansion over `rangeC` [1e-6/K]. */
  value: number;
  /** Range of the mean [°C]; 20–500 if left out, and a warning says so. */
  rangeC?: readonly [number, number];
  /** Half-width of a 90 % interval [1e-6/K]. */
  plusMinus?: number;
}

/** One point of a dilatometer curve. */
export interface CurvePoint {
  /** Temperature [°C]. */
  c: number;
  /** Length change from the first point [% of length]. */
  strainPercent: number;
}

/** Facts that may stand beside any way of describing a body. */
export interface BodyFacts {
  /** Water absorption [% of dry weight]. */
  absorptionPercent?: number;
  /** Long-term moisture expansion [% of length]. */
  moistureExpansionPercent?: number;
  /** Young's modulus [GPa]. */
  youngsGPa?: number;
  /** Modulus of rupture of an unglazed bar [MPa]. */
  ruptureMPa?: number;
  /** Free quartz left in the fired body [% by weight of the solid]. */
  quartzPercent?: number;
  /** Cristobalite in the fired body [% by weight of the solid]. */
  cristobalitePercent?: number;
}

/** A body: a class, a stated mean (a class beside it gives the shape of the curve), a curve, or phases by volume. */
export type Body = BodyFacts &
  (
    | { class: string }
    | { expansion: StatedBodyExpansion; class?: string }
    | { curve: readonly CurvePoint[]; plusMinusPercent?: number }
    | { phases: Readonly<Record<string, number>> }
  );
