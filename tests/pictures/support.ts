/** Reading pictures back: every text with the room it takes, every line, every ring. @module */
import { fileURLToPath } from "node:url";
import fc from "fast-check";
import { expect } from "vitest";
import { checkFit, type FitReport, type FitRequest } from "../../api/engine/fit/index.ts";
import { textWidth } from "../../api/engine/pictures/marks/text-width.ts";

/** A text and the room it takes [px]. */
export interface Box {
  words: string;
  size: number;
  left: number;
  right: number;
  top: number;
  bottom: number;
}

const attribute = (tag: string, name: string) => new RegExp(`[\\s]${name}="([^"]*)"`).exec(tag)?.[1];
const number = (tag: string, name: string, otherwise = 0) => Number(attribute(tag, name) ?? otherwise);

/** Text as shown, entities resolved. */
export function shown(markup: string): string {
  return markup.replace(/<[^>]*>/g, "").replace(/&#(\d+);/g, (_, code) => String.fromCodePoint(Number(code)));
}

/** Height of letters above and below the line they stand on, in sizes: capitals and descenders of common sans faces. */
const ASCENT = 0.74;
const DESCENT = 0.22;

/** What a text takes over from the groups around it, the nearest last. */
function groupsAround(svg: string, at: number): string {
  const open: string[] = [];
  for (const [tag, attributes = ""] of svg.slice(0, at).matchAll(/<g( [^>]*)?>|<\/g>/g)) {
    if (tag === "</g>") open.pop();
    else open.push(attributes);
  }
  return open.join("");
}

export function textsOf(svg: string): Box[] {
  const texts = [...svg.matchAll(/<text([^>]*)>(.*?)<\/text>/g)];
  return texts.map(({ 1: own = "", 2: inner = "", index }) => {
    const tag = own + groupsAround(svg, index);
    const size = number(tag, "font-size");
    const bold = attribute(tag, "font-weight") === "700";
    const lead = /^<tspan font-weight="700"[^>]*>(.*?)<\/tspan><tspan dx="7">(.*)<\/tspan>$/.exec(inner);
    const width = lead
      ? textWidth(shown(lead[1]!), size, true) + 7 + textWidth(shown(lead[2]!), size)
      : textWidth(shown(inner).replaceAll("\u200b", ""), size, bold);
    const x = number(tag, "x");
    const anchor = attribute(tag, "text-anchor") ?? "start";
    const left = anchor === "start" ? x : anchor === "end" ? x - width : x - width / 2;
    const y = number(tag, "y");
    return { words: shown(inner), size, left, right: left + width, top: y - ASCENT * size, bottom: y + DESCENT * size };
  });
}

/** Holds a picture against the file kept for review; `-u` writes it anew. */
export async function expectKept(name: string, svg: string): Promise<void> {
  // By its whole address, so that it is the same file wherever the tests are run from.
  const kept = fileURLToPath(new URL(`snapshots/${name}.svg`, import.meta.url));
  await expect(`${svg.replace(/>(?=<(?!\/?tspan|\/text))/g, ">\n")}\n`).toMatchFileSnapshot(kept);
}

/** The drawing's frame. */
export function frameOf(svg: string): { left: number; top: number; right: number; bottom: number } {
  const [left, top, width, height] = (attribute(svg.slice(0, svg.indexOf(">")), "viewBox") ?? "")
    .split(" ")
    .map(Number);
  return { left: left!, top: top!, right: left! + width!, bottom: top! + height! };
}

/** Pairs of texts that share room, and texts that leave the frame; none in a good picture. */
export function layoutFaults(svg: string): string[] {
  const boxes = textsOf(svg);
  const frame = frameOf(svg);
  const faults: string[] = [];
  boxes.forEach((a, i) => {
    if (
      a.left < frame.left - 0.5 ||
      a.right > frame.right + 0.5 ||
      a.top < frame.top - 0.5 ||
      a.bottom > frame.bottom
    ) {
      faults.push(`"${a.words}" leaves the picture`);
    }
    for (const b of boxes.slice(i + 1)) {
      if (a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom) {
        faults.push(`"${a.words}" meets "${b.words}"`);
      }
    }
  });
  return faults;
}

/** Upright ink lines of thresholds: place and extent [px]. */
export function uprights(svg: string): { x: number; top: number; bottom: number }[] {
  return [
    ...svg.matchAll(/<path d="M([-\d.]+) ([-\d.]+)V([-\d.]+)" fill="none" stroke="[^"]*" stroke-width="1.25"/g),
  ].map(([, x, top, bottom]) => ({ x: Number(x), top: Number(top), bottom: Number(bottom) }));
}

/** Rings of the cases: outcome and extent [px]. */
export function ringsOf(svg: string): { outcome: string; left: number; right: number }[] {
  return [
    ...svg.matchAll(/<use href="#[\w-]+-(\w+)" transform="translate\(([-\d.]+) ([-\d.]+)\) scale\(([\d.]+)\)"/g),
  ].map(([, outcome, x, , scale]) => {
    const side = Number(scale) * 100;
    return { outcome: outcome!, left: Number(x), right: Number(x) + side };
  });
}

/** Whether every tag is closed in order and every ampersand belongs to an entity. */
export function wellFormed(svg: string): boolean {
  const open: string[] = [];
  for (const [, close, name, rest] of svg.matchAll(/<(\/?)([a-zA-Z]+)((?:[^<>"]|"[^"]*")*)>/g)) {
    if (close) {
      if (open.pop() !== name) return false;
    } else if (!rest?.endsWith("/")) open.push(name!);
  }
  const text = svg.replace(/<(?:[^<>"]|"[^"]*")*>/g, "");
  return open.length === 0 && !/[<>]/.test(text) && !/&(?!#\d+;)/.test(svg);
}

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
const classes = ["red-earthenware", "white-earthenware", "red-stoneware", "buff-stoneware", "studio-porcelain"];
const others = ["cristobalite-stoneware", "hard-porcelain", "grogged-raku", "lithia-flameware", "cordierite-ware"];

/** Questions of every kind that the service answers, from the plain to the far-fetched. */
export const questions: fc.Arbitrary<FitRequest> = fc.record({
  glaze: fc.oneof(
    fc.record({
      expansion: fc.record({ value: between(1, 14), plusMinus: between(0.05, 2) }),
      thicknessMm: between(0.02, 4),
    }),
    fc.record({
      recipe: fc
        .tuple(between(5, 70), between(0, 50), between(2, 40), between(0, 40), between(0, 40))
        .map((parts) =>
          ["potash-feldspar", "silica", "whiting", "kaolin", "frit-soda-borosilicate"]
            .map((material, i) => ({ material, parts: parts[i]! }))
            .filter((line) => line.parts > 0),
        ),
      thicknessMm: between(0.05, 2),
    }),
    fc.record({
      layers: fc.array(
        fc.record({
          expansion: fc.record({ value: between(3, 10), plusMinus: between(0.1, 1) }),
          thicknessMm: between(0.05, 0.8),
        }),
        { minLength: 1, maxLength: 4 },
      ),
    }),
  ),
  body: fc.oneof(
    fc.record({ class: fc.constantFrom(...classes, ...others) }),
    fc.record({
      class: fc.constantFrom(...classes),
      expansion: fc.record({ value: between(2.5, 9), plusMinus: between(0.05, 1) }),
    }),
    fc.record({ expansion: fc.record({ value: between(1, 12), plusMinus: between(0.05, 1) }) }),
  ),
  ware: fc.record({
    wallMm: between(1, 30),
    glazed: fc.constantFrom("both-faces", "one-face", "one-face-free"),
    serviceYears: between(0.1, 100),
  }),
  include: fc.constant(["curves", "parts"] as const),
}) as fc.Arbitrary<FitRequest>;

/** The answer to a question, or undefined where the engine refuses it. */
export function reportOf(question: FitRequest): FitReport | undefined {
  try {
    return checkFit(question);
  } catch (error) {
    if (error instanceof Error && "issues" in error) return undefined;
    throw error;
  }
}
