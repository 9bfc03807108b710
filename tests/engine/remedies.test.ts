import { describe, expect, it } from "vitest";
import { findRemedies, LEAST_CHANGE, PER_MATERIAL } from "../../api/engine/advice/index.ts";
import type { EngineError } from "../../api/engine/errors.ts";
import { checkFit } from "../../api/engine/fit/index.ts";
import { THAW_ON_RED_STONEWARE } from "../../api/schemas/larch-lane.ts";
import { SMALL } from "../support/small-misfit.ts";

describe("remedies", () => {
  const request = { ...THAW_ON_RED_STONEWARE, melt: { logViscosity: 0.5, surfaceTensionPercent: 8 }, target: 0.6 };

  it("come in at least three distinct kinds, each verified by a fit of its own", () => {
    const { remedies, before, headline } = findRemedies(request);
    const reaching = remedies.filter(({ reaches }) => reaches);
    expect(new Set(reaching.map(({ kind }) => kind)).size).toBeGreaterThanOrEqual(3);
    expect(headline).toContain("ways bring it to about 12 in 20 or better");
    for (const remedy of reaching) {
      const fit = checkFit(remedy.fit);
      expect(fit.probabilities).toEqual(remedy.after.probabilities);
      expect(fit.probabilities.sound).toBeGreaterThanOrEqual(0.6);
      expect(remedy.costs.length).toBeGreaterThan(0);
    }
    expect(before.probabilities.sound).toBeLessThan(0.6);
    const recipes = reaching.filter(({ recipe }) => recipe);
    const efforts = recipes.map(({ partsMoved, materialsMoved }) => partsMoved + PER_MATERIAL * materialsMoved);
    expect(efforts).toEqual([...efforts].sort((a, b) => a - b));
  });

  it("move few materials by amounts one weighs", () => {
    for (const { recipe, partsMoved, materialsMoved } of findRemedies(request).remedies) {
      if (!recipe) continue;
      const changes = recipe.lines.map(({ change }) => Math.abs(change)).filter((change) => change > 0);
      expect(changes.length).toBe(materialsMoved);
      expect(materialsMoved).toBeLessThanOrEqual(4);
      expect(changes.reduce((sum, change) => sum + change, 0)).toBeCloseTo(partsMoved, 1);
      for (const change of changes) expect(change).toBeGreaterThanOrEqual(LEAST_CHANGE);
    }
  });

  it("speak to a potter: no field of a request, no code, no bare name of an oxide limit", () => {
    const stuck = { ...THAW_ON_RED_STONEWARE, target: 0.95, seger: { Al2O3: { max: 0.5 } }, forbid: ["zinc-oxide"] };
    for (const asked of [request, stuck]) {
      const { headline, remedies, blocked } = findRemedies(asked);
      const texts = [
        headline,
        ...blocked.map(({ text }) => text),
        ...remedies.flatMap(({ title, text, costs, blocks }) => [title, text, ...costs, ...blocks.map((b) => b.text)]),
      ];
      for (const text of texts) {
        expect(text).not.toMatch(/[a-z][A-Z]|\w\.\w*[a-z]{3}|undefined|NaN|null|_|optimal|score|user|simply|oops/);
        expect(text).not.toMatch(/(?<!O)\d-\d/);
      }
    }
  });

  it("keep melt, parts and Seger formula within their limits, by the full model", () => {
    const { remedies } = findRemedies({
      ...request,
      parts: { silica: { max: 26 } },
      seger: { Al2O3: { max: 0.5 } },
      forbid: ["zinc-oxide"],
      keep: ["kaolin"],
    });
    const recipes = remedies.filter(({ recipe }) => recipe);
    expect(recipes.length).toBeGreaterThan(0);
    for (const { recipe, melt } of recipes) {
      const line = (name: string) => recipe!.lines.find((one) => one.name === name);
      expect(line("silica")!.after).toBeLessThanOrEqual(26.001);
      expect(line("zinc oxide")).toBeUndefined();
      expect(line("kaolin")!.change).toBe(0);
      const { before, after } = melt!.logViscosity;
      // A tenth of a part of rounding is worth about 0.01.
      expect(Math.abs(after.value - before.value)).toBeLessThanOrEqual(0.52);
    }
  });

  it("turn the other way for a glaze that shivers", () => {
    const { remedies, before } = findRemedies({
      glaze: {
        recipe: [
          { material: "petalite", parts: 60 },
          { material: "silica", parts: 20 },
          { material: "whiting", parts: 10 },
          { material: "talc", parts: 10 },
        ],
      },
      body: { class: "cristobalite-stoneware" },
      melt: { logViscosity: 0.5 },
      target: 0.6,
    });
    expect(before.probabilities.shivers).toBeGreaterThan(0.3);
    const recipes = remedies.filter(({ recipe, kind }) => recipe && kind !== "alumina-with-silica");
    expect(recipes.length).toBeGreaterThan(0);
    for (const { after } of recipes) expect(after.expansion.value).toBeGreaterThan(before.expansion.value);
  });

  it("leave alone what fits, and colours at their share", () => {
    const fits = findRemedies({ ...SMALL, target: 0.05 });
    expect(fits.remedies).toEqual([]);
    expect(fits.headline).toContain("fits as it is");
    const { remedies } = findRemedies({
      ...request,
      glaze: { ...THAW_ON_RED_STONEWARE.glaze, additions: [{ material: "cobalt-oxide", parts: 1 }] },
    });
    for (const { recipe } of remedies) {
      if (!recipe) continue;
      const batch = recipe.lines.reduce((sum, { after }) => sum + after, 0);
      expect(recipe.additions[0]!.after / batch).toBeCloseTo(0.01, 3);
    }
  });

  it("speak of coat, cooling and clay alone where there is no recipe", () => {
    const { remedies, warnings } = findRemedies({
      glaze: { expansion: { value: 7.5, rangeC: [20, 300], plusMinus: 0.2 } },
      body: { class: "buff-stoneware" },
    });
    expect(warnings.map(({ code }) => code)).toContain("recipe-unknown");
    for (const { recipe } of remedies) expect(recipe).toBeNull();
  });

  it("name what cannot be", () => {
    const wrong = { ...SMALL, allow: ["silca"], forbid: ["moonrock-x"], parts: { silica: { min: 9, max: 3 } } };
    try {
      findRemedies(wrong);
      expect.unreachable();
    } catch (error) {
      expect((error as EngineError).issues.map(({ pointer }) => pointer)).toEqual([
        "/allow/0",
        "/forbid/0",
        "/parts/silica",
      ]);
      expect((error as EngineError).issues[0]!.suggestion).toBe("silica");
    }
  });
});
