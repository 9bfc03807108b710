/** The small parts of the pages that need no browser, on the examples of their own documentation and beyond. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { convert } from "../../api/pages/check/convert.ts";
import { currentGlaze, letterOf } from "../../api/pages/check/draft.ts";
import { sayBounds } from "../../api/pages/check/faults.ts";
import { readRecipes } from "../../api/pages/check/read-csv.ts";
import { buildQuestion, fieldAt } from "../../api/pages/check/request.ts";
import { SAMPLE } from "../../api/pages/check/sample-work.ts";
import { fromFragment, fromWork, toFragment, toWork, UnreadableWork } from "../../api/pages/check/work.ts";
import { fill } from "../../api/pages/fill.ts";
import { GLAZES, oxidesOf, START } from "../../api/pages/lesson/glazes.ts";
import { readBars } from "../../api/pages/making/draft.ts";
import { readNumber } from "../../api/pages/shared/read-number.ts";
import { sayQuantity } from "../../api/pages/shared/say-quantity.ts";
import {
  fromService,
  localise,
  METRIC,
  sayLength,
  sayTemperature,
  tidy,
  toCelsius,
  toKelvins,
} from "../../api/pages/shared/units.ts";
import { THAW_ON_RED_STONEWARE } from "../../api/schemas/larch-lane.ts";

const imperial = { temperature: "F", length: "in" } as const;

describe("numbers as people type them", () => {
  it.each([
    ["17,5", 17.5],
    ["1 250", 1250],
    ["−3", -3],
    [".5", 0.5],
    ["17.", 17],
  ])("%s is %d", (text, value) => expect(readNumber(text)).toEqual({ value }));

  it("offers what was probably meant, and knows nothing from something", () => {
    expect(readNumber("17..0")).toEqual({ value: null, fix: "17.0" });
    expect(readNumber("about 12 g")).toEqual({ value: null, fix: "12" });
    expect(readNumber("1.234,5")).toEqual({ value: null, fix: "1234.5" });
    expect(readNumber("1.234.567").fix).not.toBe("1234.567");
    expect(readNumber("1,234.5")).toEqual({ value: null, fix: "1234.5" });
    expect(readNumber("a lot")).toEqual({ value: null });
    expect(readNumber("  ")).toEqual({ value: null, empty: true });
  });

  it("never takes other text for a number", () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const { value } = readNumber(text);
        expect(value === null || Number.isFinite(value)).toBe(true);
      }),
    );
  });
});

describe("units", () => {
  it("turn both ways", () => {
    // 1240 °C is 2264 °F, a difference of 100 K is 180 °F (derived, arithmetic)
    expect(toCelsius(2264, "F")).toBe(1240);
    expect(toKelvins(180, "F")).toBe(100);
    expect(tidy(0.30000000004)).toBe("0.3");
    expect(sayTemperature(642, METRIC)).toBe("640\u00a0°C");
    expect(sayLength(0.3, METRIC)).toBe("0.30\u00a0mm");
  });

  it("turn inside sentences of the service, rates without the 32", () => {
    expect(localise("sets near 640 °C, 0.30 mm thick", imperial)).toBe("sets near 1184 °F, 0.012 in thick");
    expect(localise("over 20–500 °C", imperial)).toBe("over 68–932 °F");
    expect(localise("cooling at 100 °C an hour", imperial)).toBe("cooling at 180\u00a0°F an hour");
    expect(localise("at −35 MPa", imperial)).toBe("at −35 MPa");
  });

  it("turn differences without the 32, bounds, and temperatures below nothing", () => {
    // 10 K is 18 °F; 400 and 1700 °C are 752 and 3092 °F; −20 °C is −4 °F (arithmetic)
    expect(localise("10\u00a0°C cooler: 0.3 mm", imperial)).toBe("18\u00a0°F cooler: 0.012 in");
    expect(localise("at least 50 °C apart, up to 1200 °C", imperial)).toBe("at least 90 °F apart, up to 2192 °F");
    expect(localise("-20 °C is no firing. Give the peak in °C, between 400 and 1700.", imperial)).toBe(
      "−4 °F is no firing. Give the peak in °F, between 752 and 3092.",
    );
  });

  it("say one temperature alike in the page's words and in the service's", () => {
    // 683 °C is told as 685 °C, which is 1265 °F; 20 °C is 68 °F, not 70 (arithmetic)
    expect(sayTemperature(683, imperial)).toBe("1265\u00a0°F");
    expect(localise("near 685 °C", imperial)).toBe("near 1265 °F");
    expect(sayTemperature(20, imperial)).toBe("68\u00a0°F");
  });

  // 5 mm / 25.4 = 0.197 in; 1200 °C = 2192 °F; 1 K = 1.8 °F (arithmetic)
  it.each([
    ["5 or less", "mm", "5\u00a0mm or less"],
    ["5 or less", "in", "0.197\u00a0in or less"],
    ["1200 or less", "°F", "2192\u00a0°F or less"],
    ["1 or more", "°F/h", "1.8\u00a0°F/h or more"],
    ["0 or more", "±", "0 or more"],
    ["a whole number", "pieces", "a whole number"],
  ])("tell the service's bounds “%s” in a field of “%s” as “%s”", (bounds, sign, told) =>
    expect(fromService(bounds, sign)).toBe(told),
  );

  // 300 / 25.4 = 11.811 in, 5 / 25.4 = 0.197 in (arithmetic)
  it.each([
    [
      "`years` is 0. It must be 0.01 or more.",
      "0",
      "years",
      "“0” does not go here. It must be 0.01\u00a0years or more.",
    ],
    [
      "Row 2, silica: `parts` is -3. It must be 0 or more.",
      "-3",
      "",
      "Row 2, silica: “-3” does not go here. It must be 0 or more.",
    ],
    [
      "Item 2 of `rangeC` is 5000. It must be 1200 or less.",
      "5000",
      "°C",
      "“5000” does not go here. It must be 1200\u00a0°C or less.",
    ],
    [
      "`thicknessMm` is 300. 300 µm would be 0.3 mm. It must be 5 or less.",
      "300",
      "mm",
      "“300” does not go here. 300 µm would be 0.3 mm. It must be 5\u00a0mm or less.",
    ],
    [
      "`thicknessMm` is 300. 300 µm would be 0.3 mm. It must be 5 or less.",
      "11,811",
      "in",
      "“11,811” does not go here. It must be 0.197\u00a0in or less.",
    ],
    ["Drying takes 6 % and all together only 0 %.", "0", "%", "Drying takes 6 % and all together only 0 %."],
  ])("tell “%s” at a field by what was typed, %s %s", (message, typed, sign, told) =>
    expect(sayBounds(message, typed, sign)).toBe(told),
  );

  it("turn the bench and mean the same question", () => {
    const draft = fromWork(SAMPLE, METRIC);
    convert(draft, imperial);
    expect(draft.firing.peak).toBe("2264");
    const { request } = buildQuestion(draft, currentGlaze(draft));
    expect(request!.firing).toEqual({ peakC: 1240, coolingCPerHour: 100 });
    expect(request!.ware!.wallMm).toBeCloseTo(6, 2);
    expect(request!.body).toEqual(THAW_ON_RED_STONEWARE.body);
  });
});

it("tells figures with what they are worth", () => {
  const stress = { value: 25.1, low: -33, high: 87.8, coverage: 0.9, unit: "MPa" };
  expect(sayQuantity(stress, METRIC)).toEqual({ value: "+25\u00a0MPa", low: "−33", high: "+88", unit: "MPa" });
});

it("gives a figure and its interval the same decimals, as many as one of them needs", () => {
  const gap = { value: -0.048, low: -0.1218, high: 0.0301, coverage: 0.9, unit: "%" };
  expect(sayQuantity(gap, METRIC)).toMatchObject({ value: "−0.048\u00a0%", low: "−0.122", high: "0.030" });
  const expansion = { value: 6.62, low: 6.26, high: 7, coverage: 0.9, unit: "1e-6/K" };
  expect(sayQuantity(expansion, METRIC)).toMatchObject({ value: "6.62\u00a0×10⁻⁶/K", low: "6.26", high: "7.00" });
  const stated = { value: 6.2, low: 5.9, high: 6.5, coverage: 0.9, unit: "1e-6/K" };
  expect(sayQuantity(stated, METRIC)).toMatchObject({ value: "6.2\u00a0×10⁻⁶/K", low: "5.9", high: "6.5" });
});

it("fills gaps, and lets an unfilled one be seen", () => {
  expect(fill("Row {row}, {material}", { row: 3, material: "Whiting" })).toBe("Row 3, Whiting");
  expect(fill("{a} {b}", { a: 1 })).toBe("1 {b}");
});

describe("bars as they are typed", () => {
  const bar = (plastic: number, dry: number, fired: number) => [{ plastic, dry, fired }];
  it.each([
    ["100, 94, 88", bar(100, 94, 88)],
    ["100,94,88", bar(100, 94, 88)],
    ["100 94 88.5", bar(100, 94, 88.5)],
    ["100,5; 94,25; 88", bar(100.5, 94.25, 88)],
    ["100,5 94,2 88", bar(100.5, 94.2, 88)],
    ["100,5\t94,2\t88", bar(100.5, 94.2, 88)],
    ["wet dry", []],
    ["100,5,94,2,88", null],
    ["100; about 94; 88", null],
  ])("%s", (text, bars) => expect(readBars(text)).toEqual(bars));
});

describe("pasted recipes", () => {
  const parts = (text: string) => readRecipes(text).recipes.map(({ rows }) => rows.map((row) => row.parts));
  it("are read with commas, tabs, semicolons and blanks", () => {
    for (const text of ["whiting, 20\nsilica, 30", "whiting\t20\r\nsilica\t30", "whiting 20\nsilica: 30"]) {
      expect(parts(text)).toEqual([["20", "30"]]);
    }
    expect(parts("whiting;20,5\nsilica;30 %")).toEqual([["20.5", "30"]]);
  });

  it("take more columns for more recipes, leave totals out and name lines without a weight", () => {
    const { recipes, left } = readRecipes("material,Thaw,Hail\nwhiting,20,10\nsilica,30,0\nnonsense,x,y\nTotal,50,10");
    expect(recipes).toEqual([
      {
        name: "Thaw",
        rows: [
          { material: "whiting", parts: "20" },
          { material: "silica", parts: "30" },
        ],
      },
      { name: "Hail", rows: [{ material: "whiting", parts: "10" }] },
    ]);
    expect(left).toEqual([4]);
  });

  it("never break the page", () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(readRecipes(text).recipes.length).toBeLessThanOrEqual(4);
      }),
    );
  });
});

describe("the work", () => {
  it("goes to a file or a link and back whole", () => {
    const draft = fromWork(SAMPLE, METRIC);
    expect(toWork(draft)).toEqual(SAMPLE);
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 60 }), (name) => {
        draft.trials[0]!.name = name;
        const back = fromWork(fromFragment(toFragment(toWork(draft))), METRIC);
        expect(toWork(back)).toEqual(toWork(draft));
      }),
    );
  });

  it("keeps what the form has no fields for", () => {
    const curve = {
      curve: [
        { c: 20, strainPercent: 0 },
        { c: 700, strainPercent: 0.45 },
      ],
    };
    const line = { name: "bucket clay", formula: "Al2O3.2SiO2.2H2O", parts: 7 };
    const work = { ...SAMPLE, trials: [{ letter: "A", glaze: { recipe: [line] } }], body: curve };
    expect(toWork(fromWork(work, METRIC))).toMatchObject({ trials: [{ glaze: { recipe: [line] } }], body: curve });
  });

  it("refuses anything else in words", () => {
    fc.assert(
      fc.property(fc.jsonValue(), (given) => {
        try {
          fromWork(given, METRIC);
        } catch (error) {
          expect(error).toBeInstanceOf(UnreadableWork);
        }
      }),
    );
    expect(() => fromFragment("#w=%%%")).toThrow();
    expect(fromFragment("#answer")).toBeNull();
  });

  it("asks the service exactly the sample's question, and finds fields by pointer", () => {
    const draft = fromWork(SAMPLE, METRIC);
    const { request, places } = buildQuestion(draft, currentGlaze(draft));
    expect(request).toEqual(THAW_ON_RED_STONEWARE);
    expect(fieldAt(places, "/glaze/recipe/2/parts")).toBe("row-2-parts");
    expect(fieldAt(places, "/glaze/recipe/2/amount")).toBe("row-2-material");
    expect(fieldAt(places, "/nowhere")).toBe("other");
    expect(letterOf(0)).toBe("A");
  });
});

it("the lesson's sliders keep a hundred per cent", () => {
  for (const glaze of Object.keys(GLAZES)) {
    for (const silica of [null, 50, 78]) {
      for (const soda of [null, 0, 12]) {
        const oxides = oxidesOf({ ...START, glaze, silica, soda });
        const sum = Object.values(oxides).reduce((total, amount) => total + amount, 0);
        expect(Math.abs(sum - 100)).toBeLessThan(0.01);
      }
    }
  }
});
