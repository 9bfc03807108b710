/**
 * True scale, read back three ways: from the SVG, from the PDF's own drawing, and from pixels of the PDF rendered by an
 * outside renderer (PDFium). A mark of x fired stands at x/(1 − S) (derived); limit 0.1 mm on paper.
 */
import { PDFiumLibrary } from "@hyzyla/pdfium";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { drawRuler, type RulerRequest, toPdf, toSvg } from "../../api/engine/rulers/index.ts";
import { close } from "../support/close.ts";

const shrinkage = { percent: 12, plusMinus: 0.5 };
const ruler = (length: string, more: Partial<RulerRequest> = {}): RulerRequest => ({
  shrinkage,
  draw: { ruler: { length } },
  ...more,
});
const LIMIT = 0.1;

type Line = [x1: number, y1: number, x2: number, y2: number];

/** Every straight stretch of an SVG's paths [mm from the top left corner]. */
function svgLines(svg: string): Line[] {
  return [...svg.matchAll(/ d="([^"]+)"/g)].flatMap(([, d]) =>
    d!
      .split("M")
      .slice(1)
      .flatMap((path) => {
        const closed = path.endsWith("Z");
        const points = path
          .replace("Z", "")
          .split("L")
          .map((pair) => pair.split(" ").map(Number) as [number, number]);
        if (closed) points.push(points[0]!);
        return points.slice(1).map((end, i): Line => [...points[i]!, ...end]);
      }),
  );
}

/** The same from the content streams of a PDF, one list a page. */
function pdfLines(bytes: Uint8Array, heightMm: number): Line[][] {
  const text = new TextDecoder("latin1").decode(bytes);
  const mm = (points: string | undefined) => (Number(points) * 25.4) / 72;
  return [...text.matchAll(/stream\n([\s\S]*?)\nendstream/g)].map(([, content]) =>
    content!.split("\n").flatMap((row) => {
      const path = /([-\d.]+ [-\d.]+) m(.*?)( h)? S$/.exec(row);
      if (!path) return [];
      const pairs = [path[1]!, ...[...path[2]!.matchAll(/([-\d.]+ [-\d.]+) l/g)].map((found) => found[1]!)];
      const points = pairs.map((pair): [number, number] => {
        const [x, y] = pair.split(" ");
        return [mm(x), heightMm - mm(y)];
      });
      if (path[3]) points.push(points[0]!);
      return points.slice(1).map((end, i): Line => [...points[i]!, ...end]);
    }),
  );
}

const upright = (lines: Line[], length: number, top: number) =>
  lines
    .filter(([x1, y1, x2, y2]) =>
      x1 === x2 || Math.abs(x1 - x2) < 1e-3 ? Math.abs(y2 - y1 - length) < 1e-3 && Math.abs(y1 - top) < 1e-3 : false,
    )
    .map(([x]) => x)
    .sort((a, b) => a - b);

/** Places of the strips' left top corners. */
const LEFT = 12;
const TOP = 34;
const STRIP = 30;

describe("SVG", () => {
  it.each([
    ["A4", 210, 297],
    ["Letter", 215.9, 279.4],
  ] as const)("is %s paper, %d by %d mm, in true millimetres", (page, width, height) => {
    const svg = toSvg(drawRuler(ruler("150 mm", { page })).sheets[0]!);
    expect(svg).toContain(`width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}"`);
  });

  it("a printed centimetre is a fired centimetre", () => {
    const lines = svgLines(toSvg(drawRuler(ruler("150 mm")).sheets[0]!));
    const marks = upright(lines, 6, TOP);
    expect(marks).toHaveLength(16);
    for (const [k, x] of marks.entries()) close(x - LEFT, (10 * k) / 0.88, { abs: 0.001 });
  });

  it("an inch ruler reads fired inches in sixteenths", () => {
    const lines = svgLines(toSvg(drawRuler(ruler("6 in", { unit: "in" })).sheets[0]!));
    const marks = upright(lines, 6, TOP);
    expect(marks).toHaveLength(7);
    for (const [k, x] of marks.entries()) close(x - LEFT, (25.4 * k) / 0.88, { abs: 0.001 });
    const fine = lines.filter(([x1, y1, x2, y2]) => x1 === x2 && y1 === TOP && y2 - y1 <= 6);
    expect(fine).toHaveLength(6 * 16 + 1);
  });

  it("every sheet has a check bar of 100 mm", () => {
    for (const request of [ruler("1500 mm"), ruler("60 in", { unit: "in", page: "Letter" })]) {
      const { sheets } = drawRuler(request);
      expect(sheets.length).toBeGreaterThan(1);
      for (const sheet of sheets) {
        const bars = svgLines(toSvg(sheet)).filter(([x1, y1, x2, y2]) => y1 === y2 && Math.abs(x2 - x1 - 100) < 1e-9);
        expect(bars).toHaveLength(1);
      }
    }
  });

  it("strips of a long ruler go on where the last one ended", () => {
    const { sheets } = drawRuler(ruler("1500 mm"));
    const strips = sheets.flatMap((sheet) => {
      const lines = svgLines(toSvg(sheet));
      const tops = [...new Set(lines.filter(([x1, , x2]) => x1 === x2 && x1 === LEFT).map(([, y]) => y))];
      return tops.flatMap((top) => {
        const marks = upright(lines, 6, top);
        return marks.length > 1 ? [marks.at(-1)! - marks[0]!] : [];
      });
    });
    close(
      strips.reduce((sum, one) => sum + one, 0),
      1500 / 0.88,
      { abs: 0.01 },
    );
  });

  it("a rib is the outline as thrown, widths and heights each by their own shrinkage", () => {
    const points = [
      [72, 0],
      [110, 55],
      [93, 100],
    ].map(([across, up]) => ({ across: across!, up: up! }));
    const request = { shrinkage: { percent: 12, heightPercent: 14, plusMinus: 0.5 }, draw: { template: { points } } };
    const lines = svgLines(toSvg(drawRuler(request).sheets[0]!));
    const [dx, dy] = [(110 - 72) / 2 / 0.88, 55 / 0.86];
    const found = lines.find(([x1, y1, x2, y2]) => Math.abs(x2 - x1 - dx) < 0.002 && Math.abs(y1 - y2 - dy) < 0.002);
    expect(found).toBeDefined();
  });

  it("a template larger than paper is tiled edge to edge, and nothing is lost", () => {
    const points = [
      { across: "120 mm", up: "0 mm" },
      { across: "700 mm", up: "420 mm" },
    ];
    const { sheets } = drawRuler({ shrinkage, draw: { template: { points, side: "inside" } } });
    expect(sheets.length).toBeGreaterThan(2);
    const slope = 420 / 0.88 / (290 / 0.88);
    const slanted = sheets.flatMap((sheet) =>
      svgLines(toSvg(sheet)).filter(
        ([x1, y1, x2, y2]) => Math.abs(x2 - x1) > 1 && Math.abs((y1 - y2) / (x2 - x1) - slope) < 0.002,
      ),
    );
    const length = slanted.reduce((sum, [x1, y1, x2, y2]) => sum + Math.hypot(x2 - x1, y2 - y1), 0);
    close(length, Math.hypot(290, 420) / 0.88, { abs: 0.02 });
  });

  it("gauges are as wide as lid and gallery are thrown", () => {
    const { sheets, lengths } = drawRuler({ shrinkage, draw: { gauges: { gallery: 84, clearance: 0.8 } } });
    const widths = svgLines(toSvg(sheets[0]!))
      .filter(([, y1, , y2]) => y1 === y2)
      .map(([x1, , x2]) => Math.abs(x2 - x1));
    for (const wide of [84 / 0.88, 82.4 / 0.88]) expect(widths.some((one) => Math.abs(one - wide) < 0.002)).toBe(true);
    expect(lengths.map(({ drawn }) => drawn.value)).toEqual([95.45, 93.64]);
  });
});

describe("PDF", () => {
  it("draws what the SVG draws", () => {
    for (const request of [ruler("1500 mm"), { shrinkage, draw: { gauges: { gallery: 84, clearance: 0.8 } } }]) {
      const { sheets } = drawRuler(request);
      const pages = pdfLines(toPdf(sheets, "x"), sheets[0]!.heightMm);
      expect(pages).toHaveLength(sheets.length);
      for (const [i, sheet] of sheets.entries()) {
        const wanted = sheet.strokes.flatMap(stretches);
        expect(pages[i]).toHaveLength(wanted.length);
        expect(svgLines(toSvg(sheet))).toHaveLength(wanted.length);
        const off = wanted.flatMap((one, k) => one.map((at, end) => Math.abs(at - pages[i]![k]![end]!)));
        expect(Math.max(...off)).toBeLessThan(0.001);
      }
    }
  });

  it("is one that a reader can open: cross-references point at their objects", () => {
    const text = new TextDecoder("latin1").decode(toPdf(drawRuler(ruler("1500 mm")).sheets, "Ruler (12 %)"));
    const start = Number(/startxref\n(\d+)/.exec(text)![1]);
    expect(text.slice(start, start + 4)).toBe("xref");
    const entries = [...text.slice(start).matchAll(/(\d{10}) 00000 n/g)].map((found) => Number(found[1]));
    for (const [i, at] of entries.entries()) expect(text.slice(at).startsWith(`${i + 1} 0 obj`)).toBe(true);
    for (const [, length, body] of text.matchAll(/\/Length (\d+) >>\nstream\n([\s\S]*?)\nendstream/g)) {
      expect(body).toHaveLength(Number(length));
    }
    expect(text).toContain("/Title (Ruler \\(12 %\\))");
    expect(text).toContain("/PrintScaling /None");
  });
});

function stretches({ points, closed }: { points: readonly (readonly [number, number])[]; closed?: boolean }): Line[] {
  const ends = closed ? [...points.slice(1), points[0]!] : points.slice(1);
  return ends.map((end, i): Line => [...points[i]!, ...end] as Line);
}

describe("pixels of the PDF", () => {
  /** Pixels in a millimetre. */
  const PER_MM = 20;
  const MM = 1 / PER_MM;
  let library: PDFiumLibrary;
  beforeAll(async () => {
    library = await PDFiumLibrary.init();
  });
  afterAll(() => library.destroy());

  async function render(request: RulerRequest) {
    const document = await library.loadDocument(toPdf(drawRuler(request).sheets, "x"));
    const [paperWidth, paperHeight] = request.page === "Letter" ? [215.9, 279.4] : [210, 297];
    const size = { width: paperWidth * PER_MM, height: paperHeight * PER_MM };
    const { data, width } = await document.getPage(0).render({ ...size, scale: 1, render: "bitmap" });
    document.destroy();
    /** Centres of the dark stretches along a row [mm]. */
    const darkAlong = (yMm: number, fromMm: number, toMm: number): number[] => {
      const row = Math.round(yMm / MM);
      const found: number[] = [];
      let [weight, sum] = [0, 0];
      for (let x = Math.round(fromMm / MM); x < Math.round(toMm / MM); x++) {
        const dark = 255 - data[(row * width + x) * 4]!;
        if (dark > 20) {
          weight += dark;
          sum += dark * (x + 0.5);
        } else if (weight > 0) {
          found.push((sum / weight) * MM);
          [weight, sum] = [0, 0];
        }
      }
      return found;
    };
    return darkAlong;
  }

  it.each([
    ["A4", 210, 297],
    ["Letter", 215.9, 279.4],
  ] as const)("%s pages are %d by %d mm", (page, width, height) => {
    const text = new TextDecoder("latin1").decode(toPdf(drawRuler(ruler("150 mm", { page })).sheets, "x"));
    const [, right, top] = /MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(text)!;
    close((Number(right) * 25.4) / 72, width, { abs: 0.001 });
    close((Number(top) * 25.4) / 72, height, { abs: 0.001 });
  });

  it("the check bar is 100 mm, and every tenth mark where it belongs", async () => {
    const darkAlong = await render(ruler("150 mm"));
    const bar = darkAlong(297 - 12 - 4 - 1.5, 5, 150);
    expect(bar).toHaveLength(3);
    close(bar[2]! - bar[0]!, 100, { abs: LIMIT });
    close(bar[1]! - bar[0]!, 50, { abs: LIMIT });
    // 5.5 mm below the edge only the numbered marks reach, and the strip's own ends.
    const marks = darkAlong(TOP + 5.5, 5, 205);
    expect(marks).toHaveLength(16);
    for (const [k, x] of marks.entries()) close(x - marks[0]!, (10 * k) / 0.88, { abs: LIMIT });
    const trueMarks = darkAlong(TOP + STRIP - 5.5, 5, 205).slice(0, -1);
    for (const [k, x] of trueMarks.entries()) close(x - trueMarks[0]!, 10 * k, { abs: LIMIT });
  });

  it("a gauge for the gallery is 95.45 mm wide", async () => {
    const darkAlong = await render({
      shrinkage,
      page: "Letter",
      draw: { gauges: { gallery: 84, clearance: 0.8 } },
    });
    const [left, right] = darkAlong(TOP + 30, 5, 205) as [number, number];
    close(right - left, 84 / 0.88, { abs: LIMIT });
  });
});
