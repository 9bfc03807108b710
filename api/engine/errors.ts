/**
 * Errors of the engine: data first, prose at the edge. The service turns them into problem documents.
 *
 * @module
 */

/** One thing wrong with one field. */
export interface Issue {
  /** JSON Pointer to the field inside the input given to the engine, `""` for the whole. */
  pointer: string;
  /** What was read, why it cannot be, and how to mend it. */
  message: string;
  /** Values or limits that would be accepted, where a short list helps. */
  allowed?: (string | number)[];
  /** Closest accepted spelling, where one is near. */
  suggestion?: string;
}

/** Input that cannot be computed with. Carries every issue found, not just the first. */
export class EngineError extends Error {
  override readonly name: string = "EngineError";
  readonly issues: readonly Issue[];
  constructor(issues: readonly Issue[]) {
    super(issues.map((issue) => issue.message).join(" "));
    this.issues = issues;
  }
}

/** Something named in the request is not known here (material, body class, oxide, model). */
export class UnknownNameError extends EngineError {
  override readonly name = "UnknownNameError";
}

/** A number that cannot be: negative parts, zero total, an expansion of 600. */
export class ImpossibleValueError extends EngineError {
  override readonly name = "ImpossibleValueError";
}

/** A remark beside an answer: a warning (unusual input, assumption made) or a caution (could hurt someone). */
export interface Notice {
  /** Stable kebab-case identifier, e.g. `outside-training-range`. */
  code: string;
  /** One or two sentences in a potter's words. */
  message: string;
  /** JSON Pointer to the input that caused it, where there is one. */
  pointer?: string;
}

/**
 * The accepted name closest to a misspelt one, if it is close enough to be meant.
 * Damerau–Levenshtein distance (optimal string alignment), at most a third of the length, never above 3.
 * @param given - what was read
 * @param known - accepted names
 * @returns the nearest name, or undefined
 * @example closest("whitting", ["whiting", "talc"]) // "whiting"
 */
export function closest(given: string, known: Iterable<string>): string | undefined {
  const wanted = given
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/g, "-")
    .slice(0, 64);
  let best: string | undefined;
  let bestDistance = Math.min(3, Math.ceil(wanted.length / 3)) + 1;
  for (const name of known) {
    if (Math.abs(name.length - wanted.length) >= bestDistance) continue;
    const distance = editDistance(wanted, name.toLowerCase());
    if (distance < bestDistance) {
      bestDistance = distance;
      best = name;
    }
  }
  return best;
}

function editDistance(a: string, b: string): number {
  let beforePrevious: number[] = [];
  let previous = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const swap = a[i - 1] === b[j - 1] ? 0 : 1;
      let cost = Math.min(previous[j]! + 1, row[j - 1]! + 1, previous[j - 1]! + swap);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        cost = Math.min(cost, beforePrevious[j - 2]! + 1);
      }
      row.push(cost);
    }
    beforePrevious = previous;
    previous = row;
  }
  return previous[b.length]!;
}
