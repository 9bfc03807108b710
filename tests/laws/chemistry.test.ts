import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { analyseGlaze, batchFromSeger, fromSeger, OXIDES, parseFormula } from "../../api/engine/chemistry/index.ts";
import { nonNegativeFit } from "../../api/engine/chemistry/non-negative-fit.ts";
import { EngineError } from "../../api/engine/errors.ts";
import { listMaterials } from "../../api/engine/recipe/materials.ts";
import type { OxideComposition, Recipe, RecipeLine } from "../../api/engine/recipe/types.ts";
import { close } from "../support/close.ts";

const ids = listMaterials().map(({ id }) => id);
const parts = fc.double({ min: 0.01, max: 1000, noNaN: true });
const line: fc.Arbitrary<RecipeLine> = fc.oneof(
  { weight: 5, arbitrary: fc.record({ material: fc.constantFrom(...ids), parts }) },
  { weight: 1, arbitrary: fc.record({ formula: fc.constantFrom("CaCO3", "FeO", "CaF2", "SiC", "KAlSi3O8"), parts }) },
  {
    weight: 1,
    arbitrary: fc.record({
      analysis: fc.record({
        weightPercent: fc.record({
          SiO2: fc.double({ min: 1, max: 50, noNaN: true }),
          FeO: fc.double({ min: 0, max: 20, noNaN: true }),
          MnO2: fc.double({ min: 0, max: 10, noNaN: true }),
          H2O: fc.double({ min: 0, max: 5, noNaN: true }),
        }),
        lossOnIgnitionPercent: fc.option(fc.double({ min: 0, max: 15, noNaN: true }), { nil: undefined }),
      }),
      parts,
    }),
  },
);
const recipe = fc.record({
  recipe: fc.array(line, { minLength: 1, maxLength: 12 }),
  additions: fc.array(line, { maxLength: 3 }),
});
const moles = fc
  .dictionary(fc.constantFrom(...OXIDES), fc.double({ min: 1e-4, max: 20, noNaN: true }), { minKeys: 2 })
  .map((amounts) => ({ ...amounts, CaO: 0.5, SiO2: 2 }));
const sum = (record: Readonly<Record<string, number>>) => Object.values(record).reduce((a, b) => a + b, 0);
const sameGlass = (a: Readonly<Record<string, number>>, b: Readonly<Record<string, number>>, rel = 1e-9, abs = 0) => {
  expect(Object.keys(a)).toEqual(Object.keys(b));
  for (const oxide of Object.keys(a)) close(a[oxide], b[oxide]!, { rel, abs, label: oxide });
};

describe("for any recipe", () => {
  it("the mass balance closes to 1e-9 g of 100", () => {
    fc.assert(
      fc.property(recipe, (glaze) => {
        const { massBalance, fired, asWeighed, moleFractions } = analyseGlaze(glaze);
        close(massBalance.error, 0, { abs: 1e-9 });
        close(massBalance.glassG + massBalance.lostG, 100, { abs: 1e-9 });
        close(sum(fired.weightPercent), 100, { rel: 1e-12 });
        close(sum(moleFractions), 1, { rel: 1e-12 });
        close(sum(asWeighed.weightPercent) + asWeighed.lossOnIgnitionPercent, 100, { rel: 1e-11 });
      }),
    );
  });

  it("a bigger batch is the same glaze", () => {
    fc.assert(
      fc.property(recipe, fc.double({ min: 1e-3, max: 1e3, noNaN: true }), (glaze, factor) => {
        const scale = (lines: RecipeLine[]) => lines.map((each) => ({ ...each, parts: each.parts * factor }));
        const bigger = analyseGlaze({ recipe: scale(glaze.recipe), additions: scale(glaze.additions) });
        const ours = analyseGlaze(glaze);
        sameGlass(bigger.moleFractions, ours.moleFractions);
        sameGlass(bigger.weightPercentSd, ours.weightPercentSd, 1e-9, 1e-9);
        close(bigger.asWeighed.lossOnIgnitionPercent, ours.asWeighed.lossOnIgnitionPercent, { rel: 1e-9, abs: 1e-9 });
      }),
    );
  });

  it("the order of the lines does not matter, nor whether one is an addition", () => {
    fc.assert(
      fc.property(recipe, (glaze) => {
        const turned = { recipe: [...glaze.additions, ...glaze.recipe].reverse() };
        sameGlass(analyseGlaze(turned).moleFractions, analyseGlaze(glaze).moleFractions);
      }),
    );
  });

  it("a line split in two is the same glaze, but for the spread, which two bags even out", () => {
    fc.assert(
      fc.property(recipe, (glaze) => {
        const [first, ...rest] = glaze.recipe;
        const half = { ...first!, parts: first!.parts / 2 };
        const split = analyseGlaze({ ...glaze, recipe: [half, half, ...rest] });
        const ours = analyseGlaze(glaze);
        sameGlass(split.moleFractions, ours.moleFractions);
        for (const [oxide, sd] of Object.entries(split.weightPercentSd)) {
          expect(sd).toBeLessThanOrEqual(ours.weightPercentSd[oxide]! * (1 + 1e-9) + 1e-12);
        }
      }),
    );
  });

  it("more silica makes a glaze no poorer in silica", () => {
    fc.assert(
      fc.property(recipe, parts, (glaze, extra) => {
        const richer = analyseGlaze({
          ...glaze,
          additions: [...glaze.additions, { material: "silica-theoretical", parts: extra }],
        });
        const before = analyseGlaze(glaze).fired.weightPercent.SiO2 ?? 0;
        expect(richer.fired.weightPercent.SiO2!).toBeGreaterThanOrEqual(before - 1e-9);
      }),
    );
  });
});

describe("for any composition", () => {
  it("moles → weight → moles comes back", () => {
    fc.assert(
      fc.property(moles, (amounts) => {
        const ours = analyseGlaze({ oxides: { basis: "moles", amounts } });
        for (const basis of ["weightPercent", "molePercent"] as const) {
          const again = analyseGlaze({ oxides: { basis, amounts: ours.fired[basis] } });
          sameGlass(again.moleFractions, ours.moleFractions, 1e-11);
        }
        sameGlass(analyseGlaze({ oxides: { basis: "moles", amounts: ours.moles } }).moleFractions, ours.moleFractions);
        const byWeight = fromSeger(ours.seger!.moles);
        for (const [oxide, percent] of Object.entries(ours.fired.weightPercent)) {
          close(byWeight[oxide], percent, { rel: 1e-11, label: oxide });
        }
      }),
    );
  });

  it("the Seger formula of a Seger formula is itself, whatever the size of the batch", () => {
    fc.assert(
      fc.property(moles, fc.double({ min: 1e-3, max: 1e3, noNaN: true }), (amounts, factor) => {
        const seger = analyseGlaze({ oxides: { basis: "moles", amounts } }).seger!;
        const scaled = Object.fromEntries(Object.entries(seger.moles).map(([oxide, n]) => [oxide, n * factor]));
        const again = analyseGlaze({ oxides: { basis: "moles", amounts: scaled } }).seger!;
        sameGlass(again.moles, seger.moles, 1e-11);
        close(again.fluxSum, 1, { rel: 1e-12 });
      }),
    );
  });

  it("the batch found for a mixture of materials makes that mixture", () => {
    const four = ["potash-feldspar", "whiting", "kaolin", "silica", "talc", "zinc-oxide", "dolomite"];
    fc.assert(
      fc.property(fc.array(parts, { minLength: four.length, maxLength: four.length }), (weights) => {
        const mixed = analyseGlaze({ recipe: four.map((material, i) => ({ material, parts: weights[i]! })) });
        const { lines, missing } = batchFromSeger(
          mixed.seger!.moles,
          four.map((material) => ({ material })),
        );
        expect(Math.max(0, ...Object.values(missing).map(Math.abs))).toBeLessThan(1e-6);
        const total = weights.reduce((a, b) => a + b, 0);
        for (const [i, { percent }] of lines.entries()) close(percent, (100 * weights[i]!) / total, { abs: 1e-5 });
      }),
    );
  });
});

describe("for any columns and any target", () => {
  // Necessary and enough for the least sum of squares under x ≥ 0 (Karush, Kuhn, Tucker): what is left pulls at no
  // column that is in, and towards less, if at all, of each that is out.
  it("no change of any amount comes nearer", () => {
    const whole = fc.integer({ min: -3, max: 3 });
    const rows = fc.array(whole, { minLength: 5, maxLength: 5 });
    fc.assert(
      fc.property(fc.array(rows, { minLength: 1, maxLength: 8 }), rows, (columns, target) => {
        const { value, converged } = nonNegativeFit(columns, target);
        expect(converged).toBe(true);
        const left = target.map((t, i) => t - columns.reduce((sum, column, j) => sum + column[i]! * value[j]!, 0));
        for (const [j, column] of columns.entries()) {
          const pull = column.reduce((sum, v, i) => sum + v * left[i]!, 0);
          expect(value[j]).toBeGreaterThanOrEqual(0);
          expect(pull).toBeLessThan(1e-9);
          if (value[j]! > 0) close(pull, 0, { abs: 1e-9 });
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe("nothing crashes", () => {
  const pieces = [
    "Si",
    "O",
    "O2",
    "(",
    ")",
    "[",
    "]",
    ".",
    "·",
    "2",
    "0.5",
    "12",
    "H2O",
    "Co",
    "é",
    " ",
    "x",
    "-",
    "₂",
  ];
  it("whatever is read as a formula", () => {
    const text = fc.oneof(
      fc.string({ maxLength: 300 }),
      fc.array(fc.constantFrom(...pieces), { maxLength: 80 }).map((p) => p.join("")),
    );
    fc.assert(
      fc.property(text, (formula) => {
        const atoms = orRefused(() => parseFormula(formula));
        for (const count of Object.values(atoms ?? {})) expect(Number.isFinite(count) && count > 0).toBe(true);
      }),
      { numRuns: 3000 },
    );
  });

  it("whatever is given for a glaze", () => {
    const value = fc.anything({ maxDepth: 2 });
    const wild = fc.record(
      {
        material: fc.oneof(fc.constantFrom(...ids), value),
        formula: fc.oneof(fc.constantFrom("SiO2", "K20", "(("), value),
        analysis: fc.oneof(fc.record({ weightPercent: value, lossOnIgnitionPercent: value }), value),
        name: value,
        parts: fc.oneof(fc.double(), value),
      },
      { requiredKeys: [] },
    );
    const glaze = fc.oneof(
      value,
      fc.record(
        { recipe: fc.oneof(fc.array(fc.oneof(wild, value)), value), additions: value },
        { requiredKeys: ["recipe"] },
      ),
      fc.record({ oxides: fc.record({ basis: fc.oneof(fc.constant("moles"), value), amounts: value }) }),
      fc.record({
        oxides: fc.record({
          basis: fc.constantFrom("moles", "weightPercent"),
          amounts: fc.dictionary(fc.constantFrom(...OXIDES, "H2O", "SiO"), fc.double()),
        }),
      }),
    );
    fc.assert(
      fc.property(glaze, (given) => {
        const ours = orRefused(() => analyseGlaze(given as Recipe | OxideComposition));
        if (ours) {
          close(ours.massBalance.error, 0, { abs: 1e-9 });
          close(sum(ours.moleFractions), 1, { rel: 1e-9 });
        }
      }),
      { numRuns: 3000 },
    );
  });
});

function orRefused<T>(run: () => T): T | undefined {
  try {
    return run();
  } catch (error) {
    if (!(error instanceof EngineError)) throw error;
    expect(error.issues.length).toBeGreaterThan(0);
    for (const { pointer, message } of error.issues) {
      expect(pointer === "" || pointer.startsWith("/")).toBe(true);
      expect(message.length).toBeLessThan(700);
    }
    return undefined;
  }
}
