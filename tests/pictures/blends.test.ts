/** The picture of a blend: words keep clear, every ring stands where its mixture lies and says its verdict. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Verdict } from "../../api/engine/fit/index.ts";
import { sidesOf, thinned, whereIs } from "../../api/engine/pictures/blends/mixtures.ts";
import {
  type BlendShape,
  type BlendToDraw,
  blendPicture,
  canDrawBlend,
  type PictureWidth,
} from "../../api/engine/pictures/index.ts";
import { quantity, UNITS } from "../../api/engine/quantity.ts";
import { layoutFaults, shown, textsOf, wellFormed } from "./support.ts";

const widths: readonly PictureWidth[] = [980, 720, 350];
const verdicts = ["crazes", "may-craze", "sound", "may-shiver", "shivers"] as const;

/** Shares of every mixture of a blend, by hand. */
function sharesOf(corners: number, steps: number, down: number): number[][] {
  const upTo = (n: number) => Array.from({ length: n + 1 }, (_, i) => i);
  if (corners === 2) return upTo(steps).map((i) => [1 - i / steps, i / steps]);
  if (corners === 3)
    return upTo(steps).flatMap((i) =>
      upTo(i).map((j) => [(steps - i) / steps, (i - j) / steps, j / steps].map((v) => Math.round(v * 1e6) / 1e6)),
    );
  return upTo(down).flatMap((i) =>
    upTo(steps).map((j) => {
      const [u, v] = [j / steps, i / down];
      return [(1 - u) * (1 - v), u * (1 - v), (1 - u) * v, u * v].map((share) => Math.round(share * 1e6) / 1e6);
    }),
  );
}

/** A blend whose verdicts run with a number given for each mixture. */
function blendOf(
  names: readonly string[],
  steps: number,
  down: number,
  stressOf: (shares: number[]) => number | null,
): BlendToDraw {
  const points = sharesOf(names.length, steps, down).map((shares, i) => {
    const mpa = stressOf(shares);
    const place = { label: `A${i + 1}`, shares };
    if (mpa === null) return place;
    const k = mpa > 30 ? 0 : mpa > 5 ? 1 : mpa > -90 ? 2 : mpa > -150 ? 3 : 4;
    const probabilities = { crazesOnCooling: 0, crazesLater: 0, sound: k === 2 ? 0.9 : 0.3, shivers: 0 };
    const stress = quantity(mpa, mpa - 40, mpa + 40, UNITS.stress, { decimals: 1 });
    return { ...place, verdict: verdicts[k]!, probabilities, stress };
  });
  return { headline: "Of these some are sound.", corners: names, points };
}

const name = fc.oneof(
  fc.constantFrom("Thaw", "Hail", "Low Sun over the far hill in a wet spring"),
  fc.string({ maxLength: 60 }),
);
const asked = fc
  .tuple(fc.constantFrom(2, 3, 4), fc.integer({ min: 1, max: 45 }), fc.integer({ min: 1, max: 45 }))
  .chain(([corners, steps, down]) =>
    fc.record({
      names: fc.array(name, { minLength: corners, maxLength: corners }),
      steps: fc.constant(steps),
      down: fc.constant(down),
      slope: fc.array(fc.integer({ min: -300, max: 200 }), { minLength: corners, maxLength: corners }),
      gaps: fc.boolean(),
    }),
  );
const shapeOf = (names: readonly string[]): BlendShape => (names.length === 4 ? "grid" : "simplex");

/** What the rings' shapes say, in the order of their names. */
const STATES = ["crazes", "may-craze", "sound", "may-shiver", "shivers", "unknown"];

/** Rings on the page: state and middle [px]; the last ones are those beside the tally. */
function ringsIn(svg: string): { state: string; x: number; y: number }[] {
  return [
    ...svg.matchAll(/<g fill="none" stroke="[^"]*" stroke-width="13"[^>]*transform="scale\(([.\d]+)\)">(.*?)<\/g>/g),
  ].flatMap(([, scale, uses]) =>
    [...uses!.matchAll(/<use href="#[\w]+-[\da-z]+-(\d)" x="([-.\d]+)" y="([-.\d]+)"\/>/g)].map(([, state, x, y]) => ({
      state: STATES[Number(state)]!,
      x: (Number(x) + 50) * Number(scale),
      y: (Number(y) + 50) * Number(scale),
    })),
  );
}

describe("blendPicture", () => {
  it("keeps words clear, small and well formed, whatever is mixed and however finely", () => {
    fc.assert(
      fc.property(asked, fc.boolean(), ({ names, steps, down, slope, gaps }, standalone) => {
        const stressOf = (shares: number[]) => {
          const mpa = shares.reduce((sum, share, c) => sum + share * slope[c]!, 0);
          return gaps && mpa > 100 ? null : mpa;
        };
        const blend = blendOf(names, steps, down, stressOf);
        for (const width of widths) {
          const svg = blendPicture(blend, shapeOf(names), { width, standalone });
          expect(layoutFaults(svg), `${width}`).toEqual([]);
          expect(wellFormed(svg)).toBe(true);
          const ids = [...svg.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
          expect(new Set(ids).size).toBe(ids.length);
          expect(svg).not.toMatch(/NaN|Infinity|undefined|null/);
          expect(Buffer.byteLength(svg)).toBeLessThan(25_000);
          for (const { size } of textsOf(svg)) expect(size).toBeGreaterThanOrEqual(12.5);
        }
      }),
      { numRuns: 60 },
    );
  });

  it("puts the first corner of a triangle on top, the second left, the third right", () => {
    const blend = blendOf(["Thaw", "Rime", "Hail"], 2, 2, ([a, b]) => (a === 1 ? 40 : b === 1 ? 0 : -160));
    const rings = ringsIn(blendPicture(blend, "simplex"));
    const at = (state: string) => rings.filter((ring) => ring.state === state);
    const [top] = at("crazes");
    const [left] = at("sound");
    const lowest = at("shivers").filter(({ y }) => Math.abs(y - left!.y) < 0.5);
    expect(top!.x).toBeCloseTo(490, 0); // derived (arithmetic): half of 980
    // derived (arithmetic): an even triangle of side 600 is 600·√3/2 tall.
    expect(left!.y - top!.y).toBeCloseTo(519.6, 0);
    expect(lowest.at(-1)!.x - left!.x).toBeCloseTo(600, 0);
  });

  it("puts the corners of a square where they are named", () => {
    expect(whereIs([1, 0, 0, 0], "grid")).toEqual([0, 0]);
    expect(whereIs([0, 1, 0, 0], "grid")).toEqual([1, 0]);
    expect(whereIs([0, 0, 1, 0], "grid")).toEqual([0, 1]);
    expect(whereIs([0, 0, 0, 1], "grid")).toEqual([1, 1]);
    expect(whereIs([0.75, 0.25], "simplex")).toEqual([0.25, 0]);
  });

  it("sets each tile of a line at its stress on the fixed scale", () => {
    const blend = blendOf(["Thaw", "Rime"], 4, 4, ([a]) => 60 * a! - 60);
    const rings = ringsIn(blendPicture(blend, "simplex"))
      .slice(0, 5)
      .sort((a, b) => a.y - b.y);
    const gaps = rings.slice(1).map(({ x }, i) => rings[i]!.x - x);
    // Stress falls by 15 MPa a tile: even steps to the left, from 0 on down.
    for (const gap of gaps) expect(gap).toBeCloseTo(gaps[0]!, 0);
    expect(gaps[0]!).toBeGreaterThan(30);
    expect(rings.map(({ state }) => state)).toEqual(["sound", "sound", "sound", "sound", "sound"]);
  });

  it("counts all mixtures even where it draws some, and says so", () => {
    const blend = blendOf(["Thaw", "Rime", "Hail"], 40, 40, ([a]) => (a! > 0.5 ? 40 : 0));
    const svg = blendPicture(blend, "simplex");
    const crazing = blend.points.filter(({ verdict }) => verdict === ("crazes" satisfies Verdict)).length;
    const words = textsOf(svg).map((box) => box.words);
    expect(words).toContain(`${crazing} will most likely craze`);
    expect(words.join(" ")).toContain("231 of 861 mixtures have room here"); // derived (arithmetic): 21·22/2, 41·42/2
    expect(shown(/<desc[^>]*>(.*?)<\/desc>/.exec(svg)![1]!)).toContain(
      `Of 861 mixtures ${crazing} will most likely craze`,
    );
  });

  it("thins a prime number of steps to mixtures that are there, corners and all", () => {
    for (const corners of [2, 3, 4]) {
      const names = ["Thaw", "Rime", "Hail", "Squall"].slice(0, corners);
      const { points } = blendOf(names, 37, 41, () => 0);
      const few = thinned(points, shapeOf(names), 12);
      // derived (arithmetic): 13 a side
      expect(few).toHaveLength({ 2: 13, 3: (13 * 14) / 2, 4: 13 * 13 }[corners]!);
      for (let c = 0; c < corners; c++) expect(few.some(({ shares }) => shares[c] === 1)).toBe(true);
      expect(sidesOf(few, shapeOf(names))[0]).toBe(12);
    }
  });

  it("boxes the likeliest to stay sound, and none where nothing is", () => {
    const words = (stress: number | null) =>
      textsOf(
        blendPicture(
          blendOf(["Thaw", "Rime", "Hail"], 3, 3, () => stress),
          "simplex",
        ),
      )
        .map((box) => box.words)
        .join(" ");
    expect(words(0)).toContain("Boxed: A1, the likeliest to stay sound, about 18 in 20.");
    expect(words(null)).toContain("10 not judged");
    expect(words(null)).not.toContain("Boxed");
  });

  it("refuses what has no place on paper", () => {
    const five = blendOf(["Thaw", "Rime"], 3, 3, () => 0);
    expect(canDrawBlend({ ...five, corners: ["a", "b", "c", "d", "e"] }, "simplex")).toBe(false);
    expect(canDrawBlend({ ...five, corners: ["a", "b", "c", "d"] }, "simplex")).toBe(false);
    expect(canDrawBlend({ ...five, points: five.points.slice(0, 1) }, "simplex")).toBe(false);
    expect(() => blendPicture({ ...five, corners: ["a"] }, "simplex")).toThrow(RangeError);
  });
});

// Kept for review by eye.
describe("a picture kept for review", () => {
  const falls = ([a, b]: number[]) => 70 * a! - 170 * b!;
  const files: Record<string, string> = {
    "blend-line-350": blendPicture(blendOf(["Thaw", "Rime"], 10, 10, falls), "simplex", {
      width: 350,
      standalone: true,
    }),
    "blend-triangle": blendPicture(blendOf(["Thaw", "Rime", "Hail"], 8, 8, falls), "simplex", { standalone: true }),
    "blend-triangle-fine-dark-720": blendPicture(
      blendOf(["Thaw", "Rime", "Hail"], 40, 40, (shares) => (shares[2]! > 0.8 ? null : falls(shares))),
      "simplex",
      { width: 720, theme: "dark", standalone: true },
    ),
    "blend-square-print": blendPicture(blendOf(["Thaw", "Rime", "Hail", "Squall"], 6, 4, falls), "grid", {
      width: 720,
      theme: "print",
      standalone: true,
    }),
  };
  it.each(Object.entries(files))("%s", async (name, svg) => {
    await expect(`${svg.replace(/>(?=<(?!\/?tspan|\/text))/g, ">\n")}\n`).toMatchFileSnapshot(`snapshots/${name}.svg`);
  });
});
