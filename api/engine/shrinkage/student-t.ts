/** Student's t and the chi-square: what a few bars can tell. @module */

/**
 * Quantile of Student's t.
 * @param probability - between 0 and 1, both excluded [-]
 * @param freedom - degrees of freedom, above 0 [-]
 * @returns t with P(T ≤ t) = probability [-], to 1e-9 of it from 0.6 up; nearer the median, which is 0, to about 1e-7
 * @remarks Bisection on the regularised incomplete beta function. Checked against printed tables.
 * @example studentQuantile(0.95, 9) // 1.8331…
 */
export function studentQuantile(probability: number, freedom: number): number {
  if (probability < 0.5) return -studentQuantile(1 - probability, freedom);
  const tail = 2 * (1 - probability);
  // P(|T| > t) = I_x(ν/2, 1/2) with x = ν/(ν + t²), rising in x.
  const x = bisect((at) => beta(at, freedom / 2, 0.5), tail, 0, 1);
  return Math.sqrt((freedom * (1 - x)) / x);
}

/**
 * Quantile of chi-square.
 * @param probability - between 0 and 1, both excluded [-]
 * @param freedom - degrees of freedom, above 0 [-]
 * @example chiSquareQuantile(0.95, 9) // 16.919
 */
export function chiSquareQuantile(probability: number, freedom: number): number {
  const most = freedom + 40 * Math.sqrt(2 * freedom) + 100;
  return 2 * bisect((at) => gamma(freedom / 2, at), probability, 0, most / 2);
}

function bisect(rising: (x: number) => number, target: number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let i = 0; i < 200 && high - low > 1e-15 * high; i++) {
    const middle = (low + high) / 2;
    if (rising(middle) < target) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Regularised incomplete beta I_x(a, b), by the continued fraction of Lentz. */
function beta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - beta(1 - x, b, a);
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x)) / a;
  let [c, d, f] = [1, 0, 1];
  for (let i = 0; i < 500; i++) {
    const m = i >> 1;
    const step =
      i === 0
        ? 1
        : i % 2 === 0
          ? (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
          : (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / (1 + step * d || 1e-300);
    c = 1 + step / c || 1e-300;
    f *= c * d;
    if (Math.abs(1 - c * d) < 1e-15 && i > 0) break;
  }
  return front * (f - 1);
}

/** Regularised lower incomplete gamma P(a, x): series below a + 1, continued fraction above. */
function gamma(a: number, x: number): number {
  if (x <= 0) return 0;
  const front = Math.exp(a * Math.log(x) - x - logGamma(a));
  if (x < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let n = 1; n < 2000 && term > sum * 1e-16; n++) {
      term *= x / (a + n);
      sum += term;
    }
    return front * sum;
  }
  let b = x + 1 - a;
  let c = 1e300;
  let d = 1 / b;
  let f = d;
  for (let i = 1; i < 2000; i++) {
    const an = -i * (i - a);
    b += 2;
    d = 1 / (an * d + b || 1e-300);
    c = b + an / c || 1e-300;
    f *= c * d;
    if (Math.abs(c * d - 1) < 1e-15) break;
  }
  return 1 - front * f;
}

/** ln Γ(x) for x > 0, by Stirling's series after shifting x above 10. */
function logGamma(x: number): number {
  let shift = 0;
  let z = x;
  while (z < 10) shift += Math.log(z++);
  const r = 1 / (z * z);
  const series = (1 / 12 - r * (1 / 360 - r * (1 / 1260 - r * (1 / 1680 - r / 1188)))) / z;
  return (z - 0.5) * Math.log(z) - z + 0.5 * Math.log(2 * Math.PI) + series - shift;
}
