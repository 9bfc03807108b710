/** The best corner of a linear programme in one, two or three unknowns. @module */

/** w·v ≤ most. */
export interface Half {
  w: readonly number[];
  most: number;
}

/**
 * The corner with the least Σ v.
 *
 *     least Σ v  with  least ≤ v ≤ most  and every row w·v ≤ most
 *
 * @param columns - of each unknown, its weight in every row
 * @param rows - their bounds
 * @param least - of every unknown
 * @param most - of each unknown
 * @returns the unknowns; null where nothing keeps every bound
 */
export function corner(
  columns: readonly number[][],
  rows: readonly Half[],
  least: number,
  most: readonly number[],
): number[] | null {
  const k = columns.length;
  const unit = (i: number, sign: 1 | -1) => Array.from({ length: k }, (_, j) => (i === j ? sign : 0));
  const all: Half[] = [
    ...most.flatMap((high, i) => [
      { w: unit(i, -1), most: -least },
      { w: unit(i, 1), most: high },
    ]),
    ...rows.map(({ most: bound }, r) => ({ w: columns.map((column) => column[r]!), most: bound })),
  ];
  // A row that even the best of all bounds cannot keep ends it.
  for (const { w, most: bound } of all) {
    let reached = 0;
    for (let i = 0; i < k; i++) reached += w[i]! * (w[i]! > 0 ? least : most[i]!);
    if (reached > bound + TINY) return null;
  }
  let best: number[] | null = null;
  let lowest = Number.POSITIVE_INFINITY;
  const v = [0, 0, 0];
  const tryOut = (a: Half, b?: Half, c?: Half) => {
    if (!cross(v, a, b, c)) return;
    const sum = v[0]! + v[1]! + v[2]!;
    if (sum >= lowest - TINY) return;
    for (const { w, most: bound } of all) {
      let value = 0;
      for (let i = 0; i < k; i++) value += w[i]! * v[i]!;
      if (value > bound + TINY) return;
    }
    best = v.slice(0, k);
    lowest = sum;
  };
  for (let a = 0; a < all.length; a++) {
    if (k === 1) tryOut(all[a]!);
    else {
      for (let b = a + 1; b < all.length; b++) {
        if (k === 2) tryOut(all[a]!, all[b]!);
        else for (let c = b + 1; c < all.length; c++) tryOut(all[a]!, all[b]!, all[c]!);
      }
    }
  }
  return best;
}

/** What a bound may be missed by through rounding [units of the row]. */
const TINY = 1e-9;
/** Bounds whose determinant is smaller never meet in one point. */
const PARALLEL = 1e-12;

/** Writes the point where so many bounds as unknowns hold at once, by Cramer's rule; false where there is none. */
function cross(v: number[], { w: p, most: e }: Half, b?: Half, c?: Half): boolean {
  if (!b) {
    v[0] = e / p[0]!;
    return Math.abs(p[0]!) > PARALLEL;
  }
  const { w: q, most: f } = b;
  if (!c) {
    const whole = p[0]! * q[1]! - p[1]! * q[0]!;
    v[0] = (e * q[1]! - p[1]! * f) / whole;
    v[1] = (p[0]! * f - e * q[0]!) / whole;
    return Math.abs(whole) > PARALLEL;
  }
  const { w: r, most: g } = c;
  const x = q[1]! * r[2]! - q[2]! * r[1]!;
  const y = q[0]! * r[2]! - q[2]! * r[0]!;
  const z = q[0]! * r[1]! - q[1]! * r[0]!;
  const whole = p[0]! * x - p[1]! * y + p[2]! * z;
  v[0] = (e * x - p[1]! * (f * r[2]! - q[2]! * g) + p[2]! * (f * r[1]! - q[1]! * g)) / whole;
  v[1] = (p[0]! * (f * r[2]! - q[2]! * g) - e * y + p[2]! * (q[0]! * g - f * r[0]!)) / whole;
  v[2] = (p[0]! * (q[1]! * g - f * r[1]!) - p[1]! * (q[0]! * g - f * r[0]!) + e * z) / whole;
  return Math.abs(whole) > PARALLEL;
}
