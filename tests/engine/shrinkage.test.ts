/** Worked examples of the doc comments, to the digits shown; the statistics against recorded values; what is refused and said. */
import { describe, expect, it } from "vitest";
import {
  chiSquareQuantile,
  dryingShrinkage,
  firingShrinkage,
  grubbsLimit,
  knownShrinkage,
  measureShrinkage,
  studentQuantile,
  thrownLength,
  totalShrinkage,
  volumeShrinkage,
} from "../../api/engine/shrinkage/index.ts";
import { close } from "../support/close.ts";
import { issuesOf } from "../support/refusals.ts";

type Known = Parameters<typeof knownShrinkage>[0];
type Request = Parameters<typeof measureShrinkage>[0];
type Bar = Request["bars"][number];

const codesOf = ({ warnings }: { warnings: { code: string; pointer?: string }[] }) =>
  warnings.map(({ code, pointer }) => [code, pointer]);
const toShare = ({ value, low, high }: { value: number; low: number; high: number }) =>
  [value, low, high].map((share) => Math.round(share * 1e9) / 1e9);
/** Bars of 100 mm that shrink by so many per cent. */
const bars = (...percents: number[]): Bar[] => percents.map((percent) => ({ plastic: 100, fired: 100 - percent }));

it("examples of the doc comments", () => {
  close(dryingShrinkage(100, 94.2), 0.058, { abs: 1e-12 });
  close(firingShrinkage(100, 93), 0.07, { abs: 1e-12 });
  close(totalShrinkage(0.06, 0.07), 0.1258, { abs: 1e-12 });
  close(thrownLength(90, 0.12), 102.2727, { abs: 0.00005 });
  close(volumeShrinkage(0.13), 0.3415, { abs: 0.00005 });
  close(studentQuantile(0.95, 9), 1.8331, { abs: 0.00005 });
  close(chiSquareQuantile(0.95, 9), 16.919, { abs: 0.0005 });
  close(grubbsLimit(10), 2.29, { abs: 0.0005 });
  expect(knownShrinkage({ percent: 12, plusMinus: 0.5 }).across).toEqual({ value: 0.12, low: 0.115, high: 0.125 });
  expect(measureShrinkage({ bars: [{ plastic: 100, dry: 94.2, fired: 87.9 }] }).total?.mean.value).toBe(12.1);
});

// Recorded from scipy 1.17.1, stats.t.ppf and stats.chi2.ppf.
it.each([
  [1, 6.313751514675037, 63.656741162871526],
  [2, 2.9199855803537242, 9.924843200918287],
  [3, 2.3533634348018233, 5.840909309733355],
  [4, 2.1318467863266495, 4.604094871349992],
  [7, 1.8945786050900062, 3.4994832973504924],
  [9, 1.833112932656237, 3.249835541592126],
  [19, 1.7291328115213682, 2.8609346064649794],
  [29, 1.6991270265334972, 2.756385903670605],
  [99, 1.6603911560169906, 2.626405457280827],
])("t of %d degrees", (freedom, at95, at995) => {
  close(studentQuantile(0.95, freedom), at95, { rel: 1e-10 });
  close(studentQuantile(0.995, freedom), at995, { rel: 1e-10 });
});
it.each([
  [1, 0.003932140000019522, 0.454936423119572, 3.841458820694124],
  [2, 0.10258658877510106, 1.386294361119891, 5.991464547107979],
  [4, 0.7107230213973239, 3.3566939800333224, 9.487729036781154],
  [9, 3.325112843066815, 8.342832692252955, 16.918977604620448],
  [29, 17.70836618282458, 28.33612686658445, 42.55696780429269],
  [99, 77.04633186376029, 98.33413733447392, 123.2252214533618],
])("chi-square of %d degrees", (freedom, at5, at50, at95) => {
  close(chiSquareQuantile(0.05, freedom), at5, { rel: 1e-10 });
  close(chiSquareQuantile(0.5, freedom), at50, { rel: 1e-10 });
  close(chiSquareQuantile(0.95, freedom), at95, { rel: 1e-10 });
});

it("a fraction written for a per cent is asked about, and what is honest is answered", () => {
  const refused = (input: Known) => issuesOf(() => knownShrinkage(input)).map(({ suggestion }) => suggestion);
  expect(refused({ percent: 0.12 })).toEqual(["12"]);
  expect(refused({ percent: 12, heightPercent: 0.13 })).toEqual(["13"]);
  expect(refused({ dryingPercent: 0.06, firingPercent: 7 })).toEqual(["6"]);
  expect(refused({ percent: 0 })).toEqual([]);
  // A low fire may well shrink a clay by a fifth of a point only.
  const { warnings } = knownShrinkage({ dryingPercent: 6, firingPercent: 0.2, plusMinus: 0.2 });
  expect(warnings.map(({ code }) => code)).toEqual(["tiny-shrinkage"]);
});

describe("a stated shrinkage", () => {
  it.each<[string, Known, [string, string, string][]]>([
    ["hardly any", { percent: 0.999 }, [["/percent", "Did you mean 99.9 %?", "0, or 1 to 50 %"]]],
    [
      "more than half",
      { percent: 50.5 },
      [["/percent", "Shrinkage is 50.5. It must lie between 0 and 50 %.", "0 to 50 %"]],
    ],
    ["all of it", { percent: 100 }, [["/percent", "leave nothing of the pot", "0, or 1 to 50 %"]]],
    ["a growth", { percent: -3 }, [["/percent", "Shrinkage of -3 %: clay does not grow", ""]]],
    [
      "a height that grows",
      { percent: 12, heightPercent: -1 },
      [["/heightPercent", "Shrinkage of height of -1 %", ""]],
    ],
    ["drying that grows", { percent: 12, dryingPercent: -1 }, [["/dryingPercent", "Drying shrinkage of -1 %", ""]]],
    [
      "drying that takes it all and more",
      { percent: 6, dryingPercent: 8.1 },
      [["/dryingPercent", "Were the two swapped?", ""]],
    ],
    ["too wide a doubt", { percent: 12, plusMinus: 10.1 }, [["/plusMinus", "Give or take is 10.1", "0 to 10 points"]]],
    ["a doubt below nothing", { percent: 12, plusMinus: -1 }, [["/plusMinus", "Give or take is -1", "0 to 10 points"]]],
    [
      "growth in the kiln",
      { dryingPercent: 6, firingPercent: -2.1 },
      [["/firingPercent", "Firing shrinkage is -2.1", "-2 to 50 %"]],
    ],
    [
      "two things at once",
      { dryingPercent: -6, firingPercent: 51 },
      [
        ["/dryingPercent", "Drying shrinkage of -6 %", ""],
        ["/firingPercent", "Firing shrinkage is 51", "-2 to 50 %"],
      ],
    ],
  ])("of %s is refused", (_, input, expected) => {
    const issues = issuesOf(() => knownShrinkage(input));
    expect(issues).toMatchObject(
      expected.map(([pointer, words]) => ({ pointer, message: expect.stringContaining(words) })),
    );
    expect(issues.map(({ allowed }) => String(allowed ?? ""))).toEqual(expected.map(([, , allowed]) => allowed));
  });

  it.each<[Known, number]>([
    [{ percent: 1, plusMinus: 0 }, 0.01],
    [{ percent: 50, plusMinus: 0 }, 0.5],
    [{ percent: 0, plusMinus: 0 }, 0],
    [{ percent: 6, dryingPercent: 8, plusMinus: 10 }, 0.06],
    // 1 − 0.94 · 0.93, and 1 − 0.94 · 1.02.
    [{ dryingPercent: 6, firingPercent: 7 }, 0.1258],
    [{ dryingPercent: 6, firingPercent: -2 }, 0.0412],
  ])("%j is answered", (input, across) => close(knownShrinkage(input).across.value, across, { abs: 1e-12 }));

  it("has its intervals: as stated, in height as in width, never below nothing", () => {
    const wide = knownShrinkage({ percent: 1, plusMinus: 2 });
    expect(toShare(wide.across)).toEqual([0.01, 0, 0.03]);
    expect(toShare(wide.up)).toEqual([0.01, 0, 0.03]);
    const { up, pieceSd } = knownShrinkage({ percent: 12, heightPercent: 10, plusMinus: 0.5 });
    expect(toShare(up)).toEqual([0.1, 0.095, 0.105]);
    // From piece to piece 0.3 points (common practice, no source).
    expect(pieceSd).toBe(0.003);
    // Without a give or take, one point.
    expect(toShare(knownShrinkage({ percent: 12 }).across)).toEqual([0.12, 0.11, 0.13]);
  });

  it("dries by what is stated, else by 55 % of it, 35 to 85 (common practice, no source)", () => {
    const of = (input: Known) => toShare(knownShrinkage(input).drying);
    expect(of({ percent: 12, plusMinus: 0.5, dryingPercent: 6 })).toEqual([0.06, 0.055, 0.065]);
    // No worse than a fifth of it and 0.2 points: 2 ± 0.6 %.
    expect(of({ percent: 12, plusMinus: 1, dryingPercent: 2 })).toEqual([0.02, 0.014, 0.026]);
    expect(of({ dryingPercent: 2, firingPercent: 7 })).toEqual([0.02, 0.014, 0.026]);
    expect(of({ percent: 12 })).toEqual([0.066, 0.042, 0.102]);
  });

  it("says what it rests on", () => {
    expect(knownShrinkage({ percent: 12.345, plusMinus: 0.5 }).from).toBe("12.35 % as stated, give or take 0.5");
    expect(knownShrinkage({ percent: 12 }).from).toBe("12 % as stated, give or take 1");
    expect(knownShrinkage({ percent: 12 }).sources).toEqual(["astm-c326", "clay-practice", "shrinkage-ranges"]);
    expect(knownShrinkage({ percent: 12, dryingPercent: 6 }).sources).toEqual(["astm-c326", "clay-practice"]);
  });

  it.each<[Known, (string | undefined)[][]]>([
    [{ percent: 20, plusMinus: 0 }, []],
    [{ percent: 20.1, plusMinus: 0 }, [["large-shrinkage", undefined]]],
    [{ percent: 12 }, [["tolerance-assumed", undefined]]],
    [{ dryingPercent: 6, firingPercent: 0.2, plusMinus: 0 }, [["tiny-shrinkage", "/firingPercent"]]],
    [{ dryingPercent: 6, firingPercent: 0.3, plusMinus: 0 }, []],
    [{ dryingPercent: 6, firingPercent: 0, plusMinus: 0 }, []],
    [{ dryingPercent: 6, firingPercent: -1, plusMinus: 0 }, []],
  ])("%j is warned of where it is odd", (input, expected) => expect(codesOf(knownShrinkage(input))).toEqual(expected));

  it("asks whether a tiny figure is a share", () => {
    const { warnings } = knownShrinkage({ dryingPercent: 6, firingPercent: 0.07, plusMinus: 0 });
    expect(warnings[0]?.message).toContain("write 7 if it is a share");
  });
});

describe("a shrinkage known by the class of the clay", () => {
  // Ranges from data/bodies and data/shrinkage: 10 to 14 % and 5 to 8 % in drying; 6 to 11 %, its drying not known apart.
  it("is the range of the class, its middle the value", () => {
    const red = knownShrinkage({ class: "red-stoneware" });
    expect([red.across, red.up, red.drying].map(toShare)).toEqual([
      [0.12, 0.1, 0.14],
      [0.12, 0.1, 0.14],
      [0.065, 0.05, 0.08],
    ]);
    expect(red.pieceSd).toBe(0.003);
    expect(red.from).toBe("10 to 14 %, the range of red stoneware");
    expect(codesOf(red)).toEqual([["shrinkage-by-class", "/class"]]);
    expect(red.sources).toEqual(expect.arrayContaining(["okinawa-2017", "shrinkage-ranges", "clay-practice"]));
  });
  it("dries by 55 % of it where the class has no drying of its own", () => {
    const lithia = knownShrinkage({ class: "lithia-flameware" });
    expect([lithia.across, lithia.drying].map(toShare)).toEqual([
      [0.085, 0.06, 0.11],
      [0.04675, 0.02975, 0.07225],
    ]);
  });
  it("is refused where the class has none", () => {
    const issues = issuesOf(() => knownShrinkage({ class: "cordierite-ware" }));
    expect(issues).toMatchObject([{ pointer: "/class", message: expect.stringContaining("I have no shrinkage for") }]);
  });
});

describe("a shrinkage known from bars", () => {
  it("is where the next piece should fall", () => {
    // Mean 12, s 0.35355; t 2.132 · s · √(1 + 1/5) = 0.8256 (derived).
    const known = knownShrinkage({ bars: bars(12, 12.5, 12, 11.5, 12) });
    expect([known.across, known.up].map(toShare)).toEqual([
      [0.12, 0.1117, 0.1283],
      [0.12, 0.1117, 0.1283],
    ]);
    close(known.pieceSd, 0.00354, { abs: 1e-12 });
    expect(known.from).toBe("12 % from 5 bars of yours");
    expect(toShare(known.drying)).toEqual([0.066, 0.042, 0.102]);
    expect(known.sources).toEqual(["astm-c326", "clay-practice", "shrinkage-ranges"]);
  });

  it("in height and in drying is what was measured", () => {
    const measured = [
      { plastic: 100, dry: 94, fired: 88 },
      { plastic: 100, dry: 96, fired: 90, direction: "height" as const },
    ];
    const known = knownShrinkage({ bars: measured });
    // One bar: 1.6449 · √(0.3² + 0.2041²) · √2 = 0.844 points either way (derived; 0.3 is assumed).
    expect([known.across, known.up, known.drying].map(toShare)).toEqual([
      [0.12, 0.1116, 0.1284],
      [0.1, 0.0916, 0.1084],
      [0.06, 0.0516, 0.0684],
    ]);
    expect(known.pieceSd).toBe(0.003);
    expect(known.from).toBe("12 % from 1 bar of yours");
    expect(known.sources).toEqual(["astm-c326", "clay-practice"]);
    expect(codesOf(known)).toEqual([["single-bar", "/bars"]]);
  });

  it("never falls below nothing, takes inches, and needs a bar that was fired", () => {
    expect(knownShrinkage({ bars: bars(0.5) }).across.low).toBe(0);
    const inches = knownShrinkage({ bars: [{ plastic: "4 1/4", fired: "3 3/4" }] }, "in");
    // 0.5/4.25.
    close(inches.across.value, 0.1176, { abs: 0.00005 });
    const issues = issuesOf(() => knownShrinkage({ bars: [{ plastic: 100, dry: 94 }] }));
    expect(issues).toMatchObject([
      { pointer: "/bars", message: expect.stringContaining("at least one measured fired") },
    ]);
  });
});

describe("bars that cannot be", () => {
  it.each<[string, Bar, string, string]>([
    ["longer dry", { plastic: 94, dry: 100 }, "/dry", "were two figures swapped, or one misread?"],
    ["dry in other units, 94/4", { plastic: 4, dry: 94 }, "/dry", "inches and millimetres mixed up"],
    ["dry in other units, 94/10", { plastic: 10, dry: 94 }, "/dry", "centimetres and millimetres mixed up"],
    ["dry in other units, 9.4/4", { plastic: 4, dry: 9.4 }, "/dry", "inches and centimetres mixed up"],
    ["dry at an odd length, 94/6", { plastic: 6, dry: 94 }, "/dry", "were two figures swapped"],
    ["dry at an odd length, 94/20", { plastic: 20, dry: 94 }, "/dry", "were two figures swapped"],
    ["dry at an odd length, 94/2", { plastic: 2, dry: 94 }, "/dry", "were two figures swapped"],
    ["longer fired", { plastic: 88, fired: 100 }, "/fired", "longer fired than plastic: were two figures swapped"],
    ["fired in other units", { plastic: 10, fired: 88 }, "/fired", "centimetres and millimetres mixed up"],
    ["grown in the kiln", { plastic: 100, dry: 94, fired: 95.9 }, "/fired", "grows by more than 2 % in the kiln: were"],
    ["less than half, fired", { plastic: 100, dry: 94, fired: 20 }, "/fired", "loses more than half its length: were"],
    ["less than half, dry", { plastic: 100, dry: 9.4 }, "/dry", "centimetres and millimetres mixed up"],
    ["of one length alone", { plastic: 100 }, "", "Give its dry or fired length too"],
    ["with a length misread", { plastic: 100, dry: "94 ells", fired: 88 }, "/dry", "I don't know the unit"],
    ["weighed at nothing", { plastic: 100, fired: 88, weights: { dryG: 0, soakedG: 3 } }, "/weights/dryG", "above 0 g"],
    ["lighter soaked", { plastic: 100, fired: 88, weights: { dryG: 40, soakedG: 39 } }, "/weights/soakedG", "lighter"],
    [
      "doubly heavy soaked",
      { plastic: 100, fired: 88, weights: { dryG: 40, soakedG: 80.1 } },
      "/weights/soakedG",
      "drinks",
    ],
    [
      "no lighter in water",
      { plastic: 100, fired: 88, weights: { dryG: 40, soakedG: 42, suspendedG: 40 } },
      "/weights/suspendedG",
      "Hung in water",
    ],
    [
      "without weight in water",
      { plastic: 100, fired: 88, weights: { dryG: 40, soakedG: 42, suspendedG: 0 } },
      "/weights/suspendedG",
      "Hung in water",
    ],
  ])("%s", (_, bar, pointer, words) => {
    const sound = { plastic: 100, fired: 88 };
    const issues = issuesOf(() => measureShrinkage({ bars: [sound, bar] }));
    expect(issues).toMatchObject([{ pointer: `/bars/1${pointer}`, message: expect.stringContaining(words) }]);
  });

  it("too many, none, and settings beyond their limits", () => {
    const of = (request: Partial<Request>) => issuesOf(() => measureShrinkage({ bars: bars(12), ...request }));
    expect(of({ bars: [] })).toMatchObject([{ pointer: "/bars", allowed: [200] }]);
    expect(of({ bars: Array(201).fill(bars(12)[0]) })).toMatchObject([{ pointer: "/bars", allowed: [200] }]);
    expect(of({ bars: Array(200).fill(bars(12)[0]) })).toEqual([]);
    expect(of({ bars: [{ plastic: 100 }] })).toMatchObject([{ pointer: "/bars/0", allowed: ["dry", "fired"] }]);
    expect(of({ withinPercent: 0 })).toMatchObject([{ pointer: "/withinPercent", allowed: ["0.01 to 5 points"] }]);
    expect(of({ withinPercent: 5.1 })).toMatchObject([{ pointer: "/withinPercent" }]);
    expect(of({ withinPercent: 5, readTo: "0.1 mm" })).toEqual([]);
    expect(of({ readTo: "a hair" })).toMatchObject([{ pointer: "/readTo" }]);
  });

  it("at the edge of what can be are answered, some with a warning", () => {
    const of = (bar: Bar) => codesOf(measureShrinkage({ bars: [bar] })).filter(([, pointer]) => pointer !== "/bars");
    expect(of({ plastic: 100, dry: 100, fired: 100 })).toEqual([]);
    expect(of({ plastic: 100, fired: 80 })).toEqual([]);
    expect(of({ plastic: 100, fired: 79 })).toEqual([["large-shrinkage", "/bars/0"]]);
    expect(of({ plastic: 100, fired: 50 })).toEqual([["large-shrinkage", "/bars/0"]]);
    expect(of({ plastic: 100, dry: 79 })).toEqual([["large-shrinkage", "/bars/0"]]);
    expect(of({ plastic: 100, dry: 94, fired: 95 })).toEqual([["grew-in-the-kiln", "/bars/0/fired"]]);
    expect(of({ plastic: 100, dry: 50, fired: 51 })).toEqual([["grew-in-the-kiln", "/bars/0/fired"]]);
    const { bars: read } = measureShrinkage({
      bars: [{ plastic: 100, fired: 88, weights: { dryG: 40, soakedG: 80, suspendedG: 39 } }],
    });
    expect(read[0]?.absorptionPercent).toBe(100);
  });
});

describe("the report of bars", () => {
  it("tells each bar as it was read, with a name of its own", () => {
    const { bars: read, headline } = measureShrinkage({
      bars: [
        { name: " slate ", plastic: "4 in", dry: "94 mm" },
        { name: "  ", plastic: 100, dry: 94, fired: 88, direction: "diameter", weights: { dryG: 100, soakedG: 103 } },
        { plastic: 100.12345, fired: 88, direction: "height" },
      ],
    });
    expect(read).toEqual([
      {
        name: "slate",
        direction: "length",
        plasticMm: 101.6,
        // (101.6 − 94)/101.6 = 7.480 %.
        dryingPercent: 7.48,
        firingPercent: null,
        totalPercent: null,
        absorptionPercent: null,
      },
      {
        name: "bar 2",
        direction: "diameter",
        plasticMm: 100,
        dryingPercent: 6,
        // 6/94.
        firingPercent: 6.38,
        totalPercent: 12,
        absorptionPercent: 3,
      },
      {
        name: "bar 3",
        direction: "height",
        plasticMm: 100.123,
        dryingPercent: null,
        firingPercent: null,
        // 12.12345/100.12345 = 12.1085 %.
        totalPercent: 12.11,
        absorptionPercent: null,
      },
    ]);
    expect(headline).toContain("This clay loses 12 % from wet to fired");
  });

  it("keeps height apart, unless height is all there is", () => {
    const up = { plastic: 100, fired: 90, direction: "height" as const };
    const both = measureShrinkage({ bars: [up, ...bars(12)] });
    expect(both.total?.mean.value).toBe(12);
    expect(both.byDirection.map(({ direction, total }) => [direction, total?.mean.value])).toEqual([
      ["length", 12],
      ["height", 10],
    ]);
    expect(measureShrinkage({ bars: [up] }).total?.mean.value).toBe(10);
  });

  it("heads with the figure to throw by, or with drying where nothing was fired", () => {
    const head = (request: Request) => measureShrinkage(request).headline;
    // 100/0.88 = 113.6; one bar ± 0.6 points (below).
    expect(head({ bars: bars(12), peakC: 1240 })).toBe(
      "This clay loses 12 % from wet to fired at 1240 °C (11.4 to 12.6 %, nine times in ten): throw 113.6 mm for 100 mm fired.",
    );
    expect(head({ bars: bars(12) })).toContain("from wet to fired (11.4");
    expect(head({ bars: [{ plastic: 100, dry: 94.2 }] })).toBe("This clay loses 5.8 % of its length as it dries.");
  });

  it("warns of one bar, of fewer than the ten of ASTM C326, and of names borne twice", () => {
    const of = (...given: Bar[]) => codesOf(measureShrinkage({ bars: given }));
    expect(of(...bars(12))).toEqual([["single-bar", "/bars"]]);
    expect(of({ plastic: 100, dry: 94 }, ...bars(12))).toEqual([["single-bar", "/bars"]]);
    expect(of(...bars(12, 12))).toEqual([["fewer-than-standard", "/bars"]]);
    expect(of(...Array(9).fill(bars(12)[0]))).toEqual([["fewer-than-standard", "/bars"]]);
    expect(of(...Array(10).fill(bars(12)[0]))).toEqual([]);
    const named = { ...bars(12)[0]!, name: "slate" };
    expect(of(named, named)).toEqual([
      ["same-name", "/bars"],
      ["fewer-than-standard", "/bars"],
    ]);
  });

  it("names the sources it used", () => {
    const of = (...given: Bar[]) => measureShrinkage({ bars: given }).sources;
    expect(of(...bars(12, 12))).toEqual(["astm-c326", "clay-practice"]);
    expect(of({ ...bars(12)[0]!, weights: { dryG: 100, soakedG: 103 } })).toEqual([
      "astm-c326",
      "astm-c373",
      "iso-13006",
      "clay-practice",
    ]);
    expect(of(...bars(12, 12, 12, 15))).toEqual(["astm-c326", "grubbs-1969", "clay-practice"]);
    const dried = [94, 94, 94, 91].map((dry) => ({ plastic: 100, dry }));
    expect(of(...dried)).toEqual(["astm-c326", "grubbs-1969", "clay-practice"]);
  });
});

describe("absorption", () => {
  // Groups of ISO 13006: 0.5, 3 and 10 % belong to the tighter one.
  it.each([
    [200, 201, "takes up 0.5 % of its weight in water (0.4 to 0.6 %): glassy"],
    [1000, 1006, "0.6 % of its weight in water (0.5 to 0.7 %): nearly tight"],
    [100, 103, "nearly tight"],
    [100, 104, "(3.4 to 4.6 %): porous"],
    [100, 110, "porous; it weeps unless the glaze is sound"],
    [100, 111, "open; it weeps unless the glaze is sound"],
  ])("of %d g dry and %d g soaked: %s", (dryG, soakedG, words) => {
    const { absorption } = measureShrinkage({ bars: [{ plastic: 100, fired: 88, weights: { dryG, soakedG } }] });
    expect(absorption?.message).toContain(words);
    expect([absorption?.apparentPorosity, absorption?.bulkDensity]).toEqual([null, null]);
  });

  it("is none where no bar was weighed", () => expect(measureShrinkage({ bars: bars(12) }).absorption).toBeNull());
});
