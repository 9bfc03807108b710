/** Whatever comes in, something sane goes out. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Chemistry, ExpansionReport, FitReport, Problem } from "../../api/schemas/index.ts";
import { THAW, THAW_ON_RED_STONEWARE } from "../../api/schemas/larch-lane.ts";
import { ExpansionLineAnswer, FitLineAnswer, FitVerdictLineAnswer } from "../../api/schemas/stream.ts";
import { faults, post } from "./support.ts";

const JSON_CALLS = [
  ["/v1/fit", FitReport],
  ["/v1/chemistry", Chemistry],
  ["/v1/expansion", ExpansionReport],
] as const;
const STREAM_CALLS = [
  ["/v1/fit/stream", FitLineAnswer],
  ["/v1/fit/verdicts", FitVerdictLineAnswer],
  ["/v1/expansion/stream", ExpansionLineAnswer],
] as const;

/** Longest honest wait for one small answer [ms]; a hang would be far past it. */
const PATIENCE_MS = 2000;

async function sane(path: string, schema: (typeof JSON_CALLS)[number][1], text: string): Promise<void> {
  const started = performance.now();
  const response = await post(path, text);
  expect(performance.now() - started).toBeLessThan(PATIENCE_MS);
  const body = await response.json();
  if (response.status === 200) schema.parse(body);
  else {
    expect(response.status).toBeGreaterThanOrEqual(400);
    expect(response.status).toBeLessThan(500);
    Problem.parse(body);
  }
}

const oddNumber = fc.oneof(
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.constantFrom(0, -0, -1, 1e-300, 1e300, 5e-324, 1e21, 2 ** 53, 0.1, 100),
);
const oddValue = fc.oneof(
  oddNumber,
  fc.string({ maxLength: 20 }),
  fc.constantFrom(null, true, [], {}, "SiO2", "whiting", "K20", "((((", "1e999"),
  fc.jsonValue({ maxDepth: 3 }),
);
const oddKey = fc.oneof(
  fc.string({ maxLength: 10 }),
  fc.constantFrom("SiO2", "recipe", "expansion", "value", "parts", "id"),
);

type Tree = Record<string, unknown> | unknown[];

/** Every place in a tree, as a path. */
function places(tree: unknown, path: (string | number)[] = []): (string | number)[][] {
  if (typeof tree !== "object" || tree === null) return [path];
  return [path, ...Object.entries(tree).flatMap(([key, value]) => places(value, [...path, key]))];
}

/** A valid request with a few places changed, dropped or added to. */
const mutated = (base: Tree) => {
  const all = places(base).filter((path) => path.length > 0);
  const change = fc.record({
    path: fc.constantFrom(...all),
    how: fc.constantFrom("set", "drop", "add"),
    key: oddKey,
    value: oddValue,
  });
  return fc.array(change, { minLength: 1, maxLength: 4 }).map((changes) => {
    const copy = structuredClone(base);
    for (const { path, how, key, value } of changes) {
      let at: unknown = copy;
      for (const step of path.slice(0, -1))
        at = typeof at === "object" && at ? (at as Record<string, unknown>)[step] : undefined;
      if (typeof at !== "object" || at === null) continue;
      const holder = at as Record<string, unknown>;
      const last = String(path.at(-1));
      if (how === "set") holder[last] = value;
      else if (how === "drop") delete holder[last];
      else holder[key] = value;
    }
    return JSON.stringify(copy);
  });
};

const OXIDES = { oxides: { basis: "moles", amounts: { SiO2: 3.5, Al2O3: 0.4, CaO: 0.7, K2O: 0.3 } }, thicknessMm: 0.2 };
const OWN_LINES = {
  recipe: [
    {
      name: "bucket clay",
      analysis: { weightPercent: { SiO2: 60, Al2O3: 25, Fe2O3: 5 }, lossOnIgnitionPercent: 10 },
      parts: 30,
    },
    { formula: "Na2O·2CaO·5B2O3·16H2O", parts: 20 },
    { material: "whiting", parts: 10 },
  ],
  additions: [{ material: "tin-oxide", parts: 5 }],
};
const BASES: Tree[] = [
  THAW_ON_RED_STONEWARE,
  {
    glaze: OXIDES,
    body: {
      curve: [
        { c: 20, strainPercent: 0 },
        { c: 300, strainPercent: 0.16 },
        { c: 700, strainPercent: 0.45 },
      ],
    },
  },
  {
    glaze: OWN_LINES,
    body: { phases: { quartz: 20, cristobalite: 2, glass: 78 }, absorptionPercent: 4 },
    include: ["curves"],
  },
  {
    glaze: { expansion: { value: 6.4, rangeC: [20, 400], plusMinus: 0.2 }, transitionC: 610 },
    body: { class: "red-stoneware" },
    seed: 3,
  },
];

describe("POST", () => {
  it.each(JSON_CALLS)("%s takes any JSON without a fault", async (path, schema) => {
    await fc.assert(
      fc.asyncProperty(fc.json({ maxDepth: 6 }), (text) => sane(path, schema, text)),
      { numRuns: 300, seed: 1 },
    );
  });

  it.each(JSON_CALLS)("%s takes any text without a fault", async (path, schema) => {
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: "binary", maxLength: 200 }), (text) => sane(path, schema, text)),
      { numRuns: 200, seed: 2 },
    );
  });

  it.each(BASES.map((base, i) => [i, base] as const))(
    "/v1/fit takes valid request %i with places changed",
    async (i, base) => {
      await fc.assert(
        fc.asyncProperty(mutated(base), (text) => sane("/v1/fit", FitReport, text)),
        { numRuns: 500, seed: 10 + i },
      );
    },
  );

  it("/v1/fit judges or refuses any mixture of oxides, however far from a glaze", async () => {
    const names =
      "SiO2 Al2O3 B2O3 Li2O Na2O K2O MgO CaO SrO BaO ZnO PbO TiO2 ZrO2 P2O5 Fe2O3 FeO MnO SnO2 CoO CuO V2O5 CdO";
    const amount = fc.oneof(fc.integer({ min: 0, max: 1000 }), fc.constantFrom(1e-6, 1e6));
    const amounts = fc.dictionary(fc.constantFrom(...names.split(" ")), amount, { minKeys: 1, maxKeys: 8 });
    const body = fc.constantFrom({ class: "bone-china" }, { class: "lithia-flameware" }, { expansion: { value: 12 } });
    const question = fc.record({ amounts, body, thicknessMm: fc.constantFrom(0.01, 0.3, 5) });
    await fc.assert(
      fc.asyncProperty(question, ({ amounts, body, thicknessMm }) =>
        sane(
          "/v1/fit",
          FitReport,
          JSON.stringify({ glaze: { oxides: { basis: "moles", amounts }, thicknessMm }, body }),
        ),
      ),
      { numRuns: 300, seed: 30 },
    );
  });

  it.each(JSON_CALLS.slice(1))("%s takes valid requests with places changed", async (path, schema) => {
    for (const glaze of [THAW, OXIDES, OWN_LINES]) {
      await fc.assert(
        fc.asyncProperty(mutated({ glaze } as Tree), (text) => sane(path, schema, text)),
        { numRuns: 300, seed: 20 },
      );
    }
  });

  it.each(STREAM_CALLS)("%s answers any lines, each in its place", async (path, schema) => {
    const line = fc.oneof(fc.json({ maxDepth: 3 }), mutated(THAW_ON_RED_STONEWARE), fc.string({ maxLength: 40 }));
    await fc.assert(
      fc.asyncProperty(fc.array(line, { maxLength: 8 }), async (lines) => {
        const whole = lines.map((one) => one.replaceAll("\n", " "));
        const response = await post(path, whole.join("\n"), { "content-type": "application/x-ndjson" });
        expect(response.status).toBe(200);
        const text = await response.text();
        const answers =
          text === ""
            ? []
            : text
                .trimEnd()
                .split("\n")
                .map((one) => schema.parse(JSON.parse(one)));
        const asked = whole.flatMap((one, i) => (one.trim() === "" ? [] : [i + 1]));
        expect(answers.map((one) => one.line)).toEqual(asked);
        for (const one of answers) if ("error" in one) expect(one.error.status).toBeLessThan(500);
      }),
      { numRuns: 150, seed: 3 },
    );
  });

  it("none of it was a fault of the service's own", () => expect(faults).toEqual([]));
});
