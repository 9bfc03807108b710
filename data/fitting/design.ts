/** Turns measured glasses into the table that the regression works on. @module */
import { parseTerm, QUANTITY_COUNT, quantitiesOf } from "../../api/engine/glass/terms.ts";
import type { Design } from "../../api/engine/numeric/least-squares.ts";

/** Quantities of each glass, one row a glass. */
export function quantityRows(compositions: readonly Float64Array[]): Float64Array[] {
  return compositions.map((x) => {
    const q = new Float64Array(QUANTITY_COUNT);
    quantitiesOf(x, q);
    return q;
  });
}

/** One row a glass: 1, then every term. */
export function designOf(quantities: readonly Float64Array[], terms: readonly string[]): Design {
  const parsed = terms.map(parseTerm);
  const columns = terms.length + 1;
  const values = new Float64Array(quantities.length * columns);
  quantities.forEach((q, i) => {
    let at = i * columns;
    values[at++] = 1;
    for (const { first, second } of parsed) values[at++] = q[first]! * (second < 0 ? 1 : q[second]!);
  });
  return { rows: quantities.length, columns, values };
}

/** The rows of a table at the given places. */
export function pickRows(design: Design, places: readonly number[]): Design {
  const { columns } = design;
  const values = new Float64Array(places.length * columns);
  places.forEach((from, to) => {
    values.set(design.values.subarray(from * columns, (from + 1) * columns), to * columns);
  });
  return { rows: places.length, columns, values };
}

/** Prediction for one row of a table. */
export function predictRow(design: Design, row: number, coefficients: Float64Array): number {
  let sum = 0;
  for (let j = 0, at = row * design.columns; j < design.columns; j++, at++)
    sum += design.values[at]! * coefficients[j]!;
  return sum;
}
