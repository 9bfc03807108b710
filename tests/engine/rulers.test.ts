/** Text on paper, and worked examples of the doc comments. */
import { expect, it } from "vitest";
import { drawRuler, fitText, roomOn, textWidth, toPdf, toSvg, wrapText } from "../../api/engine/rulers/index.ts";
import { close } from "../support/close.ts";

const shrinkage = { percent: 12, plusMinus: 0.5 };

it("examples of the doc comments", () => {
  close(textWidth("mm", 10), 16.66, { abs: 0.005 });
  const { lengths } = drawRuler({ shrinkage: { percent: 12 }, draw: { ruler: { length: "100 mm" } } });
  expect(lengths[0]?.drawn.value).toBe(113.64);
});

it("text is cut and broken to the width it has", () => {
  expect(fitText("potash feldspar", 4, 100)).toBe("potash feldspar");
  const cut = fitText("potash feldspar".repeat(9), 4, 50);
  expect(cut.endsWith("…")).toBe(true);
  expect(textWidth(cut, 4)).toBeLessThanOrEqual(50);
  for (const part of wrapText("one two three four five six seven ".repeat(5).trim(), 4, 40)) {
    expect(textWidth(part, 4)).toBeLessThanOrEqual(40);
  }
});

it("nothing is drawn or written beyond the margins, whatever the paper and the piece", () => {
  const draws = [
    { ruler: { length: "2000 mm" } },
    { ruler: { length: "1 mm" } },
    { gauges: { gallery: "300 mm", clearance: "1 mm" } },
    {
      template: {
        name: "a very long name indeed ".repeat(2).trim(),
        points: [
          { across: 100, up: 0 },
          { across: 500, up: 300 },
        ],
      },
    },
  ];
  for (const page of ["A4", "Letter"] as const) {
    for (const unit of ["mm", "cm", "in"] as const) {
      for (const draw of draws) {
        const request = { shrinkage, draw, page, unit: "mm" as const };
        const { sheets } = drawRuler(draw.ruler ? { ...request, unit } : request);
        for (const { widthMm, heightMm, strokes, labels } of sheets) {
          for (const { points } of strokes) {
            for (const [x, y] of points) {
              expect(x >= 11.99 && x <= widthMm - 11.99 && y >= 11.99 && y <= heightMm - 11.99).toBe(true);
            }
          }
          for (const { text, x, y, size, anchor = "start", bold } of labels) {
            const wide = textWidth(text, size, bold);
            const left = anchor === "start" ? x : anchor === "middle" ? x - wide / 2 : x - wide;
            expect(left).toBeGreaterThanOrEqual(11.9);
            expect(left + wide, text).toBeLessThanOrEqual(widthMm - 10);
            expect(y).toBeLessThanOrEqual(heightMm - 11.9);
          }
        }
      }
    }
  }
});

it("letters outside WinAnsi become ?, and the rest survive as octal escapes", () => {
  const { sheets } = drawRuler({ shrinkage, draw: { ruler: { length: "100 mm" } } });
  const pdf = new TextDecoder().decode(toPdf(sheets, "½ ° – 雪"));
  expect(pdf).toContain("/Title (\\275 \\260 \\226 ?)");
  expect(toSvg(sheets[0]!)).toContain("<title>Fired ruler for 12 %</title>");
});

it("the room on a sheet is the paper less margins, head and foot", () => {
  expect(roomOn("A4", false)).toMatchObject({ width: 186, sheet: { width: 210, height: 297 } });
  expect(roomOn("A4", true)).toMatchObject({ width: 273, sheet: { width: 297, height: 210 } });
});
