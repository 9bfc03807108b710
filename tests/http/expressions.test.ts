/**
 * Regular expressions that meet a request: none can be made slow.
 *
 * A detector proves most of them safe. It counts any unbounded going back as unsafe, even where it is bounded by the
 * length of the text once, so each expression it doubts stands below with the reason why its time is linear, and a text
 * made to slow it down.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { isSafe } from "redos-detector";
import ts from "typescript";
import { describe, expect, it } from "vitest";

const root = fileURLToPath(new URL("../..", import.meta.url));

/** Folders whose code reads what a caller sends. Pages run in the reader's own browser, on the reader's own words. */
const FOLDERS = ["api/engine", "api/http", "api/node", "api/routes", "api/schemas", "sdk/src"];

interface Argument {
  text: string;
  why: string;
  /** A text of the given length that would be slow if anything could be. */
  attack: (length: number) => string;
}

const LINEAR: Argument[] = [
  {
    text: String.raw`/"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y`,
    why: "sticky, and each letter fits one alternative only: giving up goes back over the text once",
    attack: (length) => `"${"\\n".repeat(length / 2)}`,
  },
  {
    text: String.raw`/-?\d+\.\d{3,}(?:e-?\d+)?/g`,
    why: "looks at the drawing's own numbers and at names of at most 200 letters: quadratic in that at worst",
    attack: () => "1".repeat(200),
  },
];

/** Every regular expression written in the folders, with the file it stands in. */
function expressionsIn(folder: string): { file: string; text: string }[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts") && !name.includes("generated"))
    .flatMap((name) => {
      const file = join(folder, name);
      const source = ts.createSourceFile(file, readFileSync(join(root, file), "utf8"), ts.ScriptTarget.Latest);
      const found: { file: string; text: string }[] = [];
      const visit = (node: ts.Node): void => {
        if (ts.isRegularExpressionLiteral(node)) found.push({ file, text: node.text });
        ts.forEachChild(node, visit);
      };
      visit(source);
      return found;
    });
}

function compile(text: string): RegExp {
  const end = text.lastIndexOf("/");
  return new RegExp(text.slice(1, end), text.slice(end + 1));
}

const provenSafe = (expression: RegExp): boolean => isSafe(expression, { maxScore: 50, maxSteps: 10_000 }).safe;
const argued = LINEAR.map(({ text }) => text);
const expressions = FOLDERS.flatMap(expressionsIn);

describe("regular expressions", () => {
  it("are found", () => expect(expressions.length).toBeGreaterThan(30));

  it("are told apart: the classics of slowness do not pass for safe", () => {
    for (const slow of [/^(a+)+$/, /^(a|a)*$/, /\/+$/]) expect(provenSafe(slow)).toBe(false);
    for (const safe of [/^[a-z]{1,40}$/, /\/$/, /^\d{4}-\d{2}$/]) expect(provenSafe(safe)).toBe(true);
  });

  it("are proven safe, or stand above with the reason", () => {
    const doubted = expressions.filter(({ text }) => !argued.includes(text) && !provenSafe(compile(text)));
    expect(doubted).toEqual([]);
    const written = new Set(expressions.map(({ text }) => text));
    expect(argued.filter((text) => !written.has(text))).toEqual([]);
  });

  it.each(LINEAR)("$text takes its time in proportion", ({ text, attack }) => {
    const expression = compile(text);
    const slow = attack(200_000);
    const began = performance.now();
    for (const match of [slow, `${slow}!`]) {
      expression.lastIndex = 0;
      expression.test(match);
    }
    // A quadratic one would take minutes over 200,000 letters.
    expect(performance.now() - began).toBeLessThan(500);
  });
});
