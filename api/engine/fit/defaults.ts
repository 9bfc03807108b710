/** What is taken where a request is silent. @module */

export const DEFAULTS = {
  thicknessMm: 0.3,
  /** Half-width of a 90 % interval of the thickness, as a share (common practice, no source). */
  thicknessShare: 0.25,
  wallMm: 5,
  glazed: "both-faces",
  coolingCPerHour: 100,
  serviceYears: 10,
  /** Half-width taken for a stated glaze expansion whose doubt is not told [1e-6/K] (common practice, no source). */
  statedPlusMinus: 0.4,
  /** Tg of a glaze of unknown composition [°C]; ± is one standard deviation (common practice, no source). */
  transitionC: 630,
  transitionSdC: 40,
  youngsGPa: 70,
  youngsSdGPa: 5,
} as const;
