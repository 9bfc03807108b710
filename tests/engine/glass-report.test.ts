/** What the report on the models says of demands met and missed, and how fast the models answer. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { AccuracyFigures } from "../../api/engine/glass/types.ts";
import { sampleFigures } from "../../data/fitting/samples.ts";
import { targetLines } from "../../data/fitting/target-lines.ts";
import { TARGETS, type Target } from "../../data/fitting/targets.ts";
import apart from "../../data/fitting/tried-apart.json" with { type: "json" };
import expansion from "../../data/models/expansion.json" with { type: "json" };
import sets from "../../data/models/published-sets.json" with { type: "json" };
import surface from "../../data/models/surface-tension.json" with { type: "json" };
import transition from "../../data/models/transition.json" with { type: "json" };
import viscosity from "../../data/models/viscosity.json" with { type: "json" };
import youngs from "../../data/models/youngs.json" with { type: "json" };
import { close } from "../support/close.ts";

const report = readFileSync(new URL("../../data/models/REPORT.md", import.meta.url), "utf8");
const models = { expansion, transition, youngs, viscosity };

describe("the report", () => {
  it.each(TARGETS)("$property of $domain: the line on $figure follows from the stored figures", (target) => {
    const { heldOut }: { heldOut: Record<string, AccuracyFigures> } = models[target.property as keyof typeof models];
    const figures = heldOut[target.column ?? target.domain]!;
    expect(report).toContain(targetLines(target, figures, sets.sets, sets.samples).join("\n"));
  });

  it("puts a published set beside a missed demand only (worked by hand)", () => {
    const figures = { n: 100, medianAbsoluteError: 0.2, bias: 0, p90: 0.8, rmse: 0.6 };
    const scores = { "appen-1949": { glaze: { ...figures, n: 90, rmse: 0.8 } } };
    const beside = { set: "appen-1949", name: "Appen 1949", read: 0.5 };
    const target: Target = {
      property: "expansion",
      domain: "glaze",
      figure: "rmse",
      label: "RMSE",
      atMost: 0.4,
      beside,
    };
    const lines = targetLines(target, figures, scores);
    expect(lines[0]).toBe("- glaze: RMSE 0.6, wanted at most 0.4: missed.");
    expect(lines.join(" ")).toContain("reads 0.8 on these rows (90 of 100)");
    // 0.6/0.8 here, 0.4/0.5 there.
    expect(lines.join(" ")).toMatch(/RMSE is 0\.75\s+of that set's here; the demand is 0\.80 of it there/);
    expect(targetLines({ ...target, atMost: 0.6 }, figures, scores)).toEqual([
      "- glaze: RMSE 0.6, wanted at most 0.6: met.",
    ]);
  });
});

/** A section of the report, by its heading. */
const section = (heading: string) => report.split(/^## /m).find((part) => part.startsWith(heading))!;

describe("what the report shows of every fitted property", () => {
  it.each([
    ["Mean thermal expansion", ["expansion.svg"]],
    ["Glass transition", ["transition.svg"]],
    ["Young's modulus", ["youngs.svg"]],
    ["Liquidus", ["liquidus.svg"]],
    ["Viscosity", ["viscosity.svg", "viscosity-temperature.svg"]],
  ])("%s: pictures, families of oxides, coverage by quarter and the worst publications", (heading, pictures) => {
    const text = section(heading);
    for (const picture of pictures) {
      expect(text).toContain(`(${picture})`);
      const svg = readFileSync(new URL(`../../data/models/${picture}`, import.meta.url), "utf8");
      expect(svg.match(/<rect /g)!.length).toBeGreaterThan(500);
    }
    for (const family of ["boron (B2O3 ≥ 3)", "lithia (Li2O ≥ 3)", "magnesia (MgO ≥ 5)"])
      expect(text).toContain(family);
    for (const quarter of ["narrowest", "widest"]) expect(text).toContain(`| stoneware-like | ${quarter} |`);
    const named = text.match(/^- publication \d+: measured .*, error [+−]/gm)!;
    expect(named).toHaveLength(12);
    expect(new Set(named.map((line) => line.split(":")[0])).size).toBe(12);
  });

  it("says of the liquidus that it is an indication, and of the sums what their widths rest on", () => {
    expect(section("Liquidus")).toContain("An indication only");
    expect(section("Density")).toMatch(/Not fitted: the data hold no densities/);
    expect(section("Surface tension")).toMatch(/not checked by measurement/);
    for (const [model, { n }] of Object.entries(surface.sets)) {
      expect(section("Surface tension")).toContain(`| ${model} | ${n} |`);
    }
  });
});

describe("samples of publications", () => {
  it("find the model's figure where the other one reads as asked (worked by hand)", () => {
    // The model is off by half of what the set is off by, everywhere: so are their mean squares in every sample.
    const rows = Array.from({ length: 200 }, (_, i) => ({ publication: i, set: 1 + i / 200, model: 0.5 + i / 400 }));
    const { set, model, near } = sampleFigures(rows, 1.5, 0.7);
    for (const i of [0, 1, 2]) close(model[i], set[i]! / 2, { abs: 0.001 });
    close(near.model[1], 0.75, { abs: 0.01 });
    expect(near.met).toBe(0);
    expect(sampleFigures(rows, 1.5, 0.8).near.met).toBe(1);
  });

  it("hold the published set's figure on all rows, and start anew from the same seed", () => {
    for (const domain of ["glaze", "stoneware-like"] as const) {
      const { set, near } = sets.samples[domain];
      const whole = sets.sets["appen-1949"][domain].rmse;
      expect(set[0]).toBeLessThan(whole);
      expect(set[2]).toBeGreaterThan(whole);
      expect(near.draws).toBeGreaterThan(100);
    }
  });
});

it("records every way that was tried apart with its figures, and none worth other coefficients but the unreadable", () => {
  for (const { name, figures } of apart.ways)
    expect(report).toContain(`| ${name} | ${figures.glaze.medianAbsoluteError}`);
  const [ships, ...ways] = apart.ways;
  for (const domain of ["glaze", "stoneware-like"] as const) {
    // Written anew in other hands, it comes out as stored.
    close(ships!.figures[domain].rmse, expansion.heldOut[domain].rmse, { abs: 0.002, why: "a few rows on the border" });
  }
  const falls = (figures: (typeof ways)[number]["figures"]) =>
    (["glaze", "stoneware-like"] as const).map((d) => ships!.figures[d].rmse - figures[d].rmse);
  const worth = ways.filter(({ figures }) => Math.min(...falls(figures)) >= 0.01);
  expect(worth.every(({ name }) => name.endsWith("trees on the residuals"))).toBe(true);
});

it("keeps every fitted model under 200 kB", () => {
  for (const name of ["expansion", "transition", "youngs", "viscosity", "liquidus"]) {
    const text = readFileSync(new URL(`../../data/models/${name}.json`, import.meta.url), "utf8");
    expect(text.length, name).toBeLessThan(200_000);
  }
});
