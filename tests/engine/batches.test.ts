/** Worked examples of the doc comments, to the digits shown. */
import { expect, it } from "vitest";
import {
  drySolids,
  dryToAdd,
  planBatch,
  roundShares,
  solidsShare,
  waterToAdd,
} from "../../api/engine/batches/index.ts";
import { close } from "../support/close.ts";

it("examples of the doc comments", () => {
  close(drySolids(1450, 1000, 2.65), 722.7, { abs: 0.05 });
  close(solidsShare(1.45, 2.65), 0.4984, { abs: 0.00005 });
  close(waterToAdd(5000, 1.5, 1.45), 555.6, { abs: 0.05 });
  close(dryToAdd(5000, 1.4, 1.45, 2.65), 552.1, { abs: 0.05 });
  expect(roundShares([1 / 3, 1 / 3, 1 / 3], 2)).toEqual([0.34, 0.33, 0.33]);
  const { lines } = planBatch({ glaze: { recipe: [{ material: "whiting", parts: 1 }] }, amount: { dry: "1 kg" } });
  expect(lines[0]?.weighG).toBe(1000);
});

it("a batch of thirds sums to the hundredth", () => {
  const recipe = ["silica", "kaolin", "whiting"].map((material) => ({ material, parts: 1 }));
  const { lines, dry } = planBatch({ glaze: { recipe }, amount: { dry: "1 kg" }, specificGravity: 1.45 });
  expect(lines.map(({ weighG }) => weighG)).toEqual([333.34, 333.33, 333.33]);
  expect(dry.totalG).toBe(1000);
});
