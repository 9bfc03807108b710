/** Published sets asked about whole glasses, and the models beside each other: gaps, limits, intervals, notes. */
import { describe, expect, it } from "vitest";
import {
  askSet,
  estimateExpansion,
  expansionContributions,
  expansionDoubt,
  expansionModels,
  glassProperties,
  PUBLISHED_SETS,
  propertyModels,
  WITHOUT_PAPERS,
} from "../../api/engine/glass/index.ts";
import { MODEL_OXIDES } from "../../api/engine/glass/oxides.ts";
import { quantileOf } from "../../api/engine/quantity.ts";
import fitted from "../../data/models/expansion.json" with { type: "json" };
import liquidus from "../../data/models/liquidus.json" with { type: "json" };
import scores from "../../data/models/published-sets.json" with { type: "json" };
import { close } from "../support/close.ts";

type Shares = Record<string, number>;
const set = (id: string) => PUBLISHED_SETS.find((candidate) => candidate.id === id)!;
const turner = set("english-turner-1927");

/** A glaze inside the range of everything, by mole and by weight; the two need not be one glass here. */
const MOLES = { SiO2: 0.65, Al2O3: 0.08, Na2O: 0.05, K2O: 0.05, CaO: 0.12, MgO: 0.05 };
const WEIGHT = { SiO2: 60.2, Al2O3: 12.6, Na2O: 4.8, K2O: 7.3, CaO: 10.4, MgO: 4.7 };

describe("a set asked about a glass", () => {
  it("leaves out what it lacks and scales the rest to 100 (by hand: (85 × 0.05 + 5 × 4.32)/90 for each per cent)", () => {
    const { value, missing } = askSet(turner, { SiO2: 85, Na2O: 5, Li2O: 4, TiO2: 6, CoO: 0 });
    close(value, ((85 * 0.05 + 5 * 4.32) / 90) * 10, { abs: 1e-12 });
    expect(missing).toEqual([
      { oxide: "Li2O", percent: 4 },
      { oxide: "TiO2", percent: 6 },
    ]);
  });
  it("answers with a tenth of the glass missing and not with more, whatever the parts add up to", () => {
    expect(askSet(turner, { SiO2: 90, Li2O: 10 }).value).not.toBeNull();
    expect(askSet(turner, { SiO2: 180, Li2O: 20 }).value).not.toBeNull();
    expect(askSet(turner, { SiO2: 89, Li2O: 11 }).value).toBeNull();
    expect(askSet(turner, { SiO2: 44.5, Li2O: 5.5 }).value).toBeNull();
    close(askSet(turner, { SiO2: 160, Na2O: 40 }).value, (80 * 0.05 + 20 * 4.32) / 10, { abs: 1e-12 });
  });
  it("has no answer for nothing", () => {
    expect(askSet(turner, {}).value).toBeNull();
    expect(askSet(turner, { Li2O: 100 }).value).toBeNull();
  });
  // Limits: data/factor-sets/validity.json.
  it.each<{ id: string; percent: Shares; outside: string[] }>([
    { id: "appen-1949", percent: { SiO2: 45, B2O3: 30, Na2O: 25 }, outside: [] },
    { id: "appen-1949", percent: { SiO2: 44, B2O3: 31, Na2O: 25 }, outside: ["SiO2", "B2O3"] },
    { id: "english-turner-1927", percent: { SiO2: 88, B2O3: 12 }, outside: [] },
    // What is not there lies below a least share too.
    { id: "hall-1930", percent: { SiO2: 82, CaO: 18 }, outside: ["Al2O3", "Na2O"] },
    { id: "mayer-havas-1911", percent: { SiO2: 5, B2O3: 95 }, outside: [] },
  ])("$id of $percent is outside for $outside", ({ id, percent, outside }) => {
    const answer = askSet(set(id), percent);
    expect(answer.outside.map((row) => row.oxide)).toEqual(outside);
  });
  it("says the limits with the share", () => {
    expect(askSet(set("hall-1930"), { SiO2: 83, Al2O3: 2, Na2O: 15 }).outside).toEqual([
      { oxide: "SiO2", percent: 83, limits: [25, 82] },
    ]);
  });
});

describe("models side by side", () => {
  const of = (id: string, moles: Shares, weight: Shares) =>
    estimateExpansion(moles, weight).all.find((model) => model.model === id)!;

  it("the measured glasses first: value and 5–95 % of the doubt, rounded to 0.01", () => {
    const { expansion } = glassProperties(MOLES);
    const { best } = estimateExpansion(MOLES, WEIGHT);
    expect(best).toMatchObject({ model: "measured-glasses", kind: "measured-glass", basis: "mole", rangeC: [20, 300] });
    expect(best.expansion).toMatchObject({ unit: "1e-6/K", coverage: 0.9, rangeC: [20, 300] });
    close(best.expansion!.value, expansion.value, { abs: 0.005 });
    close(best.expansion!.low, quantileOf(expansion, 0.05), { abs: 0.005 });
    close(best.expansion!.high, quantileOf(expansion, 0.95), { abs: 0.005 });
    expect(best.sources).toEqual(["sciglass-2019"]);
    expect(best.note).toContain(`Fitted to ${fitted.training.rows} measured glasses`);
  });
  it("the measured glasses say what they lack and what lies outside them", () => {
    // Expansion model: alumina from 0.52, lithia to 24.14 mol % (data/models/expansion.json).
    const { best } = estimateExpansion({ SiO2: 0.7, Li2O: 0.27, V2O5: 0.03, CeO2: 0 }, { SiO2: 100 });
    expect(best.missingOxides).toEqual(["V2O5"]);
    expect(best.outside).toEqual(["Al2O3", "Li2O"]);
    expect(best.note).toBe("Outside the measured glasses in part: the interval is widened.");
    const ends = { SiO2: 0.8371, Al2O3: 0.0052, CaO: 0.1577 };
    expect(estimateExpansion(ends, { SiO2: 100 }).best.outside).toEqual([]);
  });
  it.each(PUBLISHED_SETS.map(({ id, basis }) => [id, basis] as const))("%s reads its shares by %s", (id, basis) => {
    const lime = { SiO2: 40, CaO: 60 };
    const soda = { SiO2: 0.8, Na2O: 0.2 };
    const model = of(id, soda, lime);
    const own = askSet(set(id), basis === "mole" ? { SiO2: 80, Na2O: 20 } : lime).value!;
    close(model.expansion!.value, own, { abs: 0.005 });
    // Ninety in a hundred measured glazes lie within this of the set's sum.
    const { p90 } = (scores.sets as Record<string, { glaze: { p90: number } }>)[id]!.glaze;
    close(model.expansion!.high, own + p90, { abs: 0.005 });
    close(model.expansion!.low, own - p90, { abs: 0.005 });
    expect(model).toMatchObject({ kind: "published-set", basis, rangeC: set(id).rangeC, sources: [id] });
    expect(model.expansion!.rangeC).toEqual(set(id).rangeC ?? undefined);
  });
  it("a set says in words what it lacks and where it is outside, each in its own unit", () => {
    const appen = of("appen-1949", { SiO2: 0.4, B2O3: 0.31, Na2O: 0.25, V2O5: 0.03, WO3: 0.01 }, {});
    expect(appen.missingOxides).toEqual(["V2O5", "WO3"]);
    expect(appen.outside).toEqual(["SiO2", "B2O3"]);
    expect(appen.note).toBe(
      `${set("appen-1949").note} It has no figure for V2O5 (3.0 mol %), WO3 (1.0 mol %): left out, the rest scaled up. SiO2 at 40.0 mol % is outside its 45–100 mol %. B2O3 at 31.0 mol % is outside its 0–30 mol %.`,
    );
    const gap = of("english-turner-1927", {}, { SiO2: 80, Li2O: 20 });
    expect(gap.expansion).toBeNull();
    expect(gap.note).toContain("no figure for Li2O (20.0 wt %): too much to give a figure.");
  });
  it("a set that covers the glass adds nothing to its note", () => {
    expect(of("english-turner-1927", MOLES, WEIGHT).note).toBe(turner.note);
  });
});

describe("what the models are", () => {
  it("the measured glasses: range, limits and scores of the fit", () => {
    const [model] = expansionModels();
    expect(model).toMatchObject({ id: "measured-glasses", kind: "measured-glass", basis: "mole", rangeC: [20, 300] });
    expect(model).toMatchObject({ validity: fitted.training.rangesMolePercent, accuracy: fitted.heldOut });
    expect(model!.oxides).toEqual([...MODEL_OXIDES]);
    expect(model!.sources).toEqual(["sciglass-2019"]);
    expect(model!.provenance).toContain(`${fitted.training.rows} glasses from ${fitted.training.publications}`);
  });
  it.each(PUBLISHED_SETS.map((one) => [one.id, one] as const))(
    "%s: its own basis, oxides, limits, scores",
    (id, one) => {
      const model = expansionModels().find((candidate) => candidate.id === id)!;
      expect(model).toMatchObject({ kind: "published-set", basis: one.basis, rangeC: one.rangeC, sources: [id] });
      expect(model.oxides).toEqual([...one.oxides]);
      expect(model.accuracy).toEqual((scores.sets as Record<string, unknown>)[id]);
      expect(model.provenance).toContain(one.note);
    },
  );
  it("limits as in the table, none where none are known", () => {
    const validity = Object.fromEntries(expansionModels().map((model) => [model.id, model.validity]));
    expect(validity["english-turner-1927"]).toEqual({ B2O3: [0, 12] });
    expect(validity["gilard-dubrul-1937"]).toEqual({});
  });
  it("each fitted property with its own file's words and scores", () => {
    const [expansion] = propertyModels();
    const last = propertyModels().at(-1)!;
    for (const [model, file] of [[expansion!, fitted] as const, [last, liquidus] as const]) {
      expect(model).toMatchObject({ title: file.title, property: file.property, unit: file.unit, method: file.method });
      expect(model).toMatchObject({ rows: file.training.rows, publications: file.training.publications });
      expect(model.accuracy).toEqual(file.heldOut);
      expect(model.intervals).toEqual(file.intervals);
    }
  });
});

describe("parts of the doubt about an expansion", () => {
  // 90 % of papers differ by up to p90 of the pairs, either of them by 1/√2 of it; the model misses by p90 of the held out.
  const share = fitted.betweenPapers.all.p90 / Math.SQRT2 / fitted.heldOut.glaze.p90;

  it("papers have the same share of every doubt, the model the rest in squares", () => {
    const { expansion } = glassProperties(MOLES);
    const whole = (quantileOf(expansion, 0.95) - quantileOf(expansion, 0.05)) / 2;
    const [papers, model] = expansionDoubt(MOLES);
    close(papers!.halfWidth, whole * share, { rel: 1e-12 });
    close(model!.halfWidth, whole * Math.sqrt(1 - share ** 2), { rel: 1e-12 });
    expect(papers!.text).toContain(`±${(whole * share).toFixed(2)}e-6/K`);
    expect(model!.text).toContain(`±${model!.halfWidth.toFixed(2)}e-6/K`);
    expect([papers!.source, model!.source]).toEqual(["sciglass-2019", "sciglass-2019"]);
  });
  it("without the papers, √(1 − share²) of it is left", () => {
    close(WITHOUT_PAPERS, Math.sqrt(1 - share ** 2), { rel: 1e-12 });
  });
});

describe("parts of an expansion", () => {
  it("are told of the oxides present, beside what silica alone would give", () => {
    const { referenceOxide, reference, oxides } = expansionContributions(MOLES);
    expect(referenceOxide).toBe("SiO2");
    close(reference, glassProperties({ SiO2: 1 }).expansion.value, { abs: 1e-12 });
    expect(oxides.map((part) => part.oxide).sort()).toEqual(Object.keys(MOLES).sort());
  });
});

describe("an oxide unknown to the measured glasses", () => {
  it("widens every property by 1 + 10 × its share and moves none", () => {
    const plain = glassProperties({ SiO2: 0.7, Al2O3: 0.1, Na2O: 0.2 });
    const odd = glassProperties({ SiO2: 0.665, Al2O3: 0.095, Na2O: 0.19, V2O5: 0.05 });
    for (const property of ["expansion", "transitionC", "youngsGPa"] as const) {
      close(odd[property].value, plain[property].value, { rel: 1e-12 });
      close(odd[property].scale, 1.5 * plain[property].scale, { rel: 1e-12 });
    }
    expect(plain.sources).toEqual(["sciglass-2019"]);
  });
});
