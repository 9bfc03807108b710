/** What a quench, a steam test and everyday use would show: every draw worked out again from the documented formulas. */
import { describe, expect, it } from "vitest";
import { drawsFor } from "../../api/engine/fit/draws.ts";
import { checkFit, delayedShare, type FitRequest } from "../../api/engine/fit/index.ts";
import { simulate } from "../../api/engine/fit/simulate.ts";
import { prepare } from "../../api/engine/fit/situation.ts";
import { quenchDifferences, TRIAL_SOURCES, tryOut } from "../../api/engine/fit/trials.ts";
import mechanics from "../../data/fit/mechanics.json" with { type: "json" };
import trials from "../../data/fit/trials.json" with { type: "json" };
import { close } from "../support/close.ts";

const Z90 = 1.6448536269514722;
const spread = ([low, high]: readonly number[]) => [(low! + high!) / 2, (high! - low!) / 2 / Z90] as const;
const stated = (value: number, plusMinus = 0.3) => ({
  expansion: { value, rangeC: [20, 300] as const, plusMinus },
  transitionC: 640,
  thicknessMm: 0.2,
});
const requests: [string, FitRequest][] = [
  ["a glaze about even, on clay that swells", { glaze: stated(6), body: { class: "white-earthenware" } }],
  ["a glaze that is squeezed", { glaze: stated(4.6), body: { class: "studio-porcelain" } }],
  ["a glaze that hardly shrinks at all", { glaze: stated(0.6, 1), body: { class: "vitreous-china" } }],
  [
    "clay of which nothing is known, that may not swell at all",
    { glaze: stated(5), body: { expansion: { value: 5.4, rangeC: [20, 600], plusMinus: 0.2 } } },
  ],
  [
    "a glaze as thick as its wall, on a piece that bends",
    {
      glaze: { ...stated(5), thicknessMm: 2.5 },
      body: { class: "red-stoneware" },
      ware: { glazed: "one-face-free", wallMm: 2.5 },
    },
  ],
  ["a glaze that is stretched", { glaze: stated(6.2), body: { class: "studio-porcelain" }, seed: 5 }],
];

describe.each(requests)("%s", (_what, request) => {
  const { situation: s } = prepare(request);
  const draws = drawsFor(request.seed ?? 1);
  const { normal } = draws;
  const nu = mechanics.poisson.value;
  const rate = 1 + s.rise.perKelvin * (85 - s.rise.anchorC); // instantaneous expansion at 85 °C over the mean 20–300 °C

  /** Stress [Pa], toughness over √(Zh) at once and at the floor [Pa], pull of a kelvin [Pa/K], what the surface feels of it. */
  function drawn(simulation: ReturnType<typeof simulate>, i: number) {
    const [k, kSd] = spread(mechanics.toughness["alkali-lime"].range);
    const [k0, k0Sd] = spread(mechanics.toughness.floor.range);
    const [f, fSd] = spread(mechanics.quench.factor);
    const stiff = simulation.glazePa[i]! / (1 - nu);
    return {
      stress: simulation.stress[i]!,
      tough: (k + kSd * normal.toughness[i]!) / simulation.root[i]!,
      floor: (k0 + k0Sd * normal.toughness[i]!) / simulation.root[i]!,
      perKelvin: stiff * simulation.alpha[i]! * 1e-6 * rate,
      felt: Math.min(Math.max(f + fSd * normal.quench[i]!, 0.2), 1),
      across: simulation.bent?.across[i] ?? 0,
      growth:
        (Math.max(s.body.moisturePercent.value + s.body.moisturePercent.sd * normal.moisture[i]!, 0) / 100) * stiff,
    };
  }
  /** Mean stress that is borne for a time; where stress slopes by d > K: 1.5 (K² d)^⅓ − d/2. */
  function bears({ tough, floor, across: d }: ReturnType<typeof drawn>, seconds: number) {
    const even = Math.max(delayedShare(seconds) * tough, floor);
    return even >= d ? even : 1.5 * Math.cbrt(even * even * d) - d / 2;
  }
  /** ΔT = (K/√(Zh) − σ)(1 − ν)/(f E α), K that of ten seconds; between 0 and 400 K. */
  function difference(draw: ReturnType<typeof drawn>) {
    const { stress, perKelvin, felt } = draw;
    const left = bears(draw, 10) - stress;
    return Math.min(Math.max(left / Math.max(perKelvin * felt, 1e3), 0), 400);
  }

  it("cracks in a quench from the difference that lifts its stress to what it bears in ten seconds", () => {
    const simulation = simulate(s, draws);
    const out = new Float64Array(1024);
    quenchDifferences(s, simulation, draws, out);
    for (let i = 0; i < out.length; i++) close(out[i], difference(drawn(simulation, i)), { rel: 1e-9, abs: 1e-9 });
  });

  it("passes the steps of a quench, of steam and of use as often as every fourth draw does", () => {
    const simulation = simulate(s, draws);
    const told = tryOut(s, simulation, draws);
    const every4 = Array.from({ length: 256 }, (_, j) => drawn(simulation, 4 * j));
    const share = (holds: (draw: (typeof every4)[number]) => boolean) =>
      Math.round((every4.filter(holds).length / 256) * 1000) / 1000;

    const sorted = every4.map(difference).sort((a, b) => a - b);
    // Ranks 0.05, 0.5 and 0.95 of 255, to the nearest.
    const [low, value, high] = [sorted[13]!, sorted[128]!, sorted[242]!].map(Math.round);
    expect(told.quench.cracksFrom).toEqual({ low, value, high, coverage: 0.9, unit: "K" });
    expect(told.quench.standard).toBe("ASTM C554");
    expect(told.quench.steps).toEqual(
      trials.quench.stepsC.map((ovenC) => ({ ovenC, passes: share((draw) => difference(draw) > ovenC - 20) })),
    );
    expect(told.steam).toEqual(
      trials.steam.map(({ id, name, hours, share: grown }) => ({
        id,
        name,
        passes: share((draw) => draw.stress + draw.growth * grown < bears(draw, hours * 3600)),
      })),
    );
    expect(told.use).toEqual(
      trials.use.map(({ id, name, differenceK, share: harsh, seconds }) => ({
        id,
        name,
        cracks: share((draw) => draw.stress + draw.perKelvin * differenceK * harsh * draw.felt >= bears(draw, seconds)),
      })),
    );
  });
});

describe("the word on a quench", () => {
  const expansion = { value: 5.6, rangeC: [20, 600] as const, plusMinus: 0.02 };
  const at = (value: number, plusMinus: number) =>
    checkFit({
      glaze: stated(value, plusMinus),
      body: { class: "hard-porcelain", expansion },
      doubts: { onWare: false },
    }).trials.quench;
  /** From 15 of 20 a step is expected to pass, up to 5 of 20 to fail. */
  const stepsOf = ({ steps }: ReturnType<typeof at>) => ({
    pass: steps.filter(({ passes }) => passes >= 0.75).at(-1)?.ovenC,
    fail: steps.find(({ passes }) => passes <= 0.25)?.ovenC,
  });
  it.each([
    ["names the last step to pass and the first to fail", 4.7, 0.02, true, true],
    ["names the last step to pass where none is sure to fail", 3.6, 0.02, true, false],
    ["names the first step to fail where none is sure to pass", 6, 0.02, false, true],
    ["calls none where the doubt is too wide", 4.5, 3, false, false],
  ])("%s", (_what, value, plusMinus, passes, fails) => {
    const quench = at(value, plusMinus);
    const { pass, fail } = stepsOf(quench);
    expect([pass !== undefined, fail !== undefined]).toEqual([passes, fails]);
    const water = "into 20\u00a0°C water";
    const said = {
      "true true": `Expected to pass the quench from ${pass}\u00a0°C ${water}, and to fail from ${fail}\u00a0°C.`,
      "true false": `Expected to pass the quench from ${pass}\u00a0°C ${water}; no step up to 232\u00a0°C is sure to crack it.`,
      "false true": `Expected to fail the quench from ${fail}\u00a0°C ${water}; whether it passes a milder one is open.`,
      "false false": `No step of the quench ${water} can be called: the doubt is too wide.`,
    };
    expect(quench.text).toBe(said[`${passes} ${fails}`]);
  });
  it("rests on the sources of every trial, once each", () => {
    const rows = [trials.quench, ...trials.steam, ...trials.use];
    expect([...TRIAL_SOURCES].sort()).toEqual([...new Set(rows.flatMap(({ sources }) => sources))].sort());
  });
});
