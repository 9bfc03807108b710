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

const scratch = new Map<number, Float64Array>();
const SCRATCH_SIZES = 8;

/**
 * Median and the ends of the central 90 % of a sample.
 * @param values - at least 20 finite numbers; left as they are
 * @returns 5 %, 50 % and 95 % points, in the unit of the values (nearest rank)
 * @example middle90(Float64Array.from({ length: 101 }, (_, i) => i)) // { low: 5, value: 50, high: 95 }
 */
export function middle90(values: Float64Array): { low: number; value: number; high: number } {
  let copy = scratch.get(values.length);
  if (!copy) {
    copy = new Float64Array(values.length);
    if (scratch.size < SCRATCH_SIZES) scratch.set(values.length, copy);
  }
  copy.set(values);
  const last = values.length - 1;
  const [low, middle, high] = [Math.round(last * 0.05), Math.round(last * 0.5), Math.round(last * 0.95)];
  selectRanks(copy, [low, middle, high]);
  return { low: copy[low]!, value: copy[middle]!, high: copy[high]! };
}
