/**
 * Figures and words of an answer, each with what it is, its bounds and an example.
 *
 * The description of a figure says its unit in brackets, `[-]` for a plain ratio, or that it is in a neighbouring `unit`.
 * Bounds are those that no answer can pass, whatever is asked; they are not what is usual. A figure that can be anything
 * is {@link signed}: it says "either sign", and the description of the service says what that means.
 *
 * @module
 */
import { z } from "zod";

/** Lowest temperature there is [°C]. */
const ABSOLUTE_ZERO_C = -273.15;

/** Bounds of a figure, both included. */
export interface Bounds {
  min?: number;
  max?: number;
}

const bounded = ({ min, max }: Bounds) => {
  const number = min === undefined ? z.number() : z.number().min(min);
  return max === undefined ? number : number.max(max);
};

/**
 * A figure between bounds.
 * @param description - what it is, with its unit in brackets
 * @param example - one that an answer could hold
 * @example figure("Poisson's ratio [-].", 0.2, { min: 0, max: 0.5 })
 */
export const figure = (description: string, example: number, bounds: Bounds) =>
  bounded(bounds).meta({ description, examples: [example] });

/** A figure that can be any finite number. */
export const signed = (description: string, example: number) =>
  z.number().meta({ description: description.replace(/\.$/, "; either sign."), examples: [example] });

/** A figure that is never below 0. */
export const magnitude = (description: string, example: number) => figure(description, example, { min: 0 });

/** A share or a chance, 0 to 1. */
export const share = (description: string, example: number) => figure(description, example, { min: 0, max: 1 });

/** A part of a whole, 0 to 100. */
export const percent = (description: string, example: number) => figure(description, example, { min: 0, max: 100 });

/** What leaves in the kiln, of a hundred; below 0 for what takes up more oxygen than it gives off, as metals do. */
export const loss = (description: string, example: number) => figure(description, example, { max: 100 });

/** A temperature in °C. */
export const celsius = (description: string, example: number) => figure(description, example, { min: ABSOLUTE_ZERO_C });

/** How many. */
export const count = (description: string, example: number, { min = 0, max }: Bounds = {}) => {
  const number = z.number().int().min(min);
  return (max === undefined ? number : number.max(max)).meta({ description, examples: [example] });
};

/** Two figures, the lower first. */
export const span = (description: string, example: [number, number], bounds: Bounds) =>
  z.tuple([bounded(bounds), bounded(bounds)]).meta({ description, examples: [example] });
/** The same, where there may be none; the description says when. */
export const spanOrNull = (description: string, example: [number, number], bounds: Bounds) =>
  z
    .tuple([bounded(bounds), bounded(bounds)])
    .nullable()
    .meta({ description, examples: [example] });

/** Range of temperature, cold end first [°C]. */
export const spanC = (description: string, example: [number, number]) =>
  span(description, example, { min: ABSOLUTE_ZERO_C });
/** The same, where there may be none; the description says when. */
export const spanCOrNull = (description: string, example: [number, number]) =>
  spanOrNull(description, example, { min: ABSOLUTE_ZERO_C });

/** Oxide formula → figure. */
export const byOxide = (description: string, example: Record<string, number>, bounds: Bounds = { min: 0 }) =>
  z.record(z.string(), bounded(bounds)).meta({ description, examples: [example] });
/** The same, where there may be none; the description says when. */
export const byOxideOrNull = (description: string, example: Record<string, number>) =>
  z
    .record(z.string(), bounded({ min: 0 }))
    .nullable()
    .meta({ description, examples: [example] });

/** A text. */
export const words = (description: string, example: string) => z.string().meta({ description, examples: [example] });

/** A picture as text. */
export const svgText = (description: string) =>
  words(description, '<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="0 0 980 420"></svg>');

/** Texts. */
export const list = (description: string, ...example: string[]) =>
  z.array(z.string()).meta({ description, examples: [example] });

/** Whether something is so. */
export const flag = (description: string, example: boolean) => z.boolean().meta({ description, examples: [example] });

/** Where a figure or a sentence comes from. */
export const sourceKeys = (...example: string[]) => list("Keys into GET /v1/sources.", ...example);

/** What the draws start from. */
export const seed = z
  .number()
  .int()
  .min(0)
  .max(4294967295)
  .meta({
    description: "Seed of the quasi-random draws [-]; the same seed gives the same answer; 1 if left out.",
    examples: [1],
  });
