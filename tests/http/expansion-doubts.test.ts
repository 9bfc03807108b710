/** The named doubts of an expansion: switched, told apart and together. */
import { describe, expect, it } from "vitest";
import { analyseGlaze } from "../../api/engine/chemistry/index.ts";
import { DEFAULTS, glazeDoubts } from "../../api/engine/fit/index.ts";
import { glassProperties } from "../../api/engine/glass/index.ts";
import { reportExpansion } from "../../api/routes/report-expansion.ts";
import { THAW } from "../../api/schemas/larch-lane.ts";
import { ask, type Report } from "./expansion-support.ts";
import { post, problemOf } from "./support.ts";

const effectOf = (report: Report, term: string) => report.doubt.terms.find((one) => one.term === term)!.effect;

describe("doubts", () => {
  it("all count at first, and are echoed", async () => {
    const { doubt } = await ask({});
    expect(doubt.counted).toEqual({ betweenPapers: true, onWare: true, crystals: true, materials: true });
    expect(doubt.thicknessMm).toBe(THAW.thicknessMm);
    expect(doubt.terms.map((one) => one.term)).toEqual(["betweenPapers", "model", "materials", "onWare", "crystals"]);
    expect(doubt.text).toContain(`${doubt.together.value}e-6/K`);
  });

  it.each(["betweenPapers", "onWare", "materials"] as const)("%s can be left out, which narrows", async (term) => {
    const all = await ask({});
    const less = await ask({ doubts: { [term]: false } });
    expect(less.doubt.counted[term]).toBe(false);
    expect(less.doubt.terms.filter((one) => !one.counted).map((one) => one.term)).toEqual([term]);
    const width = ({ doubt: { together } }: Report) => together.high - together.low;
    expect(width(less)).toBeLessThan(width(all) - 0.02);
  });

  it("opacifier adds crystals, to be left out too", async () => {
    const glaze = { ...THAW, additions: [{ material: "zircon", parts: 12 }] };
    const [counted, left] = [await ask({ glaze }), await ask({ glaze, doubts: { crystals: false } })];
    expect(effectOf(counted, "crystals").high).toBeGreaterThan(0.1);
    expect(effectOf(await ask({}), "crystals").high).toBe(0);
    expect(left.doubt.together.high).toBeLessThan(counted.doubt.together.high);
  });

  it("on ware is one-sided and grows as the coat gets thinner", async () => {
    // Derived (arithmetic) from Inada 1978, part 4: 1.5e-6/K at most up to 0.125 mm, then in proportion to 1/thickness.
    for (const [thicknessMm, most] of [
      [0.1, 1.5],
      [0.25, 0.75],
      [0.5, 0.375],
    ] as const) {
      const { low, high, value } = effectOf(await ask({ glaze: { ...THAW, thicknessMm } }), "onWare");
      expect(Math.abs(value + most / 2)).toBeLessThan(0.006);
      expect(Math.abs(low + 0.95 * most)).toBeLessThan(0.006);
      expect(Math.abs(high + 0.05 * most)).toBeLessThan(0.006);
    }
  });

  it("without ware, crystals and materials what is left is the interval of the best figure", async () => {
    const { best, doubt } = await ask({ doubts: { onWare: false, crystals: false, materials: false } });
    expect(doubt.together).toEqual({ ...best.expansion, coverage: 0.9 });
  });

  it("together they hold as many as drawing each at random says", () => {
    const chemistry = analyseGlaze(THAW);
    const { terms, together } = glazeDoubts(chemistry, 0.15);
    const { value, scale, shape } = glassProperties(chemistry.moleFractions).expansion;
    const materials = terms.find((one) => one.term === "materials")!.effect.high / 1.645;
    const normal = Array.from({ length: 200 }, (_, i) => probit((i + 0.5) / 200));
    let held = 0;
    for (const z of shape)
      for (const m of normal)
        for (let u = 0.025; u < 1; u += 0.05) {
          const alpha = value + scale * z + materials * m - 1.5 * u * (0.125 / 0.15);
          if (alpha >= together.low && alpha <= together.high) held += 1;
        }
    // Roots of squares are exact for normal doubts alone; these have heavy tails and one is even.
    const share = held / (shape.length * normal.length * 20);
    expect(share).toBeGreaterThan(0.87);
    expect(share).toBeLessThan(0.93);
  });

  it("takes the usual thickness where none is given", () => {
    const { glaze } = { glaze: { recipe: THAW.recipe } };
    expect(reportExpansion({ glaze }).doubt.thicknessMm).toBe(DEFAULTS.thicknessMm);
  });

  it("refuses a doubt that it does not know by name", async () => {
    const problem = await problemOf(await post("/v1/expansion", { glaze: THAW, doubts: { moonlight: false } }));
    expect(problem.issues![0]!.pointer).toBe("/doubts/moonlight");
  });
});

/** Quantile of the normal distribution by bisection on its error function's series (derived). */
function probit(p: number): number {
  let [low, high] = [-6, 6];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (normalShare(middle) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function normalShare(z: number): number {
  let term = z;
  let sum = z;
  for (let k = 1; k < 200; k++) {
    term *= (-z * z) / (2 * k);
    sum += term / (2 * k + 1);
  }
  return 0.5 + sum / Math.sqrt(2 * Math.PI);
}
