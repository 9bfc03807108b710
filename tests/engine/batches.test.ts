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
import { textWidth } from "../../api/engine/rulers/index.ts";
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

it("a long sheet keeps to its margins, and its columns keep apart", () => {
  const recipe = Array.from({ length: 60 }, (_, i) => ({
    name: `a rather long name for a material of the studio, number ${i}`,
    formula: "SiO2",
    parts: 100 - i,
  }));
  const additions = ["barium-carbonate", "cobalt-oxide", "nickel-oxide", "frit-lead-bisilicate"].map((material) => ({
    material,
    parts: 4,
  }));
  const { sheets, cautions } = planBatch({
    name: "Low Sun over the long hill, with a very long name indeed",
    glaze: { recipe, additions },
    amount: { dry: "900 kg" },
    specificGravity: 1.45,
    bucket: { volume: "5 l", specificGravity: 1.35 },
  });
  expect(cautions.length).toBeGreaterThanOrEqual(4);
  for (const { widthMm, heightMm, labels } of sheets) {
    const spans = labels.map(({ text, x, y, size, anchor = "start", bold }) => {
      const wide = textWidth(text, size, bold);
      const from = anchor === "start" ? x : anchor === "middle" ? x - wide / 2 : x - wide;
      return { text, from, to: from + wide, y };
    });
    for (const { from, to, y, text } of spans) {
      expect(from >= 11.9 && to <= widthMm - 11.9 && y <= heightMm - 11.9, text).toBe(true);
    }
    for (const [i, one] of spans.entries()) {
      for (const other of spans.slice(i + 1)) {
        if (Math.abs(one.y - other.y) > 2.5) continue;
        expect(one.to <= other.from || other.to <= one.from, `${one.text} | ${other.text}`).toBe(true);
      }
    }
  }
});
