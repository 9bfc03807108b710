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
 * @param values - finite numbers; left as they are
 * @param stride - reads every so many values only; at least 20 must remain [-]
 * @returns 5 %, 50 % and 95 % points, in the unit of the values (nearest rank)
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
  const last = length - 1;
  const [low, middle, high] = [Math.round(last * 0.05), Math.round(last * 0.5), Math.round(last * 0.95)];
  selectRanks(copy, [low, middle, high]);
  return { low: copy[low]!, value: copy[middle]!, high: copy[high]! };
}
