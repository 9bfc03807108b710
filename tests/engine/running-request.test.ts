/** A question about running, read: coats, wall, firings and later heats; what is assumed, what is refused and why. */
import { describe, expect, it } from "vitest";
import { analyseGlaze } from "../../api/engine/chemistry/index.ts";
import { viscosityCurve } from "../../api/engine/glass/index.ts";
import { mixture, moleFractionsOf, type ReadCoat, withMore } from "../../api/engine/running/coats.ts";
import {
  CONES,
  type Coat,
  coneEnd,
  type RunningFiring,
  type RunningRequest,
  readTimeline,
} from "../../api/engine/running/index.ts";
import { readRunning, recipeSdOf, tensionOf, togetherMm } from "../../api/engine/running/read-request.ts";
import { THAW } from "../../api/schemas/larch-lane.ts";
import { CLOUDBURST } from "../../api/schemas/larch-lane-running.ts";
import { close } from "../support/close.ts";
import { issuesOf } from "../support/refusals.ts";

const firing = { peakC: 1240, heatingCPerHour: 80, coolingCPerHour: 150 };
const wall = { glazedMm: 100, clearanceMm: 3 };
const thaw: RunningRequest = { glaze: THAW, firing, wall };
const bare = { recipe: THAW.recipe };
const refusals = (request: unknown) => issuesOf(() => readRunning(request as RunningRequest));
const coatOf = (coat: Coat) => readRunning({ coats: [coat], firing, wall }).coats[0]!;

describe("a coat", () => {
  // Fired thickness of one coat by how it is put on: common practice, no source (data/firing/running.json).
  it.each([
    ["dip", undefined, 0.2, 0.45, "0.33 mm fired, 0.2 to 0.45, for one coat put on by dipping"],
    ["pour", 1, 0.2, 0.45, "0.33 mm fired, 0.2 to 0.45, for one coat put on by pouring"],
    ["spray", 4, 0.2, 0.6, "0.4 mm fired, 0.2 to 0.6, for 4 coats put on by spraying"],
    ["brush", 2, 0.14, 0.3, "0.22 mm fired, 0.14 to 0.3, for 2 coats put on by brushing"],
  ] as const)("by %s, %s times over", (application, coats, low, high, words) => {
    const read = coatOf({ glaze: bare, application, ...(coats === undefined ? {} : { coats }) });
    close(read.thicknessMm, (low + high) / 2);
    close(read.plusMinusMm, (high - low) / 2);
    const said = read.warnings.find(({ code }) => code === "thickness-from-application");
    expect(said?.message).toContain(`I took ${words}`);
    expect(said?.pointer).toBe("/coats/0/application");
    expect(read.warnings.map(({ code }) => code)).not.toContain("thickness-assumed");
  });

  it("of which nothing is said is 0.3 mm each time over, give or take a quarter", () => {
    const once = coatOf({ glaze: bare });
    close(once.thicknessMm, 0.3);
    close(once.plusMinusMm, 0.075);
    const thrice = coatOf({ glaze: bare, coats: 3 });
    close(thrice.thicknessMm, 0.9);
    close(thrice.plusMinusMm, 0.225);
    const said = thrice.warnings.find(({ code }) => code === "thickness-assumed");
    expect(said).toMatchObject({ pointer: "/coats/0/glaze/thicknessMm" });
    expect(said?.message).toContain("I have taken 0.9 mm");
  });

  it("of a stated thickness is that, give or take a quarter, without a word", () => {
    const read = coatOf({ glaze: { ...bare, thicknessMm: 0.4 } });
    expect(read).toMatchObject({ thicknessMm: 0.4, plusMinusMm: 0.1, warnings: [] });
  });

  it.each<[unknown, string, string]>([
    [{ glaze: THAW, application: "dip" }, "/coats/0/application", "not both"],
    [{ glaze: THAW, coats: 2 }, "/coats/0/coats", "not both"],
    [{ glaze: bare, coats: 0 }, "/coats/0/coats", "between 1 and 20 coats"],
    [{ glaze: bare, coats: 21, application: "dip" }, "/coats/0/coats", "between 1 and 20 coats"],
    [{ glaze: { ...bare, thicknessMm: 0.009 } }, "/coats/0/glaze/thicknessMm", "between 0.01 and 5 mm"],
    [{ glaze: { ...bare, thicknessMm: 5.1 } }, "/coats/0/glaze/thicknessMm", "between 0.01 and 5 mm"],
    [{ glaze: bare, application: "toString" }, "/coats/0/application", "no way of glazing called toString"],
    [{ glaze: { recipe: [] } }, "/coats/0/glaze/recipe", ""],
  ])("refuses %j", (coat, pointer, words) => {
    const issues = refusals({ coats: [coat], firing, wall });
    expect(issues.map((issue) => issue.pointer)).toEqual([pointer]);
    expect(issues[0]?.message).toContain(words);
  });

  it("names the ways of glazing that there are", () => {
    const [issue] = refusals({ coats: [{ glaze: bare, application: "dunk" }], firing, wall });
    expect(issue?.allowed).toEqual(["dip", "pour", "spray", "brush"]);
  });

  it.each([
    { glaze: { ...bare, thicknessMm: 0.01 } },
    { glaze: { ...bare, thicknessMm: 5 } },
    { glaze: bare, coats: 20 },
  ])("takes its limits: %j", (coat) => {
    expect(refusals({ coats: [coat], firing, wall })).toEqual([]);
  });

  it("passes on what its chemistry and its melt warn of, each at its place in the question", () => {
    const glaze = { recipe: [{ material: "frit-soda-borosilicate", parts: 1 }], thicknessMm: 0.2 };
    const { warnings } = readRunning({ glaze, firing, wall });
    expect(warnings.find(({ code }) => code === "single-material")?.pointer).toBe("/glaze/recipe");
    const amounts = { SiO2: 55, Al2O3: 5, Na2O: 20, CeO2: 20 };
    const strange = readRunning({ glaze: { oxides: { basis: "weightPercent", amounts } }, firing, wall }).warnings;
    // The thickness comes after what the glaze itself brings.
    expect(strange.map(({ code }) => code)).toEqual(["oxide-not-in-model", "thickness-assumed"]);
    expect(strange[0]?.pointer).toBe("/glaze");
  });

  it("is no melt at all where its viscosity would be any figure", () => {
    const amounts = { CoO: 100 };
    const issues = refusals({ glaze: { oxides: { basis: "weightPercent", amounts }, thicknessMm: 0.3 }, firing });
    expect(issues.map(({ pointer }) => pointer)).toEqual(["/glaze"]);
    expect(issues[0]?.message).toContain("no melt like it");
  });
});

it("a melt as stiff as hard porcelain glaze is known all the same", () => {
  const amounts = { SiO2: 75, Al2O3: 14, K2O: 5, CaO: 6 };
  const { curve } = coatOf({ glaze: { oxides: { basis: "weightPercent", amounts }, thicknessMm: 0.3 } });
  expect(curve.logViscosity(1200).value).toBeGreaterThan(5);
});

describe("a stack of coats", () => {
  const six = Array.from({ length: 6 }, () => ({ glaze: { ...bare, thicknessMm: 0.1 } }));

  it("is asked from the outside in and read from the clay outwards", () => {
    const coats = [0.1, 0.2, 0.3].map((thicknessMm) => ({ glaze: { ...bare, thicknessMm } }));
    const read = readRunning({ coats, firing, wall, refiring: { coats } });
    expect(read.coats.map(({ thicknessMm }) => thicknessMm)).toEqual([0.3, 0.2, 0.1]);
    expect(read.refiring.coats.map(({ thicknessMm }) => thicknessMm)).toEqual([0.3, 0.2, 0.1]);
  });

  it("has six glazes at most", () => {
    expect(refusals({ coats: six, firing, wall, refiring: { coats: six } })).toEqual([]);
    const seven = [...six, six[0]];
    const issues = refusals({ coats: seven, firing, wall, refiring: { coats: seven } });
    expect(issues).toEqual([
      expect.objectContaining({ pointer: "/coats", allowed: [1, 6] }),
      expect.objectContaining({ pointer: "/refiring/coats", allowed: [0, 6] }),
    ]);
    expect(issues[0]?.message).toContain("1 to 6 glazes, the outer one first; I read 7");
  });

  it("is refused once for its length, whatever the rest of it is", () => {
    const wrong = { glaze: { ...bare, thicknessMm: 9 } };
    expect(refusals({ coats: [...six, wrong], firing, wall }).map(({ pointer }) => pointer)).toEqual(["/coats"]);
  });

  it("has one glaze at least, but for what is put on before a refiring", () => {
    expect(refusals({ coats: [], firing, wall })[0]).toMatchObject({ pointer: "/coats", allowed: [1, 6] });
    expect(refusals({ ...thaw, refiring: { coats: [] } })).toEqual([]);
  });

  it("points to the coat that cannot be", () => {
    const wrong = { ...bare, thicknessMm: 9 };
    const request = { coats: [{ glaze: THAW }, { glaze: wrong }], firing, refiring: { coats: [{ glaze: wrong }] } };
    const pointers = refusals(request).map(({ pointer }) => pointer);
    expect(pointers).toEqual(["/coats/1/glaze/thicknessMm", "/refiring/coats/0/glaze/thicknessMm"]);
  });

  it("is as doubtful as independent thicknesses together: 3, 4 and 5", () => {
    const coats = [
      { thicknessMm: 0.3, plusMinusMm: 0.03 },
      { thicknessMm: 0.4, plusMinusMm: 0.04 },
    ] as ReadCoat[];
    const { thicknessMm, plusMinusMm } = togetherMm(coats);
    close(thicknessMm, 0.7);
    close(plusMinusMm, 0.05);
  });

  it("mixes by mass: thickness times density", () => {
    const coat = (thicknessMm: number, densityKgPerM3: number, weightPercent: Record<string, number>) =>
      ({ thicknessMm, densityKgPerM3, chemistry: { fired: { weightPercent } } }) as unknown as ReadCoat;
    // 0.2 · 3000 = 600 and 0.4 · 2000 = 800 of 1400: 3/7 and 4/7.
    const { weightPercent, moleFractions } = mixture([
      coat(0.2, 3000, { SiO2: 30, PbO: 70 }),
      coat(0.4, 2000, { SiO2: 65, CaO: 35 }),
    ]);
    close(weightPercent.SiO2, (3 * 30 + 4 * 65) / 7);
    close(weightPercent.PbO, 30);
    close(weightPercent.CaO, 20);
    // Molar masses 60.083, 223.2 and 56.077 g/mol (arithmetic of standard atomic weights).
    const moles = { SiO2: 50 / 60.083, PbO: 30 / 223.2, CaO: 20 / 56.077 };
    const all = moles.SiO2 + moles.PbO + moles.CaO;
    close(moleFractions.PbO, moles.PbO / all, { rel: 1e-4, why: "masses to five digits" });
  });

  it("turns weights into moles, and raises one oxide at the cost of the rest", () => {
    close(moleFractionsOf({ SiO2: 60.083, MgO: 40.304 }).MgO, 0.5, { rel: 1e-5 });
    // 60 and 30 of 90 make room for 9 of 90: nine tenths of each is left.
    const raised = withMore({ SiO2: 60, CaO: 30, Al2O3: 10 }, "Al2O3", 9);
    expect(Object.keys(raised)).toEqual(["SiO2", "CaO", "Al2O3"]);
    close(raised.SiO2, 54);
    close(raised.CaO, 27);
    close(raised.Al2O3, 19);
    // Of an oxide that was not there: 5 of 100.
    expect(withMore({ SiO2: 60, CaO: 40 }, "Al2O3", 5)).toEqual({ SiO2: 57, CaO: 38, Al2O3: 5 });
  });

  it("doubts its viscosity as its materials spread, each oxide by itself", () => {
    const weightPercent = { SiO2: 66, Na2O: 17, CaO: 17 };
    const coat = (weightPercentSd: Record<string, number>) =>
      ({
        thicknessMm: 0.3,
        densityKgPerM3: 2500,
        chemistry: { fired: { weightPercent }, weightPercentSd },
      }) as unknown as ReadCoat;
    const at = (weights: Record<string, number>) => viscosityCurve(moleFractionsOf(weights)).logViscosity(1200).value;
    const base = at(weightPercent);
    // One more of 17 leaves 82 of 83 of the rest; two more 81 of 83.
    const soda = at({ SiO2: (66 * 82) / 83, Na2O: 18, CaO: (17 * 82) / 83 }) - base;
    const lime = at({ SiO2: (66 * 81) / 83, Na2O: (17 * 81) / 83, CaO: 19 }) - base;
    close(recipeSdOf([coat({})], 1200), 0);
    close(recipeSdOf([coat({ Na2O: 1 })], 1200), Math.abs(soda), { rel: 1e-9 });
    close(recipeSdOf([coat({ Na2O: 1, CaO: 2 })], 1200), Math.hypot(soda, lime), { rel: 1e-9 });
    // Of two coats the wider spread counts.
    close(recipeSdOf([coat({ Na2O: 1 }), coat({ Na2O: 0.1, CaO: 2 })], 1200), Math.hypot(soda, lime), { rel: 1e-9 });
    // An oxide that would leave no room for another is as it is.
    close(recipeSdOf([coat({ Na2O: 83 })], 1200), 0);
  });

  it("has the surface tension that the first set knows, or the middle of glazes where none does", () => {
    const tension = (amounts: Record<string, number>) =>
      tensionOf(coatOf({ glaze: { oxides: { basis: "weightPercent", amounts } } }), 1200);
    expect(tension({ SiO2: 65, Al2O3: 5, Na2O: 15, CaO: 15 })).toMatchObject({ known: true, source: "kucuk-1999" });
    // A fifth of copper, which none of the sets has.
    expect(tension({ SiO2: 55, Al2O3: 5, Na2O: 20, CuO: 20 })).toEqual({
      quantity: { value: 325, low: 250, high: 400, coverage: 0.9, unit: "mN/m" },
      source: "from-memory-handbooks",
      known: false,
    });
  });
});

describe("a wall", () => {
  it("of which nothing is said is upright, glazed 100 mm tall, 3 mm above the shelf", () => {
    const read = readRunning({ glaze: THAW, firing });
    expect(read.wall).toEqual({ slopeDeg: 90, glazedMm: 100, clearanceMm: 3 });
    expect(read.warnings).toHaveLength(1);
    expect(read.warnings[0]).toMatchObject({ code: "wall-assumed", pointer: "/wall" });
    expect(read.warnings[0]?.message).toContain("the glaze as 100 mm tall and 3 mm of bare clay under it.");
  });

  it.each([
    [{ glazedMm: 80 }, "taken 3 mm of bare clay under it."],
    [{ clearanceMm: 8 }, "taken the glaze as 100 mm tall."],
  ])("says which of its figures it took: %j", (asked, words) => {
    const { warnings } = readRunning({ ...thaw, wall: asked });
    expect(warnings.map(({ code }) => code)).toEqual(["wall-assumed"]);
    expect(warnings[0]?.message).toContain(words);
  });

  it.each([
    [90, []],
    [3, []],
    [2.9, ["level-ground"]],
  ])("%s° from level", (slopeDeg, codes) => {
    const { warnings } = readRunning({ ...thaw, wall: { ...wall, slopeDeg } });
    expect(warnings.map(({ code }) => code)).toEqual(codes);
    for (const { pointer } of warnings) expect(pointer).toBe("/wall/slopeDeg");
  });

  it.each([
    [{ slopeDeg: -1 }, "/wall/slopeDeg", "between 0 and 90 °"],
    [{ slopeDeg: 91 }, "/wall/slopeDeg", "between 0 and 90 °"],
    [{ glazedMm: 0.9 }, "/wall/glazedMm", "between 1 and 3000 mm"],
    [{ glazedMm: 3001 }, "/wall/glazedMm", "between 1 and 3000 mm"],
    [{ clearanceMm: 0.09 }, "/wall/clearanceMm", "between 0.1 and 1000 mm"],
    [{ clearanceMm: 1001 }, "/wall/clearanceMm", "between 0.1 and 1000 mm"],
  ])("refuses %j", (asked, pointer, words) => {
    const issues = refusals({ ...thaw, wall: { ...wall, ...asked } });
    expect(issues.map((issue) => issue.pointer)).toEqual([pointer]);
    expect(issues[0]?.message).toContain(words);
  });

  it("takes its limits", () => {
    expect(refusals({ ...thaw, wall: { slopeDeg: 0, glazedMm: 1, clearanceMm: 0.1 } })).toEqual([]);
    expect(refusals({ ...thaw, wall: { slopeDeg: 90, glazedMm: 3000, clearanceMm: 1000 } })).toEqual([]);
  });
});

describe("the glaze", () => {
  it("is one, or a list, and never both or neither", () => {
    expect(refusals({ firing, wall })[0]?.message).toBe("Say which glaze: one, or a list of coats.");
    const both = refusals({ ...thaw, coats: [{ glaze: THAW }] });
    expect(both[0]?.message).toBe("Give one glaze or a list of coats, not both.");
  });

  it("lies on bisque unless it is said not to", () => {
    expect(readRunning(thaw).bisque).toBe(true);
    expect(readRunning({ ...thaw, bisque: false }).bisque).toBe(false);
  });
});

describe("a refiring", () => {
  it("is the firing again where nothing else is said", () => {
    const read = readRunning(thaw);
    expect(read.refiring.coats).toEqual([]);
    expect(read.refiring.firing.legs).toEqual(read.firing.legs);
    const coated = readRunning({ ...thaw, refiring: { coats: [{ glaze: { ...CLOUDBURST, thicknessMm: 0.1 } }] } });
    expect(coated.refiring.coats).toHaveLength(1);
    expect(coated.refiring.firing.legs).toEqual(read.firing.legs);
  });

  it("of its own tells what it assumed at its own place, and the first at its own", () => {
    const pointers = (request: RunningRequest) => readRunning(request).warnings.map(({ pointer }) => pointer);
    const first = { ...thaw, firing: { peakC: 1240 } };
    const ofFirst = ["/firing/heatingCPerHour", "/firing/coolingCPerHour"];
    expect(pointers(first)).toEqual(ofFirst);
    expect(pointers({ ...first, refiring: {} })).toEqual(ofFirst);
    const again = { cone: "6", heatingCPerHour: 60 };
    expect(pointers({ ...first, refiring: { firing: again } })).toEqual([
      ...ofFirst,
      "/refiring/firing/cone",
      "/refiring/firing/coolingCPerHour",
    ]);
    const segments = [{ toC: 1200, cPerHour: 100 }];
    expect(pointers({ ...thaw, firing: { segments } })).toEqual(["/firing/segments"]);
    expect(readRunning({ ...first, refiring: { firing: again } }).refiring.firing.peakC).toBe(1211.5);
  });
});

describe("later heats", () => {
  const decal = { kind: "decal" as const, peakC: 780 };

  it("rise and fall at 100 °C an hour without a soak, unless said otherwise", () => {
    const [plain, own] = readRunning({
      ...thaw,
      laterHeat: [decal, { ...decal, heatingCPerHour: 50, holdMinutes: 10, coolingCPerHour: 200 }],
    }).laterHeat;
    // 760 °C at 100 an hour: 7.6 h each way; at 50 and 200: 15.2 h and 3.8 h.
    expect(plain?.asked).toEqual(decal);
    expect(plain?.timeline.legs.map(({ seconds }) => seconds / 3600)).toEqual([7.6, 7.6]);
    expect(own?.timeline.legs.map(({ seconds }) => seconds / 60)).toEqual([912, 10, 228]);
  });

  it("are five at most", () => {
    expect(refusals({ ...thaw, laterHeat: Array(5).fill(decal) })).toEqual([]);
    const issues = refusals({ ...thaw, laterHeat: Array(6).fill(decal) });
    expect(issues.map(({ pointer }) => pointer)).toEqual(["/laterHeat"]);
    expect(issues[0]?.message).toContain("At most 5 later firings; I read 6.");
    const wrong = { ...decal, holdMinutes: -1 };
    expect(refusals({ ...thaw, laterHeat: [...Array(5).fill(decal), wrong] })).toEqual(issues);
  });

  it("are cooler than the glaze firing", () => {
    expect(refusals({ ...thaw, laterHeat: [{ kind: "other", peakC: 1239 }] })).toEqual([]);
    const issues = refusals({ ...thaw, laterHeat: [decal, { kind: "other", peakC: 1240 }] });
    expect(issues.map(({ pointer }) => pointer)).toEqual(["/laterHeat/1/peakC"]);
    expect(issues[0]?.message).toContain("no cooler than the glaze firing (1240 °C)");
  });

  it("are read even where the glaze firing cannot be", () => {
    const pointers = refusals({ ...thaw, firing: { cone: "99" }, laterHeat: [{ ...decal, holdMinutes: -1 }] });
    expect(pointers.map(({ pointer }) => pointer)).toEqual(["/firing/cone", "/laterHeat/0/holdMinutes"]);
  });
});

describe("a firing", () => {
  const hours = (asked: RunningFiring) => readTimeline(asked).legs.map(({ seconds }) => seconds / 3600);

  it("by its peak rises from 20 °C, soaks and cools to 20 °C", () => {
    const asked = { peakC: 1220, heatingCPerHour: 80, holdMinutes: 30, coolingCPerHour: 150 };
    expect(readTimeline(asked).legs.map(({ fromC, toC }) => [fromC, toC])).toEqual([
      [20, 1220],
      [1220, 1220],
      [1220, 20],
    ]);
    // 1200 °C at 80 an hour, half an hour, 1200 °C at 150 an hour.
    expect(hours(asked)).toEqual([15, 0.5, 8]);
    expect(readTimeline(asked)).toMatchObject({ peakC: 1220, plusMinusK: 10, from: "as stated", warnings: [] });
  });

  it("of which only the peak is said rises at 100 and falls at 150 °C an hour", () => {
    expect(hours({ peakC: 1220 })).toEqual([12, 8]);
    expect(readTimeline({ peakC: 1220 }).warnings).toEqual([
      {
        code: "heating-assumed",
        pointer: "/heatingCPerHour",
        message: "You did not say how fast it is heated before the peak. I have taken 100 °C an hour.",
      },
      {
        code: "cooling-assumed",
        pointer: "/coolingCPerHour",
        message: "You did not say how fast it is cooled after the peak. I have taken 150 °C an hour.",
      },
    ]);
  });

  it("by cone takes its peak and doubt from the tables", () => {
    const { peakC, plusMinusK, from, warnings } = readTimeline({
      cone: "6",
      heatingCPerHour: 60,
      coolingCPerHour: 100,
    });
    // Prints at 60 °C/h: 1201, 1220, 1222: half their distance and 10 more.
    expect({ peakC, plusMinusK }).toEqual({ peakC: 1211.5, plusMinusK: 20.5 });
    expect(from).toContain("cone 6 heated at 60 °C an hour at the end, ± 21 °C");
    expect(warnings).toHaveLength(1);
    expect(warnings[0]?.message).toContain("a peak of 1212 °C, give or take 21: ");
    expect(warnings[0]?.message).not.toContain("as far as they reach");
    expect(warnings[0]?.message).not.toContain("soak comes after");
  });

  it("by cone says how far the tables reach, and that the soak comes after", () => {
    const { warnings } = readTimeline({ cone: "6", heatingCPerHour: 500, holdMinutes: 10, coolingCPerHour: 100 });
    expect(warnings[0]?.message).toContain(
      "for 300 °C an hour over the last 100 °C, as far as they reach towards 500.",
    );
    expect(warnings[0]?.message).toContain("The soak comes after the cone has bent. A cone is heat-work");
  });

  it("by segments goes from each to the next, and soaks where it is told to", () => {
    const { legs, peakC, plusMinusK, from, warnings } = readTimeline({
      segments: [
        { toC: 620, cPerHour: 60 },
        { toC: 620, cPerHour: 60, holdMinutes: 15 },
        { toC: 1220, cPerHour: 200, holdMinutes: 30 },
        { toC: 20, cPerHour: 100 },
      ],
    });
    expect(legs).toEqual([
      { fromC: 20, toC: 620, seconds: 36000 },
      { fromC: 620, toC: 620, seconds: 900 },
      { fromC: 620, toC: 1220, seconds: 10800 },
      { fromC: 1220, toC: 1220, seconds: 1800 },
      { fromC: 1220, toC: 20, seconds: 43200 },
    ]);
    expect({ peakC, plusMinusK, from, warnings }).toEqual({
      peakC: 1220,
      plusMinusK: 10,
      from: "the hottest of the segments",
      warnings: [],
    });
  });

  it("that ends above 600 °C is let cool at 150 °C an hour, and left alone below", () => {
    const ending = (toC: number) =>
      readTimeline({
        segments: [
          { toC: 1220, cPerHour: 100 },
          { toC, cPerHour: 100 },
        ],
      });
    expect(ending(600)).toMatchObject({ warnings: [] });
    expect(ending(600).legs).toHaveLength(2);
    // 600 °C from 620 at 150 an hour: 4 hours.
    expect(ending(620).legs.at(-1)).toEqual({ fromC: 620, toC: 20, seconds: 14400 });
    expect(ending(620).warnings.map(({ code, pointer }) => [code, pointer])).toEqual([
      ["cooling-assumed", "/segments"],
    ]);
  });

  const many = (count: number) =>
    Array.from({ length: count }, (_, i) => ({ toC: i % 2 === 0 ? 1200 : 500, cPerHour: 100 }));

  it.each<[RunningFiring, string, string]>([
    [{}, "", "Say how hot"],
    [{ peakC: 1200, segments: [] }, "", "not several"],
    [{ peakC: 399 }, "/peakC", "between 400 and 1700 °C"],
    [{ peakC: 1701 }, "/peakC", "between 400 and 1700 °C"],
    [{ peakC: 1200, heatingCPerHour: 0.9 }, "/heatingCPerHour", "between 1 and 20000 °C an hour"],
    [{ peakC: 1200, heatingCPerHour: 20001 }, "/heatingCPerHour", "between 1 and 20000 °C an hour"],
    [{ peakC: 1200, coolingCPerHour: 0 }, "/coolingCPerHour", "between 1 and 20000 °C an hour"],
    [{ peakC: 1200, holdMinutes: -1 }, "/holdMinutes", "between 0 and 10080 minutes"],
    [{ peakC: 1200, holdMinutes: 10081 }, "/holdMinutes", "between 0 and 10080 minutes"],
    [{ segments: [] }, "/segments", "1 to 40 segments; I read 0"],
    [{ segments: many(41) }, "/segments", "1 to 40 segments; I read 41"],
    [{ segments: [...many(40), { toC: 9999, cPerHour: 0 }] }, "/segments", "1 to 40 segments; I read 41"],
    [{ segments: [{ toC: 300, cPerHour: 0 }] }, "/segments/0/cPerHour", "between 1 and 20000 °C an hour"],
    [{ segments: [{ toC: 1701, cPerHour: 100 }] }, "/segments/0/toC", "between -50 and 1700 °C"],
    [{ segments: [{ toC: 1200, cPerHour: 0 }] }, "/segments/0/cPerHour", "between 1 and 20000 °C an hour"],
    [{ segments: [{ toC: 1200, cPerHour: 9, holdMinutes: -5 }] }, "/segments/0/holdMinutes", "0 and 10080 minutes"],
    [{ segments: [{ toC: 399, cPerHour: 100 }] }, "/segments", "ends at 399 °C. No glaze melts below 400 °C"],
    [{ segments: [{ toC: -20, cPerHour: 100 }] }, "/segments", "ends at 20 °C. No glaze melts below 400 °C"],
    [{ segments: many(1), heatingCPerHour: 100 }, "/heatingCPerHour", "Segments say this already"],
    [{ segments: many(1), holdMinutes: 10 }, "/holdMinutes", "Segments say this already"],
    [{ segments: many(1), coolingCPerHour: 100 }, "/coolingCPerHour", "Segments say this already"],
    [{ segments: [...many(1), { toC: 1200, cPerHour: 100 }] }, "/segments/1/toC", "it is at 1200 °C already"],
  ])("refuses %j", (asked, pointer, words) => {
    const issues = issuesOf(() => readTimeline(asked));
    expect(issues.map((issue) => issue.pointer)).toEqual([pointer]);
    expect(issues[0]?.message).toContain(words);
  });

  it.each<RunningFiring>([
    { peakC: 400, heatingCPerHour: 1, coolingCPerHour: 20000, holdMinutes: 0 },
    { peakC: 1700, heatingCPerHour: 20000, coolingCPerHour: 1, holdMinutes: 10080 },
    { segments: [{ toC: 400, cPerHour: 1, holdMinutes: 10080 }] },
    {
      segments: [
        { toC: 1700, cPerHour: 20000 },
        { toC: -50, cPerHour: 1 },
      ],
    },
    { segments: many(40) },
  ])("takes its limits: %j", (asked) => {
    expect(issuesOf(() => readTimeline(asked))).toEqual([]);
  });

  it("names what it may be said by, and how many segments", () => {
    expect(issuesOf(() => readTimeline({}))[0]?.allowed).toEqual(["peakC", "cone", "segments"]);
    expect(issuesOf(() => readTimeline({ segments: [] }))[0]?.allowed).toEqual([1, 40]);
  });

  it("names all that is wrong with it", () => {
    const segments = [
      { toC: 2000, cPerHour: 0, holdMinutes: -1 },
      { toC: 1200, cPerHour: 100 },
    ];
    expect(issuesOf(() => readTimeline({ segments })).map(({ pointer }) => pointer)).toEqual([
      "/segments/0/toC",
      "/segments/0/cPerHour",
      "/segments/0/holdMinutes",
    ]);
  });
});

describe("a cone", () => {
  // Middle of the lowest and highest print at each rate, half their distance and 10 °C more (data/firing/cones.json).
  it.each([
    // 1201 to 1222, 1222 to 1243: ± 10.5 + 10.
    ["6", 60, 1211.5, 20.5],
    ["6", 150, 1232.5, 20.5],
    // Half way in the logarithm of the rate: √(60 · 150).
    ["6", Math.sqrt(9000), 1222, 20.5],
    // As far below 60 as 150 lies above it: 24 = 60²/150.
    ["6", 24, 1190.5, 20.5],
    // Only one table prints it.
    ["5.5", 60, 1203, 10],
    // No 60 °C/h figure in the older table: 1365 alone; 1366 to 1384 at 150 °C/h, ± 9 + 10.
    ["14", 60, 1365, 19],
    ["14", 150, 1375, 19],
    // 887 to 903 at 60 °C/h are farther apart than 900 to 915 at 150: ± 8 + 10.
    ["010", 60, 895, 18],
  ])("%s at %s °C an hour", (cone, rate, peakC, plusMinus) => {
    const end = coneEnd(cone, rate);
    close(end.peakC, peakC);
    close(end.plusMinus, plusMinus);
    close(end.cPerHour, rate);
  });

  it("heated more slowly than 15 or faster than 300 °C an hour is read there", () => {
    expect(coneEnd("6", 5)).toEqual(coneEnd("6", 15));
    expect(coneEnd("6", 5).cPerHour).toBe(15);
    expect(coneEnd("6", 2000)).toEqual(coneEnd("6", 300));
    expect(coneEnd("6", 2000).cPerHour).toBe(300);
    // 21 °C for each step of ln 2.5 in the rate, and ln 5 from 60 to 300.
    close(coneEnd("6", 300).peakC, 1211.5 + (21 * Math.log(5)) / Math.log(2.5));
  });

  it("that no table has is refused with those there are, and the one that was meant where one is near", () => {
    const [near] = issuesOf(() => coneEnd("o6", 60));
    expect(near).toMatchObject({ pointer: "/cone", suggestion: "06", allowed: CONES });
    const [far] = issuesOf(() => coneEnd("constructor", 60));
    expect(far).not.toHaveProperty("suggestion");
  });
});

it("a recipe spreads its viscosity, oxides known for certain do not", () => {
  const { fired } = analyseGlaze(THAW);
  const known = { oxides: { basis: "weightPercent" as const, amounts: fired.weightPercent }, thicknessMm: 0.3 };
  expect(recipeSdOf(readRunning({ ...thaw, glaze: known }).coats, 1240)).toBe(0);
  expect(recipeSdOf(readRunning(thaw).coats, 1240)).toBeGreaterThan(0);
});
