/** Worked examples of the doc comments, to the digits shown; and the statistics against recorded values. */
import { expect, it } from "vitest";
import {
  chiSquareQuantile,
  dryingShrinkage,
  firingShrinkage,
  grubbsLimit,
  knownShrinkage,
  measureShrinkage,
  studentQuantile,
  thrownLength,
  totalShrinkage,
  volumeShrinkage,
} from "../../api/engine/shrinkage/index.ts";
import { close } from "../support/close.ts";

it("examples of the doc comments", () => {
  close(dryingShrinkage(100, 94.2), 0.058, { abs: 1e-12 });
  close(firingShrinkage(100, 93), 0.07, { abs: 1e-12 });
  close(totalShrinkage(0.06, 0.07), 0.1258, { abs: 1e-12 });
  close(thrownLength(90, 0.12), 102.2727, { abs: 0.00005 });
  close(volumeShrinkage(0.13), 0.3415, { abs: 0.00005 });
  close(studentQuantile(0.95, 9), 1.8331, { abs: 0.00005 });
  close(chiSquareQuantile(0.95, 9), 16.919, { abs: 0.0005 });
  close(grubbsLimit(10), 2.29, { abs: 0.0005 });
  expect(knownShrinkage({ percent: 12, plusMinus: 0.5 }).across).toEqual({ value: 0.12, low: 0.115, high: 0.125 });
  expect(measureShrinkage({ bars: [{ plastic: 100, dry: 94.2, fired: 87.9 }] }).total?.mean.value).toBe(12.1);
});

// Recorded from scipy 1.17.1, stats.t.ppf and stats.chi2.ppf.
it.each([
  [1, 6.313751514675037, 63.656741162871526],
  [2, 2.9199855803537242, 9.924843200918287],
  [3, 2.3533634348018233, 5.840909309733355],
  [4, 2.1318467863266495, 4.604094871349992],
  [7, 1.8945786050900062, 3.4994832973504924],
  [9, 1.833112932656237, 3.249835541592126],
  [19, 1.7291328115213682, 2.8609346064649794],
  [29, 1.6991270265334972, 2.756385903670605],
  [99, 1.6603911560169906, 2.626405457280827],
])("t of %d degrees", (freedom, at95, at995) => {
  close(studentQuantile(0.95, freedom), at95, { rel: 1e-10 });
  close(studentQuantile(0.995, freedom), at995, { rel: 1e-10 });
});
it.each([
  [1, 0.003932140000019522, 0.454936423119572, 3.841458820694124],
  [2, 0.10258658877510106, 1.386294361119891, 5.991464547107979],
  [4, 0.7107230213973239, 3.3566939800333224, 9.487729036781154],
  [9, 3.325112843066815, 8.342832692252955, 16.918977604620448],
  [29, 17.70836618282458, 28.33612686658445, 42.55696780429269],
  [99, 77.04633186376029, 98.33413733447392, 123.2252214533618],
])("chi-square of %d degrees", (freedom, at5, at50, at95) => {
  close(chiSquareQuantile(0.05, freedom), at5, { rel: 1e-10 });
  close(chiSquareQuantile(0.5, freedom), at50, { rel: 1e-10 });
  close(chiSquareQuantile(0.95, freedom), at95, { rel: 1e-10 });
});

it("a fraction written for a per cent is asked about, and what is honest is answered", () => {
  const refused = (input: Parameters<typeof knownShrinkage>[0]) => {
    try {
      knownShrinkage(input);
      return [];
    } catch (error) {
      return (error as { issues: { suggestion?: string }[] }).issues.map(({ suggestion }) => suggestion);
    }
  };
  expect(refused({ percent: 0.12 })).toEqual(["12"]);
  expect(refused({ percent: 12, heightPercent: 0.13 })).toEqual(["13"]);
  expect(refused({ dryingPercent: 0.06, firingPercent: 7 })).toEqual(["6"]);
  expect(refused({ percent: 0 })).toEqual([]);
  // A low fire may well shrink a clay by a fifth of a point only.
  const { warnings } = knownShrinkage({ dryingPercent: 6, firingPercent: 0.2, plusMinus: 0.2 });
  expect(warnings.map(({ code }) => code)).toEqual(["tiny-shrinkage"]);
});
