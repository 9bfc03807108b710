/** What every picture must be: small, quick, well formed, rounded, told in words, safe, and the same twice. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkFit, type FitReport } from "../../api/engine/fit/index.ts";
import * as pictures from "../../api/engine/pictures/index.ts";
import { THAW_ON_RED_STONEWARE } from "../../api/schemas/larch-lane.ts";
import { questions, reportOf, shown, textsOf, wellFormed } from "./support.ts";

const thaw = checkFit({ ...THAW_ON_RED_STONEWARE, include: ["curves", "parts"] });
const { verdictPicture, expansionPicture, contributionsPicture, stressPicture, ringMark } = pictures;
const draws = { verdictPicture, expansionPicture, contributionsPicture, stressPicture };
const kinds = Object.entries(draws) as [string, (report: FitReport, options?: pictures.PictureOptions) => string][];
const option = fc.record({
  theme: fc.constantFrom("light", "dark", "print") as fc.Arbitrary<pictures.ThemeName>,
  width: fc.constantFrom(980, 720, 350) as fc.Arbitrary<pictures.PictureWidth>,
  standalone: fc.boolean(),
});

describe.each(kinds)("%s", (_, draw) => {
  it("is at most 30 kB of well-formed SVG with a title and a description, no number finer than it shows", () => {
    fc.assert(
      fc.property(questions, option, (question, options) => {
        const report = reportOf(question);
        if (!report) return;
        const svg = draw(report, options);
        expect(Buffer.byteLength(svg)).toBeLessThan(30_000);
        expect(wellFormed(svg)).toBe(true);
        expect(svg).not.toMatch(/NaN|Infinity|undefined|null/);
        expect(shown(/<title id="[^"]*">(.*?)<\/title>/.exec(svg)?.[1] ?? "")).toMatch(/\.$/);
        expect(shown(/<desc id="[^"]*">(.*?)<\/desc>/.exec(svg)?.[1] ?? "").length).toBeGreaterThan(40);
        for (const [, d] of svg.matchAll(/ d="([^"]*)"/g)) expect(d).not.toMatch(/\.\d{3}|e-/);
        for (const { size } of textsOf(svg)) expect(size).toBeGreaterThanOrEqual(12.5);
      }),
      { numRuns: 60 },
    );
  });

  it("asks nothing from outside and carries no script", () => {
    const svg = draw(thaw);
    expect(svg.replace('xmlns="http://www.w3.org/2000/svg"', "")).not.toMatch(
      /https?:|url\((?!#)|@import|<script|<image|<foreignObject| on\w+=/,
    );
  });

  it("shares a page with others: ids differ, and every reference stays inside", () => {
    const [a, b] = [draw(thaw), draw(thaw, { theme: "dark" })];
    const ids = (svg: string) => [...svg.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id!);
    expect(new Set([...ids(a), ...ids(b)]).size).toBe(ids(a).length + ids(b).length);
    for (const [, hash, id] of a.matchAll(/(url\(#|href="#)([^")]+)/g)) expect(ids(a), hash).toContain(id);
    for (const id of ids(draw(thaw, { id: "mine" }))) expect(id).toMatch(/^mine/);
  });

  it("is the same twice, and leaves the report alone", () => {
    const before = JSON.stringify(thaw);
    expect(draw(thaw)).toBe(draw(thaw));
    expect(JSON.stringify(thaw)).toBe(before);
  });
});

describe("words from outside", () => {
  const hostile = [
    "<script>alert(1)</script>",
    "\"><svg onload='x'>",
    "&lt;b&gt; & ]]>",
    "\u0000\u0008\ud800x\uffff",
    "%ID%-clay",
    "\u202e\u2028",
  ];

  it("come out as words, whatever they are", () => {
    fc.assert(
      fc.property(fc.oneof(fc.constantFrom(...hostile), fc.string({ unit: "binary", maxLength: 60 })), (words) => {
        const report: FitReport = {
          ...thaw,
          headline: words,
          pulls: thaw.pulls.map((pull, i) => (i === 0 ? { ...pull, oxide: words } : pull)),
          parts: thaw.parts!.map((part, i) => (i === 0 ? { ...part, label: words } : part)),
        };
        for (const [, draw] of kinds) {
          const svg = draw(report, { standalone: true, id: words });
          expect(wellFormed(svg)).toBe(true);
          expect(svg).not.toMatch(/<script|<b>|onload=(?!.*<\/text>)/);
          // biome-ignore lint/suspicious/noControlCharactersInRegex: XML cannot hold these.
          expect(svg).not.toMatch(/[\u0000-\u0008\ufffe\uffff]/);
        }
        const pinned = verdictPicture(thaw, { trials: [{ letter: words, stressMPa: 3 }] });
        expect(wellFormed(pinned)).toBe(true);
      }),
      { numRuns: 200 },
    );
  });

  it("keep their meaning", () => {
    const svg = verdictPicture({ ...thaw, headline: `Rime & "Thaw" <b>` });
    expect(shown(/<title[^>]*>(.*?)<\/title>/.exec(svg)![1]!)).toBe(`Rime & "Thaw" <b>`);
  });
});

describe("figures that stand for nothing", () => {
  it("draws a stress far beyond the scale without leaving the picture", () => {
    const far = { ...thaw, stress: { ...thaw.stress, value: 1e6, low: 9e5, high: 1.2e6 } };
    far.stress.cases = far.stress.cases.map(() => ({ stressMPa: 1e6, outcome: "crazesOnCooling" as const }));
    const svg = verdictPicture(far);
    expect(svg).toContain("20 beyond");
    expect(svg).not.toMatch(/NaN|e\+/);
  });

  it("says that the curves were not asked for", () => {
    const { curves: _, ...bare } = thaw;
    expect(expansionPicture(bare)).toContain("not asked for");
  });
});

describe("the ring mark", () => {
  it.each(["crazes", "may-craze", "sound", "may-shiver", "shivers", "unknown"] as const)("of %s", (verdict) => {
    for (const size of [16, 48]) {
      const svg = ringMark(verdict, { size });
      expect(wellFormed(svg)).toBe(true);
      expect(svg).toMatch(/<title>[A-Z].*\.<\/title>/);
    }
    expect(ringMark(verdict, { decorative: true })).toContain('aria-hidden="true"');
    expect(ringMark(verdict, { size: Number.NaN })).toContain('width="48"');
  });

  it("differs in outline from verdict to verdict, so that no colour is needed", () => {
    const outlines = (["crazes", "may-craze", "sound", "may-shiver", "shivers"] as const).map(
      (verdict) => / d="([^"]*)"/.exec(ringMark(verdict))![1],
    );
    expect(new Set(outlines).size).toBe(5);
  });
});
