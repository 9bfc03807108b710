/** What the bench asks: one body of about 700 bytes, and as many different questions as wanted. @module */
import type { FitRequest } from "@ringtrue/sdk";

/** Larch Lane's Drizzle, a zinc-and-strontium glaze with nine lines, on the red stoneware. */
export function question(n = 0): FitRequest {
  // Every question differs, so that nothing gains by remembering the one before.
  const wet = (n % 1000) / 200;
  return {
    glaze: {
      recipe: [
        { material: "potash-feldspar", parts: 34 + wet },
        { material: "silica", parts: 24 },
        { material: "whiting", parts: 14 },
        { material: "kaolin", parts: 13 },
        { material: "frit-soda-borosilicate", parts: 6 },
        { material: "strontium-carbonate", parts: 4 },
        { material: "zinc-oxide", parts: 3 },
      ],
      additions: [
        { material: "tin-oxide", parts: 5 },
        { material: "red-iron-oxide", parts: 1.5 },
      ],
      thicknessMm: 0.3,
    },
    body: {
      class: "red-stoneware",
      expansion: { value: 6.2, rangeC: [20, 500], plusMinus: 0.3 },
      absorptionPercent: 2.5,
      moistureExpansionPercent: 0.03,
      youngsGPa: 45,
    },
    firing: { peakC: 1240, coolingCPerHour: 100 },
    ware: { wallMm: 6, glazed: "both-faces", serviceYears: 10 },
    seed: 1,
  };
}

/** Questions one after the other. */
export function* questions(count: number): Generator<FitRequest, void, undefined> {
  for (let n = 0; n < count; n++) yield question(n);
}

/** Corners of a blend on the same clay: the glaze as it is, then with each of its materials doubled in turn. */
export function corners(count: number) {
  const { glaze, body, firing, ware } = question();
  if (!("recipe" in glaze)) throw new Error("A blend needs recipes.");
  const made = Array.from({ length: count }, (_, c) => ({
    glaze: {
      ...glaze,
      recipe: glaze.recipe.map((line, i) => (i === c - 1 ? { ...line, parts: line.parts * 2 } : line)),
    },
  }));
  return { corners: made, body, firing, ware };
}

/** Mixtures of {@link workersBlend}. */
export const WORKERS_MIXTURES = 325;

/** A triangle of 25 mixtures a side: work enough beside which asking and sending cost next to nothing. */
export const workersBlend = () => ({ ...corners(3), steps: 24 });
