/**
 * The sentences for what a validator found: what was read, why it cannot be, how to mend it.
 *
 * @module
 */
import type { z } from "zod";
import { closest } from "../engine/errors.ts";
import { conesBend } from "../schemas/cone-words.ts";
import { meantField } from "./meant-field.ts";
import { nameOf, shorten } from "./pointer.ts";
import type { Issue } from "./problem.ts";

type Words = Omit<Issue, "pointer">;

/** The validator's own English; anything else is a sentence written beside the schema. */
const STOCK = /^(Too (small|big)|Invalid|Unrecognized)/;

/**
 * One sentence for a field nobody knows, with the known one that was meant.
 * @param key - the field as read
 * @param known - fields of that place
 * @param suggestion - the one that was meant, if any
 * @param value - what stands in the field; where a cone stands for a peak it is told where it bends
 */
export function sayUnknownField(key: string, known: string[], suggestion: string | undefined, value?: unknown): Words {
  const meant = suggestion ? ` Did you mean \`${suggestion}\`?` : known.length ? ` Here I know ${list(known)}.` : "";
  return {
    message: `I don't know the field \`${shorten(key)}\`.${isCone(key) && suggestion === "peakC" ? sayCone(value) : meant}`,
    ...(known.length ? { allowed: known } : {}),
    ...(suggestion ? { suggestion } : {}),
  };
}

const isCone = (key: string): boolean => key.toLowerCase() === "cone";

function sayCone(value: unknown): string {
  return ` Give the peak in °C as \`peakC\`. ${conesBend(value) ?? "Cones differ by maker and heating rate."}`;
}

/** An object that says none of the things of which it must say one; another of its fields may have been meant for it. */
export function sayNoWay(name: string, ways: string[], value: object): Words {
  const listed = ways.map((way) => `\`${way}\``).join(", ");
  const key = Object.keys(value).find((one) => meantField(one, ways));
  const suggestion = key === undefined ? undefined : meantField(key, ways);
  const meant = suggestion ? ` Did you mean \`${suggestion}\` by \`${shorten(key!)}\`?` : "";
  return {
    message: `${name} needs one of ${listed}.${meant}`,
    allowed: ways,
    ...(suggestion ? { suggestion } : {}),
  };
}

/** Two fields that shut each other out. */
export function sayConflict(keys: string[]): Words {
  const ways = keys.map((key) => `\`${key}\``).join(" and ");
  return { message: `${ways} are two ways of saying one thing. Keep one of them.`, allowed: keys };
}

/**
 * The words for one issue.
 * @param issue - what the validator found; unions and unknown fields are handled by the caller
 * @param path - where, from the root of the request
 * @param value - what was read there
 * @param description - what the schema says of the field
 */
export function sayIssue(
  issue: z.core.$ZodIssue,
  path: readonly PropertyKey[],
  value: unknown,
  description: string | undefined,
): Words {
  const name = nameOf(path);
  const limited = issue.code === "too_small" || issue.code === "too_big";
  if (!STOCK.test(issue.message)) {
    const { allowed } = limited ? sayLimit(name, issue, value) : {};
    return { message: issue.message, ...(allowed ? { allowed } : {}) };
  }
  switch (issue.code) {
    case "invalid_type":
      return { message: sayType(name, issue.expected, value, description) };
    case "too_small":
    case "too_big":
      return sayLimit(name, issue, value);
    case "invalid_value": {
      const allowed = issue.values.filter((one) => typeof one === "string" || typeof one === "number");
      if (value === undefined) return { message: sayMissing(name, description), allowed };
      const suggestion = typeof value === "string" ? closest(value, allowed.map(String)) : undefined;
      const meant = suggestion ? ` Did you mean "${suggestion}"?` : ` Use ${list(allowed.map(String))}.`;
      return { message: `${name} is ${showValue(value)}.${meant}`, allowed, ...(suggestion ? { suggestion } : {}) };
    }
    case "not_multiple_of":
      return { message: `${name} is ${showValue(value)}. It must be a multiple of ${issue.divisor}.` };
    case "invalid_key":
      return { message: `The name ${name} is too long or empty to be one I know.` };
    default:
      return { message: `${name} is ${showValue(value)}, which I cannot read.` };
  }
}

/** A field that must be there, with what the schema says belongs in it. */
export function sayMissing(name: string, description: string | undefined): string {
  return description
    ? `${name} is missing: ${description.charAt(0).toLowerCase()}${description.slice(1)}`
    : `${name} is missing.`;
}

function sayType(name: string, expected: string, value: unknown, description: string | undefined): string {
  if (value === undefined) return sayMissing(name, description);
  if (typeof value === "number" && !Number.isFinite(value)) {
    return `${name} is a larger number than any I can hold. Check its power of ten.`;
  }
  if (expected === "number" && typeof value === "string") {
    const number = Number(value.trim().replace(",", "."));
    if (value.trim() !== "" && Number.isFinite(number)) {
      return `${name} is ${showValue(value)}, a text. Write the number ${number}, without quotes.`;
    }
  }
  if (expected === "int") return `${name} is ${showValue(value)}. It must be a whole number.`;
  const wanted: Record<string, string> = {
    number: "a number",
    string: "a text in double quotes",
    array: "a list in square brackets",
    tuple: "a list in square brackets",
    object: "an object in braces",
    record: "an object in braces",
    boolean: "true or false",
  };
  return `${name} is ${showValue(value)}. It must be ${wanted[expected] ?? expected}.`;
}

function sayLimit(name: string, issue: z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig, value: unknown): Words {
  const small = issue.code === "too_small";
  const limit = Number(small ? issue.minimum : issue.maximum);
  if (Array.isArray(value)) {
    const allowed = small ? `at least ${limit}` : `at most ${limit}`;
    return { message: `${name} has ${value.length} entries. I take ${allowed}.`, allowed: [allowed] };
  }
  if (typeof value === "string" && issue.origin === "string") {
    const allowed = `${small ? "at least" : "at most"} ${limit} ${limit === 1 ? "letter" : "letters"}`;
    if (value === "") return { message: `${name} is empty. I take ${allowed}.`, allowed: [allowed] };
    return { message: `${name} is ${value.length} letters long. I take ${allowed}.`, allowed: [allowed] };
  }
  if (issue.inclusive === false) {
    const allowed = small ? `more than ${limit}` : `less than ${limit}`;
    return { message: `${name} is ${showValue(value)}. It must be ${allowed}.`, allowed: [allowed] };
  }
  const allowed = small ? `${limit} or more` : `${limit} or less`;
  return { message: `${name} is ${showValue(value)}. It must be ${allowed}.`, allowed: [allowed] };
}

function showValue(value: unknown): string {
  if (value === null) return "null";
  if (Array.isArray(value)) return "a list";
  if (typeof value === "object") return "an object";
  if (typeof value === "string") return JSON.stringify(shorten(value, 24));
  return shorten(String(value), 24);
}

function list(words: string[]): string {
  const shown = words.slice(0, 12).map((word) => `\`${word}\``);
  if (shown.length < 2) return shown.join("");
  return `${shown.slice(0, -1).join(", ")} or ${shown.at(-1)}`;
}
