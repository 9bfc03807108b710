/** A table of values on an even grid, for lookups in hot loops. @module */
export interface EvenTable {
  /** First abscissa. */
  start: number;
  /** One over the distance between abscissas. */
  perStep: number;
  values: Float64Array;
}

/**
 * Reads an {@link EvenTable} by linear interpolation; outside it the end segment is carried on.
 * @param table - values on an even grid
 * @param at - abscissa, in the unit of `start`
 * @example readEven({ start: 0, perStep: 0.1, values: Float64Array.of(0, 1, 4) }, 15) // 2.5
 */
export function readEven(table: EvenTable, at: number): number {
  const { start, perStep, values } = table;
  const position = (at - start) * perStep;
  // Cut to a whole number: between −1 and 0 that is 0, as wanted.
  let i = position | 0;
  const last = values.length - 2;
  if (i < 0) i = 0;
  else if (i > last) i = last;
  const low = values[i]!;
  return low + (values[i + 1]! - low) * (position - i);
}

/**
 * Reads ascending points by linear interpolation; outside them the end segment is carried on.
 * @param points - [x, y] pairs, x strictly ascending, at least two
 * @param at - abscissa, in the unit of x
 * @example readPoints([[0, 0], [10, 1], [30, 5]], 20) // 3
 */
export function readPoints(points: readonly (readonly [number, number])[], at: number): number {
  let i = 1;
  while (i < points.length - 1 && points[i]![0] < at) i++;
  const [x0, y0] = points[i - 1]!;
  const [x1, y1] = points[i]!;
  return y0 + ((y1 - y0) * (at - x0)) / (x1 - x0);
}

/**
 * Samples any function into an {@link EvenTable}.
 * @example tabulate(0, 100, 50, (t) => t * t).values[2] // 10000
 */
export function tabulate(start: number, end: number, step: number, f: (at: number) => number): EvenTable {
  const n = Math.round((end - start) / step) + 1;
  return { start, perStep: 1 / step, values: Float64Array.from({ length: n }, (_, i) => f(start + i * step)) };
}
