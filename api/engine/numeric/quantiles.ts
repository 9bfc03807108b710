/** Quantiles of a sample without sorting all of it. @module */

/**
 * Puts the values of several ranks in their places, everything smaller before and everything larger after them.
 * Quickselect for many ranks at once: about n·log2(ranks) comparisons.
 * @param values - the sample; reordered in place, finite numbers only
 * @param ranks - 0-based ranks wanted, ascending
 * @example const v = Float64Array.of(3, 1, 2); selectRanks(v, [1]); v[1] // 2
 */
export function selectRanks(values: Float64Array, ranks: readonly number[]): void {
  narrow(values, 0, values.length - 1, ranks, 0, ranks.length);
}

function narrow(
  values: Float64Array,
  from: number,
  to: number,
  ranks: readonly number[],
  first: number,
  end: number,
): void {
  let left = from;
  const right = to;
  let low = first;
  const high = end;
  while (left < right && low < high) {
    const pivot = values[(left + right) >>> 1]!;
    let i = left;
    let j = right;
    while (i <= j) {
      while (values[i]! < pivot) i++;
      while (values[j]! > pivot) j--;
      if (i <= j) {
        const swap = values[i]!;
        values[i++] = values[j]!;
        values[j--] = swap;
      }
    }
    // Ranks up to j lie left, from i on right; what is between is already in place.
    let split = low;
    while (split < high && ranks[split]! <= j) split++;
    narrow(values, left, j, ranks, low, split);
    while (split < high && ranks[split]! < i) split++;
    low = split;
    left = i;
  }
}

/** Bins of {@link ascending} for each value, so that most hold one at most. */
const BINS_PER_VALUE = 2;

interface Ranking {
  sorted: Float64Array;
  order: Uint16Array;
  /** Bin of each value; where each bin ends. */
  bins: Uint16Array;
  ends: Uint16Array;
}

const rankings = new Map<number, Ranking>();

/**
 * Places of a sample from its smallest value to its largest.
 * Values are dealt into even bins and put right among their neighbours: for smooth samples that takes time in proportion
 * to their number, and next to no branch that a processor could guess wrong. A sample with a far outlier is slower.
 * @param values - finite numbers; left as they are
 * @param stride - reads every so many values only, at most 32,767 of them [-]
 * @returns places in `values`, ascending by value, equal values in their own order; used again by the next call for as
 * many values
 * @example [...ascending(Float64Array.of(3, 1, 2))] // [1, 2, 0]
 */
export function ascending(values: Float64Array, stride = 1): Uint16Array {
  const n = Math.ceil(values.length / stride);
  const { sorted, order, bins, ends } = rankingFor(n);
  let least = values[0] ?? 0;
  let most = least;
  for (let at = stride; at < values.length; at += stride) {
    const value = values[at]!;
    if (value < least) least = value;
    else if (value > most) most = value;
  }
  const scale = most > least ? (ends.length - 1) / (most - least) : 0;
  ends.fill(0);
  for (let i = 0, at = 0; i < n; i++, at += stride) {
    const bin = ((values[at]! - least) * scale) | 0;
    bins[i] = bin;
    ends[bin]!++;
  }
  let before = 0;
  for (let bin = 0; bin < ends.length; bin++) {
    const count = ends[bin]!;
    ends[bin] = before;
    before += count;
  }
  for (let i = 0, at = 0; i < n; i++, at += stride) {
    const place = ends[bins[i]!]!++;
    sorted[place] = values[at]!;
    order[place] = at;
  }
  putRight(sorted, order);
  return order;
}

function rankingFor(n: number): Ranking {
  let ranking = rankings.get(n);
  if (!ranking) {
    ranking = {
      sorted: new Float64Array(n),
      order: new Uint16Array(n),
      bins: new Uint16Array(n),
      ends: new Uint16Array(BINS_PER_VALUE * n),
    };
    if (rankings.size < SCRATCH_SIZES) rankings.set(n, ranking);
  }
  return ranking;
}

/** Insertion sort of values that are nearly sorted, with their places. */
function putRight(sorted: Float64Array, order: Uint16Array): void {
  for (let i = 1; i < sorted.length; i++) {
    const value = sorted[i]!;
    if (sorted[i - 1]! <= value) continue;
    const from = order[i]!;
    let j = i;
    do {
      sorted[j] = sorted[j - 1]!;
      order[j] = order[j - 1]!;
      j--;
    } while (j > 0 && sorted[j - 1]! > value);
    sorted[j] = value;
    order[j] = from;
  }
}

const scratch = new Map<number, Float64Array>();
const SCRATCH_SIZES = 8;

/**
 * Median and the ends of the central 90 % of a sample.
 * @param values - finite numbers; left as they are
 * @param stride - reads every so many values only; at least 20 must remain [-]
 * @returns 5 %, 50 % and 95 % points, in the unit of the values: of n in order the one of rank p(n − 1), counted from 0
 * and rounded to the nearest, halves up
 * @example middle90(Float64Array.from({ length: 101 }, (_, i) => i)) // { low: 5, value: 50, high: 95 }
 */
export function middle90(values: Float64Array, stride = 1): { low: number; value: number; high: number } {
  const length = Math.ceil(values.length / stride);
  let copy = scratch.get(length);
  if (!copy) {
    copy = new Float64Array(length);
    if (scratch.size < SCRATCH_SIZES) scratch.set(length, copy);
  }
  for (let i = 0; i < length; i++) copy[i] = values[i * stride]!;
  const ranks = ranksOf90(length);
  selectRanks(copy, ranks);
  return { low: copy[ranks[0]]!, value: copy[ranks[1]]!, high: copy[ranks[2]]! };
}

/** The same read off a sample, or every so many of its values, put in order by {@link ascending}. */
export function middle90Of(values: Float64Array, order: Uint16Array): { low: number; value: number; high: number } {
  const [low, middle, high] = ranksOf90(order.length);
  return { low: values[order[low]!]!, value: values[order[middle]!]!, high: values[order[high]!]! };
}

function ranksOf90(length: number): [number, number, number] {
  const last = length - 1;
  return [Math.round(last * 0.05), Math.round(last * 0.5), Math.round(last * 0.95)];
}
