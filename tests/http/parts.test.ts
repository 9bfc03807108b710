/** The small parts of the service, each by its own worked example. */
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { createApp } from "../../api/app.ts";
import { chooseBranch } from "../../api/http/branch.ts";
import { describeFault, describeLineFault } from "../../api/http/json-fault.ts";
import { meantField } from "../../api/http/meant-field.ts";
import { page } from "../../api/http/paging.ts";
import { nameOf, toPointer } from "../../api/http/pointer.ts";
import { pointInto } from "../../api/routes/point-into.ts";
import { roundEach } from "../../api/routes/rounding.ts";
import { expansionHint, hotEndHint, lengthHint, peakHint } from "../../api/schemas/numbers.ts";

describe("worked examples", () => {
  it("toPointer, nameOf", () => {
    expect(toPointer(["recipe", 2, "a/b"])).toBe("/recipe/2/a~1b");
    expect(nameOf(["glaze", "recipe", 2])).toBe("Item 3 of `recipe`");
    expect(nameOf(["parts"])).toBe("`parts`");
  });

  it("page", () => {
    const list = ["a", "b", "c"];
    expect(page(list, (x) => x, { limit: 2 })).toEqual({ data: ["a", "b"], nextCursor: "after:b" });
    expect(page(list, (x) => x, { limit: 2, cursor: "after:b" })).toEqual({ data: ["c"], nextCursor: null });
    expect(page([], String, {})).toEqual({ data: [], nextCursor: null });
  });

  it("expansionHint", () => {
    expect(expansionHint(61)).toBe("61 looks like 6.1 written in 1e-7/K. This field is in 1e-6/K, so write 6.1.");
    expect(expansionHint(6100)).toBe("6100 looks like 6.1 written in 1e-9/K. This field is in 1e-6/K, so write 6.1.");
    expect(expansionHint(1e6)).toBe(
      "1000000 cannot be. This field is in 1e-6/K: glazes and clays lie between about 1 and 15.",
    );
    expect(expansionHint(-20)).toBe("This field is in 1e-6/K: glazes and clays lie between about 1 and 15.");
  });

  it("peakHint", () => {
    // Cone 6, 2232 °F = 1222 °C: derived (arithmetic).
    expect(peakHint(2232)).toContain("1222");
    expect(peakHint(120)).toBe("120 °C is no firing. Give the peak in °C, between 400 and 1700.");
  });

  // data/firing/cones.json, the middle of its prints at 60 and at 150 K/h and between them along the logarithm of the rate,
  // ln(100/60)/ln(150/60) = 0.56 of the way: 6 bends at 1211.5 and 1232.5, so 1223; 06 at 994.5 and 1006, so 1001;
  // 04 at 1056.5 and 1068.5, so 1063; 10 at 1283.5 and 1304, so 1294.9; 010 at 895 and 907.5, so 902; 022 at 585.5 and 595, so 591.
  it.each([
    [6, "6 °C is no firing. Did you mean a cone? Cone 6 bends near 1220 °C, cone 06 near 1000 °C; "],
    [10, "10 °C is no firing. Did you mean a cone? Cone 10 bends near 1290 °C, cone 010 near 900 °C; "],
    [22, "22 °C is no firing. Did you mean a cone? Cone 022 bends near 590 °C; "],
    ["04", '"04" is no temperature. Did you mean a cone? Cone 04 bends near 1060 °C; '],
    [" Cone 6", '" Cone 6" is no temperature. Did you mean a cone? Cone 6 bends near 1220 °C; '],
    ["^06", '"^06" is no temperature. Did you mean a cone? Cone 06 bends near 1000 °C; '],
  ])("peakHint asks of %j whether a cone was meant", (value, said) => {
    expect(peakHint(value)).toBe(
      `${said}cones differ by maker and heating rate. Give the peak in °C, between 400 and 1700.`,
    );
  });

  it("peakHint asks so of any number below 30, and of no text that is no cone", () => {
    expect(peakHint(29.9)).toMatch(/Did you mean a cone\? Give/);
    for (const value of [30, 0, -6]) expect(peakHint(value)).not.toMatch(/cone/);
    for (const text of ["1240", "hot", "cone 99", "6 or 7", null]) expect(peakHint(text)).toBeUndefined();
  });

  it("hotEndHint", () => {
    // 932 °F = 500 °C, 1652 °F = 900 °C, 1654 °F is 901: arithmetic.
    expect(hotEndHint(932, 900)).toBe(
      "A mean to 932 °C is more than I take. In °F it would be 500 °C. It must be 900 or less.",
    );
    expect([hotEndHint(1652, 900) !== undefined, hotEndHint(1654, 900), hotEndHint("hot", 900)]).toEqual([
      true,
      undefined,
      undefined,
    ]);
  });

  // 1 in = 25.4 mm exactly, 1 cm = 10 mm, 1000 µm = 1 mm: arithmetic.
  it.each([
    [
      "0.5 or more",
      0.25,
      [1.5, 40],
      "0.25. 0.25 in would be 6.35 mm, 0.25 cm would be 2.5 mm. It must be 0.5 or more.",
    ],
    ["5 or less", 300, [0.05, 2], "300. 300 µm would be 0.3 mm. It must be 5 or less."],
    ["0.5 or more", -3, [1.5, 40], undefined],
    ["0.5 or more", "6", [1.5, 40], undefined],
  ] as const)("lengthHint: %s, and %j was read", (bounds, value, usual, said) => {
    expect(lengthHint("wallMm", value, usual, bounds)).toBe(said && `\`wallMm\` is ${said}`);
  });

  it("pointInto, roundEach", () => {
    expect(pointInto("/glaze", { code: "x", message: "…", pointer: "/recipe/0" }).pointer).toBe("/glaze/recipe/0");
    expect(pointInto("/glaze", { code: "x", message: "…" })).toEqual({ code: "x", message: "…" });
    expect(roundEach({ SiO2: 62.1234 }, 2)).toEqual({ SiO2: 62.12 });
  });

  it("describeFault", () => {
    expect(describeFault('{"parts": 4,5}')).toMatch(/^Line 1, column 13: I wanted a field name in double quotes/);
    expect(describeFault("  ")).toBe("The request has no content. Send a JSON object.");
    expect(describeFault('{"a": 01}')).toMatch(/^Line 1, column 8: /);
    expect(describeFault('{"a": "b\nc"}')).toMatch(/^Line 1, column 7: /);
  });

  it.each([
    [
      '{"parts": 4,5}',
      'Column 13: I wanted a field name in double quotes, and found "5}". A decimal comma? Write a point.',
    ],
    [
      '{"glaze": {',
      "Column 12: I wanted a field name in double quotes, and the text ended. Each question stands whole on a line of its own.",
    ],
    [
      '{} {"a": 1}',
      'Column 4: I wanted the end, and found "{\\"a\\": 1}". Each question stands whole on a line of its own.',
    ],
    [
      "NaN",
      'Column 1: I wanted a value, and found "NaN". A number must be a number: leave the field out if you don\'t know it.',
    ],
    ['{"a": x}', 'Column 7: I wanted a value, and found "x}".'],
  ])("describeLineFault(%j)", (text, said) => {
    expect(describeLineFault(text)).toBe(said);
  });

  it("meantField", () => {
    expect(meantField("wall_in", ["wallMm", "glazed"])).toBe("wallMm");
    expect(meantField("coe", ["value", "rangeC"])).toBe("value");
    expect(meantField("coe", ["value", "rangeC"], { value: 6 })).toBeUndefined();
    // The same name comes before a trade word, and a trade word before a misspelling.
    expect(meantField("Temp", ["peakC", "temp"])).toBe("temp");
    expect(meantField("amount", ["mount", "parts"])).toBe("parts");
    expect(meantField("glazd", ["wallMm", "glazed"])).toBe("glazed");
  });

  it("chooseBranch", () => {
    const material = z.strictObject({ material: z.string(), parts: z.number() });
    const formula = z.strictObject({ formula: z.string(), parts: z.number(), name: z.string().optional() });
    const options = [material, formula];
    expect(chooseBranch(options, { formula: 1 })).toEqual({ index: 1 });
    expect(chooseBranch(options, { parts: 1 })).toEqual({ missing: ["material", "formula"] });
    expect(chooseBranch(options, { material: 1, formula: 1 })).toEqual({ conflict: ["material", "formula"] });
    expect(chooseBranch(options, { material: 1, formula: 1, name: "x" })).toEqual({ index: 1 });
    expect(chooseBranch(options, { materail: 1 })).toEqual({
      misspelt: { key: "materail", suggestion: "material", allowed: ["material", "formula"] },
    });
  });
});

describe("the app", () => {
  it("knows no runtime: it bundles for a browser without one import left over", async () => {
    const { metafile, warnings } = await build({
      entryPoints: [fileURLToPath(new URL("../../api/app.ts", import.meta.url))],
      bundle: true,
      write: false,
      metafile: true,
      format: "esm",
      platform: "browser",
      logLevel: "silent",
    });
    expect(warnings).toEqual([]);
    // The bundler's own helpers go by the name <runtime>.
    const imports = Object.values(metafile.inputs)
      .flatMap((input) => input.imports)
      .filter((one) => one.path !== "<runtime>");
    expect(imports.filter((one) => one.external || one.path.startsWith("node:"))).toEqual([]);
  });

  it("tells a fault of its own to whoever runs it, and nothing of it to the caller", async () => {
    const told: unknown[] = [];
    const faulty = createApp({
      report: (error, requestId) => told.push([(error as Error).message, requestId]),
      loadAsset: () => Promise.reject(new Error("secret path")),
    });
    const response = await faulty.request("/reference/swagger-ui.css", { headers: { "x-request-id": "larch-9" } });
    expect(response.status).toBe(500);
    const text = await response.text();
    expect(text).not.toContain("secret");
    expect(JSON.parse(text).requestId).toBe("larch-9");
    expect(told).toEqual([["secret path", "larch-9"]]);
  });
});
