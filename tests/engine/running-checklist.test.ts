/** The checklist of crawling, beading and pinholing: what puts a line on it, how likely it is, what it says; cautions. */
import { describe, expect, it } from "vitest";
import { analyseGlaze } from "../../api/engine/chemistry/index.ts";
import type { Recipe } from "../../api/engine/recipe/types.ts";
import { checklist, most, type Situation, word } from "../../api/engine/running/checklist.ts";
import { estimateRunning, type RunningRequest } from "../../api/engine/running/index.ts";
import { recipeSigns } from "../../api/engine/running/recipe-signs.ts";
import { THAW } from "../../api/schemas/larch-lane.ts";
import { close } from "../support/close.ts";

const signs = { clayPercent: 12, fluffyPercent: 0, lossPercent: 5, carbonatePercent: 4 };
const unknownRecipe = { clayPercent: null, fluffyPercent: null, lossPercent: null, carbonatePercent: null };
/** A glaze that gives no cause for worry. */
const sound: Situation = {
  signs: [signs],
  thicknessMm: 0.3,
  coats: 1,
  logViscosity: 3,
  meltMinutes: 60,
  soakMinutes: 20,
  tension: 300,
  tensionKnown: true,
  tensionSource: "kucuk-1999",
  overFired: false,
  bisque: true,
};
const line = (id: string, changes: Partial<Situation> = {}) =>
  checklist({ ...sound, ...changes }).find((one) => one.id === id);
const ids = (changes: Partial<Situation>, fault: string) =>
  checklist({ ...sound, ...changes })
    .filter((one) => one.fault === fault)
    .map(({ id }) => id);

describe("the lines of the checklist", () => {
  it("counts both limits upwards", () => {
    expect([19.9, 20, 29.9, 30].map((figure) => word(figure, 20, 40))).toEqual([
      "unlikely",
      "possible",
      "possible",
      "possible",
    ]);
    expect(word(40, 20, 40)).toBe("likely");
  });

  // Limits: common practice, no source. The first figure of each pair is just short of the limit, the second on it.
  it.each<[string, string, (figure: number) => Partial<Situation>, [number, number], [number, number]]>([
    ["clay [%]", "clay-shrinks", (clayPercent) => ({ signs: [{ ...signs, clayPercent }] }), [19.9, 20], [29.9, 30]],
    [
      "powders [%]",
      "fluffy-powders",
      (fluffyPercent) => ({ signs: [{ ...signs, fluffyPercent }] }),
      [2.9, 3],
      [7.9, 8],
    ],
    ["coat [mm]", "thick-coat", (thicknessMm) => ({ thicknessMm }), [0.59, 0.6], [0.99, 1]],
    ["coat [mm]", "thick-for-bubbles", (thicknessMm) => ({ thicknessMm }), [0.59, 0.6], [0.99, 1]],
    ["tension [mN/m]", "surface-tension", (tension) => ({ tension }), [349, 350], [389, 390]],
    ["log viscosity", "stiff-at-peak", (logViscosity) => ({ logViscosity }), [4.19, 4.2], [4.99, 5]],
    ["log viscosity", "stiff-melt-keeps-holes", (logViscosity) => ({ logViscosity }), [3.79, 3.8], [4.49, 4.5]],
    ["loss [%]", "gas-from-the-glaze", (lossPercent) => ({ signs: [{ ...signs, lossPercent }] }), [7.9, 8], [14.9, 15]],
    ["minutes of melt", "short-melt", (meltMinutes) => ({ meltMinutes }), [46, 45], [16, 15]],
  ])("weighs %s for %s", (_, id, change, possible, likely) => {
    const words = [...possible, ...likely].map((figure) => line(id, change(figure))?.likelihood);
    expect(words).toEqual(["unlikely", "possible", "possible", "likely"]);
  });

  it("has these for a glaze on bisque, and two more over a fired glaze", () => {
    const crawling = ["clay-shrinks", "thick-coat", "dust-and-grease"];
    const pinholing = [
      "gas-from-the-glaze",
      "gas-from-the-clay",
      "thick-for-bubbles",
      "stiff-melt-keeps-holes",
      "short-melt",
    ];
    expect(ids({}, "crawling").sort()).toEqual([...crawling].sort());
    expect(ids({}, "beading").sort()).toEqual(["stiff-at-peak", "surface-tension"]);
    expect(ids({}, "pinholing").sort()).toEqual([...pinholing].sort());
    expect(ids({ overFired: true }, "crawling").sort()).toEqual([...crawling, "over-fired-glaze"].sort());
    expect(ids({ overFired: true }, "pinholing").sort()).toEqual([...pinholing, "gas-at-refiring"].sort());
    expect(line("over-fired-glaze", { overFired: true })?.likelihood).toBe("likely");
    expect(line("gas-at-refiring", { overFired: true })?.likelihood).toBe("possible");
  });

  it("says nothing of clay, powders and gas where no recipe is known", () => {
    const all = checklist({ ...sound, signs: [unknownRecipe] }).map(({ id }) => id);
    for (const id of ["clay-shrinks", "fluffy-powders", "gas-from-the-glaze"]) expect(all).not.toContain(id);
    expect(all).toContain("gas-from-the-clay");
  });

  it("takes the worst of the coats, those without a recipe left out", () => {
    expect(most([], ({ clayPercent }) => clayPercent)).toBeNull();
    expect(most([unknownRecipe], ({ clayPercent }) => clayPercent)).toBeNull();
    const coats = [signs, { ...signs, clayPercent: 35 }, unknownRecipe];
    expect(most(coats, ({ clayPercent }) => clayPercent)).toBe(35);
    expect(line("clay-shrinks", { signs: coats })).toMatchObject({ likelihood: "likely" });
    expect(line("clay-shrinks", { signs: coats })?.cause).toMatch(/^35 %/);
  });

  it("names light powders from a per cent on", () => {
    expect(line("fluffy-powders", { signs: [{ ...signs, fluffyPercent: 0.9 }] })).toBeUndefined();
    expect(line("fluffy-powders", { signs: [{ ...signs, fluffyPercent: 1 }] })?.likelihood).toBe("unlikely");
  });

  it("names carbonates as the gas from a per cent on", () => {
    const cause = (carbonatePercent: number | null) =>
      line("gas-from-the-glaze", { signs: [{ ...signs, lossPercent: 9.26, carbonatePercent }] })?.cause;
    expect(cause(0.9)).toContain("loses 9.3 % of its weight as gas;");
    expect(cause(null)).toContain("loses 9.3 % of its weight as gas;");
    expect(cause(1)).toContain("as gas, 1.0 % from carbonates and the like;");
  });

  it("tells how thick, in how many coats", () => {
    expect(line("thick-coat")?.cause).toContain("The coat is 0.30\u00a0mm fired;");
    expect(line("thick-coat", { coats: 2 })?.cause).toContain("The coat is 0.30\u00a0mm fired, in 2 coats;");
  });

  it("says whose figure the surface tension is, and when it is only the middle of glazes", () => {
    expect(line("surface-tension")).toMatchObject({ source: "kucuk-1999" });
    expect(line("surface-tension")?.cause).toContain("is about 300 mN/m (glazes run from 250 to 400)");
    const unknown = { tension: 325, tensionKnown: false, tensionSource: "from-memory-handbooks" };
    expect(line("surface-tension", unknown)?.cause).toContain("could not be summed; 325 mN/m is the middle");
    expect(line("surface-tension", unknown)?.source).toBe("from-memory-handbooks");
  });

  it("minds clay that is fired for the first time under the glaze", () => {
    expect(line("gas-from-the-clay")).toMatchObject({ likelihood: "possible" });
    expect(line("gas-from-the-clay")?.cause).toContain("where its bisque was short");
    expect(line("gas-from-the-clay", { bisque: false })).toMatchObject({ likelihood: "likely" });
    expect(line("gas-from-the-clay", { bisque: false })?.cause).toContain("fired together with the glaze");
  });

  it("tells minutes of melt and of soak", () => {
    expect(line("short-melt")?.cause).toContain("for 60 minutes, 20 of soak among them.");
    expect(line("short-melt", { soakMinutes: 0 })?.cause).toContain("for 60 minutes, with no soak.");
  });

  it("puts the likeliest first, whatever its kind", () => {
    const short = checklist({ ...sound, thicknessMm: 0.7, meltMinutes: 5 }).map(({ likelihood }) => likelihood);
    expect(short[0]).toBe("likely");
    expect(short.lastIndexOf("likely")).toBeLessThan(short.indexOf("possible"));
    expect(short.lastIndexOf("possible")).toBeLessThan(short.indexOf("unlikely"));
  });
});

describe("signs in a recipe", () => {
  const of = (recipe: Recipe["recipe"], additions: Recipe["recipe"] = []) =>
    recipeSigns({ chemistry: analyseGlaze({ recipe, additions }) });

  it("counts clays and light powders by share of the dry batch, additions included", () => {
    // 20 + 5 of 125 parts are clay, 5 + 10 of them light powders: 20 % and 12 % (arithmetic).
    const read = of(
      [
        { material: "kaolin", parts: 20 },
        { material: "ball-clay", parts: 5 },
        { material: "potash-feldspar", parts: 80 },
        { material: "magnesium-carbonate", parts: 5 },
      ],
      [
        { material: "zinc-oxide", parts: 10 },
        { material: "rutile", parts: 5 },
      ],
    );
    close(read.clayPercent, 20);
    close(read.fluffyPercent, 12);
  });

  it("does not count calcined clay, which has shrunk already", () => {
    const read = of([
      { material: "kaolin", parts: 10 },
      { material: "calcined-kaolin", parts: 30 },
      { material: "potash-feldspar", parts: 40 },
      { material: "whiting", parts: 20 },
    ]);
    close(read.clayPercent, 10);
  });

  it("counts gas of lines that lose more than a quarter as that of carbonates", () => {
    // Own analyses: 40 % lost of half the batch, and 10 % and 24 % of a quarter each.
    // 0.5·40 = 20 from carbonates; with 0.25·10 + 0.25·24 = 8.5 of the others 28.5 in all (arithmetic).
    const own = (name: string, parts: number, lossOnIgnitionPercent: number, silica: number) => ({
      name,
      parts,
      analysis: { weightPercent: { SiO2: silica, CaO: 100 - silica - lossOnIgnitionPercent }, lossOnIgnitionPercent },
    });
    const read = of([own("a chalky clay", 50, 40, 10), own("a stone", 25, 10, 60), own("a marl", 25, 24, 46)]);
    close(read.carbonatePercent, 20);
    close(read.lossPercent, 28.5);
    // A name of one's own is no built-in clay.
    expect(read).toMatchObject({ clayPercent: 0, fluffyPercent: 0 });
  });

  it("are unknown for a glaze known by its oxides", () => {
    const chemistry = analyseGlaze({ oxides: { basis: "weightPercent", amounts: { SiO2: 70, Na2O: 15, CaO: 15 } } });
    expect(recipeSigns({ chemistry })).toEqual(unknownRecipe);
  });
});

describe("cautions", () => {
  const firing = { peakC: 1240, heatingCPerHour: 80, holdMinutes: 20, coolingCPerHour: 150 };
  const codes = (request: Omit<RunningRequest, "firing">) =>
    estimateRunning({ firing, ...request }).cautions.map(({ code }) => code);
  const leaded = {
    oxides: { basis: "weightPercent" as const, amounts: { SiO2: 45, Al2O3: 6, PbO: 45, CaO: 4 } },
    thicknessMm: 0.1,
  };
  const ofLead = analyseGlaze(leaded).cautions.map(({ code }) => code);

  it("come each once, those of the chemistry first, of coats put on later too", () => {
    expect(ofLead).toContain("lead");
    const twice = codes({ coats: [{ glaze: leaded }, { glaze: leaded }] });
    expect(twice.slice(0, ofLead.length)).toEqual(ofLead);
    expect(new Set(twice).size).toBe(twice.length);
    expect(codes({ glaze: THAW })).not.toContain("lead");
    expect(codes({ glaze: THAW, refiring: { coats: [{ glaze: leaded }] } })).toContain("lead");
  });

  it("tell of sharp drips where glaze may reach the shelf, of fumes where decals are fired, and of neither otherwise", () => {
    const thick = { ...THAW, thicknessMm: 0.9 };
    expect(codes({ glaze: thick })).toContain("sharp-drips");
    expect(codes({ glaze: THAW, laterHeat: [{ kind: "decal", peakC: 780 }] })).toContain("kiln-fumes");
    const calm = codes({ glaze: { ...THAW, thicknessMm: 0.2 } });
    expect(calm).not.toContain("sharp-drips");
    expect(calm).not.toContain("kiln-fumes");
  });
});
