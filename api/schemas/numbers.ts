/**
 * Numbers that can be, and what is said about those that cannot: mostly a unit mistaken for another.
 *
 * @module
 */

import { z } from "zod";
import { toCelsius } from "../engine/degrees.ts";
import { MM } from "../engine/lengths/index.ts";
import { askCone } from "./cone-words.ts";

/** Trims a float to six significant digits for a sentence. */
export const show = (value: number): string => String(Number(value.toPrecision(6)));

/**
 * The slip behind an expansion that cannot be, if one is plain.
 * @param value - what was read, supposed to be in 1e-6/K
 * @returns a sentence that names the likely unit and the figure to write
 * @example expansionHint(61) // "61 looks like 6.1 written in 1e-7/K. This field is in 1e-6/K, so write 6.1."
 */
export function expansionHint(value: unknown): string {
  const field = "This field is in 1e-6/K";
  if (typeof value !== "number" || !Number.isFinite(value) || value <= 0) {
    return `${field}: glazes and clays lie between about 1 and 15.`;
  }
  const scales = [
    [10, "1e-7/K"],
    [100, "1e-8/K"],
    [1000, "1e-9/K"],
    [1e-6, "1/K"],
  ] as const;
  for (const [scale, unit] of scales) {
    const meant = value / scale;
    if (meant >= 2 && meant <= 20) {
      return `${show(value)} looks like ${show(meant)} written in ${unit}. ${field}, so write ${show(meant)}.`;
    }
  }
  return `${show(value)} cannot be. ${field}: glazes and clays lie between about 1 and 15.`;
}

/**
 * A peak temperature that cannot be, with the Fahrenheit reading or the cone if that makes sense of it.
 * @returns undefined for what is neither a number nor like a cone
 */
export function peakHint(value: unknown): string | undefined {
  const cone = askCone(value);
  const give = "Give the peak in °C, between 400 and 1700.";
  if (typeof value !== "number") return cone && `${JSON.stringify(value)} is no temperature. ${cone} ${give}`;
  if (value > 1700 && value <= 2700) {
    const celsius = Math.round(toCelsius(value, "F"));
    return `${show(value)} °C would melt the kiln. In °F it would be ${celsius} °C, so write ${celsius}.`;
  }
  return `${show(value)} °C is no firing. ${cone ? `${cone} ` : ""}${give}`;
}

/** Highest temperature of a firing [°C]. */
export const peakC = z
  .number({ error: (issue) => peakHint(issue.input) })
  .min(400, { error: (issue) => peakHint(issue.input) })
  .max(1700, { error: (issue) => peakHint(issue.input) });

/** Units in which lengths are given elsewhere, and what one of each is [mm]. */
const LENGTHS = [
  ["in", MM.in],
  ["cm", MM.cm],
  ["µm", 0.001],
] as const;

/**
 * The slips that would explain a length that cannot be. Begins and ends as every word on bounds does, which the pages
 * tell by in the units of their fields.
 * @param name - the field, in mm
 * @param value - what was read there
 * @param usual - how long such a thing is, shortest and longest [mm]
 * @param bounds - what would be taken
 * @returns a sentence with the units that fit and the figures to write; nothing where none fits
 * @example lengthHint("thicknessMm", 300, [0.05, 2], "5 or less")
 * // "`thicknessMm` is 300. 300 µm would be 0.3 mm. It must be 5 or less."
 */
export function lengthHint(
  name: string,
  value: unknown,
  [least, most]: readonly [number, number],
  bounds: string,
): string | undefined {
  if (typeof value !== "number") return undefined;
  const readings = LENGTHS.map(([unit, mm]) => [unit, value * mm] as const)
    .filter(([, meant]) => meant >= least && meant <= most)
    .map(([unit, meant]) => `${show(value)} ${unit} would be ${show(meant)} mm`);
  if (readings.length === 0) return undefined;
  return `\`${name}\` is ${show(value)}. ${readings.join(", ")}. It must be ${bounds}.`;
}

const length = (name: string, min: number, max: number, usual: readonly [number, number]) =>
  z
    .number()
    .min(min, { error: (issue) => lengthHint(name, issue.input, usual, `${min} or more`) })
    .max(max, { error: (issue) => lengthHint(name, issue.input, usual, `${max} or less`) });

/** Wall of the fired clay [mm]; usual ones are thrown, cast or pressed (common practice, no source). */
export const wallMm = length("wallMm", 0.5, 100, [1.5, 40]);

/** Thickness of the fired glaze [mm]; usual coats: common practice, no source. */
export const thicknessMm = length("thicknessMm", 0.01, 5, [0.05, 2]);

/** Mean linear expansion of a glaze [1e-6/K]; fused silica, the lowest glass, stands at 0.5. */
export const glazeExpansion = z
  .number()
  .min(0.1, { error: (issue) => expansionHint(issue.input) })
  .max(20, { error: (issue) => expansionHint(issue.input) });

/** How far the expansion of clay bodies goes [1e-6/K]; lithia bodies reach nought and a little below. */
export const BODY_EXPANSION = { min: -2, max: 20 } as const;

/** Mean linear expansion of a clay body [1e-6/K]. */
export const bodyExpansion = z
  .number()
  .min(BODY_EXPANSION.min, { error: (issue) => expansionHint(issue.input) })
  .max(BODY_EXPANSION.max, { error: (issue) => expansionHint(issue.input) })
  .refine((value) => value === 0 || Math.abs(value) >= 0.001, { error: (issue) => expansionHint(issue.input) });

/** The hot end of a mean that goes too far, with the Fahrenheit reading if that makes sense of it. */
export function hotEndHint(value: unknown, hottest: number): string | undefined {
  if (typeof value !== "number") return undefined;
  const celsius = Math.round(toCelsius(value, "F"));
  if (celsius > hottest) return undefined;
  return `A mean to ${show(value)} °C is more than I take. In °F it would be ${celsius} °C. It must be ${hottest} or less.`;
}

/**
 * Temperature range of a mean, cold end first [°C].
 * @param hottest - highest temperature that such a mean is taken to [°C]
 * @param usual - what is taken where none is given [°C]
 */
export const rangeC = (hottest: number, usual: [number, number]) =>
  z
    .tuple([
      z.number().min(-50).max(hottest),
      z
        .number()
        .min(-50)
        .max(hottest, { error: (issue) => hotEndHint(issue.input, hottest) }),
    ])
    .refine(([from, to]) => to > from, {
      error: "The range runs from cold to hot: write the lower temperature first.",
      abort: true,
    })
    .refine(([from, to]) => to - from >= 50, { error: "A mean is taken over at least 50 °C." })
    .meta({
      description: `Temperature range of the mean, cold end first, at least 50 °C apart, up to ${hottest} [°C]; ${usual.join(" to ")} if left out.`,
      examples: [usual],
    });

/** Half-width of a 90 % interval about an expansion [1e-6/K]. */
export const plusMinus = z
  .number()
  .min(0)
  .max(5)
  .meta({
    description: "Half-width of a 90 % interval about the value [1e-6/K]; 0.4 if left out, with a warning.",
    examples: [0.3],
  });

/** Oxide formula → amount. Unknown oxides are named by the engine, which knows them all. */
export const oxideAmounts = (unit: string, max: number, example: Record<string, number>) =>
  z.record(z.string().min(1).max(20), z.number().min(0).max(max)).meta({
    description: `Oxide formula → ${unit}.`,
    examples: [example],
  });
