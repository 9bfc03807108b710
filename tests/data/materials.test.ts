import { describe, expect, it } from "vitest";
import { materialAnalysis, parseFormula } from "../../api/engine/chemistry/index.ts";
import { CAUTIONS, listMaterials } from "../../api/engine/recipe/materials.ts";
import sources from "../../data/sources.json" with { type: "json" };

const materials = listMaterials();
const known = new Set(Object.keys(sources.sources));
const codes = new Set(CAUTIONS.map(({ code }) => code));

it("holds what a studio weighs out", () => {
  expect(materials.length).toBeGreaterThanOrEqual(60);
  const asked = [
    ...["potash-feldspar", "potash-feldspar-theoretical", "soda-feldspar", "nepheline-syenite", "silica", "kaolin"],
    ...["ball-clay", "red-clay", "whiting", "dolomite", "talc", "wollastonite", "magnesium-carbonate", "zinc-oxide"],
    ...["barium-carbonate", "strontium-carbonate", "lithium-carbonate", "spodumene", "petalite", "lepidolite"],
    ...["colemanite", "ulexite", "borax", "boric-acid", "soda-ash", "pearl-ash", "bone-ash", "alumina-hydrate"],
    ...["titania", "rutile", "zircon", "tin-oxide", "red-iron-oxide", "black-iron-oxide", "copper-oxide"],
    ...["copper-carbonate", "cobalt-oxide", "cobalt-carbonate", "manganese-dioxide", "manganese-carbonate"],
    ...["nickel-oxide", "chromium-oxide", "ilmenite", "wood-ash", "frit-soda-borosilicate", "frit-alkaline"],
    ...["frit-calcium-borosilicate", "frit-zinc-borosilicate", "frit-lead-bisilicate"],
  ];
  expect(asked.filter((id) => !materials.some((material) => material.id === id))).toEqual([]);
});

it("gives no name to two materials", () => {
  const plain = (name: string) => name.toLowerCase().replace(/[\s_-]+/g, "-");
  const names = materials.flatMap(({ id, aliases }) => [id, ...aliases.map(plain)]);
  expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([]);
});

describe.each(materials.map((material) => [material.id, material] as const))("%s", (id, material) => {
  it("has one id in kebab case, and either a formula or an analysis", () => {
    expect(id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
    expect((material.formula === undefined) !== (material.analysis === undefined)).toBe(true);
    if (material.formula) expect(Object.keys(parseFormula(material.formula)).length).toBeGreaterThan(0);
  });

  it("totals 100 within its stated doubt", () => {
    if (!material.analysis) return expect(material.totalDoubtPercent).toBeLessThanOrEqual(0.01);
    const { weightPercent, lossOnIgnitionPercent } = material.analysis;
    expect(lossOnIgnitionPercent).toBeGreaterThanOrEqual(0);
    const total = Object.values(weightPercent).reduce((a, b) => a + b, lossOnIgnitionPercent!);
    expect(Math.abs(total - 100)).toBeLessThanOrEqual(material.totalDoubtPercent);
    expect(material.totalDoubtPercent).toBeLessThanOrEqual(1.5);
  });

  it("has a spread for every oxide, no wider than can be", () => {
    const { weightPercent, plusMinusWeightPercent } = materialAnalysis(id);
    for (const [oxide, percent] of Object.entries(weightPercent)) {
      expect(plusMinusWeightPercent[oxide], oxide).toBeGreaterThan(0);
      expect(plusMinusWeightPercent[oxide], oxide).toBeLessThanOrEqual(Math.max(percent * 2, 25));
    }
    if (material.analysis) {
      expect(Object.keys(material.plusMinusWeightPercent)).toEqual(Object.keys(material.analysis.weightPercent));
    }
  });

  it("says where it comes from", () => {
    expect(material.sources.length).toBeGreaterThan(0);
    expect(material.sources.filter((key) => !known.has(key))).toEqual([]);
    expect(["read", "part read", "from memory", "derived"]).toContain(material.provenance);
    expect(["good", "fair", "low"]).toContain(material.confidence);
  });

  it("carries only cautions that have words", () => {
    for (const { code, message } of material.cautions) {
      expect(codes.has(code)).toBe(true);
      expect(message.length).toBeGreaterThan(20);
    }
  });

  it("has a density of stone, or none", () => {
    const { densityGPerCm3 } = material;
    if (densityGPerCm3 !== null) expect(densityGPerCm3 > 1.4 && densityGPerCm3 < 10).toBe(true);
  });
});

it("cautions those materials that call for one", () => {
  const has = (id: string, code: string) => materials.find((m) => m.id === id)!.cautions.some((c) => c.code === code);
  const pairs = "silica:silica-dust kaolin:silica-dust lithium-carbonate:lithium barium-carbonate:barium borax:boron \
    frit-lead-bisilicate:lead antimony-oxide:antimony chromium-oxide:chromium manganese-dioxide:manganese \
    nickel-oxide:nickel cobalt-carbonate:cobalt vanadium-pentoxide:vanadium copper-carbonate:copper talc:talc-dust \
    lepidolite:fluoride-fumes gypsum:sulfur-fumes wood-ash:caustic".split(/\s+/);
  expect(pairs.filter((pair) => !has(...(pair.split(":") as [string, string])))).toEqual([]);
});

it("every entry of the bibliography says what was taken and how it was read", () => {
  for (const [key, entry] of Object.entries(sources.sources) as [string, { citation: string; status: string }][]) {
    expect(entry.citation.length, key).toBeGreaterThan(10);
    expect(entry.status, key).toMatch(/read|memory|derived/);
  }
});
