/** The picture of a blend: words keep clear, every ring stands where its mixture lies and says its verdict. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Verdict } from "../../api/engine/fit/index.ts";
import { contourAt } from "../../api/engine/pictures/blends/contours.ts";
import { facetsOf, sidesOf, thinned, whereIs } from "../../api/engine/pictures/blends/mixtures.ts";
import { fieldsOf } from "../../api/engine/pictures/blends/soundness.ts";
import {
  type BlendShape,
  type BlendToDraw,
  blendPicture,
  blendPlaces,
  canDrawBlend,
  type PictureWidth,
} from "../../api/engine/pictures/index.ts";
import { quantity, UNITS } from "../../api/engine/quantity.ts";
import { expectKept, layoutFaults, shown, textsOf, wellFormed } from "./support.ts";

const widths: readonly PictureWidth[] = [980, 720, 350];
const verdicts = ["crazes", "may-craze", "sound", "may-shiver", "shivers"] as const;

/** Shares of every mixture of a blend, by hand. */
function sharesOf(corners: number, steps: number, down: number): number[][] {
  const upTo = (n: number) => Array.from({ length: n + 1 }, (_, i) => i);
  if (corners === 2) return upTo(steps).map((i) => [1 - i / steps, i / steps]);
  if (corners > 4) {
    const ways = (left: number, many: number): number[][] =>
      many === 1 ? [[left]] : upTo(left).flatMap((n) => ways(left - n, many - 1).map((rest) => [n, ...rest]));
    return ways(steps, corners).map((counts) => counts.map((count) => count / steps));
  }
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
  soundOf?: (shares: number[], i: number) => number,
): BlendToDraw {
  const points = sharesOf(names.length, steps, down).map((shares, i) => {
    const mpa = stressOf(shares);
    const place = { label: `A${i + 1}`, shares };
    if (mpa === null) return place;
    const k = mpa > 30 ? 0 : mpa > 5 ? 1 : mpa > -90 ? 2 : mpa > -150 ? 3 : 4;
    const sound = soundOf?.(shares, i) ?? (k === 2 ? 0.9 : 0.3);
    const probabilities = {
      crazesOnCooling: 0,
      crazesLater: k < 3 ? 1 - sound : 0,
      sound,
      shivers: k < 3 ? 0 : 1 - sound,
    };
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
  .tuple(fc.constantFrom(2, 3, 4, 5, 9), fc.integer({ min: 1, max: 45 }), fc.integer({ min: 1, max: 45 }))
  .map(([corners, steps, down]) => [corners, corners > 4 ? 1 + (steps % 4) : steps, down] as const)
  .chain(([corners, steps, down]) =>
    fc.record({
      names: fc.array(name, { minLength: corners, maxLength: corners }),
      steps: fc.constant(steps),
      down: fc.constant(down),
      slope: fc.array(fc.integer({ min: -300, max: 200 }), { minLength: corners, maxLength: corners }),
      gaps: fc.boolean(),
      // Chances that jump from tile to tile as no glazes do: the most that contours can ever be asked to draw.
      jumps: fc.constantFrom(0, 1, 2, 3),
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

describe("contours", () => {
  const corner = (x: number, y: number, height: number) => ({ x, y, height });
  const slope = [corner(0, 0, 1), corner(100, 0, 0), corner(0, 100, 0)];
  const square = [corner(0, 0, 1), corner(100, 0, 1), corner(0, 100, 0), corner(100, 100, 0)];
  it.each([
    // By hand, in tenths of a pixel, each step from the one before.
    ["half way up a slope", slope, [[0, 1, 2]], 0.5, "M0 0l50 0l-50 50z", "M50 0l-50 50"],
    ["at its foot: all of it, no line", slope, [[0, 1, 2]], 0, "M0 0l100 0l-100 100z", ""],
    ["above its top: nothing", slope, [[0, 1, 2]], 2, "", ""],
    ["a hair below its top: one place", slope, [[0, 1, 2]], 0.9999, "M0 0z", "M0 0"],
    [
      "over two facets: one outline, one stroke",
      square,
      [
        [0, 1, 2],
        [1, 3, 2],
      ],
      0.5,
      "M0 0l100 0l0 50l-100 0z",
      "M100 50l-100 0",
    ],
    [
      "over all of two facets",
      square,
      [
        [0, 1, 2],
        [1, 3, 2],
      ],
      0,
      "M0 0l100 0l0 100l-100 0z",
      "",
    ],
  ] as const)("%s", (_, heights, facets, level, field, line) => {
    expect(contourAt(heights, facets, level)).toEqual({ field, line });
  });
});

describe("blendPicture", () => {
  it("keeps words clear, small and well formed, whatever is mixed and however finely", () => {
    fc.assert(
      fc.property(asked, fc.boolean(), ({ names, steps, down, slope, gaps, jumps }, standalone) => {
        const stressOf = (shares: number[]) => {
          const mpa = shares.reduce((sum, share, c) => sum + share * slope[c]!, 0);
          return gaps && mpa > 100 ? null : mpa;
        };
        const jumping = (_: number[], i: number) => ((i * (7 * jumps + 2)) % (jumps + 2)) / (jumps + 1);
        const blend = blendOf(names, steps, down, stressOf, jumps ? jumping : undefined);
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

  it("draws all where just as many steps have room, and thins where one side has more", () => {
    const { points } = blendOf(["Thaw", "Rime", "Hail", "Squall"], 12, 4, () => 0);
    expect(thinned(points, "grid", 12)).toBe(points);
    expect(thinned(points, "grid", 6)).toHaveLength(7 * 5); // derived (arithmetic): twelve steps in six, four stay
    const turned = blendOf(["Thaw", "Rime", "Hail", "Squall"], 4, 12, () => 0);
    expect(thinned(turned.points, "grid", 6)).toHaveLength(5 * 7);
    const triangle = blendOf(["Thaw", "Rime", "Hail"], 8, 8, () => 0);
    expect(thinned(triangle.points, "simplex", 4).map(({ label }) => label).length).toBe(15); // 5·6/2
  });

  it.each([
    // derived (arithmetic): a triangle of n steps holds n² small ones, a rectangle of m by n steps 2·m·n.
    [3, 5, 5, 25],
    [3, 1, 1, 1],
    [4, 4, 3, 24],
    [4, 1, 1, 2],
  ])(
    "joins neighbours of %d corners in triangles that go round one way, in whatever order they come",
    (corners, m, n, many) => {
      const shape = corners === 3 ? "simplex" : "grid";
      const { points } = blendOf(["Thaw", "Rime", "Hail", "Squall"].slice(0, corners), m, n, () => 0);
      for (const order of [points, [...points].reverse(), points.toSorted((a, b) => a.label.localeCompare(b.label))]) {
        const facets = facetsOf(order, shape);
        expect(facets).toHaveLength(many);
        const areas = facets.map((facet) => {
          const [[ax, ay], [bx, by], [cx, cy]] = facet.map((k) => whereIs(order[k]!.shares, shape)) as [
            [number, number],
            [number, number],
            [number, number],
          ];
          return ((bx - ax) * (cy - ay) - (by - ay) * (cx - ax)) / 2;
        });
        // They cover a whole that is one wide and one tall, each as much as any other.
        const whole = corners === 3 ? 0.5 : 1;
        for (const area of areas) expect(area).toBeCloseTo(whole / many, 5);
      }
    },
  );

  it("leaves a hole where a mixture is missing", () => {
    const { points } = blendOf(["Thaw", "Rime", "Hail", "Squall"], 2, 2, () => 0);
    expect(facetsOf(points.slice(1), "grid")).toHaveLength(7); // the first corner belongs to one of eight
  });

  it.each([
    [1, ">19"],
    [0.9, "18"],
    [0, "<1"],
  ])("counts a chance of %d to hold as %s of 20", (sound, words) => {
    const blend = blendOf(
      ["Thaw", "Rime"],
      2,
      2,
      () => 0,
      () => sound,
    );
    const column = textsOf(blendPicture(blend, "simplex")).filter((box) => box.words === words);
    expect(column).toHaveLength(3);
    for (const { right } of column) expect(right).toBeCloseTo(974, 1);
  });

  it.each([
    [0.025, true],
    [0.024, false],
  ])("boxes a likeliest whose chance is %d: %s", (sound, boxes) => {
    const blend = blendOf(
      ["Thaw", "Rime", "Hail"],
      2,
      2,
      () => 0,
      () => sound,
    );
    expect(blendPicture(blend, "simplex").includes("Boxed")).toBe(boxes);
  });

  it("says of many corners what a ring stands for, and names none as likely where none is judged", () => {
    const names = ["Thaw", "Rime", "Hail", "Squall", "Fog"];
    const few = blendOf(names, 1, 1, ([a]) => -100 * a!);
    expect(shown(blendPicture(few, "simplex"))).toContain("Each ring is one mixture, over its stress.");
    const none = blendOf(names, 1, 1, () => null);
    const svg = blendPicture(none, "simplex");
    expect(shown(svg)).not.toContain("Likeliest");
    expect(blendPlaces(none, "simplex")).toEqual([]);
    expect(shown(svg)).toContain("5 not judged");
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

  it("keeps contours between the tiles that hold so often and those that do not", () => {
    // The chance falls evenly from the first corner: 17 of 20 lies at a share of 0.7, 10 at 0, 5 nowhere (derived).
    const blend = blendOf(
      ["Thaw", "Rime", "Hail"],
      10,
      10,
      () => 0,
      ([a]) => 0.5 + a! / 2,
    );
    const svg = blendPicture(blend, "simplex");
    const top = ringsIn(svg).reduce((a, b) => (a.y < b.y ? a : b)).y;
    const line = /d="M[-\d.]+ ([-\d.]+)l([-\d.]+)[ ]?([-\d.]+)" fill="none" stroke="#1C6652" stroke-width="2.5"/.exec(
      svg,
    );
    const [y, dx, dy] = line!.slice(1).map(Number);
    // A triangle of side 600 is 519.6 tall; at a share of 0.7 its line lies 0.3 down and is 0.3 as long (derived).
    expect(y! - top).toBeCloseTo(0.3 * 519.6, 0);
    expect(Math.abs(dx!)).toBeCloseTo(0.3 * 600, 0);
    expect(dy!).toBe(0);
  });

  it("puts every tile that 17 of 20 hold, and none that fewer do, into the fullest field", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(3, 4),
        fc.integer({ min: 2, max: 12 }),
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 4, maxLength: 4 }),
        (corners, steps, ends) => {
          const names = ["Thaw", "Rime", "Hail", "Squall"].slice(0, corners);
          const shape = shapeOf(names);
          const blend = blendOf(
            names,
            steps,
            steps,
            () => 0,
            (shares) => shares.reduce((sum, share, c) => sum + share * ends[c]!, 0),
          );
          const { points } = blend;
          const at = (shares: readonly number[]) => whereIs(shares, shape).map((v) => v * 600) as [number, number];
          const full = fieldsOf(points, shape, at).each.find(({ level }) => level.of20 === 17);
          for (const { shares, probabilities } of points) {
            const { sound } = probabilities!;
            // On the line itself, or within the rounding of a tenth of a pixel, either is right.
            if (Math.abs(sound - 0.85) < 0.01) continue;
            const [x, y] = at(shares);
            // A hair inside the drawing, so that a tile on its edge is not on the field's edge too.
            const inward = [x + (300 - x) * 2e-3, y + (300 - y) * 2e-3] as const;
            expect(full ? inside(full.contour.field, ...inward) : false, `${shares}`).toBe(sound > 0.85);
          }
        },
      ),
    );
  });

  it("leaves out contours that would be a tangle, and says so", () => {
    const tangle = blendOf(
      ["Thaw", "Rime", "Hail"],
      20,
      20,
      () => 0,
      (_, i) => i % 2,
    );
    const words = textsOf(blendPicture(tangle, "simplex"))
      .map((box) => box.words)
      .join(" ");
    expect(words).toContain("Chances jump too much from tile to tile for every contour.");
  });

  it("heaps a blend of many corners along the stress, and names the likeliest to hold", () => {
    const names = ["Thaw", "Rime", "Hail", "Squall", "Fog"];
    const blend = blendOf(
      names,
      4,
      4,
      ([a]) => 65 - 160 * a!,
      ([, b]) => b!,
    );
    const svg = blendPicture(blend, "simplex");
    const words = textsOf(svg).map((box) => box.words.replaceAll("\u00a0", " "));
    expect(blend.points).toHaveLength(70); // C(8, 4) (derived)
    // 35 of 70 mixtures hold none of Thaw and lie in one heap: five to a ring makes seven rings, the most within eight.
    expect(words).toContain("Each ring is 5 mixtures or fewer, over its stress.");
    expect(words.some((one) => /^A\d+Rime alone$/.test(one))).toBe(true);
    const heaped = ringsIn(svg).filter(({ y }) => y < 6 + 7 * 17);
    const places = [...new Set(heaped.map(({ x }) => Math.round(x)))].sort((a, b) => a - b);
    // 65, 25, −15, −55 and −95 MPa: five heaps, every other one of 20 MPa (derived).
    expect(places).toHaveLength(5);
    const gaps = places.slice(1).map((x, i) => x - places[i]!);
    for (const gap of gaps) expect(Math.abs(gap - gaps[0]!)).toBeLessThanOrEqual(1);
    expect(heaped.filter(({ x }) => Math.round(x) === places.at(-1))).toHaveLength(7);
  });

  it("tells where each tile stands, so that a tap finds the ring that it meant", () => {
    for (const width of widths) {
      for (const names of [
        ["Thaw", "Rime"],
        ["Thaw", "Rime", "Hail"],
        ["Thaw", "Rime", "Hail", "Squall"],
      ]) {
        const blend = blendOf(names, 6, 5, ([a]) => 60 - 200 * a!);
        const shape = shapeOf(names);
        const places = blendPlaces(blend, shape, { width });
        const rings = ringsIn(blendPicture(blend, shape, { width }));
        expect(places.map(({ label }) => label)).toEqual(blend.points.map(({ label }) => label));
        blend.points.forEach(({ verdict }, i) => {
          const { left, top, width: wide, height } = places[i]!;
          const within = rings.filter(({ x, y }) => x > left && x < left + wide && y > top && y < top + height);
          expect(within.map(({ state }) => state)).toEqual([verdict]);
        });
        const framed = blendPicture(blend, shape, { width, chosen: places[1]!.label });
        expect(framed.split('stroke-width="3"/>').length).toBe(2);
      }
    }
    const many = blendOf(["a", "b", "c", "d", "e"], 3, 3, () => 0);
    for (const { label } of blendPlaces(many, "simplex"))
      expect(blendPicture(many, "simplex")).toContain(`>${label}</tspan>`);
  });

  it("refuses what has no place on paper", () => {
    const line = blendOf(["Thaw", "Rime"], 3, 3, () => 0);
    expect(canDrawBlend({ ...line, corners: ["a", "b", "c", "d", "e"] }, "grid")).toBe(false);
    expect(canDrawBlend({ ...line, corners: ["a"] }, "simplex")).toBe(false);
    expect(canDrawBlend({ ...line, points: line.points.slice(0, 1) }, "simplex")).toBe(false);
    expect(() => blendPicture({ ...line, corners: ["a"] }, "simplex")).toThrow(RangeError);
  });
});

/** Whether a place lies inside closed outlines of relative strokes, by how often a ray to the left crosses them. */
function inside(path: string, x: number, y: number): boolean {
  let crossings = 0;
  for (const [, loop] of path.matchAll(/M([^z]*)z/g)) {
    const steps = [...loop!.matchAll(/(-?[\d.]+)[ ]?(-?[\d.]+)/g)].map(
      ([, dx, dy]) => [Number(dx), Number(dy)] as const,
    );
    let [atX, atY] = [0, 0];
    const corners = steps.map(([dx, dy]) => {
      atX += dx;
      atY += dy;
      return [atX, atY] as const;
    });
    corners.forEach(([ax, ay], k) => {
      const [bx, by] = corners[(k + 1) % corners.length]!;
      if (ay > y === by > y) return;
      if (ax + ((y - ay) / (by - ay)) * (bx - ax) < x) crossings++;
    });
  }
  return crossings % 2 === 1;
}

// Kept for review by eye.
describe("a picture kept for review", () => {
  const falls = ([a, b]: number[]) => 70 * a! - 170 * b!;
  const files: Record<string, () => string> = {
    "blend-line-350": () =>
      blendPicture(blendOf(["Thaw", "Rime"], 10, 10, falls), "simplex", {
        width: 350,
        standalone: true,
      }),
    "blend-triangle": () =>
      blendPicture(blendOf(["Thaw", "Rime", "Hail"], 8, 8, falls), "simplex", { standalone: true }),
    "blend-triangle-fine-dark-720": () =>
      blendPicture(
        blendOf(["Thaw", "Rime", "Hail"], 40, 40, (shares) => (shares[2]! > 0.8 ? null : falls(shares))),
        "simplex",
        { width: 720, theme: "dark", standalone: true },
      ),
    "blend-six-corners": () =>
      blendPicture(
        blendOf(["Thaw", "Rime", "Hail", "Squall", "Fog", "Sleet"], 4, 4, falls, ([a, b]) => 1 - a! - b!),
        "simplex",
        { width: 720, standalone: true },
      ),
    "blend-square-print": () =>
      blendPicture(blendOf(["Thaw", "Rime", "Hail", "Squall"], 6, 4, falls), "grid", {
        width: 720,
        theme: "print",
        standalone: true,
      }),
    "blend-line-fine": () =>
      blendPicture(
        blendOf(["Thaw", "Rime"], 45, 45, ([a]) => (a! > 0.9 ? null : 300 * a! - 260)),
        "simplex",
        { chosen: "A6" },
      ),
    "blend-triangle-coarse-350": () =>
      blendPicture(blendOf(["Thaw", "Low Sun over the far hill in a wet spring", "Hail"], 3, 3, falls), "simplex", {
        width: 350,
        chosen: "A2",
      }),
    "blend-triangle-not-judged-350": () =>
      blendPicture(
        blendOf(["Thaw", "Rime", "Hail"], 4, 4, () => null),
        "simplex",
        { width: 350, standalone: true },
      ),
    "blend-triangle-jumps-720": () =>
      blendPicture(
        blendOf(["Thaw", "Rime", "Hail"], 9, 9, falls, (_, i) => ((i * 7) % 5) / 4),
        "simplex",
        { width: 720 },
      ),
    "blend-square-flat": () =>
      blendPicture(
        blendOf(["Thaw", "Rime", "Hail", "Squall"], 5, 2, falls, ([a, b]) => 0.2 + 0.6 * a! + 0.2 * b!),
        "grid",
        {},
      ),
    "blend-nine-corners-350": () =>
      blendPicture(
        blendOf(
          [
            "Thaw",
            "Rime",
            "Hail",
            "Squall",
            "Fog",
            "Sleet",
            "Low Sun over the far hill in a wet spring",
            "Dew",
            "Haze",
          ],
          2,
          2,
          ([a, b]) => (b === 1 ? null : 150 * a! - 80),
          ([a, b, c]) => 1 - a! - c! * 0.3 + 0 * b!,
        ),
        "simplex",
        { width: 350 },
      ),
  };
  it.each(Object.entries(files))("%s", (name, draw) => expectKept(name, draw()));
});
