/** Slips against worked figures. All are arithmetic of volumes, derived apart from this code; sources say which. */
import { describe, expect, it } from "vitest";
import {
  drySolids,
  dryToAdd,
  planBatch,
  slipGravity,
  solidsShare,
  waterFor,
  waterToAdd,
} from "../../api/engine/batches/index.ts";
import { close } from "../support/close.ts";

// Brongniart's rule as worked in `measure` figures: a litre of 1450 g, solids of 2.65 g/cm3 (derived; rule from memory).
describe("Brongniart", () => {
  it("1450 g/l at 2.65 hold 722.7 g of dry glaze, 49.84 % by weight", () => {
    close(drySolids(1450, 1000, 2.65), 722.7, { abs: 0.05 });
    close(100 * solidsShare(1.45, 2.65), 49.84, { abs: 0.005 });
  });
  it("722.7 g of it and 727.3 g of water fill a litre", () => {
    const dry = drySolids(1450, 1000, 2.65);
    const water = waterFor(dry, 1.45, 2.65);
    close(water, 727.3, { abs: 0.05 });
    close(dry / 2.65 + water, 1000, { abs: 1e-9 });
  });
  it("pure water holds nothing, and a solid block everything", () => {
    close(drySolids(1000, 1000, 2.65), 0, { abs: 1e-9 });
    close(drySolids(2650, 1000, 2.65), 2650, { abs: 1e-9 });
    close(slipGravity(1, 2.65), 2.65, { rel: 1e-12 });
    close(slipGravity(0, 2.65), 1, { rel: 1e-12 });
  });
});

// Worked by hand: 5 l at 1.5 and 1.45 wanted: 5000 · 0.05/0.45 = 555.6 g; at 1.4: 5000 · 0.05/(1 − 1.45/2.65) = 552.1 g.
describe("a bucket put right", () => {
  it("too thick: 555.6 g of water, and it weighs what it should", () => {
    const water = waterToAdd(5000, 1.5, 1.45);
    close(water, 555.6, { abs: 0.05 });
    close((5000 * 1.5 + water) / (5000 + water), 1.45, { rel: 1e-12 });
  });
  it("too thin: 552.1 g of dry glaze, or 555.6 g of water off", () => {
    const dry = dryToAdd(5000, 1.4, 1.45, 2.65);
    close(dry, 552.1, { abs: 0.05 });
    close((5000 * 1.4 + dry) / (5000 + dry / 2.65), 1.45, { rel: 1e-12 });
    const off = -waterToAdd(5000, 1.4, 1.45);
    close((5000 * 1.4 - off) / (5000 - off), 1.45, { rel: 1e-12 });
  });
});

const recipe = [
  { formula: "CaCO3", parts: 25 },
  { formula: "SiO2", parts: 75 },
];

describe("a batch", () => {
  // CaCO3 loses 43.97 % (CIAAW weights, derived): 1 kg with a quarter of it loses 109.9 g.
  it("tells losses apart", () => {
    const { lossOnIgnition, lines } = planBatch({ glaze: { recipe }, amount: { dry: "1 kg" }, specificGravity: 1.45 });
    close(lossOnIgnition.lostG, 109.9, { abs: 0.06 });
    close(lossOnIgnition.glassG, 890.1, { abs: 0.06 });
    expect(lines.map(({ weighG, runningG }) => [weighG, runningG])).toEqual([
      [750, 750],
      [250, 1000],
    ]);
  });

  // Derived: 2 l at 1.45 and 2.65 hold 1445.4 g dry; with 10 % of additions the recipe is 1314.0 g of it.
  it("by volume, additions counted in", () => {
    const glaze = { recipe, additions: [{ formula: "SnO2", parts: 10 }] };
    const { dry, volume } = planBatch({
      glaze,
      amount: { volume: "2 l" },
      specificGravity: 1.45,
      solidsDensityGPerCm3: 2.65,
    });
    close(dry.totalG, 1445.45, { abs: 0.02 });
    close(dry.recipeG, 1314.05, { abs: 0.02 });
    close(volume.value, 2000, { abs: 0.5 });
  });

  // Derived: 10 pieces of 400 cm², 0.3 mm fired at 2.4 g/cm³, no loss: 288 g; 1 l kept at 1.45 holds 722.7 g more.
  it("by dips", () => {
    const { dips, dry } = planBatch({
      glaze: { recipe: [{ formula: "SiO2", parts: 1 }] },
      amount: { dips: { pieces: 10, areaCm2: 400, thicknessMm: 0.3, keepInBucket: "1 l" } },
      specificGravity: 1.45,
      solidsDensityGPerCm3: 2.65,
    });
    close(dips?.dryOnWare.value, 288, { abs: 0.5 });
    close(dry.totalG, 288 + 722.73, { abs: 0.02 });
  });
});
