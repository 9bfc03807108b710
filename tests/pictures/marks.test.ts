/**
 * What every picture is made of: words and their room, numbers, colours, ids, rings. Places are worked out by hand from the
 * docstrings (arithmetic); no outside source.
 */
import { describe, expect, it } from "vitest";
import { flow } from "../../api/engine/pictures/blends/flow.ts";
import type { PictureOptions } from "../../api/engine/pictures/index.ts";
import { ringMark } from "../../api/engine/pictures/index.ts";
import { arrow, crackFill, waveFill } from "../../api/engine/pictures/marks/fills.ts";
import { escapeText, px, Sheet } from "../../api/engine/pictures/marks/sheet.ts";
import { shorten, textWidth, wrap } from "../../api/engine/pictures/marks/text-width.ts";
import { THEMES } from "../../api/engine/pictures/marks/theme.ts";
import { niceStep } from "../../api/engine/pictures/marks/ticks.ts";

const told = { title: "Thaw.", description: "A picture." };
const drawn = (options: PictureOptions, draw: (sheet: Sheet) => void = () => undefined) => {
  const sheet = new Sheet(options);
  draw(sheet);
  return sheet.finish(100, "kind", told);
};

describe("room for words", () => {
  it("is that of the lighter letters unless they are bold", () => {
    // From the tables: "a" 62 and "i" 28 hundredths of an em, bold 68 and 35.
    expect(textWidth("ai", 10)).toBeCloseTo(9, 9);
    expect(textWidth("ai", 10, true)).toBeCloseTo(10.3, 9);
    expect(textWidth("…漢", 10)).toBeCloseTo(20.5, 9); // an ellipsis is an em wide, a letter not known 1.05
    expect(textWidth("", 10)).toBe(0);
  });

  // "aaa" is 18.6 px wide at 10 px, and so is any word here; a blank 3.2 px.
  it.each([
    ["aaa aaa", 40.4, ["aaa aaa"]],
    ["aaa aaa", 40.3, ["aaa", "aaa"]],
    ["aaa aaa aaa", 45, ["aaa aaa", "aaa"]],
    ["aaa aaa aaa aaa", 65, ["aaa aaa", "aaa aaa"]], // evened out: not three and one
    ["aaa", 18.6, ["aaa"]],
    ["aaa", 18.5, ["a…"]],
    ["aaa", 22.4, ["aaa"]],
    ["aaaa", 22.4, ["aa…"]], // 2·6.2 + 10
    ["aaaa", 22.3, ["a…"]],
    ["", 10, [""]],
  ])("breaks %j at %d px into %j", (words, limit, lines) => {
    expect(wrap(words, limit, 10)).toEqual(lines);
  });

  it.each([
    ["aaa", 18.6, "aaa"],
    ["aaaa", 22.4, "aa…"],
    ["a aa", 19.4, "a…"], // no blank before what is lost
    [" aaaa", 22.4, " a…"],
    ["aaa", 5, "…"],
    ["😀😀😀", 20.5, "😀…"],
  ])("cuts %j at %d px to %j", (words, limit, cut) => {
    expect(shorten(words, limit, 10)).toBe(cut);
  });

  it("takes marks with words beside them to a new line where they find no room", () => {
    const places: [number, number][] = [];
    const item = (words: string) => ({ mark: 24, words, draw: (x: number, y: number) => void places.push([x, y]) });
    const sheet = new Sheet({ width: 350 });
    // At 12.5 px "aaaaaaaaaa" is 77.5 px wide: 101.5 with its mark, and 22 px between two.
    const end = flow(
      sheet,
      ["a", "a", "a"].map((a) => item(a.repeat(10))),
      100,
    );
    // 4 + 3·101.5 + 2·22 = 352.5 of 346: the third begins a line.
    const first = 100 + 12.5 + 4 - 12.5 * 0.36;
    expect(places).toEqual([
      [4, expect.closeTo(first, 9)],
      [127.5, expect.closeTo(first, 9)],
      [4, expect.closeTo(first + 24.5, 9)],
    ]);
    expect(end).toBeCloseTo(100 + 16.5 + 24.5 + 10, 9);
    expect(flow(sheet, [], 100)).toBe(100);
    // Words too wide for any line stay on the first.
    expect(flow(sheet, [item("a".repeat(60))], 100)).toBeCloseTo(126.5, 9);
  });
});

describe("round steps", () => {
  it.each([
    [6, 6, 1],
    [6.1, 6, 2],
    [12, 6, 2],
    [12.1, 6, 5],
    [30, 6, 5],
    [30.1, 6, 10],
    [60, 6, 10],
    [0.6, 6, 0.1],
    [0.3, 6, 0.05],
  ])("of %d in %d or fewer are %d", (span, most, step) => {
    expect(niceStep(span, most)).toBeCloseTo(step, 12);
  });
});

describe("numbers", () => {
  it.each([
    [2.345, 2.35],
    [-2.344, -2.34],
    [-0.001, 0],
    [1e-9, 0],
  ])("%d is drawn as %d", (value, shown) => {
    expect(Object.is(px(value), shown)).toBe(true);
  });

  it("have two decimals in a path, and none is below nothing in size", () => {
    const svg = drawn({}, (sheet) => {
      sheet.path("M1.23456 -2.0001L3e1 4.5", { stroke: "ink" });
      sheet.path("", { stroke: "ink" });
      sheet.rect(1, 2, -3, -4, { fill: "ink" });
    });
    expect(svg).toContain('<path d="M1.23 -2L3e1 4.5"');
    expect(svg.match(/<path/g)).toHaveLength(1);
    expect(svg).toContain('<rect x="1" y="2" width="0" height="0"');
  });
});

describe("a sheet", () => {
  it.each([
    [undefined, 980, "14"],
    [720, 720, "14"],
    [350, 350, "12.5"],
  ] as const)("asked to be %s px wide is %d px wide, its words %s px tall", (width, wide, size) => {
    const sheet = new Sheet({ width });
    expect([sheet.width, String(sheet.size), sheet.narrow]).toEqual([wide, size, wide === 350]);
    expect(drawn({ width })).toContain(`viewBox="0 0 ${wide} 100" width="${wide}" height="100"`);
  });

  it("is light unless asked otherwise; only print leans on pattern", () => {
    for (const theme of ["light", "dark", "print"] as const) {
      const sheet = new Sheet({ theme });
      expect([sheet.theme, sheet.print]).toEqual([THEMES[theme], theme === "print"]);
    }
    expect(new Sheet({}).theme).toBe(THEMES.light);
    const fills = (theme: "light" | "print") =>
      drawn({ theme }, (sheet) => {
        sheet.rect(0, 0, 1, 1, { fill: crackFill(sheet) });
        sheet.rect(0, 0, 1, 1, { fill: waveFill(sheet) });
      });
    expect([...fills("light").matchAll(/opacity="([^"]*)"/g)].map(([, opacity]) => opacity)).toEqual(["0.2", "0.16"]);
    expect([...fills("print").matchAll(/opacity="([^"]*)"/g)].map(([, opacity]) => opacity)).toEqual(["0", "0"]);
  });

  it("defines a pattern once however often it is used", () => {
    const svg = drawn({ id: "mine" }, (sheet) => {
      for (const at of [0, 10]) sheet.rect(at, 0, 5, 5, { fill: crackFill(sheet) });
    });
    expect(svg.match(/<pattern id="mine-cracks"/g)).toHaveLength(1);
    expect(svg.match(/fill="url\(#mine-cracks\)"/g)).toHaveLength(2);
    let made = 0;
    drawn({}, (sheet) => {
      for (let i = 0; i < 3; i++) sheet.define("once", () => `<g id="%ID%"/>${made++}`);
    });
    expect(made).toBe(1);
  });

  it.each([
    ["mine", "mine"],
    ["a-b_C9", "a-b_C9"],
    ['a b"c<é>', "abc"],
    ["9a", undefined],
    ["-a", undefined],
    ["é", undefined],
    ["", undefined],
    [undefined, undefined],
  ])("asked for the id %j takes %j, or works one out", (asked, id) => {
    const { 1: taken } = / id="([^"]*)"/.exec(drawn({ id: asked }))!;
    if (id) expect(taken).toBe(id);
    else expect(taken).toMatch(/^kind-[\da-z]+$/);
  });

  it("says its title above only where it travels alone", () => {
    expect(drawn({})).not.toContain("<style>");
    expect(drawn({})).not.toContain("<text");
    // One line of 23 px and 8 px below it.
    const alone = drawn({ standalone: true, id: "mine" });
    expect(alone).toContain('viewBox="0 -31 980 131" width="980" height="131"');
    expect(alone).toContain("<style>#mine text{font-variant-numeric:tabular-nums}</style>");
    expect(alone).toContain('<text x="6" y="-12.6" font-size="18" font-weight="700">Thaw.</text>'); // −31 + 0.8·23
    expect(drawn({ standalone: true, width: 350 })).toContain('viewBox="0 -27 350 127"'); // 19 + 8
  });

  it("writes pens as they are asked for", () => {
    const pens = drawn({}, (sheet) => {
      sheet.circle(1, 2, 3, { stroke: "ink" });
      sheet.circle(1, 2, 3, { stroke: "pull", width: 2, dash: "2 4", opacity: 0.5 });
      sheet.circle(1, 2, 3, { fill: "push", opacity: 0 });
    });
    const { ink, pull, push } = THEMES.light;
    expect([...pens.matchAll(/<circle cx="1" cy="2" r="3"([^>]*)\/>/g)].map(([, pen]) => pen)).toEqual([
      ` fill="none" stroke="${ink}" stroke-width="1"`,
      ` fill="none" stroke="${pull}" stroke-width="2" stroke-dasharray="2 4" stroke-opacity="0.5"`,
      ` fill="${push}" fill-opacity="0"`,
    ]);
  });

  it("sets digits of a formula low, and those alone", () => {
    const words = (text: string) => {
      const svg = drawn({}, (sheet) => sheet.text(0, 0, text, { size: 10, formula: true }));
      return /<text[^>]*>(.*)<\/text>/.exec(svg)![1]!.replaceAll("\u200b", "");
    };
    const low = (digits: string) => `<tspan font-size="7.4" dy="2.2">${digits}</tspan><tspan dy="-2.2"></tspan>`;
    expect(words("Fe2O3")).toBe(`Fe${low("2")}O${low("3")}`);
    expect(words("B10H14")).toBe(`B${low("10")}H${low("14")}`);
    expect(words("A&B")).toBe("A&#38;B");
  });

  it("drops what XML cannot hold and keeps pairs that make one letter", () => {
    expect(escapeText("a\u0000\u001f\u007fb\ud800c\udc00d😀")).toBe("abcd😀");
    expect(escapeText(`<"&'>`)).toBe("&#60;&#34;&#38;&#39;&#62;");
  });
});

describe("an arrow", () => {
  it("points left or right, its middle where asked", () => {
    expect(arrow(100, 50, 1, 20)).toBe("M90 50H110M106 46.5L110 50L106 53.5");
    expect(arrow(100, 50, -1, 20)).toBe("M110 50H90M94 46.5L90 50L94 53.5");
    expect(arrow(100, 50, 1)).toContain("M94.5 50H105.5");
  });
});

describe("the ring mark's size", () => {
  it.each([
    [undefined, 48, 11, true],
    [24, 24, 11, true],
    [23.9, 23.9, 15, false],
    [8, 8, 15, false],
    [1, 8, 15, false],
    [3000, 2000, 11, true],
    [Number.POSITIVE_INFINITY, 48, 11, true],
    [Number.NaN, 48, 11, true],
  ])("%d is %d px, stroke %d, clay shown: %s", (asked, size, weight, clay) => {
    const svg = ringMark("sound", { size: asked });
    expect(svg).toContain(`width="${size}" height="${size}"`);
    expect(svg).toContain(`stroke-width="${weight}"/>`);
    expect(svg.includes("<circle")).toBe(clay);
  });

  it("shows no clay where there is no verdict yet, and dots whatever the size", () => {
    for (const size of [16, 48]) {
      const svg = ringMark("unknown", { size });
      expect(svg).toContain('stroke-width="4" stroke-dasharray="3 6"');
      expect(svg).not.toContain("<circle");
    }
    expect(ringMark("sound")).not.toContain('stroke-dasharray="3 6"');
  });

  it("is told in words unless words beside it say the same", () => {
    expect(ringMark("crazes")).toContain('role="img"><title>A ring broken in three places: it crazes.</title>');
    expect(ringMark("crazes", { decorative: true })).not.toMatch(/role|<title/);
    expect(ringMark("sound", { theme: "dark" })).toContain(`stroke="${THEMES.dark.hold}"`);
  });
});
