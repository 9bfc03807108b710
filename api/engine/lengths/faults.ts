/** Gathers everything wrong with an input, so that one answer names it all. @module */
import { EngineError, ImpossibleValueError, type Issue } from "../errors.ts";

/** Issues found so far. */
export class Faults {
  readonly issues: Issue[] = [];

  /** Keeps one. */
  add(pointer: string, message: string, more: Omit<Issue, "pointer" | "message"> = {}): void {
    this.issues.push({ pointer, message, ...more });
  }

  /**
   * Keeps an issue unless `value` is a number within limits; tells whether it is one.
   * @param what - the field in words, for the sentence
   * @param limits - inclusive, in `unit`
   */
  number(
    value: unknown,
    pointer: string,
    what: string,
    limits: { from: number; to: number; unit: string },
  ): value is number {
    const { from, to, unit } = limits;
    if (typeof value === "number" && value >= from && value <= to) return true;
    const read = typeof value === "number" ? String(value) : "no number";
    const allowed = `${from} to ${to} ${unit}`.trim();
    this.add(pointer, `${what} is ${read}. It must lie between ${from} and ${to} ${unit}`.trim().concat("."), {
      allowed: [allowed],
    });
    return false;
  }

  /** Runs `work`; the issues of an `EngineError` are kept, with `prefix` before their pointers. */
  gather<T>(prefix: string, work: () => T): T | undefined {
    try {
      return work();
    } catch (error) {
      if (!(error instanceof EngineError)) throw error;
      for (const issue of error.issues) this.issues.push({ ...issue, pointer: prefix + issue.pointer });
      return undefined;
    }
  }

  /** @throws ImpossibleValueError with all that was found, if anything was */
  throwIfAny(): void {
    if (this.issues.length > 0) throw new ImpossibleValueError(this.issues);
  }
}
