/** What to measure or fire next, and what each doubt weighs: worked out by hand from shares of the variance. */
import { describe, expect, it } from "vitest";
import { INPUTS, type Input } from "../../api/engine/fit/draws.ts";
import { driversOf, nextSteps } from "../../api/engine/fit/next.ts";
import { prepare } from "../../api/engine/fit/situation.ts";
import type { Summary } from "../../api/engine/fit/summary.ts";

const NOTHING = Object.fromEntries(INPUTS.map((input) => [input, 0])) as Record<Input, number>;
const shares = (some: Partial<Record<Input, number>>) => ({ ...NOTHING, ...some });
const coat = (thicknessMm: number) => ({ expansion: { value: 6.5 }, thicknessMm });
const body = { class: "red-stoneware" };
const { situation, ...prepared } = prepare({ glaze: coat(0.3), body });
// Nine in ten between −30 and −10 MPa: half of that is ±10 MPa.
const summary = { stress: { low: -30e6, value: -21.4e6, high: -10e6 } } as Summary;
const of20 = { crazesOnCooling: 3, crazesLater: 4, sound: 12, shivers: 1 };
const next = (some: Partial<Record<Input, number>>) =>
  nextSteps({ ...prepared, situation }, { shares: shares(some), verdictShares: NOTHING }, summary, {
    verdict: "may-craze",
    of20,
  });
const codes = (some: Partial<Record<Input, number>>) => next(some).map(({ code }) => code);

// What a measurement settles, what it leaves of the standard deviation, its effort (all common practice, no source).
const measurements: [string, Input[], number, number, string][] = [
  ["body-expansion", ["bodyMean", "bodyQuartz", "bodyRise", "bodyCristobalite"], 0.3, 3, "astm-c372"],
  ["glaze-expansion", ["glazeExpansion", "glazeRise", "recipe"], 0.35, 3, "astm-c372"],
  ["on-ware", ["onWare"], 0.5, 2, "common-practice"],
  ["set-point", ["setPoint", "transition"], 0.5, 3, "astm-c372"],
  ["thickness", ["thickness"], 0.3, 1, "common-practice"],
  ["stiffness", ["glazeStiffness", "bodyStiffness"], 0.5, 3, "common-practice"],
];

describe.each(measurements)("measuring %s", (name, inputs, left, effort, source) => {
  // Taken away: 1 − √(1 − S(1 − r²)); worth it from 5 % for each step of effort, so S = (1 − (1 − 0.05 e)²)/(1 − r²).
  const enough = (1 - (1 - 0.05 * effort) ** 2) / (1 - left ** 2);
  const among = (share: number) => Object.fromEntries(inputs.map((input) => [input, share / inputs.length]));

  it(`pays from a share of ${enough.toFixed(3)}, however its inputs share that`, () => {
    expect(codes(among(enough + 0.003))).toEqual([`measure-${name}`, "fire-a-tile"]);
    expect(codes(among(enough - 0.003))).toEqual(["fire-a-tile"]);
    for (const input of inputs) expect(codes({ [input]: enough + 0.003 })).toContain(`measure-${name}`);
  });
  it("says to what the stress would then be known", () => {
    const [step] = next(among(0.6));
    const after = 10 * Math.sqrt(1 - 0.6 * (1 - left ** 2));
    expect(step!.quantities).toEqual([{ value: Math.round(after), low: 0, high: 10, coverage: 0.9, unit: "MPa" }]);
    expect(step!.text).toContain(`known to about ±${after.toFixed(0)} instead of ±10\u00a0MPa.`);
    expect(step!.text).toMatch(/^It pays most to measure/);
    expect(step!.detail).toMatch(/^60 % of the variance/);
    expect(step!.detail).toContain(`leave ${left * 100} % of its standard deviation`);
    expect(step!.sources).toEqual([source]);
  });
});

describe("what to do next", () => {
  it("is first what takes away most for its effort: ten minutes before a laboratory", () => {
    // Clay 0.6: 10(1 − √(1 − 0.6·0.91)) = 3.26 MPa for effort 3; thickness 0.2: 10(1 − √(1 − 0.2·0.91)) = 0.96 for 1.
    expect(codes({ bodyMean: 0.6, thickness: 0.2 })).toEqual([
      "measure-body-expansion",
      "measure-thickness",
      "fire-a-tile",
    ]);
    // Thickness 0.25: 10(1 − √(1 − 0.25·0.91)) = 1.21, more than 3.26/3.
    expect(codes({ bodyMean: 0.6, thickness: 0.25 })).toEqual([
      "measure-thickness",
      "measure-body-expansion",
      "fire-a-tile",
    ]);
  });
  it("is two measurements at most, the second told as such, and always the tile", () => {
    const steps = next({ bodyMean: 0.45, glazeExpansion: 0.5, setPoint: 0.48 });
    expect(steps.map(({ code }) => code)).toEqual(["measure-glaze-expansion", "measure-body-expansion", "fire-a-tile"]);
    expect(steps[1]!.text).toMatch(/^Then/);
  });
  it("leaves nothing, not less, where shares of a sample add up to more than all", () => {
    expect(next({ bodyMean: 1.2 })[0]!.quantities[0]!.value).toBe(0);
  });
  it("is a tile as thick as all coats, with what to expect of it in twentieths", () => {
    const coats = prepare({ glaze: { layers: [coat(0.3), coat(0.25)] }, body });
    const [tile] = nextSteps(coats, { shares: NOTHING, verdictShares: NOTHING }, summary, {
      verdict: "may-craze",
      of20,
    });
    expect(tile!.text).toContain("0.55\u00a0mm");
    expect(tile!.text).toContain(
      "cracks at once about 3 in 20, cracks by and by about 7 in 20, lifting edges about 1 in 20",
    );
    expect(tile!.detail).toContain("−21\u00a0MPa (−30\u00a0MPa to −10\u00a0MPa)");
    expect(tile!.quantities).toMatchObject([{ value: -21, low: -30, high: -10, unit: "MPa" }]);
    expect(tile!.sources).toEqual(["common-practice"]);
  });
});

describe("drivers", () => {
  const verdict = shares({ toughness: 0.2, interface: 0.1, rupture: 0.05, moisture: 0.4, thickness: 0.01 });
  it("gather the inputs of a measurement, largest share of the stress first, then of the outcome", () => {
    const drivers = driversOf({
      shares: shares({
        bodyMean: 0.1,
        bodyQuartz: 0.05,
        glazeExpansion: 0.3,
        recipe: 0.02,
        setPoint: 0.1234,
        onWare: 0.2,
      }),
      verdictShares: verdict,
    });
    expect(drivers.map(({ input, share, verdictShare }) => [input, share, verdictShare])).toEqual([
      ["glaze-expansion", 0.32, 0],
      ["on-ware", 0.2, 0],
      ["body-expansion", 0.15, 0],
      ["set-point", 0.123, 0],
      ["moisture", 0, 0.4],
      ["strength", 0, 0.35],
      ["thickness", 0, 0.01],
      ["stiffness", 0, 0],
    ]);
  });
  it("are of every input but the water of a quench, each in one of them", () => {
    for (const input of INPUTS) {
      const told = driversOf({ shares: shares({ [input]: 0.5 }), verdictShares: NOTHING });
      expect(told.filter(({ share }) => share === 0.5)).toHaveLength(input === "quench" ? 0 : 1);
    }
  });
});
