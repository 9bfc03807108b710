/** Whether an outline crosses itself. @module */

export interface Point {
  x: number;
  y: number;
}

/**
 * The first two stretches of a broken line that cross or touch, beside neighbours that share their corner.
 * @param points - corners in order; `closed` joins the last to the first
 * @returns places of the two stretches, from 0, or undefined
 * @example crossing([{ x: 0, y: 0 }, { x: 1, y: 1 }, { x: 1, y: 0 }, { x: 0, y: 1 }]) // [0, 2]
 */
export function crossing(points: readonly Point[], closed = false): [number, number] | undefined {
  const count = closed ? points.length : points.length - 1;
  const at = (i: number) => points[i % points.length]!;
  for (let i = 0; i < count; i++) {
    for (let j = i + 2; j < count; j++) {
      if (closed && i === 0 && j === count - 1) continue;
      if (meet(at(i), at(i + 1), at(j), at(j + 1))) return [i, j];
    }
  }
  return undefined;
}

function meet(a: Point, b: Point, c: Point, d: Point): boolean {
  const [abc, abd, cda, cdb] = [turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)];
  if (abc * abd < 0 && cda * cdb < 0) return true;
  return (
    (abc === 0 && within(a, b, c)) ||
    (abd === 0 && within(a, b, d)) ||
    (cda === 0 && within(c, d, a)) ||
    (cdb === 0 && within(c, d, b))
  );
}

const turn = (a: Point, b: Point, c: Point): number => Math.sign((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x));

const within = (a: Point, b: Point, p: Point): boolean =>
  Math.min(a.x, b.x) <= p.x && p.x <= Math.max(a.x, b.x) && Math.min(a.y, b.y) <= p.y && p.y <= Math.max(a.y, b.y);
