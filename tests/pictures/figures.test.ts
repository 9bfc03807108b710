/** What a picture shows must be what the figures say: checked by hand-worked places. */
import { describe, expect, it } from "vitest";
import { bilayerStress, checkFit, type Layers } from "../../api/engine/fit/index.ts";
import { bestPart, partRowsOf, restInWords } from "../../api/engine/pictures/contributions/part-rows.ts";
import { bestSwap } from "../../api/engine/pictures/contributions/rows.ts";
import { lengthsOf, stepsOf } from "../../api/engine/pictures/expansion/lengths.ts";
import { contributionsPicture, expansionPicture, stressPicture } from "../../api/engine/pictures/index.ts";
import { escapeText, px } from "../../api/engine/pictures/marks/sheet.ts";
import { shorten, textWidth, wrap } from "../../api/engine/pictures/marks/text-width.ts";
import { niceStep } from "../../api/engine/pictures/marks/ticks.ts";
import { wallOf } from "../../api/engine/pictures/stress/layers.ts";
import { hillOf } from "../../api/engine/pictures/verdict/hill.ts";
import { aimOf, stressScale } from "../../api/engine/pictures/verdict/scale.ts";
import { THAW_ON_RED_STONEWARE } from "../../api/schemas/larch-lane.ts";
import { shown } from "./support.ts";

const thaw = checkFit({ ...THAW_ON_RED_STONEWARE, include: ["curves"] });

describe("the scale", () => {
  it("runs from −200 to +80 MPa whatever is drawn", () => {
    const { x, at } = stressScale(6, 974);
    expect([x(-200), x(0), x(80)]).toEqual([6, 6 + (200 / 280) * 968, 974]); // derived (arithmetic)
    expect(at(x(-37))).toBeCloseTo(-37, 9);
  });

  it("aims clear of both risks even at the near ends of their intervals, or not at all", () => {
    const quantity = (value: number, half: number) => ({
      ...thaw.stress,
      value,
      low: value - half,
      high: value + half,
    });
    const thresholds = (lift: number, later: number) => ({
      ...thaw,
      thresholds: { ...thaw.thresholds, edgesMayLift: quantity(lift, 10.5), mayCrackInTime: quantity(later, 8.2) },
    });
    expect(aimOf(thresholds(-90, 12))).toEqual([-79, 3]); // derived (arithmetic): −79.5 rounded in, 3.8 rounded in
    expect(aimOf(thresholds(-30, -20))).toBeUndefined();
  });
});

describe("the hill", () => {
  it("is highest where cases are thickest and as wide as the doubt", () => {
    // Quantiles of a normal distribution, mean −40, standard deviation 20: (i + 0.5)/20, from printed tables.
    const half = [0.0627, 0.1891, 0.3186, 0.454, 0.5978, 0.7554, 0.9346, 1.1503, 1.4395, 1.96];
    const z = [...half.map((v) => -v).reverse(), ...half];
    const cases = z.map((v) => ({ stressMPa: -40 + 20 * v, outcome: "sound" as const }));
    const hill = hillOf({ ...thaw, stress: { ...thaw.stress, value: -40, low: -72.9, high: -7.1, cases } });
    expect(hill.height(-40)).toBeGreaterThan(0.99);
    // A normal density falls to exp(−1/2) = 0.607 one standard deviation out.
    expect(Math.abs(hill.height(-20) - 0.607)).toBeLessThan(0.04);
    expect(Math.abs(hill.height(0) - 0.135)).toBeLessThan(0.04);
    expect(hill.height(500)).toBe(0);
  });
});

describe("cooling", () => {
  it("leaves the mismatch of the report between the two cold ends", () => {
    const { glaze, body } = lengthsOf(thaw)!;
    expect(glaze[0]!.percent - body[0]!.percent).toBeCloseTo(thaw.mismatch.value, 9);
    expect(Math.abs(lengthsOf(thaw)!.glaze.at(-1)!.percent)).toBeLessThan(1e-9);
    expect(expansionPicture(thaw)).toContain(`gap at 20 °C: ${Math.abs(thaw.mismatch.value).toFixed(3)}`);
  });

  it("finds the steps of a made-up clay: 0.04 % at 573 °C, none at 230 °C", () => {
    const curve = Array.from({ length: 36 }, (_, i) => {
      const c = 20 + i * 20;
      const strainPercent = (c - 20) * 5e-4 + (c > 573 ? 0.04 : 0);
      return { c, strainPercent, lowPercent: strainPercent, highPercent: strainPercent };
    });
    const steps = stepsOf({ ...thaw, curves: { glaze: curve, body: curve } });
    expect(steps).toHaveLength(1);
    expect(steps[0]!.name).toBe("quartz");
    expect(steps[0]!.percent).toBeCloseTo(0.04, 6);
  });
});

describe("contributions", () => {
  it("swap by the difference of two derivatives", () => {
    const row = { molePercent: 1, pullMPa: 10 };
    const pulls = [
      { ...row, oxide: "Na2O", weightPercent: 4, perWeightPercentMPa: 19 },
      { ...row, oxide: "Li2O", weightPercent: 0.2, perWeightPercentMPa: 40 },
      { ...row, oxide: "SiO2", weightPercent: 68, perWeightPercentMPa: -3 },
    ];
    expect(bestSwap({ ...thaw, pulls })).toEqual({ oxide: "Na2O", dropMPa: 22 }); // derived (arithmetic): 19 − (−3)
    expect(bestSwap({ ...thaw, pulls: [] })).toBeUndefined();
  });
});

describe("one more part", () => {
  const part = (label: string, perPartMPa: number, material: string | null = label) => ({
    label,
    material,
    perPartMPa,
  });
  const parts = [
    part("silica", -3.03),
    part("potash-feldspar", 0.45),
    part("whiting", 3.76),
    part("kaolin", 0.099),
    part("old barn clay", -0.1, null),
    part("silica", -3.03),
  ];

  it("orders bars from the hardest pull, names what does next to nothing, and takes a material once", () => {
    const rows = partRowsOf({ parts });
    expect(rows.bars.map(({ name }) => name)).toEqual(["whiting", "potash feldspar", "old barn clay", "silica"]);
    expect(restInWords(rows)).toEqual(["Next to nothing: kaolin."]);
    expect(partRowsOf({})).toEqual({ bars: [], faint: [], cut: [] });
  });

  it("keeps two lines of one name apart where they are not one material", () => {
    const twins = [part("own analysis", 1, null), part("own analysis", -1, null)];
    expect(partRowsOf({ parts: twins }).bars).toHaveLength(2);
  });

  it("counts those that find no room, and says how much they do at most", () => {
    const many = Array.from({ length: 14 }, (_, i) => part(`m${i}`, (i % 2 ? 1 : -1) * (14 - i)));
    const rows = partRowsOf({ parts: many });
    expect(rows.bars).toHaveLength(10);
    expect(Math.min(...rows.bars.map(({ mpa }) => Math.abs(mpa)))).toBe(5); // derived (arithmetic): 14 down to 5
    expect(restInWords(rows)).toEqual(["4 more change it by 4.0\u00a0MPa a part or less."]);
    const faint = Array.from({ length: 9 }, (_, i) => part(`f${i}`, 0.01));
    expect(restInWords(partRowsOf({ parts: faint }))).toEqual(["Next to nothing: f0, f1, f2, f3, f4, f5 and 3 more."]);
  });

  it("names the part that eases crazing, or lifting where it lifts, or none", () => {
    expect(bestPart({ verdict: "crazes", parts })).toBe("One more part of silica takes off 3.0\u00a0MPa.");
    expect(bestPart({ verdict: "may-shiver", parts })).toBe("One more part of whiting adds 3.8\u00a0MPa.");
    expect(bestPart({ verdict: "crazes", parts: [part("whiting", 3.76)] })).toBeUndefined();
    expect(bestPart({ verdict: "crazes" })).toBeUndefined();
  });

  it("draws right of the line what pulls, left what pushes, as long as it is strong", () => {
    const svg = contributionsPicture({ ...thaw, pulls: thaw.pulls.slice(0, 1), parts });
    const zero = Number(
      [...svg.matchAll(/<path d="M([\d.]+) [\d.]+V[\d.]+" fill="none" stroke="[^"]*" stroke-width="1.5"/g)].at(-1)![1],
    );
    const bars = [
      ...svg.matchAll(/<rect x="([\d.]+)" y="[\d.]+" width="([\d.]+)" [^>]*fill="url\(#[\w-]+-(cracks|waves)\)/g),
    ].slice(1);
    const [whiting, feldspar, , silica] = bars.map(([, x, length, fill]) => ({
      x: Number(x),
      length: Number(length),
      fill,
    }));
    expect([whiting!.x, whiting!.fill, feldspar!.x]).toEqual([zero, "cracks", zero]);
    expect(silica!.fill).toBe("waves");
    expect(silica!.x + silica!.length).toBeCloseTo(zero, 1);
    expect(silica!.length / whiting!.length).toBeCloseTo(3.03 / 3.76, 2); // derived (arithmetic)
  });

  it("tells every figure in the description, and nothing where the answer holds no parts", () => {
    const told = (svg: string) => shown(/<desc[^>]*>(.*?)<\/desc>/.exec(svg)![1]!);
    expect(told(contributionsPicture({ ...thaw, parts }))).toContain("whiting +3.8 MPa; potash feldspar +0.5 MPa");
    expect(contributionsPicture(thaw)).not.toContain("One more part");
    expect(contributionsPicture({ ...thaw, parts: [] })).toBe(contributionsPicture(thaw));
  });
});

describe("stress through the wall", () => {
  it("balances: force in the glaze against force in the clay", () => {
    for (const glazed of ["both-faces", "one-face", "one-face-free"] as const) {
      const { layers } = wallOf(thaw, { wallMm: 6, glazed });
      const force = layers.reduce((sum, { outer, inner, mm }) => sum + ((outer + inner) / 2) * mm, 0);
      expect(Math.abs(force), glazed).toBeLessThan(1e-6);
    }
  });

  it("slopes in a free piece as the two-layer plate does, and says which way it bends", () => {
    const { layers, bends } = wallOf(thaw, { wallMm: 5, glazed: "one-face-free" });
    const plate: Layers = {
      glazePa: thaw.glaze.youngs.value * 1e9,
      glazePoisson: 0.2,
      glazeM: thaw.glaze.thickness.value / 1e3,
      bodyPa: thaw.body.youngs.value * 1e9,
      bodyPoisson: 0.2,
      wallM: 5e-3,
    };
    const unit = bilayerStress(plate, 1e-3);
    expect(layers[0]!.outer / layers[0]!.inner).toBeCloseTo(unit.glazeSurface / unit.glazeInterface, 9);
    expect((layers[0]!.outer + layers[0]!.inner) / 2).toBeCloseTo(thaw.stress.value, 9);
    expect(bends).toBe(thaw.stress.value > 0 ? "hollow" : "domed");
    expect(stressPicture(thaw, { ware: { glazed: "one-face-free" } })).toContain("turns hollow");
  });

  it("writes how far the drawing exaggerates", () => {
    const svg = stressPicture(thaw, { ware: { wallMm: 6 } });
    // derived (arithmetic): 46 px for 0.30 mm against 128 px for 6 mm.
    expect(shown(svg)).toContain(`Glaze drawn ${(46 / 0.3 / (128 / 6)).toFixed(1)} times too thick.`);
  });
});

describe("measuring words", () => {
  it("never falls short of a common sans", () => {
    // Advance widths of Helvetica, 1/1000 em: S 667, i 222, O 778, 2 556 (Adobe Core 14 AFM metrics, from memory).
    expect(textWidth("SiO2", 10)).toBeGreaterThanOrEqual((667 + 222 + 778 + 556) / 100);
  });

  it("does what its examples say", () => {
    expect(textWidth("+29 MPa", 14, true)).toBeCloseTo(70.14, 6);
    expect(wrap("the skin is too small", 80, 14)).toEqual(["the skin is", "too small"]);
    expect(shorten("Hoarfrost", 40, 14)).toBe("Ho…");
    expect(px(2.34567)).toBe(2.35);
    expect(escapeText("<b>")).toBe("&#60;b&#62;");
  });

  it("wraps evenly and cuts what cannot be wrapped", () => {
    expect(wrap("one two three four", 60, 10).length).toBeGreaterThan(1);
    for (const line of wrap("Donaudampfschifffahrtsgesellschaft on a red stoneware", 90, 12)) {
      expect(textWidth(line, 12)).toBeLessThanOrEqual(90);
    }
  });

  it("takes round steps", () => {
    expect(niceStep(0.52, 6)).toBeCloseTo(0.1, 12);
    expect(niceStep(0.13, 6)).toBeCloseTo(0.05, 12);
    expect(niceStep(7, 6)).toBe(2);
  });
});
