/** What must hold for any batch. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  drySolids,
  planBatch,
  roundShares,
  slipGravity,
  solidsShare,
  waterFor,
  waterToAdd,
} from "../../api/engine/batches/index.ts";
import { listMaterials } from "../../api/engine/recipe/materials.ts";
import { close } from "../support/close.ts";

const amount = fc.double({ min: 0.001, max: 1000, noNaN: true });
const gravity = fc.double({ min: 1.1, max: 1.9, noNaN: true });
const density = fc.double({ min: 2.2, max: 4, noNaN: true });
/** Whatever the materials: some are lighter than any slip. */
const SLIP = { specificGravity: 1.45, solidsDensityGPerCm3: 2.6 };
const material = fc.constantFrom(...listMaterials().map(({ id }) => id));
const line = fc.record({ material, parts: fc.double({ min: 0.1, max: 100, noNaN: true }) });

describe("rounding", () => {
  it("sums to the rounded total, each within a step", () => {
    fc.assert(
      fc.property(fc.array(amount, { minLength: 1, maxLength: 30 }), (amounts) => {
        const rounded = roundShares(amounts, 2);
        const hundredths = rounded.reduce((sum, one) => sum + Math.round(one * 100), 0);
        expect(hundredths).toBe(Math.round(amounts.reduce((sum, one) => sum + one, 0) * 100));
        for (const [i, one] of rounded.entries()) close(one, amounts[i]!, { abs: 0.0101 });
      }),
    );
  });
});

describe("slips", () => {
  it("gravity to share and back, water to gravity and back", () => {
    fc.assert(
      fc.property(gravity, density, amount, (g, d, dry) => {
        close(slipGravity(solidsShare(g, d), d), g, { rel: 1e-9 });
        const water = waterFor(dry, g, d);
        close((dry + water) / (dry / d + water), g, { rel: 1e-9 });
        close(drySolids(dry + water, dry / d + water, d), dry, { rel: 1e-6 });
      }),
    );
  });

  it("putting a bucket right there and back leaves it as it was", () => {
    fc.assert(
      fc.property(gravity, gravity, amount, (g, t, volume) => {
        const added = waterToAdd(volume, g, t);
        close(waterToAdd(volume + added, t, g), -added, { rel: 1e-9, abs: 1e-9 });
      }),
    );
  });
});

describe("any recipe", () => {
  it("weighs out to what was wanted, heaviest first, additions last, mass in kiln and glass", () => {
    fc.assert(
      fc.property(
        fc.array(line, { minLength: 1, maxLength: 10 }),
        fc.array(line, { maxLength: 4 }),
        fc.integer({ min: 50, max: 20000 }),
        (recipe, additions, grams) => {
          const batch = planBatch({
            glaze: { recipe, additions },
            amount: { dry: `${grams} g` },
            ...SLIP,
          });
          expect(batch.dry.recipeG).toBe(grams);
          const sum = batch.lines.reduce((total, one) => total + Math.round(one.weighG * 100), 0);
          expect(sum).toBe(Math.round(batch.dry.totalG * 100));
          expect(batch.lines.at(-1)!.runningG).toBe(batch.dry.totalG);
          const flags = batch.lines.map(({ addition }) => addition);
          expect([...flags].sort()).toEqual(flags);
          for (const addition of [false, true]) {
            const weights = batch.lines.filter((one) => one.addition === addition).map(({ weighG }) => weighG);
            expect([...weights].sort((a, b) => b - a)).toEqual(weights);
          }
          close(batch.lossOnIgnition.lostG + batch.lossOnIgnition.glassG, batch.dry.totalG, { abs: 0.11 });
          const { water, volume } = batch;
          for (const q of [water, volume]) expect(q.low <= q.value && q.value <= q.high).toBe(true);
        },
      ),
    );
  });

  it("does not care in which parts it is written", () => {
    fc.assert(
      fc.property(
        fc.array(line, { minLength: 1, maxLength: 8 }),
        fc.double({ min: 0.1, max: 50, noNaN: true }),
        (recipe, times) => {
          const weights = (scale: number) => {
            const scaled = recipe.map(({ material, parts }) => ({ material, parts: parts * scale }));
            const { lines } = planBatch({ glaze: { recipe: scaled }, amount: { dry: "1 kg" }, ...SLIP });
            return lines.map(({ weighG }) => weighG);
          };
          const [one, other] = [weights(1), weights(times)];
          for (const [i, weight] of one.entries()) close(other[i], weight, { abs: 0.0101, why: "rounding may tip" });
        },
      ),
    );
  });
});
