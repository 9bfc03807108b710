/** Density, liquidus and the parts of a doubt. */
import { describe, expect, it } from "vitest";
import { analyseGlaze } from "../../api/engine/chemistry/index.ts";
import {
  appenDensity,
  estimateExpansion,
  expansionContributions,
  expansionDoubt,
  expansionPerPart,
  glassDensity,
  glassProperties,
  liquidusIndication,
  propertyModels,
} from "../../api/engine/glass/index.ts";
import { quantileOf } from "../../api/engine/quantity.ts";
import { betweenPapers } from "../../data/fitting/between-papers.ts";
import { calibrateDensity, halfWidthFrom, PRINTED } from "../../data/fitting/calibrate-density.ts";
import independent from "../../data/fitting/independent-check.json" with { type: "json" };
import type { GlassRow } from "../../data/fitting/read-glasses.ts";
import expansion from "../../data/models/expansion.json" with { type: "json" };
import bibliography from "../../data/sources.json" with { type: "json" };
import { close } from "../support/close.ts";

const fired = (amounts: Record<string, number>) => analyseGlaze({ oxides: { basis: "weightPercent", amounts } });

describe("density, printed against Appen's volumes", () => {
  it.each(PRINTED)("$glass, $density g/cm3 ($source)", ({ density: value, weight }) => {
    const { density } = glassDensity(fired(weight).moleFractions);
    expect(density!.low).toBeLessThanOrEqual(value);
    expect(density!.high).toBeGreaterThanOrEqual(value);
  });
  it("takes the half-width of Student's t from how far off these glasses are (worked by hand)", () => {
    // t(0.95) for 2 degrees of freedom is 2.92.
    close(halfWidthFrom([0.03, -0.03]), 2.92 * 0.03, { abs: 1e-9 });
    expect(() => halfWidthFrom([])).toThrow(RangeError);
  });
  it("states the half-width that the printed glasses give, and what it rests on", () => {
    const { halfWidth, held } = calibrateDensity();
    const { density, note } = glassDensity({ PbO: 1 });
    close(density!.high / density!.value - 1, halfWidth, { abs: 0.003, why: "rounded to 0.01 g/cm3" });
    expect(held).toBeGreaterThanOrEqual(0.87);
    expect(note).toContain("eight industrial glasses");
    expect(PRINTED).toHaveLength(8);
  });
  it("names what it leaves out, and gives nothing for nothing", () => {
    expect(glassDensity({ SiO2: 0.9, CoO: 0.1, WO3: 0 }).missingOxides).toEqual(["CoO"]);
    expect(glassDensity({ CoO: 1 }).density).toBeNull();
    expect(glassDensity({}).density).toBeNull();
  });
  // Molar masses 60.083, 61.979, 69.617 and 101.961; volumes 26.5, 20.2, 40.4, boron 34 three-fold and 18.5 four-fold.
  it.each<{ why: string; of: Record<string, number>; mass: number; volume: number }>([
    { why: "no boron", of: { SiO2: 0.75, Na2O: 0.25 }, mass: 60.557, volume: 0.75 * 26.5 + 0.25 * 20.2 },
    { why: "boron all in three", of: { B2O3: 1 }, mass: 69.617, volume: 34 },
    { why: "boron all in four", of: { B2O3: 0.25, Na2O: 0.75 }, mass: 63.8885, volume: 0.25 * 18.5 + 0.75 * 20.2 },
    {
      why: "half of the boron in four: soda 0.15 less alumina 0.05, of 0.2",
      of: { SiO2: 0.6, B2O3: 0.2, Na2O: 0.15, Al2O3: 0.05 },
      mass: 0.6 * 60.083 + 0.2 * 69.617 + 0.15 * 61.979 + 0.05 * 101.961,
      volume: 0.6 * 26.5 + 0.2 * 26.25 + 0.15 * 20.2 + 0.05 * 40.4,
    },
    { why: "a tenth left out", of: { SiO2: 0.9, CoO: 0.1 }, mass: 60.083, volume: 26.5 },
  ])("is mass over volume, by hand: $why", ({ of, mass, volume }) => {
    close(appenDensity(of).value, mass / volume, { rel: 1e-4 });
  });
  it("states 4.1 % to either side in g/cm3", () => {
    const value = 207.2 + 15.999;
    // Pure PbO by hand: its molar mass over 22.3 cm3/mol is 10.01.
    const { density, sources } = glassDensity({ PbO: 1 });
    expect(density).toMatchObject({ unit: "g/cm3", coverage: 0.9 });
    close(density!.value, value / 22.3, { abs: 0.01 });
    close(density!.low, (0.959 * value) / 22.3, { abs: 0.01 });
    close(density!.high, (1.041 * value) / 22.3, { abs: 0.01 });
    expect(sources).toEqual(["appen-1949"]);
  });
  it("gives the figure of the docstring", () => {
    close(glassDensity({ SiO2: 0.75, Na2O: 0.25 }).density?.value, 2.43);
  });
});

describe("liquidus", () => {
  it("holds the devitrification of soda-lime window glass, near 1010 °C (from memory)", () => {
    const { liquidusC, warnings, note } = liquidusIndication(
      fired({ SiO2: 72.6, Na2O: 13.9, CaO: 8.4, MgO: 3.9, Al2O3: 1.1, K2O: 0.6 }).moleFractions,
    );
    expect(quantileOf(liquidusC, 0.05)).toBeLessThan(1010);
    expect(quantileOf(liquidusC, 0.95)).toBeGreaterThan(1010);
    expect(warnings).toEqual([]);
    expect(note).toContain("indication");
  });
  it("names an oxide outside its glasses and doubts more with one that it does not know", () => {
    const { warnings, sources } = liquidusIndication({ SiO2: 0.5, Li2O: 0.45, Al2O3: 0.05 });
    expect(warnings.map((warning) => warning.code)).toContain("outside-training-range");
    expect(sources).toEqual(["sciglass-2019"]);
    const plain = liquidusIndication({ SiO2: 0.7, Al2O3: 0.1, Na2O: 0.2 }).liquidusC;
    const odd = liquidusIndication({ SiO2: 0.665, Al2O3: 0.095, Na2O: 0.19, V2O5: 0.05 });
    close(odd.liquidusC.value, plain.value, { rel: 1e-12 });
    close(odd.liquidusC.scale, 1.5 * plain.scale, { rel: 1e-12 });
    expect(odd.warnings.map((warning) => warning.code)).toEqual(["oxide-not-in-model"]);
  });
});

describe("parts of the doubt", () => {
  it("add up in squares to the whole interval", () => {
    const { moleFractions, fired: glass } = fired({ SiO2: 65, Al2O3: 13, Na2O: 4, K2O: 4, CaO: 12, MgO: 2 });
    const parts = expansionDoubt(moleFractions);
    expect(parts.map((part) => part.term)).toEqual(["between-papers", "model"]);
    const { low, high } = estimateExpansion(moleFractions, glass.weightPercent).best.expansion!;
    close(Math.hypot(...parts.map((part) => part.halfWidth)), (high - low) / 2, { abs: 0.011, why: "rounded ends" });
  });

  it("are counted by publication, equal values told apart (worked by hand)", () => {
    const row = (publication: number, cte: number): GlassRow => ({
      ...{ glass: 1, publication, year: 2000, x: Float64Array.of(0.8, 0.2) },
      measured: { cte },
    });
    // Publication 1 prints 7.0 and 7.2 (its middle 7.1), 2 prints 7.1, 3 prints 7.5: pairs 0, 0.4, 0.4.
    const { all, unequal } = betweenPapers([row(1, 7), row(1, 7.2), row(2, 7.1), row(3, 7.5)], "cte");
    expect(all.pairs).toBe(3);
    expect(unequal).toEqual({ pairs: 2, median: 0.4, rms: 0.4, p90: 0.4 });
    close(all.rms, Math.sqrt(0.32 / 3), { abs: 0.0005 });
  });
});

it("does no worse than an independent implementation on the same folds", () => {
  for (const domain of ["glaze", "stoneware-like"] as const) {
    const [own, other] = [expansion.heldOut[domain], independent.figures[domain]];
    expect(own.medianAbsoluteError).toBeLessThanOrEqual(other.medianAbsoluteError);
    expect(own.rmse).toBeLessThanOrEqual(other.rmse);
    close(other.n, own.n, { abs: 3, why: "rows on the very edge of a domain fall by rounding" });
  }
});

describe("one more part of each material", () => {
  // Together 120: a part is not a per cent.
  const recipe = [
    { material: "potash-feldspar", parts: 62 },
    { material: "silica", parts: 22 },
    { material: "whiting", parts: 18 },
    { material: "kaolin", parts: 12 },
    { material: "red-iron-oxide", parts: 6 },
  ];
  const expansionOf = (lines: typeof recipe) =>
    glassProperties(analyseGlaze({ recipe: lines }).moleFractions).expansion.value;

  it("agrees with weighing a little more of it", () => {
    const effects = expansionPerPart(analyseGlaze({ recipe }));
    expect(effects.map((effect) => effect.material)).toEqual(recipe.map((line) => line.material));
    const step = 1e-6;
    recipe.forEach((line, i) => {
      const more = recipe.with(i, { ...line, parts: line.parts + step });
      const difference = (expansionOf(more) - expansionOf(recipe)) / step;
      close(effects[i]!.perPart, difference, { abs: 1e-6, why: "a difference over a millionth of a part" });
    });
  });
  it("says that silica lowers and feldspar raises", () => {
    const [feldspar, silica] = expansionPerPart(analyseGlaze({ recipe }));
    expect(feldspar!.perPart).toBeGreaterThan(0);
    expect(silica!.perPart).toBeLessThan(0);
  });
  it.each(["wollastonite", "lithium-carbonate", "zinc-oxide"])(
    "says what the first part of %s would do",
    (material) => {
      // Lithia and zinc are new to this glass: a line of 0 parts holds their place.
      const effect = expansionPerPart(analyseGlaze({ recipe: [...recipe, { material, parts: 0 }] })).at(-1)!;
      const step = 1e-6;
      const difference = (expansionOf([...recipe, { material, parts: step }]) - expansionOf(recipe)) / step;
      close(effect.perPart, difference, { abs: 1e-6, why: "a difference over a millionth of a part" });
      expect(effect.material).toBe(material);
    },
  );
  it("counts what the model lacks among what one part is weighed into", () => {
    const glaze = [...recipe, { name: "ceria", formula: "CeO2", parts: 10 }];
    const chemistry = analyseGlaze({ recipe: glaze });
    const glassExpansion = (lines: typeof glaze) =>
      glassProperties(analyseGlaze({ recipe: lines }).moleFractions).expansion.value;
    const effects = expansionPerPart(chemistry);
    const step = 1e-6;
    glaze.forEach((line, i) => {
      const more = glaze.with(i, { ...line, parts: line.parts + step });
      const difference = (glassExpansion(more) - glassExpansion(glaze)) / step;
      close(effects[i]!.perPart, difference, { abs: 1e-6, why: "a difference over a millionth of a part" });
    });
    // By moles: one per cent more silica, everything else, ceria too, scaled down.
    const { oxides } = expansionContributions(chemistry.moleFractions);
    const { perMolePercent } = oxides.find(({ oxide }) => oxide === "SiO2")!;
    const more = Object.fromEntries(
      Object.entries(chemistry.moleFractions).map(([oxide, x]) => [
        oxide,
        (oxide === "SiO2" ? x + 1e-6 : x) / (1 + 1e-6),
      ]),
    );
    const whole = (moles: Record<string, number>) => {
      const { reference, oxides } = expansionContributions(moles);
      return oxides.reduce((sum, { contribution }) => sum + contribution, reference);
    };
    const difference = (whole(more) - whole(chemistry.moleFractions)) / 1e-6 / 100;
    close(perMolePercent, difference, { abs: 1e-6, why: "a difference over a millionth" });
  });
  it("has nothing to say of a glaze given by its oxides", () => {
    expect(expansionPerPart(fired({ SiO2: 70, Na2O: 30 }))).toEqual([]);
  });
});

it("tells of every fitted property how well it does and where it is from", () => {
  const models = propertyModels();
  expect(models.map((model) => model.id)).toEqual(["expansion", "transition", "youngs", "viscosity", "liquidus"]);
  for (const model of models) {
    expect(Object.keys(model.accuracy).length).toBeGreaterThan(1);
    expect(model.intervals[0]!.quarter).toBe("all");
    expect(model.licence).toContain("EPAM Systems, Open Database License 1.0");
    for (const key of model.sources) expect(Object.keys(bibliography.sources)).toContain(key);
  }
});
