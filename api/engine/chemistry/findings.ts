/** Gathers everything wrong with an input, so that one answer names it all. @module */
import { EngineError, ImpossibleValueError, type Issue, UnknownNameError } from "../errors.ts";

/** Issues found so far, kept apart by the error that they call for. */
export class Findings {
  readonly impossible: Issue[] = [];
  readonly unknown: Issue[] = [];

  /** Runs `read`; what it throws as an `EngineError` is kept, and undefined returned. */
  gather<T>(read: () => T): T | undefined {
    try {
      return read();
    } catch (error) {
      if (!(error instanceof EngineError)) throw error;
      (error instanceof UnknownNameError ? this.unknown : this.impossible).push(...error.issues);
      return undefined;
    }
  }

  /** Keeps an issue when `value` is no finite number of at least 0; tells whether it is one. */
  amount(value: unknown, pointer: string, what: string): value is number {
    if (typeof value === "number" && Number.isFinite(value) && value >= 0) return true;
    const read = typeof value === "number" ? String(value) : "no number";
    this.impossible.push({ pointer, message: `${what} reads ${read}. It must be a number of 0 or more.` });
    return false;
  }

  /** Throws all that was found, if anything was. */
  throwIfAny(): void {
    if (this.impossible.length > 0) throw new ImpossibleValueError([...this.impossible, ...this.unknown]);
    if (this.unknown.length > 0) throw new UnknownNameError(this.unknown);
  }
}

/** Escapes a name for use in a JSON Pointer (RFC 6901). */
export function pointerToken(name: string): string {
  return name.slice(0, 64).replace(/~/g, "~0").replace(/\//g, "~1");
}
