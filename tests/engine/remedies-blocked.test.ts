/** Where nothing reaches: the limits that are named do hold it back, and it gets as far as is said, by hand. */
import { describe, expect, it } from "vitest";
import { findRemedies, layOut, MOST_MOVED, USUAL } from "../../api/engine/advice/index.ts";
import type { RemediesReport, RemediesRequest } from "../../api/engine/advice/types.ts";
import { checkFit } from "../../api/engine/fit/index.ts";
import { THAW_ON_RED_STONEWARE } from "../../api/schemas/larch-lane.ts";
import { SMALL } from "../support/small-misfit.ts";

/** What a simpler recipe may lose, and rounding for the scales [-]. */
const SIMPLER = 0.03;
/** Between the marks of a scan by hand [-]. */
const MARKS = 0.02;

const OTHERS = ["potash-feldspar", "whiting", "kaolin", "frit-soda-borosilicate"];
const without = ({ blocked }: RemediesReport, limit: string) => blocked.find((block) => block.limit === limit)!;
const farthest = ({ remedies }: RemediesReport) =>
  Math.max(...remedies.filter(({ recipe }) => recipe).map(({ after }) => after.probabilities.sound));

describe("only silica may be moved", () => {
  const request: RemediesRequest = { ...THAW_ON_RED_STONEWARE, allow: ["silica"], keep: OTHERS, bodies: [] };
  // By hand: every half part of silica up to 40 more, by the full model; the first to leave a limit ends the scan.
  const scan = (melt: number, tension: number) => {
    const bench = layOut(request, ["silica"], 1);
    const now = bench.lines.map((line) => line.now);
    const start = bench.at(now)!;
    const at = bench.lines.findIndex(({ id }) => id === "silica");
    let most = start.sound;
    for (let more = 0.5; more <= 40; more += 0.5) {
      const there = bench.at(now.map((parts, j) => (j === at ? parts + more : parts)))!;
      if (Math.abs(there.logViscosity - start.logViscosity) > melt) break;
      if (Math.abs(there.tension! / start.tension! - 1) > tension) break;
      most = Math.max(most, there.sound);
    }
    return most;
  };

  it("the melt holds it back; the surface tension does not", () => {
    const report = findRemedies(request);
    const within = scan(0.2, 0.05);
    expect(farthest(report)).toBeLessThanOrEqual(within + MARKS);
    expect(farthest(report)).toBeGreaterThanOrEqual(within - SIMPLER);
    const runnier = scan(10, 0.05);
    expect(runnier).toBeGreaterThan(within + MARKS);
    expect(Math.abs(without(report, "melt").soundWithout! - runnier)).toBeLessThan(MARKS);
    expect(without(report, "melt")).toMatchObject({ pointer: "/melt/logViscosity" });
    expect(scan(0.2, 1)).toBeLessThan(within + MARKS);
    expect(without(report, "surface tension")).toBeUndefined();
    expect(report.headline).toContain(
      "Nothing within these limits brings it from about 2 in 20 sound to about 17 in 20",
    );
  });
});

describe("silica and kaolin may come in, both kept short by the Seger formula", () => {
  const request: RemediesRequest = {
    ...SMALL,
    allow: ["silica", "kaolin"],
    keep: ["potash-feldspar", "whiting"],
    melt: { logViscosity: 1.5, surfaceTensionPercent: 30 },
    seger: { SiO2: { max: 4.2 }, Al2O3: { max: 0.4 } },
    bodies: [],
    target: 0.8,
  };
  // By hand: every whole part of either from 30 less silica to 40 more of each, 60 moved at most, by the full model.
  const scan = (silicaMost: number, aluminaMost: number) => {
    const bench = layOut(request, ["kaolin"], 1);
    let most = 0;
    for (let silica = 0; silica <= 70; silica++) {
      for (let kaolin = 0; kaolin <= 40; kaolin++) {
        if (Math.abs(silica - 30) + kaolin > MOST_MOVED) break;
        const there = bench.at([50, 20, silica, kaolin]);
        const { SiO2 = 0, Al2O3 = 0 } = there?.chemistry.seger?.moles ?? {};
        if (there && SiO2 <= silicaMost && Al2O3 <= aluminaMost) most = Math.max(most, there.sound);
        if (Al2O3 > aluminaMost) break;
      }
    }
    return most;
  };

  it("each of the two holds it back, silica the more", () => {
    const report = findRemedies(request);
    const within = scan(4.2, 0.4);
    expect(within).toBeLessThan(0.8);
    expect(farthest(report)).toBeLessThanOrEqual(within + MARKS);
    expect(farthest(report)).toBeGreaterThanOrEqual(within - SIMPLER);
    const silica = without(report, "SiO2 in the Seger formula");
    expect(scan(99, 0.4)).toBeGreaterThanOrEqual(0.8);
    expect(silica).toMatchObject({ pointer: "/seger/SiO2" });
    expect(silica.text).toMatch(/at 4.2 mol or less; it is \d\.\d+ now.*gets there/);
    const more = scan(4.2, 99);
    expect(more).toBeGreaterThan(within + MARKS);
    const alumina = without(report, "Al2O3 in the Seger formula");
    expect(Math.abs(alumina.soundWithout! - more)).toBeLessThan(MARKS);
    expect(report.blocked.indexOf(silica)).toBeLessThan(report.blocked.indexOf(alumina));
  });
});

describe("more is wanted than is known", () => {
  const request: RemediesRequest = { ...THAW_ON_RED_STONEWARE, target: 0.95, bodies: [] };

  it("whatever the glaze expanded by, fits of stated glazes do not get there either", () => {
    const report = findRemedies(request);
    const doubt = without(report, "doubt");
    expect(doubt.text).toMatch(/^No recipe can promise about 19 in 20 here.*no more than about \d+ in 20/);
    const { low, high } = checkFit(THAW_ON_RED_STONEWARE).glaze.expansion;
    let most = 0;
    for (let value = 4; value <= 8; value += 0.2) {
      const expansion = { value, rangeC: [20, 300] as [number, number], plusMinus: (high - low) / 2 };
      const { probabilities } = checkFit({ ...THAW_ON_RED_STONEWARE, glaze: { expansion, thicknessMm: 0.3 } });
      most = Math.max(most, probabilities.sound);
    }
    expect(most).toBeLessThan(0.95);
    const said = Number(/no more than about (\d+) in 20/.exec(doubt.text)![1]) / 20;
    // Another glass: stiffness and set point are not those of the recipe.
    expect(Math.abs(said - most)).toBeLessThan(0.08);
  });
});

describe("the same said twice", () => {
  it("is told as limits that hold only together", () => {
    // Nothing may come in, and of each there may be nothing: lifting either still bars it.
    const request: RemediesRequest = {
      ...THAW_ON_RED_STONEWARE,
      glaze: { recipe: [{ material: "frit-soda-borosilicate", parts: 100 }], thicknessMm: 0.3 },
      forbid: USUAL,
      melt: { logViscosity: 3, surfaceTensionPercent: 50 },
      parts: Object.fromEntries(USUAL.map((id) => [id, { max: 0 }])),
      bodies: [],
    };
    const { blocked } = findRemedies(request);
    expect(blocked.map(({ limit }) => limit)).toEqual(["together"]);
    expect(blocked[0]!.text).toMatch(/None of these holds it back alone; without all of them a change of recipe gets/);
    const free = findRemedies({ ...request, forbid: [], parts: {} });
    // What takes many materials is told simpler, for up to 0.05 of the chance.
    expect(Math.abs(blocked[0]!.soundWithout! - farthest(free))).toBeLessThan(0.05 + 0.01);
  });
});

describe("a bought glaze", () => {
  it("says how far its expansion is from what would fit, which a fit of such a glaze bears out", () => {
    const glaze = { expansion: { value: 7.5, rangeC: [20, 300] as [number, number], plusMinus: 0.2 } };
    const request: RemediesRequest = { glaze, body: { class: "buff-stoneware" }, target: 0.7, bodies: [] };
    const { blocked } = findRemedies(request);
    const { text } = blocked.find(({ limit }) => limit === "recipe")!;
    const by = Number(/about (\d\.\d+)/.exec(text)![1]);
    expect(text).toMatch(/less/);
    const sound = (value: number) =>
      checkFit({ ...request, glaze: { expansion: { ...glaze.expansion, value } } }).probabilities.sound;
    expect(sound(7.5 - by)).toBeGreaterThanOrEqual(0.69);
    expect(sound(7.5 - by + 0.3)).toBeLessThan(0.7);
  });
});
