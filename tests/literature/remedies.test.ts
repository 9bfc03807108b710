/** Which way remedies go, graded against published factor sets and observations that the advice does not use. */
import { beforeAll, describe, expect, it } from "vitest";
import { findRemedies, type Remedy } from "../../api/engine/advice/index.ts";
import type { RemediesReport, RemediesRequest } from "../../api/engine/advice/types.ts";
import { analyseGlaze } from "../../api/engine/chemistry/index.ts";
import { askSet, PUBLISHED_SETS } from "../../api/engine/glass/index.ts";

const melt = { logViscosity: 0.5, surfaceTensionPercent: 10 };
const recipe = (parts: Record<string, number>) => ({
  recipe: Object.entries(parts).map(([material, amount]) => ({ material, parts: amount })),
  thicknessMm: 0.3,
});

/** Invented glazes of common make-up. */
const MISFITS: readonly { name: string; way: -1 | 1; request: RemediesRequest }[] = [
  {
    name: "feldspathic on red stoneware, crazes",
    way: -1,
    request: {
      glaze: recipe({ "potash-feldspar": 42, silica: 22, whiting: 18, kaolin: 12, "frit-soda-borosilicate": 6 }),
      body: { class: "red-stoneware", expansion: { value: 6.2, rangeC: [20, 500], plusMinus: 0.3 } },
      firing: { peakC: 1240 },
      target: 0.6,
      melt,
    },
  },
  {
    name: "nepheline syenite on porcelain, crazes",
    way: -1,
    request: {
      glaze: recipe({ "nepheline-syenite": 40, whiting: 20, silica: 30, kaolin: 10 }),
      body: { class: "studio-porcelain" },
      firing: { peakC: 1260 },
      target: 0.6,
      melt,
    },
  },
  {
    name: "petalite on a clay with cristobalite, shivers",
    way: 1,
    request: {
      glaze: recipe({ petalite: 60, silica: 20, whiting: 10, talc: 10 }),
      body: { class: "cristobalite-stoneware" },
      target: 0.6,
      melt,
    },
  },
  {
    name: "boron and silica on talc earthenware, shivers",
    way: 1,
    request: {
      glaze: recipe({ "frit-calcium-borate": 30, kaolin: 20, silica: 40, talc: 10 }),
      body: { class: "talc-earthenware" },
      firing: { peakC: 1060 },
      target: 0.6,
      melt,
    },
  },
];

const reports = new Map<string, RemediesReport>();
beforeAll(async () => {
  for (const { name, request } of MISFITS) reports.set(name, findRemedies(request));
});

/** Change of the mean expansion by each published set that covers both glazes [1e-6/K]. */
function changesBySets(request: RemediesRequest, { fit }: Remedy) {
  const [before, after] = [request.glaze, fit.glaze].map((glaze) => analyseGlaze(glaze as never).fired);
  return PUBLISHED_SETS.flatMap((set) => {
    const share = set.basis === "mole" ? "molePercent" : "weightPercent";
    const [was, is] = [askSet(set, before![share]).value, askSet(set, after![share]).value];
    return was === null || is === null ? [] : [{ set: set.id, change: is - was }];
  });
}

// Winkelmann and Schott 1894, Mayer and Havas 1911, English and Turner 1927, Hall 1930, Gilard and Dubrul 1937, Appen
// 1949 (data/factor-sets, each with its provenance): none of them is in the advice, which goes by measured glasses.
describe("published factor sets", () => {
  it.each(MISFITS)("agree which way to go: $name", ({ name, way, request }) => {
    const { remedies, before } = reports.get(name)!;
    const { crazesOnCooling, crazesLater, shivers } = before.probabilities;
    expect(Math.sign(crazesOnCooling + crazesLater - shivers)).toBe(-way);
    const recipes = remedies.filter((remedy) => remedy.recipe);
    expect(recipes.length).toBeGreaterThanOrEqual(3);
    const misses = recipes.flatMap((remedy) =>
      changesBySets(request, remedy)
        .filter(({ change }) => Math.sign(change) !== way)
        .map(({ set, change }) => `${remedy.kind} by ${set}: ${change.toFixed(2)}`),
    );
    // Graded: every set agrees with every remedy; a miss would stand here.
    expect(misses).toEqual([]);
  });

  it("agree how far, most of them within half to twice what the advice reckons", () => {
    const ratios = MISFITS.flatMap(({ name, request }) =>
      reports
        .get(name)!
        .remedies.filter((remedy) => remedy.recipe)
        .flatMap((remedy) => {
          const told = remedy.after.expansion.value - remedy.before.expansion.value;
          return changesBySets(request, remedy).map(({ change }) => change / told);
        }),
    ).sort((a, b) => a - b);
    expect(ratios.length).toBeGreaterThan(80);
    const within = ratios.filter((ratio) => ratio > 0.5 && ratio < 2).length / ratios.length;
    // Half to twice: the sets differ from each other by as much (common practice, no source).
    expect(within).toBeGreaterThan(0.85);
    // All together they should neither ask for much more nor for much less.
    expect(ratios[Math.floor(ratios.length / 2)]).toBeGreaterThan(0.8);
    expect(ratios[Math.floor(ratios.length / 2)]).toBeLessThan(1.25);
  });
});

describe("at least three distinct kinds of answer", () => {
  it.each(MISFITS)("are told of: $name", ({ name }) => {
    const { remedies } = reports.get(name)!;
    expect(new Set(remedies.map(({ kind }) => kind)).size).toBeGreaterThanOrEqual(3);
    const moved = remedies.flatMap(({ recipe: changed }) =>
      changed
        ? [
            changed.lines
              .filter(({ change }) => change !== 0)
              .map(({ name: line }) => line)
              .join(),
          ]
        : [],
    );
    expect(new Set(moved).size).toBeGreaterThanOrEqual(3);
  });
});

describe("observations", () => {
  it.each(MISFITS)(
    "the coat, where one is told, gets thinner (thicker glaze crazes more: Sproat 1923, read): $name",
    ({ name, request }) => {
      const coat = reports.get(name)!.remedies.find(({ kind }) => kind === "thickness");
      const { thicknessMm } = (coat?.fit.glaze ?? {}) as { thicknessMm?: number };
      if (coat) expect(thicknessMm).toBeLessThan((request.glaze as { thicknessMm: number }).thicknessMm);
      if (coat) expect(coat.after.probabilities.sound).toBeGreaterThan(coat.before.probabilities.sound);
    },
  );

  it.each(MISFITS)(
    "the clay expands more for what crazes, less for what shivers (body up, tension to compression: Inada 1978, read): $name",
    ({ name, way }) => {
      const { remedies, before } = reports.get(name)!;
      const clays = remedies.filter(({ kind }) => kind === "body");
      expect(clays.length).toBeGreaterThan(0);
      for (const { after } of clays) expect(Math.sign(after.stress.value - before.stress.value)).toBe(way < 0 ? -1 : 1);
    },
  );
});
