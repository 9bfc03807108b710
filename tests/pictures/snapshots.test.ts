/**
 * A picture of each situation, kept as an .svg file that a reviewer can open. A change shows in the comparison; look at
 * the files, then accept it with `npx vitest run --config .config/vitest.config.ts tests/pictures -u`.
 */
import { describe, expect, it } from "vitest";
import { checkFit, type FitRequest, type Verdict } from "../../api/engine/fit/index.ts";
import {
  contributionsPicture,
  expansionPicture,
  type PictureOptions,
  ringMark,
  stressPicture,
  verdictPicture,
} from "../../api/engine/pictures/index.ts";
import { RED_STONEWARE, THAW_ON_RED_STONEWARE } from "../../api/schemas/larch-lane.ts";

const include = ["curves"] as const;
const thaw: FitRequest = { ...THAW_ON_RED_STONEWARE, include };
const stated = (glaze: number, body: number, more: object = {}): FitRequest => ({
  glaze: { expansion: { value: glaze, plusMinus: 0.3 }, thicknessMm: 0.3, ...more },
  body: { expansion: { value: body, rangeC: [20, 500], plusMinus: 0.2 } },
  include,
});

/** Situations of the invented studio Larch Lane. */
const situations: Record<string, { question: FitRequest; verdict: Verdict }> = {
  thaw: { question: thaw, verdict: "crazes" },
  squall: {
    question: { ...thaw, body: { ...RED_STONEWARE, expansion: { value: 6.9, rangeC: [20, 500], plusMinus: 0.3 } } },
    verdict: "may-craze",
  },
  "low-sun": { question: stated(5.6, 6.9), verdict: "sound" },
  rime: { question: stated(4.6, 6.7), verdict: "may-shiver" },
  hoarfrost: { question: stated(3.2, 7.2), verdict: "shivers" },
  "beyond-the-scale": { question: stated(11, 5), verdict: "crazes" },
  "all-twenty-hold": {
    question: {
      glaze: { expansion: { value: 6, plusMinus: 0.05 }, thicknessMm: 0.1 },
      body: { class: "studio-porcelain", expansion: { value: 7.2, rangeC: [20, 600], plusMinus: 0.05 } },
      include,
    },
    verdict: "sound",
  },
  "very-thin": { question: stated(5.6, 6.9, { thicknessMm: 0.04 }), verdict: "sound" },
  "rime-free": {
    question: { ...stated(4.4, 6.7), ware: { wallMm: 4, glazed: "one-face-free" } },
    verdict: "may-shiver",
  },
  "hoarfrost-one-face": {
    question: { ...stated(3.2, 7.2), ware: { wallMm: 6, glazed: "one-face" } },
    verdict: "shivers",
  },
  "very-thick": { question: { ...thaw, glaze: { ...thaw.glaze, thicknessMm: 1.5 } }, verdict: "crazes" },
};

const reports = Object.fromEntries(
  Object.entries(situations).map(([name, { question }]) => [name, checkFit(question)] as const),
);

const wide: PictureOptions = { heading: true };
const middle: PictureOptions = { heading: true, width: 720 };
const narrow: PictureOptions = { heading: true, width: 350 };
const dark: PictureOptions = { heading: true, theme: "dark" };
const print: PictureOptions = { heading: true, theme: "print", width: 720 };
const trials = [
  { letter: "A", stressMPa: reports.thaw!.stress.value, current: true },
  { letter: "B", stressMPa: 13 },
  { letter: "C", stressMPa: 10 },
  { letter: "D", stressMPa: -45 },
];

/** File name → picture. */
const files: Record<string, string> = {
  "verdict-thaw": verdictPicture(reports.thaw!, { ...wide, trials }),
  "verdict-thaw-dark": verdictPicture(reports.thaw!, { ...dark, trials }),
  "verdict-thaw-350": verdictPicture(reports.thaw!, { ...narrow, trials }),
  "verdict-thaw-print": verdictPicture(reports.thaw!, { ...print, trials }),
  "verdict-squall": verdictPicture(reports.squall!, middle),
  "verdict-low-sun": verdictPicture(reports["low-sun"]!, wide),
  "verdict-rime-350": verdictPicture(reports.rime!, narrow),
  "verdict-hoarfrost": verdictPicture(reports.hoarfrost!, wide),
  "verdict-beyond-the-scale": verdictPicture(reports["beyond-the-scale"]!, middle),
  "verdict-all-twenty-hold": verdictPicture(reports["all-twenty-hold"]!, wide),
  "verdict-very-thin": verdictPicture(reports["very-thin"]!, wide),
  "verdict-very-thick-350": verdictPicture(reports["very-thick"]!, narrow),
  "expansion-thaw": expansionPicture(reports.thaw!, wide),
  "expansion-thaw-dark-720": expansionPicture(reports.thaw!, { ...dark, width: 720 }),
  "expansion-thaw-350": expansionPicture(reports.thaw!, narrow),
  "expansion-hoarfrost": expansionPicture(reports.hoarfrost!, middle),
  "expansion-squall-print": expansionPicture(reports.squall!, print),
  "contributions-thaw": contributionsPicture(reports.thaw!, middle),
  "contributions-thaw-dark-350": contributionsPicture(reports.thaw!, { ...dark, width: 350 }),
  "contributions-stated": contributionsPicture(reports["low-sun"]!, { width: 720 }),
  "stress-thaw": stressPicture(reports.thaw!, { ...wide, ware: { wallMm: 6, glazed: "both-faces" } }),
  "stress-hoarfrost-one-face-350": stressPicture(reports["hoarfrost-one-face"]!, {
    ...narrow,
    ware: { wallMm: 6, glazed: "one-face" },
  }),
  "stress-rime-free-dark": stressPicture(reports["rime-free"]!, {
    ...dark,
    width: 720,
    ware: situations["rime-free"]!.question.ware!,
  }),
  ...Object.fromEntries(
    (["crazes", "may-craze", "sound", "may-shiver", "shivers", "unknown"] as const).map((verdict) => [
      `ring-${verdict}`,
      ringMark(verdict, { size: 96 }),
    ]),
  ),
};

describe("a picture kept for review", () => {
  it("shows twenty that hold where it says so", () => {
    expect(reports["all-twenty-hold"]!.stress.cases.every(({ outcome }) => outcome === "sound")).toBe(true);
  });

  it.each(Object.entries(situations))("%s is the situation it is named for", (name, { verdict }) => {
    expect(reports[name]!.verdict).toBe(verdict);
  });

  it.each(Object.entries(files))("%s", async (name, svg) => {
    await expect(`${svg.replace(/>(?=<(?!\/?tspan|\/text))/g, ">\n")}\n`).toMatchFileSnapshot(`snapshots/${name}.svg`);
  });
});
