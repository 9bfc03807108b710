/** Gathers everything wrong with an input, so that one answer names it all. @module */
import { EngineError, ImpossibleValueError, type Issue, UnknownNameError } from "../errors.ts";

/** Largest amount read; sums of a hundred of them still carry their last gram [-]. */
export const MAX_AMOUNT = 1e12;

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

  /** Keeps an issue when `value` is no number from 0 to {@link MAX_AMOUNT}; tells whether it is one. */
  amount(value: unknown, pointer: string, what: string): value is number {
    if (typeof value === "number" && value >= 0 && value <= MAX_AMOUNT) return true;
    const read = typeof value === "number" ? String(value) : "something other than a number";
    const message = `${what} cannot be ${read}. Give a number of 0 or more${typeof value === "number" && value > MAX_AMOUNT ? `, up to ${MAX_AMOUNT}` : ""}.`;
    this.impossible.push({ pointer, message });
    return false;
  }

  /** Entries of a table of amounts; keeps an issue and reads none when it is no table or has more than `most`. */
  entries(table: unknown, pointer: string, most: number): [string, unknown][] {
    const isTable = typeof table === "object" && table !== null && !Array.isArray(table);
    const entries: [string, unknown][] = isTable ? Object.entries(table) : [];
    if (isTable && entries.length <= most) return entries;
    const message = isTable
      ? `This lists ${entries.length} oxides; up to ${most} are read.`
      : "List oxides with their amounts here, such as SiO2 and a number.";
    this.impossible.push(isTable ? { pointer, message, allowed: [most] } : { pointer, message });
    return [];
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
